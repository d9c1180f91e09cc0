// What to practise next, and mistakes counted over several exercises.
#include <catch2/catch_test_macros.hpp>

#include "core/mistakes.h"
#include "core/practice_next.h"

using namespace carriageway;

namespace {

constexpr std::int64_t day = 86'400'000;
constexpr std::int64_t now = 20'000 * day;

/// Everything that has exercises is managed at level 5, yesterday.
TopicsDone managed() {
    TopicsDone done{};
    for (const PracticeTopic topic : topics_in_order)
        if (has_exercises(topic))
            done[static_cast<std::size_t>(topic)] = {10, 5, 0.9, 600.0, now - day};
    return done;
}

TopicDone& of(TopicsDone& done, PracticeTopic topic) {
    return done[static_cast<std::size_t>(topic)];
}

} // namespace

TEST_CASE("what was never tried comes first, in the order in which it is taught", "[practice]") {
    TopicsDone done{};
    for (const PracticeTopic topic : topics_in_order) {
        if (!has_exercises(topic)) continue;
        CHECK(practice_next(done, now) == NextTopic{topic, NextReason::never_tried, 0});
        of(done, topic) = {1, 1, 0.1, 60.0, now};
    }
    // All were tried, and badly: nothing that has no exercises is ever asked for.
    CHECK(practice_next(done, now)->reason == NextReason::not_managed);
}

TEST_CASE("then what isn't managed, the weakest first", "[practice]") {
    TopicsDone done = managed();
    of(done, PracticeTopic::which_dial).mean_of_last = 0.79;
    of(done, PracticeTopic::judge_gap).mean_of_last = 0.5;
    of(done, PracticeTopic::find_fault).last = now - 100 * day; // long ago, and yet managed
    CHECK(practice_next(done, now) ==
          NextTopic{PracticeTopic::judge_gap, NextReason::not_managed, 0});
    of(done, PracticeTopic::judge_gap).mean_of_last = managed_score; // managed, just
    CHECK(practice_next(done, now)->topic == PracticeTopic::which_dial);
}

TEST_CASE("then what was not practised for two weeks, the longest ago first", "[practice]") {
    TopicsDone done = managed();
    of(done, PracticeTopic::read_sheet).last = now - 14 * day + 1;
    of(done, PracticeTopic::find_fault).level = 2;
    CHECK(practice_next(done, now)->reason == NextReason::low_level);
    of(done, PracticeTopic::read_sheet).last = now - 14 * day;
    CHECK(practice_next(done, now) ==
          NextTopic{PracticeTopic::read_sheet, NextReason::long_ago, 14});
    of(done, PracticeTopic::trainee_angle).last = now - 40 * day;
    CHECK(practice_next(done, now) ==
          NextTopic{PracticeTopic::trainee_angle, NextReason::long_ago, 40});
}

TEST_CASE("then the lowest level, until all are at the highest", "[practice]") {
    TopicsDone done = managed();
    of(done, PracticeTopic::place_stations).level = 3;
    of(done, PracticeTopic::find_fault).level = 3;
    of(done, PracticeTopic::place_stations).last = now - 3 * day;
    CHECK(practice_next(done, now) ==
          NextTopic{PracticeTopic::place_stations, NextReason::low_level, 0});
    for (TopicDone& topic : done) topic.level = highest_level;
    CHECK_FALSE(practice_next(done, now));
    // A clock that was set back makes nothing due.
    for (TopicDone& topic : done) topic.last = now + 1000 * day;
    CHECK_FALSE(practice_next(done, now));
}

TEST_CASE("mistakes are the lines that cost points, each once", "[practice]") {
    Marking marking;
    MarkLine found{MarkReason::fault_found, 1, FindingKind::starved};
    found.points = found.most = 0.5;
    MarkLine missed{MarkReason::fault_missed, 2, FindingKind::heavy};
    missed.most = 0.5;
    MarkLine elsewhere = missed;
    elsewhere.head = 3;
    MarkLine guessed{MarkReason::not_a_fault, 2, FindingKind::unprinted};
    guessed.points = -0.25;
    marking.lines = {found, missed, elsewhere, guessed};
    CHECK(mistakes_of(marking) ==
          std::vector<Mistake>{{MarkReason::fault_missed, FindingKind::heavy, {}},
                               {MarkReason::not_a_fault, FindingKind::unprinted, {}}});
    CHECK(mistakes_of(Marking{}).empty());
}

TEST_CASE("an exercise that is answered as its solution has no mistakes, an empty answer some",
          "[practice]") {
    for (int kind = 0; kind < static_cast<int>(ExerciseKind::count); ++kind) {
        INFO("kind " << kind);
        const Exercise exercise = make_exercise(static_cast<ExerciseKind>(kind), 11, 2);
        const Marking right = mark(exercise, exercise.solution);
        CHECK(right.score > 0.999);
        CHECK(mistakes_of(right).empty());
        CHECK_FALSE(mistakes_of(mark(exercise, ExerciseAnswer{})).empty());
    }
}

TEST_CASE("the commonest mistakes are counted once an exercise", "[practice]") {
    const Mistake dial{MarkReason::dial_missed, {}, {}};
    const Mistake late{MarkReason::stroke_long, {}, {}};
    const Mistake angle{MarkReason::line_not_set, {}, Field::squeegee_angle};
    const Mistake flood{MarkReason::line_not_set, {}, Field::flood_angle};
    CHECK(commonest({{dial, late}, {late, angle}, {flood, late, angle}}, 3) ==
          std::vector<MistakeCount>{{late, 3}, {angle, 2}, {dial, 1}});
    CHECK(commonest({}, 3).empty());
}
