// A job's rate. Expected values by hand from the formulas in rate.h, rate_steps.h and
// jerk_motion.h.
//
// sample::one_head() with its stops 520 apart travels 520 + 7.125 − 2.5 = 524.625 mm. At 8000 mm/s²
// a print stroke at 600 mm/s takes 524.625/600 + 600/8000 = 0.949375 s, a flood stroke at 700 mm/s
// 524.625/700 + 700/8000 = 0.836964 s. With two waits of 0.2 s for the blades, 0.25 s down and
// 0.25 s up the head takes 2.686339 s.
#include <cmath>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/edit.h"
#include "core/job_pace.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double print_stroke = 0.949375, flood_stroke = 524.625 / 700.0 + 0.0875;
constexpr double head_time = print_stroke + flood_stroke + 0.4 + 0.5;
constexpr double tight = 1e-9;

JobPace pace_of(const Job& job) {
    Assessment assessment;
    assess(job, assessment);
    return job_pace(job, assessment);
}

/// The head on station 1, loading on 2, unloading on 10, a second for each.
Job quick_job() {
    Job job = sample::one_head();
    job.uses[1] = StationUse::load;
    job.uses[9] = StationUse::unload;
    job.handling = {1.0, 1.0};
    return job;
}

Job flash_job() {
    Job job = quick_job();
    job.uses[2] = StationUse::flash;
    return job;
}

} // namespace

TEST_CASE("Index and the longest station make the cycle", "[job_pace]") {
    const JobPace pace = pace_of(quick_job());
    REQUIRE(pace.runs());
    REQUIRE(pace.plan.stations.size() == 10);
    CHECK_THAT(pace.plan.stations[0].head.distance, WithinAbs(524.625, tight));
    CHECK_THAT(pace.rate.stations[0].seconds, WithinAbs(head_time, tight));
    CHECK_THAT(pace.rate.cycle, WithinAbs(2.0 + head_time, tight));
    CHECK_THAT(pace.rate.pieces_an_hour, WithinAbs(3600.0 / (2.0 + head_time), 1e-6));
    CHECK_THAT(pace.rate.dozens_an_hour, WithinAbs(300.0 / (2.0 + head_time), 1e-6));
    CHECK(pace.rate.slowest == std::vector<std::size_t>{0});
    CHECK(pace.rate.stations[1].kind == StationKind::load);
    CHECK(pace.rate.stations[1].seconds == 1.0);
    CHECK(pace.rate.stations[9].kind == StationKind::unload);
    CHECK(pace.rate.stations[4].kind == StationKind::idle);
    CHECK(pace.rate.stations[4].seconds == 0.0);
    CHECK(pace.handling == HandlingAt::own_stations);
    // From station 2 to 10 are 8 indexes; 100 pieces of the run.
    CHECK(pace.rate.under_way == 8);
    REQUIRE(pace.run.has_value());
    CHECK_THAT(pace.run->pieces_only, WithinAbs(100.0 * (2.0 + head_time), 1e-6));
    CHECK_THAT(pace.run->with_filling, WithinAbs(108.0 * (2.0 + head_time), 1e-6));
    // What assess() says of the strokes is what the rate takes.
    Assessment assessment;
    assess(quick_job(), assessment);
    CHECK_THAT(assessment.heads.front().print_time, WithinAbs(print_stroke, tight));
    CHECK_THAT(assessment.heads.front().flood_time, WithinAbs(flood_stroke, tight));
}

TEST_CASE("Garments are handled where the job says, together where it says one", "[job_pace]") {
    Job job = sample::one_head();
    // 3 s on and 2 s off. No station is set: station 2 is the lowest open one.
    JobPace pace = pace_of(job);
    CHECK(pace.handling == HandlingAt::open_station);
    CHECK(pace.handling_station == 2);
    CHECK(pace.rate.stations[1].kind == StationKind::load);
    CHECK(pace.rate.stations[1].seconds == 5.0);
    CHECK_THAT(pace.rate.cycle, WithinAbs(7.0, tight));
    for (const StationUse only : {StationUse::load, StationUse::unload}) {
        job.uses[3] = only;
        pace = pace_of(job);
        CHECK(pace.handling == HandlingAt::own_stations);
        CHECK(pace.handling_station == 0);
        CHECK(pace.rate.stations[1].seconds == 0.0);
        CHECK(pace.rate.stations[3].kind == StationKind::load);
        CHECK(pace.rate.stations[3].seconds == 5.0);
        CHECK(pace.rate.under_way == 10);
    }
    // A head stands on the one that was to load: it prints there.
    job.uses[3] = StationUse::open;
    job.uses[0] = StationUse::load;
    CHECK(pace_of(job).handling == HandlingAt::open_station);
    job.uses.assign(10, StationUse::cool);
    pace = pace_of(job);
    CHECK(pace.handling == HandlingAt::nowhere);
    CHECK(pace.rate.stations[1].kind == StationKind::cool);
    CHECK_THAT(pace.rate.cycle, WithinAbs(2.0 + head_time, tight));
}

