// Plans of a press for the tests of its rate, by hand and at random.
#pragma once

#include <random>

#include "core/rate.h"

namespace carriageway::tests {

/// A head of the demonstration's numbers: 514 mm at 600 and 700 mm/s, 8000 mm/s².
HeadPace sample_head();

/// A press of six stations in the order load, print, flash, cool, print, unload: 2 s index, both
/// heads sample_head(), flash 4 s, loading 3 s, unloading 2.5 s.
RatePlan sample_plan();

/// A head within its bounds. Now and then without jerk limit, dwell, floods or prints.
HeadPace random_head(std::mt19937_64& random);

/// A plan of two to nine stations within its bounds.
RatePlan random_plan(std::mt19937_64& random);

} // namespace carriageway::tests
