#include "core/jerk_motion.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/motion.h"

namespace carriageway {

namespace {

bool positive(double number) { return number > 0.0 && std::isfinite(number); }

bool usable(double distance, const StrokeLimits& limits) {
    return positive(distance) && positive(limits.speed) && positive(limits.acceleration) &&
           limits.jerk >= 0.0 && std::isfinite(limits.jerk);
}

/// A stroke by its peak: everything else follows from it.
struct Peak {
    double speed = 0.0;
    double acceleration = 0.0;
    double ramp = 0.0;    ///< s up to that speed
    bool cruises = false; ///< the speed limit is reached and held
    bool holds = false;   ///< the acceleration limit is reached
    double time = 0.0;    ///< of the whole stroke
};

/// The ramp up to `speed`, and what it peaks at.
Peak ramp_to(double speed, const StrokeLimits& limits) {
    Peak peak;
    peak.speed = speed;
    if (!(limits.jerk > 0.0) || speed * limits.jerk >= limits.acceleration * limits.acceleration) {
        peak.holds = true;
        peak.acceleration = limits.acceleration;
        peak.ramp = speed / limits.acceleration;
        if (limits.jerk > 0.0) peak.ramp += limits.acceleration / limits.jerk;
    } else {
        peak.acceleration = std::min(limits.acceleration, std::sqrt(speed * limits.jerk));
        peak.ramp = 2.0 * std::sqrt(speed / limits.jerk);
    }
    return peak;
}

/// The speed whose two ramps just cover the distance.
double speed_of_ramps(double distance, const StrokeLimits& limits) {
    const double a = limits.acceleration, j = limits.jerk;
    if (!(j > 0.0)) return std::sqrt(a * distance);
    const double least = a * a / j; // the lowest speed on whose ramp the acceleration is reached
    if (distance < 2.0 * least * (a / j)) {
        const double rise = std::cbrt(0.5 * distance / j); // s of growing acceleration
        return j * rise * rise;
    }
    // The positive root of w² + least·w = a·distance, in the form that keeps its digits.
    return 2.0 * a * distance / (least + std::sqrt(least * least + 4.0 * a * distance));
}

/// Numbers that no stroke has: everything 0.
Peak peak_of(double distance, const StrokeLimits& limits) {
    if (!usable(distance, limits)) return {};
    Peak peak = ramp_to(limits.speed, limits);
    peak.cruises = distance > limits.speed * peak.ramp;
    if (!peak.cruises)
        peak = ramp_to(std::min(limits.speed, speed_of_ramps(distance, limits)), limits);
    if (!(limits.jerk > 0.0))
        peak.time = stroke_time(distance, limits.speed, limits.acceleration);
    else
        peak.time = peak.cruises ? distance / limits.speed + peak.ramp : 2.0 * peak.ramp;
    return positive(peak.time) && positive(peak.speed) ? peak : Peak{};
}

/// Lengths of the phases up to the constant speed, that one included.
std::array<double, 4> phase_lengths(double distance, double jerk, const Peak& peak) {
    const double rise = jerk > 0.0 ? peak.acceleration / jerk : 0.0;
    const double hold = peak.holds ? std::max(0.0, peak.ramp - 2.0 * rise) : 0.0;
    const double constant = peak.cruises ? std::max(0.0, distance / peak.speed - peak.ramp) : 0.0;
    return {rise, hold, rise, constant};
}

/// `time` into a phase.
MotionState within(const MotionPhase& phase, double time) {
    const MotionState& from = phase.from;
    MotionState state;
    state.acceleration = from.acceleration + phase.jerk * time;
    state.speed = from.speed + time * (from.acceleration + 0.5 * phase.jerk * time);
    state.position =
        from.position +
        time * (from.speed + time * (0.5 * from.acceleration + phase.jerk * time / 6.0));
    return state;
}

/// The same point of the way as seen from the other end, run backward.
MotionState mirrored(const MotionState& state, double distance) {
    return {distance - state.position, state.speed, -state.acceleration};
}

/// The state in the first half of the stroke.
MotionState before_middle(const StrokeMotion& motion, double time) {
    std::size_t phase = 0;
    while (phase < 3 && time >= motion.phases[phase + 1].start) ++phase;
    return within(motion.phases[phase], time - motion.phases[phase].start);
}

} // namespace

double stroke_time(double distance, const StrokeLimits& limits) {
    return peak_of(distance, limits).time;
}

double peak_speed(double distance, const StrokeLimits& limits) {
    return peak_of(distance, limits).speed;
}

StrokeSlope stroke_slope(double distance, const StrokeLimits& limits) {
    const Peak peak = peak_of(distance, limits);
    if (!(peak.time > 0.0)) return {};
    const double share = limits.jerk > 0.0 ? limits.acceleration / limits.jerk : 0.0;
    StrokeSlope slope;
    if (peak.cruises) {
        // Of s/v + ramp(v).
        slope.by_distance = 1.0 / peak.speed;
        slope.by_speed =
            (peak.holds ? 1.0 / limits.acceleration : 1.0 / std::sqrt(limits.jerk * peak.speed)) -
            distance / (peak.speed * peak.speed);
        slope.by_speed = std::min(0.0, slope.by_speed);
    } else if (peak.holds) {
        // Of 2·ramp(w) where w²/a + w·a/j = s.
        slope.by_distance = 2.0 / (2.0 * peak.speed + limits.acceleration * share);
    } else {
        // Of 4·∛(s/2j).
        slope.by_distance = peak.time / (3.0 * distance);
    }
    return slope;
}

StrokeMotion stroke_motion(double distance, const StrokeLimits& limits) {
    const Peak peak = peak_of(distance, limits);
    StrokeMotion motion;
    if (!(peak.time > 0.0)) return motion;
    motion.distance = distance;
    motion.time = peak.time;
    motion.peak_speed = peak.speed;
    motion.peak_acceleration = peak.acceleration;
    const auto lengths = phase_lengths(distance, limits.jerk, peak);
    const std::array<double, 4> jerks{limits.jerk, 0.0, -limits.jerk, 0.0};
    // A trapezoid's acceleration jumps between its phases, so it is set and not carried over.
    const std::array<double, 4> accelerations{limits.jerk > 0.0 ? 0.0 : peak.acceleration,
                                              peak.acceleration, peak.acceleration, 0.0};
    auto& phases = motion.phases;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        if (i > 0) {
            phases[i].start = phases[i - 1].start + phases[i - 1].length;
            phases[i].from = within(phases[i - 1], phases[i - 1].length);
        }
        phases[i].length = lengths[i];
        phases[i].jerk = jerks[i];
        phases[i].from.acceleration = accelerations[i];
    }
    // Braking is the first three, mirrored: each starts where its image ends.
    for (std::size_t i = 0; i < 3; ++i) {
        MotionPhase& braking = phases[6 - i];
        braking.start = motion.time - phases[i + 1].start;
        braking.length = phases[i].length;
        braking.jerk = phases[i].jerk;
        braking.from = mirrored(within(phases[i], phases[i].length), distance);
    }
    return motion;
}

MotionState state_at(const StrokeMotion& motion, double time) {
    if (!(time > 0.0)) return {};
    if (!(time < motion.time)) return {motion.distance, 0.0, 0.0};
    // From whichever end is nearer, so that both ends are met exactly.
    if (time <= 0.5 * motion.time) return before_middle(motion, time);
    return mirrored(before_middle(motion, motion.time - time), motion.distance);
}

} // namespace carriageway
