#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/blade_pose.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

/// Where an edge stands after tilting and setting the gauge, less where it stood before.
double moved_by(const Holder& holder, const Gauge& gauge, double marks, double from, double to,
                double setting) {
    return blade_pose(holder, gauge, to, setting).height -
           blade_pose(holder, gauge, from, marks).height;
}

} // namespace

TEST_CASE("Tilting lifts an edge, and lower marks bring it back", "[blade_pose]") {
    // By hand: 65·(cos 15° − cos 25°) = 65·(0.9659258 − 0.9063078) = 3.87517 mm up.
    const Holder holder;
    Gauge gauge;
    CHECK_THAT(edge_lift(holder, radians(15.0), radians(25.0)), WithinAbs(3.87517, 5e-6));
    CHECK_THAT(edge_lift(holder, radians(25.0), radians(15.0)), WithinAbs(-3.87517, 5e-6));
    // Common practice, no source: lower marks are nearer the platen. What a mark is worth is data
    // of the profile.
    CHECK_THAT(gauge_change_for_tilt(holder, gauge, radians(15.0), radians(25.0)),
               WithinAbs(-3.87517 / 6.0, 1e-6));
    gauge.mm_per_mark = 3.0;
    CHECK_THAT(gauge_change_for_tilt(holder, gauge, radians(15.0), radians(25.0)),
               WithinAbs(-3.87517 / 3.0, 2e-6));
    gauge.mm_per_mark = 0.0;
    CHECK(gauge_change_for_tilt(holder, gauge, radians(15.0), radians(25.0)) == 0.0);
}

TEST_CASE("Wings ride clear at 15° and are down at 25°", "[blade_pose]") {
    // Common practice, no source.
    const Angles angles;
    CHECK_THAT(wing_clearance(angles, radians(15.0)), WithinAbs(30.0 * 0.17364818, 1e-6));
    CHECK(wing_clearance(angles, radians(25.0)) == 0.0);
    CHECK(wing_clearance(angles, radians(26.0)) < 0.0);
}

TEST_CASE("An edge trails its pivot and stands higher when tilted", "[blade_pose]") {
    // By hand: 65·sin 15° = 16.82324; 6·1 + 65·(1 − cos 15°) = 6 + 2.21482.
    const BladePose pose = blade_pose(Holder{}, Gauge{}, radians(15.0), 1.0);
    CHECK_THAT(pose.shift, WithinAbs(16.82324, 5e-6));
    CHECK_THAT(pose.height, WithinAbs(8.21482, 5e-6));
    const BladePose upright = blade_pose(Holder{}, Gauge{}, 0.0, 0.0);
    CHECK(upright.shift == 0.0);
    CHECK(upright.height == 0.0);
    CHECK(edge_shift(Holder{}, radians(-15.0)) == -edge_shift(Holder{}, radians(15.0)));
    // Common practice, no source: lower marks are nearer the platen.
    CHECK(blade_pose(Holder{}, Gauge{}, 0.0, 0.5).height <
          blade_pose(Holder{}, Gauge{}, 0.0, 1.0).height);
}

TEST_CASE("A gauge is corrected to its graduation, and what is left is said", "[blade_pose]") {
    // By hand: 15° to 25° lifts by 3.87517 mm, 0.64586 marks of 6 mm; from mark 1 that is 0.35414,
    // so 0.4: 3.87517 − 0.6·6 = 0.27517 mm too high.
    const auto correction =
        restore_edge_height(Holder{}, Gauge{}, 1.0, radians(15.0), radians(25.0));
    REQUIRE(correction);
    CHECK_THAT(correction->lift, WithinAbs(3.87517, 5e-6));
    CHECK_THAT(correction->exact, WithinAbs(-0.64586, 5e-6));
    CHECK_THAT(correction->setting, WithinAbs(0.4, 1e-12));
    CHECK_THAT(correction->rest, WithinAbs(0.27517, 5e-6));
    CHECK(correction->on_scale);
    // Back again it comes down by as much.
    const auto back = restore_edge_height(Holder{}, Gauge{}, 0.4, radians(25.0), radians(15.0));
    REQUIRE(back);
    CHECK_THAT(back->setting, WithinAbs(1.0, 1e-12));
    CHECK_THAT(back->rest, WithinAbs(-0.27517, 5e-6));
}

