// How a carriage moves whose drive limits the jerk too: it takes up its acceleration and lets go of
// it gradually (S-curve velocity profile; the trapezoid of motion.h has corners instead).
//
// From rest to rest over a distance s in the shortest time, with speed at most v, acceleration at
// most a and jerk at most j. The two ramps mirror each other. A ramp up to a speed w takes
//
//     w/a + a/j   where a is reached (w ≥ a²/j),   2·√(w/j)   where it isn't,
//
// at half of w on the average, so that both ramps cover w·ramp. The stroke takes s/w + ramp. A
// stroke that is too short for v peaks at the speed w whose ramps cover it, w·ramp = s.
//
// Distances mm, times s, speeds mm/s, accelerations mm/s², jerks mm/s³. The distance between a
// sensor's switching and standing still is another matter: overtravel() of motion.h.
#pragma once

#include <array>

namespace carriageway {

/// What a drive keeps to. Speed and acceleration above 0.
struct StrokeLimits {
    double speed = 0.0;
    double acceleration = 0.0; ///< for speeding up and for braking
    double jerk = 0.0;         ///< 0: not limited, the motion is a trapezoid
    bool operator==(const StrokeLimits&) const = default;
};

// Distance, speed or acceleration that is not positive or not finite, a jerk that is negative or
// not finite, and numbers so far apart that no finite time comes out give 0, below.

/// Time for a stroke of `distance` from rest to rest.
double stroke_time(double distance, const StrokeLimits& limits);

/// Highest speed reached on the way. With the greatest speed that a number can hold as the limit,
/// the speed from which on more of it makes the stroke no faster.
double peak_speed(double distance, const StrokeLimits& limits);

/// How a stroke's time changes with its distance and with its speed limit.
struct StrokeSlope {
    double by_distance = 0.0; ///< s per mm, not negative; where two forms meet, of a shorter stroke
    double by_speed = 0.0;    ///< s per mm/s, not positive; where two forms meet, of a faster one
};
StrokeSlope stroke_slope(double distance, const StrokeLimits& limits);

/// Where a carriage is on its stroke, and how it moves.
struct MotionState {
    double position = 0.0; ///< mm from where it started
    double speed = 0.0;
    double acceleration = 0.0; ///< negative while it brakes
};

/// A stretch of a stroke with one jerk, and the state at its start.
struct MotionPhase {
    double start = 0.0;  ///< s from the start of the stroke
    double length = 0.0; ///< s; 0 where the stroke has no such phase
    double jerk = 0.0;
    MotionState from;
};

/// A stroke from rest to rest.
struct StrokeMotion {
    double distance = 0.0;
    double time = 0.0;
    double peak_speed = 0.0;
    double peak_acceleration = 0.0;
    /// Acceleration grows, holds, fades; constant speed; braking grows, holds, fades. A trapezoid
    /// has the second, the fourth and the sixth of them.
    std::array<MotionPhase, 7> phases;
};
StrokeMotion stroke_motion(double distance, const StrokeLimits& limits);

/// The state at `time` from the stroke's start. Before it: at its start, at rest; after its end: at
/// its end, at rest. A time that is not a number counts as before.
MotionState state_at(const StrokeMotion& motion, double time);

} // namespace carriageway
