// What is measured, in which order it is listed, and the words for it.
#pragma once

#include <string>
#include <vector>

#include "app/drawing/measure_layer.h"
#include "app/text/measure.h"
#include "app/text/words.h"
#include "app/views/measure_state.h"

namespace carriageway {

/// Parts of the list of all procedures, in their order.
enum class MeasureGroup { sensors, carriage, pace, blades, adjusters, heights, readings, heat, count };

struct MeasureRow {
    MeasureGroup group = MeasureGroup::sensors;
    MeasureTarget target;
};

/// Everything that can be measured on a press, group by group.
std::vector<MeasureRow> measure_rows(const PressProfile& press);

/// The target that feeds a field; nothing for fields that aren't a press's.
std::optional<MeasureTarget> target_for(Field field);

/// Its procedure. A target without a procedure: the one for screws.
const Procedure& procedure_of(const MeasureTarget& target);

/// A kind of reading typed and shown as the arm's ruler shows it.
bool on_ruler(const MeasureTarget& target, ReadingKind kind);
Quantity reading_quantity(const MeasureTarget& target, ReadingKind kind);

/// Readings of both kinds belong together, one of each at a time.
bool in_pairs(const Procedure& procedure);

/// Half the smallest step that can be read counts; this step is offered until the person says
/// otherwise. In the core's unit; 0 where there is none to tell. Invented, but for the ruler's own.
double usual_step(const PressProfile& press, const MeasureTarget& target, ReadingKind kind);

Scheme scheme_of(const MeasureTarget& target);

// ---- words ----
Word group_word(MeasureGroup group);
Word how_word(const MeasureTarget& target);
Word reading_word(const MeasureTarget& target, ReadingKind kind);
Word caution_word(Caution caution);
Word scheme_word(Scheme scheme);

/// "squeegee pivot to carriage · squeegee pivot height"; a screw by its name.
std::string target_title(Language language, const PressProfile& press, const MeasureTarget& target);
/// What the profile has now.
std::string present_value(Language language, LengthUnit unit, const PressProfile& press,
                          const MeasureTarget& target);
std::string reading_text(Language language, LengthUnit unit, const PressProfile& press,
                         const MeasureTarget& target, ReadingKind kind, double value);
/// "70.3 mm ± 0.4 mm": the spread with one digit, two where it begins with a 1; without a spread
/// the value alone.
std::string measured_text(Language language, LengthUnit unit, const MeasuredValue& value);
/// All values of a result that a person uses, the spread of a value not being one of its own.
std::string result_text(Language language, LengthUnit unit, const Measured& result);
/// Why a result was refused and what to do.
std::string refused_text(Language language, LengthUnit unit, const Taking& taking,
                         const Measured& result);

} // namespace carriageway
