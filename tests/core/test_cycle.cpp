// A head's cycle moves as its numbers say: compared with the rate, with integrated speed, and with
// what assess() says is covered.
#include <algorithm>
#include <cmath>
#include <iostream>
#include <limits>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/cycle.h"
#include "core/job_pace.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;

namespace {

HeadCycle cycle_of(const Job& job, HeadId head = 1) {
    Assessment assessment;
    assess(job, assessment);
    return head_cycle(job, assessment, head);
}

const RateStep& step_of(const HeadCycle& cycle, StepKind kind) {
    const auto at = std::find_if(cycle.steps.begin(), cycle.steps.end(),
                                 [&](const RateStep& step) { return step.kind == kind; });
    REQUIRE(at != cycle.steps.end());
    return *at;
}

} // namespace

TEST_CASE("A cycle takes what the rate counts", "[cycle]") {
    sample::Random random(Catch::getSeed());
    int runs = 0;
    for (int i = 0; i < 300; ++i) {
        const Job job = sample::likely_job(random, 4);
        if (fault_of(job)) continue;
        Assessment assessment;
        assess(job, assessment);
        const RatePlan plan = rate_plan(job, assessment);
        if (rate_fault(plan)) continue;
        for (const Head& head : job.heads) {
            const HeadCycle cycle = head_cycle(job, assessment, head.id);
            if (cycle.still) continue;
            const StationWork& work = plan.stations[static_cast<std::size_t>(head.station - 1)];
            // The same numbers, added up in another order.
            CHECK(cycle.seconds - cycle.index ==
                  Approx(station_seconds(work, plan.index)).epsilon(1e-12));
            ++runs;
        }
    }
    CHECK(runs > 200);
}

TEST_CASE("The sample's head, moment by moment", "[cycle]") {
    const Job job = sample::one_head(); // prints toward the operator; rests at -257.5 and 267.125
    const HeadCycle cycle = cycle_of(job);
    const CyclePose start = pose(cycle, 0.0);
    CHECK(start.doing == StepKind::index);
    CHECK(start.turned == 0.0);
    CHECK(start.down == 0.0);
    CHECK(start.carriage == Approx(-257.5));
    CHECK(start.lamps == Lamps{true, false});
    CHECK(start.printed.empty());
    CHECK(pose(cycle, 0.5 * cycle.index).turned == Approx(0.5));

    const RateStep& flood = step_of(cycle, StepKind::flood);
    CHECK(pose(cycle, flood.start).down == 1.0);
    const CyclePose flooding = pose(cycle, flood.start + 0.5 * flood.length);
    CHECK(flooding.turned == 1.0);
    CHECK(flooding.flood == 1.0);
    CHECK(flooding.squeegee == 0.0);
    CHECK(flooding.speed == Approx(700.0)); // half way it runs at its own speed, toward the machine
    CHECK(flooding.carriage == Approx(0.5 * (267.125 - 257.5)).margin(1e-9));
    CHECK(flooding.flooded.lo == Approx(cycle.flood.lo));
    CHECK(flooding.flooded.hi == Approx(flooding.carriage - sample::edge()));
    CHECK(flooding.lamps == Lamps{false, false});
    CHECK_FALSE(flooding.flooded_all);

    const RateStep& print = step_of(cycle, StepKind::print);
    const CyclePose ready = pose(cycle, print.start);
    CHECK(ready.carriage == Approx(267.125));
    CHECK(ready.lamps == Lamps{false, true});
    CHECK(ready.flooded_all);
    CHECK(ready.flooded == cycle.flood);
    const CyclePose printing = pose(cycle, print.start + 0.5 * print.length);
    CHECK(printing.squeegee == 1.0);
    CHECK(printing.speed == Approx(-600.0));
    CHECK(printing.printed.hi == Approx(cycle.squeegee.hi));
    CHECK(printing.printed.lo == Approx(printing.carriage + sample::edge()));
    CHECK(printing.flooded.hi == Approx(printing.printed.lo));
    const CyclePose done = pose(cycle, print.end());
    CHECK(done.printed_all);
    CHECK(done.printed == cycle.squeegee);
    CHECK(done.flooded.empty());
    CHECK(pose(cycle, cycle.seconds - 1e-9).down == Approx(0.0).margin(1e-6));
    // Its very end shows what it came to; what is beyond is the next one.
    const CyclePose end = pose(cycle, cycle.seconds);
    CHECK(end.doing == StepKind::wait);
    CHECK(end.turned == 1.0);
    CHECK(end.down == Approx(0.0).margin(1e-9));
    CHECK(end.printed == cycle.squeegee);
    CHECK(pose(cycle, cycle.seconds + 0.01).doing == StepKind::index);
}

