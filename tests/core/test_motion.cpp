#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/motion.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("A stroke takes the time worked by hand", "[motion]") {
    // Published values: tests/reference/test_published.cpp. By hand, 500/600 + 600/8000 s; and
    // 2√(20/8000) s where the speed isn't reached.
    CHECK_THAT(stroke_time(500.0, 600.0, 8000.0), WithinAbs(0.9083333333333333, 1e-12));
    CHECK_THAT(stroke_time(20.0, 600.0, 8000.0), WithinAbs(0.1, 1e-12));
    // Ramps 2 and 6, distance 48: √(2·2·6·48/8) = 12, unless it may only go 10.
    CHECK_THAT(peak_speed(48.0, 1e9, 2.0, 6.0), WithinAbs(12.0, 1e-12));
    CHECK(peak_speed(100.0, 10.0, 2.0, 4.0) == 10.0);
}

TEST_CASE("The two forms of the stroke agree where they meet", "[motion]") {
    const double change = 600.0 * 600.0 / 8000.0;
    CHECK_THAT(stroke_time(change - 1e-9, 600.0, 8000.0),
               WithinAbs(stroke_time(change + 1e-9, 600.0, 8000.0), 1e-10));
    CHECK_THAT(peak_speed(change, 600.0, 8000.0, 8000.0), WithinRel(600.0, 1e-14));
}

TEST_CASE("Distance from rest agrees with small steps of time", "[motion]") {
    const double speed = 600.0;
    const double acceleration = 8000.0;
    double stood = 0.0;
    const double step = 1e-5;
    for (int i = 1; i <= 15000; ++i) {
        const double middle = (i - 0.5) * step;
        stood += std::min(speed, acceleration * middle) * step;
        if (i % 1000 == 0)
            CHECK_THAT(distance_from_rest(i * step, speed, acceleration), WithinAbs(stood, 1e-4));
    }
    // By hand: 0.1 s of which 0.075 s speed up: 600·(0.1 − 0.0375).
    CHECK_THAT(distance_from_rest(0.1, speed, acceleration), WithinAbs(37.5, 1e-12));
}

TEST_CASE("Overtravel is latency and braking", "[motion]") {
    // By hand: 600·0.015 + 600²/16000.
    CHECK_THAT(overtravel(600.0, 0.015, 8000.0), WithinAbs(31.5, 1e-12));
    CHECK(overtravel(0.0, 0.015, 8000.0) == 0.0);
    CHECK(std::isinf(overtravel(600.0, 0.015, 0.0)));
}

TEST_CASE("The speed for an overtravel gives that overtravel", "[motion]") {
    for (const double distance : {1e-6, 0.1, 31.5, 200.0})
        for (const double latency : {0.0, 0.015, 0.2}) {
            const double speed = speed_for_overtravel(distance, latency, 8000.0);
            CHECK_THAT(overtravel(speed, latency, 8000.0), WithinRel(distance, 1e-12));
        }
    CHECK_THAT(speed_for_overtravel(31.5, 0.015, 8000.0), WithinAbs(600.0, 1e-9));
}

TEST_CASE("Numbers that no motion has give zero", "[motion]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (const double bad : {0.0, -1.0, nan, inf}) {
        CHECK(stroke_time(bad, 600.0, 8000.0) == 0.0);
        CHECK(stroke_time(500.0, bad, 8000.0) == 0.0);
        CHECK(stroke_time(500.0, 600.0, bad) == 0.0);
        CHECK(peak_speed(bad, 600.0, 8000.0, 8000.0) == 0.0);
        CHECK(peak_speed(500.0, 600.0, 8000.0, bad) == 0.0);
        CHECK(distance_from_rest(bad, 600.0, 8000.0) == 0.0);
        CHECK(distance_from_rest(0.1, bad, 8000.0) == 0.0);
    }
    for (const double bad : {0.0, -1.0, nan}) {
        CHECK(speed_for_overtravel(bad, 0.015, 8000.0) == 0.0);
        CHECK(speed_for_overtravel(10.0, 0.015, bad) == 0.0);
        CHECK(overtravel(bad, 0.015, 8000.0) == 0.0);
    }
}
