// A carriage driven in steps of time by a controller of its own, to compare the closed forms of
// jerk_motion.h with.
//
// The controller knows only how the carriage moves now: it builds up acceleration until that is at
// its limit, or until letting go of it would just bring the carriage to the wanted speed; then it
// lets go. The instant at which it changes its mind is found by halving the step. What speed a
// stroke wants is found by trial: too fast a one runs past the end.
#pragma once

#include <functional>
#include <random>

#include "core/jerk_motion.h"

namespace carriageway::tests {

class DrivenCarriage {
  public:
    explicit DrivenCarriage(const StrokeLimits& limits) : limits_(limits) {}

    double time = 0.0;
    MotionState state;

    /// Called after every step.
    std::function<void(const DrivenCarriage&)> seen;

    /// From a constant speed to another one.
    void change_speed(double to);

    /// On at the speed that it has.
    void run_on(double seconds);

  private:
    void drive(double jerk, double seconds);
    void drive_until(double jerk, double step, const std::function<bool()>& done);

    StrokeLimits limits_;
};

/// Runs a stroke of this distance from rest to rest, telling `seen` every step, and gives the
/// carriage as it stands then.
DrivenCarriage drive_stroke(double distance, const StrokeLimits& limits,
                            const std::function<void(const DrivenCarriage&)>& seen = {});

/// A stroke that a head may make, or a much shorter one; one in five without a limit of jerk.
struct RandomStroke {
    double distance = 0.0;
    StrokeLimits limits;
};
RandomStroke random_stroke(std::mt19937_64& random);

} // namespace carriageway::tests
