// The job that an exercise begins with: an invented press that is set right.
#pragma once

#include "core/exercise_random.h"
#include "core/job.h"

namespace carriageway {

/// A job of `heads` heads (1 to 8) on an invented press, everything set so that assess() finds no
/// stop and no mind; image, blade, speeds, angles, sensors and ruler are another for each seed. It
/// has a name for each colour's head by its number only ("1", "2", …): words are no business of
/// core.
Job fit_job(ExerciseRandom& random, int heads);

} // namespace carriageway
