// Which colour on which station: the search on the screen, wishes, conflicts, and colours dragged on
// the diagram.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "tests/app/driver.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;

namespace {

/// Opens the part and finds the best placement.
void search(Driver& driver) {
    driver.reveal("day");
    driver.tap("day");
    driver.tap("day/stations");
    driver.reveal("stations/search");
    driver.tap("stations/search");
    driver.settle();
}

/// Where a station's frame stands on the screen.
Vec place_of(Driver& driver, int station) {
    const Projection& projection = driver.program().frame().projection;
    const HeadPlace place = place_of_station(driver.session().job().press, station);
    return projection.to_screen(place.to_press({0.0, 0.0}));
}

/// Drags a head on the press seen whole onto another station.
void drag_to(Driver& driver, const Head& head, int station) {
    const std::string name = "head/" + std::to_string(head.station);
    driver.drag(name, place_of(driver, station) - driver.find(name).box.centre());
}

} // namespace

TEST_CASE("The best placement is found, shown with its cost, and put into the job by a tap") {
    Driver driver(phone);
    // The first colour is to print last: as it stands, it doesn't.
    const HeadId id = driver.session().job().heads.front().id;
    ColourWish last = driver.session().job().heads.front().wish;
    last.order = 9.0;
    driver.program().act(DoEdit{Edit{SetColourWish{id, last}}});
    driver.settle();
    const Job before = driver.session().job();
    search(driver);
    REQUIRE(driver.has("stations/found/0"));
    CHECK_FALSE(driver.find("stations/found/0").value.empty());
    CHECK_FALSE(driver.has("stations/progress"));
    driver.reveal("stations/found/0/use");
    driver.tap("stations/found/0/use");
    CHECK(driver.session().job().heads.back().id == id);
    // Its placement is today's now, and costs what was said.
    driver.reveal("stations/search");
    driver.tap("stations/search");
    driver.settle();
    REQUIRE(driver.has("stations/found/0"));
    CHECK_FALSE(driver.has("stations/found/0/use"));
    driver.tap("day/undo");
    CHECK(driver.session().job() == before);
}

TEST_CASE("Wishes that can't all be met are named, and giving one up makes it possible") {
    Driver driver(desktop, {}, Language::spanish);
    const Job before = driver.session().job();
    ColourWish first = before.heads.front().wish, last = before.heads.back().wish;
    first.pinned = last.pinned = true;
    first.order = 9.0;
    last.order = 0.0;
    driver.program().act(DoEdit{Edit{SetColourWish{before.heads.front().id, first}}});
    driver.program().act(DoEdit{Edit{SetColourWish{before.heads.back().id, last}}});
    driver.settle();
    search(driver);
    REQUIRE(driver.has("stations/conflict/0"));
    std::string said;
    for (int i = 0; driver.has("stations/conflict/" + std::to_string(i)); ++i)
        said += driver.find("stations/conflict/" + std::to_string(i)).label + "\n";
    CHECK_THAT(said, ContainsSubstring("se imprime antes que"));
    CHECK_THAT(said, ContainsSubstring("queda en la estación"));
    for (const HeadId id : {before.heads.front().id, before.heads.back().id})
        driver.tap("stations/" + std::to_string(id) + "/pinned");
    // What was found was for the wishes before.
    CHECK_FALSE(driver.has("stations/conflict/0"));
    driver.tap("stations/search");
    CHECK_FALSE(driver.has("stations/conflict/0"));
    CHECK(driver.has("stations/found/0"));
}

TEST_CASE("A search can be stopped before it is done") {
    Driver driver(desktop);
    driver.program().act(OpenDay{DayPart::stations});
    driver.program().act(SearchStations{});
    driver.program().act(StopSearch{});
    driver.settle();
    CHECK_FALSE(driver.has("stations/found/0"));
    CHECK(driver.has("stations/search"));
}

TEST_CASE("A colour is dragged from station to station on the press seen whole") {
    for (const WindowSize& size : {phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        int open = 0;
        for (int station = 1; station <= driver.session().job().press.stations; ++station)
            if (driver.session().job().uses[static_cast<std::size_t>(station - 1)] ==
                StationUse::cool)
                open = station;
        REQUIRE(open != 0);
        driver.program().act(DoEdit{Edit{SetUse{open, StationUse::open}}});
        driver.settle();
        const Job before = driver.session().job();
        const Head head = before.heads.front();
        drag_to(driver, head, open);
        CHECK(find_head(driver.session().job(), head.id)->station == open);
        CHECK(head_on(driver.session().job(), head.station) == nullptr);
        driver.program().act(Undo{});
        driver.settle();
        // Onto another head: the two change places.
        const Head other = before.heads[1];
        drag_to(driver, head, other.station);
        CHECK(find_head(driver.session().job(), head.id)->station == other.station);
        CHECK(find_head(driver.session().job(), other.id)->station == head.station);
    }
}

TEST_CASE("A colour isn't dropped where no head can stand, and that is said") {
    Driver driver(desktop);
    const Job before = driver.session().job();
    int flash = 0;
    for (int station = 1; station <= before.press.stations; ++station)
        if (before.uses[static_cast<std::size_t>(station - 1)] == StationUse::flash) flash = station;
    REQUIRE(flash != 0);
    drag_to(driver, before.heads.front(), flash);
    CHECK(driver.session().job() == before);
    CHECK_THAT(driver.find("notice").label, ContainsSubstring("flash"));
}

TEST_CASE("Wishes are set by taps: order by the pad, the rest by switches") {
    Driver driver(phone);
    const Head head = driver.session().job().heads.front();
    const std::string base = "stations/" + std::to_string(head.id) + "/";
    driver.program().act(OpenDay{DayPart::stations});
    driver.settle();
    driver.reveal(base + "wet-on-wet");
    driver.tap(base + "wet-on-wet");
    CHECK(find_head(driver.session().job(), head.id)->wish.wet_on_wet != head.wish.wet_on_wet);
    const std::string order = "head/" + std::to_string(head.station) + "/wish.order";
    driver.reveal(order);
    driver.tap(order);
    REQUIRE(driver.has("pad/accept"));
    driver.pad("7");
    driver.tap("pad/accept");
    CHECK(find_head(driver.session().job(), head.id)->wish.order == 7.0);
    CHECK(driver.has("day/close"));
    driver.reveal("stations/room/1/head");
    driver.tap("stations/room/1/head");
    CHECK_FALSE(station_room(driver.session().job().press, 1).print_head);
}
