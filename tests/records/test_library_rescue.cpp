// A damaged library: kept as it is under another name, its newest good backup opened, and both
// said.
#include <filesystem>
#include <map>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library_backup.h"
#include "app/records/library_rescue.h"
#include "app/records/schema.h"
#include "app/records/writer.h"
#include "tests/records/other_process.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
namespace fs = std::filesystem;

namespace {

constexpr Timestamp day = 86'400'000;
constexpr Timestamp today = 20'000 * day; // 2024-10-04
const std::string aside = "library-damaged-2024-10-08.db";
constexpr Timestamp found = today + 4 * day; // when the damage is found

// A library with one job more in each of three backups, damaged after the last. With a log.
struct Damaged {
    ScratchFolder folder;
    std::map<std::string, std::string> bytes; ///< of its files, by what follows library.db

    explicit Damaged(int backups = 3) {
        REQUIRE(then_cut_off([&] {
                    LibraryResult<Library> library = Library::open(folder.path());
                    if (!library) cut_off(1);
                    for (int n = 0; n < 3; ++n) {
                        if (!library->create(samples::job("Job " + std::to_string(n)), n))
                            cut_off(2);
                        if (n < backups && !make_backup(library->place(), today + n * day))
                            cut_off(3);
                    }
                    SQLite::Database(folder.file("library.db"), SQLite::OPEN_READWRITE)
                        .exec("PRAGMA wal_checkpoint(TRUNCATE)");
                    if (!library->create(samples::job("In the log"), 9)) cut_off(4);
                    cut_off(0);
                }) == 0);
        std::string whole = bytes_of(folder.file("library.db"));
        REQUIRE(whole.size() > 20'000);
        for (std::size_t at = 4096; at < whole.size(); at += 512)
            whole.replace(at, 100, std::string(100, '\xA5'));
        write_bytes(folder.file("library.db"), whole);
        for (const char* part : {"", "-wal", "-shm"})
            bytes[part] = bytes_of(folder.file("library.db" + std::string(part)));
        REQUIRE_FALSE(bytes["-wal"].empty());
    }

    // The library and its log, byte for byte, under the name that it is kept as. (The index of the
    // log is made anew by whoever looks.)
    void check_aside(const std::string& name = aside) const {
        CHECK(bytes_of(folder.file(name)) == bytes.at(""));
        CHECK(bytes_of(folder.file(name + "-wal")) == bytes.at("-wal"));
    }
    bool nothing_left_over() const {
        return !fs::exists(folder.file("library-restoring.txt")) &&
               !fs::exists(folder.file("library-restoring.db"));
    }
};

std::size_t jobs_of(const OpenedLibrary& opened) {
    if (!opened.library) FAIL(opened.library.fault().detail);
    CHECK(opened.library->can_write());
    CHECK_FALSE(opened.library->check());
    return opened.library->list("", 100)->size();
}

} // namespace

TEST_CASE("a damaged library is put aside and its newest backup is opened",
          "[library][storage]") {
    const Damaged damaged;
    {
        OpenedLibrary opened = open_or_rescue(damaged.folder.path(), {}, found);
        CHECK(jobs_of(opened) == 3);
        REQUIRE(opened.rescue);
        CHECK(opened.rescue->day == "2024-10-06");
        CHECK(opened.rescue->damaged == damaged.folder.file(aside));
        CHECK(opened.library->create(samples::job("Goes on"), found));
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string said = rescue_sentence(language, *opened.rescue);
            INFO(said);
            CHECK(said.find(damaged.folder.file(aside)) != std::string::npos);
            CHECK(said.find("2024-10-06") != std::string::npos);
        }
        CHECK(rescue_sentence(Language::english, *opened.rescue) !=
              rescue_sentence(Language::spanish, *opened.rescue));
    }
    damaged.check_aside();
    CHECK(damaged.nothing_left_over());
    CHECK(backups_of(damaged.folder.path()).size() == 3);
    const OpenedLibrary again = open_or_rescue(damaged.folder.path(), {}, found);
    CHECK(jobs_of(again) == 4);
    CHECK_FALSE(again.rescue); // said once
}

TEST_CASE("a backup that is damaged too is passed over for the one before it",
          "[library][storage]") {
    const Damaged damaged;
    const std::vector<LibraryBackup> backups = backups_of(damaged.folder.path());
    // One whose structure is damaged, and one that only its checksums tell.
    std::string bytes = bytes_of(backups[0].path);
    bytes.replace(8192, 2000, std::string(2000, 'x'));
    write_bytes(backups[0].path, bytes);
    SQLite::Database(backups[1].path, SQLite::OPEN_READWRITE)
        .exec("UPDATE snapshots SET text = replace(text, '-260', '-261')");
    const OpenedLibrary opened = open_or_rescue(damaged.folder.path(), {}, found);
    CHECK(jobs_of(opened) == 1);
    REQUIRE(opened.rescue);
    CHECK(opened.rescue->day == "2024-10-04");
    damaged.check_aside();
}

TEST_CASE("without a good backup a damaged library stays where it is", "[library][storage]") {
    for (const int backups : {0, 1}) {
        const Damaged damaged(backups);
        for (const LibraryBackup& backup : backups_of(damaged.folder.path()))
            write_bytes(backup.path, "nothing");
        const OpenedLibrary opened = open_or_rescue(damaged.folder.path(), {}, found);
        REQUIRE_FALSE(opened.library);
        CHECK(opened.library.fault().kind == Kind::corrupt);
        CHECK_FALSE(opened.rescue);
        damaged.check_aside("library.db");
        CHECK(damaged.nothing_left_over());
    }
}

