// Two halves of a walk put together, worked by hand.
#include <catch2/catch_test_macros.hpp>

#include "core/walk.h"
#include "core/walk_merge.h"
#include "tests/core/merged_walks.h"

using namespace carriageway;
using namespace carriageway::tests;

namespace {

void change(Job& job, const Edit& edit) { REQUIRE(apply(job, edit)); }

void check_refused(const Job& mine, const Job& theirs, MergeRefusal refusal, HeadId head = 0,
                   int station = 0) {
    const WalkMerge merge = merge_walks(mine, theirs);
    CHECK(merge.refusal == refusal);
    CHECK(merge.head == head);
    CHECK(merge.station == station);
    CHECK(merge.conflicts.empty());
    CHECK_FALSE(merge.edit);
    CHECK_FALSE(resolve(merge, {true}));
}

} // namespace

TEST_CASE("Two halves become one walk", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(mine, *tick_all(mine, 1, early));
    change(theirs, *tick_all(theirs, 2, late));
    change(theirs, {really_set(theirs, 2, Field::print_speed, 500.0, late)});
    const WalkMerge merge = merge_walks(mine, theirs);
    CHECK(merge.conflicts.empty());
    REQUIRE(merge.edit);
    const Job both = merged(mine, theirs);
    CHECK(progress_at(both, 1).finished());
    CHECK(progress_at(both, 2).finished());
    CHECK(value_as_set(both, 2, Field::print_speed) == 500.0);
    CHECK(mark_of(both, 1, Field::print_speed)->stamp == early);
    CHECK(mark_of(both, 2, Field::print_speed)->stamp == late);
    CHECK(merged(theirs, mine) == both);
}

TEST_CASE("Where both are alike there is nothing to do", "[walk_merge]") {
    Job job = two_walked_heads();
    change(job, *tick_all(job, 1, early));
    job.record.ticks = {{3, late}, {1, early}}; // not in the order of their time
    const WalkMerge merge = merge_walks(job, job);
    CHECK(merge.refusal == MergeRefusal::none);
    CHECK(merge.conflicts.empty());
    CHECK_FALSE(merge.edit);
    CHECK_FALSE(resolve(merge, {}));
}

TEST_CASE("A number set to two values is chosen", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(mine, {tick(mine, 1, Field::print_speed, early)}); // 600, as planned
    change(theirs, {really_set(theirs, 1, Field::print_speed, 500.0, late)});
    const WalkMerge merge = merge_walks(mine, theirs);
    MergeConflict expected;
    expected.kind = MergeKind::mark;
    expected.head = 1;
    expected.field = Field::print_speed;
    expected.mine = 600.0;
    expected.theirs = 500.0;
    expected.mine_done = expected.theirs_done = true;
    expected.mine_stamp = early;
    expected.theirs_stamp = late;
    CHECK(merge.conflicts == std::vector<MergeConflict>{expected});
    CHECK_FALSE(merge.edit);
    CHECK(merged(mine, theirs) == mine);
    CHECK(merged(mine, theirs, {true}).walk == theirs.walk);
}

TEST_CASE("Ticked against taken back is chosen, ticked against nothing isn't", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(theirs, {tick(theirs, 1, Field::flood_angle, late)});
    CHECK(merge_walks(mine, theirs).conflicts.empty());
    CHECK(is_done(merged(mine, theirs), 1, Field::flood_angle));
    change(mine, {tick(mine, 1, Field::flood_angle, early, false)});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 1);
    CHECK_FALSE(merge.conflicts[0].mine_done);
    CHECK(merge.conflicts[0].theirs_done);
    CHECK_FALSE(merge.conflicts[0].mine); // taken back and nothing noted: it isn't set
    CHECK(is_done(merged(mine, theirs, {true}), 1, Field::flood_angle));
}

TEST_CASE("Marks that agree keep the earlier stamp", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(mine, {really_set(mine, 1, Field::print_speed, 500.0, late)});
    change(theirs, {really_set(theirs, 1, Field::print_speed, 500.0, early)});
    CHECK(mark_of(merged(mine, theirs), 1, Field::print_speed)->stamp == early);
    CHECK(mark_of(merged(theirs, mine), 1, Field::print_speed)->stamp == early);
    change(theirs, {really_set(theirs, 1, Field::print_speed, 500.0, Stamp{})}); // not noted
    CHECK(mark_of(merged(mine, theirs), 1, Field::print_speed)->stamp == late);
}

