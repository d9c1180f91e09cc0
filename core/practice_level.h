// How difficult the next exercise is: a transformed up-down staircase, two up and one down.
//
// H. Levitt, "Transformed Up-Down Methods in Psychoacoustics", J. Acoust. Soc. Am. 49(2B), 467-477,
// 1971: after two successes in a row the task becomes harder, after one failure easier. It settles
// where p² = 1/2: at tasks that a person manages in 70.7 of 100 tries.
#pragma once

#include <span>

namespace carriageway {

/// A score from which an exercise counts as managed. Ours.
inline constexpr double managed_score = 0.8;

/// One exercise that was done, of one kind.
struct LevelResult {
    int level = 1;
    double score = 0.0; ///< 0 to 1, with its hints
};

/// The level of the next exercise of a kind, after those that were done, the oldest first: from
/// lowest_level to highest_level (exercise.h). Nothing done: the lowest. A success counts toward
/// two in a row only at the level that the last one was at.
int next_level(std::span<const LevelResult> done);

} // namespace carriageway
