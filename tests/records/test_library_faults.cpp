// Libraries that can't be used as they should: each gives a clear message, and nothing is lost.
#include <filesystem>
#include <fstream>

#include <catch2/catch_test_macros.hpp>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "app/records/library.h"
#include "app/records/library_text.h"
#include "tests/records/full_disk.h"
#include "tests/records/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
namespace fs = std::filesystem;

namespace {

Job job_named(const std::string& name) {
    Job job;
    job.name = name;
    job.press.name = "Invented press";
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    return job;
}

std::string database(const ScratchFolder& folder) { return folder.file("library.db"); }

/// A library with one job in it, closed; its job's id.
JobId made(const ScratchFolder& folder) {
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const LibraryResult<JobId> id = library->create(job_named("Harbour fair"), 1000);
    REQUIRE(id);
    return *id;
}

void check_words(const LibraryFault& fault) {
    for (const Language language : {Language::english, Language::spanish}) {
        const std::string sentence = fault_sentence(language, fault);
        INFO(sentence);
        CHECK(sentence.size() > 20);
        CHECK(sentence.find("{0}") == std::string::npos);
    }
    CHECK(fault_sentence(Language::english, fault) != fault_sentence(Language::spanish, fault));
}

/// Runs `body` in a child without root's privileges: root ignores file permissions.
template <class Body>
int as_nobody(Body body) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (::getuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) ::_exit(99);
        ::_exit(body());
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 98;
}

} // namespace

TEST_CASE("a library that may only be read is opened for reading, and says so", "[faults]") {
    ScratchFolder folder;
    const JobId id = made(folder);
    fs::permissions(folder.path(), fs::perms(0555));
    for (const auto& entry : fs::directory_iterator(folder.path())) fs::permissions(entry.path(), fs::perms(0444));
    const int result = as_nobody([&] {
        LibraryResult<Library> library = Library::open(folder.path());
        if (!library) return 1;
        if (library->can_write()) return 2;
        const LibraryResult<Job> job = library->open(id);
        if (!job || job->name != "Harbour fair") return 3;
        const LibraryResult<JobId> more = library->create(job_named("No"), 2000);
        if (more || more.fault().kind != Kind::read_only) return 4;
        const std::optional<LibraryFault> renamed = library->rename(id, "No", 2000);
        return renamed && renamed->kind == Kind::read_only ? 0 : 5;
    });
    fs::permissions(folder.path(), fs::perms(0755));
    for (const auto& entry : fs::directory_iterator(folder.path())) fs::permissions(entry.path(), fs::perms(0644));
    CHECK(result == 0);
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(library->open(id)->name == "Harbour fair");
    check_words({Kind::read_only, "", database(folder)});
}

TEST_CASE("a folder that can't be made gives its name", "[faults]") {
    ScratchFolder folder;
    fs::permissions(folder.path(), fs::perms(0555));
    const std::string inside = folder.file("no/such");
    const int result = as_nobody([&] {
        const LibraryResult<Library> library = Library::open(inside);
        if (library) return 1;
        return library.fault().kind == Kind::no_folder && library.fault().path.find("no") != std::string::npos ? 0 : 2;
    });
    fs::permissions(folder.path(), fs::perms(0755));
    CHECK(result == 0);
    check_words({Kind::no_folder, "permission denied", inside});
}

TEST_CASE("a library that another program holds is said to be, and works once let go", "[faults]") {
    ScratchFolder folder;
    const JobId id = made(folder);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(database(folder).c_str(), &other) == SQLITE_OK);
    LibraryOptions options;
    options.busy_timeout = 50;
    LibraryResult<Library> library = Library::open(folder.path(), options);
    REQUIRE(library);
    REQUIRE(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
    const std::optional<LibraryFault> fault = library->rename(id, "Later", 2000);
    REQUIRE(fault.has_value());
    CHECK(fault->kind == Kind::locked);
    check_words(*fault);
    CHECK(library->open(id)->name == "Harbour fair"); // reading goes on
    sqlite3_exec(other, "ROLLBACK", nullptr, nullptr, nullptr);
    sqlite3_close(other);
    CHECK_FALSE(library->rename(id, "Later", 3000).has_value());
    CHECK(library->open(id)->name == "Later");
}

