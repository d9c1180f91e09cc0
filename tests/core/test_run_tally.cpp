// What counts and stoppages come to, worked out by hand.
#include <catch2/catch_test_macros.hpp>
#include <limits>

#include "core/run_tally.h"

using namespace carriageway;

namespace {

constexpr std::int64_t hour = 3'600'000, start = 1'700'000'000'000;

RunRecord counted(std::vector<PieceCount> counts) {
    RunRecord record;
    record.counts = std::move(counts);
    return record;
}

} // namespace

TEST_CASE("Pieces an hour are those since the count before", "[run_tally]") {
    // 600 in two hours; 45 in a quarter of one; none in an hour.
    const RunRecord record = counted({{240, 3, {start, "AB"}},
                                      {840, 12, {start + 2 * hour, "AB"}},
                                      {885, 12, {start + 2 * hour + hour / 4, ""}},
                                      {885, 12, {start + 3 * hour + hour / 4, ""}}});
    CHECK_FALSE(pieces_an_hour(record, 0));
    CHECK(pieces_an_hour(record, 1) == 300.0);
    CHECK(pieces_an_hour(record, 2) == 180.0);
    CHECK(pieces_an_hour(record, 3) == 0.0);
    CHECK_FALSE(pieces_an_hour(record, 4));
    CHECK_FALSE(pieces_an_hour({}, 0));
}

TEST_CASE("No rate where a time is missing, goes back or is too near, or pieces become fewer",
          "[run_tally]") {
    const auto rate = [](std::int64_t before, std::int64_t after, double from, double to) {
        return pieces_an_hour(counted({{from, 0, {before, ""}}, {to, 0, {after, ""}}}), 1);
    };
    CHECK(rate(start, start + hour, 100, 400) == 300.0);
    CHECK_FALSE(rate(0, start, 100, 400));
    CHECK_FALSE(rate(start, 0, 100, 400));
    CHECK_FALSE(rate(start + hour, start, 100, 400));
    CHECK_FALSE(rate(start, start, 100, 400));
    CHECK_FALSE(rate(start, start + least_between_counts - 1, 100, 400));
    CHECK(rate(start, start + least_between_counts, 100, 105) == 300.0);
    CHECK_FALSE(rate(start, start + hour, 400, 100));
    CHECK_FALSE(rate(start, start + hour, 400, std::numeric_limits<double>::quiet_NaN()));
}

TEST_CASE("Minutes that a press stood still add up", "[run_tally]") {
    RunRecord record;
    CHECK(minutes_stood(record) == 0.0);
    record.stoppages = {{12.5, StopReason::ink, "", {}}, {4.0, StopReason::pause, "", {}}};
    CHECK(minutes_stood(record) == 16.5);
}
