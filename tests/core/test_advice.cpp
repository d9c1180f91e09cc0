#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/advice.h"
#include "tests/core/registration_bench.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr Spread reading{0.05, false};

/// A head whose print is off by this motion, read without error.
Registration off_by(const RigidMotion& motion) {
    std::vector<MarkReading> marks;
    for (const Point& at : bench::corner_marks()) marks.push_back({at, moved(motion, at)});
    return std::get<Registration>(register_marks(marks, reading));
}

Advice advice_for(const RigidMotion& motion, const std::vector<Adjuster>& adjusters,
                  const Play& play = {}) {
    return std::get<Advice>(advise(off_by(motion), adjusters, play));
}

} // namespace

TEST_CASE("Each screw is turned the way its profile says", "[registration]") {
    // Printed 1.25 mm toward the machine and 2.5 mm to the left: both sides go one turn toward the
    // operator, the screw across two turns to the right.
    for (unsigned signs = 0; signs < 8; ++signs) {
        const bool left = (signs & 1U) != 0, right = (signs & 2U) != 0, across = (signs & 4U) != 0;
        const auto advice = advice_for({0.0, -2.5, 1.25}, bench::three_screws(left, right, across));
        CHECK(advice.screws[0].graduations == (left ? -12 : 12));
        CHECK(advice.screws[1].graduations == (right ? -12 : 12));
        CHECK(advice.screws[2].graduations == (across ? 24 : -24));
        CHECK_THAT(advice.screws[0].travel, WithinAbs(-1.25, 1e-12));
        CHECK_THAT(advice.screws[2].travel, WithinAbs(2.5, 1e-12));
        CHECK_THAT(advice.predicted_max, WithinAbs(0.0, 1e-9));
        CHECK_FALSE(advice.settled);
    }
}

TEST_CASE("A print turned counter-clockwise is turned back", "[registration]") {
    const auto advice =
        advice_for({std::atan(2.5 / 400.0), 0.0, 0.0}, bench::three_screws(true, true, true));
    CHECK(advice.screws[0].graduations == 12);  // left toward the machine
    CHECK(advice.screws[1].graduations == -12); // right toward the operator
    CHECK(advice.predicted_max < 0.15);
    // The screw across stands 380 mm nearer the operator than the middle: turning there moves it.
    CHECK(advice.screws[2].graduations == -23); // -380·0.00625 = -2.375 mm, 22.8 graduations
}

TEST_CASE("What rounding leaves is predicted as it will be", "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    const auto adjusters = bench::three_screws(true, false, true);
    for (int i = 0; i < 500; ++i) {
        const RigidMotion motion{bench::within(0.008, random), bench::within(3.0, random),
                                 bench::within(3.0, random)};
        const auto advice = advice_for(motion, adjusters);
        // Half a graduation along at the worst, and across the same and what the turn does 200 mm
        // from the middle: 0.104·200/400 (see three_screws).
        CHECK(advice.predicted_max < std::hypot(0.0521, 0.0521 + 0.0521));
        BySide travel{};
        for (std::size_t k = 0; k < 3; ++k) {
            travel[k] = travel_of(adjusters[k], advice.screws[k].graduations);
            CHECK(std::abs(travel[k] - advice.screws[k].travel) < 0.35);
        }
        const auto pose = pose_of(adjusters, travel).value();
        for (std::size_t k = 0; k < 4; ++k) {
            const Point mark = bench::corner_marks()[k];
            const Point to = moved(pose, moved(motion, mark));
            CHECK_THAT(advice.predicted[k].x, WithinAbs(to.x - mark.x, 1e-9));
            CHECK_THAT(advice.predicted[k].y, WithinAbs(to.y - mark.y, 1e-9));
        }
    }
}

TEST_CASE("practice: a screw is always brought up from one side (common practice, no source)",
          "[registration]") {
    Adjuster adjuster;
    adjuster.graduations = 12;
    const auto planned = [&adjuster](int graduations, const Play& play) {
        ScrewAdvice screw;
        screw.graduations = graduations;
        plan_moves(screw, adjuster, play);
        return screw;
    };
    const Play clockwise{0.1, true, true}, counter{0.1, false, true};
    CHECK(planned(5, clockwise).move_count == 1);
    CHECK(planned(5, clockwise).moves[0] == 5);
    // 0.1 turn is 1.2 graduations: over by 3, more than the play, and back.
    const auto back = planned(-5, clockwise);
    CHECK(back.move_count == 2);
    CHECK(back.moves[0] == -8);
    CHECK(back.moves[1] == 3);
    CHECK(planned(-5, counter).move_count == 1);
    CHECK(planned(5, counter).moves[0] == 8);
    CHECK(planned(5, counter).moves[1] == -3);
    CHECK(planned(0, clockwise).move_count == 0);
    CHECK(planned(-5, Play{0.0, true, true}).move_count == 1);
    CHECK(planned(5, clockwise).shortfall == 0.0);
    CHECK(planned(5, Play{0.1, true, false}).shortfall == 0.1);
}

