// A job's rate with numbers that can't be, and with any that can.
#include <cmath>

#include <catch2/catch_test_macros.hpp>

#include "core/job_pace.h"
#include "tests/core/sample_job.h"

using namespace carriageway;

namespace {

JobPace pace_of(const Job& job) {
    Assessment assessment;
    assess(job, assessment);
    return job_pace(job, assessment);
}

} // namespace

TEST_CASE("Numbers that aren't finite give a fault and no rate", "[job_pace]") {
    const double bad[] = {std::nan(""), HUGE_VAL};
    for (const double number : bad) {
        Job job = sample::one_head();
        job.handling.load = number;
        CHECK_FALSE(pace_of(job).runs());
        job = sample::one_head();
        job.heads.front().deposit.strokes = number;
        const JobPace strokes = pace_of(job);
        REQUIRE(strokes.rate.fault.has_value());
        CHECK(strokes.rate.fault->kind == RateFaultKind::strokes);
        job = sample::one_head();
        job.press.pace.index = number;
        const JobPace index = pace_of(job);
        REQUIRE(index.rate.fault.has_value());
        CHECK(index.rate.fault->kind == RateFaultKind::index);
        CHECK_FALSE(cycle_differs(job, index));
    }
    Job none;
    none.press.stations = 0;
    CHECK(pace_of(none).rate.fault.has_value());
}

TEST_CASE("Whatever a job holds, its cycle is the index and the longest station", "[job_pace]") {
    constexpr std::uint64_t seed = 20261126;
    INFO("seed " << seed);
    sample::Random random(seed);
    int rates = 0, still = 0;
    for (int round = 0; round < 200; ++round) {
        const bool likely = round % 2 == 0;
        Job job = likely ? sample::likely_job(random, random.whole(1, 8))
                         : sample::wild_job(random, random.whole(1, 8));
        for (StationUse& use : job.uses) use = static_cast<StationUse>(random.whole(0, 4));
        job.press.pace.floods_while_indexing = random.chance(0.5);
        Assessment assessment;
        assess(job, assessment);
        const JobPace pace = job_pace(job, assessment);
        std::size_t both_on = 0;
        for (const HeadAssessment& head : assessment.heads) both_on += head.both_on ? 1U : 0U;
        CHECK(pace.still.size() >= both_on);
        still += pace.still.empty() ? 0 : 1;
        if (!pace.runs()) continue;
        ++rates;
        REQUIRE(pace.rate.stations.size() == static_cast<std::size_t>(job.press.stations));
        double longest = 0.0;
        for (std::size_t i = 0; i < pace.rate.stations.size(); ++i) {
            const StationPace& station = pace.rate.stations[i];
            CHECK(station.station == static_cast<int>(i) + 1);
            CHECK((station.kind == StationKind::print) ==
                  (head_on(job, station.station) != nullptr));
            longest = std::max(longest, station.seconds);
        }
        CHECK(pace.rate.cycle == job.press.pace.index + longest);
        if (pace.range) {
            CHECK(pace.range->fastest.cycle <= pace.rate.cycle);
            CHECK(pace.range->slowest.cycle >= pace.rate.cycle);
        }
        for (const Worth& worth : pace.worth) CHECK(worth.gain >= -1e-9 * pace.rate.pieces_an_hour);
    }
    CHECK(rates > 20);
    CHECK(still > 20);
}
