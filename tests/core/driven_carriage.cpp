#include "tests/core/driven_carriage.h"

#include <algorithm>
#include <cmath>

namespace carriageway::tests {

namespace {

/// Steps for about each of a ramp's phases.
constexpr double steps_a_phase = 8.0;

/// Halvings of a step, and of the speed to try: as fine as the numbers are.
constexpr int halvings = 55;

/// As many below as above on a scale of powers.
double spread_out(std::mt19937_64& random, double lo, double hi) {
    return std::exp(std::uniform_real_distribution<double>(std::log(lo), std::log(hi))(random));
}

} // namespace

void DrivenCarriage::drive(double jerk, double seconds) {
    const MotionState from = state;
    const double t = seconds;
    state.position += from.speed * t + from.acceleration * t * t / 2 + jerk * t * t * t / 6;
    state.speed += from.acceleration * t + jerk * t * t / 2;
    state.acceleration += jerk * t;
    time += t;
}

void DrivenCarriage::drive_until(double jerk, double step, const std::function<bool()>& done) {
    while (!done()) {
        const MotionState before = state;
        const double then = time;
        drive(jerk, step);
        if (done()) {
            double short_of = 0.0, enough = step;
            for (int i = 0; i < halvings; ++i) {
                const double middle = 0.5 * (short_of + enough);
                state = before;
                time = then;
                drive(jerk, middle);
                (done() ? enough : short_of) = middle;
            }
            state = before;
            time = then;
            drive(jerk, enough);
        }
        if (seen) seen(*this);
    }
}

void DrivenCarriage::change_speed(double to) {
    const double way = to > state.speed ? 1.0 : -1.0; // of the acceleration
    const double jerk = way * limits_.jerk;
    const double by = std::abs(to - state.speed);
    const auto at_speed = [&] { return way * (state.speed - to) >= 0.0; };
    const double long_step = by / limits_.acceleration / steps_a_phase;
    if (!(limits_.jerk > 0.0)) {
        state.acceleration = way * limits_.acceleration;
        drive_until(0.0, long_step, at_speed);
    } else {
        const auto must_ease = [&] {
            const double eased =
                state.speed + way * state.acceleration * state.acceleration / (2 * limits_.jerk);
            return way * (eased - to) >= 0.0;
        };
        const auto full = [&] { return way * state.acceleration >= limits_.acceleration; };
        const double short_step =
            std::min(limits_.acceleration / limits_.jerk, std::sqrt(by / limits_.jerk)) /
            steps_a_phase;
        drive_until(jerk, short_step, [&] { return full() || must_ease(); });
        drive_until(0.0, long_step, must_ease);
        drive_until(-jerk, short_step, [&] { return way * state.acceleration <= 0.0; });
    }
    state.acceleration = 0.0;
}

void DrivenCarriage::run_on(double seconds) {
    for (int i = 0; i < 4; ++i) {
        drive(0.0, seconds / 4);
        if (seen) seen(*this);
    }
}

DrivenCarriage drive_stroke(double distance, const StrokeLimits& limits,
                            const std::function<void(const DrivenCarriage&)>& seen) {
    // The way to a speed and the way down from it are alike: half of the distance is left for each.
    const auto runs_past = [&](double speed) {
        DrivenCarriage trial(limits);
        trial.change_speed(speed);
        return trial.state.position > 0.5 * distance;
    };
    double speed = limits.speed;
    if (runs_past(speed)) {
        double slow = 0.0;
        for (int i = 0; i < halvings; ++i) {
            const double middle = 0.5 * (slow + speed);
            (runs_past(middle) ? speed : slow) = middle;
        }
        speed = slow;
    }
    DrivenCarriage carriage(limits);
    carriage.seen = seen;
    carriage.change_speed(speed);
    carriage.run_on(std::max(0.0, distance - 2.0 * carriage.state.position) / speed);
    carriage.change_speed(0.0);
    return carriage;
}

RandomStroke random_stroke(std::mt19937_64& random) {
    RandomStroke made;
    made.distance = spread_out(random, 1.0, 1500.0);
    made.limits.speed = spread_out(random, 50.0, 1500.0);
    made.limits.acceleration = spread_out(random, 300.0, 30000.0);
    made.limits.jerk = random() % 5 == 0 ? 0.0 : spread_out(random, 1e3, 1e7);
    return made;
}

} // namespace carriageway::tests
