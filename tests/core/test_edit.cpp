#include <catch2/catch_test_macros.hpp>

#include <limits>
#include <string>

#include "tests/core/edited.h"

using namespace carriageway;
using sample::accept;
using sample::one_head;
using sample::refuse;
using sample::two_heads;

namespace {

Edit nested(int levels) {
    Edit edit{SetName{0, "deep"}};
    for (int i = 0; i < levels; ++i)
        edit = Edit{Together{{edit}}};
    return edit;
}

}  // namespace

TEST_CASE("numbers of head, job and press are set within their limits", "[edit]") {
    Job job = one_head();
    accept(job, {SetNumber{1, Field::squeegee_width, 400.0}});
    CHECK(job.heads[0].squeegee.width == 400.0);
    accept(job, {SetNumber{0, Field::run_past, 30.0}});
    CHECK(job.wishes.run_past == 30.0);
    accept(job, {SetNumber{0, Field::bar_length, 50.0}});
    CHECK(job.press.sensors.bar_length == 50.0);

    refuse(job, {SetNumber{1, Field::squeegee_width, -1.0}}, Refusal::out_of_range,
           Field::squeegee_width);
    refuse(job, {SetNumber{1, Field::print_speed, std::numeric_limits<double>::quiet_NaN()}},
           Refusal::out_of_range, Field::print_speed);
    refuse(job, {SetNumber{9, Field::squeegee_width, 400.0}}, Refusal::no_such_head);
    refuse(job, {SetNumber{0, Field::squeegee_width, 400.0}}, Refusal::no_such_head);
    refuse(job, {SetNumber{1, Field::run_past, 30.0}}, Refusal::no_such_head);
    refuse(job, {SetNumber{1, Field::count, 30.0}}, Refusal::out_of_range);
}

TEST_CASE("stops keep their order", "[edit]") {
    Job job = one_head();
    accept(job, {SetStops{1, {-200.0, 150.0}}});
    CHECK(job.heads[0].stops == Stops{-200.0, 150.0});
    accept(job, {SetNumber{1, Field::operator_stop, 149.0}});
    refuse(job, {SetNumber{1, Field::operator_stop, 150.0}}, Refusal::stops_crossed,
           Field::operator_stop);
    refuse(job, {SetNumber{1, Field::machine_stop, 0.0}}, Refusal::stops_crossed,
           Field::machine_stop);
    refuse(job, {SetStops{1, {10.0, 10.0}}}, Refusal::stops_crossed, Field::operator_stop);
    refuse(job, {SetStops{1, {-9000.0, 10.0}}}, Refusal::out_of_range, Field::operator_stop);
    refuse(job, {SetStops{2, {-10.0, 10.0}}}, Refusal::no_such_head);
}

TEST_CASE("a press number that contradicts another is refused", "[edit]") {
    Job job = one_head();
    refuse(job, {SetNumber{0, Field::range_lo, 380.0}}, Refusal::not_a_press, Field::range_lo);
    refuse(job, {SetNumber{0, Field::most_angle, radians(5.0)}}, Refusal::not_a_press,
           Field::most_angle);
    refuse(job, {SetNumber{0, Field::operator_sensor, 31.0}}, Refusal::not_a_press,
           Field::operator_sensor);
    refuse(job, {SetNumber{0, Field::squeegee_lowest_mark, 2.0}}, Refusal::not_a_press,
           Field::squeegee_lowest_mark);
    refuse(job, {SetNumber{0, Field::flood_highest_mark, -1.0}}, Refusal::not_a_press,
           Field::flood_highest_mark);
}

TEST_CASE("names are UTF-8 of a limited length", "[edit]") {
    Job job = one_head();
    accept(job, {SetName{0, "Sommerfest, blaues Hemd \xC3\xA4\xE2\x82\xAC\xF0\x9F\x98\x80"}});
    accept(job, {SetName{1, "r\xC3\xB6tlich"}});
    CHECK(job.heads[0].colour == "r\xC3\xB6tlich");
    accept(job, {SetName{0, std::string(longest_name, 'x')}});
    refuse(job, {SetName{0, std::string(longest_name + 1, 'x')}}, Refusal::name_too_long);
    refuse(job, {SetName{3, "x"}}, Refusal::no_such_head);
    // RFC 3629, 3: stray and missing continuation, overlong forms, a surrogate, above U+10FFFF.
    for (const char* bad : {"\x80", "\xC3", "a\xC3z", "\xC0\xAF", "\xE0\x80\xAF", "\xE2\x82",
                            "\xED\xA0\x80", "\xF0\x80\x80\x80", "\xF4\x90\x80\x80", "\xFF"}) {
        refuse(job, {SetName{0, bad}}, Refusal::name_too_long);
        refuse(job, {SetName{1, bad}}, Refusal::name_too_long);
    }
}

TEST_CASE("ink, print stroke and wings are set", "[edit]") {
    Job job = one_head();
    accept(job, {SetInk{1, 0xFFFFFF}});
    accept(job, {SetPrintStroke{1, Direction::toward_machine}});
    accept(job, {SetWinged{1, false}});
    CHECK(job.heads[0].ink == 0xFFFFFF);
    CHECK(job.heads[0].print_stroke == Direction::toward_machine);
    CHECK_FALSE(job.heads[0].flood.winged);
    refuse(job, {SetInk{1, 0x1000000}}, Refusal::out_of_range);
    refuse(job, {SetInk{2, 0}}, Refusal::no_such_head);
    refuse(job, {SetPrintStroke{2, Direction::toward_machine}}, Refusal::no_such_head);
    refuse(job, {SetWinged{2, true}}, Refusal::no_such_head);
}

