#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/rate_worth.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using Places = std::vector<std::size_t>;

namespace {

const Worth& worth_of(const std::vector<Worth>& all, Lever lever, std::size_t place) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Worth& one) {
        return one.lever == lever && one.place == place;
    });
    REQUIRE(found != all.end());
    return *found;
}

/// Only heads take long: the flash and the people take a second.
RatePlan head_plan() {
    RatePlan plan = sample_plan();
    for (const std::size_t place : {0U, 2U, 5U}) plan.stations[place].seconds = 1.0;
    return plan;
}

} // namespace

TEST_CASE("A second less under the flash by hand", "[rate_worth]") {
    const std::vector<Worth> all = rate_worth(sample_plan());
    // 6 s to 5 s, where loading takes as long: 600 to 720 an hour.
    const Worth& flash = worth_of(all, Lever::seconds, 2);
    CHECK(flash.verdict == WorthVerdict::gains);
    CHECK(flash.step == -1.0);
    CHECK_THAT(flash.gain, WithinRel(120.0, 1e-12));
    CHECK_THAT(flash.per_unit, WithinRel(100.0, 1e-12)); // 3600/6²
    CHECK_THAT(flash.until, WithinAbs(-1.0, 1e-12));
    CHECK_THAT(flash.most_gain, WithinRel(120.0, 1e-12));
    CHECK(flash.next == Places{0});
    CHECK(flash.held_by.empty());
    // Two seconds less are worth no more than one.
    WorthSteps steps;
    steps.time = 2.0;
    CHECK_THAT(worth_of(rate_worth(sample_plan(), steps), Lever::seconds, 2).gain,
               WithinRel(120.0, 1e-12));
    // A dwell that can't go below 3.5 s.
    RatePlan plan = sample_plan();
    plan.stations[2].shortest = 3.5;
    const Worth shorter = worth_of(rate_worth(plan), Lever::seconds, 2);
    CHECK(shorter.step == -0.5);
    CHECK_THAT(shorter.gain, WithinRel(3600.0 / 5.5 - 600.0, 1e-12));
    CHECK_THAT(shorter.until, WithinAbs(-0.5, 1e-12));
    CHECK(shorter.next.empty());
    plan.stations[2].shortest = 4.0;
    CHECK(worth_of(rate_worth(plan), Lever::seconds, 2).verdict == WorthVerdict::at_its_end);
    CHECK(worth_of(rate_worth(plan), Lever::seconds, 2).step == 0.0);
}

TEST_CASE("A shorter stroke is worth nothing beside a longer flash", "[rate_worth]") {
    const std::vector<Worth> all = rate_worth(sample_plan());
    for (const Lever lever : {Lever::stroke, Lever::print_speed, Lever::flood_speed, Lever::drop,
                              Lever::lower, Lever::lift}) {
        const Worth& worth = worth_of(all, lever, 1);
        CHECK(worth.verdict == WorthVerdict::another_slower);
        CHECK(worth.held_by == Places{2});
        CHECK(worth.per_unit == 0.0);
        CHECK(worth.gain == 0.0);
        CHECK(worth.most_gain == 0.0);
    }
    // What it would save at the head itself is told all the same: 1/600 + 1/700 s a mm.
    CHECK_THAT(worth_of(all, Lever::stroke, 1).time_saved, WithinRel(13.0 / 4200.0, 1e-12));
    CHECK(worth_of(all, Lever::stroke, 1).step == -1.0);
    // The index is worth something beside any of them.
    const Worth& index = worth_of(all, Lever::index, 0);
    CHECK(index.verdict == WorthVerdict::gains);
    CHECK_THAT(index.gain, WithinRel(120.0, 1e-12));
    CHECK_THAT(index.until, WithinAbs(-2.0, 1e-12));
    CHECK_THAT(index.most_gain, WithinRel(300.0, 1e-12));
}

TEST_CASE("A mm of stroke at the slowest head by hand", "[rate_worth]") {
    RatePlan plan = head_plan();
    plan.stations[4].head.distance = 414.0; // the other head is 100 mm shorter
    plan.stations[1].head.shortest = 300.0;
    const std::vector<Worth> all = rate_worth(plan);
    const Worth& stroke = worth_of(all, Lever::stroke, 1);
    const double cycle = cycle_time(plan);
    CHECK_THAT(cycle, WithinAbs(4.703452, 5e-7));
    CHECK(stroke.verdict == WorthVerdict::gains);
    CHECK_THAT(stroke.per_unit, WithinRel(3600.0 / (cycle * cycle) * 13.0 / 4200.0, 1e-12));
    CHECK_THAT(stroke.gain, WithinRel(3600.0 / (cycle - 13.0 / 4200.0) - 3600.0 / cycle, 1e-9));
    CHECK_THAT(stroke.until, WithinAbs(-100.0, 1e-9));
    CHECK(stroke.next == Places{4});
    CHECK(worth_of(all, Lever::stroke, 4).held_by == Places{1});
    // With 40 mm to gain only, its own end comes first.
    plan.stations[1].head.shortest = 474.0;
    const Worth nearer = worth_of(rate_worth(plan), Lever::stroke, 1);
    CHECK_THAT(nearer.until, WithinAbs(-40.0, 1e-9));
    CHECK(nearer.next.empty());
    // A print speed that the press can't go beyond, and one that the stroke can't reach.
    plan.stations[1].head.fastest = 605.0;
    const Worth speed = worth_of(rate_worth(plan), Lever::print_speed, 1);
    CHECK(speed.step == 5.0);
    CHECK_THAT(speed.end, WithinAbs(605.0, 1e-12));
    plan.stations[4].kind = StationKind::idle;
    plan.stations[1].head.print_speed = 1e5;
    CHECK(worth_of(rate_worth(plan), Lever::print_speed, 1).verdict == WorthVerdict::no_effect);
}

