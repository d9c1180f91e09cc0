// What can be claimed in an exercise that finds faults: what is so, and what could have been.
#pragma once

#include <vector>

#include "core/exercise.h"
#include "core/exercise_random.h"

namespace carriageway {

/// The true claims and up to `others` that aren't so, of the job's heads, shuffled. Half of the
/// others, where there are that many, are of heads that have a fault: so the head alone doesn't
/// tell.
std::vector<FaultClaim> choices_for(ExerciseRandom& random, const Job& job,
                                    const std::vector<FaultClaim>& truth, int others);

} // namespace carriageway
