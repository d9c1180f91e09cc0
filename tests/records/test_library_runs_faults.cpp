// Runs in libraries that are damaged, protected or full: each fault is said, and the rest goes on.
#include <filesystem>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library.h"
#include "app/records/library_text.h"
#include "tests/records/full_disk.h"
#include "tests/records/other_process.h"
#include "tests/records/run_samples.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
using Journal = LibraryOptions::Journal;
namespace fs = std::filesystem;

namespace {

Library opened(const std::string& folder, const LibraryOptions& options = {}) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

// A library with a job and two runs of it, closed.
struct Made {
    Job plain = samples::job("Printed twice");
    JobId job = 0;
    JobId other = 0;
    RunId first = 0;
    RunId second = 0;
};

Made made(const std::string& folder, const LibraryOptions& options = {}) {
    Made made;
    Library library = opened(folder, options);
    made.job = *library.create(made.plain, 1);
    made.other = *library.create(samples::job("Another"), 2);
    made.first = *library.add_run(made.job, samples::finished(made.plain, 1), 10);
    made.second = *library.add_run(made.job, samples::finished(made.plain, 2), 20);
    REQUIRE_FALSE(library.check());
    return made;
}

} // namespace

TEST_CASE("a damaged run is not given out, and nothing else suffers", "[library][runs][faults]") {
    // Most leave a job that can be read: only the checksum can tell.
    const std::string change =
        GENERATE("text = replace(text, '-260', '-261')", "text = replace(text, 'run 1', 'run 3')",
                 "ended = 11", "job = (SELECT id FROM jobs WHERE name = 'Another')",
                 "checksum = checksum + 1", "text = ''");
    INFO(change);
    const ScratchFolder folder;
    const Made there = made(folder.path());
    {
        SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READWRITE);
        REQUIRE(database.exec("UPDATE runs SET " + change +
                              " WHERE id = " + std::to_string(there.first)) == 1);
    }
    Library library = opened(folder.path());
    const LibraryResult<Job> damaged = library.open_run(there.first);
    REQUIRE_FALSE(damaged);
    CHECK(damaged.fault().kind == Kind::unreadable_job);
    CHECK(damaged.fault().detail.find("run " + std::to_string(there.first)) == 0);
    CHECK(*library.open_run(there.second) == samples::finished(there.plain, 2));
    CHECK(*library.open(there.job) == there.plain);
    CHECK(library.runs(there.job)->front().id == there.second);
    CHECK(library.runs(there.job)->size() + library.runs(there.other)->size() == 2);
    REQUIRE(library.add_run(there.job, there.plain, 30));
    REQUIRE(library.check());
    CHECK(library.check()->kind == Kind::unreadable_job);
    // Whoever has seen enough of it can take it away.
    REQUIRE_FALSE(library.remove_run(there.first));
    CHECK_FALSE(library.check());
}

TEST_CASE("a run that is listed otherwise than its job says is found", "[library][runs][faults]") {
    const std::string change = GENERATE("began = 1", "press = 'Press two'", "printed = 103",
                                        "spoiled = 0", "approved = ''");
    INFO(change);
    const ScratchFolder folder;
    const Made there = made(folder.path());
    {
        SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READWRITE);
        REQUIRE(database.exec("UPDATE runs SET " + change +
                              " WHERE id = " + std::to_string(there.second)) == 1);
    }
    const Library library = opened(folder.path());
    CHECK(*library.open_run(there.second) == samples::finished(there.plain, 2));
    REQUIRE(library.check());
    CHECK(library.check()->kind == Kind::corrupt);
    CHECK(library.check()->detail == "run " + std::to_string(there.second) +
                                         " is listed wrongly");
}

TEST_CASE("runs of a job that is not there are found", "[library][runs][faults]") {
    const ScratchFolder folder;
    const Made there = made(folder.path());
    SQLite::Database(folder.file("library.db"), SQLite::OPEN_READWRITE)
        .exec("PRAGMA foreign_keys = OFF; UPDATE runs SET job = 1");
    const Library library = opened(folder.path());
    REQUIRE(library.check());
    CHECK(library.check()->kind == Kind::corrupt);
    CHECK(library.runs(there.job)->empty());
}

