#include "core/motion.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace carriageway {

namespace {

/// Whether a number can be reckoned with: positive, and neither NaN nor infinite.
bool usable(double number) { return number > 0.0 && std::isfinite(number); }

} // namespace

double stroke_time(double distance, double speed, double acceleration) {
    if (!usable(distance) || !usable(speed) || !usable(acceleration)) return 0.0;
    if (distance >= speed * speed / acceleration) return distance / speed + speed / acceleration;
    return 2.0 * std::sqrt(distance / acceleration);
}

double peak_speed(double distance, double speed, double acceleration, double braking) {
    if (!usable(distance) || !usable(speed) || !usable(acceleration) || !usable(braking))
        return 0.0;
    const double triangle =
        std::sqrt(2.0 * acceleration * braking * distance / (acceleration + braking));
    return std::min(speed, triangle);
}

double distance_from_rest(double time, double speed, double acceleration) {
    if (!usable(time) || !usable(speed) || !usable(acceleration)) return 0.0;
    const double ramp = speed / acceleration;
    if (time <= ramp) return 0.5 * acceleration * time * time;
    return speed * (time - 0.5 * ramp);
}

double overtravel(double speed, double latency, double acceleration) {
    if (!(speed > 0.0)) return 0.0;
    if (!(acceleration > 0.0)) return std::numeric_limits<double>::infinity();
    return speed * latency + speed * speed / (2.0 * acceleration);
}

double speed_for_overtravel(double distance, double latency, double acceleration) {
    if (!(distance > 0.0) || !(acceleration > 0.0)) return 0.0;
    // The root of v²/(2a) + v·t = distance, in the form that keeps its digits for small distances.
    const double ahead = 2.0 * distance / acceleration;
    return 2.0 * distance / (latency + std::sqrt(latency * latency + ahead));
}

} // namespace carriageway
