#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <iostream>

#include "core/placement_study.h"
#include "tests/core/placement_exhaustive.h"
#include "tests/core/placement_samples.h"

using namespace carriageway;
using carriageway::tests::plain_question;
using carriageway::tests::possible;
using carriageway::tests::studied;
using Kind = PlacementWishKind;

namespace {

bool possible_by_trial(const PlacementQuestion& question) {
    return tests::all_placements(question, 1).count > 0;
}

/// Whether a press of which a fact is otherwise is enough.
bool enough(PlacementQuestion question, const PressNeed& need, int less) {
    switch (need.fact) {
        case PressFact::stations:
            question.stations.resize(question.stations.size() +
                                     static_cast<std::size_t>(need.needed - less));
            break;
        case PressFact::flash_units:
            question.flash_units = need.needed - less;
            break;
        case PressFact::head_places:
            for (PlacementStation& station : question.stations) station.head = true;
            break;
        case PressFact::flash_places:
            for (PlacementStation& station : question.stations) station.flash = true;
            break;
        case PressFact::closed_stations:
            for (PlacementStation& station : question.stations)
                if (station.kept == StationKept::closed) station.kept = StationKept::free;
            break;
        case PressFact::flashes_stay:
            question.flashes_stay = false;
            question.flash_units = std::max(
                question.flash_units,
                static_cast<int>(std::count_if(
                    question.stations.begin(), question.stations.end(), [](const auto& station) {
                        return station.flash_now && station.kept == StationKept::free;
                    })));
            break;
    }
    return possible(question);
}

/// Needs that are not in the list must not help either; those in it must just be enough.
void check_needs(const PlacementQuestion& question, const PlacementConflict& conflict) {
    for (int i = 0; i < press_facts; ++i) {
        const auto fact = static_cast<PressFact>(i);
        const auto listed = std::find_if(conflict.needs.begin(), conflict.needs.end(),
                                         [&](const PressNeed& need) { return need.fact == fact; });
        INFO("fact " << i);
        if (listed == conflict.needs.end()) {
            if (!question.flashes_stay && fact == PressFact::flashes_stay) continue;
            if (question.flashes_stay && fact == PressFact::flash_units) continue;
            if (question.flashes_stay && fact == PressFact::flash_places) continue;
            CHECK_FALSE(enough(question, {fact, 20}, 0));
            continue;
        }
        CHECK(enough(question, *listed, 0));
        if (is_counted(fact)) CHECK_FALSE(enough(question, *listed, 1));
    }
}

void check_conflict(const PlacementQuestion& question, const PlacementConflict& conflict) {
    CHECK(conflict.complete);
    const std::vector<PlacementWish>& wishes = conflict.wishes;
    CHECK_FALSE(possible_by_trial(tests::with_only(question, wishes)));
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        INFO("without wish " << i);
        CHECK(possible_by_trial(tests::with_only(question, tests::without_one(wishes, i))));
    }
    check_needs(question, conflict);
}

/// The reasons by trying all placements of each question with a wish or fact changed.
std::vector<PlacementReason> reasons_by_trial(const PlacementQuestion& question,
                                              const PlacementCost& best) {
    std::vector<PlacementReason> reasons;
    const auto ask = [&](const PlacementQuestion& changed, const auto& of) {
        const auto all = tests::all_placements(changed, 1);
        if (!all.best.empty() && all.best.front().cost < best)
            reasons.push_back({of, all.best.front().cost});
    };
    const std::vector<PlacementWish> wishes = wishes_of(question);
    for (std::size_t i = 0; i < wishes.size(); ++i)
        ask(tests::with_only(question, tests::without_one(wishes, i)), wishes[i]);
    for (int i = 0; i < press_facts; ++i)
        if (const auto changed = with_fact(question, static_cast<PressFact>(i)))
            ask(*changed, static_cast<PressFact>(i));
    return reasons;
}

} // namespace

