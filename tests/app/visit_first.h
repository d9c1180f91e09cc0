// The layout test's way through the first steps, on a copy and on the demonstration, and through
// the view for a class.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"

namespace carriageway {

template <class Scrolled, class Look>
void visit_first(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    program.state().open.fill(false);
    program.state().notice.reset();
    // On a copy, since the job is not the demonstration as it came.
    act(DoEdit{Edit{SetName{0, "Night shift"}}});
    for (const bool copy : {true, false}) {
        const std::string where = copy ? "first steps on a copy" : "first steps";
        if (!copy) act(Undo{});
        act(BeginFirstSteps{});
        REQUIRE(program.state().first.copy == copy);
        look(where + ", drag");
        program.choose_head(program.state().first.head);
        driver.settle();
        look(where + ", drag, the head");
        act(NextFirstStep{});
        look(where + ", read");
        act(NextFirstStep{});
        if (copy) scrolled(where + ", fix");
        act(NextFirstStep{});
        look(where + ", done");
        act(EndFirstSteps{});
        look(where + ", over");
        program.state().notice.reset();
    }
    act(ChooseHead{0});
    CHECK(driver.session().job() == before);
    act(ShowClass{true});
    program.state().notice.reset();
    driver.settle();
    look("class, press");
    program.choose_head(head_on(before, 7)->id);
    driver.settle();
    look("class, head 7");
    act(GoTo{Place::jobs});
    scrolled("class, jobs");
    act(ShowClass{false});
    program.state().notice.reset();
    act(GoTo{Place::press});
    act(ChooseHead{0});
}

} // namespace carriageway
