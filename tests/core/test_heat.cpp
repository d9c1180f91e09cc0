#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/heat.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// The platen's way turn by turn: warmed at the flash, cooled on the way round.
double stepped(const PlatenHeat& heat, double start, int turns) {
    double temperature = start;
    for (int turn = 0; turn < turns; ++turn) {
        temperature += heat.flash_rise * heat.flash_seconds;
        temperature = heat.ambient + (temperature - heat.ambient) *
                                         std::exp(-heat.turn_time() / heat.time_constant);
    }
    return temperature;
}

std::vector<TemperatureReading> curve(double steady, double start, double constant,
                                      double span, int count) {
    std::vector<TemperatureReading> readings;
    for (int i = 0; i < count; ++i) {
        const double time = span * i / (count - 1);
        readings.push_back({time, steady + (start - steady) * std::exp(-time / constant)});
    }
    return readings;
}

} // namespace

TEST_CASE("A platen warms turn by turn toward its steady temperature", "[heat]") {
    const PlatenHeat heat;
    for (const double start : {22.0, 40.0, 120.0})
        for (const int turns : {0, 1, 2, 7, 50, 400})
            CHECK_THAT(temperature_after(heat, start, turns),
                       WithinRel(stepped(heat, start, turns), 1e-12));
    CHECK_THAT(steady_temperature(heat), WithinRel(stepped(heat, 22.0, 2000), 1e-12));
    // By hand: 4 °C a turn, a turn of 60 s of 900 s: 22 + 4/(e^(1/15) − 1) = 22 + 58.0222.
    CHECK_THAT(steady_temperature(heat), WithinAbs(80.0222, 5e-5));
    // Once there it stays.
    const double steady = steady_temperature(heat);
    CHECK_THAT(temperature_after(heat, steady, 1), WithinRel(steady, 1e-13));
}

TEST_CASE("The turn from which a platen is steady", "[heat]") {
    const PlatenHeat heat;
    const double steady = steady_temperature(heat);
    for (const double start : {22.0, 78.0, 130.0})
        for (const double band : {0.1, 1.0, 2.0, 30.0}) {
            CAPTURE(start, band);
            const auto turn = steady_from(heat, start, band);
            REQUIRE(turn.has_value());
            CHECK(std::abs(stepped(heat, start, *turn) - steady) <= band + 1e-9);
            if (*turn > 0) CHECK(std::abs(stepped(heat, start, *turn - 1) - steady) > band - 1e-9);
        }
    CHECK(steady_from(heat, steady, 0.5) == 0);
    CHECK_FALSE(steady_from(heat, 22.0, 0.0).has_value());
    PlatenHeat slow = heat;
    slow.time_constant = 1e15;
    CHECK_FALSE(steady_from(slow, 22.0, 1.0).has_value());
}

TEST_CASE("Constants that mean nothing", "[heat]") {
    PlatenHeat heat;
    heat.time_constant = 0.0;
    CHECK_FALSE(usable(heat));
    CHECK(steady_temperature(heat) == heat.ambient);
    CHECK(temperature_after(heat, 30.0, 5) == 30.0);
    CHECK_FALSE(steady_from(heat, 30.0, 1.0).has_value());
    heat = {};
    heat.flash_rise = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(usable(heat));
    heat = {};
    heat.flash_seconds = 0.0; // no flash: the room's temperature, in closed form too
    CHECK(steady_temperature(heat) == heat.ambient);
    CHECK(temperature_after({}, 30.0, -1) == 30.0);
}

TEST_CASE("The constants come back from a curve without scatter", "[heat]") {
    for (const double constant : {120.0, 900.0, 2500.0}) {
        CAPTURE(constant);
        const WarmUp fit = fit_warm_up(curve(80.0, 22.0, constant, 1800.0, 12));
        REQUIRE(fit.refusal == WarmUpRefusal::none);
        CHECK_THAT(fit.time_constant, WithinRel(constant, 1e-6));
        CHECK_THAT(fit.steady, WithinAbs(80.0, 1e-4));
        CHECK_THAT(fit.start, WithinAbs(22.0, 1e-4));
    }
    // From a press to readings and back, the readings being one a turn.
    PlatenHeat heat;
    heat.flash_rise = 0.65;
    heat.time_constant = 700.0;
    std::vector<TemperatureReading> readings;
    for (int turn = 0; turn <= 20; ++turn)
        readings.push_back({1000.0 + heat.turn_time() * turn, stepped(heat, 24.0, turn)});
    PlatenHeat known = heat;
    known.flash_rise = known.time_constant = 1.0;
    const auto found = heat_from(fit_warm_up(readings), known);
    REQUIRE(found.has_value());
    CHECK_THAT(found->flash_rise, WithinRel(0.65, 1e-6));
    CHECK_THAT(found->time_constant, WithinRel(700.0, 1e-6));
    std::reverse(readings.begin(), readings.end());
    CHECK(fit_warm_up(readings).steady == fit_warm_up(readings).steady);
    known.flash_seconds = 0.0;
    CHECK_FALSE(heat_from(fit_warm_up(readings), known).has_value());
    known.flash_seconds = 5.0;
    known.ambient = 200.0;
    CHECK_FALSE(heat_from(fit_warm_up(readings), known).has_value());
}

