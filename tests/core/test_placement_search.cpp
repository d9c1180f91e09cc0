#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <iostream>
#include <utility>

#include "core/placement_count.h"
#include "core/placement_search.h"
#include "tests/core/placement_exhaustive.h"
#include "tests/core/placement_samples.h"
#include "tests/samples.h"

using namespace carriageway;
using carriageway::tests::all_placements;
using carriageway::tests::AllPlacements;
using carriageway::tests::counted;
using carriageway::tests::obeys;
using carriageway::tests::random_question;
using carriageway::tests::told;

namespace {

/// Compares search and count with all placements; returns whether there is one.
bool check_against_all(const PlacementQuestion& question) {
    constexpr int wanted = 5;
    const AllPlacements all = all_placements(question, wanted);
    PlacementSettings settings;
    settings.alternatives = wanted;
    const PlacementSearch search = place(question, settings);
    const bool possible = all.count > 0;
    CHECK(search.state() == (possible ? PlacementState::found : PlacementState::impossible));
    CHECK(search.found() == all.best);
    const PlacementCount count = counted(question);
    CHECK(count.state() == search.state());
    CHECK(count.placements() == all.count);
    settings.any = true;
    settings.alternatives = 1;
    const PlacementSearch any = place(question, settings);
    REQUIRE(any.found().size() == (possible ? 1u : 0u));
    if (possible) CHECK(obeys(question, any.found().front()));
    return possible;
}

/// 16 colours of many kinds on 20 stations, most of which can hold anything.
PlacementQuestion large_question(sample::Random& random) {
    PlacementQuestion question = random_question(random, 16, 20, random.whole(1, 3));
    for (PlacementStation& station : question.stations) {
        station.kept = StationKept::free;
        if (random.chance(0.7)) station.head = station.flash = true;
    }
    question.flash_units = random.whole(1, 4);
    question.flashes_stay = false;
    const bool pinned = random.chance(0.3);
    for (PlacementColour& colour : question.colours) {
        if (!pinned) colour.pinned = 0;
        if (random.chance(0.7)) colour.flash_after = false;
        if (random.chance(0.5)) colour.wet_on_wet = true;
        colour.cool_after = std::min(colour.cool_after, 2);
    }
    return question;
}

} // namespace

TEST_CASE("Every placement tried: the same best ones, and as many", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    int possible = 0;
    constexpr int cases = sample_count(2100);
    for (int i = 0; i < cases; ++i) {
        // Mostly small, so that each is tried in milliseconds; a good share large with an order
        // that leaves some thousand ways, and a few quite free.
        const bool large = i % 8 == 0;
        const bool free = i % 300 == 0;
        const int colours = large ? random.whole(7, 8) : random.whole(1, 6);
        const int stations = large ? 10 : random.whole(2, 8);
        const PlacementQuestion question =
            random_question(random, std::min(colours, stations), stations,
                            free    ? 1
                            : large ? random.whole(3, 5)
                                    : random.whole(1, 4));
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        if (check_against_all(question)) ++possible;
    }
    std::cout << "placement, seed " << seed << ": " << cases << " questions, " << possible
              << " with a placement\n";
    CHECK(possible > cases / 4);
    CHECK(possible < cases * 9 / 10);
}

TEST_CASE("In small steps as at once, and dropped at any time", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    for (int i = 0; i < 60; ++i) {
        const PlacementQuestion question = random_question(random, 7, 10, random.whole(1, 3));
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        const PlacementSearch at_once = place(question);
        PlacementSearch search(question);
        PlacementSearch dropped(question);
        dropped.run(3);
        double progress = search.progress();
        CHECK((progress >= 0.0 && progress <= 1.0));
        CHECK(search.run(0) == search.state());
        CHECK(search.run(-5) == search.state());
        std::uint64_t nodes = search.nodes();
        CHECK(nodes == 0);
        while (search.run(random.whole(1, 7)) == PlacementState::running) {
            CHECK(search.nodes() <= nodes + 7);
            CHECK(search.progress() >= progress);
            CHECK(search.progress() < 1.0);
            nodes = search.nodes();
            progress = search.progress();
        }
        CHECK(search.progress() == 1.0);
        CHECK(search.state() == at_once.state());
        CHECK(search.found() == at_once.found());
        CHECK(search.nodes() == at_once.nodes());
        const std::vector<Placement> found = search.found();
        CHECK(search.run(100) == at_once.state());
        CHECK(search.found() == found);
        CHECK(search.nodes() == at_once.nodes());

        PlacementCount count(question);
        progress = 0.0;
        while (count.run(random.whole(1, 9)) == PlacementState::running) {
            CHECK(count.progress() >= progress);
            progress = count.progress();
        }
        CHECK(count.progress() == 1.0);
        CHECK(count.placements() == counted(question).placements());
    }
}

