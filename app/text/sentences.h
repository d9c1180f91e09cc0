// Sentences about a job: findings, remedies, limits, conflicts and refusals in words.
//
// The core gives kinds and numbers; here they become text of the catalogue with units. Moves are
// named by direction ("44 mm toward the machine") and by the ruler's numbers, never "in" or "out".
#pragma once

#include <optional>
#include <string>

#include "app/text/measure.h"
#include "app/text/spare_text.h"
#include "app/text/words.h"
#include "core/assess.h"

namespace carriageway {

/// What to do, in two parts.
struct RemedyText {
    std::string main;    ///< "Stop 44 mm toward the machine"; empty: no remedy is known
    std::string detail;  ///< "machine stop, ruler 232 → 276 mm"; may be empty
};

/// One finding in words.
struct FindingText {
    std::string title;     ///< "Heavy at the machine end"
    std::string why;       ///< one sentence with the measured value and the limit
    RemedyText remedy;     ///< also where only a person can do it: see remedy_edit() for that
    std::string label;     ///< for the diagram: "19 mm not flooded"
    std::string severity;  ///< "stop", "mind" or "note"
};

inline void give_back(RemedyText& text) {
    give_back(text.main);
    give_back(text.detail);
}
void give_back(FindingText& text);

/// A finding of `head`, an assessment of a head of `job`, in words.
FindingText finding_text(Language language, LengthUnit unit, const Job& job,
                         const HeadAssessment& head, const Finding& finding);

/// Its label alone.
std::string finding_label(Language language, LengthUnit unit, const Job& job,
                          const HeadAssessment& head, const Finding& finding);

/// The move of both stops from one setting to another, in words; empty when neither moves by more
/// than 0.005 mm.
RemedyText stops_text(Language language, LengthUnit unit, const Ruler& ruler, const Stops& from,
                      const Stops& to);

/// "Head 6 · navy"; without a colour's name "Head 6".
std::string head_title(Language language, const Head& head);

/// What happens to a stop that goes beyond a limit, as a clause without a capital: "past here the
/// squeegee leaves the platen".
std::string limit_text(Language language, LengthUnit unit, const Job& job, LimitKind kind);

/// Which two limits leave no room, and by how much.
std::string conflict_text(Language language, LengthUnit unit, const Conflict& conflict);

/// The smallest change that makes room, as an instruction.
std::string change_text(Language language, LengthUnit unit, const Change& change);

/// Why an edit or a job was refused and what to do. With a field, the numbers that it takes;
/// `stations` of the press, for a station that isn't there.
std::string refusal_text(Language language, LengthUnit unit, Refusal refusal,
                         Field field = Field::count, int stations = most_stations);

/// "from 5° to 25°" and the like are made of these: the least and the most that a field takes,
/// with the unit.
std::string least_of(Language language, LengthUnit unit, Field field);
std::string most_of(Language language, LengthUnit unit, Field field);

// ---- single words ----

/// The short label of a number. `Field::count`: Word::count, which has no text.
Word field_word(Field field);
Word use_word(StationUse use);
Word severity_word(Severity severity);
Word miss_word(MissKind kind);
/// "the machine end", "the left side", as it stands after "at".
Word side_word(Side side);
Word side_word(End end);
/// "toward the machine" or "toward the operator".
Word direction_word(Direction direction);
/// A limit as a thing: "the platen's edge".
Word limit_word(LimitKind kind);

}  // namespace carriageway
