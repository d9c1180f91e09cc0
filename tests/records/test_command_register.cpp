// carriageway register: what it says, reports and ends with.
#include <sstream>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/text/words.h"
#include "core/edit.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;
using Json = nlohmann::json;

namespace {

const std::string headings = "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm\n";
const std::string print_headings =
    "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen,turn\n";
// Four marks of a print that lies 1 mm to the right, unturned.
const std::string moved =
    headings + "-150,-200,-149,-200\n150,-200,151,-200\r\n150,200,151,200\n\"-150\",200,-149,200";

struct Outcome {
    int status;
    std::string out;
    std::string err;
};

Outcome run(const std::vector<std::string>& arguments, const std::string& input = {}) {
    std::istringstream in(input);
    std::ostringstream out, err;
    const CommandServices services{
        in,       out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"},
        {"null"}, {},  {},  {}};
    const CommandOutcome outcome = run_command_line(arguments, services);
    return {outcome.status, out.str(), err.str()};
}

/// The report on marks that are given on standard input.
Json report_of(const std::string& marks, std::vector<std::string> more = {}, int status = 1) {
    more.insert(more.begin(), {"register", "-", "--json"});
    const Outcome told = run(more, marks);
    INFO(told.err);
    REQUIRE(told.status == status);
    return Json::parse(told.out);
}

std::string file_of(const ScratchFolder& folder, const std::string& text,
                    const std::string& name = "marks.csv") {
    const std::string path = folder.file(name);
    write_bytes(path, text);
    return path;
}

Job demonstration() {
    const std::string_view text(reinterpret_cast<const char*>(embedded::demo_job),
                                embedded::demo_job_size);
    ReadJob read = read_job(text);
    REQUIRE(read);
    return std::move(*read.job);
}

std::string english(Word key) { return std::string(word(Language::english, key)); }

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// Prints of four platens over four turns; platen 3 lies `off` mm toward the machine, all of them
/// `all` mm. The scatter is a fixed pattern.
std::string prints(double off, double all) {
    std::string text = print_headings;
    for (int turn = 1; turn <= 4; ++turn)
        for (int platen = 1; platen <= 4; ++platen) {
            const double wobble = 0.01 * ((turn * 7 + platen * 3) % 5 - 2);
            const double y = (platen == 3 ? off : 0.0) + all + wobble;
            for (const double x : {-150.0, 150.0})
                text += std::to_string(x) + ",0," + std::to_string(x + wobble) + "," +
                        std::to_string(y) + "," + std::to_string(platen) + "," +
                        std::to_string(turn) + "\n";
        }
    return text;
}

} // namespace

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
        // The print lies 1 mm to the right, so the screen goes 1 mm to the left: on the
        // demonstration's press the one across moves it left clockwise, 1.25 mm a turn.
        const bool across = screw["name"] == "Across";
        CHECK(screw["turns_clockwise"].get<double>() == Approx(across ? 0.8 : 0.0).margin(1e-4));
    }
    CHECK(report["advice"]["predicted_max_mm"].get<double>() < 0.06);
    // In Spanish, and within tolerance.
    const Outcome fine =
        run({"register", file_of(folder, headings + "-150,-200,-149.95,-200\n150,200,150,200.05\n"),
             "--lang", "es"});
    CHECK(fine.status == 0);
}

TEST_CASE("register ends with 0 within the job's tolerance, and with 1 beyond it", "[marks]") {
    // The demonstration allows 0.3 mm.
    // Toward the operator: -200.29, and 199.71 of 200; then 0.31.
    CHECK(report_of(headings + "-150,-200,-150,-200.29\n150,200,150,199.71\n", {}, 0)["verdict"] ==
          "within");
    const Json turn = report_of(headings + "-150,-200,-150,-200.31\n150,200,150,199.69\n");
    CHECK(turn["verdict"] == "turn");
    CHECK(turn.dump().find("-0.0,") == std::string::npos);
    CHECK(turn["within_tolerance"] == false);
    CHECK(turn["tolerance_mm"].get<double>() == Approx(0.3));
    // Grown along by 2 mm per m: beyond it, though there is nothing to turn.
    const std::string grown = headings +
                              "-150,-200,-150,-200.4\n150,-200,150,-200.4\n"
                              "150,200,150,200.4\n-150,200,-150,200.4\n";
    const Json leave = report_of(grown);
    CHECK(leave["verdict"] == "leave");
    CHECK(leave["advice"]["settled"] == true);
    CHECK(leave["growth_along"]["stands_out"] == true);
    CHECK(leave["likely_causes"] == Json({"drag", "off_contact", "tension"}));
    const Outcome said = run({"register", "-"}, grown);
    CHECK(said.status == 1);
    CHECK(has(said.out, english(Word::reg_settled)));
    // Prints of several platens: the farthest mark of all counts.
    CHECK(run({"register", "-"}, prints(0.0, 0.0)).status == 0);
    CHECK(run({"register", "-"}, prints(0.0, 1.0)).status == 1);
}

