// Autosave when something is in its way: it never makes a frame wait, and drops nothing.
#include <atomic>
#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/writer.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace std::chrono_literals;
using Kind = LibraryFault::Kind;
namespace fs = std::filesystem;

namespace {

Library opened(const std::string& folder, int busy_timeout = 1000) {
    LibraryOptions options;
    options.busy_timeout = busy_timeout;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

// Waits for something that another thread brings about; false after `limit`.
template <class Condition>
bool comes_true(Condition condition, std::chrono::milliseconds limit) {
    const auto end = std::chrono::steady_clock::now() + limit;
    while (!condition()) {
        if (std::chrono::steady_clock::now() > end) return false;
        std::this_thread::sleep_for(2ms);
    }
    return true;
}

// A job with its edits as they are made and handed over.
struct Edited {
    Job job;
    JobId id = 0;
    std::vector<LoggedEdit> edits;

    Edited(Library& library, const std::string& name) : job(samples::job(name)) {
        id = *library.create(job, 1);
    }
    Writer::Ticket edit(Writer& writer) {
        const int number = static_cast<int>(edits.size()) + 1;
        edits.push_back(samples::numbered_edit(job, number, 10 + number));
        return writer.submit(id, edits.back(), job);
    }
    void check_stored(const Library& library) const {
        CHECK(*library.open(id) == job);
        CHECK(*library.history(id) == edits);
    }
};

} // namespace

TEST_CASE("handing over an edit does not wait for a library that is held", "[writer][faults]") {
    const ScratchFolder folder;
    Library library = opened(folder.path(), 600'000); // the thread waits as long as the test
    Edited one(library, "One");
    Edited two(library, "Two");
    Writer writer(library);
    SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    Writer::Ticket last = 0;
    for (int n = 0; n < 50; ++n) {
        one.edit(writer);
        last = two.edit(writer);
    }
    // All hundred are handed over, and the library is still held.
    CHECK(writer.submitted() == last);
    CHECK(writer.acknowledged() == 0);
    CHECK_FALSE(writer.flush(50ms));
    CHECK_FALSE(writer.fault()); // waiting is no failure yet
    other.exec("COMMIT");
    CHECK(writer.flush(60s));
    one.check_stored(library);
    two.check_stored(library);
}

TEST_CASE("a lock that lasts is a fault, and saving goes on by itself when it ends",
          "[writer][faults]") {
    const ScratchFolder folder;
    Library library = opened(folder.path(), 20);
    Edited edited(library, "Locked out");
    std::atomic<int> woken{0};
    Writer writer(library, [&] { ++woken; });
    SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    const Writer::Ticket ticket = edited.edit(writer);
    REQUIRE(comes_true([&] { return writer.fault().has_value(); }, 20s));
    CHECK(writer.fault()->kind == Kind::locked);
    CHECK(comes_true([&] { return woken == 1; }, 20s));
    CHECK(writer.acknowledged() == 0);
    other.exec("COMMIT");
    // Nobody asks for it.
    CHECK(comes_true([&] { return writer.acknowledged() == ticket; }, 30s));
    CHECK_FALSE(writer.fault());
    CHECK(comes_true([&] { return woken == 2; }, 20s));
    edited.check_stored(library);
}

TEST_CASE("a file that was moved away is made anew with what is being worked on",
          "[writer][faults]") {
    if (open_files_are_locked) SKIP("nobody can do here to a file that is open what is tried");
    const ScratchFolder folder;
    Library library = opened(folder.path());
    Edited edited(library, "Moved");
    Writer writer(library);
    edited.edit(writer);
    REQUIRE(writer.flush(20s));
    for (const char* name : {"library.db", "library.db-wal", "library.db-shm"})
        fs::rename(folder.file(name), folder.file(std::string("old-") + name));
    CHECK(library.rename(edited.id, "x", 5)->kind == Kind::io); // a moved file is not written
    edited.edit(writer);
    CHECK(writer.flush(20s));
    const Library anew = opened(folder.path());
    CHECK(*anew.open(edited.id) == edited.job);
    CHECK(anew.history(edited.id)->size() == 1);
    // The old one still has what it was said to have.
    fs::create_directory(folder.file("old"));
    for (const char* name : {"library.db", "library.db-wal"})
        fs::copy_file(folder.file(std::string("old-") + name), folder.file(std::string("old/") + name));
    CHECK(opened(folder.file("old")).history(edited.id)->size() == 1);
}

TEST_CASE("a library of somebody else in the same place keeps its own jobs", "[writer][faults]") {
    if (open_files_are_locked) SKIP("nobody can do here to a file that is open what is tried");
    const ScratchFolder mine;
    const ScratchFolder others;
    Job other_job = samples::job("Other");
    JobId other_id = 0;
    {
        Library other = opened(others.path());
        other_id = *other.create(other_job, 1);
    }
    Library library = opened(mine.path());
    Edited edited(library, "Mine");
    Writer writer(library);
    edited.edit(writer);
    REQUIRE(writer.flush(20s));
    for (const char* name : {"library.db", "library.db-wal", "library.db-shm"})
        fs::remove(mine.file(name));
    fs::copy_file(others.file("library.db"), mine.file("library.db"));
    edited.edit(writer);
    CHECK(writer.flush(20s));
    const Library now = opened(mine.path());
    CHECK(*now.open(other_id) == other_job);
    CHECK(*now.open(edited.id) == edited.job);
    CHECK_FALSE(now.check());
}

TEST_CASE("autosave works in memory, also after the library was closed", "[writer]") {
    std::optional<Library> library = Library::in_memory();
    Edited edited(*library, "In memory");
    Writer writer(*library);
    const LibraryPlace place = library->place();
    library.reset();
    edited.edit(writer);
    edited.edit(writer);
    REQUIRE(writer.flush(20s));
    LibraryResult<Library> again = Library::open(place);
    REQUIRE(again);
    edited.check_stored(*again);
}

TEST_CASE("a writer that ends writes what is waiting", "[writer]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    Edited edited(library, "Ending");
    {
        Writer writer(library);
        for (int n = 0; n < 20; ++n)
            edited.edit(writer);
    }
    edited.check_stored(library);
    Writer idle(library);
    CHECK(idle.flush(0ms)); // nothing to do
    CHECK(idle.all_saved());
    CHECK(idle.submitted() == 0);
}

TEST_CASE("threads that submit, ask and read at once agree in the end", "[writer]") {
    const ScratchFolder folder;
    Library library = opened(folder.path(), 60'000);
    std::vector<Edited> jobs;
    for (int i = 0; i < 3; ++i)
        jobs.emplace_back(library, "Thread " + std::to_string(i));
    std::atomic<Writer::Ticket> seen{0};
    std::atomic<bool> went_back{false};
    {
        Writer* asked = nullptr;
        std::atomic<bool> ready{false};
        Writer writer(library, [&] {
            if (!ready) return;
            const Writer::Ticket now = asked->acknowledged();
            if (now < seen.exchange(now)) went_back = true;
        });
        asked = &writer;
        ready = true;
        std::vector<std::thread> threads;
        for (Edited& job : jobs)
            threads.emplace_back([&writer, &job] {
                for (int n = 0; n < 100; ++n) {
                    job.edit(writer);
                    (void)writer.fault();
                    if (n % 10 == 0) writer.retry();
                }
            });
        for (int n = 0; n < 50; ++n) {
            CHECK(library.list("thread", 10)->size() == jobs.size());
            CHECK(writer.acknowledged() <= writer.submitted());
        }
        for (std::thread& thread : threads)
            thread.join();
        CHECK(writer.flush(60s));
        CHECK(writer.submitted() == 300);
        CHECK(writer.acknowledged() == 300);
    }
    CHECK_FALSE(went_back);
    for (const Edited& job : jobs)
        job.check_stored(library);
}
