// carriageway compare, as it is called.
#include <filesystem>
#include <fstream>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/exchange.h"
#include "app/text/sentences.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;
namespace fs = std::filesystem;

namespace {

struct Run {
    int status;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments, const fs::path& folder) {
    std::istringstream in;
    std::ostringstream out, err;
    CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"},
                             {"null"}, {}, {}, {}};
    services.open_library = [&] { return Library::open((folder / "library").string()); };
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str()};
}

std::string stored(const ScratchFolder& folder, const std::string& name, const Job& job) {
    const fs::path path = fs::path(folder.path()) / name;
    std::ofstream(path, std::ios::binary) << write_job(job);
    return path.string();
}

/// A job and what was set differently a second time: a stop, an angle, the blade's edge.
struct Two {
    Job first = samples::job("Regatta");
    Job second = first;
    Two() {
        Head& head = second.heads[1];
        head.stops.machine_side += 12.0;
        head.squeegee.angle = radians(20.0);
        head.squeegee.edge = BladeEdge::square;
    }
};

} // namespace

TEST_CASE("compare says head by head what was set differently, in both languages") {
    const ScratchFolder folder;
    const Two two;
    const std::string first = stored(folder, "first.json", two.first);
    const std::string second = stored(folder, "second.json", two.second);
    const Run english = run({"compare", first, second}, folder.path());
    CHECK(english.status == exit_not_fit);
    CHECK(english.err.empty());
    CHECK_THAT(english.out, ContainsSubstring("Head 2 · Red"));
    CHECK_THAT(english.out, !ContainsSubstring("Head 1"));
    CHECK_THAT(english.out, ContainsSubstring("15°"));
    CHECK_THAT(english.out, ContainsSubstring("20°"));
    CHECK_THAT(english.out, ContainsSubstring("Square"));
    // The ruler's zero lies at -500 and its numbers grow toward the machine: 260 reads 760.
    CHECK_THAT(english.out, ContainsSubstring("760 mm"));
    CHECK_THAT(english.out, ContainsSubstring("772 mm"));
    CHECK_THAT(english.out, ContainsSubstring("3 set differently"));
    const Run spanish = run({"compare", first, second, "--lang", "es"}, folder.path());
    CHECK(spanish.status == exit_not_fit);
    CHECK_THAT(spanish.out, ContainsSubstring("3 ajustes distintos"));
}

TEST_CASE("compare finds nothing in a job beside itself, and ends with 0") {
    const ScratchFolder folder;
    const Two two;
    const std::string first = stored(folder, "first.json", two.first);
    const Run same = run({"compare", first, first}, folder.path());
    CHECK(same.status == exit_fit);
    CHECK(same.out == "Nothing was set differently.\n");
}

TEST_CASE("compare takes what was really set, unless what was planned is wanted") {
    const ScratchFolder folder;
    Two two;
    two.second = two.first;
    const HeadId id = two.second.heads[0].id;
    two.second.walk = {{id, Field::squeegee_pressure, true, 240.0, {}}};
    const std::string first = stored(folder, "first.json", two.first);
    const std::string second = stored(folder, "second.json", two.second);
    const Run really = run({"compare", first, second}, folder.path());
    CHECK(really.status == exit_not_fit);
    CHECK_THAT(really.out, ContainsSubstring("240"));
    CHECK(run({"compare", first, second, "--planned"}, folder.path()).status == exit_fit);
}

TEST_CASE("compare's report for programs") {
    const ScratchFolder folder;
    const Two two;
    const std::string first = stored(folder, "first.json", two.first);
    const std::string second = stored(folder, "second.json", two.second);
    const auto report = nlohmann::json::parse(run({"compare", first, second, "--json"}, folder.path()).out);
    CHECK(report.at("first") == "Regatta");
    const auto& all = report.at("differences");
    REQUIRE(all.size() == 3);
    bool stop = false;
    for (const auto& one : all) {
        CHECK(one.at("station") == 2);
        if (one.at("field") != "stops.machine_mm") continue;
        stop = true;
        CHECK(one.at("kind") == "number");
        CHECK(one.at("first") == 260.0);
        CHECK(one.at("second") == 272.0);
    }
    CHECK(stop);
}

TEST_CASE("compare names the heads that others are set by, and which part a choice is of") {
    const ScratchFolder folder;
    Job other = samples::job("Regatta");
    REQUIRE(other.heads.size() >= 2);
    const std::string first = stored(folder, "first.json", other);
    other.registration.base = other.heads[1].id;
    const std::string second = stored(folder, "second.json", other);
    const Run said = run({"compare", first, second}, folder.path());
    CHECK_THAT(said.out, ContainsSubstring(head_title(Language::english, other.heads[0])));
    CHECK_THAT(said.out, ContainsSubstring(head_title(Language::english, other.heads[1])));
    const nlohmann::json report =
        nlohmann::json::parse(run({"compare", "--json", first, second}, folder.path()).out);
    REQUIRE(report["differences"].size() == 1);
    CHECK(report["differences"][0]["part"] == "base_head");
    CHECK(report["differences"][0]["field"].is_null());
}

TEST_CASE("compare wants two jobs, and says which one it can't read") {
    const ScratchFolder folder;
    const Two two;
    const std::string first = stored(folder, "first.json", two.first);
    const Run one = run({"compare", first}, folder.path());
    CHECK(one.status == exit_trouble);
    CHECK_THAT(one.err, ContainsSubstring("compare takes two jobs"));
    CHECK(run({"compare", first, first, first}, folder.path()).status == exit_trouble);
    const Run missing = run({"compare", first, "no such job"}, folder.path());
    CHECK(missing.status == exit_trouble);
    CHECK_THAT(missing.err, ContainsSubstring("no such job"));
    CHECK(missing.out.empty());
}
