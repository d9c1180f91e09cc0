// One cycle of a head as it runs: where the carriage is, which blade is down, what the lamps show,
// and what of the image is printed so far.
//
// Time 0 is the moment when the table starts to turn; a head's steps are those of rate_steps.h, so
// what moves here takes exactly as long as what the rate counts. Each blade is down while its own
// stroke runs and has come down in the wait before it. A head whose two sensors are on at once
// comes down, waits for its blade and goes up again: the carriage stays in the middle.
//
// Lengths mm, times s.
#pragma once

#include <vector>

#include "core/assess.h"
#include "core/coverage.h"
#include "core/rate_steps.h"

namespace carriageway {

/// A head's cycle, worked out once.
struct HeadCycle {
    HeadId head = 0;
    bool still = false;   ///< both sensors on, or no travel: it only goes up and down
    double index = 0.0;   ///< the table turns until then
    double seconds = 0.0; ///< from the table's start to turn until it may turn again
    double print_sign = -1.0; ///< +1: prints toward the machine
    double middle = 0.0;  ///< where a carriage that stays stands
    Ends ends;
    StrokeGeometry geometry;
    Sensors sensors;
    Stops stops;
    Rect squeegee; ///< what each blade sweeps in a whole stroke
    Rect flood;
    HeadPace pace;
    std::vector<RateStep> steps;
};

/// Works out the cycle of a job's head; `assessment` must be of the job. A head that isn't there:
/// one without steps.
HeadCycle head_cycle(const Job& job, const Assessment& assessment, HeadId head);

/// A moment of it.
struct CyclePose {
    StepKind doing = StepKind::wait;
    int stroke = 0;        ///< as in RateStep; 0: none
    double turned = 1.0;   ///< of the way to the next station that the table has made, 0 to 1
    double down = 0.0;     ///< the head: 0 up, 1 on its platen
    double squeegee = 0.0; ///< 0 up, 1 on the mesh
    double flood = 0.0;
    double carriage = 0.0; ///< its reference's y
    double speed = 0.0;    ///< along y
    Lamps lamps;
    Rect flooded; ///< where ink lies over the mesh since the last flood began; empty: nowhere
    Rect printed; ///< where the squeegee has passed over this garment
    bool flooded_all = false; ///< the flood stroke is done
    bool printed_all = false; ///< the last print stroke is done: what is missed now is missed
};

/// The moment at `time`, which wraps into the cycle; its end is still its own. Not a number counts
/// as 0. Times up to the `whole` cycle of a press may be given: a head that is done waits.
CyclePose pose(const HeadCycle& cycle, double time, double whole = 0.0);

/// Bands of the moment for cover(): what is printed so far of a garment.
Bands bands_at(const HeadCycle& cycle, const CyclePose& pose);

/// The starts of what happens, in order and each once: 0, the steps, and the end. For stepping
/// from event to event.
std::vector<double> cycle_events(const HeadCycle& cycle);

} // namespace carriageway
