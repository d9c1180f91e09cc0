// Facts of the trade that the program builds on. All of them: common practice, no source.
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/assess.h"

using namespace carriageway;
using Catch::Approx;

TEST_CASE("practice: squeegee and flood bar are set between 5 and 25 degrees (common practice, no source)") {
    const Angles angles;
    CHECK(degrees(angles.least) == Approx(5.0));
    CHECK(degrees(angles.most) == Approx(25.0));
}

TEST_CASE("practice: 15 degrees, for trainees, keeps the wings clear of the mesh; at 25 they lie on it "
          "(common practice, no source)") {
    const Angles angles;
    CHECK(wing_clearance(angles, radians(15.0)) > 0.0);
    CHECK(wing_clearance(angles, radians(15.0)) == Approx(angles.wing_length * std::sin(radians(10.0))));
    CHECK(wing_clearance(angles, radians(25.0)) == Approx(0.0).margin(1e-12));
    CHECK(wing_clearance(angles, radians(26.0)) < 0.0);
}

TEST_CASE("practice: with both sensors on the head neither prints nor floods (common practice, no source)") {
    Job job;
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    Head head;
    head.id = 1;
    head.station = 2;
    head.stops = {-20.0, 38.0}; // 58 apart, where up to 70 both can be on
    job.heads.push_back(head);
    Assessment assessment;
    assess(job, assessment);
    CHECK(assessment.heads[0].both_on);
    CHECK(assessment.heads[0].coverage.covered_area == 0.0);
    CHECK_FALSE(assessment.fit);
    CHECK(assessment.heads[0].chance_missed == 1.0);
}

TEST_CASE("practice: lower marks of a gauge are nearer the platen, and what a mark is worth is the profile's "
          "(common practice, no source)") {
    const Holder holder;
    Gauge gauge;
    // Tilting farther lifts the edge, so lower marks bring it back.
    const double change = gauge_change_for_tilt(holder, gauge, radians(15.0), radians(25.0));
    CHECK(change < 0.0);
    Gauge finer = gauge;
    finer.mm_per_mark = gauge.mm_per_mark / 2.0;
    CHECK(gauge_change_for_tilt(holder, finer, radians(15.0), radians(25.0)) == Approx(2.0 * change));
}

TEST_CASE("practice: which way a screw moves the screen is the profile's (common practice, no source)") {
    Adjuster adjuster;
    adjuster.mm_per_turn = 1.25;
    adjuster.clockwise_positive = true;
    CHECK(turns_for(adjuster, 2.5) == Approx(2.0));
    adjuster.clockwise_positive = false;
    CHECK(turns_for(adjuster, 2.5) == Approx(-2.0));
    adjuster.mm_per_turn = 1.0; // M6 coarse, ISO 261
    CHECK(turns_for(adjuster, -0.125) == Approx(0.125));
}
