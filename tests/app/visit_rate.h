// The Rate place, for the tests of layout.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "core/job_pace.h"
#include "tests/app/driver.h"

namespace carriageway {

/// A press with so many stations, heads on most of them: between loading, flash, cooling and
/// unloading, each as the demonstration's first head.
inline Job visited_long_press(Job job, int stations) {
    const Head pattern = job.heads.front();
    job.press.stations = stations;
    job.uses.assign(static_cast<std::size_t>(stations), StationUse::open);
    job.uses[0] = StationUse::load;
    job.uses[2] = StationUse::flash;
    job.uses[3] = StationUse::cool;
    job.uses.back() = StationUse::unload;
    job.heads.clear();
    for (int station = 2; station < stations; ++station) {
        if (station == 3 || station == 4) continue;
        Head head = pattern;
        head.id = static_cast<HeadId>(station);
        head.station = station;
        head.rounds.clear();
        head.deposit.strokes = station == 2 ? 2.0 : 1.0;
        job.heads.push_back(head);
    }
    return job;
}

/// What makes such a press of the job that is open.
inline Edit lengthened(const Job& job, int stations) {
    const Job long_one = visited_long_press(job, stations);
    std::vector<Edit> edits;
    for (const Head& head : job.heads) edits.push_back(Edit{RemoveHead{head.id}});
    edits.push_back(Edit{SetPress{long_one.press, long_one.uses}});
    for (const Head& head : long_one.heads) edits.push_back(Edit{AddHead{head}});
    return Edit{Together{edits}};
}

/// Every state of the place; leaves the job as it was.
template <class Scrolled, class Look>
void visit_rate(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    Session& session = driver.session();
    const Job before = session.job();
    const HeadId chosen = program.state().head;
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    const auto set = [&](Field field, double value) {
        act(DoEdit{Edit{SetNumber{0, field, value}}});
    };
    act(GoTo{Place::rate});
    scrolled("rate, a head stands still"); // as the demonstration comes
    act(SetEveryStop{});
    scrolled("rate");
    program.state().tall_sheet = true;
    driver.settle();
    look("rate, tall sheet");
    program.state().tall_sheet = false;
    // Equally slow, and floods that outlast the index.
    set(Field::load_time, session.job().run.flash_dwell);
    look("rate, two equally slow");
    PressProfile press = session.job().press;
    press.pace.floods_while_indexing = true;
    press.pace.index = 0.5;
    act(DoEdit{Edit{SetPress{press, {}}}});
    set(Field::load_time, 0.5);
    set(Field::flash_dwell, 0.5);
    scrolled("rate, floods early");
    // Nobody loads, and a station without a number of its own.
    std::vector<Edit> edits;
    for (int station = 1; station <= press.stations; ++station)
        if (!head_on(session.job(), station))
            edits.push_back(Edit{SetUse{station, StationUse::open}});
    act(DoEdit{Edit{Together{edits}}});
    look("rate, nobody loads");
    act(OpenPad{0, Field::load_time});
    program.state().pad->trouble =
        say(session.looks().language, Word::number_not_read, {"12 thumbs"});
    driver.settle();
    look("rate, pad");
    program.state().pad.reset();
    act(DoEdit{lengthened(session.job(), 18)});
    look("rate, eighteen stations");
    CHECK(session.job().heads.size() == 14);
    for (int edit = 0; edit < 20 && !(session.job() == before); ++edit) act(Undo{});
    CHECK(session.job() == before);
    act(GoTo{Place::press});
    act(ChooseHead{chosen});
}

} // namespace carriageway
