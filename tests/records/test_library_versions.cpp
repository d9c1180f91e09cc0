// Libraries of earlier versions: brought up to date with all that they hold, or left as they are.
//
// library_version_N.sql makes a library as version N of its tables left it. It was written once,
// when N was today's version, and is never changed: a step that makes N + 1 finds it here.
#include <chrono>
#include <filesystem>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/call_log.h"
#include "app/records/connection.h"
#include "app/records/library.h"
#include "app/records/schema.h"
#include "app/records/trainees.h"
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

constexpr JobId kept = 4503599627370497;
constexpr JobId removed = 2251799813685249;
constexpr PressId press = 3;

void make_old(SQLite::Database& database, int version) {
    const std::string sql = bytes_of(CARRIAGEWAY_SOURCE_DIR "/tests/records/library_version_" +
                                     std::to_string(version) + ".sql");
    REQUIRE_FALSE(sql.empty()); // a version that has been released needs its own
    database.exec(sql);
    REQUIRE(version_of(database) == version);
    REQUIRE(application_of(database) == library_application_id);
}

// A library of an earlier version, closed.
void put_old(const ScratchFolder& folder, int version) {
    SQLite::Database database(folder.file("library.db"),
                              SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    make_old(database, version);
}

Library opened(const std::string& folder, const LibraryOptions& options = {}) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

// What stands in the schema, word index and SQLite's own tables apart: each thing as it was made.
std::vector<std::string> made_of(SQLite::Database& database) {
    SQLite::Statement found(database, "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND "
                                      "tbl_name NOT LIKE 'job_words%' AND type <> 'trigger' AND "
                                      "name NOT LIKE 'sqlite_%' ORDER BY name");
    std::vector<std::string> parts;
    while (found.executeStep()) parts.push_back(found.getColumn(0).getString());
    return parts;
}

// 0 when all that version 1 stored is there, as far as reading goes; otherwise where it is not.
int all_of_version_1(const Library& library) {
    const LibraryResult<std::vector<JobRow>> rows = library.list("", 10);
    const JobRow expected{kept, "Kept since version 1", "Demonstration press, ten stations",
                          "Sail yellow", 1, 1000, 1200, {}};
    if (!rows || *rows != std::vector<JobRow>{expected}) return 1;
    const LibraryResult<Job> job = library.open(kept);
    if (!job || job->name != expected.name || job->heads.size() != 1) return 2;
    if (!(job->heads.front().stops == Stops{-190.5, 179.0})) return 3;
    const LibraryResult<std::vector<LoggedEdit>> edits = library.history(kept);
    if (!edits || edits->size() != 2 || edits->back().time != 1200) return 4;
    Job before = *job;
    for (auto edit = edits->rbegin(); edit != edits->rend(); ++edit)
        if (!apply(before, edit->inverse)) return 5;
    if (before.name != "Before" || !(before.heads.front().stops == Stops{-185.0, 179.0})) return 6;
    const LibraryResult<JobRow> gone = library.row(removed);
    if (!gone || gone->removed != Timestamp{1300}) return 7;
    const LibraryResult<PressProfile> profile = library.open_press(press);
    if (!profile || !(*profile == job->press)) return 8;
    const LibraryResult<std::optional<std::string>> theme = library.setting(setting_key::theme);
    if (!theme || *theme != std::string("dark")) return 9;
    const LibraryResult<std::int64_t> found = library.count("since");
    if (!found || *found != 1) return 10;
    return library.check() ? 11 : 0;
}

// The same of version 2: a run besides.
int all_of_version_2(const Library& library) {
    const LibraryResult<std::vector<RunRow>> runs = library.runs(kept);
    const RunRow expected{1, kept, 4001, 9000, "Demonstration press, ten stations", 101.0, 2.0,
                          "shift lead"};
    if (!runs || *runs != std::vector<RunRow>{expected}) return 30;
    const LibraryResult<Job> run = library.open_run(1);
    if (!run || run->record.notes != "run 1" || run->walk.size() != 1) return 31;
    return all_of_version_1(library);
}

int all_of_version(int version, const Library& library) {
    return version == 1 ? all_of_version_1(library) : all_of_version_2(library);
}

} // namespace

TEST_CASE("a step that has been released still makes what it made", "[library][schema]") {
    for (int version = 1; version <= library_version; ++version) {
        INFO("version " << version);
        SQLite::Database old(":memory:", SQLite::OPEN_READWRITE);
        make_old(old, version);
        CHECK(has_every_table(old, version));
        CHECK(has_every_table(old) == (version == library_version));
        const std::vector<Migration>& all = migrations();
        SQLite::Database made(":memory:", SQLite::OPEN_READWRITE);
        migrate(made, {all.begin(), all.begin() + version});
        CHECK(made_of(made) == made_of(old));
        migrate(made, all);
        migrate(old, all);
        CHECK(has_every_table(old));
        CHECK(made_of(made) == made_of(old));
    }
}

