// The Rate place worked as a person works it, and its chart against the core's numbers.
//
// The demonstration with its stops set, 3 s to load, 2 s to unload, 4 s of flash and an index of
// 2 s: its heads take less than the flash, so a cycle is 6 s and 600 pieces an hour.
#include <algorithm>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/text/rate_sentences.h"
#include "core/job_pace.h"
#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Approx;

namespace {

/// Goes to the place with a job that runs as said above.
void go_to_rate(Driver& driver) {
    Program& program = driver.program();
    program.act(SetEveryStop{});
    PressProfile press = driver.session().job().press;
    press.pace = PressPace{};
    std::vector<Edit> edits{Edit{SetPress{press, {}}},
                            Edit{SetNumber{0, Field::load_time, 3.0}},
                            Edit{SetNumber{0, Field::unload_time, 2.0}},
                            Edit{SetNumber{0, Field::flash_dwell, 4.0}},
                            Edit{SetNumber{0, Field::cycle, 8.0}}};
    for (const Head& head : driver.session().job().heads)
        edits.push_back(Edit{SetNumber{head.id, Field::print_strokes, 1.0}});
    program.act(DoEdit{Edit{Together{edits}}});
    driver.settle();
    driver.tap("place/rate");
}

JobPace pace_of(Driver& driver) {
    return job_pace(driver.session().job(), driver.session().assessment());
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// Left and right of the first mark of the diagram that is asked for.
template <class Asked>
std::pair<double, double> span_of(const DrawingList& list, const Asked& asked) {
    for (const Mark& mark : list.marks()) {
        if (mark.layer != 0 || !asked(mark)) continue;
        const Vec* points = list.points(mark);
        float lo = points[0].x, hi = points[0].x;
        for (std::uint32_t i = 0; i < mark.count; ++i) {
            lo = std::min(lo, points[i].x);
            hi = std::max(hi, points[i].x);
        }
        return {static_cast<double>(lo), static_cast<double>(hi)};
    }
    FAIL("no such mark");
    return {};
}

} // namespace

TEST_CASE("The rate follows a loading time that is typed, and undo takes it back", "[rate_place]") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_rate(driver);
        CHECK(driver.find("rate/headline").label == "600 pieces an hour");
        CHECK(driver.find("rate/headline").live);
        CHECK(has(driver.find("rate/headline").value, "50 dozen an hour"));
        CHECK(driver.find("rate/slowest").label == "Slowest: Station 3 · flash, 4 s");
        driver.picture(std::string("rate-") + size.name);
        driver.tap("section/handling");
        driver.tap("job/handling.load_s");
        driver.pad("7");
        driver.tap("pad/accept");
        CHECK(driver.session().job().handling.load == 7.0);
        // 2 + 7 s.
        CHECK(driver.find("rate/headline").label == "400 pieces an hour");
        CHECK(driver.find("rate/slowest").label == "Slowest: Station 1 · load, 7 s");
        CHECK(driver.find("rate/station/1").value == "7 s, the slowest");
        CHECK(driver.find("rate/station/3").value == "4 s, waits 3 s");
        driver.tap("undo");
        CHECK(driver.find("rate/headline").label == "600 pieces an hour");
    }
}

