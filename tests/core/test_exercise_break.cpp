// Breaking a real job, marking whatever is handed in, and levels that follow results.
#include <algorithm>
#include <cmath>
#include <iostream>
#include <limits>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/exercise_break.h"
#include "core/exercise_job.h"
#include "core/practice_level.h"
#include "tests/core/sample_job.h"
#include "tests/samples.h"

using namespace carriageway;

TEST_CASE("A trainer breaks a real job, and the exercise claims what comes of it",
          "[exercise]") {
    ExerciseRandom random(5);
    const Job real = fit_job(random, 3);
    std::size_t kinds = 0;
    for (const Head& head : real.heads) {
        const std::vector<Breaking> breakings = breakings_of(real, head.id);
        kinds = std::max(kinds, breakings.size());
        for (const Breaking& breaking : breakings) {
            CAPTURE(static_cast<int>(breaking.kind));
            const std::optional<Exercise> exercise = exercise_from(real, {breaking.edit});
            REQUIRE(exercise);
            CHECK(exercise->from_job);
            CHECK(exercise->solution.faults == breaking.faults);
            CHECK(mark(*exercise, exercise->solution).score == 1.0);
            CHECK(mark(*exercise, {}).score == 0.0);
            Job back = exercise->job;
            for (const Edit& edit : exercise->solution.edits) REQUIRE(apply(back, edit));
            CHECK(back == real);
            CHECK(exercise_of_broken(exercise->job)->choices == exercise->choices);
        }
    }
    CHECK(kinds >= 12);
}

TEST_CASE("What is no exercise is refused", "[exercise]") {
    ExerciseRandom random(6);
    const Job real = fit_job(random, 2);
    CHECK_FALSE(exercise_from(real, {}));
    CHECK_FALSE(exercise_from(real, {{SetName{0, "Nothing is wrong with that"}}}));
    CHECK_FALSE(exercise_from(real, {{SetStops{99, {}}}}));
    const Edit breaking = breakings_of(real, 1).front().edit;
    Job broken = real;
    REQUIRE(apply(broken, breaking));
    CHECK_FALSE(exercise_from(broken, {breaking})); // its own fault would be an accidental other
    CHECK_FALSE(exercise_of_broken(real));
    broken.heads[0].image.width = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(exercise_of_broken(broken));
    CHECK(breakings_of(real, 99).empty());
}

