// Which colour on which station, as a layout test looks at it.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"

namespace carriageway {

/// Found, impossible, and a colour under the finger; leaves the job as it was.
template <class Scrolled, class Look>
void visit_stations(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    program.act(OpenDay{DayPart::stations});
    program.act(SearchStations{});
    driver.settle();
    scrolled("stations, found");
    // The last head is to print first, and both it and the first stay where they are.
    ColourWish first = before.heads.front().wish, last = before.heads.back().wish;
    first.pinned = last.pinned = true;
    first.order = 9.0;
    last.order = 0.0;
    program.act(DoEdit{Edit{Together{{Edit{SetColourWish{before.heads.front().id, first}},
                                      Edit{SetColourWish{before.heads.back().id, last}}}}}});
    program.act(SearchStations{});
    driver.settle();
    look("stations, impossible");
    program.act(Undo{});
    program.act(CloseDay{});
    program.act(ChooseHead{0});
    driver.settle();
    program.state().colour_drag = ColourDrag{before.heads.front().id,
                                             program.frame().diagram.centre(),
                                             before.heads.back().station};
    driver.settle();
    look("a colour dragged");
    program.state().colour_drag.reset();
    driver.settle();
    CHECK(driver.session().job() == before);
}

} // namespace carriageway