TEST_CASE("The chart shows the core's stations, times and the slowest of them", "[rate_place]") {
    for (const WindowSize& size : {phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_rate(driver);
        const JobPace pace = pace_of(driver);
        REQUIRE(pace.runs());
        CHECK(pace.rate.cycle == Approx(6.0));
        float below = 0.0f;
        for (std::size_t place = 0; place < pace.rate.stations.size(); ++place) {
            const StationPace& station = pace.rate.stations[place];
            const Thing& row = driver.find("rate/station/" + std::to_string(station.station));
            CHECK(row.label ==
                  station_name(Language::english, driver.session().job(), pace.plan, place));
            CHECK(row.value.starts_with(pace_time(station.seconds)));
            CHECK(has(row.value, "slowest") == station.slowest);
            CHECK(row.box.y0 >= below - 0.01f);
            below = row.box.y1;
        }
        // The band of the index and the flash behind it lie where their times are, to a fifth of a
        // pixel; the cycle ends at the thick line.
        const DrawingList& list = driver.list();
        const auto band = span_of(list, [](const Mark& mark) {
            return mark.kind == MarkKind::hatch && mark.colour.role == Role::edge;
        });
        const auto flash = span_of(list, [](const Mark& mark) {
            return mark.kind == MarkKind::hatch && mark.colour.role == Role::mind;
        });
        const auto end = span_of(list, [](const Mark& mark) {
            return mark.kind == MarkKind::line && mark.colour.role == Role::ink &&
                   mark.width == 2.0f;
        });
        const double a_second = (band.second - band.first) / pace.rate.index;
        CHECK(flash.first == Approx(band.first + 2.0 * a_second).margin(0.2));
        CHECK(flash.second == Approx(band.first + 6.0 * a_second).margin(0.2));
        CHECK(end.first == Approx(band.first + 6.0 * a_second).margin(0.2));
        CHECK(has(driver.find("rate/chart").value, "6 s from piece to piece"));
    }
}

TEST_CASE("What a shorter stroke is worth is said per station, and why it is nothing",
          "[rate_place]") {
    Driver driver(phone);
    go_to_rate(driver);
    const JobPace pace = pace_of(driver);
    const double slower = 4.0 - pace.rate.stations[4].seconds;
    CHECK(has(driver.find("rate/worth/5").value,
              "10 mm less stroke → nothing: station 3's flash is slower by " + pace_time(slower)));
    CHECK(has(driver.find("rate/worth/3").value,
              "1 s less under the flash → 120 more pieces an hour"));
    CHECK_FALSE(driver.has("rate/worth/4")); // to cool takes no time
    CHECK(has(driver.find("rate/index").label, "1 s less for the table's turn → 120 more"));
    // 109 cycles of 6 s.
    CHECK(driver.find("rate/run").label == "100 pieces: 11 min");
    CHECK(has(driver.find("rate/range").label, "Likely"));
}

TEST_CASE("A tap on a head's bars leads to the head, one on the flash types its dwell",
          "[rate_place]") {
    for (const WindowSize& size : {small_phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        go_to_rate(driver);
        driver.tap("rate/station/5");
        CHECK(driver.program().state().place == Place::press);
        CHECK(driver.program().state().head == head_on(driver.session().job(), 5)->id);
        driver.tap("place/rate");
        driver.tap("rate/station/3");
        REQUIRE(driver.program().state().pad.has_value());
        CHECK(driver.program().state().pad->field == Field::flash_dwell);
        driver.pad("3");
        driver.tap("pad/accept");
        // 2 + 3 s: loading takes 3 s as well.
        CHECK(driver.find("rate/headline").label == "720 pieces an hour");
        CHECK(has(driver.find("rate/slowest").label, "Equally slow"));
    }
}

TEST_CASE("A head with both sensors on has no rate until its stops are set", "[rate_place]") {
    for (const WindowSize& size : {phone, desktop}) {
        Driver driver(size); // the demonstration's head 6 has them on
        driver.tap("place/rate");
        CHECK(driver.find("rate/chart").label == "No rate yet");
        CHECK(has(driver.find("rate/none").value, "Head 6 · Crest red: both sensors are on"));
        CHECK_FALSE(driver.has("rate/headline"));
        CHECK_FALSE(driver.has("rate/station/5"));
        driver.picture(std::string("rate-none-") + size.name);
        std::string fix;
        for (const Thing& thing : driver.list().things())
            if (thing.name.starts_with("finding/6/") && thing.name.ends_with("/fix"))
                fix = thing.name;
        REQUIRE_FALSE(fix.empty());
        driver.tap(fix);
        CHECK(driver.has("rate/headline"));
        CHECK(driver.has("rate/station/6"));
    }
}

TEST_CASE("Flooding while the table turns is a switch, and heat takes the cycle over",
          "[rate_place]") {
    Driver driver(phone);
    go_to_rate(driver);
    driver.tap("rate/take-cycle");
    CHECK(driver.session().job().run.cycle == Approx(6.0));
    CHECK_FALSE(driver.has("rate/take-cycle"));
    CHECK_FALSE(driver.has("rate/heat-cycle"));
    const double before = pace_of(driver).rate.stations[4].seconds;
    driver.tap("section/pace");
    CHECK(driver.find("rate/flood/standing").chosen);
    driver.tap("rate/flood/turning");
    CHECK(driver.session().job().press.pace.floods_while_indexing);
    CHECK(driver.find("rate/flood/turning").chosen);
    const JobPace pace = pace_of(driver);
    // Its flood with its wait lies within the 2 s of the index.
    const double flood = flood_in_index(pace.plan.stations[4].head);
    REQUIRE(flood < 2.0);
    CHECK(pace.rate.stations[4].seconds == Approx(before - flood));
    driver.tap("undo");
    CHECK_FALSE(driver.session().job().press.pace.floods_while_indexing);
    for (const char* field : {"press/pace.index_s", "press/pace.lower_s", "press/pace.lift_s",
                              "press/pace.jerk_mm_per_s3"})
        CHECK(driver.has(field));
    driver.tap("press/pace.index_s");
    driver.pad("3");
    driver.tap("pad/accept");
    CHECK(driver.find("rate/headline").label == "514 pieces an hour"); // 3600/7
}

TEST_CASE("The place speaks Spanish", "[rate_place]") {
    for (const WindowSize& size : {small_phone, desktop}) {
        Driver driver(size, {}, Language::spanish);
        go_to_rate(driver);
        driver.picture(std::string("rate-spanish-") + size.name);
        CHECK(driver.find("rate/headline").label == "600 piezas por hora");
        CHECK(driver.find("rate/slowest").label == "Lo más lento: Estación 3 · presecado, 4 s");
        CHECK(driver.find("rate/station/3").value == "4 s, lo más lento");
        CHECK(has(driver.find("rate/worth/5").value, "10 mm menos de carrera → nada: el presecado "
                                                     "de la estación 3 tarda "));
        CHECK(driver.find("rate/run").label == "100 piezas: 11 min");
    }
}
