#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <iostream>
#include <limits>
#include <random>

#include "core/jerk_motion.h"
#include "core/motion.h"
#include "tests/core/driven_carriage.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr int cases = 10'000;

/// The largest of many deviations, with the case that it came from.
struct Worst {
    double value = 0.0;
    int number = -1;
    void take(double deviation, int of_case) {
        if (std::isnan(value) || deviation <= value) return; // a NaN is taken, and stays
        value = deviation;
        number = of_case;
    }
};

} // namespace

TEST_CASE("An S-curve by hand, in all its forms", "[jerk_motion]") {
    // All seven phases: 0.5/0.6 + 0.6/3 + 3/30 s.
    const StrokeMotion full = stroke_motion(500.0, {600.0, 3000.0, 30000.0});
    CHECK_THAT(full.time, WithinAbs(0.5 / 0.6 + 0.2 + 0.1, 1e-12));
    CHECK((full.peak_speed == 600.0 && full.peak_acceleration == 3000.0));
    const double lengths[] = {0.1, 0.1, 0.1, 0.5 / 0.6 - 0.3, 0.1, 0.1, 0.1};
    const double cruise = 0.5 / 0.6 - 0.3;
    const double starts[] = {0, 0.1, 0.2, 0.3, 0.3 + cruise, 0.4 + cruise, 0.5 + cruise};
    const double jerks[] = {30000.0, 0.0, -30000.0, 0.0, -30000.0, 0.0, 30000.0};
    for (std::size_t i = 0; i < 7; ++i) {
        CAPTURE(i);
        CHECK_THAT(full.phases[i].length, WithinAbs(lengths[i], 1e-12));
        CHECK_THAT(full.phases[i].start, WithinAbs(starts[i], 1e-12));
        CHECK(full.phases[i].jerk == jerks[i]);
    }
    // After 0.1 s: 30000·0.1³/6 = 5 mm, 150 mm/s; after 0.2 s: 5 + 15 + 15 = 35 mm, 450 mm/s.
    CHECK_THAT(full.phases[1].from.position, WithinAbs(5.0, 1e-10));
    CHECK_THAT(full.phases[2].from.position, WithinAbs(35.0, 1e-10));
    CHECK_THAT(full.phases[2].from.speed, WithinAbs(450.0, 1e-9));
    CHECK_THAT(full.phases[5].from.acceleration, WithinAbs(-3000.0, 1e-9));
    CHECK_THAT(full.phases[6].from.position, WithinAbs(495.0, 1e-10));

    // No constant speed, a 10, j 10: w·(w/10 + 1) = 60 has w 20; 2·(20/10 + 1) s.
    const StrokeMotion no_speed = stroke_motion(60.0, {1000.0, 10.0, 10.0});
    CHECK_THAT(no_speed.peak_speed, WithinAbs(20.0, 1e-12));
    CHECK_THAT(no_speed.time, WithinAbs(6.0, 1e-12));
    CHECK(no_speed.phases[3].length == 0.0);
    CHECK_THAT(no_speed.phases[1].length, WithinAbs(1.0, 1e-12));

    // Neither constant speed nor constant acceleration: 2·j·τ³ = 54 with j 1 has τ 3; 4·τ.
    const StrokeMotion neither = stroke_motion(54.0, {1000.0, 10.0, 1.0});
    CHECK_THAT(neither.time, WithinAbs(12.0, 1e-12));
    CHECK_THAT(neither.peak_acceleration, WithinAbs(3.0, 1e-12));
    CHECK_THAT(neither.peak_speed, WithinAbs(9.0, 1e-12));

    // Constant speed without constant acceleration: v 4, j 1 ramps in 2·√4 = 4 s; 40/4 + 4.
    const StrokeMotion gentle = stroke_motion(40.0, {4.0, 10.0, 1.0});
    CHECK_THAT(gentle.time, WithinAbs(14.0, 1e-12));
    CHECK_THAT(gentle.phases[3].length, WithinAbs(6.0, 1e-12));
    CHECK_THAT(gentle.phases[1].length, WithinAbs(0.0, 1e-12));
}

