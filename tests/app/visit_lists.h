// The lists of a run and what is noted in it, for the tests of layout.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "core/list_edits.h"
#include "tests/app/driver.h"

namespace carriageway {

/// A record with everything that lists show, and long texts in it.
inline RunRecord visited_record() {
    const Timestamp start = 1'700'000'000'000;
    RunRecord record;
    record.counts = {{240, 3, {start, "AB"}}, {840, 12, {start + 7'200'000, "AB"}}};
    record.stoppages = {{12.5, StopReason::blade, "the edge was nicked at the left", {start, "AB"}},
                        {4.0, StopReason::other, "", {start + 600'000, "Initials long"}}};
    record.approval = {"Shift lead of the early shift", "the sample of last spring", start};
    record.notes = "Platens need longer to warm up when the gate stands open";
    return record;
}

/// Every state of the lists; leaves the job as it was.
template <class Scrolled, class Look>
void visit_lists(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    Session& session = driver.session();
    ViewState& state = program.state();
    const Job before = session.job();
    const Habits habits = state.habits;
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(OpenDay{DayPart::lists});
    act(ShowList{CheckList::before_run});
    scrolled("lists, before the run");
    act(ShowList{CheckList::first_piece, true});
    scrolled("lists, nothing counted");
    state.habits.initials = "AB";
    for (const std::uint32_t item : {1u, 3u, 13u, 14u}) act(TickStep{item, true});
    RunRecord record = visited_record();
    record.ticks = session.job().record.ticks;
    act(DoEdit{Edit{SetRecord{record}}});
    act(DoEdit{*add_step(session.job(), CheckList::before_run, "Spare squeegee laid out ready")});
    act(ShowList{CheckList::before_run});
    scrolled("lists, some ticked");
    for (const CheckList list :
         {CheckList::first_piece, CheckList::before_night, CheckList::before_unloading}) {
        act(ShowList{list});
        scrolled("lists, list " + std::to_string(static_cast<int>(list)));
    }
    act(ShowList{CheckList::first_piece, true});
    scrolled("lists, in the run");
    act(OpenDayPad{{DayNumber::printed}});
    state.pad->trouble =
        say(session.looks().language, Word::tally_fewer, {format_number(840.0, 0)});
    driver.settle();
    look("lists, counting");
    state.pad.reset();
    act(DoEdit{*remove_step(session.job(), usual_checks().back().id)});
    act(ShowList{CheckList::tear_down, false, true});
    scrolled("lists, being changed");
    act(EditText{TextTarget::own_step});
    look("lists, step typed");
    act(CancelText{});
    for (int edits = 0; edits < 20 && !(session.job() == before); ++edits) act(Undo{});
    state.habits = habits;
    act(ShowList{CheckList::before_run});
    act(CloseDay{});
    CHECK(session.job() == before);
}

} // namespace carriageway
