#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/adjusters.h"
#include "tests/core/registration_bench.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

/// How far a tip stands off the frame's edge, worked out in the frame's own axes.
double gap_at(const Adjuster& one, const BySide& travel, const RigidMotion& pose) {
    Point tip{one.x, one.y};
    const double moved_by = travel[index_of(one.side)];
    (one.side == AdjusterSide::across ? tip.x : tip.y) += moved_by;
    const double c = std::cos(pose.rotation), s = std::sin(pose.rotation);
    const double dx = tip.x - pose.x, dy = tip.y - pose.y;
    return one.side == AdjusterSide::across ? c * dx + s * dy - one.x : c * dy - s * dx - one.y;
}

Adjuster screw(AdjusterSide side, double x, double y) {
    Adjuster one;
    one.side = side;
    one.x = x;
    one.y = y;
    return one;
}

} // namespace

TEST_CASE("In every pose all three tips touch the frame", "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    for (int i = 0; i < 2000; ++i) {
        std::vector<Adjuster> adjusters{
            screw(AdjusterSide::right, 200.0 + bench::within(150.0, random),
                  bench::within(400.0, random)),
            screw(AdjusterSide::across, bench::within(400.0, random), bench::within(400.0, random)),
            screw(AdjusterSide::left, -200.0 + bench::within(150.0, random),
                  bench::within(400.0, random))};
        // Some presses have the left one on the other side of the arm's axis.
        if (i % 3 == 0) std::swap(adjusters[0].x, adjusters[2].x);
        BySide travel{};
        for (double& one : travel) one = bench::within(5.0, random);
        const auto pose = pose_of(adjusters, travel);
        REQUIRE(pose.has_value());
        CHECK(std::abs(pose->rotation) < 0.2);
        const BySide back = travel_for(adjusters, *pose);
        for (const Adjuster& one : adjusters) {
            CHECK_THAT(gap_at(one, travel, *pose), WithinAbs(0.0, 1e-9));
            CHECK_THAT(back[index_of(one.side)], WithinAbs(travel[index_of(one.side)], 1e-9));
        }
    }
}

TEST_CASE("practice: the same way moves, opposite ways turn (common practice, no source)",
          "[registration]") {
    const auto adjusters = bench::three_screws(true, true, true);
    const auto same = pose_of(adjusters, {1.5, 1.5, 0.0}).value();
    CHECK_THAT(same.rotation, WithinAbs(0.0, 1e-15));
    CHECK_THAT(same.x, WithinAbs(0.0, 1e-12));
    CHECK_THAT(same.y, WithinAbs(1.5, 1e-12));
    // Right toward the machine, left toward the operator: counter-clockwise, about a place on the
    // line of the two where the across one holds the frame.
    const auto turned = pose_of(adjusters, {-1.0, 1.0, 0.0}).value();
    CHECK_THAT(turned.rotation, WithinAbs(std::atan(2.0 / 400.0), 1e-15));
    const Point held = moved(turned, {0.0, -380.0});
    CHECK_THAT(held.x, WithinAbs(0.0, 0.01));
    CHECK_THAT(held.y, WithinAbs(-380.0, 0.01));
    const auto across = pose_of(adjusters, {0.0, 0.0, -2.0}).value();
    CHECK_THAT(across.x, WithinAbs(-2.0, 1e-12));
    CHECK_THAT(across.y, WithinAbs(0.0, 1e-12));
}

TEST_CASE("What adjusters can't do is left out of the motion", "[registration]") {
    const RigidMotion wanted{0.004, 1.0, -2.0};
    const Point centre{30.0, 40.0};
    const Point to = moved(wanted, centre);
    const auto all = bench::three_screws(true, true, true);
    for (unsigned subset = 0; subset < 8; ++subset) {
        std::vector<Adjuster> some;
        for (std::size_t i = 0; i < all.size(); ++i)
            if ((subset >> i & 1U) != 0) some.push_back(all[i]);
        const bool left = (subset & 1U) != 0, right = (subset & 2U) != 0;
        const Reach expected{left || right, (subset & 4U) != 0, left && right};
        CHECK(reach_of(some) == expected);
        const RigidMotion motion = reachable(some, wanted, centre);
        CHECK(motion.rotation == (expected.turning ? wanted.rotation : 0.0));
        const Point at = moved(motion, centre);
        if (expected.along && expected.across) CHECK_THAT(at.y, WithinAbs(to.y, 1e-12));
        if (expected.across) CHECK_THAT(at.x, WithinAbs(to.x, 1e-12));
        if (!expected.along) CHECK_THAT(at.y, WithinAbs(centre.y, 1e-12));
        // The screws that are there make just this motion.
        const auto pose = pose_of(some, travel_for(some, motion)).value();
        CHECK_THAT(pose.rotation, WithinAbs(motion.rotation, 1e-12));
        CHECK_THAT(pose.x, WithinAbs(motion.x, 1e-9));
        CHECK_THAT(pose.y, WithinAbs(motion.y, 1e-9));
    }
    CHECK(reachable(all, wanted, centre).rotation == wanted.rotation);
    CHECK_THAT(reachable(all, wanted, centre).x, WithinAbs(wanted.x, 1e-12));
}

TEST_CASE("Useless lists of adjusters are refused", "[registration]") {
    using Kind = AdjusterFaultKind;
    const auto good = bench::three_screws(true, false, true);
    CHECK_FALSE(adjuster_fault(good).has_value());
    CHECK_FALSE(adjuster_fault({}).has_value());
    const auto fault_after = [&good](std::size_t which, auto change) {
        auto list = good;
        change(list[which]);
        const auto fault = adjuster_fault(list).value();
        CHECK(fault.adjuster == which);
        CHECK_FALSE(pose_of(list, {}).has_value());
        CHECK(travel_for(list, {0.01, 1.0, 1.0}) == BySide{});
        return fault.kind;
    };
    CHECK(fault_after(1, [](Adjuster& one) { one.side = AdjusterSide::left; }) ==
          Kind::repeated_side);
    CHECK(fault_after(2, [](Adjuster& one) { one.mm_per_turn = 0.0; }) == Kind::no_travel);
    CHECK(fault_after(2, [](Adjuster& one) { one.mm_per_turn = 1e-12; }) == Kind::no_travel);
    CHECK(fault_after(0, [](Adjuster& one) { one.graduations = 0; }) == Kind::no_travel);
    CHECK(fault_after(1, [](Adjuster& one) { one.x = -190.0; }) == Kind::no_lever);
    CHECK(fault_after(2, [](Adjuster& one) { one.y = std::numeric_limits<double>::quiet_NaN(); }) ==
          Kind::not_finite);
    // Travel beyond all reason: the two edges would have to stand upright.
    CHECK_FALSE(pose_of(good, {0.0, std::numeric_limits<double>::infinity(), 0.0}).has_value());
}
