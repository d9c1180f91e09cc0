// A search for the best placement, as the screen shows it: what was asked, and how far it is.
#pragma once

#include "core/job_placement.h"
#include "core/placement_study.h"

namespace carriageway {

struct StationSearch {
    Job of;             ///< the job as it was when it was asked
    JobPlacement asked;
    PlacementStudy study;
    explicit StationSearch(const Job& job)
        : of(job), asked(job_placement(job)), study(asked.question) {}
    bool running() const { return study.state() == PlacementState::running; }
};

} // namespace carriageway