TEST_CASE("What rounding leaves is where the edge then stands", "[blade_pose]") {
    const Holder holder;
    Gauge gauge;
    for (const double graduation : {0.05, 0.1, 0.25})
        for (double marks = 0.0; marks <= 2.0; marks += 0.13)
            for (double to = 5.0; to <= 25.0; to += 2.5) {
                gauge.graduation = graduation;
                const double from = radians(15.0);
                const auto correction =
                    restore_edge_height(holder, gauge, marks, from, radians(to));
                REQUIRE(correction);
                CHECK_THAT(correction->rest, WithinAbs(moved_by(holder, gauge, marks, from,
                                                                radians(to), correction->setting),
                                                       1e-12));
                CHECK(correction->setting >= gauge.lowest);
                CHECK(correction->setting <= gauge.highest + 1e-12);
                if (correction->on_scale)
                    CHECK(std::abs(correction->rest) <=
                          0.5 * graduation * gauge.mm_per_mark + 1e-9);
                else
                    CHECK(std::abs(correction->rest) > 0.5 * graduation * gauge.mm_per_mark);
            }
}

TEST_CASE("A scale that ends first is said", "[blade_pose]") {
    const auto down = restore_edge_height(Holder{}, Gauge{}, 0.2, radians(15.0), radians(25.0));
    REQUIRE(down);
    CHECK_FALSE(down->on_scale);
    CHECK(down->setting == 0.0);
    CHECK_THAT(down->rest, WithinAbs(3.87517 - 1.2, 5e-6));
    const auto up = restore_edge_height(Holder{}, Gauge{}, 1.9, radians(25.0), radians(15.0));
    REQUIRE(up);
    CHECK_FALSE(up->on_scale);
    CHECK_THAT(up->setting, WithinAbs(2.0, 1e-12));
    CHECK_THAT(up->rest, WithinAbs(-3.87517 + 0.6, 5e-6));
    // A scale that isn't a whole number of graduations ends at the last one on it: 0, 0.3 … 1.8.
    Gauge odd;
    odd.graduation = 0.3;
    const auto last = restore_edge_height(Holder{}, odd, 1.9, radians(25.0), radians(15.0));
    REQUIRE(last);
    CHECK_THAT(last->setting, WithinAbs(1.8, 1e-12));
    CHECK_FALSE(last->on_scale);
}

TEST_CASE("A gauge that can't be set gives no correction", "[blade_pose]") {
    const double from = radians(15.0), to = radians(25.0);
    for (const double bad : {0.0, -1.0, nan_value, std::numeric_limits<double>::infinity()}) {
        Gauge gauge;
        gauge.mm_per_mark = bad;
        CHECK_FALSE(restore_edge_height(Holder{}, gauge, 1.0, from, to));
        gauge = {};
        gauge.graduation = bad;
        CHECK_FALSE(restore_edge_height(Holder{}, gauge, 1.0, from, to));
    }
    Gauge upside_down;
    upside_down.highest = -1.0;
    CHECK_FALSE(restore_edge_height(Holder{}, upside_down, 1.0, from, to));
    CHECK_FALSE(restore_edge_height(Holder{}, Gauge{}, nan_value, from, to));
    CHECK_FALSE(restore_edge_height(Holder{}, Gauge{}, 1.0, from, nan_value));
}

TEST_CASE("An edge stands over the mesh, on it, or presses it onto the garment", "[blade_pose]") {
    // Reference 2 mm over the bare platen, mesh hanging 5 above it, garment 1.
    const SurfacesUnderEdge surfaces{2.0, 5.0, 1.0};
    const EdgeContact clear = edge_contact({0.0, 3.5}, surfaces);
    CHECK(clear.over_mesh == 0.5);
    CHECK_FALSE(clear.touches_mesh());
    const EdgeContact between = edge_contact({0.0, 1.0}, surfaces);
    CHECK(between.over_mesh == -2.0);
    CHECK(between.over_garment == 2.0);
    CHECK(between.touches_mesh());
    CHECK_FALSE(between.reaches_garment());
    const EdgeContact down = edge_contact({0.0, -1.25}, surfaces);
    CHECK(down.over_garment == -0.25);
    CHECK(down.reaches_garment());
}