TEST_CASE("Conflicts worked by hand", "[placement]") {
    SECTION("order against pins: the two colours, not those between") {
        PlacementQuestion question = plain_question(4, 6);
        for (int i = 0; i < 4; ++i) question.colours[static_cast<std::size_t>(i)].order = i;
        question.colours[0].pinned = 5;
        question.colours[3].pinned = 2;
        const PlacementConflict conflict = placement_conflict(question);
        CHECK(conflict.wishes == std::vector<PlacementWish>{
                                     {Kind::order, 1, 4}, {Kind::pin, 1, 0}, {Kind::pin, 4, 0}});
        CHECK(conflict.needs.empty());
    }
    SECTION("two on one station, and one where no head can be") {
        PlacementQuestion question = plain_question(3, 4);
        question.colours[0].pinned = question.colours[2].pinned = 2;
        CHECK(placement_conflict(question).wishes ==
              std::vector<PlacementWish>{{Kind::pin, 1, 0}, {Kind::pin, 3, 0}});
        question.colours[0].pinned = 0;
        question.stations[1].head = false;
        const PlacementConflict conflict = placement_conflict(question);
        CHECK(conflict.wishes == std::vector<PlacementWish>{{Kind::pin, 3, 0}});
        CHECK(conflict.needs == std::vector<PressNeed>{{PressFact::head_places, 0}});
    }
    SECTION("more colours than stations: nothing to give up") {
        PlacementQuestion question = plain_question(5, 3);
        question.colours[0].flash_after = true;
        question.colours[0].order = -1;
        const PlacementConflict conflict = placement_conflict(question);
        CHECK(conflict.wishes.empty());
        CHECK(conflict.needs == std::vector<PressNeed>{{PressFact::stations, 3}});
    }
    SECTION("a station too few for the cool one") {
        PlacementQuestion question = plain_question(6, 7);
        question.colours[0].order = -1;
        question.colours[0].flash_after = true;
        question.colours[0].cool_after = 1;
        const PlacementConflict conflict = placement_conflict(question);
        CHECK(conflict.needs == std::vector<PressNeed>{{PressFact::stations, 1}});
        // An order too: as the last to print it would need no cool station.
        CHECK(conflict.wishes == std::vector<PlacementWish>{{Kind::order, 1, 6},
                                                            {Kind::flash_after, 1, 0},
                                                            {Kind::cool_after, 1, 0}});
    }
    SECTION("flash units too few") {
        PlacementQuestion question = plain_question(4, 12);
        for (PlacementColour& colour : question.colours) colour.wet_on_wet = false;
        const PlacementConflict conflict = placement_conflict(question);
        CHECK(conflict.wishes.size() == 3); // one may print first, one behind the flash there is
        CHECK(conflict.needs == std::vector<PressNeed>{{PressFact::flash_units, 3}});
    }
    SECTION("no conflict") {
        PlacementConflictSearch search(plain_question(2, 2));
        while (search.run(10) == PlacementState::running) {
        }
        CHECK(search.state() == PlacementState::impossible);
        CHECK(search.conflict().wishes.empty());
        CHECK(PlacementConflictSearch({}).run(1) == PlacementState::refused);
    }
}

TEST_CASE("Reasons worked by hand", "[placement]") {
    // The pin leaves stations 3 and 4 idle; the order keeps both screens from staying.
    PlacementQuestion question = plain_question(3, 6);
    question.colours[2].order = 1;
    question.colours[2].pinned = 5;
    question.colours[0].pinned = 1;
    PlacementStudy study = studied(question, 1000);
    REQUIRE(study.placements().front().cost == PlacementCost{2, 0, 0});
    CHECK(study.reasons() ==
          std::vector<PlacementReason>{{PlacementWish{Kind::pin, 1, 0}, {0, 0, 0}},
                                       {PlacementWish{Kind::pin, 3, 0}, {0, 0, 0}}});
    question = plain_question(2, 2);
    question.colours[0].order = 1;
    question.colours[0].screen_on = 1;
    question.colours[1].screen_on = 2;
    study = studied(question, 1000);
    REQUIRE(study.placements().front().cost == PlacementCost{0, 2, 0});
    // With a station more, colour 2 stays on 2.
    CHECK(study.reasons() ==
          std::vector<PlacementReason>{{PlacementWish{Kind::order, 2, 1}, {0, 0, 0}},
                                       {PressFact::stations, {0, 1, 0}}});
    // Nothing can be better than what costs nothing.
    CHECK(studied(plain_question(3, 5), 1000).reasons().empty());
}

TEST_CASE("Conflicts and reasons against all placements tried", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    int conflicts = 0, wishes = 0, needs = 0, with_reasons = 0;
    for (int i = 0; i < 260; ++i) {
        const int stations = random.whole(3, 6);
        const PlacementQuestion question = tests::random_question(
            random, random.whole(2, std::min(5, stations + 1)), stations, random.whole(1, 3));
        INFO("seed " << seed << " case " << i << '\n' << tests::told(question));
        const PlacementStudy study = studied(question, 1 << 20);
        CHECK(study.complete());
        if (study.state() == PlacementState::found) {
            const PlacementCost best = study.placements().front().cost;
            CHECK(study.reasons() == reasons_by_trial(question, best));
            if (!study.reasons().empty()) ++with_reasons;
            CHECK(study.conflict().wishes.empty());
            continue;
        }
        REQUIRE(study.state() == PlacementState::impossible);
        ++conflicts;
        wishes += static_cast<int>(study.conflict().wishes.size());
        needs += static_cast<int>(study.conflict().needs.size());
        check_conflict(question, study.conflict());
    }
    std::cout << "placement, seed " << seed << ": " << conflicts << " conflicts of " << wishes
              << " wishes, " << needs << " needs; " << with_reasons << " with reasons\n";
    CHECK(conflicts > 30);
    CHECK(wishes > 50);
    CHECK(needs > 20);
    CHECK(with_reasons > 30);
}
