// The command line in process: what it prints, what it writes, what it ends with.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/exchange.h"
#include "core/assess.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

const std::string demo_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

std::string read_file(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

struct Run {
    int status = -1;
    std::string out;
    std::string err;
    bool window = false;
};

/// Runs a command with a library in `folder`.
Run run(const std::vector<std::string>& arguments, const fs::path& folder, const std::string& input = {}) {
    std::istringstream in(input);
    std::ostringstream out, err;
    CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm, {"press", "jobs"},
                             {"null"}, {}, {}, {}};
    services.open_library = [&] { return Library::open((folder / "library").string()); };
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    services.picture = [](const PictureRequest&) { return DrawnPicture{"\x89PNG-stand-in", {}}; };
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str(), outcome.window.has_value()};
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("check names the demonstration's four faults in mm with what mends them, and ends with 1") {
    ScratchFolder folder;
    const Run result = run({"check", demo_path}, folder.path());
    CHECK(result.status == 1);
    CHECK(result.err.empty());
    INFO(result.out);
    // Head 6: sensors overlapped after the chest-print stroke was shortened.
    CHECK(has(result.out, "Both sensors on"));
    CHECK(has(result.out, "58 mm apart"));
    CHECK(has(result.out, "70 mm"));
    CHECK(has(result.out, "operator 617 → 550 mm, machine 675 → 741 mm"));
    // Head 5: a strip that only the flood misses.
    CHECK(has(result.out, "Heavy at the machine end"));
    CHECK(has(result.out, "18.7 mm"));
    CHECK(has(result.out, "ruler 679 → 723 mm"));
    // Head 7: off the platen, and too near the frame.
    CHECK(has(result.out, "5.2 mm off the platen"));
    CHECK(has(result.out, "37.2 mm of the frame"));
    CHECK(has(result.out, "ruler 211 → 273 mm"));
    // Head 8: stroke wasted.
    CHECK(has(result.out, "Stroke 124.9 mm too long"));
    CHECK(has(result.out, "3 of 6 heads fit to run"));
}

TEST_CASE("set alone clears the demonstration") {
    ScratchFolder folder;
    const std::string mended = folder.file("set.json");
    const Run set = run({"set", demo_path, "-o", mended}, folder.path());
    INFO(set.out << set.err);
    CHECK(set.status == 0);
    const Run check = run({"check", mended}, folder.path());
    CHECK(check.status == 0);
    CHECK(has(check.out, "6 of 6 heads fit to run"));
    // Every stop that was moved stands on a graduation, and nothing but stops has changed.
    const Job before = *read_job(read_file(demo_path)).job;
    Job after = *read_job(read_file(mended)).job;
    for (Head& head : after.heads) {
        for (const double stop : {head.stops.operator_side, head.stops.machine_side})
            CHECK(std::abs(nearest_graduation(after.press.ruler, stop) - stop) < 1e-6);
        head.stops = find_head(before, head.id)->stops;
    }
    CHECK(after == before);
    // It is not written over unasked.
    const std::string kept = read_file(mended);
    CHECK(run({"set", demo_path, "-o", mended}, folder.path()).status == 2);
    CHECK(read_file(mended) == kept);
    CHECK(run({"set", demo_path, "-o", mended, "--force"}, folder.path()).status == 0);
}

TEST_CASE("a job comes from standard input and goes to standard output") {
    ScratchFolder folder;
    const Run set = run({"set", "-", "-o", "-"}, folder.path(), read_file(demo_path));
    CHECK(set.status == 0);
    const ReadJob read = read_job(set.out);
    REQUIRE(read.job.has_value());
    Assessment assessment;
    assess(*read.job, assessment);
    CHECK(assessment.fit);
}

TEST_CASE("--json says the same as the table, for programs") {
    ScratchFolder folder;
    const Run result = run({"check", demo_path, "--json"}, folder.path());
    CHECK(result.status == 1);
    const nlohmann::json json = nlohmann::json::parse(result.out);
    CHECK(json.at("fit") == false);
    REQUIRE(json.at("heads").size() == 6);
    const Job job = *read_job(read_file(demo_path)).job;
    Assessment assessment;
    assess(job, assessment);
    for (std::size_t i = 0; i < 6; ++i) {
        const nlohmann::json& head = json.at("heads")[i];
        CHECK(head.at("station") == job.heads[i].station);
        CHECK(head.at("fit") == assessment.heads[i].fit);
    }
    for (const std::vector<std::string>& command :
         {std::vector<std::string>{"list", "--json"}, {"import", demo_path, "--json"}, {"list", "--json"}}) {
        const Run run_json = run(command, folder.path());
        CHECK(run_json.status == 0);
        CHECK_FALSE(nlohmann::json::parse(run_json.out).is_discarded());
    }
}

