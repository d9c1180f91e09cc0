// Runs of the job that is open: finished, undone, looked at again, taken away and brought back, by
// one window and by two; and what happens where the library can't take one.
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

/// Notes a walk and a record as a run leaves them; `printed` tells one run from another.
void work(Session& session, double printed, const std::string& notes = "platens warm") {
    const HeadId head = session.job().heads.front().id;
    RunRecord record;
    record.ticks = {{1, {1'600'000'000'000, "AB"}}};
    record.counts = {{printed, 2.0, {1'600'000'500'000, "AB"}}};
    record.stoppages = {{4.5, StopReason::ink, "", {1'600'000'300'000, "CD"}}};
    record.approval = {"shift lead", "the sample", 1'600'000'100'000};
    record.notes = notes;
    const WalkMark mark{head, Field::squeegee_pressure, true, 215.0, {1'599'999'000'000, "AB"}};
    REQUIRE_FALSE(session.commit(Edit{SetWalk{{mark}}}));
    REQUIRE_FALSE(session.commit(Edit{SetRecord{record}}));
}

bool cleared(const Job& job) { return job.walk.empty() && job.record == RunRecord{}; }

std::function<Timestamp()> counting_clock() {
    return [time = Timestamp{1'700'000'000'000}]() mutable { return ++time; };
}

/// Replaces every `from` in a file; how many there were.
int replace_in(const std::string& path, const std::string& from, const std::string& to) {
    std::string bytes = bytes_of(path);
    int count = 0;
    for (std::size_t at = bytes.find(from); at != std::string::npos; at = bytes.find(from, at)) {
        bytes.replace(at, from.size(), to);
        ++count;
    }
    write_bytes(path, bytes);
    return count;
}

} // namespace

TEST_CASE("A finished run is kept, and the job is ready for the next one") {
    const ScratchFolder folder;
    Job as_it_was;
    {
        Driver driver(desktop, folder.path());
        Session& session = driver.session();
        CHECK(session.runs().empty());
        CHECK(session.last_run() == nullptr);
        work(session, 96.0);
        as_it_was = session.job();
        REQUIRE(session.finish_run());
        CHECK(cleared(session.job()));
        CHECK(session.trouble().empty());
        REQUIRE(session.runs().size() == 1);
        const RunRow row = session.runs().front();
        CHECK(row == RunRow{row.id, session.current(), 1'599'999'000'000, 1'700'000'000'000,
                            as_it_was.press.name, 96.0, 2.0, "shift lead"});
        REQUIRE(session.last_run() != nullptr);
        CHECK(*session.last_run() == as_it_was);

        // One step back is the job before, and the run stays.
        REQUIRE(session.undo());
        CHECK(session.job() == as_it_was);
        CHECK(session.runs().size() == 1);
        REQUIRE(session.redo());
        CHECK(cleared(session.job()));
        REQUIRE(session.flush());
    }
    Driver driver(desktop, folder.path());
    Session& session = driver.session();
    CHECK(cleared(session.job()));
    REQUIRE(session.runs().size() == 1);
    CHECK(session.read_run(session.runs().front().id) == as_it_was);
    REQUIRE(session.last_run() != nullptr);
    CHECK(*session.last_run() == as_it_was);
}

TEST_CASE("What a drag would do is no part of a run") {
    Driver driver(desktop);
    Session& session = driver.session();
    work(session, 10.0);
    const Job as_it_was = session.job();
    const Head& head = session.job().heads.front();
    session.preview(head.id, Edit{SetStops{head.id, {-100.0, 100.0}}});
    REQUIRE(session.previewing());
    REQUIRE(session.finish_run());
    CHECK_FALSE(session.previewing());
    REQUIRE(session.last_run() != nullptr);
    CHECK(*session.last_run() == as_it_was);
}

TEST_CASE("A run of which nothing was noted leaves nothing to undo") {
    Driver driver(desktop);
    Session& session = driver.session();
    Job plain = demo_job();
    plain.walk.clear();
    plain.record = {};
    REQUIRE(session.open_new(plain));
    REQUIRE(session.finish_run());
    REQUIRE(session.runs().size() == 1);
    CHECK(session.runs().front().began == 0);
    CHECK(session.runs().front().approved_by.empty());
    CHECK_FALSE(session.can_undo());
}

TEST_CASE("A run of a link's job is finished once the job is kept") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    Session& session = driver.session();
    REQUIRE(session.finish_run());
    Job sent = demo_job();
    sent.name = "Harbour fair tote";
    session.visit(sent);
    CHECK(session.runs().empty()); // those of the job before are not this one's
    CHECK(session.last_run() == nullptr);
    work(session, 50.0);
    const Job as_it_was = session.job();
    CHECK_FALSE(session.finish_run());
    driver.program().act(FinishRun{});
    CHECK(session.job() == as_it_was);
    CHECK(session.runs().empty());
    REQUIRE(driver.program().state().notice);
    CHECK(driver.program().state().notice->text == word(Language::english, Word::run_keep_first));

    REQUIRE(session.keep_visit());
    CHECK(session.trouble().empty());
    REQUIRE(session.finish_run());
    CHECK(cleared(session.job()));
    REQUIRE(session.last_run() != nullptr);
    CHECK(*session.last_run() == as_it_was);
}

