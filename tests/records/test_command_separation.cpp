// carriageway separation.
#include <fstream>
#include <iterator>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/exchange.h"
#include "tests/records/made_png.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::tests;

namespace {

const std::string demo_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

struct Run {
    int status;
    std::string out;
    std::string err;
};

Run run(const std::vector<std::string>& arguments) {
    std::istringstream in;
    std::ostringstream out, err;
    const CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm,
                                   {"press"}, {"null"}, {}, {}, {}};
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str()};
}

/// A film of 200 by 100 mm with ink on its left half.
std::string film(const ScratchFolder& folder) {
    MadePng made;
    made.width = 400;
    made.height = 200;
    made.dots_per_inch = 50.8;  // half a millimetre a pixel
    made.grey = [](int x, int) { return x < 200 ? 0 : 255; };
    write_bytes(folder.file("film.png"), made_png(made));
    return folder.file("film.png");
}

}  // namespace

TEST_CASE("separation tells size, ink and share of each picture", "[separation]") {
    ScratchFolder folder;
    const std::string path = film(folder);
    const Run plain = run({"separation", path});
    CHECK(plain.status == exit_fit);
    CHECK(plain.err.empty());
    CHECK(plain.out == path + ": picture 200 mm × 100 mm, 400 × 200 pixels; ink 100 mm × 100 mm, "
                              "100 % of its outline printed, 4 corners\n");
    const Run typed = run({"separation", path, "--width", "400", "--json"});
    const nlohmann::json report = nlohmann::json::parse(typed.out);
    const nlohmann::json& one = report.at("pictures").at(0);
    CHECK(one.at("width_mm") == 400.0);
    CHECK(one.at("ink_across_mm") == nlohmann::json{-200.0, 0.0});
    CHECK(one.at("ink_along_mm") == nlohmann::json{-100.0, 100.0});
    CHECK(one.at("ink_area_mm2") == 40000.0);
    CHECK(one.at("printed_share") == 1.0);
    CHECK(one.at("outline_mm").size() == 4);
    // One that can't be read doesn't keep the others from being told.
    const Run two = run({"separation", demo_path, path});
    CHECK(two.status == exit_trouble);
    CHECK(two.err.find("carriageway: " + demo_path + ": This is no picture") == 0);
    CHECK(two.out == plain.out);
    CHECK(run({"separation", folder.file("none.png")}).err.find("no such file") != std::string::npos);
    CHECK(run({"separation", path, "--width", "20 in"}).out.find("508 mm × 254 mm") != std::string::npos);
}

TEST_CASE("separation makes a picture the image of a head, where that image lies", "[separation]") {
    ScratchFolder folder;
    const std::string path = film(folder), out = folder.file("out.json");
    const ReadJob before = read_job(bytes_of(demo_path));
    REQUIRE(before);
    const Head& head = before.job->heads.front();
    const std::string station = std::to_string(head.station);
    const Run set = run({"separation", path, "--into", demo_path, "--head", station, "-o", out});
    CHECK(set.err.empty());
    CHECK(set.status == exit_fit);
    const ReadJob after = read_job(bytes_of(out));
    REQUIRE(after);
    const Image& image = after.job->heads.front().image;
    CHECK(bounds_of(image.outline) == Rect{-100.0, 0.0, -50.0, 50.0});
    CHECK(image.offset_x == head.image.offset_x);
    CHECK(image.offset_y == head.image.offset_y);
    CHECK(image.rotation == head.image.rotation);
    CHECK(after.job->heads.front().deposit.printed_share == 1.0); // a full rectangle
    // Nothing else has changed.
    Job expected = *before.job;
    expected.heads.front().image = image;
    expected.heads.front().deposit.printed_share = 1.0;
    CHECK(*after.job == expected);
    // A file that exists stays.
    CHECK(run({"separation", path, "--into", demo_path, "--head", station, "-o", out}).status == exit_trouble);
    // The job alone on standard output.
    const Run streamed = run({"separation", path, "--into", demo_path, "--head", station, "-o", "-"});
    CHECK(streamed.out == bytes_of(out));
    CHECK(streamed.err.find("picture 200 mm") != std::string::npos);
}

TEST_CASE("separation refuses arguments that don't go together", "[separation]") {
    ScratchFolder folder;
    const std::string path = film(folder), out = folder.file("out.json");
    const std::vector<std::vector<std::string>> wrong{
        {"separation"},
        {"separation", path, "--width", "wide"},
        {"separation", path, "--width", "0"},
        {"separation", path, "--width", "6000"},
        {"separation", path, "--head", "1"},
        {"separation", path, "-o", out},
        {"separation", path, "--into", demo_path, "-o", out},
        {"separation", path, "--into", demo_path, "--head", "1"},
        {"separation", path, path, "--into", demo_path, "--head", "1", "-o", out},
        {"separation", path, "--into", demo_path, "--head", "1.5", "-o", out},
        {"separation", path, "--into", demo_path, "--head", "99", "-o", out},
        {"separation", path, "--into", folder.file("none.json"), "--head", "1", "-o", out},
    };
    for (const auto& arguments : wrong) {
        std::string line;
        for (const std::string& one : arguments) line += one + ' ';
        INFO(line);
        const Run refused = run(arguments);
        CHECK(refused.status == exit_trouble);
        CHECK_FALSE(refused.err.empty());
        CHECK(bytes_of(out).empty());
    }
    CHECK(run({"separation", "--help"}).out.find("--width LENGTH") != std::string::npos);
    CHECK(run({"--help"}).out.find("separation PICTURE...") != std::string::npos);
}
