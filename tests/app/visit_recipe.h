// The recipe, for the tests of layout.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "core/walk.h"
#include "tests/app/driver.h"

namespace carriageway {

/// Every state of the recipe; leaves the job as it was.
template <class Scrolled, class Look>
void visit_recipe(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    Session& session = driver.session();
    const Job before = session.job();
    const Head head = before.heads.front();
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(DoEdit{Edit{SetNumber{head.id, Field::squeegee_hardness, 0.0}}});
    act(DoEdit{
        Edit{SetNote{head.id, Note::ink, "opaque white, 5 % softener, from the third pail"}}});
    act(DoEdit{Edit{really_set(session.job(), head.id, Field::squeegee_pressure, 231.0,
                               {1'700'000'000'000, "AB"})}});
    act(OpenDay{DayPart::recipe});
    scrolled("recipe");
    act(ShowGaps{true});
    scrolled("recipe, gaps");
    act(OpenPad{head.id, Field::squeegee_hardness});
    look("recipe, pad");
    program.state().pad.reset();
    act(EditText{TextTarget::note, 0, head.id, Note::stencil});
    look("recipe, note typed");
    act(CancelText{});
    act(ShowGaps{false});
    for (int edits = 0; edits < 10 && !(session.job() == before); ++edits) act(Undo{});
    act(CloseDay{});
    CHECK(session.job() == before);
}

} // namespace carriageway
