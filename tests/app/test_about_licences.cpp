// What is handed on with the program is named with its licence: by the program itself, and by
// assets/docs/licences.md, as platform/dependencies.txt has it.
#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include <catch2/catch_test_macros.hpp>

#include "app/version.h"

using namespace carriageway;

namespace {

std::string text_of(const std::string& path) {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/" + path, std::ios::binary);
    INFO(path);
    REQUIRE(file);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::vector<std::string> parts_of(const std::string& line, char between) {
    std::vector<std::string> parts;
    std::istringstream in(line);
    for (std::string part; std::getline(in, part, between);) {
        const std::size_t from = part.find_first_not_of(' ');
        parts.push_back(from == std::string::npos
                            ? std::string()
                            : part.substr(from, part.find_last_not_of(' ') + 1 - from));
    }
    return parts;
}

/// What makes the program but isn't in it: compilers and tools that a build runs.
const std::set<std::string> tools{"compiler", "cmake",      "ninja",      "git",     "certificates",
                                  "xz",       "fonttools",  "bzip2",      "librsvg", "python",
                                  "emscripten", "node-acorn", "mingw",    "wine"};

/// Name and licence of what ends up in what is handed on.
std::map<std::string, std::string> shipped(const std::string& dependencies) {
    std::map<std::string, std::string> found;
    std::istringstream in(dependencies);
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#') continue;
        const std::vector<std::string> fields = parts_of(line, '|');
        if (fields.size() < 4 || tools.count(fields[0])) continue;
        for (const std::string& need : parts_of(fields[3], '+'))
            if (need == "build" || need == "web" || need == "windows") found[fields[0]] = fields[2];
    }
    return found;
}

/// Rows of the tables: what stands first, and its licence behind it.
std::map<std::string, std::string> named(const std::string& page) {
    std::map<std::string, std::string> found;
    std::istringstream in(page);
    for (std::string line; std::getline(in, line);) {
        const std::vector<std::string> cells = parts_of(line, '|');
        if (line.empty() || line[0] != '|' || cells.size() < 4) continue;
        found[cells[1]] = cells[2];
    }
    return found;
}

/// What lacks, or is named with another licence.
std::vector<std::string> lacking(const std::string& dependencies, const std::string& page) {
    const std::map<std::string, std::string> rows = named(page);
    std::vector<std::string> faults;
    for (const auto& [name, licence] : shipped(dependencies)) {
        const auto row = rows.find(name);
        if (row == rows.end()) faults.push_back(name + " is not named");
        else if (row->second != licence) faults.push_back(name + " is named as " + row->second);
    }
    return faults;
}

} // namespace

TEST_CASE("Everything that is handed on stands in the page of licences", "[about]") {
    const std::string dependencies = text_of("platform/dependencies.txt");
    const std::string page = text_of("assets/docs/licences.md");
    CHECK(lacking(dependencies, page) == std::vector<std::string>{});
    const std::map<std::string, std::string> parts = shipped(dependencies);
    CHECK(parts.size() >= 14);
    // Each of them left out, and each under another licence, is found.
    for (const auto& [name, licence] : parts) {
        INFO(name);
        const std::string row = "\n| " + name + " | " + licence + " |";
        const std::size_t at = page.find(row);
        REQUIRE(at != std::string::npos);
        std::string without = page;
        without.erase(at, page.find('\n', at + 1) - at);
        CHECK(lacking(dependencies, without) == std::vector<std::string>{name + " is not named"});
        std::string other = page;
        other.replace(at, row.size(), "\n| " + name + " | 0BSD |");
        CHECK(lacking(dependencies, other) == std::vector<std::string>{name + " is named as 0BSD"});
    }
    CHECK(lacking(dependencies + "\nnovelty|1|MIT|web||||made up\n", page) ==
          std::vector<std::string>{"novelty is not named"});
}

TEST_CASE("What the program says that it is built on stands there with the same licence", "[about]") {
    std::map<std::string, std::string> licences; // by what a part calls itself
    std::istringstream in(text_of("assets/docs/licences.md"));
    for (std::string line; std::getline(in, line);) {
        const std::vector<std::string> cells = parts_of(line, '|');
        if (line.empty() || line[0] != '|' || cells.size() < 7) continue;
        licences[cells[6].substr(0, cells[6].find(':'))] = cells[2];
    }
    const std::vector<BuiltOn> all = program_built_on();
    CHECK(all.size() >= 10);
    for (const BuiltOn& one : all) {
        INFO(one.name);
        REQUIRE(licences.count(one.name) == 1);
        CHECK(licences[one.name] == one.licence);
    }
}