TEST_CASE("register takes out the shift that marks too close for a turn show", "[marks]") {
    const std::string close = headings + "-2,-2,0,-2\n2.03,2.03,4.03,2.03\n";
    const Json report = report_of(close);
    CHECK(report["verdict"] == "turn");
    CHECK(report["advice"]["shift_only"] == true);
    // √2·(0.05/√3)·2·370/0.3, for the screw across at y = -370: 100.7 mm.
    CHECK(report["advice"]["least_apart_mm"].get<double>() == Approx(100.7).margin(0.1));
    for (const Json& screw : report["advice"]["adjusters"]) {
        const bool across = screw["name"] == "Across";
        CHECK(screw["turns_clockwise"].get<double>() == Approx(across ? 1.6 : 0.0).margin(1e-6));
        // 0.05/√3 by √2 marks, over 1.25 mm a turn.
        CHECK(screw["turns_deviation"].get<double>() == Approx(0.01633).margin(1e-5));
    }
    const Outcome said = run({"register", "-"}, close);
    CHECK(has(said.out, "only the shift is taken out. Marks 101"));
    const Json single = report_of(headings + "0,0,2,0\n");
    CHECK(single["rotation_deg"].is_null());
    CHECK(single["rotation_deviation_deg"].is_null());
    CHECK(single["advice"]["shift_only"] == true);
}

TEST_CASE("register reports how well it knows", "[marks]") {
    const Json report = report_of(moved);
    // σ = 0.05/√3 mm of four marks, Σr² = 4·(150² + 200²) mm².
    CHECK(report["rotation_deviation_deg"].get<double>() ==
          Approx(0.0288675 / 500.0 * 57.29578).margin(2e-6));
    // The print's middle is 1 mm from the origin, which adds next to nothing.
    CHECK(report["x_deviation_mm"].get<double>() == Approx(0.0288675 / 2.0).margin(2e-6));
    CHECK(report["likely_causes"] == Json::array());
    CHECK(report["advice"]["least_apart_mm"].is_null());
    CHECK(report["station"].is_null());
    CHECK(report["round"] == 1);
    CHECK(report["progress"] == "none");
}

TEST_CASE("register says lengths in inches where it is asked to", "[marks]") {
    const Outcome said = run({"register", "-", "--units", "in"}, moved);
    CHECK(said.status == 1);
    CHECK(has(said.out, "0.039 in")); // 1 mm
    CHECK(has(said.out, "0.012 in")); // 0.3 mm
    CHECK_FALSE(has(said.out, " mm"));
    // A report has mm in the names of its keys, whatever is asked.
    CHECK(report_of(moved, {"--units", "in"}) == report_of(moved));
}

TEST_CASE("register takes press and tolerance from a job", "[marks]") {
    const ScratchFolder folder;
    Job job = demonstration();
    job.registration.tolerance = 1.5;
    job.press.name = "Another press";
    for (Adjuster& one : job.press.adjusters) one.mm_per_turn = 2.0;
    const std::string path = file_of(folder, write_job(job), "job.json");
    const Json fine = report_of(moved, {"--job", path}, 0);
    CHECK(fine["press"] == "Another press");
    CHECK(fine["tolerance_mm"].get<double>() == Approx(1.5));
    CHECK(fine["advice"]["adjusters"][2]["turns_clockwise"].get<double>() == Approx(0.5));
    CHECK(run({"register", file_of(folder, moved), "--job", "-"}, write_job(job)).status == 0);
    CHECK(run({"register", "-", "--job", folder.file("none.json")}, moved).status == 2);
    const Outcome both = run({"register", "-", "--job", "-"}, moved);
    CHECK(both.status == 2);
    CHECK(has(both.err, "MARKS"));
    CHECK(has(both.err, "--job"));
    // Adjusters that can't be: which, and why.
    job.press.adjusters[1].side = job.press.adjusters[0].side;
    const Outcome wrong = run({"register", "-", "--job", "-"}, write_job(job));
    CHECK(wrong.status == 2);
}