TEST_CASE("an image is replaced whole, and its outline must be one", "[edit]") {
    Job job = one_head();
    Image image;
    image.outline = {{-50.0, -50.0}, {50.0, -50.0}, {0.0, 60.0}};
    accept(job, {SetImage{1, image}});
    // With an outline the rectangle's numbers mean nothing: setting one is a mistake.
    refuse(job, {SetNumber{1, Field::image_length, 100.0}}, Refusal::out_of_range,
           Field::image_length);
    accept(job, {SetNumber{1, Field::image_offset_y, 12.0}});

    image.outline = {{0.0, 0.0}, {50.0, 50.0}, {50.0, 0.0}, {0.0, 50.0}};  // crosses itself
    refuse(job, {SetImage{1, image}}, Refusal::not_an_outline);
    image.outline = {{0.0, 0.0}, {50.0, 50.0}};
    refuse(job, {SetImage{1, image}}, Refusal::not_an_outline);
    image.outline = {{0.0, 0.0}, {9000.0, 0.0}, {0.0, 50.0}};
    refuse(job, {SetImage{1, image}}, Refusal::not_an_outline);
    image.outline.clear();
    image.width = 0.0;
    refuse(job, {SetImage{1, image}}, Refusal::out_of_range, Field::image_width);
    refuse(job, {SetImage{2, Image{}}}, Refusal::no_such_head);
}

TEST_CASE("heads come, go and change places, in the order of their stations", "[edit]") {
    Job job = two_heads();
    Head third = job.heads.front();
    third.id = 3;
    third.station = 2;
    accept(job, {AddHead{third}});
    REQUIRE(job.heads.size() == 3);
    CHECK(job.heads[1].id == 3);

    accept(job, {MoveHead{1, 4}});  // head 2 stands there: they change places
    CHECK(find_head(job, 1)->station == 4);
    CHECK(find_head(job, 2)->station == 1);
    CHECK(job.heads[0].id == 2);
    accept(job, {MoveHead{1, 10}});
    accept(job, {MoveHead{3, 2}});  // where it stands
    accept(job, {RemoveHead{2}});
    CHECK(find_head(job, 2) == nullptr);

    refuse(job, {AddHead{third}}, Refusal::id_taken);
    third.id = 0;
    refuse(job, {AddHead{third}}, Refusal::id_taken);
    third.id = 7;
    refuse(job, {AddHead{third}}, Refusal::station_taken);
    third.station = 7;  // for loading
    refuse(job, {AddHead{third}}, Refusal::station_taken);
    third.station = 11;
    refuse(job, {AddHead{third}}, Refusal::no_such_station);
    third.station = 5;
    third.squeegee.width = 0.0;
    refuse(job, {AddHead{third}}, Refusal::out_of_range, Field::squeegee_width);
    refuse(job, {MoveHead{3, 7}}, Refusal::station_taken);
    refuse(job, {MoveHead{3, 0}}, Refusal::no_such_station);
    refuse(job, {MoveHead{9, 1}}, Refusal::no_such_head);
    refuse(job, {RemoveHead{9}}, Refusal::no_such_head);
}

TEST_CASE("a station is used for one thing", "[edit]") {
    Job job = two_heads();
    accept(job, {SetUse{10, StationUse::flash}});
    accept(job, {SetUse{1, StationUse::open}});
    refuse(job, {SetUse{1, StationUse::flash}}, Refusal::station_taken);
    refuse(job, {SetUse{11, StationUse::flash}}, Refusal::no_such_station);
    refuse(job, {SetUse{0, StationUse::open}}, Refusal::no_such_station);
}

TEST_CASE("another press must have the stations that are in use", "[edit]") {
    Job job = two_heads();
    PressProfile press = job.press;
    press.stations = 6;
    press.name = "smaller";
    accept(job, {SetPress{press, {}}});
    CHECK(job.uses.size() == 6);
    press.stations = 14;
    accept(job, {SetPress{press, {StationUse::open, StationUse::cool}}});
    CHECK(job.uses.size() == 14);
    CHECK(job.uses[1] == StationUse::cool);
    CHECK(job.uses[13] == StationUse::open);

    refuse(job, {SetPress{press, {StationUse::load}}}, Refusal::station_taken);
    press.stations = 3;
    refuse(job, {SetPress{press, {}}}, Refusal::no_such_station);
    press.stations = 1;
    refuse(job, {SetPress{press, {}}}, Refusal::not_a_press);
    press.stations = most_stations + 1;
    refuse(job, {SetPress{press, {}}}, Refusal::not_a_press);
    press.stations = 10;
    press.carriage.range_lo = press.carriage.range_hi;
    refuse(job, {SetPress{press, {}}}, Refusal::not_a_press, Field::range_lo);
    press = PressProfile{};
    press.adjusters.push_back({});
    press.adjusters.back().mm_per_turn = 0.0;
    refuse(job, {SetPress{press, {}}}, Refusal::not_a_press);
    press.adjusters.back().mm_per_turn = 1.5;
    accept(job, {SetPress{press, {}}});
}

TEST_CASE("several edits are done together or not at all", "[edit]") {
    Job job = two_heads();
    accept(job, {Together{{{SetStops{1, {-100.0, 100.0}}},
                           {SetStops{1, {-90.0, 90.0}}},
                           {RemoveHead{2}},
                           {SetName{0, "together"}}}}});
    CHECK(job.heads[0].stops == Stops{-90.0, 90.0});
    accept(job, {Together{}});
    refuse(job, {Together{{{SetName{0, "half"}}, {SetInk{1, 1}}, {SetInk{2, 1}}}}},
           Refusal::no_such_head);
    accept(job, nested(deepest_together));
    refuse(job, nested(deepest_together + 1), Refusal::too_deep);
}
