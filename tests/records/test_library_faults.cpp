// Libraries that can't be used as they should: each gives a clear message, and nothing is lost.
#include <filesystem>
#include <fstream>

#include <catch2/catch_test_macros.hpp>
#include <sqlite3.h>

#include "app/records/library.h"
#include "app/records/library_text.h"
#include "tests/records/other_process.h"
#include "tests/scratch_folder.h"

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
