// What people note while a job is set up and run, at random, for tests.
#pragma once

#include <vector>

#include "core/job.h"
#include "tests/core/sample_job.h"

namespace carriageway::sample {

/// Marks of a walk for the job's numbers and those of heads 1 to `heads`: in order, each once, some
/// of them set otherwise than planned.
std::vector<WalkMark> walk(Random& random, int heads);

/// A record with a few of everything, or of nothing.
RunRecord record(Random& random);

/// Steps of a person's own among usual ones, or none.
std::vector<CheckItem> checks(Random& random);

/// Wishes of any kind within their limits.
ColourWish wish(Random& random);

}  // namespace carriageway::sample
