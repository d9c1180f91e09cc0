// What comes with the program for readers and shells names each of its commands with each option, and
// no other: the manual page, and what bash, zsh and fish complete.
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include <catch2/catch_test_macros.hpp>

#include "app/records/command_options.h"

using namespace carriageway;

namespace {

using Names = std::set<std::string>;
using Understood = std::map<std::string, Names>; ///< options by command; "": without one

std::string installed(const std::string& name) {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/platform/linux/install/" + name);
    INFO(name);
    REQUIRE(file);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::vector<std::string> words_in(const std::string& text) {
    std::istringstream in(text);
    return {std::istream_iterator<std::string>(in), {}};
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

Names found_all(const std::string& text, const std::string& pattern) {
    Names names;
    const std::regex wanted(pattern);
    for (auto at = std::sregex_iterator(text.begin(), text.end(), wanted); at != std::sregex_iterator(); ++at)
        names.insert((*at)[1]);
    return names;
}

Names names_of(const std::vector<OptionRow>& options) {
    Names names;
    for (const OptionRow& option : options) {
        names.insert(std::string("--") + option.name);
        if (option.letter != '\0') names.insert(std::string("-") + option.letter);
    }
    return names;
}

/// As the program itself understands them; common ones are asked for apart.
Understood understood() {
    Understood all;
    for (const CommandRow& row : command_rows()) all[row.name] = names_of(row.options);
    return all;
}

Understood in_manual(Names& common) {
    std::string page = installed("carriageway.1.in");
    page = std::regex_replace(page, std::regex(R"(\\-)"), "-");
    Understood all;
    std::vector<std::string> commands; // that the part is about
    std::string part, before;
    for (const std::string& line : lines_of(page)) {
        if (line.rfind(".SH ", 0) == 0 || line.rfind(".SS ", 0) == 0) part = line.substr(4);
        if (before == ".TP" && part == "COMMANDS") {
            const std::vector<std::string> words = words_in(line);
            REQUIRE(words.size() >= 2);
            all[words[1]];
        } else if (before == ".TP" && part.rfind("Of ", 0) == 0) {
            const Names options = found_all(line, R"((?:^| )(--?[a-z][a-z-]*))");
            REQUIRE_FALSE(options.empty());
            if (part.rfind("Of every", 0) == 0) {
                common.insert(options.begin(), options.end());
            } else if (part == "Of the window") {
                all[""].insert(options.begin(), options.end());
            } else {
                for (const std::string& name : found_all(part.substr(3), "([a-z]+)"))
                    if (name != "and") all[name].insert(options.begin(), options.end());
            }
        }
        before = line;
    }
    return all;
}

/// check | rate) options="--a -b" ;;
Understood in_bash(Names& common) {
    const std::string text = installed("carriageway.bash");
    Understood all;
    const std::regex row("^ *([a-z| *]+)\\) options=(.*) ;;$");
    for (const std::string& line : lines_of(text)) {
        std::smatch match;
        if (!std::regex_match(line, match, row)) continue;
        for (const std::string& name : found_all(match[1].str(), "([a-z*]+)"))
            all[name == "*" ? "" : name] = found_all(match[2].str(), R"((--?[a-z][a-z-]*))");
    }
    std::smatch match;
    REQUIRE(std::regex_search(text, match, std::regex("\\$options (--json[^\"]*)\"")));
    common = found_all(match[1].str(), R"((--?[a-z][a-z-]*))");
    REQUIRE(std::regex_search(text, match, std::regex("local commands=\"([^\"]*)\"")));
    Names listed{""};
    for (const std::string& name : words_in(match[1].str())) listed.insert(name);
    Names chosen;
    for (const auto& [name, options] : all) chosen.insert(name);
    CHECK(listed == chosen);
    return all;
}

Understood in_fish(Names& common) {
    Understood all;
    for (const std::string& line : lines_of(installed("carriageway.fish"))) {
        if (line.rfind("complete -c carriageway", 0) != 0) continue;
        Names options;
        for (const std::string& name : found_all(line, " -l ([a-z-]+)")) options.insert("--" + name);
        for (const std::string& letter : found_all(line, " -s ([a-z])")) options.insert("-" + letter);
        std::smatch match;
        if (std::regex_search(line, match, std::regex(" -n '__carriageway_for ([a-z ]*)'"))) {
            for (const std::string& name : words_in(match[1].str()))
                all[name].insert(options.begin(), options.end());
        } else if (std::regex_search(line, match, std::regex(" -n __fish_use_subcommand -a ([a-z]+)"))) {
            all[match[1].str()];
        } else if (line.find(" -n __fish_use_subcommand") != std::string::npos) {
            all[""].insert(options.begin(), options.end());
        } else {
            common.insert(options.begin(), options.end());
        }
    }
    return all;
}

Names options_in_zsh(const std::string& text) {
    Names names = found_all(text, "'(--[a-z-]+)\\[");
    for (const std::string& both : found_all(text, "\\{(-[a-z],--[a-z]+)\\}")) {
        names.insert(both.substr(0, 2));
        names.insert(both.substr(3));
    }
    return names;
}

Understood in_zsh(Names& common) {
    std::string text = installed("_carriageway");
    std::smatch match;
    const auto array = [&](const std::string& name) {
        const std::size_t from = text.find("    " + name + "=(\n");
        REQUIRE(from != std::string::npos);
        return text.substr(from, text.find("\n    )", from) - from);
    };
    common = options_in_zsh(array("common"));
    const Names output = options_in_zsh(array("output"));
    Understood all;
    for (const std::string& name : found_all(array("commands"), "'([a-z]+):")) all[name];
    const std::size_t first = text.find("if [[ -z $command ]]");
    all[""] = options_in_zsh(text.substr(first, text.find("\n    fi", first) - first));
    const std::string cases = text.substr(text.find("    case $command in"));
    const std::regex one("\\n {8}\\(([a-z|]+)\\) ([^;]*);;");
    for (auto at = std::sregex_iterator(cases.begin(), cases.end(), one); at != std::sregex_iterator(); ++at)
        for (const std::string& name : found_all((*at)[1].str(), "([a-z]+)")) {
            const std::string arguments = (*at)[2].str();
            all[name] = options_in_zsh(arguments);
            CHECK(arguments.find("$common") != std::string::npos);
            if (arguments.find("$output") != std::string::npos) all[name].insert(output.begin(), output.end());
        }
    return all;
}

} // namespace

TEST_CASE("The manual page and the completions name every command and option", "[version]") {
    using Reading = Understood (*)(Names&);
    const std::pair<const char*, Reading> readings[] = {
        {"manual", in_manual}, {"bash", in_bash}, {"fish", in_fish}, {"zsh", in_zsh}};
    const Understood own = understood();
    REQUIRE(own.size() >= 14);
    for (const auto& [name, reading] : readings) {
        INFO(name);
        Names common;
        const Understood there = reading(common);
        CHECK(common == names_of(common_options()));
        for (const auto& [command, options] : own) {
            INFO("command " << command);
            REQUIRE(there.count(command) == 1);
            CHECK(there.at(command) == options);
        }
        CHECK(there.size() == own.size());
    }
}
