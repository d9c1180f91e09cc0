// A disk that fills up at every point of the way: what was stored stays, what failed leaves no
// trace, and with room again all goes on.
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "app/records/library.h"
#include "app/records/writer.h"
#include "tests/records/full_disk.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace std::chrono_literals;
using Kind = LibraryFault::Kind;

namespace {

using Journal = LibraryOptions::Journal;

LibraryOptions on_full_disk(Journal journal) {
    FullDisk::install();
    FullDisk::leave(-1);
    LibraryOptions options;
    options.journal = journal;
    options.vfs = FullDisk::name();
    return options;
}

Library opened(const std::string& folder, const LibraryOptions& options) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

} // namespace

TEST_CASE("a library whose making filled the disk is made once there is room",
          "[library][faults]") {
    const LibraryOptions options =
        on_full_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    int failures = 0;
    bool made = false;
    for (long long room = 0; !made; room = room * 5 / 4 + 500) {
        INFO("room for " << room << " bytes");
        REQUIRE(room < 10'000'000);
        const ScratchFolder folder;
        FullDisk::leave(room);
        {
            const LibraryResult<Library> library = Library::open(folder.path(), options);
            made = library && library->can_write();
            if (!library) {
                INFO(library.fault().detail);
                CHECK(library.fault().kind == Kind::disk_full);
            }
            if (library && !made) CHECK(library->write_fault()->kind == Kind::disk_full);
        }
        failures += !made;
        FullDisk::leave(-1);
        Library library = opened(folder.path(), options);
        REQUIRE(library.can_write());
        REQUIRE(library.create(samples::job("First"), 1));
        CHECK(library.list("first", 10)->size() == 1);
        CHECK_FALSE(library.check());
    }
    CHECK(failures > 3);
}

namespace {

// What a person does while the disk fills up; what of it was said to be stored.
struct Done {
    std::vector<LoggedEdit> edits;
    Job job;
    std::optional<JobId> other;
    std::optional<LibraryFault> fault;
};

Done work(Library& library, JobId id, const Job& start) {
    Done done;
    done.job = start;
    for (int n = 1; n <= 6; ++n) {
        Job job = done.job;
        const LoggedEdit edit = samples::numbered_edit(job, n, 10 + n);
        done.fault = library.append_edits(id, {edit}, job);
        if (done.fault) return done;
        done.edits.push_back(edit);
        done.job = job;
    }
    const LibraryResult<JobId> other = library.create(samples::job("Other"), 20);
    if (other)
        done.other = *other;
    else
        done.fault = other.fault();
    return done;
}

} // namespace

TEST_CASE("on a disk that fills up every change is stored whole or not at all",
          "[library][faults]") {
    const LibraryOptions options =
        on_full_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    int failures = 0;
    int read = 0;
    bool all_done = false;
    for (long long room = 0; !all_done; room = room * 5 / 4 + 1000) {
        INFO("room for " << room << " bytes");
        REQUIRE(room < 10'000'000);
        const ScratchFolder folder;
        FullDisk::leave(-1);
        const Job start = samples::job("Worked on");
        JobId id = 0;
        Done done;
        {
            Library library = opened(folder.path(), options);
            id = *library.create(start, 1);
            FullDisk::leave(room);
            done = work(library, id, start);
            all_done = !done.fault;
            if (done.fault) {
                INFO(done.fault->detail);
                CHECK(done.fault->kind == Kind::disk_full);
            }
            // Only where a journal has to be played back first does reading wait for room: undoing
            // writes too, and this disk has no room for that either.
            const LibraryResult<Job> kept = library.open(id);
            if (kept) {
                CHECK(*kept == done.job);
                ++read;
            } else {
                CHECK(options.journal == Journal::rollback);
                CHECK(kept.fault().kind == Kind::disk_full);
            }
            FullDisk::leave(-1);
            // The same connection goes on when there is room again.
            if (done.fault) {
                const LoggedEdit more = samples::numbered_edit(done.job, 100, 30);
                REQUIRE_FALSE(library.append_edits(id, {more}, done.job));
                done.edits.push_back(more);
            }
        }
        failures += !all_done;
        const Library library = opened(folder.path(), options);
        CHECK_FALSE(library.check());
        CHECK(*library.open(id) == done.job);
        CHECK(*library.history(id) == done.edits);
        CHECK(*library.count("other") == (done.other ? 1 : 0));
    }
    CHECK(failures > 3);
    CHECK(read > 3);
}

TEST_CASE("a library on a full disk can still be read", "[library][faults]") {
    const LibraryOptions options =
        on_full_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    const ScratchFolder folder;
    const Job job = samples::job("Kept");
    JobId id = 0;
    {
        Library library = opened(folder.path(), options);
        id = *library.create(job, 1);
    }
    FullDisk::leave(0);
    {
        Library library = opened(folder.path(), options);
        CHECK(*library.open(id) == job);
        CHECK(library.list("kept", 10)->size() == 1);
        const LibraryResult<JobId> more = library.create(samples::job("Too much"), 2);
        REQUIRE_FALSE(more);
        CHECK(more.fault().kind == Kind::disk_full);
        if (!library.can_write()) CHECK(library.write_fault()->kind == Kind::disk_full);
    }
    FullDisk::leave(-1);
    Library library = opened(folder.path(), options);
    CHECK(library.create(samples::job("Now"), 3));
    CHECK_FALSE(library.check());
}

TEST_CASE("what a full disk refused waits and is saved once there is room", "[writer][faults]") {
    const LibraryOptions options = on_full_disk(Journal::write_ahead);
    const ScratchFolder folder;
    Library library = opened(folder.path(), options);
    Job job = samples::job("Waiting");
    const Job start = job;
    const JobId id = *library.create(job, 1);
    Writer writer(library);
    FullDisk::leave(0);
    std::vector<LoggedEdit> edits;
    for (int n = 1; n <= 5; ++n) {
        edits.push_back(samples::numbered_edit(job, n, 10 + n));
        writer.submit(id, edits.back(), job);
    }
    CHECK_FALSE(writer.flush(20s));
    REQUIRE(writer.fault());
    CHECK(writer.fault()->kind == Kind::disk_full);
    CHECK(writer.acknowledged() == 0);
    CHECK_FALSE(writer.all_saved());
    CHECK(*library.open(id) == start);
    FullDisk::leave(-1);
    edits.push_back(samples::numbered_edit(job, 6, 20)); // the next edit takes the others along
    const Writer::Ticket last = writer.submit(id, edits.back(), job);
    CHECK(writer.flush(20s));
    CHECK(writer.acknowledged() == last);
    CHECK_FALSE(writer.fault());
    CHECK(*library.open(id) == job);
    CHECK(*library.history(id) == edits);
}
