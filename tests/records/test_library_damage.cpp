// A damaged library: it is refused and left as it is, or what can't be trusted in it is not given
// out. It never passes for what it was not.
#include <algorithm>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/library.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;

namespace {

// A library of some jobs with some edits each, as bytes and as what it holds.
struct Whole {
    std::string bytes;
    std::vector<JobId> ids;
    std::vector<Job> jobs;
    std::vector<std::vector<LoggedEdit>> histories;
};

Whole whole_library(std::mt19937& random) {
    const ScratchFolder folder;
    Whole whole;
    {
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        for (int i = 0; i < 6; ++i) {
            Job job = samples::job("Job " + std::to_string(i));
            const JobId id = *library->create(job, i);
            std::vector<LoggedEdit> edits;
            for (int n = 0; n < 8; ++n)
                edits.push_back(samples::random_edit(job, random, 100 + n));
            REQUIRE_FALSE(library->append_edits(id, edits, job));
            whole.ids.push_back(id);
            whole.jobs.push_back(job);
            whole.histories.push_back(edits);
        }
        REQUIRE_FALSE(library->check());
    }
    whole.bytes = bytes_of(folder.file("library.db"));
    REQUIRE(whole.bytes.size() > 10 * 4096);
    return whole;
}

bool same_edits(const std::vector<LoggedEdit>& one, const std::vector<LoggedEdit>& other) {
    return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                      [](const LoggedEdit& a, const LoggedEdit& b) {
                          return a.edit == b.edit && a.inverse == b.inverse;
                      });
}

// What became of a damaged library.
struct Outcome {
    bool refused = false; ///< not opened
    bool noticed = false; ///< opened, and something of it was refused or found by check()
};

// Opens damaged bytes and fails the test when anything is given out that was never stored.
Outcome use_damaged(const Whole& whole, const std::string& bytes) {
    const ScratchFolder folder;
    const std::string file = folder.file("library.db");
    write_bytes(file, bytes);
    Outcome outcome;
    {
        const LibraryResult<Library> library = Library::open(folder.path());
        if (!library) {
            CHECK(bytes_of(file) == bytes);
            const Kind kind = library.fault().kind;
            INFO(library.fault().detail);
            CHECK((kind == Kind::corrupt || kind == Kind::newer_version));
            return {true, false};
        }
        const std::optional<LibraryFault> found = library->check();
        for (std::size_t i = 0; i < whole.ids.size(); ++i) {
            const LibraryResult<Job> job = library->open(whole.ids[i]);
            const LibraryResult<std::vector<LoggedEdit>> edits = library->history(whole.ids[i]);
            if (job) CHECK(*job == whole.jobs[i]);
            const bool all_edits = edits && same_edits(*edits, whole.histories[i]);
            // An edit that is missing or out of order is for check() to find.
            if (!found) CHECK((job && all_edits));
            if (!job || !all_edits) outcome.noticed = true;
        }
        (void)library->list("job", 10); // may be refused, must not crash
        if (found) outcome.noticed = true;
    }
    return outcome;
}

} // namespace

TEST_CASE("a library that was cut short is refused and left as it is", "[library][faults]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const Whole whole = whole_library(random);
    std::vector<std::size_t> lengths = {1, 15, 16, 99, 100, 101, 4095, 4096, 4097,
                                        whole.bytes.size() - 1, whole.bytes.size() - 4096};
    for (int i = 0; i < 30; ++i)
        lengths.push_back(1 + random() % (whole.bytes.size() - 1));
    for (const std::size_t length : lengths) {
        INFO("cut to " << length << " of " << whole.bytes.size() << " bytes");
        CHECK(use_damaged(whole, whole.bytes.substr(0, length)).refused);
    }
}

