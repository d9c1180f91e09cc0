// Two rounds of reading and turning on a simulated head.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <iostream>
#include <random>

#include "core/rounds.h"
#include "tests/core/registration_bench.h"

using namespace carriageway;

namespace {

constexpr int starts = 10'000;
constexpr double good_enough = 0.15; ///< mm, of the worst mark

/// What came of many starts.
struct Outcome {
    int good = 0;
    int took_up_wrong = 0; ///< moves that did not end toward the side of approach
    int left_alone = 0;    ///< starts that wanted fewer than two rounds
    double worst = 0.0;
};

void run_start(const std::vector<Adjuster>& adjusters, bool approach_clockwise,
               std::mt19937_64& random, Outcome& outcome) {
    const bench::Conditions conditions;
    bench::Head head(adjusters, conditions, random);
    const std::vector<Point> marks = bench::corner_marks();
    Play play{conditions.backlash, approach_clockwise, false};
    for (int round = 0; round < 2; ++round) {
        const auto read = head.read(marks);
        const auto registration =
            std::get<Registration>(register_marks(read, {conditions.reading, false}));
        const auto advice = std::get<Advice>(advise(registration, adjusters, play));
        if (advice.settled) {
            ++outcome.left_alone;
            break;
        }
        for (const ScrewAdvice& screw : advice.screws) {
            if (screw.move_count == 0) continue;
            const int last = screw.moves[static_cast<std::size_t>(screw.move_count - 1)];
            outcome.took_up_wrong += (last > 0) == approach_clockwise ? 0 : 1;
        }
        head.follow(advice);
        play.taken_up = true;
    }
    const double worst = head.worst(marks);
    outcome.worst = std::max(outcome.worst, worst);
    outcome.good += worst <= good_enough ? 1 : 0;
}

} // namespace

TEST_CASE("Two rounds bring every mark within 0.15 mm, whichever way the screws move",
          "[registration]") {
    const auto seed = Catch::getSeed();
    for (int signs = 0; signs < 8; ++signs)
        for (const bool approach_clockwise : {true, false}) {
            const auto adjusters =
                bench::three_screws((signs & 1) != 0, (signs & 2) != 0, (signs & 4) != 0);
            std::mt19937_64 random(seed + static_cast<unsigned>(2 * signs) +
                                   (approach_clockwise ? 1U : 0U));
            Outcome outcome;
            for (int i = 0; i < starts; ++i)
                run_start(adjusters, approach_clockwise, random, outcome);
            const double share = static_cast<double>(outcome.good) / starts;
            std::cout << "registration, seed " << seed << ", clockwise positive left "
                      << (signs & 1) << " right " << (signs >> 1 & 1) << " across "
                      << (signs >> 2 & 1) << ", approach clockwise " << approach_clockwise << ": "
                      << 100.0 * share << " % of " << starts << " within " << good_enough
                      << " mm, worst " << outcome.worst << ", settled early " << outcome.left_alone
                      << '\n';
            CHECK(share >= 0.99);
            CHECK(outcome.took_up_wrong == 0);
        }
}