TEST_CASE("a library that may only be read shows its runs and takes none",
          "[library][runs][faults]") {
    const ScratchFolder folder;
    const Made there = made(folder.path());
    const Job first = samples::finished(there.plain, 1);
    fs::permissions(folder.file("library.db"), fs::perms(0444));
    fs::permissions(folder.path(), fs::perms(0555));
    CHECK(as_nobody([&] {
              LibraryResult<Library> library = Library::open(folder.path());
              if (!library || library->can_write()) return 1;
              const LibraryResult<std::vector<RunRow>> rows = library->runs(there.job);
              if (!rows || rows->size() != 2) return 2;
              const LibraryResult<Job> run = library->open_run(there.first);
              if (!run || !(*run == first)) return 3;
              const LibraryResult<RunId> more = library->add_run(there.job, there.plain, 30);
              if (more || more.fault().kind != Kind::read_only) return 4;
              const std::optional<LibraryFault> gone = library->remove_run(there.first);
              return gone && gone->kind == Kind::read_only ? 0 : 5;
          }) == 0);
    fs::permissions(folder.path(), fs::perms(0755));
    fs::permissions(folder.file("library.db"), fs::perms(0644));
    CHECK(opened(folder.path()).runs(there.job)->size() == 2);
}

TEST_CASE("a library that another program holds takes no run until it lets go",
          "[library][runs][faults]") {
    const ScratchFolder folder;
    LibraryOptions options;
    options.busy_timeout = 50;
    const Made there = made(folder.path());
    Library library = opened(folder.path(), options);
    SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    CHECK(library.add_run(there.job, there.plain, 30).fault().kind == Kind::locked);
    CHECK(library.remove_run(there.first)->kind == Kind::locked);
    CHECK(library.runs(there.job)->size() == 2);
    other.exec("ROLLBACK");
    CHECK(library.add_run(there.job, there.plain, 30));
    CHECK(library.runs(there.job)->size() == 3);
}

TEST_CASE("on a disk that fills up a run is stored whole or not at all",
          "[library][runs][faults]") {
    FullDisk::install();
    FullDisk::leave(-1);
    LibraryOptions options;
    options.journal = GENERATE(Journal::write_ahead, Journal::rollback);
    options.vfs = FullDisk::name();
    int failures = 0;
    bool stored = false;
    for (long long room = 0; !stored; room = room * 5 / 4 + 1000) {
        INFO("room for " << room << " bytes");
        REQUIRE(room < 10'000'000);
        const ScratchFolder folder;
        const Made there = made(folder.path(), options);
        const Job third = samples::finished(there.plain, 3);
        std::size_t runs = 2;
        {
            Library library = opened(folder.path(), options);
            FullDisk::leave(room);
            const LibraryResult<RunId> run = library.add_run(there.job, third, 30);
            stored = static_cast<bool>(run);
            if (!run) {
                INFO(run.fault().detail);
                CHECK(run.fault().kind == Kind::disk_full);
                ++failures;
            }
            FullDisk::leave(-1);
            // The same connection takes it when there is room again.
            if (!run) REQUIRE(library.add_run(there.job, third, 40));
            ++runs;
        }
        const Library library = opened(folder.path(), options);
        CHECK_FALSE(library.check());
        const std::vector<RunRow> rows = *library.runs(there.job);
        REQUIRE(rows.size() == runs);
        CHECK(*library.open_run(rows.front().id) == third);
        CHECK(rows.front().ended == (stored ? 30 : 40));
        CHECK(*library.open_run(there.first) == samples::finished(there.plain, 1));
        CHECK(*library.open(there.job) == there.plain);
    }
    CHECK(failures > 3);
}

TEST_CASE("a program killed while it stores a run has it whole or not at all",
          "[library][runs][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    for (int round = 0; round < 20; ++round) {
        const ScratchFolder folder;
        const Made there = made(folder.path());
        const Job third = samples::finished(there.plain, 3);
        // Within the milliseconds that opening and storing take.
        const int moment = std::uniform_int_distribution<int>(0, 20'000)(random);
        INFO("round " << round << ": killed after " << moment << " us");
        killed_after(moment, [&] {
            LibraryResult<Library> library = Library::open(folder.path());
            if (library) (void)library->add_run(there.job, third, 30);
        });
        const Library library = opened(folder.path());
        CHECK_FALSE(library.check());
        const std::vector<RunRow> rows = *library.runs(there.job);
        REQUIRE((rows.size() == 2 || rows.size() == 3));
        if (rows.size() == 3) CHECK(*library.open_run(rows.front().id) == third);
        CHECK(*library.open_run(there.second) == samples::finished(there.plain, 2));
    }
}

TEST_CASE("a run that is not there has a sentence of its own", "[library][runs][faults]") {
    const LibraryFault fault{Kind::no_such_run, "run 7", "library.db"};
    const std::string english = fault_sentence(Language::english, fault);
    CHECK(english == word(Language::english, Word::library_no_such_run));
    CHECK(english != fault_sentence(Language::spanish, fault));
}