TEST_CASE("With both sensors on the carriage stays, and the head goes up and down", "[cycle]") {
    Job job = sample::one_head();
    job.heads[0].stops = {-30.0, 30.0};
    const HeadCycle cycle = cycle_of(job);
    REQUIRE(cycle.still);
    double most = 0.0;
    for (double t = 0.0; t < cycle.seconds; t += 0.01) {
        const CyclePose now = pose(cycle, t);
        CHECK(now.carriage == cycle.middle);
        CHECK(now.lamps == Lamps{true, true});
        CHECK(now.printed.empty());
        CHECK(now.flooded.empty());
        most = std::max(most, now.down);
    }
    CHECK(most == 1.0);
    CHECK(pose(cycle, 0.0).down == 0.0);
    CHECK_FALSE(bands_at(cycle, pose(cycle, 1.0)).moves);
}

TEST_CASE("Position is speed summed up, and nothing jumps", "[cycle]") {
    sample::Random random(Catch::getSeed());
    double worst = 0.0;
    int cycles = 0;
    for (int i = 0; i < 60; ++i) {
        Job job = sample::likely_job(random, 1);
        if (fault_of(job)) continue;
        if (random.chance(0.5)) job.press.pace.jerk = random.between(2e4, 4e5);
        if (random.chance(0.3)) job.press.pace.floods_while_indexing = true;
        const HeadCycle cycle = cycle_of(job, job.heads[0].id);
        if (cycle.still) continue;
        ++cycles;
        constexpr int parts = 20'000;
        const double dt = cycle.seconds / parts;
        double place = pose(cycle, 0.0).carriage;
        for (int n = 0; n < parts; ++n) {
            const double t = (n + 0.5) * dt;
            place += pose(cycle, t).speed * dt; // midpoint rule
            if (n % 50 == 49)
                worst = std::max(worst, std::abs(place - pose(cycle, (n + 1) * dt - 1e-12).carriage));
        }
    }
    std::cout << "cycles: " << cycles << " integrated, places off by " << worst << " mm at most\n";
    CHECK(cycles > 30);
    // The midpoint rule is exact on ramps but for the steps in which a ramp begins or ends.
    CHECK(worst < 0.01);
}

TEST_CASE("When it is done, a cycle has covered what assess() says", "[cycle]") {
    sample::Random random(Catch::getSeed());
    int missed = 0;
    for (int i = 0; i < 200; ++i) {
        const Job job = sample::likely_job(random, 1);
        if (fault_of(job)) continue;
        Assessment assessment;
        assess(job, assessment);
        const HeadAssessment& head = assessment.heads[0];
        const HeadCycle cycle = head_cycle(job, assessment, head.head);
        const CyclePose end = pose(cycle, cycle.seconds - 1e-9);
        CoverScratch scratch;
        Coverage covered;
        cover(head.columns, bands_at(cycle, end), scratch, covered);
        CHECK(covered.covered_area == Approx(head.coverage.covered_area).margin(1e-6));
        CHECK(covered.pieces.size() == head.coverage.pieces.size());
        missed += head.coverage.pieces.empty() ? 0 : 1;
    }
    CHECK(missed > 20);
}

TEST_CASE("Any time is a moment, of any job", "[cycle]") {
    sample::Random random(Catch::getSeed());
    const double infinity = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 300; ++i) {
        const Job job = sample::wild_job(random, 2);
        Assessment assessment;
        assess(job, assessment);
        for (const Head& head : job.heads) {
            const HeadCycle cycle = head_cycle(job, assessment, head.id);
            for (const double t : {0.0, -1.5, 1e12, std::nan(""), infinity, -infinity,
                                   random.between(0.0, 30.0)}) {
                const CyclePose now = pose(cycle, t, random.chance(0.5) ? 20.0 : 0.0);
                CHECK(now.down >= 0.0);
                CHECK(now.down <= 1.0);
                CHECK(now.turned >= 0.0);
                CHECK(now.turned <= 1.0);
                CHECK_FALSE(std::isnan(now.carriage));
            }
            const std::vector<double> events = cycle_events(cycle);
            CHECK(std::is_sorted(events.begin(), events.end()));
        }
        CHECK(head_cycle(job, assessment, 4000).steps.empty());
    }
    const HeadCycle cycle = cycle_of(sample::one_head());
    CHECK(pose(cycle, 1.0 + cycle.seconds).carriage == Approx(pose(cycle, 1.0).carriage));
    CHECK(pose(cycle, cycle.seconds + 1.0, cycle.seconds + 5.0).doing == StepKind::wait);
}
