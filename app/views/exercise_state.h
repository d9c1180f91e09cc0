// The exercise that is under way, and what has come of it. Nothing here is part of a job.
#pragma once

namespace carriageway {

struct ExerciseState {};

} // namespace carriageway
