#include <catch2/catch_test_macros.hpp>
#include <functional>
#include <limits>

#include "core/placement_count.h"
#include "core/placement_search.h"
#include "tests/core/placement_exhaustive.h"
#include "tests/core/placement_samples.h"

using namespace carriageway;
using carriageway::tests::counted;
using carriageway::tests::plain_question;

namespace {

/// A base with flash and cool station, first and together, then free colours.
PlacementQuestion base_first(int free_colours, int stations) {
    PlacementQuestion question = plain_question(1 + free_colours, stations);
    PlacementColour& base = question.colours.front();
    base.order = -1;
    base.flash_after = true;
    base.cool_after = 1;
    base.flash_together = true;
    return question;
}

Placement best_of(const PlacementQuestion& question) {
    const PlacementSearch search = place(question);
    REQUIRE(search.state() == PlacementState::found);
    return search.found().front();
}

PlacementRefusal refused(PlacementQuestion question,
                         const std::function<void(PlacementQuestion&)>& spoil) {
    spoil(question);
    const PlacementRefusal refusal = placement_fault(question).refusal;
    PlacementSearch search(question);
    CHECK((search.state() == PlacementState::refused) == (refusal != PlacementRefusal::none));
    CHECK(search.fault().refusal == refusal);
    if (refusal == PlacementRefusal::none) return refusal;
    CHECK(search.run(10) == PlacementState::refused);
    CHECK(search.progress() == 1.0);
    CHECK(search.found().empty());
    CHECK(PlacementCount(question).state() == PlacementState::refused);
    CHECK(placement_kinds(question).empty());
    CHECK(roles_of(question, {}).empty());
    return refusal;
}

} // namespace

TEST_CASE("A base, its flash and cool station first and together, then five free colours",
          "[placement]") {
    // Computed: on 8 stations the five colours alone change places, 5! = 120. On 10 the block is one
    // thing, so 8 things in a row of which two are alike (blank), and in one of 6 of those rows the
    // block is ahead of the five colours: 8!/2!/6 = 3360.
    CHECK(counted(base_first(5, 8)).placements() == 5 * 4 * 3 * 2);
    CHECK(counted(base_first(5, 10)).placements() == 40320 / 2 / 6);
    CHECK(tests::all_placements(base_first(5, 8), 1).count == 120);
    CHECK(tests::all_placements(base_first(5, 10), 1).count == 3360);

    const PlacementQuestion question = base_first(5, 10);
    const Placement best = best_of(question);
    CHECK(best.stations == std::vector<int>{1, 4, 5, 6, 7, 8});
    CHECK(best.flashes == std::vector<int>{2});
    CHECK(best.cost == PlacementCost{});
    using enum StationRole;
    CHECK(roles_of(question, best) == std::vector<StationRole>{colour, flash, cool, colour, colour,
                                                               colour, colour, colour, outside,
                                                               outside});
}

TEST_CASE("Six colours, a flash and a cool station need eight stations", "[placement]") {
    // Computed: one station for each of the six, the flash and the cool one is 8. That a base is
    // flashed and cooled ahead of the other colours: common practice, no source.
    CHECK(place(base_first(5, 8)).state() == PlacementState::found);
    CHECK(place(base_first(5, 7)).state() == PlacementState::impossible);
    CHECK(counted(base_first(5, 7)).placements() == 0);
}

TEST_CASE("Idle stations count before screens, screens before wet areas", "[placement]") {
    // Screens on 1 and 3: both can stay with station 2 idle, or one moves.
    PlacementQuestion question = plain_question(2, 4);
    question.colours[0].screen_on = 1;
    question.colours[1].screen_on = 3;
    CHECK(best_of(question).stations == std::vector<int>{1, 2});
    CHECK(best_of(question).cost == PlacementCost{0, 1, 0});
    const PlacementSearch search = place(question);
    CHECK(search.found()[0].stations == std::vector<int>{1, 2});
    CHECK(search.found()[1].stations == std::vector<int>{2, 3});

    // Two large areas on 1 and 2 with a small one between them would move a screen.
    question = plain_question(3, 3);
    question.colours[0].area = question.colours[1].area = 0.5;
    for (int i = 0; i < 3; ++i) question.colours[static_cast<std::size_t>(i)].screen_on = i + 1;
    CHECK(best_of(question).stations == std::vector<int>{1, 2, 3});
    CHECK(best_of(question).cost == PlacementCost{0, 0, 1});
    // With screens elsewhere, the small one goes between.
    for (PlacementColour& colour : question.colours) colour.screen_on = 0;
    CHECK(best_of(question).stations == std::vector<int>{1, 3, 2});
    CHECK(best_of(question).cost == PlacementCost{0, 0, 0});
    // A blank station between doesn't dry ink; a flash does.
    question = plain_question(2, 4);
    question.colours[0].area = question.colours[1].area = question.large_area;
    question.stations[1].head = false;
    question.stations[3].head = false;
    CHECK(best_of(question).cost == PlacementCost{1, 0, 1});
    question.colours[1].wet_on_wet = question.colours[0].wet_on_wet = false;
    CHECK(best_of(question).cost == PlacementCost{});
    CHECK(best_of(question).flashes == std::vector<int>{2});
}