TEST_CASE("Alternatives are ranked and differ", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    int with_many = 0;
    for (int i = 0; i < 100; ++i) {
        const PlacementQuestion question = random_question(random, 6, 9, 2);
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        PlacementSettings settings;
        settings.alternatives = 12;
        const PlacementSearch search = place(question, settings);
        const std::vector<Placement>& found = search.found();
        CHECK(found.size() <= 12);
        if (found.size() == 12) ++with_many;
        for (std::size_t a = 0; a < found.size(); ++a) {
            CHECK(obeys(question, found[a]));
            CHECK(tests::cost_of(question, found[a]) == found[a].cost);
            if (a > 0) CHECK(found[a - 1].cost <= found[a].cost);
            for (std::size_t b = 0; b < a; ++b) CHECK_FALSE(found[a] == found[b]);
        }
        // Fewer wanted: the first of them.
        settings.alternatives = 3;
        const PlacementSearch fewer = place(question, settings);
        REQUIRE(fewer.found().size() == std::min<std::size_t>(3, found.size()));
        for (std::size_t a = 0; a < fewer.found().size(); ++a) CHECK(fewer.found()[a] == found[a]);
    }
    CHECK(with_many > 20);
}

TEST_CASE("Only what is better than a cost", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    int possible = 0;
    for (int i = 0; i < 100; ++i) {
        const PlacementQuestion question = random_question(random, 6, 9, 2);
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        const PlacementSearch search = place(question);
        if (search.found().empty()) continue;
        ++possible;
        PlacementSettings settings;
        settings.below = search.found().front().cost;
        CHECK(place(question, settings).state() == PlacementState::impossible);
        ++settings.below->wet_pairs;
        const PlacementSearch again = place(question, settings);
        REQUIRE(again.state() == PlacementState::found);
        CHECK(again.found().front() == search.found().front());
        for (const Placement& placement : again.found()) CHECK(placement.cost < *settings.below);
    }
    CHECK(possible > 20);
}

TEST_CASE("16 colours on 20 stations take fewer than a million beginnings", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    std::uint64_t most = 0;
    std::size_t most_kept = 0;
    int possible = 0;
    constexpr int cases = 150;
    for (int i = 0; i < cases; ++i) {
        const PlacementQuestion question = large_question(random);
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        const PlacementSearch search = place(question);
        CHECK((search.state() == PlacementState::found ||
               search.state() == PlacementState::impossible));
        CHECK(search.nodes() < 1'000'000);
        most = std::max(most, search.nodes());
        most_kept = std::max(most_kept, search.kept());
        if (search.state() == PlacementState::found) ++possible;
        for (const Placement& placement : search.found()) {
            CHECK(obeys(question, placement));
            CHECK(tests::cost_of(question, placement) == placement.cost);
        }
    }
    std::cout << "placement, seed " << seed << ": 16 colours on 20 stations, " << cases
              << " questions, " << possible << " with a placement, at most " << most
              << " beginnings taken up and " << most_kept << " kept\n";
    CHECK(possible > 10);
}

TEST_CASE("Colours of one kind can be swapped", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    int swapped = 0;
    for (int i = 0; i < 200; ++i) {
        PlacementQuestion question = random_question(random, 6, 9, 2);
        for (PlacementColour& colour : question.colours) colour.pinned = 0;
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        const std::vector<std::size_t> kinds = placement_kinds(question);
        const std::vector<Placement> placements = place(question).found();
        for (const Placement& found : placements)
            for (std::size_t a = 0; a < kinds.size(); ++a)
                for (std::size_t b = 0; b < a; ++b) {
                    Placement other = found;
                    std::swap(other.stations[a], other.stations[b]);
                    if (kinds[a] != kinds[b]) continue;
                    CHECK(obeys(question, other));
                    const PlacementCost cost = tests::cost_of(question, other);
                    CHECK(cost.idle == found.cost.idle);
                    CHECK(cost.wet_pairs == found.cost.wet_pairs);
                    ++swapped;
                }
    }
    CHECK(swapped > 100);
}

TEST_CASE("Roles of a placement", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    for (int i = 0; i < 200; ++i) {
        const PlacementQuestion question = random_question(random, 5, 9, 2);
        INFO("seed " << seed << " case " << i << '\n' << told(question));
        const std::vector<Placement> placements = place(question).found();
        for (const Placement& found : placements) {
            int idle = 0;
            for (const StationRole role : roles_of(question, found))
                if (role == StationRole::idle) ++idle;
            CHECK(idle == found.cost.idle);
        }
    }
    const PlacementQuestion question = tests::plain_question(2, 4);
    CHECK(roles_of(question, {{1, 5}, {}, {}}).empty());
    CHECK(roles_of(question, {{1}, {}, {}}).empty());
    CHECK(roles_of(question, {{1, 2}, {0}, {}}).empty());
}