TEST_CASE("A mark keeps its value when it meets another plan", "[walk_merge]") {
    Job mine = two_walked_heads(); // plans 600
    Job theirs = mine;
    change(theirs, {SetNumber{1, Field::print_speed, 650.0}});
    change(theirs, {tick(theirs, 1, Field::print_speed, late)}); // so 650 is set
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 1);
    CHECK(merge.conflicts[0].kind == MergeKind::number);
    CHECK(merge.conflicts[0].mine == 600.0);
    CHECK(merge.conflicts[0].theirs == 650.0);
    const Job my_plan = merged(mine, theirs);
    CHECK(my_plan.heads[0].print_speed == 600.0);
    CHECK(mark_of(my_plan, 1, Field::print_speed)->real == 650.0);
    const Job their_plan = merged(mine, theirs, {true});
    CHECK(their_plan == theirs);
    CHECK_FALSE(mark_of(their_plan, 1, Field::print_speed)->real);

    // The other way round: my tick meets their plan.
    change(mine, {tick(mine, 1, Field::print_speed, early)});
    change(theirs, {forget(1, Field::print_speed)});
    CHECK(mark_of(merged(mine, theirs, {true}), 1, Field::print_speed)->real == 600.0);

    // Both say 650, one by its plan: that is no conflict of marks, whichever plan is chosen.
    change(mine, {really_set(mine, 1, Field::print_speed, 650.0, early)});
    change(theirs, {tick(theirs, 1, Field::print_speed, late)});
    CHECK(merge_walks(mine, theirs).conflicts.size() == 1);
    CHECK(mark_of(merged(mine, theirs), 1, Field::print_speed)->real == 650.0);
    CHECK_FALSE(mark_of(merged(mine, theirs, {true}), 1, Field::print_speed)->real);
    CHECK(merged(theirs, mine, {true}) == merged(mine, theirs));
}

TEST_CASE("What only one side noted is taken over, what both noted is chosen", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(theirs, {SetNumber{1, Field::squeegee_hardness, 70.0}});
    change(theirs, {SetNote{2, Note::ink, "soft"}});
    change(theirs, {SetBladeEdge{1, BladeEdge::rounded}});
    change(mine, {SetNote{1, Note::stencil, "two coats"}});
    CHECK(merge_walks(mine, theirs).conflicts.empty());
    Job expected = theirs;
    expected.heads[0].notes.stencil = "two coats";
    CHECK(merged(mine, theirs) == expected);
    CHECK(merged(theirs, mine) == expected);

    change(mine, {SetNumber{1, Field::squeegee_hardness, 75.0}});
    change(mine, {SetNote{2, Note::ink, "hard"}});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 2);
    CHECK(merge.conflicts[0].kind == MergeKind::number);
    CHECK(merge.conflicts[0].field == Field::squeegee_hardness);
    CHECK(merge.conflicts[1].kind == MergeKind::part);
    CHECK(merge.conflicts[1].head == 2);
    CHECK(merge.conflicts[1].part == JobPart::ink_note);
    const Job chosen = merged(mine, theirs, {false, true});
    CHECK(chosen.heads[0].squeegee.hardness == 75.0);
    CHECK(chosen.heads[1].notes.ink == "soft");
}

TEST_CASE("Both stops are chosen as one, so that they can't cross", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(mine, {SetStops{1, {-300.0, -200.0}}});
    change(theirs, {SetStops{1, {100.0, 200.0}}});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 1);
    CHECK(merge.conflicts[0].part == JobPart::stops);
    CHECK(merged(mine, theirs, {true}) == theirs);
}