TEST_CASE("Without a limit of jerk it is the trapezoid", "[jerk_motion]") {
    for (const double distance : {1.0, 45.0, 100.0, 514.625}) {
        CAPTURE(distance);
        const StrokeLimits limits{600.0, 8000.0};
        CHECK(stroke_time(distance, limits) == stroke_time(distance, 600.0, 8000.0));
        CHECK_THAT(peak_speed(distance, limits),
                   WithinRel(peak_speed(distance, 600.0, 8000.0, 8000.0), 1e-14));
        const StrokeMotion motion = stroke_motion(distance, limits);
        CHECK(motion.peak_acceleration == 8000.0);
        for (const std::size_t i : {0U, 2U, 4U, 6U}) CHECK(motion.phases[i].length == 0.0);
        for (const double time : {0.01, 0.03, 0.09})
            if (time < 0.5 * motion.time)
                CHECK_THAT(state_at(motion, time).position,
                           WithinRel(distance_from_rest(time, 600.0, 8000.0), 1e-12));
        CHECK_THAT(state_at(motion, 0.9 * motion.time).position +
                       state_at(motion, 0.1 * motion.time).position,
                   WithinRel(distance, 1e-12));
        // A jerk so high that its ramps take no time comes to the same.
        CHECK_THAT(stroke_time(distance, {600.0, 8000.0, 1e18}), WithinRel(motion.time, 1e-9));
    }
}

TEST_CASE("The ends of a stroke are met exactly", "[jerk_motion]") {
    for (const double jerk : {0.0, 1e4, 1e6}) {
        const StrokeMotion motion = stroke_motion(514.625, {600.0, 8000.0, jerk});
        for (const double before : {-1.0, 0.0, std::numeric_limits<double>::quiet_NaN()})
            CHECK((state_at(motion, before).position == 0.0 &&
                   state_at(motion, before).speed == 0.0));
        for (const double after : {motion.time, 99.0, std::numeric_limits<double>::infinity()}) {
            CHECK(state_at(motion, after).position == 514.625);
            CHECK(std::abs(state_at(motion, after).acceleration) + state_at(motion, after).speed ==
                  0);
        }
    }
}

TEST_CASE("10,000 strokes agree with a carriage driven in steps", "[jerk_motion]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    Worst time, place, speed, acceleration, end;
    int full = 0, no_speed = 0, no_acceleration = 0, neither = 0, trapezoid = 0, triangle = 0;
    for (int i = 0; i < cases; ++i) {
        const RandomStroke given = random_stroke(random);
        const StrokeMotion motion = stroke_motion(given.distance, given.limits);
        const auto compare = [&](const DrivenCarriage& carriage) {
            const MotionState ours = state_at(motion, carriage.time);
            place.take(std::abs(ours.position - carriage.state.position) / given.distance, i);
            speed.take(std::abs(ours.speed - carriage.state.speed) / motion.peak_speed, i);
            if (given.limits.jerk > 0.0) // a trapezoid's jumps: either side is right
                acceleration.take(std::abs(ours.acceleration - carriage.state.acceleration) /
                                      motion.peak_acceleration,
                                  i);
        };
        const DrivenCarriage carriage = drive_stroke(given.distance, given.limits, compare);
        end.take(std::abs(carriage.state.position - given.distance) / given.distance, i);
        time.take(std::abs(motion.time - carriage.time) / carriage.time, i);
        const bool constant = motion.phases[3].length > 0.0;
        const bool holds = motion.phases[1].length > 0.0;
        if (given.limits.jerk > 0.0)
            ++(constant ? (holds ? full : no_acceleration) : (holds ? no_speed : neither));
        else
            ++(constant ? trapezoid : triangle);
    }
    std::cout << "driven carriage: " << full << " with seven phases, " << no_speed
              << " without constant speed, " << no_acceleration
              << " without constant acceleration, " << neither << " with neither, " << trapezoid
              << " trapezoids, " << triangle << " triangles; worst relative deviation of time "
              << time.value << ", place " << place.value << ", speed " << speed.value
              << ", acceleration " << acceleration.value << '\n';
    for (const int kind : {full, no_speed, no_acceleration, neither, trapezoid, triangle})
        CHECK(kind >= cases / 50);
    INFO("cases " << time.number << ' ' << place.number << ' ' << speed.number << ' '
                  << acceleration.number << ' ' << end.number);
    CHECK(end.value <= 1e-11); // the driven carriage itself gets to where it should
    CHECK(time.value <= 1e-11);
    CHECK(place.value <= 1e-11);
    CHECK(speed.value <= 1e-11);
    // The jerk's ramps are the root of speed over jerk: a rounding of one step's place in it shows
    // in the acceleration before it shows in the speed.
    CHECK(acceleration.value <= 1e-9);
}

