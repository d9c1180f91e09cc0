// An old job on another press, worked by hand.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <algorithm>

#include "core/assess.h"
#include "core/carry_over.h"
#include "core/walk.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using sample::one_head;

namespace {

/// Heads 1, 2, ... on these stations, of a press of ten.
Job heads_on(const std::vector<int>& stations) {
    Job job = one_head();
    const Head pattern = job.heads.front();
    job.heads.clear();
    for (const int station : stations) {
        Head head = pattern;
        head.id = static_cast<HeadId>(job.heads.size() + 1);
        head.station = station;
        job.heads.push_back(head);
    }
    return job;
}

std::vector<int> stations_of(const Job& job) {
    std::vector<int> stations;
    for (const Head& head : job.heads)
        stations.push_back(head.station);
    return stations;
}

Job carried(const Job& old, const PressProfile& press, const std::vector<StationUse>& uses = {}) {
    const CarryOver over = carry_over(old, press, uses);
    REQUIRE(over.refusal == CarryRefusal::none);
    REQUIRE_FALSE(fault_of(over.job));
    return over.job;
}

/// What became of a number of the first head with this id.
Carried became(const CarryOver& over, HeadId head, Field field) {
    const auto at = std::find_if(
        over.numbers.begin(), over.numbers.end(),
        [&](const Carried& one) { return one.head == head && one.field == field; });
    REQUIRE(at != over.numbers.end());
    return *at;
}

void check_became(const CarryOver& over, Field field, double before, double after,
                  CarriedHow how) {
    CAPTURE(field == Field::count ? "station" : info_of(field).key);
    const Carried one = became(over, 1, field);
    CHECK(one.before == before);
    CHECK_THAT(one.after, WithinAbs(after, 1e-9));
    CHECK(one.how == how);
}

} // namespace

TEST_CASE("On the same press all but the stops stay", "[carry_over]") {
    Job old = heads_on({2, 5});
    old.heads[0].squeegee.gauge = 0.123; // between graduations
    const CarryOver over = carry_over(old, old.press, old.uses);
    REQUIRE(over.refusal == CarryRefusal::none);
    CHECK(over.numbers.size() == 28);
    for (const Carried& one : over.numbers) {
        const bool stop = one.field == Field::operator_stop || one.field == Field::machine_stop;
        CHECK(one.how == (stop ? CarriedHow::solved : CarriedHow::kept));
    }
    Job expected = old;
    for (Head& head : expected.heads)
        head.stops = over.job.heads[0].stops;
    CHECK(over.job == expected);
    Assessment assessment;
    assess(over.job, assessment);
    CHECK(over.job.heads[0].stops == assessment.heads[0].advised);
    // Once more: nothing is left to do.
    for (const Carried& one : carry_over(over.job, old.press, old.uses).numbers)
        CHECK(one.how == CarriedHow::kept);
}

TEST_CASE("What was noted goes, what the print is stays", "[carry_over]") {
    Job old = heads_on({2});
    old.heads[0].notes = {"soft", "two coats"};
    old.heads[0].wish.flash_after = true;
    old.heads[0].wish.screen_on = 7.0;
    old.heads[0].rounds.resize(1);
    old.height_readings = {{1, 1, 0.0, 0.0, 3.0}};
    old.garment.name = "fleece";
    old.record.notes = "slow";
    REQUIRE(apply(old, {tick(old, 1, Field::print_speed, {})}));
    const CarryOver over = carry_over(old, old.press, {});
    check_became(over, Field::screen_on, 7.0, 0.0, CarriedHow::cleared);
    Job expected = old;
    expected.heads[0].wish.screen_on = 0.0;
    expected.heads[0].rounds.clear();
    expected.heads[0].stops = over.job.heads[0].stops;
    expected.height_readings.clear();
    expected.record = {};
    expected.walk.clear();
    CHECK(over.job == expected);
}