TEST_CASE("Whatever is handed in is marked, from nothing to all", "[exercise]") {
    const std::uint32_t seed = Catch::getSeed();
    sample::Random random(seed);
    INFO("seed " << seed);
    constexpr int tried = sample_count(10'000);
    int full = 0, some = 0;
    for (int i = 0; i < tried; ++i) {
        const auto kind = static_cast<ExerciseKind>(i % static_cast<int>(ExerciseKind::count));
        const Exercise exercise = make_exercise(kind, static_cast<std::uint64_t>(i), 1 + i % 8);
        ExerciseAnswer answer;
        for (int n = random.whole(0, 6); n > 0; --n) {
            const auto field = static_cast<Field>(random.whole(0, static_cast<int>(Field::count) - 1));
            const auto head = static_cast<HeadId>(random.whole(0, 9));
            const double value = random.chance(0.05) ? std::nan("") : sample::wild_number(random, field);
            answer.edits.push_back({SetNumber{head, field, value}});
            answer.edits.push_back({MoveHead{head, random.whole(-2, 20)}});
            answer.edits.push_back({SetUse{random.whole(-2, 20), static_cast<StationUse>(random.whole(0, 4))}});
            answer.edits.push_back({RemoveHead{static_cast<HeadId>(random.whole(1, 9))}});
            answer.faults.push_back({head, static_cast<FindingKind>(random.whole(0, 30))});
            answer.turns.push_back({static_cast<std::size_t>(random.whole(0, 5)), random.chance(0.5)});
            answer.number = random.chance(0.5) ? random.between(-9.0, 9.0) : std::nan("");
        }
        const Marking marking = mark(exercise, answer);
        CHECK(marking.score >= 0.0);
        CHECK(marking.score <= 1.0);
        CHECK_FALSE(marking.lines.empty());
        full += marking.score == 1.0 ? 1 : 0;
        some += marking.score > 0.0 ? 1 : 0;
    }
    std::cout << "answers by chance, seed " << seed << ": " << full << " full, " << some
              << " with some points, of " << tried << "\n";
    CHECK(full < tried / 40);
    CHECK(some > tried / 100);
}

TEST_CASE("A sheet's head that was taken off is marked as not set", "[exercise]") {
    const Exercise exercise = make_exercise(ExerciseKind::read_sheet, 5, 3);
    ExerciseAnswer answer = exercise.solution;
    answer.edits.push_back({RemoveHead{exercise.head}});
    const Marking marking = mark(exercise, answer);
    CHECK(marking.score == 0.0);
    CHECK(marking.lines.size() == exercise.sheet.size());
    for (const MarkLine& line : marking.lines) CHECK(line.reason == MarkReason::line_not_set);
}

TEST_CASE("What a sheet doesn't name costs by whatever edit it was changed", "[exercise]") {
    const Exercise exercise = make_exercise(ExerciseKind::read_sheet, 5, 3);
    Image image = find_head(exercise.job, exercise.head)->image;
    image.offset_x += 9.0;
    const Edit moved{SetImage{exercise.head, image}};
    for (const Edit& edit : {moved, Edit{Together{{moved}}}}) {
        ExerciseAnswer answer = exercise.solution;
        answer.edits.push_back(edit);
        const Marking marking = mark(exercise, answer);
        CHECK(std::abs(marking.score - 0.9) < 1e-9);
        CHECK(std::count_if(marking.lines.begin(), marking.lines.end(), [](const MarkLine& line) {
                  return line.reason == MarkReason::head_disturbed &&
                         line.field == Field::image_offset_x;
              }) == 1);
    }
}

TEST_CASE("The level goes up after two in a row and down after one", "[exercise]") {
    CHECK(next_level({}) == lowest_level);
    std::vector<LevelResult> done{{3, 1.0}};
    CHECK(next_level(done) == 3);
    done.push_back({3, managed_score});
    CHECK(next_level(done) == 4);
    done.push_back({4, 1.0});
    CHECK(next_level(done) == 4);
    done.push_back({4, managed_score - 0.01});
    CHECK(next_level(done) == 3);
    done.push_back({3, 1.0}); // the two before the failure don't count any more
    CHECK(next_level(done) == 3);
    CHECK(next_level(std::vector<LevelResult>{{1, 0.0}}) == lowest_level);
    CHECK(next_level(std::vector<LevelResult>{{8, 1.0}, {8, 1.0}}) == highest_level);
}

TEST_CASE("Levels settle where somebody manages seven in ten", "[exercise]") {
    // Somebody for whom each level is a logistic step harder; the level at which 70.7 of 100 are
    // managed is known from that curve: Levitt 1971.
    const std::uint32_t seed = Catch::getSeed();
    sample::Random random(seed);
    constexpr int runs = 40'000, settle = 200;
    std::vector<LevelResult> done;
    long managed = 0;
    for (int i = 0; i < runs; ++i) {
        const int level = next_level(done);
        const double chance = 1.0 / (1.0 + std::exp(0.9 * (level - 5.2)));
        const bool well = random.chance(chance);
        done.push_back({level, well ? 1.0 : 0.0});
        if (done.size() > 10) done.erase(done.begin());
        if (i >= settle && well) ++managed;
    }
    const double share = static_cast<double>(managed) / (runs - settle);
    std::cout << "levels, seed " << seed << ": managed " << share << " of the exercises\n";
    // Whole levels are coarse beside this curve's slope: the share is near 0.707, not at it.
    CHECK(std::abs(share - 0.7071) < 0.03);
}
