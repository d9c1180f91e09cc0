// A job's own wishes put into the question of placing, and placements put back into the job.
#include <algorithm>

#include <catch2/catch_test_macros.hpp>

#include "core/job_placement.h"
#include "core/placement_conflict.h"
#include "core/placement_search.h"
#include "tests/core/sample_job.h"

using namespace carriageway;

namespace {

/// Ten stations: loading at 1, unloading at 10, one flash unit at 5; a base on 2 that wants a flash
/// and a cool station behind it, and three colours that may print wet on wet.
Job base_and_three() {
    Job job = sample::one_head();
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.uses[0] = StationUse::load;
    job.uses[9] = StationUse::unload;
    job.uses[4] = StationUse::flash;
    Head head = job.heads.front();
    job.heads.clear();
    const int stations[] = {2, 3, 7, 9};
    for (int i = 0; i < 4; ++i) {
        head.id = static_cast<HeadId>(i + 1);
        head.station = stations[i];
        head.colour = "colour " + std::to_string(i + 1);
        head.wish = {};
        head.wish.order = i == 0 ? 0.0 : 1.0;
        head.wish.flash_after = i == 0;
        head.wish.cool_after = i == 0 ? 1.0 : 0.0;
        job.heads.push_back(head);
    }
    REQUIRE_FALSE(fault_of(job));
    return job;
}

int station_of_head(const Job& job, HeadId id) { return find_head(job, id)->station; }

} // namespace

TEST_CASE("A job's question has its stations, wishes and flash units") {
    Job job = base_and_three();
    job.press.rooms.assign(3, StationRoom{});
    job.press.rooms[2].print_head = false;
    job.heads[1].wish.pinned = true;
    job.heads[2].wish.screen_on = 7.0;
    const JobPlacement placed = job_placement(job);
    const PlacementQuestion& question = placed.question;
    REQUIRE(placement_fault(question).refusal == PlacementRefusal::none);
    REQUIRE(question.stations.size() == 10);
    CHECK(question.stations[0].kept == StationKept::load);
    CHECK(question.stations[9].kept == StationKept::unload);
    CHECK(question.stations[4].flash_now);
    CHECK_FALSE(question.stations[2].head);
    CHECK(question.flash_units == 1);
    REQUIRE(question.colours.size() == 4);
    CHECK(question.colours[0].flash_after);
    CHECK(question.colours[0].cool_after == 1);
    CHECK(question.colours[1].pinned == 3);
    CHECK(question.colours[2].screen_on == 7);
    // Half of each image prints, and all are as large: the default of a deposit.
    for (const PlacementColour& colour : question.colours) CHECK(colour.area == 0.5);
}

TEST_CASE("A garment's way begins where it is loaded") {
    Job job = base_and_three();
    job.uses[0] = StationUse::open;
    job.uses[5] = StationUse::load;
    const JobPlacement placed = job_placement(job);
    CHECK(placed.way == std::vector<int>{6, 7, 8, 9, 10, 1, 2, 3, 4, 5});
    CHECK(station_of(placed, 1) == 6);
    CHECK(station_of(placed, 10) == 5);
    CHECK(station_of(placed, 0) == 0);
    CHECK(station_of(placed, 11) == 0);
}

TEST_CASE("The best placement put into the job keeps every wish, in one edit that can be undone") {
    const Job before = base_and_three();
    const JobPlacement placed = job_placement(before);
    const PlacementSearch search = place(placed.question);
    REQUIRE(search.state() == PlacementState::found);
    // Base, flash, cool and three colours fit without an idle station.
    CHECK(search.found().front().cost.idle == 0);
    const std::optional<Edit> edit = placement_edit(before, placed, search.found().front());
    REQUIRE(edit);
    Job job = before;
    const Applied applied = apply(job, *edit);
    REQUIRE(applied);
    CHECK_FALSE(fault_of(job));
    const int base = station_of_head(job, 1);
    const auto use = [&](int station) { return job.uses[static_cast<std::size_t>(station - 1)]; };
    CHECK(std::count(job.uses.begin(), job.uses.end(), StationUse::flash) == 1);
    int flash = base + 1;
    while (flash < 10 && use(flash) != StationUse::flash) ++flash;
    CHECK(use(flash) == StationUse::flash);
    CHECK(use(flash + 1) == StationUse::cool);
    for (HeadId id = 2; id <= 4; ++id) CHECK(station_of_head(job, id) > flash + 1);
    CHECK(use(1) == StationUse::load);
    CHECK(use(10) == StationUse::unload);
    // Placed so, nothing is left to do.
    const JobPlacement again = job_placement(job);
    CHECK_FALSE(placement_edit(job, again, place(again.question).found().front()));
    REQUIRE(apply(job, *applied.inverse));
    CHECK(job == before);
}

