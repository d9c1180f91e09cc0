#include "core/sensor.h"

namespace carriageway {

namespace {

/// A sensor at `at` over a bar that lies from `from` to `to`, having been `on` before.
bool stays_on(const Sensors& sensors, double at, double from, double to, bool on) {
    const double reach = sensors.reach + (on ? sensors.hysteresis : 0.0);
    return at >= from - reach && at <= to + reach;
}

} // namespace

double least_separation(const Sensors& sensors) {
    if (sensors.separation_measured) return sensors.measured_separation;
    return 2.0 * sensors.reach + sensors.hysteresis +
           (sensors.machine_offset - sensors.operator_offset);
}

double separation(const Stops& stops) { return stops.machine_side - stops.operator_side; }

bool both_on(const Sensors& sensors, const Stops& stops) {
    return separation(stops) <= least_separation(sensors);
}

bool holds_position(const Sensors& sensors, double overtravel) {
    return overtravel <= sensors.bar_length + 2.0 * sensors.reach;
}

Lamps lamps_at(const Sensors& sensors, const Stops& stops, double position, Lamps before) {
    Lamps now;
    now.operator_on = stays_on(sensors, position + sensors.operator_offset,
                               stops.operator_side - sensors.bar_length, stops.operator_side,
                               before.operator_on);
    now.machine_on = stays_on(sensors, position + sensors.machine_offset, stops.machine_side,
                              stops.machine_side + sensors.bar_length, before.machine_on);
    return now;
}

} // namespace carriageway
