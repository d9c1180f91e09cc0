#include "tests/reference/stepped_carriage.h"

#include <algorithm>
#include <stdexcept>

namespace carriageway::reference {

namespace {

constexpr double step = 1e-3;         ///< s
constexpr double shortest_step = 1e-13; ///< s, where bisection ends
constexpr int most_steps = 1'000'000;

/// A sensor over a bar that lies between two places along the arm.
class LatchingSensor {
  public:
    LatchingSensor(double offset, double bar_lo, double bar_hi, const Sensors& sensors)
        : offset_(offset), lo_(bar_lo - sensors.reach), hi_(bar_hi + sensors.reach),
          hysteresis_(sensors.hysteresis) {}

    bool on() const { return on_; }
    /// What the sensor would be with the carriage there.
    bool state_at(double carriage) const { return sees(carriage, on_ ? hysteresis_ : 0.0); }
    bool would_switch_on_at(double carriage) const { return sees(carriage, 0.0); }
    void update(double carriage) { on_ = state_at(carriage); }

  private:
    bool sees(double carriage, double farther) const {
        const double at = carriage + offset_;
        return lo_ - farther <= at && at <= hi_ + farther;
    }

    double offset_, lo_, hi_, hysteresis_;
    bool on_ = false;
};

class SteppedCarriage {
  public:
    SteppedCarriage(const Sensors& sensors, const Stops& stops, double start)
        : latency_(sensors.latency),
          operator_(sensors.operator_offset, stops.operator_side - sensors.bar_length,
                    stops.operator_side, sensors),
          machine_(sensors.machine_offset, stops.machine_side,
                   stops.machine_side + sensors.bar_length, sensors),
          position_(start) {
        update();
    }

    double position() const { return position_; }
    bool both_on() const { return both_on_; }
    const LatchingSensor& operator_sensor() const { return operator_; }
    const LatchingSensor& machine_sensor() const { return machine_; }

    /// One stroke; returns whether it was up to speed when the sensor ahead switched on.
    bool stroke(const LatchingSensor& ahead, double direction, double top, double acceleration) {
        bool switched = ahead.on();
        for (int i = 0; !switched && !both_on_; ++i) {
            if (i == most_steps) throw std::runtime_error("the sensor ahead never switched on");
            const double to_top = (top - speed_) / acceleration;
            if (to_top > 0.0)
                switched = advance(ahead, direction, std::min(step, to_top), acceleration);
            else
                switched = advance(ahead, direction, step, 0.0);
            if (to_top > 0.0 && speed_ >= top * (1.0 - 1e-12)) speed_ = top;
        }
        const bool up_to_speed = speed_ == top;
        coast(direction, top, acceleration);
        return up_to_speed;
    }

  private:
    double moved(double direction, double time, double acceleration) const {
        return position_ + direction * (speed_ * time + 0.5 * acceleration * time * time);
    }

    bool same_at(double place) const {
        return operator_.state_at(place) == operator_.on() &&
               machine_.state_at(place) == machine_.on();
    }

    void update() {
        operator_.update(position_);
        machine_.update(position_);
        both_on_ = both_on_ || (operator_.on() && machine_.on());
    }

    /// Goes on for `time`, or up to the first change of a sensor; returns the time that passed.
    double go(double direction, double time, double acceleration) {
        double passed = time;
        if (!same_at(moved(direction, time, acceleration))) {
            double before = 0.0;
            while (passed - before > shortest_step) {
                const double middle = 0.5 * (before + passed);
                (same_at(moved(direction, middle, acceleration)) ? before : passed) = middle;
            }
        }
        position_ = moved(direction, passed, acceleration);
        speed_ += acceleration * passed;
        update();
        return passed;
    }

    bool advance(const LatchingSensor& ahead, double direction, double time, double acceleration) {
        go(direction, time, acceleration);
        return ahead.on();
    }

    /// The latency at the speed that there is (still gaining, if it was), then braking.
    void coast(double direction, double top, double acceleration) {
        for (double left = latency_; left > 0.0;) {
            const double to_top = (top - speed_) / acceleration;
            const bool gaining = to_top > shortest_step;
            const double time = std::min({left, step, gaining ? to_top : left});
            left -= go(direction, time, gaining ? acceleration : 0.0);
        }
        while (speed_ > 0.0) {
            const double time = std::min(step, speed_ / acceleration);
            go(direction, time, -acceleration);
            if (speed_ < acceleration * shortest_step) speed_ = 0.0;
        }
    }

    double latency_;
    LatchingSensor operator_, machine_;
    double position_;
    double speed_ = 0.0;
    bool both_on_ = false;
};

} // namespace

Run run_carriage(const Sensors& sensors, const Stops& stops, const Drive& drive) {
    const double over_operator_bar =
        stops.operator_side - 0.5 * sensors.bar_length - sensors.operator_offset;
    SteppedCarriage carriage(sensors, stops, over_operator_bar);
    const auto to_machine = [&] {
        return carriage.stroke(carriage.machine_sensor(), 1.0, drive.speed_to_machine,
                               drive.acceleration);
    };
    Run run;
    to_machine();
    run.up_to_speed_to_operator = carriage.stroke(carriage.operator_sensor(), -1.0,
                                                  drive.speed_to_operator, drive.acceleration);
    run.operator_rest = carriage.position();
    run.operator_on_at_rest = carriage.operator_sensor().on();
    run.operator_seen_at_rest = carriage.operator_sensor().would_switch_on_at(run.operator_rest);
    run.up_to_speed_to_machine = to_machine();
    run.machine_rest = carriage.position();
    run.machine_on_at_rest = carriage.machine_sensor().on();
    run.machine_seen_at_rest = carriage.machine_sensor().would_switch_on_at(run.machine_rest);
    run.both_on = carriage.both_on();
    return run;
}

} // namespace carriageway::reference
