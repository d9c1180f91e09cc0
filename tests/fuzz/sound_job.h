// The demonstration, for what needs a job beside its input.
#pragma once

#include "core/job.h"

namespace carriageway::fuzz {

const Job& sound_job();

} // namespace carriageway::fuzz