TEST_CASE("flipped bits never pass for what was stored", "[library][faults]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const Whole whole = whole_library(random);
    int refused = 0;
    int noticed = 0;
    constexpr int rounds = 400;
    for (int round = 0; round < rounds; ++round) {
        std::string bytes = whole.bytes;
        // A quarter of them in the header and the schema, where every byte has a meaning.
        const std::size_t at = random() % (round % 4 == 0 ? 4096 : bytes.size());
        const unsigned bit = random() % 8;
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << bit));
        INFO("round " << round << ": bit " << bit << " of byte " << at);
        const Outcome outcome = use_damaged(whole, bytes);
        refused += outcome.refused;
        noticed += outcome.noticed;
    }
    INFO(refused << " refused, " << noticed << " noticed of " << rounds);
    // Free room within pages may be damaged without harm; the rest must show.
    CHECK(refused > 0);
    CHECK(noticed > 0);
}

TEST_CASE("a damaged digit makes one job unreadable and no other", "[library][faults]") {
    const ScratchFolder folder;
    JobId good = 0;
    JobId bad = 0;
    const Job job = samples::job("Good");
    {
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        good = *library->create(job, 1);
        bad = *library->create(samples::job("Bad"), 2);
    }
    {
        SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READWRITE);
        // Still JSON, still within every limit: only the checksum can tell.
        database.exec("UPDATE snapshots SET text = replace(text, '-260', '-261') WHERE job = " +
                      std::to_string(bad));
        REQUIRE(database.execAndGet("SELECT count(*) FROM snapshots WHERE text LIKE '%-261%'")
                    .getInt() == 1);
    }
    const LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const LibraryResult<Job> damaged = library->open(bad);
    REQUIRE_FALSE(damaged);
    CHECK(damaged.fault().kind == Kind::unreadable_job);
    CHECK(*library->open(good) == job);
    CHECK(library->list("", 10)->size() == 2);
    REQUIRE(library->check());
    CHECK(library->check()->kind == Kind::unreadable_job);
}

TEST_CASE("a damaged word index costs neither searches nor jobs", "[library][faults]") {
    const ScratchFolder folder;
    {
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        REQUIRE(library->create(samples::job("Café"), 1));
    }
    {
        SQLite::Database database(folder.file("library.db"), SQLite::OPEN_READWRITE);
        database.exec("UPDATE job_words_data SET block = x'FFFFFFFFFFFFFFFFFFFF'");
    }
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    REQUIRE(library->list("caf", 10));
    CHECK(library->list("caf", 10)->size() == 1);
    CHECK(*library->count("caf") == 1);
    REQUIRE(library->create(samples::job("Cafetería"), 2)); // makes the index again
    CHECK(*library->count("caf") == 2);
    CHECK(*library->count("cafeteria") == 1);
    CHECK_FALSE(library->check());
}

TEST_CASE("a library with code or tables that are not ours is refused", "[library][faults]") {
    const ScratchFolder folder;
    REQUIRE(Library::open(folder.path()));
    const std::string file = folder.file("library.db");
    const std::string good = bytes_of(file);
    for (const char* sql : {"CREATE TRIGGER t AFTER INSERT ON jobs BEGIN DELETE FROM jobs; END",
                            "CREATE VIEW v AS SELECT 1", "DROP TABLE edits",
                            "PRAGMA user_version = 0", "PRAGMA user_version = -1"}) {
        INFO(sql);
        write_bytes(file, good);
        SQLite::Database(file, SQLite::OPEN_READWRITE).exec(sql);
        const std::string bytes = bytes_of(file);
        const LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE_FALSE(library);
        CHECK(library.fault().kind == Kind::corrupt);
        CHECK(bytes_of(file) == bytes);
    }
    // A trigger of our name that does something else is replaced before it can run.
    write_bytes(file, good);
    SQLite::Database(file, SQLite::OPEN_READWRITE)
        .exec("DROP TRIGGER job_words_added;"
              "CREATE TRIGGER job_words_added AFTER INSERT ON jobs BEGIN DELETE FROM jobs; END");
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    REQUIRE(library->create(samples::job("Stays"), 1));
    CHECK(library->list("stays", 10)->size() == 1);
}
