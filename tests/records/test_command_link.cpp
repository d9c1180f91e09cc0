// carriageway link, and links where a command takes a job.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/job_link.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
namespace fs = std::filesystem;

namespace {

const std::string demo_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

Job demonstration() {
    std::ifstream file(demo_path, std::ios::binary);
    const ReadJob read = read_job(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read);
    return *read.job;
}

struct Run {
    CommandOutcome outcome;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments, const fs::path& folder) {
    std::istringstream in;
    std::ostringstream out, err;
    CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm, {"press", "jobs"},
                             {"null"}, {}, {}, {}};
    services.open_library = [&] { return Library::open((folder / "library").string()); };
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    CommandOutcome outcome = run_command_line(arguments, services);
    return {std::move(outcome), out.str(), err.str()};
}

} // namespace

TEST_CASE("link prints a job's link on one line, behind an address where one is given") {
    ScratchFolder folder;
    const std::string fragment = job_link_fragment(demonstration());
    const Run bare = run({"link", demo_path}, folder.path());
    CHECK(bare.outcome.status == exit_fit);
    CHECK(bare.err.empty());
    CHECK(bare.out == fragment + "\n");
    const Run based = run({"link", demo_path, "--base", "https://example.org/carriageway/"}, folder.path());
    CHECK(based.out == "https://example.org/carriageway/#" + fragment + "\n");
    // An address copied with a fragment of its own.
    CHECK(run({"link", demo_path, "--base", "http://localhost:8000/#job=1.abc"}, folder.path()).out ==
          "http://localhost:8000/#" + fragment + "\n");
    const nlohmann::json report = nlohmann::json::parse(run({"link", demo_path, "--json"}, folder.path()).out);
    CHECK(report.at("link") == fragment);
    CHECK(report.at("job") == demonstration().name);
    // A job of the library, by its name.
    REQUIRE(run({"import", demo_path}, folder.path()).outcome.status == exit_fit);
    CHECK(run({"link", demonstration().name}, folder.path()).out == fragment + "\n");
    for (const char* address : {"example.org", "ftp://example.org", "https://example.org/a b", "https://x\n"}) {
        const Run refused = run({"link", demo_path, "--base", address}, folder.path());
        INFO(address);
        CHECK(refused.outcome.status == exit_trouble);
        CHECK(refused.out.empty());
        CHECK(refused.err.find("--base") != std::string::npos);
    }
    CHECK(run({"link"}, folder.path()).outcome.status == exit_trouble);
    CHECK(run({"link", folder.file("none.json")}, folder.path()).outcome.status == exit_trouble);
    CHECK(run({"--help"}, folder.path()).out.find("link JOB") != std::string::npos);
    CHECK(run({"link", "--help"}, folder.path()).out.find("--base ADDRESS") != std::string::npos);
}

TEST_CASE("every command that takes a job takes a link to one") {
    ScratchFolder folder;
    const std::string link = "https://example.org/#" + job_link_fragment(demonstration());
    for (const std::string& text : {link, job_link_fragment(demonstration()), link.substr(link.find('#'))}) {
        const Run check = run({"check", text}, folder.path());
        CHECK(check.outcome.status == exit_not_fit);
        CHECK(check.err.empty());
        CHECK(check.out == run({"check", demo_path}, folder.path()).out);
    }
    const std::string mended = folder.file("mended.json");
    CHECK(run({"set", link, "-o", mended}, folder.path()).outcome.status == exit_fit);
    CHECK(run({"link", link}, folder.path()).out == job_link_fragment(demonstration()) + "\n");
    const Run import = run({"import", link}, folder.path());
    CHECK(import.outcome.status == exit_fit);
    CHECK(import.out.find("The link: imported as") == 0);
    CHECK(run({"list"}, folder.path()).out.find(demonstration().name) != std::string::npos);
}

TEST_CASE("the window shows a link's job as a visit, and a file's as a job to keep") {
    ScratchFolder folder;
    const Run link = run({job_link_fragment(demonstration())}, folder.path());
    REQUIRE(link.outcome.window);
    REQUIRE(link.outcome.window->job);
    CHECK(*link.outcome.window->job == demonstration());
    CHECK(link.outcome.window->from_link);
    CHECK_FALSE(run({demo_path}, folder.path()).outcome.window->from_link);
    CHECK(run({"--open", "#" + job_link_fragment(demonstration())}, folder.path()).outcome.window->from_link);
}

TEST_CASE("a bad link is an error that doesn't repeat the link") {
    ScratchFolder folder;
    std::string link = "https://example.org/#" + job_link_fragment(demonstration());
    link.resize(500);
    for (const char* command : {"check", "link", "import"}) {
        const Run refused = run({command, link}, folder.path());
        CHECK(refused.outcome.status == exit_trouble);
        CHECK(refused.out.empty());
        CHECK(refused.err.find("carriageway: The link: The link is damaged or cut short.") == 0);
        CHECK(refused.err.find("job=") == std::string::npos);
    }
    CHECK(run({link}, folder.path()).outcome.status == exit_trouble);
    CHECK(run({"check", "https://example.org/"}, folder.path()).err.find("no job in this link") != std::string::npos);
}
