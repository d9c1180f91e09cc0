// Rest positions, both sensors on and overshoot, against a carriage that is driven in small steps
// with latching sensors (stepped_carriage.h). Bars in order and in range.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "core/sensor.h"
#include "core/stroke.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/stepped_carriage.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr int cases = 30'000;
constexpr double tolerance = 1e-6; ///< mm; nearer than this to a boundary nothing is compared

/// Stops often about the least separation, in order, and never so near that the machine's sensor
/// would stand beyond its bar while the operator's is over the middle of its own.
Stops stops_near_overlap(Seeded& random, const Sensors& sensors) {
    const double least = least_separation(sensors);
    const double apart = sensors.machine_offset - sensors.operator_offset;
    double separation = least + random.between(1.0, 500.0);
    const double kind = random.between(0.0, 1.0);
    if (kind < 0.3) separation = least + random.between(-20.0, 20.0);
    if (kind < 0.15) separation = least + random.between(-0.01, 0.01);
    if (kind < 0.05) separation = random.between(1.0, least);
    separation = std::max({separation, 1.0, apart - 0.5 * sensors.bar_length});
    const double operator_side = random.between(-300.0, 0.0);
    return {operator_side, operator_side + separation};
}

struct EndSeen {
    double rest, closed_form, overtravel;
    bool up_to_speed, seen, latched;
    double outward; ///< -1 at the operator's end
};

void compare_end(Tally& tally, std::uint64_t number, const Sensors& sensors, const EndSeen& end) {
    if (end.up_to_speed) {
        tally.close(number, "rest position", end.closed_form, end.rest, tolerance);
    } else {
        // The stroke was too short to come up to its speed: it stands short of the closed form,
        // which reckons with the full speed, but not short of where the sensor switched.
        const double short_by = end.outward * (end.closed_form - end.rest);
        if (short_by < -tolerance || short_by > end.overtravel + tolerance)
            tally.disagree(number, "a slow stroke ends outside what it can");
        return;
    }
    const double held = sensors.bar_length + 2.0 * sensors.reach;
    const bool close = std::abs(end.overtravel - held) <= tolerance;
    tally.count("overshoot within 1e-6 mm of the boundary", close);
    if (close) return;
    const bool holds = holds_position(sensors, end.overtravel);
    tally.count("position lost", !holds);
    // The model asks that a sensor would switch on afresh where the carriage stands; a latched one
    // stays on for the hysteresis longer.
    if (holds != end.seen) tally.disagree(number, "holds_position");
    if (holds && !end.latched) tally.disagree(number, "a sensor let go within its bar");
    tally.count("position lost, sensor still latched", !holds && end.latched);
}

void compare_lamps(Tally& tally, std::uint64_t number, Seeded& random, const Sensors& sensors,
                   const Stops& stops) {
    const double b = sensors.bar_length, r = sensors.reach;
    for (int i = 0; i < 4; ++i) {
        const double c = random.between(stops.operator_side - b - 150.0,
                                        stops.machine_side + b + 150.0);
        const Lamps before{random.chance(0.5), random.chance(0.5)};
        const double ho = before.operator_on ? sensors.hysteresis : 0.0;
        const double hm = before.machine_on ? sensors.hysteresis : 0.0;
        const double at_o = c + sensors.operator_offset, at_m = c + sensors.machine_offset;
        const Lamps expected{
            stops.operator_side - b - r - ho <= at_o && at_o <= stops.operator_side + r + ho,
            stops.machine_side - r - hm <= at_m && at_m <= stops.machine_side + b + r + hm};
        if (lamps_at(sensors, stops, c, before) != expected) tally.disagree(number, "lamps_at");
    }
}

void random_case(Tally& tally, std::uint64_t number) {
    Seeded random(run_seed(), 5, number);
    Job job = random_job(random);
    Head& head = job.heads.front();
    Sensors& sensors = job.press.sensors;
    sensors.separation_measured = false; // the formula is what is compared
    head.stops = stops_near_overlap(random, sensors);
    compare_lamps(tally, number, random, sensors, head.stops);

    const double room = separation(head.stops) - least_separation(sensors);
    tally.count("separation within 1e-6 mm of the boundary", std::abs(room) <= tolerance);
    if (std::abs(room) <= tolerance) return;
    const bool to_machine = head.print_stroke == Direction::toward_machine;
    const Drive drive{to_machine ? head.flood_speed : head.print_speed,
                      to_machine ? head.print_speed : head.flood_speed,
                      job.press.carriage.acceleration};
    const Run run = run_carriage(sensors, head.stops, drive);
    if (run.both_on != both_on(sensors, head.stops)) tally.disagree(number, "both_on");
    tally.count("both sensors on", run.both_on);
    tally.count("both on within the hysteresis", run.both_on && -room < sensors.hysteresis);
    if (run.both_on) return;

    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    const Ends ends = ends_of(geometry, head.stops);
    compare_end(tally, number, sensors,
                {run.operator_rest, ends.operator_end, geometry.operator_overtravel,
                 run.up_to_speed_to_operator, run.operator_seen_at_rest, run.operator_on_at_rest,
                 -1.0});
    compare_end(tally, number, sensors,
                {run.machine_rest, ends.machine_end, geometry.machine_overtravel,
                 run.up_to_speed_to_machine, run.machine_seen_at_rest, run.machine_on_at_rest,
                 1.0});
    tally.count("stroke too short for its speed",
                !run.up_to_speed_to_operator || !run.up_to_speed_to_machine);
    tally.count("at speed at both ends",
                run.up_to_speed_to_operator && run.up_to_speed_to_machine);
}

} // namespace

TEST_CASE("ends, both sensors on and overshoot agree with a stepped carriage", "[property]") {
    Tally tally("stepped carriage", 5);
    for (int i = 0; i < cases; ++i) random_case(tally, static_cast<std::uint64_t>(i));
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(tally.of("separation within 1e-6 mm of the boundary") <= cases / 1000);
    CHECK(tally.of("overshoot within 1e-6 mm of the boundary") <= cases / 1000);
    for (const char* kind : {"both sensors on", "both on within the hysteresis", "position lost",
                             "stroke too short for its speed", "at speed at both ends"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= cases / 100);
    }
}