TEST_CASE("a newer library is left alone however many backups there are", "[library][storage]") {
    const ScratchFolder folder;
    {
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        REQUIRE(make_backup(library->place(), today));
    }
    SQLite::Database(folder.file("library.db"), SQLite::OPEN_READWRITE)
        .exec("PRAGMA user_version = " + std::to_string(library_version + 1));
    const std::string bytes = bytes_of(folder.file("library.db"));
    const OpenedLibrary opened = open_or_rescue(folder.path(), {}, found);
    REQUIRE_FALSE(opened.library);
    CHECK(opened.library.fault().kind == Kind::newer_version);
    CHECK_FALSE(opened.rescue);
    CHECK(bytes_of(folder.file("library.db")) == bytes);
}

TEST_CASE("a library that is damaged twice on one day is kept twice", "[library][storage]") {
    const Damaged damaged;
    REQUIRE(open_or_rescue(damaged.folder.path(), {}, found).rescue);
    write_bytes(damaged.folder.file("library.db"), "damaged anew");
    const OpenedLibrary opened = open_or_rescue(damaged.folder.path(), {}, found);
    REQUIRE(opened.rescue);
    CHECK(jobs_of(opened) == 3);
    damaged.check_aside();
    CHECK(bytes_of(opened.rescue->damaged) == "damaged anew");
}

TEST_CASE("an exchange that was cut off at any step is gone on with", "[library][storage]") {
    // The steps of library_rescue.cpp: the copy, its note, then one name after the other.
    const std::vector<std::string> names = {"-wal", "-shm", ""};
    for (int steps = 0; steps <= 5; ++steps) {
        INFO(steps << " steps done");
        const Damaged damaged;
        const ScratchFolder& folder = damaged.folder;
        fs::copy_file(backups_of(folder.path()).front().path,
                      folder.file("library-restoring.db"));
        if (steps > 0)
            write_bytes(folder.file("library-restoring.txt"), aside + "\n2024-10-06\n");
        for (int n = 0; n < 3 && n < steps - 1; ++n)
            fs::rename(folder.file("library.db" + names[static_cast<std::size_t>(n)]),
                       folder.file(aside + names[static_cast<std::size_t>(n)]));
        if (steps == 5)
            fs::rename(folder.file("library-restoring.db"), folder.file("library.db"));
        const OpenedLibrary opened = open_or_rescue(folder.path(), {}, found);
        CHECK(jobs_of(opened) == 3);
        REQUIRE(opened.rescue);
        CHECK(opened.rescue->damaged == folder.file(aside));
        CHECK(opened.rescue->day == "2024-10-06");
        damaged.check_aside();
        CHECK(damaged.nothing_left_over());
    }
}

TEST_CASE("a program killed while it puts a library aside loses neither it nor the backup",
          "[library][storage]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    for (int round = 0; round < 10; ++round) {
        const Damaged damaged;
        const int moment = std::uniform_int_distribution<int>(0, 25'000)(random);
        INFO("round " << round << ": killed after " << moment << " us");
        killed_after(moment,
                     [&] { (void)open_or_rescue(damaged.folder.path(), {}, found); });
        CHECK(jobs_of(open_or_rescue(damaged.folder.path(), {}, found)) == 3);
        damaged.check_aside();
        CHECK(damaged.nothing_left_over());
    }
}

TEST_CASE("two programs that find a library damaged put it aside once", "[library][storage]") {
    for (int round = 0; round < 3; ++round) {
        const Damaged damaged;
        const auto open = [&] {
            return open_or_rescue(damaged.folder.path(), {}, found).library ? 0 : 1;
        };
        int here = -1;
        CHECK(beside(open, [&] { here = open(); }) == 0);
        CHECK(here == 0);
        damaged.check_aside();
        std::size_t kept = 0;
        for (const auto& entry : fs::directory_iterator(damaged.folder.path()))
            kept += entry.path().extension() == ".db" &&
                    entry.path().filename().string().starts_with("library-damaged");
        CHECK(kept == 1);
    }
}

TEST_CASE("what is being worked on reaches the library that took the damaged one's place",
          "[writer][storage]") {
    const ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    Job job = samples::job("Worked on");
    const JobId id = *library->create(samples::job("In the backup"), 1);
    REQUIRE(make_backup(library->place(), today));
    const JobId mine = *library->create(job, 2);
    Writer writer(*library);
    const LoggedEdit first = samples::numbered_edit(job, 1, 3);
    writer.submit(mine, first, job);
    REQUIRE(writer.flush(std::chrono::seconds(60)));
    write_bytes(folder.file("library.db"), "something else"); // under its feet
    const OpenedLibrary opened = open_or_rescue(folder.path(), {}, found);
    REQUIRE(opened.rescue);
    const LoggedEdit second = samples::numbered_edit(job, 2, 4);
    writer.submit(mine, second, job);
    REQUIRE(writer.flush(std::chrono::seconds(60)));
    CHECK(*opened.library->open(mine) == job);
    CHECK(opened.library->open(id));
    CHECK_FALSE(opened.library->check());
}
