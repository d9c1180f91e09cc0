// The layout test's way through a running cycle.
#pragma once

#include "tests/app/driver.h"

namespace carriageway {

template <class Look> void visit_cycle(Driver& driver, const Look& look) {
    Program& program = driver.program();
    const HeadId head = program.session().job().heads.front().id;
    for (const HeadId chosen : {HeadId{0}, head}) {
        program.act(ChooseHead{chosen});
        program.act(OpenCycle{true});
        program.act(PlayCycle{false});
        for (const double time : {0.7, 3.1}) {
            program.state().cycle.time = time;
            driver.settle();
            look(chosen == 0 ? "cycle of the press" : "cycle of a head");
        }
        program.act(OpenCycle{false});
    }
    program.act(ChooseHead{0});
    driver.settle();
}

} // namespace carriageway
