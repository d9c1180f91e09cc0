// What a printed sheet and a table of values share: names of numbers, and numbers as the press
// shows them.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "core/assess.h"

namespace carriageway {

/// How a number is called where nobody types it: without what says how it is typed. Other values
/// than fields: Word::count, which has no text.
Word paper_field_word(Field field);

/// A number of a head or a job with its unit, as finely as it is set: stops as read on the ruler,
/// lengths to a tenth of a millimetre or a hundredth of an inch, heights ten times finer, speeds to
/// a hundredth of m/s or a tenth of in/s, angles to a tenth, air to a kPa or a tenth of a psi. What
/// nobody has noted: "not noted". Value in the core's unit.
std::string paper_value(Language language, LengthUnit unit, const Job& job, Field field,
                        double value);

/// The same without its unit; what nobody has noted is empty.
std::string paper_number(LengthUnit unit, const Job& job, Field field, double value);

/// The unit alone; empty for plain numbers.
std::string paper_unit(Language language, LengthUnit unit, const Job& job, Field field);

/// "fit", "fit, mind" or "not fit".
Word verdict_word(const HeadAssessment& head);

} // namespace carriageway