TEST_CASE("Heads keep their stations, or make room in their order", "[carry_over]") {
    PressProfile press;
    press.stations = 8;
    std::vector<StationUse> uses(8, StationUse::open);
    CHECK(stations_of(carried(heads_on({1, 4, 8}), press, uses)) == std::vector<int>{1, 4, 8});
    uses[3] = StationUse::flash;
    CHECK(stations_of(carried(heads_on({1, 4, 8}), press, uses)) == std::vector<int>{1, 5, 8});
    CHECK(stations_of(carried(heads_on({3, 4, 5}), press, uses)) == std::vector<int>{3, 5, 6});
    // Past the end: back as far as they must.
    CHECK(stations_of(carried(heads_on({1, 9, 10}), press, uses)) == std::vector<int>{1, 7, 8});
    press.rooms.resize(8);
    press.rooms[7].print_head = false;
    CHECK(stations_of(carried(heads_on({5, 6, 8}), press, uses)) == std::vector<int>{5, 6, 7});
    const CarryOver over = carry_over(heads_on({4, 6}), press, uses);
    check_became(over, Field::count, 4.0, 5.0, CarriedHow::moved);
    CHECK(became(over, 2, Field::count).how == CarriedHow::kept);
}

TEST_CASE("Uses that are too short are filled with open stations", "[carry_over]") {
    PressProfile press;
    press.stations = 6;
    const Job job = carried(heads_on({2, 3}), press, {StationUse::load});
    CHECK(job.uses.size() == 6);
    CHECK(job.uses[0] == StationUse::load);
    CHECK(job.uses[5] == StationUse::open);
}

TEST_CASE("What can't be carried over is refused", "[carry_over]") {
    PressProfile press;
    press.stations = 4;
    const std::vector<StationUse> uses{StationUse::load, StationUse::open, StationUse::flash,
                                       StationUse::open};
    CarryOver over = carry_over(heads_on({1, 2, 3, 4, 5}), press, uses);
    CHECK(over.refusal == CarryRefusal::too_few_stations);
    CHECK(over.missing == 3);
    CHECK(over.job == Job{});
    CHECK(over.numbers.empty());
    press.sensors.bar_length = -1.0;
    CHECK(carry_over(heads_on({1}), press, uses).refusal == CarryRefusal::not_a_press);
    Job old = heads_on({1});
    old.heads[0].print_speed = 0.0;
    CHECK(carry_over(old, PressProfile{}, {}).refusal == CarryRefusal::not_a_job);
}

TEST_CASE("Speeds and angles go as far as the press does", "[carry_over]") {
    PressProfile press;
    press.carriage.fastest = 650.0;
    press.angles.most = radians(12.0);
    press.angles.wings_flat = radians(12.0);
    const CarryOver over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::print_speed, 600.0, 600.0, CarriedHow::kept);
    check_became(over, Field::flood_speed, 700.0, 650.0, CarriedHow::clamped);
    check_became(over, Field::squeegee_angle, radians(15.0), radians(12.0), CarriedHow::clamped);
    check_became(over, Field::flood_angle, radians(15.0), radians(12.0), CarriedHow::clamped);
}

TEST_CASE("An edge keeps its height on another gauge", "[carry_over]") {
    // The squeegee's edge at mark 1 of 6 mm: -8.7 + 6 = -2.7 and its lift by 15 degrees. At 5 mm a
    // mark from -10: 7.3 / 5 = 1.46, the nearest tenth 1.5.
    PressProfile press;
    press.squeegee_gauge.mm_per_mark = 5.0;
    press.edge_heights.squeegee = -10.0;
    CarryOver over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_gauge, 1.0, 1.5, CarriedHow::converted);
    check_became(over, Field::flood_gauge, 1.0, 1.0, CarriedHow::kept);
    // From -20 it would be 17.3 / 5 = 3.46 marks of 2; from 0 -2.7 / 5 is below its lowest.
    press.edge_heights.squeegee = -20.0;
    over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_gauge, 1.0, 2.0, CarriedHow::clamped);
    press.edge_heights.squeegee = 0.0;
    over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_gauge, 1.0, 0.0, CarriedHow::clamped);
}

