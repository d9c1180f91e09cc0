// --version: the program's own on the first line, below it what it is built on, as that says itself.
#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <sqlite3.h>
#include <zlib.h>

#include "app/records/command_line.h"
#include "app/records/records_built_on.h"

using namespace carriageway;

namespace {

std::string version_said(const std::vector<BuiltOn>& built_on, const std::vector<std::string>& arguments) {
    std::istringstream in;
    std::ostringstream out, err;
    CommandServices services{in, out, err, "7.8.9", Language::english, LengthUnit::mm, {}, {}, {}, {}, {}};
    services.built_on = built_on;
    const CommandOutcome outcome = run_command_line(arguments, services);
    CHECK(outcome.status == exit_fit);
    CHECK_FALSE(outcome.window);
    CHECK(err.str().empty());
    return out.str();
}

} // namespace

TEST_CASE("--version names the program alone on the first line, then what it is built on", "[version]") {
    const std::vector<BuiltOn> built_on{{"One", "1.2", "MIT"}, {"Other", {}, "Zlib"}};
    CHECK(version_said(built_on, {"--version"}) ==
          "carriageway 7.8.9\nBuilt on:\n  One 1.2 (MIT)\n  Other (Zlib)\n");
    CHECK(version_said(built_on, {"check", "--version", "--lang", "es"}) ==
          "carriageway 7.8.9\nConstruido con:\n  One 1.2 (MIT)\n  Other (Zlib)\n");
    CHECK(version_said({}, {"--version"}) == "carriageway 7.8.9\n");
}

TEST_CASE("What is built on says its own version", "[version]") {
    std::map<std::string, BuiltOn> named;
    for (const BuiltOn& one : records_built_on()) {
        INFO(one.name);
        CHECK(named.emplace(one.name, one).second); // once
        REQUIRE_FALSE(one.version.empty());
        CHECK(one.version.find_first_not_of("0123456789.") == std::string::npos);
        CHECK(one.version.find('.') != std::string::npos);
    }
    for (const char* name : {"SQLite", "SQLiteCpp", "nlohmann-json", "CLI11", "zlib", "libpng"})
        CHECK(named.count(name) == 1);
    // Of what runs here: SQLite as a statement tells it; zlib as its header asks programs to compare.
    sqlite3* base = nullptr;
    REQUIRE(sqlite3_open(":memory:", &base) == SQLITE_OK);
    sqlite3_stmt* asked = nullptr;
    REQUIRE(sqlite3_prepare_v2(base, "SELECT sqlite_version()", -1, &asked, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_step(asked) == SQLITE_ROW);
    CHECK(named.at("SQLite").version == reinterpret_cast<const char*>(sqlite3_column_text(asked, 0)));
    sqlite3_finalize(asked);
    sqlite3_close(base);
    CHECK(named.at("zlib").version[0] == ZLIB_VERSION[0]);
}