TEST_CASE("files that are no library of ours are left byte for byte", "[faults]") {
    ScratchFolder folder;
    made(folder);
    const std::string whole = bytes_of(database(folder));
    REQUIRE(whole.size() > 8192);
    std::string head = whole;
    head.replace(0, 100, std::string(100, '\xA5'));
    std::string foreign = whole;
    foreign.replace(68, 4, "ABCD"); // the application id (SQLite file format, 1.3)
    const std::pair<const char*, std::string> cases[] = {
        {"garbage", std::string(8192, 'g')}, {"text", "dear diary"}, {"a damaged header", head}, {"of another program", foreign}};
    for (const auto& [name, bytes] : cases) {
        INFO(name);
        ScratchFolder place;
        write_bytes(database(place), bytes);
        const LibraryResult<Library> library = Library::open(place.path());
        REQUIRE_FALSE(library);
        CHECK(library.fault().kind == Kind::corrupt);
        CHECK(library.fault().path == database(place));
        check_words(library.fault());
        CHECK(bytes_of(database(place)) == bytes);
    }
}

TEST_CASE("pages that were damaged are found by check, and never crash a reader", "[faults]") {
    ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    for (int i = 0; i < 40; ++i) REQUIRE(library->create(job_named("Job " + std::to_string(i)), 1000 + i));
    library = Library::in_memory(); // closes the file
    const std::string whole = bytes_of(database(folder));
    int found = 0, tried = 0;
    // Cells grow from the end of a page (SQLite file format, 1.6): that is where there is something.
    for (std::size_t at = 2 * 4096 - 80; at + 64 < whole.size(); at += 4096) {
        ScratchFolder place;
        std::string damaged = whole;
        damaged.replace(at, 64, std::string(64, '\xEE'));
        write_bytes(database(place), damaged);
        ++tried;
        const LibraryResult<Library> opened = Library::open(place.path());
        if (!opened) {
            ++found;
            continue;
        }
        (void)opened->list("", 100);
        if (opened->check().has_value()) ++found;
    }
    CHECK(tried > 3);
    CHECK(found * 2 > tried); // free pages may be damaged without harm
}

TEST_CASE("a library of a newer version is left alone", "[faults]") {
    ScratchFolder folder;
    made(folder);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(database(folder).c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "PRAGMA user_version=99; PRAGMA wal_checkpoint(TRUNCATE)", nullptr, nullptr, nullptr) ==
            SQLITE_OK);
    sqlite3_close(other);
    const std::string before = bytes_of(database(folder));
    const LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE_FALSE(library);
    CHECK(library.fault().kind == Kind::newer_version);
    check_words(library.fault());
    CHECK(bytes_of(database(folder)) == before);
}

TEST_CASE("on a full disk what was saved stays, and saving works again with room", "[faults]") {
    FullDisk::install();
    ScratchFolder folder;
    FullDisk::leave(-1);
    LibraryOptions options;
    options.vfs = FullDisk::name();
    LibraryResult<Library> library = Library::open(folder.path(), options);
    REQUIRE(library);
    const LibraryResult<JobId> id = library->create(job_named("Kept"), 1000);
    REQUIRE(id);
    FullDisk::leave(0);
    const LibraryResult<JobId> more = library->create(job_named("Too much"), 2000);
    REQUIRE_FALSE(more);
    CHECK(more.fault().kind == Kind::disk_full);
    check_words(more.fault());
    CHECK(library->open(*id)->name == "Kept");
    FullDisk::leave(-1);
    CHECK(library->create(job_named("Now"), 3000));
    CHECK_FALSE(library->check().has_value());
    CHECK(library->list("", 10)->size() == 2);
}
