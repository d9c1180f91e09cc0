// carriageway sheet: its arguments, what it asks for, what it writes and what it ends with.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/job_link.h"
#include "app/records/job_table.h"
#include "app/records/link_base.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::StartsWith;

namespace {

const std::string demo_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

Job demonstration() {
    std::ifstream file(demo_path, std::ios::binary);
    const ReadJob read = read_job(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read);
    return *read.job;
}

struct Run {
    int status = 0;
    std::string out, err;
    std::vector<SheetRequest> asked;
};

/// Runs a command with a service that draws `drawn`.
Run run(const std::vector<std::string>& arguments, const std::string& in_text = {},
        const DrawnSheet& drawn = {"%PDF pages", 7, {}, {}}) {
    Run run;
    std::istringstream in(in_text);
    std::ostringstream out, err;
    CommandServices services{
        in,       out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"},
        {"null"}, {},  {},  {}};
    services.now = [] { return Timestamp{1'700'000'000'000}; };
    services.sheet = [&](const SheetRequest& request) {
        run.asked.push_back(request);
        return drawn;
    };
    run.status = run_command_line(arguments, services).status;
    run.out = out.str();
    run.err = err.str();
    return run;
}

} // namespace

TEST_CASE("sheet asks for a PDF as the options say, and ends as check does") {
    const ScratchFolder folder;
    const std::string file = folder.file("sheet.pdf");
    const Run plain = run({"sheet", demo_path, "-o", file});
    CHECK(plain.status == exit_not_fit); // heads of the demonstration are not fit
    CHECK(plain.out.empty());
    CHECK(plain.err.empty());
    CHECK(bytes_of(file) == "%PDF pages");
    REQUIRE(plain.asked.size() == 1);
    CHECK(plain.asked[0].job == demonstration());
    CHECK_FALSE(plain.asked[0].letter);
    CHECK(plain.asked[0].page_a_head);
    CHECK(plain.asked[0].link_base.empty());
    CHECK(plain.asked[0].language == Language::english);
    CHECK(plain.asked[0].unit == LengthUnit::mm);
    CHECK(plain.asked[0].time == 1'700'000'000'000);

    const Run other =
        run({"sheet", demo_path, "-o", file, "--force", "--paper", "letter", "--layout", "table",
             "--base", "https://example.org/", "--lang", "es", "--units", "in"});
    REQUIRE(other.asked.size() == 1);
    CHECK(other.asked[0].letter);
    CHECK_FALSE(other.asked[0].page_a_head);
    CHECK(other.asked[0].link_base == "https://example.org/");
    CHECK(other.asked[0].language == Language::spanish);
    CHECK(other.asked[0].unit == LengthUnit::inch);

    // A fit job: every stop set.
    const std::string fit = folder.file("fit.json");
    REQUIRE(run({"set", demo_path, "-o", fit}).status == exit_fit);
    CHECK(run({"sheet", fit, "-o", folder.file("fit.PDF")}, {}, {"%PDF pages", 7, {}, {}, true})
              .status == exit_fit);
    CHECK(bytes_of(folder.file("fit.PDF")) == "%PDF pages");
}

TEST_CASE("sheet takes a job from a link and from standard input") {
    const ScratchFolder folder;
    const std::string link = "https://example.org/#" + job_link_fragment(demonstration());
    CHECK(run({"sheet", link, "-o", folder.file("a.pdf")}).asked.size() == 1);
    std::ifstream demo(demo_path, std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(demo), {});
    CHECK(run({"sheet", "-", "-o", folder.file("b.pdf")}, text).asked.size() == 1);
}

TEST_CASE("sheet writes a table by the file's name, and asks nobody to draw") {
    const ScratchFolder folder;
    const std::string file = folder.file("heads.csv");
    const Run table = run({"sheet", demo_path, "-o", file, "--lang", "es", "--units", "in"});
    CHECK(table.status == exit_not_fit);
    CHECK(table.asked.empty());
    CHECK(table.err.empty());
    const Job job = demonstration();
    Assessment assessment;
    assess(job, assessment);
    CHECK(bytes_of(file) == job_table(job, assessment, Language::spanish, LengthUnit::inch));
}

TEST_CASE("sheet overwrites nothing unless it is told to") {
    const ScratchFolder folder;
    for (const char* name : {"sheet.pdf", "sheet.csv"}) {
        const std::string file = folder.file(name);
        write_bytes(file, "kept");
        const Run refused = run({"sheet", demo_path, "-o", file});
        CHECK(refused.status == exit_trouble);
        CHECK_THAT(refused.err, ContainsSubstring("--force"));
        CHECK(bytes_of(file) == "kept");
        CHECK(run({"sheet", demo_path, "-o", file, "--force"}).status == exit_not_fit);
        CHECK(bytes_of(file) != "kept");
    }
}