TEST_CASE("Where the library can't take a run nothing is cleared, and it is taken later") {
    const bool waiting = GENERATE(false, true); // whether an edit is on its way as well
    const ScratchFolder folder;
    const std::string own = folder.file("own");
    Session session(own, {}, counting_clock(), Language::english);
    work(session, 30.0);
    REQUIRE(session.flush());
    // The folder is gone, and can't be made anew.
    fs::rename(own, folder.file("away"));
    write_bytes(own, "in the way");
    if (waiting) work(session, 31.0);
    const Job as_it_was = session.job();
    const bool finished = session.finish_run();
    const std::string trouble = session.trouble();
    const bool kept = session.job() == as_it_was;
    fs::remove(own);
    fs::rename(folder.file("away"), own);
    CHECK_FALSE(finished);
    CHECK_FALSE(trouble.empty());
    CHECK(kept);
    CHECK(session.runs().empty());

    REQUIRE(session.finish_run());
    CHECK(cleared(session.job()));
    CHECK(session.trouble().empty());
    REQUIRE(session.flush());
    const LibraryResult<Library> library = Library::open(own);
    REQUIRE(library);
    CHECK(*library->open(session.current()) == session.job());
    REQUIRE(library->runs(session.current())->size() == 1);
    CHECK(*library->open_run(session.runs().front().id) == as_it_was);
    CHECK_FALSE(library->check());
}

TEST_CASE("A run is taken away and brought back to its place") {
    const ScratchFolder folder;
    Session session(folder.path(), {}, counting_clock(), Language::english);
    CHECK_FALSE(session.can_restore_run());
    CHECK_FALSE(session.restore_run());
    for (const double printed : {10.0, 20.0, 30.0}) {
        work(session, printed);
        REQUIRE(session.finish_run());
    }
    REQUIRE(session.runs().size() == 3);
    CHECK(session.runs()[0].printed == 30.0);
    RunRow middle = session.runs()[1];
    const std::optional<Job> as_it_was = session.read_run(middle.id);
    REQUIRE(as_it_was);

    REQUIRE(session.remove_run(middle.id));
    CHECK(session.runs().size() == 2);
    CHECK_FALSE(session.read_run(middle.id));
    CHECK(session.trouble() == word(Language::english, Word::library_no_such_run));
    CHECK(session.can_restore_run());
    REQUIRE(session.restore_run());
    REQUIRE(session.runs().size() == 3);
    const RunId again = session.runs()[1].id;
    middle.id = again;
    CHECK(session.runs()[1] == middle);
    CHECK(session.read_run(again) == as_it_was);
    CHECK_FALSE(session.can_restore_run());

    // The newest one is another after each.
    const RunId newest = session.runs()[0].id;
    CHECK(session.last_run()->record.counts.front().printed == 30.0);
    REQUIRE(session.remove_run(newest));
    CHECK(session.last_run()->record.counts.front().printed == 20.0);
    REQUIRE(session.restore_run());
    CHECK(session.last_run()->record.counts.front().printed == 30.0);
    CHECK_FALSE(session.remove_run(newest)); // its id is gone for good
    CHECK(session.runs().size() == 3);
}

TEST_CASE("Each job has its own runs") {
    Driver driver(desktop);
    Session& session = driver.session();
    const JobId first = session.current();
    work(session, 10.0);
    REQUIRE(session.finish_run());
    Job other = demo_job();
    other.name = "Another shirt";
    REQUIRE(session.open_new(other));
    CHECK(session.runs().empty());
    CHECK(session.last_run() == nullptr);
    REQUIRE(session.duplicate(first, "A copy"));
    CHECK(session.runs().empty());
    REQUIRE(session.open(first));
    CHECK(session.runs().size() == 1);
    CHECK(session.last_run() != nullptr);
}

TEST_CASE("A damaged run is said to be, and the others are there") {
    const ScratchFolder folder;
    {
        Session session(folder.path(), {}, counting_clock(), Language::english);
        work(session, 10.0);
        REQUIRE(session.finish_run());
        // Long enough that some of it lies whole within a page, wherever the pages end.
        work(session, 20.0, std::string(200, 'q'));
        REQUIRE(session.finish_run());
        REQUIRE(session.flush());
    }
    REQUIRE(replace_in(folder.file("library.db"), std::string(20, 'q'), std::string(20, 'x')) > 0);
    Session session(folder.path(), {}, counting_clock(), Language::english);
    CHECK(session.trouble().empty());
    REQUIRE(session.runs().size() == 2);
    CHECK(session.last_run() == nullptr);
    CHECK(session.trouble() == word(Language::english, Word::library_unreadable));
    const RunId damaged = session.runs()[0].id;
    const std::optional<Job> whole = session.read_run(session.runs()[1].id);
    REQUIRE(whole);
    CHECK(whole->record.counts.front().printed == 10.0);
    REQUIRE(session.remove_run(damaged));
    CHECK_FALSE(session.can_restore_run());
    REQUIRE(session.last_run() != nullptr);
    CHECK(*session.last_run() == *whole);
}

TEST_CASE("Two windows see one another's runs once something changes") {
    const ScratchFolder folder;
    Session first(folder.path(), {}, counting_clock(), Language::english);
    Session second(folder.path(), {}, counting_clock(), Language::english);
    REQUIRE(first.current() == second.current());
    work(first, 10.0);
    REQUIRE(first.finish_run());
    REQUIRE(first.flush());
    REQUIRE(second.keep_press()); // a change of the library by the other window
    REQUIRE(second.runs().size() == 1);
    CHECK(second.runs() == first.runs());
    const std::optional<Job> run = second.read_run(second.runs().front().id);
    REQUIRE(run);
    CHECK(run->record.counts.front().printed == 10.0);
    // Taken away in one, it can't be taken away again in the other, which then knows.
    REQUIRE(second.remove_run(second.runs().front().id));
    CHECK(first.runs().size() == 1);
    CHECK_FALSE(first.remove_run(first.runs().front().id));
    CHECK(first.runs().empty());
}
