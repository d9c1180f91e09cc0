#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/measuring.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Mean, deviation and error of repeated readings", "[measuring]") {
    // By hand: 2, 4, 4, 4, 5, 5, 7, 9 have mean 5 and squares that sum to 32: s² = 32/7.
    const ReadingStatistics found = statistics_of({2, 4, 4, 4, 5, 5, 7, 9});
    CHECK(found.count == 8);
    CHECK_THAT(found.mean, WithinAbs(5.0, 1e-14));
    CHECK_THAT(found.deviation, WithinRel(std::sqrt(32.0 / 7.0), 1e-14));
    CHECK_THAT(found.error, WithinRel(std::sqrt(4.0 / 7.0), 1e-14));
    CHECK(found.least == 2.0);
    CHECK(found.most == 9.0);
    CHECK(found.range() == 7.0);
    CHECK_FALSE(found.stands_off.has_value());
    CHECK(spread_of_mean(found) == Spread{found.error, true});
    CHECK(spread_of_one(found) == Spread{found.deviation, true});
    // A large mean doesn't eat the deviation.
    CHECK_THAT(statistics_of({1e6 + 0.1, 1e6 + 0.2, 1e6 + 0.3}).deviation, WithinAbs(0.1, 1e-9));
}

TEST_CASE("Too few readings, or none that count", "[measuring]") {
    CHECK(statistics_of({}).count == 0);
    CHECK(statistics_of({1.0, std::nan("")}).count == 0);
    const ReadingStatistics one = statistics_of({4.0});
    CHECK(one.mean == 4.0);
    CHECK(one.deviation == 0.0);
    CHECK_FALSE(spread_of_mean(one).has_value());
    CHECK_FALSE(spread_of_one(one).has_value());
}

TEST_CASE("A reading that stands off is named", "[measuring]") {
    CHECK(statistics_of({70.0, 70.2, 69.9, 70.1, 77.0, 70.0}).stands_off == 4);
    CHECK_FALSE(statistics_of({70.0, 70.2, 69.9, 70.1, 70.5, 70.0}).stands_off.has_value());
    CHECK_FALSE(statistics_of({70.0, 70.0, 70.0, 70.0}).stands_off.has_value());
    // Alike but for one step of the gauge: no reason to doubt it, unless there is no step.
    CHECK_FALSE(statistics_of({70.0, 70.0, 70.0, 70.0, 70.5}, 0.5).stands_off.has_value());
    CHECK(statistics_of({70.0, 70.0, 70.0, 70.0, 70.5}).stands_off == 4);
    // Of three readings two must be alike to a thousandth of what the third is off.
    CHECK_FALSE(statistics_of({70.0, 70.1, 75.0}).stands_off.has_value());
}

TEST_CASE("Good readings seldom stand off", "[measuring]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::normal_distribution<double> normal;
    constexpr int cases = 20000;
    for (const std::size_t count : {std::size_t{3}, std::size_t{5}, std::size_t{8}}) {
        int doubted = 0;
        for (int i = 0; i < cases; ++i) {
            std::vector<double> readings(count);
            for (double& reading : readings) reading = normal(random);
            doubted += statistics_of(readings).stands_off.has_value() ? 1 : 0;
        }
        const double share = static_cast<double>(doubted) / cases;
        CAPTURE(count, share);
        // Three deviations leave 0.27 % of one reading outside, so at most that of each of them.
        CHECK(share <= 0.0027 * static_cast<double>(count) + 0.003);
        CHECK(share > 0.0);
    }
}

TEST_CASE("Scatter and step together", "[measuring]") {
    // Three readings: error 0.1/√3 with 2 degrees; half a step of 0.5: 0.5/√3 without scatter.
    const ReadingStatistics three = statistics_of({9.9, 10.0, 10.1});
    const Estimate both = estimate_of(three, 0.5);
    CHECK_THAT(both.uncertainty, WithinRel(std::sqrt(0.26 / 3.0), 1e-12));
    // (0.26/3)² over (0.01/3)²/2.
    CHECK_THAT(both.freedom, WithinRel(2.0 * 0.26 * 0.26 / (0.01 * 0.01), 1e-9));
    CHECK_THAT(estimate_of(three, 0.0).freedom, WithinRel(2.0, 1e-12));
    const Estimate once = estimate_of(statistics_of({10.0}), 0.5);
    CHECK_THAT(once.uncertainty, WithinRel(0.5 / std::sqrt(3.0), 1e-12));
    CHECK(std::isinf(once.freedom));
    CHECK(std::isinf(effective_freedom({})));
    CHECK(estimate_of({}, 1.0).uncertainty == 0.0);
}

TEST_CASE("Uncertainty of a difference and of a quotient", "[measuring]") {
    const std::vector<Estimate> inputs{{10.0, 0.3, 4.0}, {4.0, 0.4, 9.0}};
    const Estimate difference =
        propagate([](const std::vector<double>& v) { return v[0] - v[1]; }, inputs);
    CHECK(difference.value == 6.0);
    CHECK_THAT(difference.uncertainty, WithinRel(0.5, 1e-12));
    // 0.5⁴ over 0.3⁴/4 + 0.4⁴/9.
    CHECK_THAT(difference.freedom, WithinRel(0.0625 / (0.0081 / 4.0 + 0.0256 / 9.0), 1e-12));
    // Relative uncertainties add in squares, to first order: 3 % and 10 %.
    const Estimate quotient =
        propagate([](const std::vector<double>& v) { return v[0] / v[1]; }, inputs);
    CHECK_THAT(quotient.uncertainty / quotient.value, WithinRel(std::hypot(0.03, 0.1), 0.02));
    // An input without uncertainty counts for nothing.
    CHECK(propagate([](const std::vector<double>& v) { return v[0]; }, {{1.0, 0.0, 1.0}})
              .uncertainty == 0.0);
}