TEST_CASE("No limit is exceeded by the places of 10,000 strokes", "[jerk_motion]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    constexpr int samples = 50;
    Worst speed, acceleration, jerk;
    for (int i = 0; i < cases; ++i) {
        const RandomStroke given = random_stroke(random);
        const StrokeMotion motion = stroke_motion(given.distance, given.limits);
        // Differences of places are means of the derivatives over as many steps, so they keep to
        // the limits wherever the derivatives do. From before the start to behind the end.
        const double step = motion.time / samples;
        double last[3] = {};
        for (int k = -1; k <= samples + 3; ++k) {
            double now = state_at(motion, (k - 0.37) * step).position;
            const double at = now;
            const double first = (now - last[0]) / step;
            const double second = (now - 2 * last[0] + last[1]) / (step * step);
            const double third = (now - 3 * last[0] + 3 * last[1] - last[2]) / (step * step * step);
            last[2] = last[1];
            last[1] = last[0];
            last[0] = at;
            speed.take(first / given.limits.speed, i);
            acceleration.take(std::abs(second) / given.limits.acceleration, i);
            if (given.limits.jerk > 0.0) jerk.take(std::abs(third) / given.limits.jerk, i);
            CHECK(first >= -1e-9 * given.limits.speed); // never backward
        }
    }
    std::cout << "limits: highest share reached of speed " << speed.value << ", acceleration "
              << acceleration.value << ", jerk " << jerk.value << '\n';
    INFO("cases " << speed.number << ' ' << acceleration.number << ' ' << jerk.number);
    // 16 digits of a place, over the third power of a fiftieth of the time: some 1e-9 of the jerk.
    CHECK(speed.value <= 1.0 + 1e-12);
    CHECK(acceleration.value <= 1.0 + 1e-9);
    CHECK(jerk.value <= 1.0 + 1e-7);
    // And each is used to the full, as the shortest time wants it.
    CHECK(speed.value >= 1.0 - 1e-9);
    CHECK(acceleration.value >= 1.0 - 1e-9);
    CHECK(jerk.value >= 1.0 - 1e-6);
}

