#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/rounds.h"
#include "tests/core/registration_bench.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

Round round_with(double rms, double reading = 0.03) {
    Round round;
    round.error_rms = rms;
    round.error_max = 1.4 * rms;
    round.reading = reading;
    return round;
}

Progress progress(const std::vector<Round>& rounds) {
    return judge_rounds(rounds, {}, 0.15).progress;
}

/// Reads, advises by `believed`, and turns the screws of a head that is as `real` says; some
/// rounds.
std::vector<Round> carried_out(const std::vector<Adjuster>& believed,
                               const std::vector<Adjuster>& real, int count,
                               std::mt19937_64& random) {
    const bench::Conditions conditions;
    bench::Head head(real, conditions, random);
    std::vector<Round> rounds;
    Play play{conditions.backlash, true, false};
    for (int i = 0; i < count; ++i) {
        const auto read = head.read(bench::corner_marks());
        const auto found =
            std::get<Registration>(register_marks(read, {conditions.reading, false}));
        const auto advice = std::get<Advice>(advise(found, believed, play));
        rounds.push_back(round_of(found, advice, believed));
        head.follow(advice);
        play.taken_up = true;
    }
    return rounds;
}

} // namespace

TEST_CASE("Rounds converge, improve, stall or get worse", "[registration]") {
    CHECK(progress({}) == Progress::none);
    CHECK(progress({round_with(1.0)}) == Progress::none);
    CHECK(progress({round_with(0.1)}) == Progress::converged);
    CHECK(progress({round_with(2.0), round_with(0.1)}) == Progress::converged);
    CHECK(progress({round_with(2.0), round_with(0.5)}) == Progress::improving);
    CHECK(progress({round_with(2.0), round_with(1.9)}) == Progress::stalled);
    CHECK(progress({round_with(2.0), round_with(2.05)}) == Progress::stalled);
    CHECK(progress({round_with(2.0), round_with(3.0)}) == Progress::diverging);
    // The last turn counts, not the whole way.
    CHECK(progress({round_with(9.0), round_with(0.5), round_with(1.0)}) == Progress::diverging);
    CHECK(progress({round_with(2.0), round_with(std::numeric_limits<double>::quiet_NaN())}) ==
          Progress::none);
}

TEST_CASE("What a screw really does is estimated from what it was turned", "[registration]") {
    const auto screws = bench::three_screws(true, true, false);
    std::vector<Round> rounds(3, round_with(1.0));
    for (Round& round : rounds) round.deviation = {0.02, 0.02, 0.02};
    // Left: 2 turns took away 2.4 mm, then 1 turn 1.2 mm. Right wasn't turned. Across: 2 turns
    // clockwise moved 2.5 mm toward -x, as its profile has it.
    rounds[0].needed = {3.6, 0.5, -2.5};
    rounds[1].needed = {1.2, 0.5, 0.0};
    rounds[2].needed = {0.0, 0.5, 0.0};
    rounds[0].turned = {2.0, 0.0, 2.0};
    rounds[1].turned = {1.0, 0.0, 0.0};
    rounds[2].turned = {7.0, 7.0, 7.0}; // not read yet
    const auto judged = judge_rounds(rounds, screws, 0.15);
    CHECK(judged.screws[0].known);
    CHECK_THAT(judged.screws[0].mm_per_turn, WithinAbs(1.2, 1e-12));
    // Two changes known to 0.02·√2 each: 0.0283/√(2² + 1²).
    CHECK_THAT(judged.screws[0].deviation, WithinAbs(0.0126, 0.0001));
    CHECK(judged.screws[0].differs); // 1.25 is 4 deviations off
    CHECK_FALSE(judged.screws[0].sign_wrong);
    CHECK_FALSE(judged.screws[1].known);
    CHECK_THAT(judged.screws[2].mm_per_turn, WithinAbs(-1.25, 1e-12));
    CHECK_FALSE(judged.screws[2].differs);
    CHECK_FALSE(judged.screws[2].sign_wrong);
}

TEST_CASE("A sign set the wrong way is found at the screw that has it, and nowhere else",
          "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    int wrong_turned = 0, wrong_found = 0, right_turned = 0, right_blamed = 0, right_differs = 0;
    for (int i = 0; i < 2000; ++i) {
        const std::size_t wrong = random() % 3;
        const auto real = bench::three_screws(true, true, true);
        auto believed = real;
        believed[wrong].clockwise_positive = false;
        const auto rounds = carried_out(believed, real, 2, random);
        const auto judged = judge_rounds(rounds, believed, 0.15);
        for (std::size_t k = 0; k < 3; ++k) {
            if (std::abs(rounds[0].turned[k]) < 0.5) continue; // too little to tell
            const ScrewEstimate& screw = judged.screws[k];
            REQUIRE(screw.known);
            (k == wrong ? wrong_turned : right_turned) += 1;
            (k == wrong ? wrong_found : right_blamed) += screw.sign_wrong ? 1 : 0;
            if (k != wrong) right_differs += screw.differs ? 1 : 0;
        }
    }
    INFO(wrong_found << " of " << wrong_turned << " found; " << right_blamed << " blamed and "
                     << right_differs << " doubted of " << right_turned);
    CHECK(wrong_turned > 1000);
    CHECK(wrong_found >= 0.99 * wrong_turned);
    CHECK(right_blamed == 0);
    CHECK(right_differs <= 0.03 * right_turned);
}

TEST_CASE("Two signs wrong alike make it worse, which shows", "[registration]") {
    const auto seed = Catch::getSeed();
    std::mt19937_64 random(seed);
    INFO("seed " << seed);
    const auto real = bench::three_screws(true, true, true);
    const auto believed = bench::three_screws(false, false, false);
    int far = 0, diverging = 0;
    for (int i = 0; i < 500; ++i) {
        const auto rounds = carried_out(believed, real, 2, random);
        if (rounds[0].error_rms < 0.5) continue;
        ++far;
        diverging += judge_rounds(rounds, believed, 0.15).progress == Progress::diverging ? 1 : 0;
    }
    CHECK(far > 400);
    CHECK(diverging == far);
}
