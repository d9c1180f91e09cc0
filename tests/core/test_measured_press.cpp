// Measured values in a press profile. Expected values follow from the profile's own meaning.
#include <catch2/catch_test_macros.hpp>

#include "core/edit.h"
#include "core/measured_press.h"

using namespace carriageway;
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
