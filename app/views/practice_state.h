// The Practice place: which part of it is shown, and what is under way there. Nothing here is part
// of a job.
#pragma once

#include "app/views/call_state.h"
#include "app/views/exercise_state.h"
#include "app/views/fault_state.h"
#include "app/views/trainee_state.h"

namespace carriageway {

enum class PracticePart { exercises, faults, call, trainees };

struct PracticeState {
    PracticePart part = PracticePart::exercises;
    ExerciseState exercise;
    FaultState fault;
    CallState call;
    TraineeState trainee;
};

} // namespace carriageway
