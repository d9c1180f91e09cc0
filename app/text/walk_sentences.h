// The walk round the press in words: for the screen and the printed sheet alike.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "core/walk.h"

namespace carriageway {

/// A number as the press shows it: a stop as the ruler's number, anything else with its unit. Value
/// in the core's unit.
std::string walk_value(Language language, LengthUnit unit, const Ruler& ruler, Field field,
                       double value);

/// What a number is called at the press, in the midst of a sentence: "operator stop, ruler".
Word walk_word(Field field);

/// A place of the walk: "Head 6 · navy"; 0: what is set once for the whole press. A head that the
/// job doesn't have: empty.
std::string walk_place(Language language, const Job& job, HeadId head);

/// "Really set: 280 mm, planned: 276 mm"; empty where nothing else than planned was set.
std::string really_set_text(Language language, LengthUnit unit, const Job& job, HeadId head,
                            Field field);

/// Why a mark's real value is left out of what is judged, and what to do.
std::string unusable_text(Language language, LengthUnit unit, const Job& job,
                          const UnusableMark& mark);

/// How far the walk is, on one line, and where it goes on.
std::string walk_progress_text(Language language, const Job& job);

} // namespace carriageway
