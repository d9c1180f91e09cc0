// Random presses and heads. Every number is drawn from a range that a press could have, and wide
// enough that each kind of fault comes up.
#pragma once

#include "core/job.h"
#include "tests/reference/seeded.h"

namespace carriageway::reference {

/// A job with one head, its stops near those that the image wants (see also random_stops()).
Job random_job(Seeded& random);

/// The same with every wish kept small, so that about half of the heads have stops that fit.
Job random_easy_job(Seeded& random);

/// Stops in order, near those with which both bands reach just past an image from `lo` to `hi`;
/// some far too near one another.
Stops random_stops(Seeded& random, const Job& job, double lo, double hi);

} // namespace carriageway::reference
