#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <limits>
#include <string>

#include "core/edit.h"
#include "tests/core/sample_job.h"
#include "tests/core/sample_record.h"

using namespace carriageway;
using sample::Random;

namespace {

/// Any edit, mostly such that it might be done.
Edit random_edit(Random& random, int depth) {
    const auto head = static_cast<HeadId>(random.whole(0, 5));
    switch (random.whole(0, depth < 3 ? 17 : 16)) {
        case 0:
        case 1: {
            const auto field =
                static_cast<Field>(random.whole(0, static_cast<int>(Field::count) - 1));
            double value = sample::wild_number(random, field);
            if (random.chance(0.1)) value = 1e9;
            const bool own = info_of(field).owner == FieldOwner::head;
            return {SetNumber{own ? head : 0, field, value}};
        }
        case 2:
            return {SetStops{head, {random.between(-300.0, 100.0), random.between(-100.0, 300.0)}}};
        case 3:
            return {SetName{head, random.chance(0.2) ? "\xC0" : "name"}};
        case 4:
            return {SetInk{head, static_cast<std::uint32_t>(random.whole(0, 0x1100000))}};
        case 5:
            return {SetPrintStroke{
                head, random.chance(0.5) ? Direction::toward_operator : Direction::toward_machine}};
        case 6:
            return {SetWinged{head, random.chance(0.5)}};
        case 7: {
            Image image;
            if (random.chance(0.5)) image.outline = sample::star(random, random.whole(2, 9), 200.0);
            return {SetImage{head, image}};
        }
        case 8: {
            Head added = sample::one_head().heads.front();
            added.id = head;
            added.station = random.whole(0, 13);
            return {AddHead{added}};
        }
        case 9:
            return {random.chance(0.5) ? Edit{RemoveHead{head}}
                                       : Edit{MoveHead{head, random.whole(0, 13)}}};
        case 10:
            return {SetUse{random.whole(0, 13), static_cast<StationUse>(random.whole(0, 4))}};
        case 11: {
            PressProfile press;
            press.stations = random.whole(1, 14);
            std::vector<StationUse> uses(static_cast<std::size_t>(random.whole(0, 14)));
            if (!uses.empty()) uses.back() = StationUse::flash;
            return {SetPress{press, uses}};
        }
        case 12:
            return {random.chance(0.5) ? Edit{SetColourWish{head, sample::wish(random)}}
                                       : Edit{SetBladeEdge{head, BladeEdge::rounded}}};
        case 13: {
            const auto note = static_cast<Note>(random.whole(0, 3));
            return {SetNote{random.chance(0.5) ? head : 0, note, random.chance(0.1) ? "\xC0" : "so"}};
        }
        case 14: {
            const auto field =
                static_cast<Field>(random.whole(0, static_cast<int>(Field::count) - 1));
            WalkMark mark{head, field, true, std::nullopt, {1, "AB"}};
            if (random.chance(0.3)) mark.real = sample::wild_number(random, field);
            return {SetWalkMark{mark, random.chance(0.7)}};
        }
        case 15: {
            std::vector<WalkMark> marks = sample::walk(random, 3);
            if (random.chance(0.2)) std::reverse(marks.begin(), marks.end());
            return {SetWalk{std::move(marks)}};
        }
        case 16: {
            RunRecord record = sample::record(random);
            if (random.chance(0.2)) record.approval.time = -1;
            return {SetRecord{std::move(record)}};
        }
        default: {
            Together together;
            const int count = random.whole(0, 4);
            for (int i = 0; i < count; ++i)
                together.edits.push_back(random_edit(random, depth + 1));
            return {std::move(together)};
        }
    }
}

}  // namespace

TEST_CASE("any edit is undone exactly, refused ones change nothing, jobs stay right",
          "[edit][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    Job job = sample::one_head();
    int done = 0;
    int refused = 0;
    for (int i = 0; i < 20000; ++i) {
        const Job before = job;
        const Edit edit = random_edit(random, 0);
        const Applied applied = apply(job, edit);
        INFO("edit " << i << " of kind " << edit.what.index());
        REQUIRE(applied.inverse.has_value() != applied.refusal.has_value());
        if (applied) {
            ++done;
            REQUIRE_FALSE(fault_of(job));
            Job back = job;
            REQUIRE(apply(back, *applied.inverse));
            REQUIRE(back == before);
        } else {
            ++refused;
            REQUIRE(job == before);
        }
    }
    CHECK(done > 1000);  // or the property says little
    CHECK(refused > 1000);
}