TEST_CASE("jobs go into the library and come out by name") {
    ScratchFolder folder;
    CHECK(run({"import", demo_path}, folder.path()).status == 0);
    const Run list = run({"list"}, folder.path());
    CHECK(has(list.out, "Paper-boat regatta shirt, front"));
    CHECK_FALSE(has(run({"list", "--search", "zebra"}, folder.path()).out, "Paper-boat"));
    CHECK(run({"check", "Paper-boat regatta shirt, front"}, folder.path()).status == 1);
    const std::string out = folder.file("out.json");
    CHECK(run({"export", "Paper-boat regatta shirt, front", "-o", out}, folder.path()).status == 0);
    CHECK(*read_job(read_file(out)).job == *read_job(read_file(demo_path)).job);
    const Run missing = run({"export", "No such job", "-o", "-"}, folder.path());
    CHECK(missing.status == 2);
    CHECK(has(missing.err, "carriageway: No such job: "));
}

TEST_CASE("what can't be read ends with 2 and says where and why") {
    ScratchFolder folder;
    const std::string broken = folder.file("broken.json");
    std::string text = read_file(demo_path);
    text.replace(text.find("\"run_past_mm\": 25"), 17, "\"run_past_mm\": -5");
    std::ofstream(broken) << text;
    for (const char* command : {"check", "picture", "set"}) {
        std::vector<std::string> arguments{command, broken};
        if (std::string(command) != "check") {
            arguments.push_back("-o");
            arguments.push_back(folder.file("x"));
        }
        const Run result = run(arguments, folder.path());
        INFO(result.err);
        CHECK(result.status == 2);
        CHECK(result.out.empty());
        CHECK(has(result.err, "carriageway: " + broken + ": "));
        CHECK(has(result.err, "wishes.run_past_mm"));
        CHECK_FALSE(fs::exists(folder.file("x")));
    }
    CHECK(run({"check", folder.file("not-there.json")}, folder.path()).status == 2);
    CHECK(run({"check", folder.path()}, folder.path()).status == 2); // a folder
    CHECK(run({"check", "-"}, folder.path(), "not json").status == 2);
}

TEST_CASE("help, version and wrong arguments as GNU tools do them") {
    ScratchFolder folder;
    const Run help = run({"--help"}, folder.path());
    CHECK(help.status == 0);
    for (const char* command : {"check", "set", "picture", "import", "export", "list"}) CHECK(has(help.out, command));
    const Run version = run({"--version"}, folder.path());
    CHECK(version.status == 0);
    CHECK(has(version.out, "0.0-test"));
    for (const std::vector<std::string>& wrong :
         {std::vector<std::string>{"check"}, {"check", demo_path, "--no-such-option"}, {"set", demo_path},
          {"picture", demo_path, "-o", "x.png", "--size", "big"},
          {"picture", demo_path, "-o", "x.png", "--head", "3"}}) {
        const Run result = run(wrong, folder.path());
        INFO(wrong.back() << ": " << result.err);
        CHECK(result.status == 2);
        CHECK(has(result.err, "carriageway: "));
        CHECK(result.out.empty());
    }
    CHECK(has(run({"check", "--no-such-option"}, folder.path()).err, "--help' for more information."));
    const Run spanish = run({"check", demo_path, "--lang", "es"}, folder.path());
    CHECK(has(spanish.out, "Los dos sensores encendidos"));
    const Run inches = run({"check", demo_path, "--units", "in"}, folder.path());
    CHECK(has(inches.out, "in"));
    CHECK_FALSE(has(inches.out, "58 mm apart"));
}

TEST_CASE("without a command the window is asked for") {
    ScratchFolder folder;
    CHECK(run({}, folder.path()).window);
    CHECK(run({demo_path}, folder.path()).window);
    CHECK(run({folder.file("nope.json")}, folder.path()).status == 2);
}
