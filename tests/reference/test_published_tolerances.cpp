// Published values of repeated readings and of the uncertainty that they give: JCGM 100:2008,
// "Guide to the expression of uncertainty in measurement" (GUM). Student's distribution is
// Boost.Math's. (Stacks of tolerances: test_published.cpp.)
#include <boost/math/distributions/students_t.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/measuring.h"
#include "core/robust.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Standard deviations that hold `share` of Student's distribution in the middle.
double coverage_factor(double freedom, double share) {
    return quantile(boost::math::students_t(freedom), 0.5 * (1.0 + share));
}

} // namespace

TEST_CASE("twenty readings of a temperature, GUM 4.4.3", "[published]") {
    // JCGM 100:2008, table 1 and 4.4.3 (the readings from memory; they give all three results):
    // mean 100.145 °C, standard deviation 1.489 °C, that of the mean 0.333 °C.
    const ReadingStatistics found = statistics_of(
        {96.90,  98.18,  98.25,  98.61,  99.03,  99.49,  99.56,  99.74,  99.89,  100.07,
         100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72});
    CHECK(found.count == 20);
    CHECK_THAT(found.mean, WithinAbs(100.145, 0.0005));
    CHECK_THAT(found.deviation, WithinAbs(1.489, 0.0005));
    CHECK_THAT(found.error, WithinAbs(0.333, 0.0005));
    CHECK_FALSE(found.stands_off.has_value());
}

TEST_CASE("the end gauge's degrees of freedom, GUM H.1", "[published]") {
    // JCGM 100:2008, H.1.6: u(d) = 9.7 nm from 5.8 nm with 24 degrees of freedom, 3.9 with 5 and
    // 6.7 with 8: 25.6 degrees.
    CHECK_THAT(effective_freedom({{0.0, 5.8, 24.0}, {0.0, 3.9, 5.0}, {0.0, 6.7, 8.0}}),
               WithinAbs(25.6, 0.2));
    // H.1.4 and H.1.6: 25 nm with 18 degrees, 9.7 with 25.6, 2.9 with 50 and 16.6 with 2 give
    // u_c = 32 nm (unrounded 31.7) and 16.7 degrees, taken as 16. The last contribution is 50 mm by
    // 11.5e-6 /°C by 0.029 °C, unrounded 16.675.
    const double last = 50e6 * 11.5e-6 * 0.029;
    const double freedom = effective_freedom(
        {{0.0, 25.0, 18.0}, {0.0, 9.7, 25.6}, {0.0, 2.9, 50.0}, {0.0, last, 2.0}});
    CHECK_THAT(freedom, WithinAbs(16.7, 0.05));
    CHECK_THAT(freedom, WithinAbs(16.66, 0.005)); // recomputed
    // H.1.6: t for 99 % and 16 degrees is 2.92; U99 = 2.92 by 32 nm = 93 nm.
    const double factor = coverage_factor(std::floor(freedom), 0.99);
    CHECK_THAT(factor, WithinAbs(2.92, 0.005));
    CHECK_THAT(factor * 32.0, WithinAbs(93.0, 0.5));
}

TEST_CASE("the end gauge from its measuring equation, GUM H.1", "[published]") {
    // JCGM 100:2008, H.1.1: l = l_s + d − l_s·(δα·θ + α_s·δθ), in nm, with the values of H.1.2 and
    // H.1.3: l_s 50.000 623 mm, d 215 nm, δα 0 ± 0.58e-6 /°C, δθ 0 ± 0.029 °C, α_s 11.5e-6 /°C, θ
    // −0.1 °C. (The last two have no part in u_c: their coefficients are zero.)
    const Estimate length = propagate(
        [](const std::vector<double>& v) {
            return v[0] + v[1] - v[0] * (v[2] * -0.1 + 11.5e-6 * v[3]);
        },
        {{50'000'623.0, 25.0, 18.0}, {215.0, 9.7, 25.6}, {0.0, 0.58e-6, 50.0}, {0.0, 0.029, 2.0}});
    CHECK_THAT(length.value, WithinAbs(50'000'838.0, 0.5)); // H.1.7
    CHECK_THAT(length.uncertainty, WithinAbs(32.0, 0.5));
    CHECK_THAT(length.uncertainty, WithinAbs(31.71, 0.005)); // recomputed
    CHECK_THAT(length.freedom, WithinAbs(16.66, 0.005));
    CHECK_THAT(coverage_factor(16.0, 0.99) * length.uncertainty, WithinAbs(93.0, 0.5));
}

TEST_CASE("normal scores of Student's distribution", "[published]") {
    // What core/robust.h promises: the same chance beyond, within 3 % up to four deviations from
    // three degrees on, and from two on not too high. The same chance by Boost.Math.
    for (const double freedom : {3.0, 4.0, 5.0, 8.0, 16.0, 50.0, 1000.0})
        for (const double deviations : {0.5, 1.0, 2.0, 3.0, 4.0}) {
            CAPTURE(freedom, deviations);
            const double beyond = 0.5 * std::erfc(deviations / std::sqrt(2.0));
            const double t = quantile(complement(boost::math::students_t(freedom), beyond));
            CHECK_THAT(normal_score(t, freedom), WithinRel(deviations, 0.03));
            if (deviations >= 2.0) CHECK(normal_score(t, freedom) <= deviations);
            CHECK(normal_score(-t, freedom) == -normal_score(t, freedom));
        }
    CHECK(normal_score(3.0, 0.0) == 0.0);
}
