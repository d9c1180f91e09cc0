// carriageway register, and the files of marks that it reads.
#include <sstream>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/mark_file.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;
using Kind = MarkFileFault::Kind;

namespace {

const std::string headings = "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm\n";
// Four marks of a print that lies 1 mm to the right, unturned.
const std::string moved = headings + "-150,-200,-149,-200\n150,-200,151,-200\r\n150,200,151,200\n\"-150\",200,-149,200";

struct Outcome {
    int status;
    std::string out;
    std::string err;
};

Outcome run(const std::vector<std::string>& arguments) {
    std::istringstream in;
    std::ostringstream out, err;
    const CommandServices services{in, out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"}, {"null"}, {}, {}, {}};
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str()};
}

std::string file_of(const ScratchFolder& folder, const std::string& text) {
    const std::string path = folder.file("marks.csv");
    write_bytes(path, text);
    return path;
}

} // namespace

TEST_CASE("marks are read with quotes, both line ends and a byte order mark", "[marks]") {
    const ReadMarks read = read_marks("\xEF\xBB\xBF" + moved);
    REQUIRE(read);
    REQUIRE(read.rounds.size() == 1);
    REQUIRE(read.rounds.front().marks.size() == 4);
    CHECK(read.rounds.front().marks[3].nominal.x == -150.0);
    CHECK(read.rounds.front().marks[3].measured.x == -149.0);
    CHECK_FALSE(read.by_platen);
    // Columns in another order, with platen and turn: a print each.
    const ReadMarks prints = read_marks(
        "turn,platen,measured_x_mm,measured_y_mm,nominal_x_mm,nominal_y_mm\n1,1,0.1,0,0,0\n1,2,0.2,0,0,0\n1,1,100.1,0,100,0\n");
    REQUIRE(prints);
    CHECK(prints.by_platen);
    REQUIRE(prints.rounds.size() == 2);
    CHECK(prints.rounds[0].marks.size() == 2);
    CHECK(prints.rounds[1].platen == 2);
}

TEST_CASE("what isn't understood is refused with its line", "[marks]") {
    struct Case {
        std::string text;
        Kind kind;
        std::size_t line;
    };
    const Case cases[] = {
        {"", Kind::no_marks, 0},
        {headings, Kind::no_marks, 0},
        {"x,y\n1,2\n", Kind::heading, 1},
        {"nominal_x_mm,nominal_x_mm\n", Kind::heading, 1},
        {"nominal_x_mm,nominal_y_mm,measured_x_mm\n1,2,3\n", Kind::missing_column, 1},
        {"nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen\n1,2,3,4,5\n", Kind::missing_column, 1},
        {headings + "1,2,3\n", Kind::columns, 2},
        {headings + "1,2,3,4,5\n", Kind::columns, 2},
        {headings + "1,2,3,4\n1,2,three,4\n", Kind::number, 3},
        {headings + "1,2,3,4\n\n1,2,,4\n", Kind::number, 4},
        {headings + "1,2,1/2,4\n", Kind::number, 2},
        {headings + "1,2,nan,4\n", Kind::number, 2},
        {headings + "1,2,1e9,4\n", Kind::out_of_range, 2},
        {headings + "1,2,\"3,4\n", Kind::quote, 2},
        {headings + "1,2,3\",4\n", Kind::quote, 2},
        {headings + "1,2,\"3\"x,4\n", Kind::quote, 2},
        {headings + "1,2,\xFF,4\n", Kind::not_utf8, 0},
        {"nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen,turn\n1,2,3,4,1.5,1\n", Kind::whole, 2},
        {"nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen,turn\n1,2,3,4,0,1\n", Kind::whole, 2},
        {std::string(largest_mark_file + 1, ' '), Kind::too_large, 0},
    };
    for (const Case& one : cases) {
        INFO(one.text.substr(0, 120));
        const ReadMarks read = read_marks(one.text);
        CHECK(read.fault.kind == one.kind);
        CHECK(read.fault.line == one.line);
        CHECK(read.rounds.empty());
        for (const Language language : {Language::english, Language::spanish})
            CHECK(fault_sentence(language, read.fault).size() > 15);
    }
    std::string many = headings;
    for (std::size_t i = 0; i <= most_marks_a_round; ++i) many += "1,2,3,4\n";
    CHECK(read_marks(many).fault.kind == Kind::too_many);
}

