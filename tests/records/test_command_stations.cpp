// carriageway stations, as it is called.
#include <filesystem>
#include <fstream>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/exchange.h"
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

Run run(const Job& job, std::vector<std::string> more = {}) {
    const ScratchFolder folder;
    const fs::path path = fs::path(folder.path()) / "job.json";
    std::ofstream(path, std::ios::binary) << write_job(job);
    std::istringstream in;
    std::ostringstream out, err;
    CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"},
                             {"null"}, {}, {}, {}};
    services.open_library = [&] { return Library::open(folder.path()); };
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    std::vector<std::string> arguments{"stations", path.string()};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str()};
}

/// White, black and red on stations 1 to 3 of ten, a flash unit on the last; white prints first and
/// is flashed.
Job three_colours() {
    Job job = samples::job("Regatta", {"White", "Black", "Red"});
    job.uses.back() = StationUse::flash;
    job.heads[0].wish.flash_after = true;
    job.heads[1].wish.order = job.heads[2].wish.order = 1.0;
    return job;
}

} // namespace

TEST_CASE("stations says the best placement, what it costs and what came next") {
    const Run english = run(three_colours());
    CHECK(english.status == exit_fit);
    CHECK(english.err.empty());
    CHECK_THAT(english.out, ContainsSubstring("Best: no station passed idle"));
    // Station by station, by hand: white first, its flash directly behind, then the others.
    CHECK_THAT(english.out, ContainsSubstring("1 White · 2 flash · 3 Black · 4 Red"));
    CHECK_THAT(english.out, ContainsSubstring("Alternative 1"));
    const Run spanish = run(three_colours(), {"--lang", "es"});
    CHECK_THAT(spanish.out, ContainsSubstring("La mejor: ninguna estación vacía"));
}

TEST_CASE("stations shows as many placements as are wanted") {
    CHECK_THAT(run(three_colours(), {"--alternatives", "1"}).out, !ContainsSubstring("Alternative"));
    const Run none = run(three_colours(), {"--alternatives", "0"});
    CHECK(none.status == exit_trouble);
    CHECK_THAT(none.err, ContainsSubstring("--alternatives"));
}

TEST_CASE("stations names the wishes that conflict, and ends with 1") {
    Job job = three_colours();
    // Black is to print before white, yet stays behind it; nothing else stands in the way.
    job.heads[0].wish.flash_after = false;
    job.heads[1].wish.order = 0.0;
    job.heads[0].wish.order = 1.0;
    job.heads[0].wish.pinned = job.heads[1].wish.pinned = true;
    const Run impossible = run(job);
    CHECK(impossible.status == exit_not_fit);
    CHECK_THAT(impossible.out, ContainsSubstring("Black prints before White"));
    CHECK_THAT(impossible.out, ContainsSubstring("stays on station 1"));
    const auto report = nlohmann::json::parse(run(job, {"--json"}).out);
    CHECK(report.at("state") == "impossible");
    // Nothing prints before station 1: the order and that pin are enough.
    CHECK(report.at("conflict").size() == 2);
    CHECK(report.at("placements").empty());
}

TEST_CASE("stations without a flash unit says that one is missing") {
    Job job = three_colours();
    job.uses.back() = StationUse::open;
    const Run impossible = run(job);
    CHECK(impossible.status == exit_not_fit);
    CHECK_THAT(impossible.out, ContainsSubstring("with flash units: 1 in all"));
}

TEST_CASE("stations with its report for programs") {
    const auto report = nlohmann::json::parse(run(three_colours(), {"--json"}).out);
    CHECK(report.at("state") == "found");
    const auto& best = report.at("placements").at(0);
    CHECK(best.at("idle") == 0);
    CHECK(best.at("flash_stations") == nlohmann::json::array({2}));
    CHECK(best.at("colours").at(0).at("colour") == "White");
    CHECK(best.at("colours").at(0).at("station") == 1);
    // Flash units that stay: the only one stands behind everything, so white can't be flashed first.
    CHECK(run(three_colours(), {"--fixed-flashes"}).status == exit_not_fit);
}
