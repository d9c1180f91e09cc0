// The exercise that is under way, and what has come of it. Nothing here is part of a job.
#pragma once

#include <memory>

#include "core/job.h"

namespace carriageway {

/// What the exercises show.
enum class ExerciseStage {
    kinds,     ///< what can be practised
    own,       ///< a trainer makes one of the job that is open
    under_way, ///< being answered
    marked,    ///< its result
};

struct ExerciseRun;     // app/views/exercise_run.h
struct ExerciseRecord;  // likewise

struct ExerciseState {
    ExerciseStage stage = ExerciseStage::kinds;
    std::shared_ptr<ExerciseRun> run; ///< under way or marked
    /// It is answered at the press, on a job of its own: nothing there may say what is right.
    bool at_press = false;
    HeadId head_before = 0; ///< that was looked at when it began
    HeadId own_head = 0; ///< the head that a trainer breaks; 0: not chosen yet
    std::shared_ptr<ExerciseRecord> record; ///< what has been done since the start
};

/// Whether what a person sees of the job has to keep back what is right.
inline bool examined(const ExerciseState& state) {
    return state.stage == ExerciseStage::under_way && state.at_press;
}

} // namespace carriageway