TEST_CASE("Today's arrangement has its own cost, or the wishes that it breaks") {
    Job job = base_and_three();
    // Colour 2 prints between the base and its flash: two wishes stand against each other.
    CHECK(wishes_broken(as_placed_now(job)) ==
          std::vector<PlacementWish>{{PlacementWishKind::flash_after, 1, 0}});
    job.heads[1].station = 8;
    std::swap(job.heads[1], job.heads[2]);
    const PlacementSearch search = place(as_placed_now(job).question);
    REQUIRE(search.state() == PlacementState::found);
    CHECK(wishes_broken(as_placed_now(job)).empty());
    // Base 2, flash 5, colours 7, 8, 9: from the base to 9 the stations 3, 4 and 6 are blank, and
    // one of them is the cool one that the base wants.
    CHECK(search.found().front().cost.idle == 2);
}

TEST_CASE("Nothing prints on a garment that is off") {
    Job job = base_and_three();
    job.uses[9] = StationUse::open;
    job.uses[7] = StationUse::unload; // 8, and colour 4 stands on 9
    const JobPlacement placed = job_placement(job);
    REQUIRE(placement_fault(placed.question).refusal == PlacementRefusal::none);
    CHECK(placed.question.stations[6].head);
    CHECK_FALSE(placed.question.stations[8].head);
    CHECK_FALSE(placed.question.stations[9].head);
    const PlacementSearch search = place(placed.question);
    REQUIRE(search.state() == PlacementState::found);
    for (const Placement& found : search.found())
        for (const int at : found.stations) CHECK(station_of(placed, at) < 8);
    job.heads[1].station = 6;
    CHECK(place(as_placed_now(job).question).state() == PlacementState::impossible);
    CHECK(wishes_broken(as_placed_now(job)).empty());
    // Laid on where it is taken off, as only that is set: the way begins there.
    job.uses[0] = StationUse::open;
    const JobPlacement both = job_placement(job);
    CHECK(both.way.front() == 8);
    CHECK(both.question.stations[1].head);
}

TEST_CASE("A flash unit that a placement doesn't need stays on the press") {
    Job job = base_and_three();
    job.heads[0].wish.flash_after = false;
    job.heads[0].wish.cool_after = 0.0;
    const JobPlacement placed = job_placement(job);
    const PlacementSearch search = place(placed.question);
    REQUIRE(search.state() == PlacementState::found);
    const std::optional<Edit> edit = placement_edit(job, placed, search.found().front());
    REQUIRE(edit);
    REQUIRE(apply(job, *edit));
    CHECK(std::count(job.uses.begin(), job.uses.end(), StationUse::flash) == 1);
}

TEST_CASE("Every placement that is found can be put into the job") {
    constexpr std::uint64_t seed = 20261125;
    sample::Random random(seed);
    int put = 0;
    for (int i = 0; i < 200; ++i) {
        INFO("seed " << seed << " case " << i);
        Job job = base_and_three();
        for (Head& head : job.heads) {
            head.wish.order = random.whole(0, 2);
            head.wish.flash_after = random.chance(0.3);
            head.wish.cool_after = random.whole(0, 1);
            head.wish.flash_together = random.chance(0.3);
            head.wish.wet_on_wet = random.chance(0.8);
            head.wish.pinned = random.chance(0.15);
        }
        const JobPlacement placed = job_placement(job);
        const PlacementSearch search = place(placed.question);
        REQUIRE((search.state() == PlacementState::found ||
                 search.state() == PlacementState::impossible));
        for (const Placement& placement : search.found()) {
            Job other = job;
            const std::optional<Edit> edit = placement_edit(job, placed, placement);
            if (!edit) continue;
            REQUIRE(apply(other, *edit));
            REQUIRE_FALSE(fault_of(other));
            ++put;
            for (std::size_t c = 0; c < job.heads.size(); ++c)
                CHECK(station_of_head(other, job.heads[c].id) ==
                      station_of(placed, placement.stations[c]));
            // What was asked for is what stands there.
            CHECK(place(as_placed_now(other).question).state() == PlacementState::found);
        }
    }
    CHECK(put > 200);
}
