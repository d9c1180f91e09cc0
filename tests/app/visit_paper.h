// The part of the run's sheet that prints, as a layout test looks at it.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"

namespace carriageway {

/// On both papers, with an address that can't be used while it is typed and after, and with letters
/// that can't be printed. Leaves job and habits as they were.
template <class Scrolled, class Look>
void visit_paper(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    const Habits habits = program.state().habits;
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(OpenDay{DayPart::paper});
    scrolled("paper");
    act(ChoosePaper{PaperSize::letter, PaperLayout::overview_and_table});
    program.state().habits.link_base = "carriageway on the web";
    act(DoEdit{Edit{SetName{before.heads.front().id, "\u5929\u9752 azul"}}});
    scrolled("paper, letters and address that can't be used");
    if (driver.has("paper/link-base")) {
        act(EditText{TextTarget::link_base});
        look("paper, address");
        act(CancelText{});
    }
    program.state().habits = habits;
    act(ChoosePaper{habits.paper, habits.layout});
    act(Undo{});
    act(CloseDay{});
    CHECK(driver.session().job() == before);
    CHECK(program.state().habits == habits);
}

} // namespace carriageway
