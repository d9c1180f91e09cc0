// Levelling of a job: its own height readings, against what each of its heads is set to.
#pragma once

#include <optional>
#include <vector>

#include "core/job.h"
#include "core/levelling.h"
#include "core/levelling_advice.h"

namespace carriageway {

/// The height points of a press as levelling takes them.
LevelPoints level_points(const HeightPoints& points);

/// The head or platen that is farthest out.
struct WorstOff {
    bool head = false;
    PartOff off;
};

struct JobLevelling {
    /// Fitted to the readings less what the head over each is set to there: a head's plane is what
    /// it stands above its set heights, mm. Strays count in the job's readings.
    Levelling levelling;
    LevelTargets targets;
    /// In the order of levelling.heads, against the usual head of the group: a head that is as far
    /// off its set heights as most others is not off. Of a head that is no longer on the press
    /// nothing is known, as nobody knows what it was set to.
    std::vector<PartOff> heads;
    std::vector<PartOff> platens; ///< in the order of levelling.platens
    int out = 0;                   ///< heads and platens that are out
    std::optional<WorstOff> worst; ///< of those
};

/// Works out a job's heights. Without readings, or with readings that are refused, there are no
/// parts (levelling.refusal).
JobLevelling job_levelling(const Job& job);

/// What brings one of its platens, by its place in the list, to the usual plane.
PlatenTurns platen_turns(const Job& job, const JobLevelling& levelling, std::size_t platen);

} // namespace carriageway
