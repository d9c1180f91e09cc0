// Strokes and rates against published values, and strokes against a quadrature of another library.
//
// No table of strokes with limited jerk is published beyond the rows below, so 10,000 random ones
// are worked out in the phase plane: at a speed on the way to V the acceleration can be no higher
// than what the jerk allows to have been built up since rest and to be let go of before V, so
//
//     a(v) = min(a, √(2jv), √(2j(V − v))),  ramp = ∫ dv/a(v),  way = ∫ v dv/a(v)
//
// by Gauss-Legendre (Boost.Math), and the highest V whose two ramps fit into the distance by
// toms748_solve (Alefeld, Potra and Shi, 1995). None of the forms of core/jerk_motion.h is used.
#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/jerk_motion.h"
#include "core/motion.h"
#include "core/rate.h"
#include "tests/reference/seeded.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr int cases = 10'000;

/// Of the time. The quadrature is exact for the polynomials that come up; a root of a flat function
/// is not as sure as its value, but the time is flat there likewise.
constexpr double tolerance = 1e-10;

/// Time and way of a ramp up to a speed.
struct Ramp {
    double time = 0.0;
    double way = 0.0;
};

/// With v = u² (and V − v = u² on the other half), 1/√v being no good at 0.
Ramp ramp_by_quadrature(double speed, const StrokeLimits& limits) {
    using Rule = boost::math::quadrature::gauss<double, 15>;
    const auto slowness = [&](double from_end) { // dv/a(v) over du, v or V − v being u²
        const double allowed = limits.jerk > 0.0 ? std::sqrt(2.0 * limits.jerk) * from_end
                                                 : std::numeric_limits<double>::infinity();
        return 2.0 * from_end / std::min(limits.acceleration, allowed);
    };
    const double half = std::sqrt(0.5 * speed);
    const double corner = limits.jerk > 0.0
                              ? std::min(half, limits.acceleration / std::sqrt(2.0 * limits.jerk))
                              : 0.0;
    Ramp ramp;
    const auto add = [&](double from, double to) {
        if (!(to > from)) return;
        ramp.time += 2.0 * Rule::integrate(slowness, from, to);
        ramp.way +=
            Rule::integrate([&](double u) { return u * u * slowness(u); }, from, to) +
            Rule::integrate([&](double u) { return (speed - u * u) * slowness(u); }, from, to);
    };
    add(0.0, corner);
    add(corner, half);
    return ramp;
}

double time_by_quadrature(double distance, const StrokeLimits& limits) {
    const auto beyond = [&](double speed) {
        return 2.0 * ramp_by_quadrature(speed, limits).way / distance - 1.0;
    };
    double speed = limits.speed;
    if (beyond(speed) > 0.0) {
        boost::uintmax_t steps = 200;
        const auto root = boost::math::tools::toms748_solve(
            beyond, 1e-12 * speed, speed, beyond(1e-12 * speed), beyond(speed),
            boost::math::tools::eps_tolerance<double>(50), steps);
        speed = 0.5 * (root.first + root.second);
    }
    const Ramp ramp = ramp_by_quadrature(speed, limits);
    return 2.0 * ramp.time + std::max(0.0, distance - 2.0 * ramp.way) / speed;
}

double log_between(Seeded& random, double lo, double hi) {
    return std::exp(random.between(std::log(lo), std::log(hi)));
}

/// A press of one station whose time is known.
RatePlan plan_of(double index, double seconds) {
    RatePlan plan;
    plan.index = index;
    plan.stations = {{1, StationKind::flash, seconds, 0.0, {}}};
    return plan;
}

} // namespace

TEST_CASE("a limit of jerk that isn't there changes no time", "[computed]") {
    // The published times of the trapezoid stand in test_published.cpp: the same from the form
    // with a stroke's limits.
    CHECK(stroke_time(8.0, {2.0, 1.0}) == stroke_time(8.0, 2.0, 1.0));
    CHECK(stroke_time(500.0, {600.0, 3000.0}) == stroke_time(500.0, 600.0, 3000.0));
    CHECK(stroke_time(100.0, {600.0, 3000.0}) == stroke_time(100.0, 600.0, 3000.0));
    // Computed from v = √(as), the speed not being reached.
    CHECK_THAT(peak_speed(100.0, {600.0, 3000.0}), WithinRel(std::sqrt(3000.0 * 100.0), 1e-14));
}

