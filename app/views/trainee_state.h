// The people who practise on this device, as they are shown. Nothing here is part of a job.
#pragma once

#include <optional>
#include <string>

#include "app/records/exercise_file.h"
#include "app/records/trainees.h"

namespace carriageway {

struct TraineeState {
    bool group = false;                 ///< everybody at a glance, instead of one person
    std::optional<PracticeTopic> topic; ///< that is open
    std::optional<TraineeId> erasing;   ///< whose erasing is to be confirmed
    std::optional<ExerciseResult> arrived; ///< a result that was sent here and isn't noted yet
    std::string sender; ///< what stands as a name in results that are sent: as typed by the person
};

} // namespace carriageway