TEST_CASE("Two heads that tie hold each other, and gain together", "[rate_worth]") {
    RatePlan plan = head_plan();
    plan.stations[1].head.shortest = plan.stations[4].head.shortest = 450.0;
    const std::vector<Worth> all = rate_worth(plan);
    CHECK(worth_of(all, Lever::stroke, 1).held_by == Places{4});
    CHECK(worth_of(all, Lever::stroke, 4).held_by == Places{1});
    CHECK(worth_of(all, Lever::stroke, 4).gain == 0.0);
    const JointWorth joint = worth_of_shortest_strokes(plan);
    const double cycle = cycle_time(plan) - 64.0 * 13.0 / 4200.0;
    CHECK_THAT(joint.cycle, WithinRel(cycle, 1e-12));
    CHECK_THAT(joint.gain, WithinRel(3600.0 / cycle - 3600.0 / cycle_time(plan), 1e-9));
    CHECK(joint.slowest == Places{1, 4});
    // A stroke that is shorter than the shortest already stays as it is.
    plan.stations[1].head.shortest = plan.stations[4].head.shortest = 600.0;
    CHECK(worth_of_shortest_strokes(plan).gain == 0.0);
    CHECK(worth_of_shortest_strokes(RatePlan{}).slowest.empty());
}

TEST_CASE("An index shorter than the flood beside it is worth nothing", "[rate_worth]") {
    RatePlan plan = head_plan();
    plan.stations[1].head.floods_while_indexing = true;
    plan.stations[4].kind = StationKind::idle;
    const double flood = 0.2 + 514.0 / 700.0 + 700.0 / 8000.0;
    // From 2 s down to the flood's 1.02 s every second counts.
    const Worth index = worth_of(rate_worth(plan), Lever::index, 0);
    CHECK(index.verdict == WorthVerdict::gains);
    CHECK_THAT(index.until, WithinAbs(flood - 2.0, 1e-9));
    CHECK(index.next == Places{1});
    // A flood done within the index doesn't gain by being faster.
    const Worth speed = worth_of(rate_worth(plan), Lever::flood_speed, 1);
    CHECK(speed.verdict == WorthVerdict::no_effect);
    CHECK(speed.time_saved == 0.0);
    plan.index = 0.6;
    const Worth shorter = worth_of(rate_worth(plan), Lever::index, 0);
    CHECK(shorter.verdict == WorthVerdict::no_effect);
    CHECK(shorter.held_by == Places{1});
    CHECK(worth_of(rate_worth(plan), Lever::flood_speed, 1).verdict == WorthVerdict::gains);
}

TEST_CASE("Plans and ends that can't be have no worth", "[rate_worth]") {
    CHECK(rate_worth(RatePlan{}).empty());
    for (const double bad : {-1.0, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
        RatePlan plan = sample_plan();
        plan.shortest_index = bad;
        CHECK(rate_worth(plan).empty());
        plan = sample_plan();
        plan.stations[2].shortest = bad;
        CHECK(rate_worth(plan).empty());
        plan = sample_plan();
        plan.stations[1].head.fastest = bad;
        CHECK(rate_worth(plan).empty());
        plan.stations[1].head.fastest = 0.0;
        plan.stations[1].head.shortest = bad;
        CHECK(rate_worth(plan).empty());
        CHECK(worth_of_shortest_strokes(plan).cycle == 0.0);
        // A step that can't be is the usual one.
        const WorthSteps steps{bad, bad, bad};
        CHECK(worth_of(rate_worth(sample_plan(), steps), Lever::seconds, 2).step == -1.0);
        CHECK(worth_of(rate_worth(sample_plan(), steps), Lever::print_speed, 1).step == 10.0);
    }
    // A press on which nothing but the index takes time.
    RatePlan bare;
    bare.stations = {{1, StationKind::idle, 0.0, 0.0, {}}};
    const Worth index = worth_of(rate_worth(bare), Lever::index, 0);
    CHECK_THAT(index.gain, WithinRel(1800.0, 1e-12));
    CHECK(std::isinf(index.most_gain));
}
