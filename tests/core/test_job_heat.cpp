// A job's heat. Expected values by hand from the formulas in heat.h.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/job_heat.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

/// 10 stations, one flash unit, 4 s of 1.2 °C each, a cycle of 8 s, 420 s of cooling, 22 °C.
Job warm_job() {
    Job job;
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.uses[2] = StationUse::flash;
    return job;
}

} // namespace

TEST_CASE("A job's own numbers are put into the model", "[job_heat]") {
    Job job = warm_job();
    CHECK(flash_stations(job) == 1);
    const PlatenHeat heat = platen_heat(job);
    CHECK(heat.ambient == 22.0);
    CHECK(heat.flash_rise == 1.2);
    CHECK(heat.flash_seconds == 4.0);
    CHECK(heat.time_constant == 420.0);
    CHECK(heat.turn_time() == 80.0);
    // A second flash unit doubles what a turn gives; one under a head is none.
    job.uses[5] = StationUse::flash;
    CHECK(platen_heat(job).flash_seconds == 8.0);
    Head head;
    head.id = 1;
    head.station = 6;
    job.heads.push_back(head);
    CHECK(flash_stations(job) == 1);
}

TEST_CASE("The outlook of a run", "[job_heat]") {
    const HeatOutlook outlook = heat_outlook(warm_job());
    // 4.8/(e^(80/420) − 1) = 22.875 over the room.
    const double over = 4.8 / (std::exp(80.0 / 420.0) - 1.0);
    CHECK_THAT(outlook.steady, WithinAbs(22.0 + over, 1e-9));
    CHECK_THAT(outlook.hottest, WithinAbs(26.8 + over, 1e-9));
    // Within 1 °C after ln(22.875)·420/80 = 16.4 turns, so from the 17th.
    REQUIRE(outlook.steady_turn.has_value());
    CHECK(*outlook.steady_turn == 17);
    // What is missing to 100 °C has shrunk from 78 to 78 − over.
    REQUIRE(outlook.dwell.has_value());
    CHECK_THAT(outlook.dwell->model, WithinAbs(4.0 * (78.0 - over) / 78.0, 1e-9));
    CHECK(outlook.dwell->shorter);
    CHECK(outlook.dwell->dwell == least_flash_dwell);
    CHECK(outlook.warnings.empty());
}

TEST_CASE("Without a flash unit nothing warms", "[job_heat]") {
    Job job = warm_job();
    job.uses[2] = StationUse::open;
    const HeatOutlook outlook = heat_outlook(job);
    CHECK(outlook.flashes == 0);
    CHECK(outlook.steady == 22.0);
    CHECK(outlook.hottest == 22.0);
    CHECK_FALSE(outlook.dwell.has_value());
    CHECK(outlook.steady_turn == 0);
}

TEST_CASE("A hot run warns, and a flash that can't be reckoned gives no advice", "[job_heat]") {
    Job job = warm_job();
    job.run.flash_dwell = 12.0;
    const HeatOutlook hot = heat_outlook(job);
    REQUIRE(hot.warnings.size() == 3);
    CHECK(hot.warnings[0].kind == HeatWarningKind::sticking);
    CHECK(hot.warnings[0].value == hot.hottest);
    job.run.flash_dwell = 0.0;
    CHECK_FALSE(heat_outlook(job).dwell.has_value());
}
