// Backups: one a day of use, read through before they count, the oldest beyond some days deleted.
#include <chrono>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/backup_keeper.h"
#include "app/records/call_log.h"
#include "app/records/library_backup.h"
#include "app/records/trainees.h"
#include "app/records/writer.h"
#include "tests/records/full_disk.h"
#include "tests/records/other_process.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace std::chrono_literals;
using Kind = LibraryFault::Kind;
namespace fs = std::filesystem;

namespace {

constexpr Timestamp day = 86'400'000;
constexpr Timestamp today = 20'000 * day; // 2024-10-04

Library opened(const std::string& folder) {
    LibraryResult<Library> library = Library::open(folder);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

LibraryPlace place_of(const ScratchFolder& folder) { return {folder.path(), "", {}}; }

// A backup as a library in a folder of its own.
Library as_library(const ScratchFolder& into, const LibraryBackup& backup) {
    fs::copy_file(backup.path, into.file("library.db"), fs::copy_options::overwrite_existing);
    return opened(into.path());
}

void damage_one_job(const ScratchFolder& folder) {
    SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READWRITE);
    database.exec("UPDATE snapshots SET text = replace(text, '-260', '-261')");
}

std::size_t files_of_backups(const ScratchFolder& folder) {
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(folder.file("backups")))
        count += entry.path().filename() != "turn.db";
    return count;
}

} // namespace

TEST_CASE("a backup is made once a day, is a whole library, and the oldest go",
          "[library][storage]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    for (int n = 0; n < 8; ++n) {
        REQUIRE(library.create(samples::job("Job " + std::to_string(n)), n));
        // What is in the log alone is in the backup too: the library is open.
        const auto made = make_backup(place_of(folder), today + n * day);
        REQUIRE(made);
        CHECK(*made == BackupOutcome::made);
        CHECK(*make_backup(place_of(folder), today + n * day + day / 2) ==
              BackupOutcome::made_today);
    }
    const std::vector<LibraryBackup> backups = backups_of(folder.path());
    REQUIRE(backups.size() == most_backups);
    CHECK(files_of_backups(folder) == most_backups);
    CHECK(backups.front().day == "2024-10-11");
    CHECK(backups.back().day == "2024-10-07");
    for (std::size_t n = 0; n < backups.size(); ++n) {
        const ScratchFolder other;
        const Library copy = as_library(other, backups[n]);
        CHECK(copy.list("", 100)->size() == 8 - n);
        CHECK_FALSE(copy.check());
    }
}

TEST_CASE("after the clock was set back the newest backup is still the last one made",
          "[library][storage]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    for (int n = 0; n < 7; ++n) {
        REQUIRE(library.create(samples::job("Job"), n));
        REQUIRE(*make_backup(place_of(folder), today - n * 400 * day) == BackupOutcome::made);
    }
    const std::vector<LibraryBackup> backups = backups_of(folder.path());
    REQUIRE(backups.size() == most_backups);
    const ScratchFolder other;
    CHECK(as_library(other, backups.front()).list("", 100)->size() == 7);
    CHECK(backups.front().number == 7);
    CHECK(backups.front().day < backups.back().day);
}

TEST_CASE("a library that is damaged in part replaces no backup", "[library][storage]") {
    const ScratchFolder folder;
    {
        Library library = opened(folder.path());
        REQUIRE(library.create(samples::job("Good"), 1));
        REQUIRE(make_backup(place_of(folder), today));
    }
    damage_one_job(folder);
    for (int n = 1; n < 8; ++n) {
        const auto made = make_backup(place_of(folder), today + n * day);
        REQUIRE_FALSE(made);
        CHECK(made.fault().kind == Kind::unreadable_job);
        CHECK(made.fault().path == folder.file("library.db"));
    }
    REQUIRE(backups_of(folder.path()).size() == 1);
    CHECK(files_of_backups(folder) == 1);
    CHECK_FALSE(fault_of_file(backups_of(folder.path()).front().path));
}

