#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <random>

#include "core/sensor.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

/// Moves a carriage by hand from well past the operator bar to well past the machine bar and back,
/// a step at a time, and says whether both lamps ever burnt together.
bool both_burn_somewhere(const Sensors& sensors, const Stops& stops, double step) {
    Lamps lamps;
    bool both = false;
    const double from = stops.operator_side - sensors.operator_offset - 20.0;
    const double to = stops.machine_side - sensors.machine_offset + 20.0;
    const int steps = static_cast<int>(std::abs(to - from) / step) + 1;
    const double way = to > from ? step : -step;
    for (int i = 0; i <= 2 * steps; ++i) {
        const double at = from + way * (i <= steps ? i : 2 * steps - i);
        lamps = lamps_at(sensors, stops, at, lamps);
        both = both || (lamps.operator_on && lamps.machine_on);
    }
    return both;
}

} // namespace

TEST_CASE("The least separation follows from reach, hysteresis and offsets", "[sensor]") {
    Sensors sensors;
    CHECK(least_separation(sensors) == 2.0 * 4.0 + 2.0 + 60.0);
    sensors.separation_measured = true;
    sensors.measured_separation = 72.5;
    CHECK(least_separation(sensors) == 72.5);
    CHECK(separation({-100.0, 150.0}) == 250.0);
}

TEST_CASE("Both sensors are on up to the least separation", "[sensor]") {
    const Sensors sensors;
    CHECK(both_on(sensors, {-35.0, 35.0}));
    CHECK(both_on(sensors, {-30.0, 30.0}));
    CHECK_FALSE(both_on(sensors, {-35.0, 35.001}));
    // However low, the bars' place on the arm doesn't matter.
    CHECK(both_on(sensors, {165.0, 235.0}));
}

TEST_CASE("Both-on agrees with a carriage moved by hand", "[sensor]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> share(0.0, 1.0);
    int burning = 0;
    for (int i = 0; i < 300; ++i) {
        Sensors sensors;
        sensors.reach = 1.0 + 9.0 * share(random);
        sensors.hysteresis = 5.0 * share(random);
        sensors.operator_offset = -40.0 + 30.0 * share(random);
        sensors.machine_offset = 10.0 + 30.0 * share(random);
        const double least = least_separation(sensors);
        // Away from the limit by more than the carriage's step, to either side.
        const double off = (0.1 + 20.0 * share(random)) * (i % 2 == 0 ? 1.0 : -1.0);
        if (least + off <= 0.0) continue;
        const double lo = 200.0 * share(random) - 100.0;
        const Stops stops{lo, lo + least + off};
        CAPTURE(sensors.reach, sensors.hysteresis, least, off);
        CHECK(both_burn_somewhere(sensors, stops, 0.05) == both_on(sensors, stops));
        burning += both_on(sensors, stops) ? 1 : 0;
    }
    CHECK(burning > 100);
}

TEST_CASE("A lamp goes out only beyond the hysteresis", "[sensor]") {
    const Sensors sensors; // operator sensor at −30, reach 4, hysteresis 2
    const Stops stops{-260.0, 260.0};
    Lamps lamps;
    lamps = lamps_at(sensors, stops, -225.9, lamps); // sensor at −255.9, just out of reach
    CHECK_FALSE(lamps.operator_on);
    lamps = lamps_at(sensors, stops, -226.1, lamps); // within reach
    CHECK(lamps.operator_on);
    lamps = lamps_at(sensors, stops, -225.0, lamps); // out of reach, within hysteresis
    CHECK(lamps.operator_on);
    lamps = lamps_at(sensors, stops, -223.9, lamps); // beyond
    CHECK_FALSE(lamps.operator_on);
    lamps = lamps_at(sensors, stops, -225.0, lamps); // on the way back: not yet
    CHECK_FALSE(lamps.operator_on);
    CHECK_FALSE(lamps.machine_on);
    lamps = lamps_at(sensors, stops, 230.0, lamps);
    CHECK(lamps == Lamps{false, true});
}

TEST_CASE("Each sensor sees only its own bar, and the bar has an end", "[sensor]") {
    const Sensors sensors;
    const Stops stops{-260.0, 260.0};
    // The machine sensor over the operator bar, and the other way round.
    CHECK_FALSE(lamps_at(sensors, stops, -300.0, {}).machine_on);
    CHECK_FALSE(lamps_at(sensors, stops, 300.0, {}).operator_on);
    // Past the outer end of the operator bar, at −320 − 4 for the sensor.
    CHECK(lamps_at(sensors, stops, -293.9, {}).operator_on);
    CHECK_FALSE(lamps_at(sensors, stops, -294.1, {}).operator_on);
}

TEST_CASE("The position is held while the overtravel stays over the bar", "[sensor]") {
    const Sensors sensors; // bar 60, reach 4
    CHECK(holds_position(sensors, 68.0));
    CHECK_FALSE(holds_position(sensors, 68.1));
    // The same seen by the lamp: it switches at 264 − 30 on the way in and rests farther on.
    const Stops stops{-260.0, 260.0};
    CHECK(lamps_at(sensors, stops, 226.0 + 67.9, {}).machine_on);
    CHECK_FALSE(lamps_at(sensors, stops, 226.0 + 68.1, {}).machine_on);
}
