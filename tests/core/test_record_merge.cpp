// The records and readings of two halves put together, worked by hand.
#include <catch2/catch_test_macros.hpp>

#include "core/walk_merge.h"
#include "tests/core/merged_walks.h"

using namespace carriageway;
using namespace carriageway::tests;

TEST_CASE("The record of both is joined", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    mine.record.ticks = {{2, late}, {7, late}};
    theirs.record.ticks = {{2, early}, {5, Stamp{1500, ""}}};
    mine.record.counts = {{100.0, 1.0, early}};
    theirs.record.counts = {{100.0, 1.0, early}, {250.0, 1.0, late}};
    theirs.record.stoppages = {{4.0, StopReason::ink, "", late}};
    theirs.record.approval = {"an", "a print", 1200};
    theirs.record.notes = "fine";
    CHECK(merge_walks(mine, theirs).conflicts.empty());
    const Job both = merged(mine, theirs);
    CHECK(both.record.ticks ==
          std::vector<CheckTick>{{2, early}, {5, Stamp{1500, ""}}, {7, late}});
    CHECK(both.record.counts == theirs.record.counts);
    CHECK(both.record.stoppages == theirs.record.stoppages);
    CHECK(both.record.approval == theirs.record.approval);
    CHECK(both.record.notes == "fine");
    CHECK(merged(theirs, mine) == both);
}

TEST_CASE("One stoppage told in two ways is chosen, two of one moment unknown are kept",
          "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    mine.record.stoppages = {{4.0, StopReason::ink, "", early}};
    theirs.record.stoppages = {{9.0, StopReason::ink, "ran dry", early}};
    mine.record.counts = {{10.0, 0.0, late}};
    theirs.record.counts = {{12.0, 0.0, late}};
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 2);
    CHECK(merge.conflicts[0].kind == MergeKind::count);
    CHECK(merge.conflicts[0].theirs == 12.0);
    CHECK(merge.conflicts[1].kind == MergeKind::stoppage);
    CHECK(merge.conflicts[1].mine == 4.0);
    CHECK(merge.conflicts[1].theirs == 9.0);
    CHECK(merge.conflicts[1].mine_stamp == early);
    const Job chosen = merged(mine, theirs, {false, true});
    CHECK(chosen.record.counts == mine.record.counts);
    CHECK(chosen.record.stoppages == theirs.record.stoppages);

    mine.record.stoppages[0].stamp = theirs.record.stoppages[0].stamp = {};
    CHECK(merged(mine, theirs).record.stoppages.size() == 2);
}

TEST_CASE("Approvals and notes of both sides are chosen", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    mine.record.approval = {"an", "a print", 1000};
    theirs.record.approval = {"bo", "a picture", 2000};
    mine.record.notes = "slow";
    theirs.record.notes = "fast";
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 2);
    CHECK(merge.conflicts[0].part == JobPart::approval);
    CHECK(merge.conflicts[1].part == JobPart::run_notes);
    const Job chosen = merged(mine, theirs, {true, false});
    CHECK(chosen.record.approval.by == "bo");
    CHECK(chosen.record.notes == "slow");
}

TEST_CASE("Readings of both are joined, rounds that go on are longer", "[walk_merge]") {
    Job mine = two_walked_heads();
    Job theirs = mine;
    mine.height_readings = {{1, 1, 0.0, 0.0, 3.0}, {2, 1, 0.0, 0.0, 3.1}};
    theirs.height_readings = {{1, 2, 0.0, 0.0, 2.9}, {1, 1, 0.0, 0.0, 3.0}};
    MarkRound round;
    round.read = true;
    mine.heads[0].rounds = {round};
    theirs.heads[0].rounds = {round, round};
    theirs.heads[1].rounds = {round};
    CHECK(merge_walks(mine, theirs).conflicts.empty());
    const Job both = merged(mine, theirs);
    CHECK(both.height_readings.size() == 3);
    CHECK(both.heads[0].rounds.size() == 2);
    CHECK(both.heads[1].rounds.size() == 1);
    CHECK(merged(theirs, mine) == both);
    theirs.heads[0].rounds[0].platen = 4;
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.conflicts.size() == 1);
    CHECK(merge.conflicts[0].part == JobPart::rounds);
}
