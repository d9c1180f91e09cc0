// How a carriage moves: speed up at a constant rate, run at a constant speed, brake at the same
// rate. A stroke too short to reach its speed is a triangle. (Trapezoidal velocity profile: any
// text on motion control; tested against published values.)
//
// Distances mm, times s, speeds mm/s, accelerations mm/s².
#pragma once

namespace carriageway {

/// Time for a stroke of `distance` from rest to rest. Not positive or not finite input: 0.
double stroke_time(double distance, double speed, double acceleration);

/// Highest speed reached on the way: `speed`, or less on a short stroke. With different ramps
/// `acceleration` and `braking`. Not positive or not finite input: 0.
double peak_speed(double distance, double speed, double acceleration, double braking);

/// Distance covered from rest in `time`, while speeding up to `speed` and then running at it. Not
/// positive or not finite input: 0.
double distance_from_rest(double time, double speed, double acceleration);

/// Distance between a sensor's switching and standing still, when it switches at `speed`:
/// speed·latency + speed²/(2·acceleration). A speed that is not positive: 0; an acceleration that
/// is not positive never brakes: infinity.
double overtravel(double speed, double latency, double acceleration);

/// The highest speed whose overtravel is at most `distance`. Distance or acceleration not positive:
/// 0.
double speed_for_overtravel(double distance, double latency, double acceleration);

} // namespace carriageway
