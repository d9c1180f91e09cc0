// Jobs at the end of a run.
#pragma once

#include "core/job.h"

namespace samples {

/// The job as a run of it may leave it: walked, ticked, counted, stopped and approved. `number`
/// tells one such run from another; its earliest time is 4000 + number, its pieces 100 + number.
carriageway::Job finished(carriageway::Job job, int number);

} // namespace samples