TEST_CASE("Scatter shows in the standard errors", "[heat]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::normal_distribution<double> scatter(0.0, 0.5);
    constexpr int cases = 300;
    int fitted = 0, within_two = 0;
    double deviations = 0.0;
    for (int i = 0; i < cases; ++i) {
        auto readings = curve(75.0, 25.0, 600.0, 1800.0, 20);
        for (TemperatureReading& reading : readings) reading.temperature += scatter(random);
        const WarmUp fit = fit_warm_up(readings);
        if (fit.refusal != WarmUpRefusal::none) continue;
        ++fitted;
        deviations += fit.deviation * fit.deviation / cases;
        if (std::abs(fit.steady - 75.0) <= 2.0 * fit.steady_error &&
            std::abs(fit.time_constant - 600.0) <= 2.0 * fit.time_constant_error)
            ++within_two;
    }
    CHECK(fitted == cases);
    CHECK_THAT(std::sqrt(deviations), WithinRel(0.5, 0.05)); // 300·17 degrees: 0.7 % a deviation
    // Each alone lies within two standard errors in 94 % (Student, 17 degrees), both in at least
    // 88 %; five deviations of such a count are 9 %.
    CHECK(within_two >= 0.79 * cases);
    CHECK(within_two < cases);
}

TEST_CASE("Readings from which no constants follow", "[heat]") {
    CHECK(fit_warm_up({}).refusal == WarmUpRefusal::too_few);
    CHECK(fit_warm_up({{0, 20}, {0, 20}, {10, 21}, {20, 22}}).refusal == WarmUpRefusal::too_few);
    CHECK(fit_warm_up({{0, 20}, {std::nan(""), 20}, {10, 21}, {20, 22}}).refusal ==
          WarmUpRefusal::not_finite);
    CHECK(fit_warm_up({{0, 20}, {10, 21}, {20, 22}, {30, 23}}).refusal ==
          WarmUpRefusal::still_straight);
    CHECK(fit_warm_up({{0, 20}, {10, 21.2}, {20, 22.8}, {30, 25}}).refusal ==
          WarmUpRefusal::still_straight); // bends the wrong way
    CHECK(fit_warm_up({{0, 60}, {10, 60}, {20, 60}, {30, 60}}).refusal ==
          WarmUpRefusal::already_steady);
    CHECK(fit_warm_up({{0, 60.1}, {10, 59.9}, {20, 60.05}, {30, 60.0}, {40, 59.9}, {50, 60.1}})
              .refusal == WarmUpRefusal::already_steady);
}

TEST_CASE("Flash dwell shortens as the platen warms", "[heat]") {
    const FlashSetting found; // 5 s on a platen of 30 °C, gelling at 100
    CHECK_THAT(flash_dwell(found, 30.0)->dwell, WithinAbs(5.0, 1e-12));
    CHECK_THAT(flash_dwell(found, 51.0)->dwell, WithinAbs(3.5, 1e-12)); // 49 of 70 °C are missing
    const auto hot = flash_dwell(found, 65.0);
    CHECK_THAT(hot->model, WithinAbs(2.5, 1e-12));
    CHECK(hot->dwell == least_flash_dwell);
    CHECK(hot->shorter);
    CHECK(flash_dwell(found, 150.0)->model == 0.0);
    const auto cold = flash_dwell(found, 9.0);
    CHECK_THAT(cold->model, WithinAbs(6.5, 1e-12));
    CHECK(cold->dwell == most_flash_dwell);
    CHECK(cold->longer);
    CHECK_FALSE(flash_dwell({5.0, 100.0, 100.0}, 30.0).has_value());
    CHECK_FALSE(flash_dwell({0.0, 30.0, 100.0}, 30.0).has_value());
    CHECK_FALSE(flash_dwell(found, std::nan("")).has_value());
}

TEST_CASE("Ranges of gel and cure, and warnings", "[heat]") {
    // Published trade guidance: 180 to 250 °F and 280 to 320 °F.
    const auto celsius = [](double fahrenheit) { return (fahrenheit - 32.0) / 1.8; };
    CHECK_THAT(celsius(180.0), WithinAbs(gel_from, 0.5));
    CHECK_THAT(celsius(250.0), WithinAbs(gel_to, 0.5));
    CHECK_THAT(celsius(280.0), WithinAbs(cure_from, 0.5));
    CHECK_THAT(celsius(320.0), WithinAbs(cure_to, 0.5));

    CHECK(platen_warnings(45.0).empty());
    const auto hot = platen_warnings(65.0, {50.0, 60.0, 70.0});
    REQUIRE(hot.size() == 2);
    CHECK(hot[0].kind == HeatWarningKind::sticking);
    CHECK(hot[0].limit == 50.0);
    CHECK(hot[1].kind == HeatWarningKind::dye_migration);
    CHECK(platen_warnings(std::nan("")).empty());

    CHECK(flash_warnings(100.0).empty());
    CHECK(flash_warnings(80.0).at(0).kind == HeatWarningKind::not_gelled);
    CHECK(flash_warnings(130.0).size() == 1);
    CHECK(flash_warnings(140.0).at(1).kind == HeatWarningKind::poor_adhesion);
    CHECK(cure_warnings(150.0).empty());
    CHECK(cure_warnings(130.0).at(0).kind == HeatWarningKind::not_cured);
    CHECK(cure_warnings(170.0).at(0).kind == HeatWarningKind::past_cure);
}
