// Two programs at one library: each one's edits are there, and neither takes the log from under the
// other.
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/library.h"
#include "app/records/writer.h"
#include "tests/records/other_process.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;

namespace {

Library opened(const std::string& folder, int busy_timeout = 20'000) {
    LibraryOptions options;
    options.busy_timeout = busy_timeout;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

} // namespace

// POSIX drops all of a process's locks on a file when it closes any handle of it: a program that
// reads the file's header beside SQLite would lose its own, and another program that closes would
// take the log for nobody's and delete it.
TEST_CASE("a program that opens and closes the library leaves another one's log alone",
          "[library][storage]") {
    const ScratchFolder folder;
    const Job job = samples::job("Here");
    Signal opened_here;
    Signal closed_there;
    // Neither is begun by the other: SQLite in a child would still know its parent's locks.
    const auto here = [&]() -> int {
        LibraryResult<Library> mine = Library::open(folder.path());
        LibraryResult<Library> autosave = Library::open(folder.path()); // as the writer's thread
        if (!mine || !autosave) return 1;
        const LibraryResult<JobId> made = mine->create(job, 1);
        opened_here.give();
        if (!made || !closed_there.wait()) return 2;
        if (autosave->rename(*made, "Renamed", 2)) return 3;
        cut_off(0); // it was said to be saved, and the program is killed: nothing is closed
    };
    const auto there = [&] {
        if (!opened_here.wait()) return 4;
        { LibraryResult<Library> other = Library::open(folder.path()); } // and closes it
        closed_there.give();
        return 0;
    };
    int outcome = -1;
    CHECK(beside(here, [&] {
              outcome = then_cut_off([&] { cut_off(there()); });
          }) == 0);
    REQUIRE(outcome == 0);
    const Library library = opened(folder.path());
    const LibraryResult<std::vector<JobRow>> rows = library.list("", 10);
    REQUIRE(rows);
    REQUIRE(rows->size() == 1);
    CHECK(library.open(rows->front().id)->name == "Renamed");
    CHECK_FALSE(library.check());
}

TEST_CASE("two programs that write at once both find all that they were told is saved",
          "[library][storage]") {
    const ScratchFolder folder;
    JobId shared = 0;
    JobId other = 0;
    {
        Library library = opened(folder.path());
        shared = *library.create(samples::job("Mine"), 1);
        other = *library.create(samples::job("Theirs"), 1);
    }
    constexpr int edits = 40;
    // Each opens anew after every few edits, as two people do who come and go.
    const auto work = [&](JobId id) {
        Job job = samples::job(id == shared ? "Mine" : "Theirs");
        for (int n = 1; n <= edits;) {
            LibraryOptions options;
            options.busy_timeout = 20'000;
            LibraryResult<Library> library = Library::open(folder.path(), options);
            if (!library) return 10 + static_cast<int>(library.fault().kind);
            if (!library->can_write()) return 50 + static_cast<int>(library->write_fault()->kind);
            for (int some = 0; some < 8 && n <= edits; ++some, ++n) {
                const LoggedEdit edit = samples::numbered_edit(job, n, 10 + n);
                if (library->append_edits(id, {edit}, job)) return 2;
            }
        }
        return 0;
    };
    int here = -1;
    const int there = beside([&] { return work(other); }, [&] { here = work(shared); });
    CHECK(here == 0);
    CHECK(there == 0);
    const Library library = opened(folder.path());
    for (const JobId id : {shared, other}) {
        const LibraryResult<std::vector<LoggedEdit>> history = library.history(id);
        REQUIRE(history);
        REQUIRE(history->size() == edits);
        for (int n = 1; n <= edits; ++n)
            CHECK(samples::number_of_edit((*history)[static_cast<std::size_t>(n - 1)].edit) == n);
    }
    CHECK_FALSE(library.check());
}

TEST_CASE("autosave of two programs in one job loses no edit of either", "[writer][storage]") {
    const ScratchFolder folder;
    JobId id = 0;
    {
        Library library = opened(folder.path());
        id = *library.create(samples::job("Both"), 1);
    }
    const auto work = [&](int first) {
        LibraryOptions options;
        options.busy_timeout = 20'000;
        LibraryResult<Library> library = Library::open(folder.path(), options);
        if (!library) return 1;
        Writer writer(*library);
        Job job = samples::job("Both");
        for (int n = first; n < first + 20; ++n) {
            const LoggedEdit edit = samples::numbered_edit(job, n, n);
            writer.submit(id, edit, job);
        }
        return writer.flush(std::chrono::seconds(60)) ? 0 : 2;
    };
    int here = -1;
    CHECK(beside([&] { return work(101); }, [&] { here = work(1); }) == 0);
    CHECK(here == 0);
    const Library library = opened(folder.path());
    std::vector<bool> seen(200, false);
    const LibraryResult<std::vector<LoggedEdit>> history = library.history(id);
    REQUIRE(history);
    for (const LoggedEdit& edit : *history)
        seen[static_cast<std::size_t>(samples::number_of_edit(edit.edit))] = true;
    for (int n = 1; n <= 20; ++n) {
        CHECK(seen[static_cast<std::size_t>(n)]);
        CHECK(seen[static_cast<std::size_t>(100 + n)]);
    }
    CHECK_FALSE(library.check());
}