TEST_CASE("Following the moves takes a screw just so far, if its play was taken up",
          "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    Adjuster adjuster;
    for (int i = 0; i < 1000; ++i) {
        const bool clockwise = random() % 2 == 0;
        const double backlash = 0.5 + bench::within(0.5, random);
        bench::Screw screw{0.0, 0.0, backlash};
        screw.turn(clockwise ? 2.0 : -2.0);
        const double before = screw.tip;
        ScrewAdvice advice;
        advice.graduations = static_cast<int>(random() % 41) - 20;
        plan_moves(advice, adjuster, {backlash, clockwise, true});
        for (int k = 0; k < advice.move_count; ++k)
            screw.turn(advice.moves[static_cast<std::size_t>(k)] / 12.0);
        CHECK_THAT(screw.tip - before, WithinAbs(advice.graduations / 12.0, 1e-12));
    }
}

TEST_CASE("Nothing is turned for what the reading error explains", "[registration]") {
    const auto adjusters = bench::three_screws(true, true, true);
    const auto still = advice_for({0.0, 0.02, -0.03}, adjusters);
    CHECK(still.settled);
    for (const ScrewAdvice& screw : still.screws) {
        CHECK(screw.within_noise);
        CHECK(screw.graduations == 0);
        CHECK(screw.move_count == 0);
    }
    CHECK_THAT(still.predicted_max, WithinAbs(std::hypot(0.02, 0.03), 1e-9));
    // 4 marks, σ = 0.05/√3: along at x = ∓200 σ·√(1/4 + 200²/250000) = 0.0185 mm, across at
    // y = -380 σ·√(1/4 + 380²/250000) = 0.0263 mm, over 1.25 mm a turn.
    CHECK_THAT(still.screws[0].deviation, WithinAbs(0.0185 / 1.25, 0.0001));
    CHECK_THAT(still.screws[1].deviation, WithinAbs(0.0185 / 1.25, 0.0001));
    CHECK_THAT(still.screws[2].deviation, WithinAbs(0.0263 / 1.25, 0.0001));
    const auto once = advice_for({0.0, 0.0, 0.3}, adjusters);
    CHECK_FALSE(once.screws[0].within_noise);
    CHECK(once.screws[2].within_noise);
    CHECK_FALSE(once.settled);
}

TEST_CASE("What no adjuster reaches is said", "[registration]") {
    const RigidMotion off{0.004, 1.0, 2.0};
    const auto all = bench::three_screws(true, true, true);
    const auto none = advice_for(off, {});
    CHECK(none.reach == Reach{});
    CHECK(none.settled);
    CHECK(none.screws.empty());
    CHECK_THAT(none.turn_left, WithinAbs(0.004, 1e-12));
    CHECK_THAT(none.move_left.x, WithinAbs(1.0, 1e-9));
    CHECK_THAT(none.move_left.y, WithinAbs(2.0, 1e-9));
    const auto pair = advice_for(off, {all[0], all[1]});
    CHECK(pair.turn_left == 0.0);
    CHECK_THAT(pair.move_left.x, WithinAbs(1.0, 0.02)); // the guide is on the turned frame
    CHECK(pair.screws.size() == 2);
    const auto across = advice_for(off, {all[2]});
    CHECK_THAT(across.move_left.x, WithinAbs(0.0, 1e-9));
    CHECK_THAT(across.move_left.y, WithinAbs(2.0, 1e-9));
    CHECK_THAT(across.turn_left, WithinAbs(0.004, 1e-12));
    const auto single = advice_for(off, {all[1]});
    CHECK_THAT(single.screws[0].travel, WithinAbs(-2.0, 1e-9));
    CHECK_THAT(advice_for(off, all).move_left.x, WithinAbs(0.0, 1e-12));
}

TEST_CASE("Play that is no play is refused", "[registration]") {
    const auto adjusters = bench::three_screws(true, true, true);
    for (const double bad : {-0.1, 1.1, std::numeric_limits<double>::quiet_NaN()}) {
        const auto result = advise(off_by({0.0, 1.0, 0.0}), adjusters, {bad, true, false});
        REQUIRE(std::holds_alternative<AdjusterFault>(result));
        CHECK(std::get<AdjusterFault>(result).adjuster == adjusters.size());
    }
    const std::vector<Adjuster> twice{adjusters[0], adjusters[0]};
    CHECK(std::holds_alternative<AdjusterFault>(advise(off_by({0.0, 1.0, 0.0}), twice, {})));
}