TEST_CASE("a backup that finds no room leaves nothing, and the library as it was",
          "[library][storage]") {
    const ScratchFolder folder;
    FullDisk::install();
    LibraryPlace place = place_of(folder);
    place.options.vfs = FullDisk::name();
    FullDisk::leave(-1);
    LibraryResult<Library> library = Library::open(place);
    REQUIRE(library);
    REQUIRE(library->create(samples::job("Stays"), 1));
    for (const long long room : {0, 5'000, 20'000, 50'000}) {
        FullDisk::leave(room);
        const auto made = make_backup(place, today);
        FullDisk::leave(-1);
        REQUIRE_FALSE(made);
        INFO(made.fault().detail);
        CHECK(made.fault().kind == Kind::disk_full);
        CHECK(backups_of(folder.path()).empty());
        CHECK(files_of_backups(folder) == 0);
    }
    CHECK(library->create(samples::job("Goes on"), 2));
    CHECK(make_backup(place, today));
}

TEST_CASE("autosave goes on while a backup is made", "[writer][storage]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    Job job = samples::job("Edited");
    const JobId id = *library.create(job, 1);
    Writer writer(library);
    for (int n = 1; n <= 30; ++n) {
        const LoggedEdit edit = samples::numbered_edit(job, n, n);
        writer.submit(id, edit, job);
        REQUIRE(make_backup(place_of(folder), today + n * day));
    }
    REQUIRE(writer.flush(60s));
    CHECK(library.history(id)->size() == 30);
    for (const LibraryBackup& backup : backups_of(folder.path()))
        CHECK_FALSE(fault_of_file(backup.path));
}

TEST_CASE("a program killed while it makes a backup leaves no half one", "[library][storage]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const ScratchFolder folder;
    {
        Library library = opened(folder.path());
        REQUIRE(library.create(samples::job("Kept"), 1));
    }
    for (int round = 0; round < 15; ++round) {
        const int moment = std::uniform_int_distribution<int>(0, 15'000)(random);
        killed_after(moment, [&] { (void)make_backup(place_of(folder), today + round * day); });
        for (const LibraryBackup& backup : backups_of(folder.path()))
            CHECK_FALSE(fault_of_file(backup.path));
    }
    REQUIRE(*make_backup(place_of(folder), today + 50 * day) == BackupOutcome::made);
    CHECK(files_of_backups(folder) == backups_of(folder.path()).size());
}

TEST_CASE("who is erased is in no backup either", "[library][storage]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    const TraineeId gone = *add_trainee(library, "Quillfeather", 10);
    REQUIRE(add_trainee(library, "Robin", 11));
    REQUIRE(add_attempt(library, gone, Attempt{}));
    REQUIRE(add_attempt(library, 0, Attempt{}));
    const CallId call = *add_call(library, {12, "Pressmark", "", "zwiebelfisch", "", {}});
    for (int n = 0; n < 3; ++n) REQUIRE(make_backup(place_of(folder), today + n * day));
    const auto in_backups = [&](const std::string& text) {
        int count = 0;
        for (const LibraryBackup& backup : backups_of(folder.path()))
            count += bytes_of(backup.path).find(text) != std::string::npos;
        return count;
    };
    REQUIRE(in_backups("Quillfeather") == 3);
    // The same id with another time is somebody else, of a library that was put aside.
    REQUIRE_FALSE(forget_in_backups(folder.path(), {ErasedRow::Kind::person, gone, 99}));
    CHECK(in_backups("Quillfeather") == 3);
    REQUIRE_FALSE(forget_in_backups(folder.path(), {ErasedRow::Kind::person, gone, 10}));
    CHECK(in_backups("Quillfeather") == 0);
    CHECK(in_backups("Robin") == 3);
    CHECK(in_backups("zwiebelfisch") == 3);
    REQUIRE_FALSE(forget_in_backups(folder.path(), {ErasedRow::Kind::call, call, {}}));
    CHECK(in_backups("zwiebelfisch") == 0);
    for (const LibraryBackup& backup : backups_of(folder.path())) {
        CHECK_FALSE(fault_of_file(backup.path));
        const ScratchFolder other;
        CHECK(attempts(as_library(other, backup), 0)->size() == 1);
    }
    REQUIRE_FALSE(forget_in_backups(folder.path(), {ErasedRow::Kind::of_nobody, 0, {}}));
    const ScratchFolder other;
    CHECK(attempts(as_library(other, backups_of(folder.path()).front()), 0)->empty());
}

TEST_CASE("the keeper makes a backup after the first edit of a day, on its own thread",
          "[library][storage]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    REQUIRE(library.create(samples::job("Kept"), 1));
    {
        BackupKeeper keeper(place_of(folder), 0ms);
        CHECK(backups_of(folder.path()).empty());
        keeper.used(today);
        REQUIRE(keeper.idle(60s));
        CHECK(backups_of(folder.path()).size() == 1);
        CHECK_FALSE(keeper.fault());
        keeper.used(today + 1);
        keeper.used(today + day);
        REQUIRE(keeper.idle(60s));
        CHECK(backups_of(folder.path()).size() == 2);
        damage_one_job(folder);
        keeper.used(today + 2 * day);
        REQUIRE(keeper.idle(60s));
        REQUIRE(keeper.fault());
        CHECK(keeper.fault()->kind == Kind::unreadable_job);
    }
    {
        BackupKeeper keeper(place_of(folder), 1h);
        keeper.used(today + 5 * day);
    } // ends at once
    CHECK(backups_of(folder.path()).size() == 2);
}
