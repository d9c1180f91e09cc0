// Libraries that may not be written, not be read, or that another program holds.
#include <cstdlib>
#include <filesystem>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library.h"
#include "app/records/schema.h"
#include "app/records/writer.h"
#include "tests/records/other_process.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
namespace fs = std::filesystem;

namespace {

JobId made(const ScratchFolder& folder, const std::string& name) {
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const LibraryResult<JobId> id = library->create(samples::job(name), 1);
    REQUIRE(id);
    return *id;
}

// Permissions of the folder and of what is in it.
void protect(const std::string& folder, unsigned of_folder, unsigned of_files) {
    fs::permissions(folder, fs::perms(0755));
    for (const auto& entry : fs::directory_iterator(folder))
        fs::permissions(entry.path(), fs::perms(of_files));
    fs::permissions(folder, fs::perms(of_folder));
}

std::size_t files_in(const fs::path& folder) {
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(folder)) {
        (void)entry;
        ++count;
    }
    return count;
}

// 0 when the library can be read and not written, as a person without rights sees it.
int reads_only(const std::string& folder, JobId id, const std::string& name) {
    LibraryResult<Library> library = Library::open(folder);
    if (!library) return 1;
    if (library->can_write() || !library->write_fault()) return 2;
    const LibraryResult<Job> job = library->open(id);
    if (!job || job->name != name) return 3;
    const LibraryResult<std::vector<JobRow>> rows = library->list("", 10);
    if (!rows || rows->size() != 1 || rows->front().name != name) return 4;
    if (library->set_setting("theme", "dark")->kind != Kind::read_only) return 5;
    const LibraryResult<JobId> copy = library->duplicate(id, "x", 2);
    return copy || copy.fault().kind != Kind::read_only ? 6 : 0;
}

// The same in a write-protected folder, with a place for copies, which must be gone again.
void check_read_protected(const ScratchFolder& folder, JobId id, const std::string& name) {
    const ScratchFolder temporary;
    fs::permissions(temporary.path(), fs::perms(0777));
    protect(folder.path(), 0555, 0444);
    CHECK(as_nobody([&] {
              ::setenv("TMPDIR", temporary.path().c_str(), 1);
              return reads_only(folder.path(), id, name);
          }) == 0);
    CHECK(files_in(temporary.path()) == 0);
    protect(folder.path(), 0755, 0644);
}

} // namespace

TEST_CASE("a write-protected file in a folder that isn't can be read", "[library][faults]") {
    const ScratchFolder folder;
    const JobId id = made(folder, "Protected");
    protect(folder.path(), 0777, 0444);
    CHECK(as_nobody([&] { return reads_only(folder.path(), id, "Protected"); }) == 0);
}

TEST_CASE("what stands in the log is read from a write-protected folder too",
          "[library][faults]") {
    const bool shared_index = GENERATE(false, true);
    CAPTURE(shared_index);
    const ScratchFolder folder;
    const JobId id = made(folder, "Before");
    // A program that was killed leaves its last edits in the log.
    REQUIRE(then_cut_off([&] {
                LibraryResult<Library> library = Library::open(folder.path());
                cut_off(library && !library->rename(id, "After", 2) ? 0 : 1);
            }) == 0);
    REQUIRE(fs::file_size(folder.file("library.db-wal")) > 0);
    if (!shared_index) fs::remove(folder.file("library.db-shm"));
    const std::string file = bytes_of(folder.file("library.db"));
    const std::string log = bytes_of(folder.file("library.db-wal"));
    check_read_protected(folder, id, "After");
    CHECK(bytes_of(folder.file("library.db")) == file);
    CHECK(bytes_of(folder.file("library.db-wal")) == log);
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(library->open(id)->name == "After");
}

TEST_CASE("what was left half done is not read from a write-protected folder",
          "[library][faults]") {
    const ScratchFolder folder;
    LibraryOptions options;
    options.journal = LibraryOptions::Journal::rollback;
    JobId id = 0;
    {
        LibraryResult<Library> library = Library::open(folder.path(), options);
        REQUIRE(library);
        id = *library->create(samples::job("Whole"), 1);
    }
    // So little memory that the file is written to before the change is complete.
    REQUIRE(then_cut_off([&] {
                SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
                other.exec("PRAGMA cache_size = 1; BEGIN IMMEDIATE; "
                           "UPDATE jobs SET name = 'Half done'");
                for (int i = 0; i < 50; ++i)
                    other.exec("INSERT INTO settings VALUES ('" + std::to_string(i) +
                               "', hex(zeroblob(3000)))");
                cut_off(0);
            }) == 0);
    REQUIRE(fs::file_size(folder.file("library.db-journal")) > 0);
    const std::string file = bytes_of(folder.file("library.db"));
    REQUIRE(file.find("Half done") != std::string::npos);
    check_read_protected(folder, id, "Whole");
    CHECK(bytes_of(folder.file("library.db")) == file);
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(library->open(id)->name == "Whole");
}