TEST_CASE("Slopes are those of the time", "[jerk_motion]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    Worst by_distance, by_speed;
    constexpr double share = 1e-4; // of the distance and the speed, to step by
    // Just below the distance at which the speed is reached, both sides may have a higher mean than
    // the slope there: by half of what the slope falls in a step, and it falls at most as the
    // distance to the power of −2/3.
    constexpr double fall = 0.5 * share * 2.0 / 3.0;
    for (int i = 0; i < cases; ++i) {
        const RandomStroke given = random_stroke(random);
        const StrokeSlope slope = stroke_slope(given.distance, given.limits);
        // Between the means of both sides, which differ where two forms meet within a step.
        const double ds = share * given.distance, dv = share * given.limits.speed;
        const auto time = [&](double more, double faster) {
            StrokeLimits limits = given.limits;
            limits.speed += faster;
            return stroke_time(given.distance + more, limits);
        };
        const double now = time(0, 0);
        const double below = (now - time(-ds, 0)) / ds, above = (time(ds, 0) - now) / ds;
        const double slower = (now - time(0, -dv)) / dv, faster = (time(0, dv) - now) / dv;
        const auto outside = [](double value, double one, double other, double scale) {
            const auto [lo, hi] = std::minmax(one, other);
            return std::max({0.0, lo - value, value - hi}) / scale;
        };
        CHECK(std::isfinite(below + above + slower + faster));
        by_distance.take(outside(slope.by_distance, below, above, now / given.distance), i);
        by_speed.take(outside(slope.by_speed, slower, faster, now / given.limits.speed), i);
        CHECK(slope.by_distance > 0.0);
        CHECK(slope.by_speed <= 0.0);
    }
    std::cout << "slopes: outside their sides by distance " << by_distance.value << ", by speed "
              << by_speed.value << " of the mean slope\n";
    INFO("cases " << by_distance.number << ' ' << by_speed.number);
    CHECK(by_distance.value <= 1.01 * fall);
    CHECK(by_speed.value <= 1e-9);
    // By hand: 1/600 s a mm, and 1/8000 − 500/600² s a mm/s.
    const StrokeSlope slope = stroke_slope(500.0, {600.0, 8000.0});
    CHECK_THAT(slope.by_distance, WithinRel(1.0 / 600.0, 1e-14));
    CHECK_THAT(slope.by_speed, WithinRel(1.0 / 8000.0 - 500.0 / 360000.0, 1e-13));
    // Where two forms meet: of a shorter stroke, and of a faster one. 45 = 600²/8000.
    CHECK_THAT(stroke_slope(45.0, {600.0, 8000.0}).by_distance, WithinRel(1.0 / 600.0, 1e-14));
    CHECK(stroke_slope(45.0, {600.0, 8000.0}).by_speed == 0.0);
}

TEST_CASE("A speed beyond the peak of a short stroke changes nothing", "[jerk_motion]") {
    const double most = std::numeric_limits<double>::max();
    for (const double jerk : {0.0, 3e4, 1e6})
        for (const double distance : {2.0, 60.0, 500.0}) {
            CAPTURE(jerk, distance);
            const double peak = peak_speed(distance, {most, 8000.0, jerk});
            const double shortest = stroke_time(distance, {most, 8000.0, jerk});
            CHECK_THAT(stroke_time(distance, {peak, 8000.0, jerk}), WithinRel(shortest, 1e-12));
            CHECK_THAT(stroke_time(distance, {2.0 * peak, 8000.0, jerk}),
                       WithinRel(shortest, 1e-14));
            CHECK(stroke_time(distance, {0.9 * peak, 8000.0, jerk}) > shortest * 1.0001);
        }
}

TEST_CASE("Numbers that no stroke has give zero", "[jerk_motion]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto nothing = [](double distance, const StrokeLimits& limits) {
        const StrokeMotion motion = stroke_motion(distance, limits);
        return stroke_time(distance, limits) == 0.0 && peak_speed(distance, limits) == 0.0 &&
               stroke_slope(distance, limits).by_distance == 0.0 && motion.time == 0.0 &&
               state_at(motion, 1.0).position == 0.0;
    };
    CHECK_FALSE(nothing(500.0, {600.0, 8000.0, 1e5}));
    for (const double bad : {0.0, -1.0, nan, inf, -inf}) {
        CHECK(nothing(bad, {600.0, 8000.0, 1e5}));
        CHECK(nothing(500.0, {bad, 8000.0, 1e5}));
        CHECK(nothing(500.0, {600.0, bad, 1e5}));
        if (bad != 0.0) CHECK(nothing(500.0, {600.0, 8000.0, bad}));
    }
    // Finite numbers, but no finite time.
    CHECK(nothing(1e300, {1e-300, 8000.0, 1e5}));
    for (const double huge : {1e-300, 1e-160, 1e160, 1e300})
        for (const double other : {1e-300, 1.0, 1e300})
            for (const double jerk : {0.0, 1e-300, 1e300}) {
                CHECK(std::isfinite(stroke_time(huge, {other, 8000.0, jerk})));
                CHECK(std::isfinite(stroke_time(500.0, {other, huge, jerk})));
                CHECK(std::isfinite(state_at(stroke_motion(huge, {other, huge, jerk}), 1.0).speed));
            }
}
