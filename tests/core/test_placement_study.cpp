#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <iostream>

#include "core/placement_study.h"
#include "tests/core/placement_samples.h"

using namespace carriageway;
using carriageway::tests::possible;
using carriageway::tests::studied;

TEST_CASE("A study in small steps comes to the same", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    for (int i = 0; i < 40; ++i) {
        const PlacementQuestion question =
            tests::random_question(random, random.whole(4, 7), 8, random.whole(1, 3));
        INFO("seed " << seed << " case " << i << '\n' << tests::told(question));
        const PlacementStudy once = studied(question, 1 << 20);
        const PlacementStudy slow = studied(question, random.whole(1, 40));
        CHECK(once.state() == slow.state());
        CHECK(once.nodes() == slow.nodes());
        CHECK(once.placements() == slow.placements());
        CHECK(once.reasons() == slow.reasons());
        CHECK(once.conflict().wishes == slow.conflict().wishes);
        CHECK(once.conflict().needs == slow.conflict().needs);
        PlacementStudy dropped(question);
        dropped.run(random.whole(1, 200));
    }
    CHECK(PlacementStudy({}).state() == PlacementState::refused);
}

TEST_CASE("Conflicts and reasons of 16 colours on 20 stations", "[placement]") {
    const auto seed = Catch::getSeed();
    sample::Random random(seed);
    std::uint64_t most = 0;
    int conflicts = 0, reasons = 0, incomplete = 0;
    for (int i = 0; i < 24; ++i) {
        PlacementQuestion question = tests::random_question(random, 16, 20, random.whole(1, 4));
        question.flash_units = 3;
        for (PlacementColour& colour : question.colours)
            if (random.chance(0.4)) colour.flash_after = false;
        INFO("seed " << seed << " case " << i << '\n' << tests::told(question));
        PlacementStudy study(question);
        while (study.run(100'000) == PlacementState::running) {
        }
        most = std::max(most, study.nodes());
        if (!study.reasons().empty()) ++reasons;
        if (!study.complete()) ++incomplete;
        if (study.state() != PlacementState::impossible) continue;
        ++conflicts;
        const std::vector<PlacementWish>& wishes = study.conflict().wishes;
        CHECK_FALSE(possible(tests::with_only(question, wishes)));
        for (std::size_t w = 0; w < wishes.size() && study.conflict().complete; ++w)
            CHECK(possible(tests::with_only(question, tests::without_one(wishes, w))));
    }
    std::cout << "placement, seed " << seed << ": studies of 16 colours on 20 stations, "
              << conflicts << " conflicts, " << reasons << " with reasons, " << incomplete
              << " not to the end, at most " << most << " beginnings taken up in all\n";
    CHECK(conflicts > 5);
    CHECK(reasons > 0);
    CHECK(incomplete == 0);
}
