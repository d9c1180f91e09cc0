// The lists of a run: every usual step once, in its list, with what to mind.
#include <catch2/catch_test_macros.hpp>

#include <set>

#include "core/job_check.h"

using namespace carriageway;

TEST_CASE("Every usual step stands once in the usual lists, in the order of work", "[check_list]") {
    const std::vector<CheckItem>& items = usual_checks();
    REQUIRE(items.size() == static_cast<std::size_t>(CheckStep::count) - 1);
    CHECK(are_checks(items));
    int last_list = 0;
    std::set<CheckStep> steps;
    for (std::size_t i = 0; i < items.size(); ++i) {
        INFO("step " << i + 1);
        CHECK(items[i].id == i + 1);
        CHECK(items[i].step != CheckStep::own);
        CHECK(items[i].text.empty());
        CHECK(steps.insert(items[i].step).second);
        CHECK(items[i].list == list_of(items[i].step));
        // A list's steps stand together, the lists in the order in which they are due.
        CHECK(static_cast<int>(items[i].list) >= last_list);
        last_list = static_cast<int>(items[i].list);
    }
    CHECK(last_list == check_lists - 1);
    CHECK(&usual_checks() == &items);
}

TEST_CASE("What to mind with a usual step is the step's, with an own one the person's",
          "[check_list]") {
    CHECK(caution_of(CheckStep::table_clear) == Caution::index_path);
    CHECK(caution_of(CheckStep::flash_warm) == Caution::hot_surface);
    CHECK(caution_of(CheckStep::air_bled) == Caution::isolated_and_bled);
    CHECK(caution_of(CheckStep::blades_out_washed) == Caution::solvents);
    CHECK(caution_of(CheckStep::image_complete) == Caution::none);
    const CheckItem usual{1, CheckList::before_run, CheckStep::stops_tight, {}, Caution::none};
    CHECK(caution_of(usual) == Caution::hands_in_carriage);
    const CheckItem own{2, CheckList::before_run, CheckStep::own, "drain the filter",
                        Caution::isolated_and_bled};
    CHECK(caution_of(own) == Caution::isolated_and_bled);
}

TEST_CASE("What is no usual step belongs to the first list and warns of nothing", "[check_list]") {
    for (const CheckStep step : {CheckStep::own, CheckStep::count, static_cast<CheckStep>(-1),
                                 static_cast<CheckStep>(1000)}) {
        CHECK(list_of(step) == CheckList::before_run);
        CHECK(caution_of(step) == Caution::none);
    }
}

TEST_CASE("Whoever reaches in or comes near what turns is told so", "[check_list]") {
    // Hands at a carriage, arm or holder, and the path of the table: common practice, no source.
    for (const CheckStep step :
         {CheckStep::arms_down_locked, CheckStep::holders_seated, CheckStep::clamps_in_order,
          CheckStep::stops_tight, CheckStep::screens_held_mechanically,
          CheckStep::mechanical_hold_released, CheckStep::arms_up_locked})
        CHECK(caution_of(step) == Caution::hands_in_carriage);
    for (const CheckStep step :
         {CheckStep::table_clear, CheckStep::guards_closed, CheckStep::heads_up})
        CHECK(caution_of(step) == Caution::index_path);
    for (const CheckStep step :
         {CheckStep::air_and_power_off, CheckStep::screens_out, CheckStep::adjusters_to_middle})
        CHECK(caution_of(step) == Caution::isolated_and_bled);
}

TEST_CASE("A press without lists of its own has the usual ones", "[check_list]") {
    PressProfile press;
    CHECK(&checks_of(press) == &usual_checks());
    press.checks = {{7, CheckList::tear_down, CheckStep::own, "lights out", Caution::none}};
    REQUIRE(checks_of(press).size() == 1);
    CHECK(checks_of(press).front().id == 7);
}

TEST_CASE("A station holds anything unless its profile says otherwise", "[check_list]") {
    PressProfile press;
    CHECK(station_room(press, 1) == StationRoom{true, true});
    press.rooms = {{false, false}, {true, false}};
    CHECK(station_room(press, 1) == StationRoom{false, false});
    CHECK(station_room(press, 2) == StationRoom{true, false});
    for (const int beyond : {3, 64, 1000, 0, -1})
        CHECK(station_room(press, beyond) == StationRoom{});
}
