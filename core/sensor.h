// The two end sensors and their limit bars.
//
// A sensor switches on within `reach` of its bar and, once on, lets go only `hysteresis` farther
// away. When both can be on at one position of the carriage the control can't tell which end it
// is at: the head goes up and down and clicks, and neither prints nor floods (common practice).
#pragma once

#include "core/press.h"
#include "core/job.h"

namespace carriageway {

/// Least distance between the bars' inner ends at which the two sensors can still be on at once:
/// 2·reach + hysteresis + (machine offset − operator offset), or the value measured on the press.
double least_separation(const Sensors& sensors);

/// Distance between the inner ends of the bars.
double separation(const Stops& stops);

/// Whether both sensors are on together somewhere on the way.
bool both_on(const Sensors& sensors, const Stops& stops);

/// Whether a sensor is still on when the carriage has come to rest `overtravel` past switching:
/// overtravel ≤ bar length + 2·reach. Otherwise the position is lost.
bool holds_position(const Sensors& sensors, double overtravel);

/// What the lamps show for a carriage standing at `position`, each sensor's state before being
/// given: within reach it is on, beyond reach + hysteresis off, between as before.
struct Lamps {
    bool operator_on = false;
    bool machine_on = false;
    bool operator==(const Lamps&) const = default;
};
Lamps lamps_at(const Sensors& sensors, const Stops& stops, double position, Lamps before);

} // namespace carriageway