TEST_CASE("Letters that can't be printed are a warning on the error stream, no trouble") {
    const ScratchFolder folder;
    const Run run_of = run({"sheet", demo_path, "-o", folder.file("a.pdf")}, {},
                           {"%PDF", 1, {"\u5929", "\u9752"}, {}});
    CHECK(run_of.status == exit_not_fit);
    CHECK(run_of.out.empty());
    CHECK_THAT(run_of.err, StartsWith("carriageway: ") && ContainsSubstring("\u5929 \u9752"));
    CHECK(bytes_of(folder.file("a.pdf")) == "%PDF");
}

TEST_CASE("A sheet that can't be drawn is trouble, and no file is left") {
    const ScratchFolder folder;
    const Run failed =
        run({"sheet", demo_path, "-o", folder.file("a.pdf")}, {}, {{}, 0, {}, "no memory for it"});
    CHECK(failed.status == exit_trouble);
    CHECK_THAT(failed.err, ContainsSubstring("no memory for it"));
    CHECK_FALSE(std::filesystem::exists(folder.file("a.pdf")));
}

TEST_CASE("sheet --json reports on standard output what was written") {
    const ScratchFolder folder;
    const std::string file = folder.file("a.pdf");
    const auto report = nlohmann::json::parse(
        run({"sheet", demo_path, "-o", file, "--json"}, {}, {"%PDF", 8, {"\u5929"}, {}}).out);
    CHECK(report.at("job") == demonstration().name);
    CHECK(report.at("output") == file);
    CHECK(report.at("pages") == 8);
    CHECK(report.at("replaced") == nlohmann::json::array({"\u5929"}));
    CHECK(report.at("fit") == false);
    const auto table =
        nlohmann::json::parse(run({"sheet", demo_path, "-o", folder.file("a.csv"), "--json"}).out);
    CHECK(table.at("pages").is_null());
}

TEST_CASE("Wrong arguments are refused before anything is read or written") {
    const ScratchFolder folder;
    const std::string file = folder.file("a.pdf");
    const std::vector<std::vector<std::string>> wrong{
        {"sheet", demo_path},
        {"sheet", "-o", file},
        {"sheet", demo_path, "-o", "-"},
        {"sheet", demo_path, "-o", folder.file("a.txt")},
        {"sheet", demo_path, "-o", file, "--paper", "a5"},
        {"sheet", demo_path, "-o", file, "--layout", "both"},
        {"sheet", demo_path, "-o", file, "--base", "example.org"},
        {"sheet", demo_path, "-o", file, "--base", "https://"},
        {"sheet", demo_path, "-o", file, "--base", "https://example.org/a b"},
        {"sheet", folder.file("missing.json"), "-o", file},
    };
    for (const std::vector<std::string>& arguments : wrong) {
        const Run refused = run(arguments);
        INFO(refused.err);
        CHECK(refused.status == exit_trouble);
        CHECK_FALSE(refused.err.empty());
        CHECK(refused.asked.empty());
        CHECK_FALSE(std::filesystem::exists(file));
    }
}

TEST_CASE("The help names the sheet's options and what it ends with, in both languages") {
    for (const char* language : {"en", "es"}) {
        const Run help = run({"sheet", "--help", "--lang", language});
        CHECK(help.status == exit_fit);
        for (const char* option : {"--output", "--paper", "--layout", "--base", "--force", ".csv"})
            CHECK_THAT(help.out, ContainsSubstring(option));
        CHECK_THAT(help.out, ContainsSubstring("1"));
    }
}

TEST_CASE("An address can begin links where it is one of the web and has no spaces") {
    CHECK(usable_link_base("https://example.org/carriageway/"));
    CHECK(usable_link_base("http://localhost:8000"));
    for (const char* base : {"", "https://", "http://", "example.org", "ftp://example.org",
                             "https://a b", "https://a\n", "https://caf\u00E9.example"})
        CHECK_FALSE(usable_link_base(base));
    CHECK(link_on("https://example.org/", "job=1.abc") == "https://example.org/#job=1.abc");
    CHECK(link_on("https://example.org/#old", "job=1.abc") == "https://example.org/#job=1.abc");
    CHECK(link_on("https://example.org/", "").empty());
}
