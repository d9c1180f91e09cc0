// The walk round the press and two halves put together, for the tests of layout.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "app/records/job_link.h"
#include "core/walk.h"
#include "tests/app/driver.h"

namespace carriageway {

/// The other half of a walk, at odds with the one below in every way that a person chooses.
inline Job other_half(const Job& job, HeadId shared) {
    const Stamp by{1'700'000'360'000, "CD"};
    Job theirs = job;
    const HeadId own = job.heads.back().id;
    REQUIRE(apply(theirs, *tick_all(theirs, own, by)));
    REQUIRE(apply(theirs, Edit{really_set(theirs, shared, Field::squeegee_gauge, 1.4, by)}));
    REQUIRE(apply(theirs, Edit{SetNumber{shared, Field::print_speed, 512.0}}));
    const Stops stops = find_head(job, shared)->stops;
    REQUIRE(apply(theirs, Edit{SetStops{shared, {stops.operator_side - 3.0, stops.machine_side}}}));
    REQUIRE(apply(theirs, Edit{SetName{0, "The same tote, evening shift"}}));
    REQUIRE(apply(theirs, Edit{SetNote{shared, Note::ink, "with a tenth of softener"}}));
    RunRecord record = theirs.record;
    record.counts = {{96.0, 2.0, by}};
    record.stoppages = {{4.5, StopReason::ink, "tin empty", by}};
    REQUIRE(apply(theirs, Edit{SetRecord{record}}));
    return theirs;
}

/// Every state of the walk; leaves the job as it was.
template <class Scrolled, class Look>
void visit_walk(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    Session& session = driver.session();
    const Job before = session.job();
    const HeadId id = head_on(before, 5)->id;
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(OpenDay{DayPart::walk});
    scrolled("walk, first head");
    // What the last run had stands beside what is planned.
    const auto note = [&](Field field, double value) {
        act(DoEdit{Edit{really_set(session.job(), id, field, value, {1'700'000'000'000, "AB"})}});
    };
    note(Field::print_speed, 450.0);
    REQUIRE(session.finish_run());
    const RunId run = session.runs().front().id;
    act(WalkTo{id});
    const double stop = find_head(before, id)->stops.operator_side;
    note(Field::machine_stop, stop + 35.0);
    note(Field::squeegee_gauge, 1.2);
    act(TickHead{id, true});
    scrolled("walk, really set");
    act(OpenDayPad{{DayNumber::really_set, id, Field::machine_stop}});
    look("walk, pad");
    program.state().pad.reset();
    note(Field::machine_stop, stop - 10.0);
    scrolled("walk, stops crossed");
    act(WalkTo{0});
    scrolled("walk, job");
    act(WalkTo{0, true});
    scrolled("walk, all");
    driver.open_link("#" + job_link_fragment(other_half(before, id)));
    REQUIRE(program.state().day.merge);
    scrolled("merge");
    act(ShowDay{DayPart::walk});
    look("walk, another half waits");
    act(ShowDay{DayPart::merge});
    act(DropMerge{});
    for (int edits = 0; edits < 20 && !(session.job() == before); ++edits) act(Undo{});
    session.remove_run(run);
    act(CloseDay{});
    CHECK(session.job() == before);
}

} // namespace carriageway
