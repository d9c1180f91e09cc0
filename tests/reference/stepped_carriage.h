// A carriage driven in small steps of time between its two sensors, as a press does it, to compare
// the closed forms for rest positions and sensors with.
//
// It runs until the sensor ahead switches on, goes on at its speed for the latency, brakes, and
// stands; then back. A sensor that is off switches on within `reach` of its bar; one that is on
// lets go `hysteresis` farther away. The instant at which a sensor changes is found by bisection.
#pragma once

#include "core/job.h"

namespace carriageway::reference {

/// What drives the carriage.
struct Drive {
    double speed_to_operator = 0.0; ///< mm/s
    double speed_to_machine = 0.0;
    double acceleration = 0.0; ///< for speeding up and braking, mm/s²
};

/// What was seen on some strokes to and fro.
struct Run {
    bool both_on = false; ///< both sensors were on together; the run was then broken off
    double operator_rest = 0.0;
    double machine_rest = 0.0;
    bool operator_on_at_rest = false; ///< as latched
    bool machine_on_at_rest = false;
    bool operator_seen_at_rest = false; ///< a sensor that was off would switch on there
    bool machine_seen_at_rest = false;
    bool up_to_speed_to_operator = false; ///< when the sensor switched
    bool up_to_speed_to_machine = false;
};

/// Starts at rest over the operator's bar and runs to the machine, to the operator and to the
/// machine again.
Run run_carriage(const Sensors& sensors, const Stops& stops, const Drive& drive);

} // namespace carriageway::reference
