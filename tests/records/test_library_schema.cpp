// The library's file: how it is opened, its versions, and where it lies.
#include <map>
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/checksum.h"
#include "app/records/connection.h"
#include "app/records/data_folder.h"
#include "app/records/library.h"
#include "app/records/schema.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

std::string value_of(SQLite::Database& database, const std::string& sql) {
    return database.execAndGet(sql).getString();
}

} // namespace

TEST_CASE("a library is opened so that what is stored is durable", "[library][schema]") {
    const ScratchFolder folder;
    LibraryPlace place;
    place.folder = folder.path();
    place.options.busy_timeout = 123;
    const auto connection = open_library_file(place);
    SQLite::Database& database = *connection->database;
    CHECK(value_of(database, "PRAGMA journal_mode") == "wal");
    CHECK(value_of(database, "PRAGMA synchronous") == "3"); // EXTRA (sqlite.org/pragma.html)
    CHECK(value_of(database, "PRAGMA foreign_keys") == "1");
    CHECK(value_of(database, "PRAGMA busy_timeout") == "123");
    CHECK(version_of(database) == library_version);
    CHECK(application_of(database) == library_application_id);
    CHECK(connection->word_index);
}

TEST_CASE("a rollback journal is used where there can be no log", "[library][schema]") {
    const ScratchFolder folder;
    LibraryPlace place;
    place.folder = folder.path();
    place.options.journal = LibraryOptions::Journal::rollback;
    {
        LibraryResult<Library> library = Library::open(place);
        REQUIRE(library);
        REQUIRE(library->create(samples::job("Kept"), 1));
    }
    const auto connection = open_library_file(place);
    CHECK(value_of(*connection->database, "PRAGMA journal_mode") == "delete");
    CHECK(value_of(*connection->database, "SELECT name FROM jobs") == "Kept");
}

TEST_CASE("an empty file becomes a library", "[library][schema]") {
    const bool with_header = GENERATE(false, true);
    const ScratchFolder folder;
    if (with_header) {
        SQLite::Database database(folder.file("library.db"),
                                  SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec("CREATE TABLE t (a); DROP TABLE t;");
        REQUIRE(version_of(database) == 0);
    } else {
        write_bytes(folder.file("library.db"), "");
    }
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    CHECK(library->create(samples::job("First"), 1));
    CHECK_FALSE(library->check());
}

TEST_CASE("migration takes every step above the library's version, all or none",
          "[library][schema]") {
    const std::vector<Migration> steps = {{1, "CREATE TABLE a (x); INSERT INTO a VALUES (7);"},
                                          {2, "ALTER TABLE a ADD COLUMN y DEFAULT 8;"},
                                          {3, "CREATE TABLE b AS SELECT x + y AS sum FROM a;"}};
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE);

    migrate(database, {steps[0]});
    CHECK(version_of(database) == 1);
    CHECK(application_of(database) == library_application_id);

    std::vector<Migration> broken = steps;
    broken[2].sql = "CREATE TABLE b (sum); INSERT INTO nowhere VALUES (1);";
    CHECK_THROWS_AS(migrate(database, broken), SQLite::Exception);
    CHECK(version_of(database) == 1);
    CHECK_FALSE(database.tableExists("b"));
    CHECK_THROWS_AS(database.exec("SELECT y FROM a"), SQLite::Exception);

    migrate(database, steps);
    CHECK(version_of(database) == 3);
    CHECK(value_of(database, "SELECT sum FROM b") == "15");
    migrate(database, steps); // nothing left to do
    CHECK(version_of(database) == 3);
}

TEST_CASE("the steps make today's version, one after the other", "[library][schema]") {
    const std::vector<Migration>& steps = migrations();
    for (std::size_t i = 0; i < steps.size(); ++i)
        CHECK(steps[i].to == static_cast<int>(i) + 1);
    CHECK(steps.back().to == library_version);
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE);
    CHECK_FALSE(has_every_table(database));
    migrate(database, steps);
    CHECK(has_every_table(database));
}

TEST_CASE("a checksum sees every change of one byte", "[checksum]") {
    // Values of the 64-bit FNV-1a test vectors in draft-eastlake-fnv (from memory).
    CHECK(checksum_of("") == 0xcbf29ce484222325ull);
    CHECK(checksum_of("a") == 0xaf63dc4c8601ec8cull);
    CHECK(checksum_of("foobar") == 0x85944171f73967e8ull);
    CHECK(checksum_of("bar", checksum_of("foo")) == checksum_of("foobar"));
    const std::string text = "{\"operator_stop_mm\": -260}";
    for (std::size_t at = 0; at < text.size(); ++at)
        for (int bit = 0; bit < 8; ++bit) {
            std::string damaged = text;
            damaged[at] = static_cast<char>(damaged[at] ^ (1 << bit));
            REQUIRE(checksum_of(damaged) != checksum_of(text));
        }
}

namespace {

LibraryResult<std::string> folder_with(const std::map<std::string, std::string>& variables) {
    return default_data_folder([&](const char* name) -> std::optional<std::string> {
        const auto found = variables.find(name);
        if (found == variables.end()) return std::nullopt;
        return found->second;
    });
}

} // namespace

#if !defined(_WIN32) && !defined(__APPLE__)
TEST_CASE("the data folder follows the XDG base directories", "[library]") {
    // XDG Base Directory Specification 0.8: XDG_DATA_HOME, $HOME/.local/share when it is not set
    // or empty; a path that is not absolute is to be ignored.
    CHECK(*folder_with({{"XDG_DATA_HOME", "/data"}, {"HOME", "/home/p"}}) == "/data/carriageway");
    CHECK(*folder_with({{"HOME", "/home/p"}}) == "/home/p/.local/share/carriageway");
    CHECK(*folder_with({{"XDG_DATA_HOME", ""}, {"HOME", "/home/p"}}) ==
          "/home/p/.local/share/carriageway");
    CHECK(*folder_with({{"XDG_DATA_HOME", "data"}, {"HOME", "/home/p"}}) ==
          "/home/p/.local/share/carriageway");
    for (const std::string home : {"", "relative"}) {
        const LibraryResult<std::string> none = folder_with({{"HOME", home}});
        REQUIRE_FALSE(none);
        CHECK(none.fault().kind == LibraryFault::Kind::no_folder);
        CHECK(none.fault().detail.find("HOME") != std::string::npos);
    }
    CHECK_FALSE(folder_with({}));
}
#else
TEST_CASE("the data folder is where the system keeps each program's", "[library]") {
#ifdef _WIN32
    const std::string variable = "APPDATA", given = "C:\\Users\\p", expected = given + "\\Carriageway";
#else
    const std::string variable = "HOME", given = "/Users/p",
                      expected = given + "/Library/Application Support/Carriageway";
#endif
    CHECK(*folder_with({{variable, given}}) == expected);
    for (const std::string home : {"", "relative"}) {
        const LibraryResult<std::string> none = folder_with({{variable, home}});
        REQUIRE_FALSE(none);
        CHECK(none.fault().kind == LibraryFault::Kind::no_folder);
        CHECK(none.fault().detail.find(variable) != std::string::npos);
    }
    CHECK_FALSE(folder_with({}));
}
#endif