TEST_CASE("a library of an earlier version is brought up to date with all that it holds",
          "[library][schema]") {
    LibraryOptions options;
    options.journal = GENERATE(Journal::write_ahead, Journal::rollback);
    for (int version = 1; version < library_version; ++version) {
        INFO("version " << version);
        const ScratchFolder folder;
        put_old(folder, version);
        {
            Library library = opened(folder.path(), options);
            REQUIRE(library.can_write());
            CHECK(all_of_version(version, library) == 0);
            CHECK(library.runs(kept)->size() == (version == 1 ? 0u : 1u));
            CHECK(trainees(library)->empty());
            CHECK(attempts(library, 0)->empty());
            CHECK(calls(library, 10)->empty());
            const Job job = *library.open(kept);
            REQUIRE(library.add_run(kept, samples::finished(job, 1), 2000));
            REQUIRE(library.add_run(removed, job, 2000));
            const LibraryResult<TraineeId> who = add_trainee(library, "Robin", 2000);
            REQUIRE(who);
            REQUIRE(add_attempt(library, *who, Attempt{}));
            REQUIRE(add_call(library, {2000, "Press two", "", "clicks", "", CallOutcome::open}));
        }
        SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READONLY);
        CHECK(version_of(database) == library_version);
        Library library = opened(folder.path(), options);
        CHECK(all_of_version_1(library) == 0);
        CHECK(library.open_run(version == 1 ? 1 : 2));
        const std::size_t runs = version == 1 ? 1 : 2;
        CHECK(library.runs(kept)->size() == runs);
        CHECK(trainees(library)->front().name == "Robin");
        CHECK(attempts(library, trainees(library)->front().id)->size() == 1);
        CHECK(calls(library, 10)->front().call.notes == "clicks");
        CHECK(*library.purge(1300) == 1);
        CHECK(library.runs(kept)->size() == runs);
        CHECK(library.runs(removed).fault().kind == Kind::no_such_job);
    }
}

TEST_CASE("an earlier version that lacks a table is refused and left as it is",
          "[library][schema][faults]") {
    struct Lacking {
        int version;
        const char* table;
    };
    const auto [version, table] =
        GENERATE(Lacking{1, "presses"}, Lacking{1, "snapshots"}, Lacking{1, "edits"},
                 Lacking{1, "settings"}, Lacking{2, "runs"}, Lacking{2, "presses"});
    INFO(table);
    const ScratchFolder folder;
    put_old(folder, version);
    SQLite::Database(folder.file("library.db"), SQLite::OPEN_READWRITE)
        .exec(std::string("DROP TABLE ") + table);
    const std::string bytes = bytes_of(folder.file("library.db"));
    const LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE_FALSE(library);
    CHECK(library.fault().kind == Kind::corrupt);
    CHECK(bytes_of(folder.file("library.db")) == bytes);
}

TEST_CASE("an earlier version that may only be read is read as today's",
          "[library][schema][faults]") {
    const int version = GENERATE(range(1, library_version));
    INFO("version " << version);
    const ScratchFolder folder;
    put_old(folder, version);
    const std::string bytes = bytes_of(folder.file("library.db"));
    fs::permissions(folder.file("library.db"), fs::perms(0444));
    fs::permissions(folder.path(), fs::perms(GENERATE(0555u, 0777u)));
    CHECK(as_nobody([&] {
              LibraryResult<Library> library = Library::open(folder.path());
              if (!library) return 20;
              if (library->can_write() || library->write_fault()->kind != Kind::read_only)
                  return 21;
              if (!library->runs(kept)) return 22;
              const LibraryResult<std::vector<TraineeRow>> people = trainees(*library);
              if (!people || !people->empty()) return 24;
              const LibraryResult<TraineeId> added = add_trainee(*library, "Robin", 1);
              if (added || added.fault().kind != Kind::read_only) return 25;
              const LibraryResult<RunId> run = library->add_run(kept, *library->open(kept), 1);
              if (run || run.fault().kind != Kind::read_only) return 23;
              return all_of_version(version, *library);
          }) == 0);
    fs::permissions(folder.path(), fs::perms(0755));
    fs::permissions(folder.file("library.db"), fs::perms(0644));
    CHECK(bytes_of(folder.file("library.db")) == bytes);
    CHECK(all_of_version(version, opened(folder.path())) == 0);
}

TEST_CASE("an earlier version is brought up to date once the disk has room",
          "[library][schema][faults]") {
    FullDisk::install();
    LibraryOptions options;
    options.journal = GENERATE(Journal::write_ahead, Journal::rollback);
    options.vfs = FullDisk::name();
    int failures = 0;
    bool brought = false;
    for (long long room = 0; !brought; room = room * 5 / 4 + 500) {
        INFO("room for " << room << " bytes");
        REQUIRE(room < 10'000'000);
        const ScratchFolder folder;
        put_old(folder, 1);
        FullDisk::leave(room);
        {
            LibraryResult<Library> library = Library::open(folder.path(), options);
            brought = library && library->can_write();
            if (library && !brought) {
                CHECK(library->write_fault()->kind == Kind::disk_full);
                CHECK(library->open(kept));
                CHECK(library->runs(kept)->empty());
            }
            if (!library) {
                INFO(library.fault().detail);
                CHECK(library.fault().kind == Kind::disk_full);
            }
        }
        failures += !brought;
        FullDisk::leave(-1);
        Library library = opened(folder.path(), options);
        REQUIRE(library.can_write());
        CHECK(all_of_version_1(library) == 0);
        CHECK(library.runs(kept)->empty());
    }
    CHECK(failures > 3);
}

TEST_CASE("a program killed while it brings a library up to date loses nothing",
          "[library][schema][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    // As long as it takes here, so that the moments fall within it.
    const auto begin = std::chrono::steady_clock::now();
    {
        const ScratchFolder folder;
        put_old(folder, 1);
        REQUIRE(Library::open(folder.path()));
    }
    const auto took = std::chrono::duration_cast<std::chrono::microseconds>(
        std::chrono::steady_clock::now() - begin);
    for (int round = 0; round < 20; ++round) {
        const ScratchFolder folder;
        put_old(folder, 1);
        const int moment =
            std::uniform_int_distribution<int>(0, static_cast<int>(took.count()))(random);
        INFO("round " << round << ": killed after " << moment << " us");
        killed_after(moment, [&] { (void)Library::open(folder.path()); });
        Library library = opened(folder.path());
        REQUIRE(library.can_write());
        CHECK(all_of_version_1(library) == 0);
        CHECK(library.add_run(kept, *library.open(kept), 1));
    }
}
