// A job's history as a line of runs: what the job was each time, and what a list says of it.
#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "app/records/library.h"
#include "tests/records/run_samples.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
using Journal = LibraryOptions::Journal;

namespace {

Library opened(const std::string& folder, Journal journal = Journal::write_ahead) {
    LibraryOptions options;
    options.journal = journal;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

RunId added(Library& library, JobId job, const Job& as_it_was, Timestamp ended) {
    const LibraryResult<RunId> id = library.add_run(job, as_it_was, ended);
    if (!id) FAIL(id.fault().detail);
    return *id;
}

std::vector<RunId> ids(const LibraryResult<std::vector<RunRow>>& rows) {
    if (!rows) FAIL(rows.fault().detail);
    std::vector<RunId> found;
    for (const RunRow& row : *rows) found.push_back(row.id);
    return found;
}

using Ids = std::vector<RunId>;

} // namespace

TEST_CASE("a run keeps the job as it was, after the library was closed too", "[library][runs]") {
    const Journal journal = GENERATE(Journal::write_ahead, Journal::rollback);
    const ScratchFolder folder;
    const Job plain = samples::job("Twice printed");
    const Job first = samples::finished(plain, 1);
    const Job second = samples::finished(plain, 2);
    JobId job = 0;
    RunId one = 0;
    RunId two = 0;
    {
        Library library = opened(folder.path(), journal);
        job = *library.create(plain, 1);
        CHECK(library.runs(job)->empty());
        one = added(library, job, first, 9000);
        two = added(library, job, second, 9500);
        CHECK(one > 0);
        CHECK(*library.open(job) == plain); // the job itself goes on as it is
        CHECK(library.history(job)->empty());
    }
    const Library again = opened(folder.path(), journal);
    CHECK(*again.runs(job) ==
          std::vector<RunRow>{{two, job, 4002, 9500, "Press one", 102.0, 2.0, "shift lead"},
                              {one, job, 4001, 9000, "Press one", 101.0, 2.0, "shift lead"}});
    CHECK(*again.open_run(one) == first);
    CHECK(*again.open_run(two) == second);
    CHECK(*again.open(job) == plain);
    CHECK_FALSE(again.check());
}

TEST_CASE("runs are listed with the last ended first, each under its own job", "[library][runs]") {
    Library library = Library::in_memory();
    const Job plain = samples::job("Often printed");
    const JobId job = *library.create(plain, 1);
    const JobId other = *library.create(plain, 2);
    const RunId middle = added(library, job, plain, 20);
    const RunId late = added(library, job, plain, 30);
    const RunId apart = added(library, other, plain, 25);
    const RunId early = added(library, job, plain, 10);
    const RunId same_time = added(library, job, plain, 20);
    CHECK(ids(library.runs(job)) == Ids{late, same_time, middle, early});
    CHECK(ids(library.runs(other)) == Ids{apart});
    CHECK(library.runs(other)->front().job == other);
}

TEST_CASE("a run began at the earliest time that was noted", "[library][runs]") {
    Library library = Library::in_memory();
    const JobId job = *library.create(samples::job("Timed"), 1);
    const auto began = [&](const std::function<void(Job&)>& change) {
        Job run = samples::finished(samples::job("Timed"), 0);
        change(run);
        const RunId id = added(library, job, run, 9000);
        const std::vector<RunRow> rows = *library.runs(job);
        return std::find_if(rows.begin(), rows.end(), [&](const RunRow& row) {
                   return row.id == id;
               })->began;
    };
    CHECK(began([](Job&) {}) == 4000);
    CHECK(began([](Job& run) { run.walk.back().stamp.time = 3; }) == 3);
    CHECK(began([](Job& run) { run.record.ticks.back().stamp.time = 4; }) == 4);
    CHECK(began([](Job& run) { run.record.counts.back().stamp.time = 5; }) == 5);
    CHECK(began([](Job& run) { run.record.stoppages.back().stamp.time = 6; }) == 6);
    CHECK(began([](Job& run) { run.record.approval.time = 7; }) == 7);
    CHECK(began([](Job& run) {
              for (WalkMark& mark : run.walk) mark.stamp.time = 0;
              run.record = {};
          }) == 0);
}

TEST_CASE("a run of which nothing was noted is one all the same", "[library][runs]") {
    Library library = Library::in_memory();
    const Job plain = samples::job("Nothing noted");
    const JobId job = *library.create(plain, 1);
    const RunId id = added(library, job, plain, 7);
    CHECK(library.runs(job)->front() == RunRow{id, job, 0, 7, "Press one", 0.0, 0.0, ""});
    CHECK(*library.open_run(id) == plain);
    CHECK_FALSE(library.check());
}

TEST_CASE("runs go where their job goes", "[library][runs]") {
    Library library = Library::in_memory();
    const Job plain = samples::job("Comes and goes");
    const JobId job = *library.create(plain, 1);
    const JobId other = *library.create(plain, 1);
    const RunId first = added(library, job, samples::finished(plain, 1), 10);
    const RunId stays = added(library, other, plain, 10);

    const JobId copy = *library.duplicate(job, "A copy", 11);
    CHECK(library.runs(copy)->empty());

    // Removed is not gone: a window that has it open can still finish a run of it.
    REQUIRE_FALSE(library.remove(job, 20));
    const RunId second = added(library, job, samples::finished(plain, 2), 21);
    CHECK(ids(library.runs(job)) == Ids{second, first});
    REQUIRE_FALSE(library.restore(job));
    CHECK(ids(library.runs(job)) == Ids{second, first});

    REQUIRE_FALSE(library.remove(job, 30));
    REQUIRE(*library.purge(30) == 1);
    CHECK(library.runs(job).fault().kind == Kind::no_such_job);
    CHECK(library.open_run(first).fault().kind == Kind::no_such_run);
    CHECK(library.open_run(second).fault().kind == Kind::no_such_run);
    CHECK(library.add_run(job, plain, 31).fault().kind == Kind::no_such_job);
    CHECK(ids(library.runs(other)) == Ids{stays});

    // An edit brings the job back, not its runs; and their ids stay theirs.
    Job edited = plain;
    const LoggedEdit edit = samples::numbered_edit(edited, 1, 40);
    REQUIRE_FALSE(library.append_all({{job, {edit}, edited}}));
    CHECK(library.runs(job)->empty());
    CHECK(added(library, job, plain, 41) > second);
    CHECK_FALSE(library.check());
}

TEST_CASE("a run that was removed can be added again", "[library][runs]") {
    Library library = Library::in_memory();
    const Job plain = samples::job("Taken away");
    const JobId job = *library.create(plain, 1);
    const RunId first = added(library, job, samples::finished(plain, 1), 10);
    const RunId second = added(library, job, samples::finished(plain, 2), 20);
    const RunRow row = library.runs(job)->back();
    REQUIRE(row.id == first);
    const Job kept = *library.open_run(first);
    REQUIRE_FALSE(library.remove_run(first));
    CHECK(ids(library.runs(job)) == Ids{second});
    CHECK(library.open_run(first).fault().kind == Kind::no_such_run);
    CHECK(library.remove_run(first)->kind == Kind::no_such_run);

    const RunId again = added(library, row.job, kept, row.ended);
    CHECK(again > second);
    CHECK(ids(library.runs(job)) == Ids{second, again});
    RunRow expected = row;
    expected.id = again;
    CHECK(library.runs(job)->back() == expected);
    CHECK(*library.open_run(again) == samples::finished(plain, 1));
    CHECK(library.open_run(0).fault().kind == Kind::no_such_run);
    CHECK(library.runs(12345).fault().kind == Kind::no_such_job);
}

TEST_CASE("a run whose job could not be read again is not stored", "[library][runs]") {
    Library library = Library::in_memory();
    Job job = samples::job("More spoiled than printed");
    const JobId id = *library.create(job, 1);
    job.record.counts = {{5.0, 6.0, {}}};
    CHECK(library.add_run(id, job, 2).fault().kind == Kind::unreadable_job);
    CHECK(library.runs(id)->empty());
}

TEST_CASE("two programs see one another's runs", "[library][runs]") {
    const Journal journal = GENERATE(Journal::write_ahead, Journal::rollback);
    const ScratchFolder folder;
    Library first = opened(folder.path(), journal);
    Library second = opened(folder.path(), journal);
    const Job plain = samples::job("In two windows");
    const JobId job = *first.create(plain, 1);
    const RunId one = added(first, job, samples::finished(plain, 1), 10);
    const RunId two = added(second, job, samples::finished(plain, 2), 20);
    CHECK(one != two);
    CHECK(ids(first.runs(job)) == Ids{two, one});
    CHECK(ids(second.runs(job)) == Ids{two, one});
    CHECK(*first.open_run(two) == samples::finished(plain, 2));
    REQUIRE_FALSE(second.remove_run(one));
    CHECK(ids(first.runs(job)) == Ids{two});
    CHECK(first.remove_run(one)->kind == Kind::no_such_run);
}

TEST_CASE("runs in memory are seen by every connection and kept by none", "[library][runs]") {
    const Job plain = samples::job("Not kept");
    Library library = Library::in_memory();
    const JobId job = *library.create(plain, 1);
    LibraryResult<Library> again = Library::open(library.place());
    REQUIRE(again);
    const RunId id = added(library, job, samples::finished(plain, 1), 10);
    CHECK(ids(again->runs(job)) == Ids{id});
    CHECK(*again->open_run(id) == samples::finished(plain, 1));
    const Library apart = Library::in_memory();
    CHECK(apart.open_run(id).fault().kind == Kind::no_such_run);
}