TEST_CASE("the first fault of a job is named", "[edit]") {
    const Job good = sample::one_head();
    REQUIRE_FALSE(fault_of(good));
    const auto fault = [&good](auto spoil) {
        Job job = good;
        spoil(job);
        const auto found = fault_of(job);
        REQUIRE(found);
        return *found;
    };
    CHECK(fault([](Job& j) { j.name.assign(1, '\xFF'); }).refusal == Refusal::name_too_long);
    CHECK(fault([](Job& j) { j.platen.width = -1.0; }).field == Field::platen_width);
    CHECK(fault([](Job& j) { j.uses.pop_back(); }).refusal == Refusal::no_such_station);
    CHECK(fault([](Job& j) { j.uses[0] = StationUse::cool; }).refusal == Refusal::station_taken);
    CHECK(fault([](Job& j) { j.heads[0].id = 0; }).refusal == Refusal::id_taken);
    CHECK(fault([](Job& j) { j.heads[0].station = 0; }).refusal == Refusal::no_such_station);
    CHECK(fault([](Job& j) { j.heads[0].colour.assign(1, '\xC3'); }).refusal == Refusal::name_too_long);
    CHECK(fault([](Job& j) { j.heads[0].ink = 0x1000000; }).refusal == Refusal::out_of_range);
    CHECK(fault([](Job& j) { j.heads[0].stops = {1.0, 0.0}; }).refusal == Refusal::stops_crossed);
    CHECK(fault([](Job& j) { j.heads[0].notes.stencil.assign(1, '\xC3'); }).refusal ==
          Refusal::name_too_long);
    CHECK(fault([](Job& j) { j.heads[0].wish.order = 0.5; }).field == Field::print_order);
    CHECK(fault([](Job& j) { j.garment.name.assign(longest_name + 1, 'x'); }).refusal ==
          Refusal::name_too_long);
    CHECK(fault([](Job& j) { j.walk.push_back({1, Field::pieces, true, {}, {}}); }).refusal ==
          Refusal::not_a_record);
    CHECK(fault([](Job& j) { j.record.approval.time = -1; }).refusal == Refusal::not_a_record);
    CHECK(fault([](Job& j) { j.heads.push_back(j.heads[0]); }).refusal == Refusal::id_taken);
    CHECK(fault([](Job& j) {
              j.heads.push_back(j.heads[0]);
              j.heads[1].id = 2;
          }).refusal == Refusal::station_taken);
    CHECK(fault([](Job& j) {
              j.heads[0].image.outline = {{0.0, 0.0}, {1.0, 1.0}};
          }).refusal == Refusal::not_an_outline);

    const JobFault number =
        fault([](Job& j) { j.heads[0].flood.angle = std::numeric_limits<double>::infinity(); });
    CHECK(number.refusal == Refusal::out_of_range);
    CHECK(number.head == 1);
    CHECK(number.field == Field::flood_angle);
}

TEST_CASE("the first fault of a press is named", "[edit]") {
    REQUIRE_FALSE(fault_of(PressProfile{}));
    PressProfile press;
    press.name = std::string(longest_name + 1, 'x');
    CHECK(fault_of(press)->refusal == Refusal::name_too_long);
    press = {};
    press.stations = 0;
    CHECK(fault_of(press)->refusal == Refusal::not_a_press);
    press = {};
    press.carriage.acceleration = 0.0;
    CHECK(fault_of(press)->field == Field::acceleration);
    press = {};
    press.adjusters.resize(1);
    press.adjusters[0].graduations = 0;
    CHECK(fault_of(press)->refusal == Refusal::not_a_press);
    press = {};
    press.angles.least = press.angles.most;
    CHECK(fault_of(press)->refusal == Refusal::not_a_press);
    CHECK(fault_of(press)->field == Field::least_angle);
    press = {};
    press.rooms.resize(static_cast<std::size_t>(most_stations) + 1);
    CHECK(fault_of(press)->refusal == Refusal::not_a_press);
    press = {};
    press.checks = {{0, CheckList::before_run, CheckStep::table_clear, {}, Caution::none}};
    CHECK(fault_of(press)->refusal == Refusal::not_a_press);
    press = {};
    press.pace.index = 0.0;
    CHECK(fault_of(press)->field == Field::index_time);
}