TEST_CASE("register says what to turn, in words and as a report", "[marks]") {
    const ScratchFolder folder;
    const std::string path = file_of(folder, moved);
    const Outcome said = run({"register", path});
    CHECK(said.status == 1);
    CHECK(said.out.find("Across") != std::string::npos);
    CHECK(said.err.empty());
    const Outcome told = run({"register", path, "--json"});
    REQUIRE(told.status == 1);
    const nlohmann::json report = nlohmann::json::parse(told.out);
    CHECK(report["x_mm"].get<double>() == Approx(1.0).margin(1e-6));
    CHECK(report["rotation_deg"].get<double>() == Approx(0.0).margin(1e-6));
    for (const auto& screw : report["advice"]["adjusters"]) {
        // The print lies 1 mm to the right, so the screen goes 1 mm to the left: on the demonstration's
        // press the one across moves it left clockwise, 1.25 mm a turn.
        const bool across = screw["name"] == "Across";
        CHECK(screw["turns_clockwise"].get<double>() == Approx(across ? 0.8 : 0.0).margin(1e-4));
    }
    CHECK(report["advice"]["predicted_max_mm"].get<double>() < 0.06);
    // In Spanish, and within tolerance.
    const Outcome fine = run({"register", file_of(folder, headings + "-150,-200,-149.95,-200\n150,200,150,200.05\n"), "--lang", "es"});
    CHECK(fine.status == 0);
}

TEST_CASE("register refuses marks that can't be right, with the reason", "[marks]") {
    const ScratchFolder folder;
    // Left and right exchanged.
    const Outcome mirrored = run({"register", file_of(folder, headings + "-150,-200,150,-200\n150,-200,-150,-200\n150,200,-150,200\n-150,200,150,200\n")});
    CHECK(mirrored.status == 2);
    CHECK(mirrored.err.find("marks.csv") != std::string::npos);
    CHECK(mirrored.err.size() > 40);
    const Outcome close = run({"register", file_of(folder, headings + "0,0,0,0\n1,0,1,0.1\n")});
    CHECK(close.status == 2);
    const Outcome gone = run({"register", folder.file("nothing.csv")});
    CHECK(gone.status == 2);
}

TEST_CASE("register tells head, platen and scatter apart", "[marks]") {
    const ScratchFolder folder;
    std::string text = "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen,turn\n";
    // Platen 3 stands 1 mm toward the machine; small scatter from a fixed pattern.
    for (int turn = 1; turn <= 4; ++turn)
        for (int platen = 1; platen <= 4; ++platen) {
            const double wobble = 0.01 * ((turn * 7 + platen * 3) % 5 - 2);
            const double off = (platen == 3 ? 1.0 : 0.0) + wobble;
            for (const double x : {-150.0, 150.0})
                text += std::to_string(x) + ",0," + std::to_string(x + wobble) + "," + std::to_string(off) + "," +
                        std::to_string(platen) + "," + std::to_string(turn) + "\n";
        }
    const Outcome told = run({"register", file_of(folder, text), "--json"});
    REQUIRE(told.status == 1);
    const nlohmann::json report = nlohmann::json::parse(told.out);
    REQUIRE(report["platens"].size() == 4);
    CHECK(report["platens"][2]["platen"] == 3);
    CHECK(report["platens"][2]["y_mm"].get<double>() == Approx(0.75).margin(0.03));
    CHECK(report["head"]["y_mm"].get<double>() == Approx(0.25).margin(0.03));
    REQUIRE(report["signs"].size() >= 1);
    CHECK(run({"register", file_of(folder, text)}).out.find("Platen 3") != std::string::npos);
}