TEST_CASE("An image, and what a colour wants, are chosen whole", "[walk_merge]") {
    const Job mine = two_walked_heads();
    Job theirs = mine;
    change(theirs, {SetNumber{1, Field::image_offset_x, 4.0}});
    change(theirs, {SetNumber{1, Field::image_length, 380.0}});
    for (const Field field : {Field::screen_on, Field::cool_after, Field::print_order})
        change(theirs, {SetNumber{2, field, 2.0}});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 2);
    CHECK(merge.conflicts[0].part == JobPart::image);
    CHECK(merge.conflicts[1].part == JobPart::wish);
    const Job chosen = merged(mine, theirs, {true, false});
    CHECK(chosen.heads[0] == theirs.heads[0]);
    CHECK(chosen.heads[1] == mine.heads[1]);
}

TEST_CASE("A press is chosen whole", "[walk_merge]") {
    const Job mine = two_walked_heads();
    Job theirs = mine;
    change(theirs, {SetNumber{0, Field::range_lo, -300.0}});
    change(theirs, {SetNumber{0, Field::range_hi, 300.0}});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 1);
    CHECK(merge.conflicts[0].part == JobPart::press);
    CHECK(merged(mine, theirs) == mine);
    CHECK(merged(mine, theirs, {true}) == theirs);
}

TEST_CASE("A head of one side alone is chosen, its marks are kept", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    change(theirs, {RemoveHead{2}});
    Head third = mine.heads.front();
    third.id = 3;
    third.station = 6;
    change(theirs, {AddHead{third}});
    change(theirs, {tick(theirs, 3, Field::print_speed, late)});
    change(mine, {tick(mine, 2, Field::flood_speed, early)});
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 2);
    CHECK(merge.conflicts[0].kind == MergeKind::head);
    CHECK(merge.conflicts[0].head == 2);
    CHECK(merge.conflicts[0].mine_done);
    CHECK_FALSE(merge.conflicts[0].theirs_done);
    CHECK(merge.conflicts[1].head == 3);
    const Job mine_kept = merged(mine, theirs);
    CHECK(mine_kept.heads == mine.heads);
    CHECK(mark_of(mine_kept, 3, Field::print_speed)->real == 600.0); // its plan is not here
    const Job taken = merged(mine, theirs, {true, true});
    CHECK(taken.heads == theirs.heads);
    CHECK(mark_of(taken, 2, Field::flood_speed)->real == 700.0);
    CHECK_FALSE(mark_of(taken, 3, Field::print_speed)->real);
}

TEST_CASE("What isn't the same job is refused, with the reason", "[walk_merge]") {
    const Job mine = two_walked_heads();
    Job theirs = mine;
    theirs.heads[0].id = 5;
    theirs.heads[1].id = 6;
    check_refused(mine, theirs, MergeRefusal::no_common_heads);
    theirs = mine;
    change(theirs, {MoveHead{2, 7}});
    check_refused(mine, theirs, MergeRefusal::other_station, 2, 4);
    theirs = mine;
    change(theirs, {SetName{2, "blue"}});
    check_refused(mine, theirs, MergeRefusal::other_colour, 2, 4);
    theirs = mine;
    theirs.press.stations = 12;
    theirs.uses.resize(12);
    check_refused(mine, theirs, MergeRefusal::other_press);
    theirs = mine;
    theirs.heads[0].print_speed = -1.0;
    check_refused(mine, theirs, MergeRefusal::not_a_job);
    theirs = mine;
    theirs.heads[1].id = 9; // another head on the station of 2
    check_refused(mine, theirs, MergeRefusal::station_taken, 2, 4);
    theirs = mine;
    change(theirs, {RemoveHead{2}});
    change(theirs, {SetUse{4, StationUse::flash}});
    check_refused(mine, theirs, MergeRefusal::station_taken, 2, 4);
    check_refused(theirs, mine, MergeRefusal::station_taken, 2, 4);
}

TEST_CASE("More than a job keeps is refused", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    for (std::size_t i = 0; i < most_counts; ++i) {
        const auto time = static_cast<std::int64_t>(i) + 1;
        mine.record.counts.push_back({1.0, 0.0, {time, ""}});
        theirs.record.counts.push_back({1.0, 0.0, {time + 1, ""}});
    }
    check_refused(mine, theirs, MergeRefusal::too_much);
    theirs.record.counts = mine.record.counts;
    CHECK(merge_walks(mine, theirs).refusal == MergeRefusal::none);
}
