// The parts of the run's sheet about earlier runs, as a layout test looks at them.
#pragma once

#include "tests/app/driver.h"

namespace carriageway {

/// The contents, the runs with one opened, and two jobs side by side; a run is left in the library.
template <class Scrolled, class Look>
void visit_runs(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    program.act(OpenDay{DayPart::contents});
    driver.settle();
    scrolled("the run");
    program.act(ShowDay{DayPart::runs});
    driver.settle();
    scrolled("runs, none");
    program.act(FinishRun{});
    Head changed = before.heads.front();
    program.act(DoEdit{Edit{SetStops{changed.id, {changed.stops.operator_side + 3.0, changed.stops.machine_side + 7.0}}}});
    program.act(DoEdit{Edit{SetNote{changed.id, Note::ink, "white, 3 % thinner, second mix of the day"}}});
    const RunId run = driver.session().runs().front().id;
    program.act(ChooseRun{run});
    driver.settle();
    scrolled("runs, one open");
    program.act(CompareRun{run});
    program.act(CompareEverything{true});
    driver.settle();
    scrolled("compare");
    look("compare, top");
    program.act(CloseDay{});
    program.act(Undo{});
    program.act(Undo{});
    driver.settle();
    CHECK(driver.session().job() == before);
}

} // namespace carriageway
