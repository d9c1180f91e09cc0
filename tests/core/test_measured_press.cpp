// Measured values in a press profile. Expected values follow from the profile's own meaning.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/edit.h"
#include "core/measured_press.h"
#include "core/sensor.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using K = ReadingKind;

TEST_CASE("A measured least separation is used instead of the formula", "[measured_press]") {
    const Measured result =
        measured(*procedure_for(Field::measured_separation),
                 {{K::operator_bar, {-35.0, -35.5, -36.0}}, {K::machine_bar, {36.0, 36.0, 36.0}}});
    REQUIRE(result.refusal == MeasuredRefusal::none);
    const PressProfile before;
    REQUIRE_FALSE(before.sensors.separation_measured);
    const std::optional<PressProfile> after = with_measured(before, result);
    REQUIRE(after.has_value());
    CHECK(after->sensors.separation_measured);
    CHECK(after->sensors.measured_separation == 71.5);
    CHECK(after->sensors.separation_spread.measured);
    CHECK(after->sensors.separation_spread.value == result.values[1].value);
    CHECK_FALSE(fault_of(*after).has_value());
    // Nothing else has changed.
    PressProfile same = *after;
    same.sensors = before.sensors;
    CHECK(same == before);
}

TEST_CASE("A scatter becomes a measured spread, for each spread of a profile",
          "[measured_press]") {
    int spreads = 0;
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        PressProfile press;
        Spread* spread = spread_of(press, field);
        if (!spread) continue;
        ++spreads;
        CHECK(&spread->value == &number_of(press, field)); // one and the same number
        const Procedure& procedure = *procedure_for(field);
        if (procedure.steps != Steps::scatter) continue;
        const Measured result =
            measured(procedure, {{procedure.needed[0].kind, {2, 4, 4, 4, 5, 5, 7, 9}}});
        const std::optional<PressProfile> after = with_measured(press, result);
        REQUIRE(after.has_value());
        PressProfile copy = *after;
        CHECK(spread_of(copy, field)->measured);
        CHECK(spread_of(copy, field)->value == result.values[0].value);
    }
    CHECK(spreads == 7);
}

TEST_CASE("Readings that are all alike are known to their step, not for certain", "[measured_press]") {
    const Procedure& procedure = *procedure_for(Field::stop_spread);
    const Measured result = measured(
        procedure, {{procedure.needed[0].kind, {300, 300, 300, 300, 300, 300, 300, 300}, 0.5}});
    REQUIRE(result.values.size() == 1);
    // A step of 1: 1/√12 (JCGM 100:2008, F.2.2.1).
    CHECK_THAT(result.values[0].value, WithinAbs(1.0 / std::sqrt(12.0), 1e-12));
}

TEST_CASE("A number that is typed after it was measured is a typed one", "[measured_press]") {
    Job job;
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.press.allowances.stop = {0.4, true};
    const Job before = job;
    const Applied typed = apply(job, Edit{SetNumber{0, Field::stop_spread, 1.0}});
    REQUIRE(typed.inverse);
    CHECK(job.press.allowances.stop == Spread{1.0, false});
    CHECK(worst_deviation(job.press.allowances.stop) == 1.0);
    REQUIRE(apply(job, *typed.inverse).inverse);
    CHECK(job == before);
    // A least separation that is typed counts instead of the formula.
    const Applied apart = apply(job, Edit{SetNumber{0, Field::measured_separation, 84.0}});
    REQUIRE(apart.inverse);
    CHECK(job.press.sensors.separation_measured);
    CHECK(least_separation(job.press.sensors) == 84.0);
    REQUIRE(apply(job, *apart.inverse).inverse);
    CHECK(job == before);
}

TEST_CASE("A screw's travel a turn goes to that screw", "[measured_press]") {
    PressProfile press;
    press.adjusters.resize(2);
    press.level_screws.resize(1);
    const Measured result =
        measured(adjuster_procedure(), {{K::travel, {5.0, 5.0, 5.0}}, {K::turns, {2.0}}});
    REQUIRE(result.refusal == MeasuredRefusal::none);
    const std::optional<PressProfile> second = with_measured(press, result, ScrewPlace{false, 1});
    REQUIRE(second.has_value());
    CHECK(second->adjusters[0].mm_per_turn == press.adjusters[0].mm_per_turn);
    CHECK(second->adjusters[1].mm_per_turn == 2.5);
    const std::optional<PressProfile> level = with_measured(press, result, ScrewPlace{true, 0});
    REQUIRE(level.has_value());
    CHECK(level->level_screws[0].mm_per_turn == 2.5);
    CHECK_FALSE(with_measured(press, result).has_value());
    CHECK_FALSE(with_measured(press, result, ScrewPlace{false, 2}).has_value());
    CHECK_FALSE(mm_per_turn(press, ScrewPlace{true, 1}).has_value());
    CHECK(mm_per_turn(*second, ScrewPlace{false, 1}) == 2.5);
}

TEST_CASE("What is refused changes nothing", "[measured_press]") {
    const Measured refused = measured(*procedure_for(Field::bar_length), {{K::length, {60.0}}});
    CHECK(refused.refusal == MeasuredRefusal::missing);
    CHECK_FALSE(with_measured(PressProfile{}, refused).has_value());
}
