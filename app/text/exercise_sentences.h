// Exercises in words: what is asked, what was claimed, hints, and each line of a marking.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/exercise_break.h"

namespace carriageway {

/// A kind by name, and what it is about in a few words.
struct ExerciseKindText {
    std::string title;
    std::string about;
};
ExerciseKindText exercise_kind_text(Language language, ExerciseKind kind);

/// Names an exercise's job and its colours, which the core numbers only.
void name_exercise(Language language, Exercise& exercise);

/// What is asked.
std::string exercise_asked_text(Language language, LengthUnit unit, const Exercise& exercise);

/// "Head 6 · navy"; 0: the whole press.
std::string exercise_head_text(Language language, const Exercise& exercise, HeadId head);

/// What can be wrong with a head: "Part of the image is not printed".
Word claim_word(FindingKind kind);

/// What a trainer sets wrong.
Word breaking_word(BreakingKind kind);

/// Name of an adjuster, as marked on the press, and what a clockwise turn of it does.
std::string adjuster_text(Language language, const Adjuster& adjuster);
std::string adjuster_effect_text(Language language, const Adjuster& adjuster);
/// "clockwise" or "counter-clockwise".
Word turn_word(bool clockwise);

/// One of the numbers that can be chosen, with its unit.
std::string exercise_number_text(Language language, LengthUnit unit, const Exercise& exercise,
                                 double value);

/// One hint, in a sentence.
std::string hint_text(Language language, LengthUnit unit, const Exercise& exercise,
                      const Hint& hint);

/// Why a line of a marking has its points, in a sentence that says what would have been right.
std::string mark_text(Language language, LengthUnit unit, const Exercise& exercise,
                      const MarkLine& line);

/// Points are counted in hundredths of the whole. A share that isn't the whole is never shown as it.
int points_of(double share);

} // namespace carriageway