TEST_CASE("Strokes, jerk and flooding while the table turns count", "[job_pace]") {
    Job job = quick_job();
    job.heads.front().deposit.strokes = 2.0;
    // print-flood-print and the flood for the next piece.
    CHECK_THAT(pace_of(job).rate.longest,
               WithinAbs(2.0 * (print_stroke + flood_stroke + 0.4) + 0.5, tight));
    job.heads.front().deposit.strokes = 1.0;
    job.press.pace.floods_while_indexing = true;
    // 0.2 + 0.837 s of it are within the index of 2 s.
    CHECK_THAT(pace_of(job).rate.longest, WithinAbs(print_stroke + 0.2 + 0.5, tight));
    job.press.pace.index = 1.0;
    CHECK_THAT(pace_of(job).rate.cycle,
               WithinAbs(0.2 + flood_stroke + print_stroke + 0.2 + 0.5, tight));
    job.press.pace.floods_while_indexing = false;
    // At 80000 mm/s³ 8000 mm/s² would be reached from 8000²/80000 = 800 mm/s on: a ramp to w takes
    // 2·√(w/80000).
    job.press.pace.jerk = 80000.0;
    const double print = 524.625 / 600.0 + 2.0 * std::sqrt(600.0 / 80000.0);
    const double flood = 524.625 / 700.0 + 2.0 * std::sqrt(700.0 / 80000.0);
    CHECK_THAT(pace_of(job).rate.longest, WithinAbs(print + flood + 0.9, tight));
}

TEST_CASE("A head with both sensors on has no rate, and neither has its press", "[job_pace]") {
    Job job = quick_job();
    job.heads.front().stops = {0.0, 70.0}; // at most 2·4 + 2 + 60 apart
    JobPace pace = pace_of(job);
    CHECK_FALSE(pace.runs());
    REQUIRE(pace.still.size() == 1);
    CHECK(pace.still.front().station == 1);
    CHECK(pace.still.front().both_on);
    CHECK(pace.rate.stations.empty());
    CHECK(pace.worth.empty());
    CHECK_FALSE(pace.run.has_value());
    CHECK_FALSE(take_cycle(job, pace).has_value());
    job.heads.front().stops = {0.0, 70.1};
    CHECK(pace_of(job).runs());
    // Measured on the press as less: the sensors let go, but there is nowhere to go. The ends would
    // stand 20 + 7.125 − 2.5 = 24.6 apart; with slow strokes 20 − 68 + what little it overtravels.
    job.press.sensors.separation_measured = true;
    job.press.sensors.measured_separation = 10.0;
    job.heads.front().print_speed = job.heads.front().flood_speed = 50.0;
    job.heads.front().stops = {0.0, 20.0};
    pace = pace_of(job);
    REQUIRE(pace.still.size() == 1);
    CHECK_FALSE(pace.still.front().both_on);
    CHECK_FALSE(pace.runs());
}

TEST_CASE("A shorter stroke is worth nothing while the flash is slower", "[job_pace]") {
    // 2 + 4 s: 600 an hour.
    const JobPace pace = pace_of(flash_job());
    CHECK_THAT(pace.rate.cycle, WithinAbs(6.0, tight));
    CHECK(pace.rate.slowest == std::vector<std::size_t>{2});
    CHECK_THAT(pace.rate.stations[0].idle, WithinAbs(4.0 - head_time, tight));
    const Worth* stroke = worth_of(pace, 0, Lever::stroke);
    REQUIRE(stroke != nullptr);
    CHECK(stroke->verdict == WorthVerdict::another_slower);
    CHECK(stroke->held_by == std::vector<std::size_t>{2});
    CHECK(stroke->gain == 0.0);
    // A second less: 3600/5 − 600. No shorter than 3 s (least_flash_dwell).
    const Worth* dwell = worth_of(pace, 2, Lever::seconds);
    REQUIRE(dwell != nullptr);
    CHECK(dwell->verdict == WorthVerdict::gains);
    CHECK_THAT(dwell->gain, WithinAbs(120.0, 1e-6));
    CHECK_THAT(dwell->per_unit, WithinAbs(100.0, 1e-6)); // 3600/36
    CHECK_THAT(dwell->until, WithinAbs(-1.0, 1e-6));
    CHECK(dwell->next.empty());
    CHECK(worth_of(pace, 4, Lever::seconds) == nullptr);
    // Loading takes 3.6 s: from 0.4 s less on, loading sets the rate.
    Job job = flash_job();
    job.handling.load = 3.6;
    const JobPace other = pace_of(job);
    const Worth* even = worth_of(other, 2, Lever::seconds);
    REQUIRE(even != nullptr);
    CHECK_THAT(even->until, WithinAbs(-0.4, 1e-6));
    CHECK(even->next == std::vector<std::size_t>{1});
    CHECK_THAT(even->most_gain, WithinAbs(3600.0 / 5.6 - 600.0, 1e-6));
    CHECK(worth_of(other, 0, Lever::index) != nullptr);
}