TEST_CASE("strokes with a limit of jerk", "[published]") {
    // Test of a public jerk-limited trajectory library: distance, speed, acceleration and jerk 1
    // take 3.17480; distance 2 takes 4.0.
    CHECK_THAT(stroke_time(1.0, {1.0, 1.0, 1.0}), WithinAbs(3.17480, 0.000005));
    CHECK_THAT(stroke_time(2.0, {1.0, 1.0, 1.0}), WithinAbs(4.0, 1e-12));
    // Computed from t = s/v + v/a + a/j: 0.5 m at 0.6 m/s, 3 m/s² and 30 m/s³ take 1.1333 s.
    CHECK_THAT(stroke_time(500.0, {600.0, 3000.0, 30000.0}), WithinAbs(1.1333, 0.00005));
    // The same rows by the quadrature below, so that it is known to be right.
    CHECK_THAT(time_by_quadrature(1.0, {1.0, 1.0, 1.0}), WithinAbs(3.17480, 0.000005));
    CHECK_THAT(time_by_quadrature(2.0, {1.0, 1.0, 1.0}), WithinAbs(4.0, 1e-7));
    CHECK_THAT(time_by_quadrature(500.0, {600.0, 3000.0, 30000.0}), WithinAbs(1.1333, 0.00005));
    CHECK_THAT(time_by_quadrature(8.0, {2.0, 1.0}), WithinAbs(6.0, 1e-12));
}

TEST_CASE("strokes agree with quadrature in the phase plane", "[property]") {
    Tally tally("stroke times by quadrature", 60);
    double worst = 0.0;
    for (int i = 0; i < cases; ++i) {
        Seeded random(run_seed(), 60, static_cast<std::uint64_t>(i));
        const double distance = log_between(random, 1.0, 1500.0);
        StrokeLimits limits;
        limits.speed = log_between(random, 50.0, 1500.0);
        limits.acceleration = log_between(random, 300.0, 30000.0);
        if (!random.chance(0.2)) limits.jerk = log_between(random, 1e3, 1e7);
        const double expected = time_by_quadrature(distance, limits);
        const StrokeMotion motion = stroke_motion(distance, limits);
        worst = std::max(worst, std::abs(motion.time / expected - 1.0));
        tally.close(static_cast<std::uint64_t>(i), "time", motion.time, expected,
                    tolerance * expected);
        const bool constant = motion.phases[3].length > 0.0, holds = motion.phases[1].length > 0.0;
        const bool jerk = limits.jerk > 0.0;
        tally.count("trapezoid", !jerk && constant);
        tally.count("triangle", !jerk && !constant);
        tally.count("all seven phases", jerk && constant && holds);
        tally.count("no constant speed", jerk && !constant && holds);
        tally.count("no constant acceleration", jerk && constant && !holds);
        tally.count("neither", jerk && !constant && !holds);
    }
    tally.print();
    CAPTURE(worst);
    CHECK(tally.disagreements() == 0);
    for (const char* kind : {"trapezoid", "triangle", "all seven phases", "no constant speed",
                             "no constant acceleration", "neither"})
        CHECK(tally.of(kind) >= cases / 50);
}

TEST_CASE("pieces an hour", "[published]") {
    // Trade magazine: 6 s a piece are 600 an hour, 5 s are 720.
    CHECK_THAT(rate_of(plan_of(2.0, 4.0)).pieces_an_hour, WithinAbs(600.0, 1e-9));
    CHECK_THAT(rate_of(plan_of(2.0, 3.0)).pieces_an_hour, WithinAbs(720.0, 1e-9));
    // The same: 500 pieces at 3, 4, 5 and 6 s take 25, 33.3, 41.7 and 50 min. It counts pieces
    // times cycle.
    struct Row {
        double cycle, minutes;
    };
    constexpr Row rows[] = {{3.0, 25.0}, {4.0, 33.3}, {5.0, 41.7}, {6.0, 50.0}};
    for (const Row& row : rows) {
        CAPTURE(row.cycle);
        const auto run = run_time(rate_of(plan_of(1.0, row.cycle - 1.0)), 500.0);
        REQUIRE(run);
        CHECK_THAT(run->pieces_only / 60.0, WithinAbs(row.minutes, 0.05));
    }
}

TEST_CASE("index, stroke and flash make a cycle", "[computed]") {
    // Computed: index 2 s and the longer of a stroke of 1.0333 s and a flash of 7 s are 9 s, which
    // is 400 an hour or 33.33 dozen. The head floods within the index, so that its stroke is left.
    HeadPace head;
    head.distance = 500.0;
    head.print_speed = head.flood_speed = 600.0;
    head.acceleration = 3000.0;
    head.floods_while_indexing = true;
    RatePlan plan = plan_of(2.0, 7.0);
    plan.stations.push_back({2, StationKind::print, 0.0, 0.0, head});
    const Rate rate = rate_of(plan);
    REQUIRE_FALSE(rate.fault);
    CHECK_THAT(rate.stations[1].seconds, WithinAbs(1.0333, 0.00005));
    CHECK_THAT(rate.cycle, WithinAbs(9.0, 1e-12));
    CHECK_THAT(rate.pieces_an_hour, WithinAbs(400.0, 1e-9));
    CHECK_THAT(rate.dozens_an_hour, WithinAbs(33.33, 0.005));
    CHECK(rate.slowest == std::vector<std::size_t>{0});
}