TEST_CASE("Flashes and cool stations", "[placement]") {
    SECTION("one flash serves the colour before and the colour behind") {
        PlacementQuestion question = plain_question(2, 5);
        question.colours[0].order = -1;
        question.colours[0].flash_after = true;
        question.colours[1].wet_on_wet = false;
        CHECK(best_of(question).flashes == std::vector<int>{2});
        question.flash_units = 3;
        CHECK(best_of(question).flashes.size() == 1);
    }
    SECTION("a colour that may not print wet on wet goes first when there is no flash unit") {
        PlacementQuestion question = plain_question(3, 3);
        question.flash_units = 0;
        question.colours[2].wet_on_wet = false;
        CHECK(best_of(question).stations == std::vector<int>{2, 3, 1});
        question.colours[1].wet_on_wet = false;
        CHECK(place(question).state() == PlacementState::impossible);
    }
    SECTION("behind the last colour a flash, but no cool station") {
        PlacementQuestion question = plain_question(1, 2);
        question.colours[0].flash_after = true;
        question.colours[0].cool_after = 3;
        CHECK(best_of(question).flashes == std::vector<int>{2});
        question.stations.resize(1);
        CHECK(place(question).state() == PlacementState::impossible);
    }
    SECTION("a closed station cools, a loading one doesn't") {
        PlacementQuestion question = base_first(1, 4);
        question.stations[2].kept = StationKept::closed;
        CHECK(best_of(question).stations == std::vector<int>{1, 4});
        CHECK(best_of(question).cost == PlacementCost{});
        question.stations[2].kept = StationKept::load;
        CHECK(place(question).state() == PlacementState::impossible);
    }
    SECTION("together: no station between") {
        PlacementQuestion question = base_first(1, 5);
        question.stations[1].flash = false;
        question.stations[2].head = false;
        question.colours[0].pinned = 1;
        CHECK(place(question).state() == PlacementState::impossible);
        question.colours[0].flash_together = false;
        CHECK(best_of(question).flashes == std::vector<int>{3});
        CHECK(best_of(question).cost == PlacementCost{1, 0, 0});
        using enum StationRole;
        CHECK(roles_of(question, best_of(question)) ==
              std::vector<StationRole>{colour, idle, flash, cool, colour});
    }
    SECTION("units that stay: only there, and no head on them") {
        PlacementQuestion question = plain_question(3, 6);
        question.flashes_stay = true;
        question.stations[2].flash_now = true; // station 3
        question.stations[4].flash_now = true; // station 5, not needed
        question.colours[0].flash_after = true;
        CHECK(best_of(question).stations == std::vector<int>{2, 1, 4});
        CHECK(best_of(question).flashes == std::vector<int>{3});
        // Units that can move: behind the first colour at once, or at the end.
        question.flashes_stay = false;
        CHECK(best_of(question).stations == std::vector<int>{1, 3, 4});
        CHECK(best_of(question).flashes == std::vector<int>{2});
    }
}

TEST_CASE("Pins", "[placement]") {
    PlacementQuestion question = plain_question(3, 6);
    question.colours[1].pinned = 5;
    CHECK(best_of(question).stations == std::vector<int>{3, 5, 4});
    question.colours[0].pinned = 1;
    CHECK(best_of(question).stations == std::vector<int>{1, 5, 2});
    CHECK(best_of(question).cost == PlacementCost{2, 0, 0});
    question.colours[0].screen_on = 5; // pinned away from it
    CHECK(best_of(question).cost == PlacementCost{2, 1, 0});
    question.colours[0].pinned = 5; // two on one station
    CHECK(place(question).state() == PlacementState::impossible);
    CHECK(counted(question).placements() == 0);
    question.colours[0].pinned = 2;
    question.stations[1].head = false; // where no head can be
    CHECK(place(question).state() == PlacementState::impossible);
}