TEST_CASE("A gauge makes up for an angle that the press doesn't have", "[carry_over]") {
    // 65 (1 - cos 15) = 2.21482, 65 (1 - cos 10) = 0.98750: 1.22732 / 6 = 0.20455 marks up.
    PressProfile press;
    press.angles.most = radians(10.0);
    press.angles.wings_flat = radians(10.0);
    press.squeegee_gauge.graduation = 0.001;
    const CarryOver over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_gauge, 1.0, 1.205, CarriedHow::converted);
    check_became(over, Field::flood_gauge, 1.0, 1.2, CarriedHow::converted);
}

TEST_CASE("Air gives the line load that it gave", "[carry_over]") {
    PressProfile press;
    press.cylinders = {40.0, 1.0, 32.0, 2.0};
    // The area grows by (40/32)^2 = 1.5625: 220 / 1.5625 = 140.8. Two of one: half of 150.
    CarryOver over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_pressure, 220.0, 140.8, CarriedHow::converted);
    check_became(over, Field::flood_pressure, 150.0, 75.0, CarriedHow::converted);
    press.cylinders = {8.0, 1.0, 0.0, 1.0};
    over = carry_over(heads_on({1}), press, {});
    check_became(over, Field::squeegee_pressure, 220.0, 1600.0, CarriedHow::clamped); // of 3520
    check_became(over, Field::flood_pressure, 150.0, 150.0, CarriedHow::cannot);
}

TEST_CASE("The mesh keeps its plane on other height points", "[carry_over]") {
    PressProfile press;
    press.height_points = {200.0, -300.0, 400.0};
    Job old = heads_on({1});
    CarryOver over = carry_over(old, press, {});
    check_became(over, Field::height_left, 3.0, 3.0, CarriedHow::kept);
    // 3 left and 4 right, 500 apart, 3.5 behind: 0.2 less tilt at points 400 apart.
    old.heads[0].heights = {3.0, 4.0, 3.5};
    over = carry_over(old, press, {});
    check_became(over, Field::height_left, 3.0, 3.1, CarriedHow::converted);
    check_became(over, Field::height_right, 4.0, 3.9, CarriedHow::converted);
    CHECK_THAT(became(over, 1, Field::height_machine).after, WithinAbs(3.5, 1e-12));
    // Rising by 7 over 700 mm from 0 at -350: 0.5 at -300, 7.5 at 400; below the platen at -900.
    old.heads[0].heights = {0.0, 0.0, 7.0};
    over = carry_over(old, press, {});
    check_became(over, Field::height_left, 0.0, 0.5, CarriedHow::converted);
    check_became(over, Field::height_right, 0.0, 0.5, CarriedHow::converted);
    check_became(over, Field::height_machine, 7.0, 7.5, CarriedHow::converted);
    press.height_points.operator_y = -900.0;
    over = carry_over(old, press, {});
    check_became(over, Field::height_left, 0.0, 0.0, CarriedHow::clamped);
}

TEST_CASE("Stops that have no room stay and are told", "[carry_over]") {
    Job old = heads_on({1});
    old.heads[0].image.length = 640.0;
    const CarryOver over = carry_over(old, old.press, {});
    check_became(over, Field::operator_stop, -260.0, -260.0, CarriedHow::cannot);
    check_became(over, Field::machine_stop, 260.0, 260.0, CarriedHow::cannot);
    CHECK(over.job.heads[0].stops == old.heads[0].stops);
}

TEST_CASE("The same job again is planned as it was, or as it was set", "[carry_over]") {
    Job old = heads_on({1, 2});
    old.heads[0].rounds.resize(1);
    old.heads[0].wish.screen_on = 1.0;
    old.height_readings = {{1, 1, 0.0, 0.0, 3.0}};
    old.record.notes = "slow";
    REQUIRE(apply(old, {really_set(old, 2, Field::print_speed, 500.0, {})}));
    Job expected = old;
    expected.walk.clear();
    expected.record = {};
    CHECK(start_again(old, {false, true}) == expected);
    expected.heads[0].rounds.clear();
    expected.heads[0].wish.screen_on = 0.0; // its screen is clamped anew
    CHECK(start_again(old) == expected);
    expected.heads[1].print_speed = 500.0;
    CHECK(start_again(old, {true, false}) == expected);
}
