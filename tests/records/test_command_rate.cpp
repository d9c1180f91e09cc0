// carriageway rate: what it says, reports and ends with.
//
// The demonstration with its stops set: 3 s to load at station 1, 2 s to unload at station 10, a
// flash of 4 s on station 3, and heads that take less. 2 s of index and the flash make a cycle of
// 6 s: 600 pieces, or 50 dozen, an hour.
#include <sstream>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include "app/records/command_line.h"
#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/text/words.h"
#include "core/job_pace.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;
using Json = nlohmann::json;

namespace {

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

Job demonstration() {
    const std::string_view text(reinterpret_cast<const char*>(embedded::demo_job),
                                embedded::demo_job_size);
    ReadJob read = read_job(text);
    REQUIRE(read);
    return std::move(*read.job);
}

/// The demonstration with every stop on its advised graduation, one stroke a piece.
Job job_that_runs() {
    Job job = demonstration();
    Assessment assessment;
    assess(job, assessment);
    const std::optional<Edit> set = set_every_stop(job, assessment);
    REQUIRE(set.has_value());
    REQUIRE(apply(job, *set));
    for (Head& head : job.heads) head.deposit.strokes = 1.0;
    job.press.pace = PressPace{};
    job.handling = Handling{};
    job.run = RunPlan{};
    return job;
}

Json report_of(const Job& job, int status = 0) {
    const Outcome told = run({"rate", "-", "--json"}, write_job(job));
    INFO(told.err);
    REQUIRE(told.status == status);
    return Json::parse(told.out);
}

/// The report on one lever of a station; of the index: station 0.
Json worth_in(const Json& report, int station, const std::string& lever) {
    for (const Json& one : report.at("worth")) {
        const int at = one.at("station").is_null() ? 0 : one.at("station").get<int>();
        if (at == station && one.at("lever") == lever) return one;
    }
    return {};
}

std::string english(Word key) { return std::string(word(Language::english, key)); }

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("rate says how fast the press runs and which station sets it", "[rate]") {
    const Outcome said = run({"rate", "-"}, write_job(job_that_runs()));
    INFO(said.out << said.err);
    CHECK(said.status == 0);
    CHECK(said.err.empty());
    CHECK(has(said.out, "600 pieces an hour · 50 dozen an hour"));
    CHECK(has(said.out, "A piece every 6 s: the table turns for 2 s, "
                        "then station 3's flash takes 4 s."));
    CHECK(has(said.out, "Slowest: Station 3 · flash, 4 s"));
    CHECK(has(said.out, "10 mm less stroke → nothing: station 3's flash is slower by "));
    CHECK(has(said.out, "1 s less under the flash → 120 more pieces an hour"));
    CHECK(has(said.out, "Worth it up to 1 s: then loading at station 1 is as slow."));
    // 9 indexes from station 1 to 10: 109 cycles of 6 s are 654 s.
    CHECK(has(said.out, "100 pieces: 11 min"));
    CHECK(has(said.out, "Heat is worked out with 8 s from piece to piece, the rate comes to 6 s."));
    CHECK(has(said.out, english(Word::caution)));
    // Every station stands in the table.
    for (const char* work : {"Base white", "Line black", "load", "unload", "flash", "cool"})
        CHECK(has(said.out, work));
}

TEST_CASE("the report on a rate has its numbers", "[rate]") {
    const Job job = job_that_runs();
    const Json report = report_of(job);
    CHECK(report["format"] == 1);
    CHECK(report["job"] == job.name);
    CHECK(report["runs"] == true);
    CHECK(report["still_heads"] == Json::array());
    CHECK(report["handling"] == "own_stations");
    CHECK(report["cycle_s"].get<double>() == Approx(6.0));
    CHECK(report["index_s"].get<double>() == Approx(2.0));
    CHECK(report["pieces_an_hour"].get<double>() == Approx(600.0));
    CHECK(report["dozens_an_hour"].get<double>() == Approx(50.0));
    CHECK(report["slowest_stations"] == Json({3}));
    REQUIRE(report["stations"].size() == 10);
    const Json& flash = report["stations"][2];
    CHECK(flash["kind"] == "flash");
    CHECK(flash["colour"].is_null());
    CHECK(flash["slowest"] == true);
    CHECK(flash["waits_s"].get<double>() == Approx(0.0));
    const Json& head = report["stations"][4];
    CHECK(head["kind"] == "print");
    CHECK(head["colour"] == "Sail yellow");
    std::string order;
    double at = 2.0, sum = 0.0;
    for (const Json& step : head["steps"]) {
        order += step["kind"].get<std::string>() + " ";
        CHECK(step["start_s"].get<double>() == Approx(at).margin(1e-5));
        at += step["length_s"].get<double>();
        sum += step["length_s"].get<double>();
    }
    CHECK(order == "lower drop flood drop print lift ");
    CHECK(head["seconds"].get<double>() == Approx(sum).margin(1e-5));
    CHECK(head["waits_s"].get<double>() == Approx(4.0 - sum).margin(1e-5));
    const Json stroke = worth_in(report, 5, "stroke_mm");
    CHECK(stroke["verdict"] == "another_slower");
    CHECK(stroke["held_by_stations"] == Json({3}));
    CHECK(stroke["gain_pieces_an_hour"].get<double>() == 0.0);
    const Json dwell = worth_in(report, 3, "seconds");
    CHECK(dwell["verdict"] == "gains");
    CHECK(dwell["gain_pieces_an_hour"].get<double>() == Approx(120.0));
    CHECK(dwell["until"].get<double>() == Approx(-1.0));
    CHECK(dwell["next_stations"] == Json({1}));
    // An index a second shorter: 3600/5.
    CHECK(worth_in(report, 0, "index_s")["gain_pieces_an_hour"].get<double>() == Approx(120.0));
    CHECK(report["shortest_strokes"]["gain_pieces_an_hour"].get<double>() == 0.0);
    // The flash is exact and the index within 5 %.
    CHECK(report["range"]["slowest"]["cycle_s"].get<double>() == Approx(6.1));
    CHECK(report["range"]["fastest"]["cycle_s"].get<double>() == Approx(5.9));
    CHECK(report["run"]["pieces_only_s"].get<double>() == Approx(600.0));
    CHECK(report["run"]["with_filling_s"].get<double>() == Approx(654.0));
    CHECK(report["run"]["first_piece_s"].get<double>() == Approx(60.0));
    CHECK(report["heat_cycle_s"].get<double>() == Approx(8.0));
    Job followed = job;
    const ReadEdit edit = read_edit(report["heat_cycle_edit"].dump());
    REQUIRE(edit);
    REQUIRE(apply(followed, *edit.edit));
    CHECK(followed.run.cycle == 6.0);
    CHECK(report_of(followed)["heat_cycle_edit"].is_null());
}

TEST_CASE("rate ends with 1 and names the head whose both sensors are on", "[rate]") {
    const Job job = demonstration(); // its head on station 6 has them
    const Outcome said = run({"rate", "-"}, write_job(job));
    CHECK(said.status == 1);
    CHECK(said.err.empty());
    CHECK(has(said.out, english(Word::rate_none)));
    CHECK(has(said.out, "Head 6 · Crest red: both sensors are on"));
    CHECK_FALSE(has(said.out, "pieces an hour"));
    const Json report = report_of(job, 1);
    CHECK(report["runs"] == false);
    CHECK(report["still_heads"] ==
          Json::array({{{"station", 6}, {"colour", "Crest red"}, {"both_sensors_on", true}}}));
    CHECK_FALSE(report.contains("pieces_an_hour"));
    // Moved apart, it runs.
    CHECK(run({"rate", "-"}, write_job(job_that_runs())).status == 0);
}

TEST_CASE("rate says where handling is counted when no station is set for it", "[rate]") {
    Job job = job_that_runs();
    for (StationUse& use : job.uses)
        if (use == StationUse::load || use == StationUse::unload) use = StationUse::open;
    const Outcome said = run({"rate", "-"}, write_job(job));
    CHECK(said.status == 0);
    CHECK(has(said.out, "both are counted at station 1, the first open one"));
    const Json report = report_of(job);
    CHECK(report["handling"] == "open_station");
    CHECK(report["stations"][0]["kind"] == "load_and_unload");
    CHECK(report["stations"][0]["seconds"].get<double>() == Approx(5.0));
    CHECK(report["pieces_an_hour"].get<double>() == Approx(3600.0 / 7.0).margin(1e-5));
}

TEST_CASE("rate speaks Spanish and inches", "[rate]") {
    const std::string job = write_job(job_that_runs());
    const Outcome spanish = run({"rate", "-", "--lang", "es"}, job);
    CHECK(spanish.status == 0);
    CHECK(has(spanish.out, "600 piezas por hora · 50 docenas por hora"));
    CHECK(has(spanish.out, "nada: el presecado de la estación 3 tarda "));
    CHECK(has(spanish.out, "Lo más lento: Estación 3 · presecado, 4 s"));
    CHECK_FALSE(has(spanish.out, "stroke"));
    CHECK(run({"rate", "-", "--lang", "es"}, write_job(demonstration())).status == 1);
    const Outcome inches = run({"rate", "-", "--units", "in"}, job);
    CHECK(has(inches.out, "0.39 in less stroke")); // 10 mm
    CHECK_FALSE(has(inches.out, " mm"));
}

TEST_CASE("rate ends with 2 where there is no job, and its help says what it ends with", "[rate]") {
    const ScratchFolder folder;
    CHECK(run({"rate", folder.file("none.json")}).status == 2);
    CHECK(run({"rate", "-"}, "no job").status == 2);
    CHECK(run({"rate"}).status == 2);
    CHECK(run({"rate", "-", "-"}).status == 2);
    for (const Language language : {Language::english, Language::spanish}) {
        const char* name = language == Language::english ? "en" : "es";
        const Outcome help = run({"rate", "--help", "--lang", name});
        CHECK(help.status == 0);
        CHECK(has(help.out, std::string(word(language, Word::command_status_rate))));
        CHECK_FALSE(has(help.out, std::string(word(language, Word::command_status_done))));
        const Outcome all = run({"--help", "--lang", name});
        CHECK(has(all.out, std::string(word(language, Word::does_rate))));
    }
}
