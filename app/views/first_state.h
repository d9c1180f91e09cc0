// The first five minutes: three short steps on the demonstration. Nothing here is part of a job.
#pragma once

#include <cstdint>

#include "core/job.h"

namespace carriageway {

/// What a step asks for.
enum class FirstStep {
    none, ///< nothing is shown
    drag, ///< move a stop of the head that is set wrong
    read, ///< what is wrong with it, and why
    fix,  ///< until nothing is
    done, ///< what comes next
};

/// The head pulses so often, and then rests; each pulse takes so long (s). Ours: less than five
/// seconds in all, after which moving things must be able to be stopped (WCAG 2.2, 2.2.2).
inline constexpr int first_pulses = 3;
inline constexpr double first_pulse_seconds = 1.2;

struct FirstState {
    FirstStep step = FirstStep::none;
    HeadId head = 0;        ///< that is set wrong
    Stops stops;            ///< as they stood when it began
    std::uint64_t opened = 0; ///< sections that were open when reading began, a bit for each
    bool copy = false;      ///< on a job to practise on; otherwise on the demonstration itself
    std::int64_t job = 0;   ///< that is open then
    HeadId head_before = 0; ///< that was looked at before it
    double began = -1.0;    ///< s on the window's clock; below 0: not shown yet
    double pulses = 0.0;    ///< so many have passed, up to first_pulses
};

} // namespace carriageway