TEST_CASE("a file that may not be read is said to be, and is not replaced", "[library][faults]") {
    const ScratchFolder folder;
    made(folder, "Secret");
    protect(folder.path(), 0777, 0000);
    CHECK(as_nobody([&] {
              const LibraryResult<Library> library = Library::open(folder.path());
              if (library) return 1;
              return library.fault().kind == Kind::io ? 0 : 2;
          }) == 0);
    protect(folder.path(), 0755, 0644);
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(library->list("secret", 10)->size() == 1);
}

TEST_CASE("no library can be made where nothing can be written", "[library][faults]") {
    const ScratchFolder folder;
    protect(folder.path(), 0555, 0444);
    CHECK(as_nobody([&] {
              const LibraryResult<Library> library = Library::open(folder.path());
              if (library) return 1;
              const LibraryFault& fault = library.fault();
              return fault.kind == Kind::no_folder && fault.path == folder.path() ? 0 : 2;
          }) == 0);
    protect(folder.path(), 0755, 0644);
    write_bytes(folder.file("taken"), "a file");
    CHECK(Library::open(folder.file("taken")).fault().kind == Kind::no_folder);
    CHECK(Library::open(folder.file("taken/below")).fault().kind == Kind::no_folder);
    CHECK(Library::open("").fault().kind == Kind::no_folder);
}

TEST_CASE("autosave waits until a protected library may be written", "[writer][faults]") {
    const ScratchFolder folder;
    fs::permissions(folder.path(), fs::perms(0777));
    const std::string own = folder.file("own");
    CHECK(as_nobody([&] {
              Job job = samples::job("Edited");
              JobId id = 0;
              {
                  LibraryResult<Library> library = Library::open(own);
                  if (!library) return 1;
                  id = *library->create(job, 1);
              }
              protect(own, 0555, 0444);
              LibraryResult<Library> library = Library::open(own);
              if (!library || library->can_write()) return 2;
              Writer writer(*library);
              LoggedEdit edit{{SetName{0, "Edited again"}}, {}, 2};
              edit.inverse = *apply(job, edit.edit).inverse;
              writer.submit(id, edit, job);
              if (writer.flush(std::chrono::seconds(20))) return 3;
              if (!writer.fault() || writer.fault()->kind != Kind::read_only) return 4;
              protect(own, 0755, 0644);
              if (!writer.flush(std::chrono::seconds(20)) || writer.fault()) return 5;
              LibraryResult<Library> again = Library::open(own);
              if (!again || !again->can_write()) return 6;
              return *again->open(id) == job ? 0 : 7;
          }) == 0);
}

TEST_CASE("a library that another program holds alone can't be opened until it lets go",
          "[library][faults]") {
    const ScratchFolder folder;
    const JobId id = made(folder, "Held");
    LibraryOptions options;
    options.busy_timeout = 50;
    {
        SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
        other.exec("PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; "
                   "UPDATE jobs SET updated = 2; COMMIT");
        const LibraryResult<Library> library = Library::open(folder.path(), options);
        REQUIRE_FALSE(library);
        CHECK(library.fault().kind == Kind::locked);
        CHECK(library.fault().path == folder.file("library.db"));
    }
    LibraryResult<Library> library = Library::open(folder.path(), options);
    REQUIRE(library);
    CHECK(library->open(id)->name == "Held");
}

TEST_CASE("a library can be opened while another program writes", "[library][faults]") {
    const ScratchFolder folder;
    const JobId id = made(folder, "Written");
    LibraryOptions options;
    options.busy_timeout = 50;
    SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE; UPDATE jobs SET updated = 2");
    LibraryResult<Library> library = Library::open(folder.path(), options);
    REQUIRE(library);
    CHECK(library->open(id)->name == "Written");
    CHECK(library->remove(id, 3)->kind == Kind::locked);
    other.exec("COMMIT");
    CHECK_FALSE(library->remove(id, 3));
}

TEST_CASE("a newer version is seen in the log too, and nothing is touched", "[library][faults]") {
    const ScratchFolder folder;
    made(folder, "Of the future");
    REQUIRE(then_cut_off([&] {
                SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
                other.exec("PRAGMA user_version = " + std::to_string(library_version + 1));
                cut_off(0); // closing would empty the log
            }) == 0);
    const std::string file = bytes_of(folder.file("library.db"));
    const std::string log = bytes_of(folder.file("library.db-wal"));
    REQUIRE(log.size() > 0);
    const LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE_FALSE(library);
    CHECK(library.fault().kind == Kind::newer_version);
    CHECK(bytes_of(folder.file("library.db")) == file);
    CHECK(bytes_of(folder.file("library.db-wal")) == log);
}