TEST_CASE("register judges marks with the head's earlier rounds", "[marks]") {
    const ScratchFolder folder;
    Job job = demonstration();
    // The first round was 1 mm to the right; three quarters of a turn at the screw across should
    // have taken out 0.94 of it, but the print now lies 1.94 mm to the right.
    MarkRound first;
    for (const double x : {-150.0, 150.0})
        for (const double y : {-200.0, 200.0}) first.marks.push_back({{x, y}, {x + 1.0, y}});
    first.turned = {0.0, 0.0, 0.75};
    apply(job, Edit{SetRounds{head_on(job, 5)->id, {first}}});
    apply(job, Edit{SetRounds{head_on(job, 6)->id, {}}});
    const std::string path = file_of(folder, write_job(job), "job.json");
    const std::string worse = headings +
                              "-150,-200,-148.06,-200\n150,-200,151.94,-200\n"
                              "150,200,151.94,200\n-150,200,-148.06,200\n";
    const Json report = report_of(worse, {"--job", path, "--head", "5"});
    CHECK(report["station"] == 5);
    CHECK(report["round"] == 2);
    CHECK(report["progress"] == "diverging");
    REQUIRE(report["measured_adjusters"].size() == 1);
    const Json& across = report["measured_adjusters"][0];
    CHECK(across["name"] == "Across");
    CHECK(across["sign_wrong"] == true);
    CHECK(across["mm_per_turn_clockwise"].get<double>() == Approx(0.94 / 0.75).margin(1e-6));
    const Outcome said = run({"register", "-", "--job", path, "--head", "5"}, worse);
    CHECK(said.status == 1);
    CHECK(has(said.out, english(Word::reg_progress_diverging)));
    CHECK(has(said.out, "Sail yellow"));
    // Another head knows nothing of that round.
    CHECK(report_of(worse, {"--job", path, "--head", "6"})["round"] == 1);
    for (const char* bad : {"0", "65", "2.5", "five"}) {
        const Outcome refused = run({"register", "-", "--head", bad}, moved);
        CHECK(refused.status == 2);
        CHECK(has(refused.err, "--head"));
    }
    CHECK(run({"register", "-", "--head", "1"}, moved).status == 2); // no head stands there
    const Outcome prints_of_one = run({"register", "-", "--head", "5"}, prints(1.0, 0.0));
    CHECK(prints_of_one.status == 2);
    CHECK(has(prints_of_one.err, english(Word::register_head_one_print)));
}

TEST_CASE("register refuses marks that can't be right, with the reason", "[marks]") {
    const ScratchFolder folder;
    const auto refused = [](const std::string& marks) {
        const Outcome outcome = run({"register", "-"}, headings + marks);
        CHECK(outcome.status == 2);
        CHECK(outcome.out.empty());
        CHECK(has(outcome.err, english(Word::standard_input)));
        return outcome.err;
    };
    // Left and right exchanged.
    const std::string mirrored =
        "-150,-200,150,-200\n150,-200,-150,-200\n150,200,-150,200\n-150,200,150,200\n";
    CHECK(has(refused(mirrored), english(Word::reg_fault_mirrored)));
    // 1 mm apart; 100·√2·0.05/√3 is 4.08 mm, rounded up.
    CHECK(has(refused("0,0,0,0\n1,0,1,0.1\n"), "Put them 5 mm apart or more."));
    const Outcome named = run({"register", file_of(folder, headings + mirrored)});
    CHECK(named.status == 2);
    CHECK(has(named.err, "marks.csv"));
    CHECK(run({"register", folder.file("nothing.csv")}).status == 2);
    const Outcome number = run({"register", "-"}, headings + "0,0,0,0\n1,2,x,4\n");
    CHECK(number.status == 2);
    CHECK(has(number.err, "Line 3, character 5"));
    CHECK(run({"register", "-"}, "").status == 2);
    CHECK(run({"register", "-"}, std::string(1024 * 1024 + 1, ' ')).status == 2);
    CHECK(run({"register"}).status == 2);
}

TEST_CASE("register tells head, platen and scatter apart", "[marks]") {
    // Platen 3 stands 1 mm toward the machine.
    const std::string text = prints(1.0, 0.0);
    const Json report = report_of(text);
    REQUIRE(report["platens"].size() == 4);
    CHECK(report["platens"][2]["platen"] == 3);
    CHECK(report["platens"][2]["y_mm"].get<double>() == Approx(1.0).margin(0.03));
    // The head is what the three good platens say.
    CHECK(report["head"]["y_mm"].get<double>() == Approx(0.0).margin(0.03));
    CHECK(report["error_max_mm"].get<double>() == Approx(1.0).margin(0.05));
    CHECK(report["within_tolerance"] == false);
    CHECK(report["signs"] == Json::array({{{"kind", "platen_off"}, {"platen", 3}}}));
    CHECK(has(run({"register", "-"}, text).out, "Platen 3"));
    CHECK(report_of(prints(0.0, 0.0), {}, 0)["signs"] == Json::array());
    // All platens alike and 2 mm off: that is no scatter, but the head.
    const Outcome off = run({"register", "-"}, prints(0.0, 2.0));
    CHECK(off.status == 1);
    CHECK(has(off.out, english(Word::scatter_head_off)));
    CHECK_FALSE(has(off.out, english(Word::scatter_nothing)));
}

TEST_CASE("the help of register says what it reads and ends with", "[marks]") {
    for (const char* language : {"en", "es"}) {
        const Outcome help = run({"register", "--help", "--lang", language});
        CHECK(help.status == 0);
        CHECK(has(help.out, "--head"));
        CHECK(has(help.out, "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm"));
        CHECK(has(help.out,
                  word(language == std::string("en") ? Language::english : Language::spanish,
                       Word::command_status_register)
                      .data()));
    }
}