TEST_CASE("The slowest head's stroke is worth what it is longer than needed", "[job_pace]") {
    Job job = quick_job();
    job.heads.front().stops = {-280.0, 280.0}; // 40 mm more: 564.625
    Assessment assessment;
    assess(job, assessment);
    const HeadAssessment& head = assessment.heads.front();
    REQUIRE(head.advised.has_value());
    const JobPace pace = job_pace(job, assessment);
    const Worth* stroke = worth_of(pace, 0, Lever::stroke);
    REQUIRE(stroke != nullptr);
    CHECK(stroke->verdict == WorthVerdict::gains);
    CHECK(stroke->end == ends_of(head.geometry, *head.advised).travel());
    // A mm less saves 1/600 + 1/700 s.
    const double a_mm = 1.0 / 600.0 + 1.0 / 700.0, cycle = 2.0 + head_time + 40.0 * a_mm;
    CHECK_THAT(stroke->time_saved, WithinAbs(a_mm, tight));
    CHECK_THAT(stroke->gain, WithinAbs(3600.0 / (cycle - 10.0 * a_mm) - 3600.0 / cycle, 1e-6));
    CHECK_THAT(pace.joint.cycle, WithinAbs(cycle - (564.625 - stroke->end) * a_mm, tight));
    // On the advised stops it is as short as it may be; shorter still, it stays so.
    for (const double inward : {0.0, 5.0}) {
        job.heads.front().stops = {head.advised->operator_side + inward,
                                   head.advised->machine_side - inward};
        const JobPace short_one = pace_of(job);
        const Worth* at_end = worth_of(short_one, 0, Lever::stroke);
        REQUIRE(at_end != nullptr);
        CHECK(at_end->verdict == WorthVerdict::at_its_end);
    }
}

TEST_CASE("How far the rate may be off", "[job_pace]") {
    // 5 s of handling ± 20 %, 2 s of index ± 5 %.
    const JobPace pace = pace_of(sample::one_head());
    REQUIRE(pace.range.has_value());
    CHECK_THAT(pace.range->slowest.cycle, WithinAbs(2.1 + 6.0, tight));
    CHECK_THAT(pace.range->fastest.cycle, WithinAbs(1.9 + 4.0, tight));
    CHECK_THAT(pace.range->likely_slowest.cycle, WithinAbs(7.0 + std::hypot(0.1, 1.0), tight));
    CHECK_THAT(pace.range->planned.pieces_an_hour, WithinAbs(3600.0 / 7.0, 1e-6));
    // A head: 2·1 + 2·2 mm of travel, and 5 % of 0.5 s.
    CHECK_THAT(pace.spreads[0].value, WithinAbs(6.0 * (1.0 / 600.0 + 1.0 / 700.0) + 0.025, tight));
    CHECK_FALSE(pace.spreads[0].measured);
    CHECK(pace.spreads[4].value == 0.0);
    CHECK(pace_of(flash_job()).spreads[2].value == 0.0);
}

TEST_CASE("The cycle that the heat goes by can follow the rate's", "[job_pace]") {
    Job job = sample::one_head();
    REQUIRE(job.run.cycle == 8.0);
    const JobPace pace = pace_of(job);
    CHECK(cycle_differs(job, pace));
    const std::optional<Edit> edit = take_cycle(job, pace);
    REQUIRE(edit.has_value());
    const Applied applied = apply(job, *edit);
    REQUIRE(applied);
    CHECK(job.run.cycle == 7.0);
    CHECK_FALSE(cycle_differs(job, pace_of(job)));
    CHECK_FALSE(take_cycle(job, pace_of(job)).has_value());
    REQUIRE(apply(job, *applied.inverse));
    CHECK(job.run.cycle == 8.0);
    // 4.686339 s are put in as 4.69, which is as good as the same.
    Job quick = quick_job();
    REQUIRE(apply(quick, *take_cycle(quick, pace_of(quick))));
    CHECK_THAT(quick.run.cycle, WithinAbs(4.69, tight));
    CHECK_FALSE(cycle_differs(quick, pace_of(quick)));
}