TEST_CASE("Questions that can't be taken", "[placement]") {
    using R = PlacementRefusal;
    const PlacementQuestion good = base_first(2, 6);
    const auto spoilt = [&](const std::function<void(PlacementQuestion&)>& spoil) {
        return refused(good, spoil);
    };
    using Q = PlacementQuestion;
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    CHECK(spoilt([](Q&) {}) == R::none);
    CHECK(spoilt([](Q& q) { q.stations.clear(); }) == R::no_stations);
    CHECK(spoilt([](Q& q) { q.stations.resize(most_stations + 1); }) == R::too_many_stations);
    CHECK(spoilt([](Q& q) { q.colours.clear(); }) == R::no_colours);
    CHECK(spoilt([](Q& q) { q = plain_question(most_placed_colours + 1, 64); }) ==
          R::too_many_colours);
    CHECK(spoilt([](Q& q) { q.colours[2].id = 1; }) == R::same_id);
    CHECK(spoilt([](Q& q) { q.colours[1].pinned = 7; }) == R::station_out_of_range);
    CHECK(spoilt([](Q& q) { q.colours[1].pinned = -1; }) == R::station_out_of_range);
    CHECK(spoilt([](Q& q) { q.colours[1].screen_on = 7; }) == R::station_out_of_range);
    CHECK(spoilt([](Q& q) { q.colours[1].screen_on = q.colours[2].screen_on = 4; }) ==
          R::same_screen_station);
    CHECK(spoilt([](Q& q) { q.colours[1].cool_after = -1; }) == R::bad_cool_count);
    CHECK(spoilt([](Q& q) { q.colours[1].cool_after = 65; }) == R::bad_cool_count);
    CHECK(spoilt([&](Q& q) { q.colours[1].area = nothing; }) == R::bad_area);
    CHECK(spoilt([](Q& q) { q.colours[1].area = 1.1; }) == R::bad_area);
    CHECK(spoilt([&](Q& q) { q.large_area = nothing; }) == R::bad_large_area);
    CHECK(spoilt([](Q& q) { q.large_area = -0.1; }) == R::bad_large_area);
    CHECK(spoilt([](Q& q) { q.flash_units = -1; }) == R::bad_flash_count);
    CHECK(spoilt([](Q& q) { q.waived.push_back({1, 99}); }) == R::unknown_colour);
    PlacementQuestion twice = good;
    twice.colours[2].id = 1;
    CHECK(placement_fault(twice).colour == 2);
}

TEST_CASE("The largest press", "[placement]") {
    const PlacementQuestion question = plain_question(64, 64);
    const Placement best = best_of(question);
    for (int i = 0; i < 64; ++i) CHECK(best.stations[static_cast<std::size_t>(i)] == i + 1);
    // 64! and more.
    CHECK(counted(question).placements() == std::numeric_limits<std::uint64_t>::max());
    CHECK(counted(plain_question(12, 12)).placements() == 479001600); // 12!
    PlacementQuestion pinned = plain_question(64, 64);
    pinned.colours[0].pinned = 64;
    pinned.colours[63].pinned = 1;
    CHECK(best_of(pinned).stations[0] == 64);
    CHECK(best_of(pinned).stations[1] == 2);
}

TEST_CASE("A search that grows too large gives up", "[placement]") {
    PlacementQuestion question = base_first(7, 12);
    for (std::size_t i = 0; i < question.colours.size(); ++i) {
        question.colours[i].cool_after = static_cast<int>(i % 4);
        question.colours[i].wet_on_wet = i != 4;
        question.colours[i].screen_on = 12 - static_cast<int>(i);
    }
    question.flash_units = 2;
    PlacementSettings settings;
    settings.most_kept = 20;
    const PlacementSearch search = place(question, settings);
    CHECK(search.state() == PlacementState::too_large);
    CHECK(search.found().empty());
    CHECK(search.kept() < 20 + 20);
    CHECK(place(question).state() == PlacementState::found);
    PlacementCount count(question, 5);
    while (count.run(100) == PlacementState::running) {
    }
    CHECK(count.state() == PlacementState::too_large);
}
