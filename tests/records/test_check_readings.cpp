// What carriageway check says of marks, heights and heat.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "app/records/command_line.h"
#include "app/records/exchange.h"
#include "app/text/registration_sentences.h"
#include "core/assess.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;
using Json = nlohmann::json;

namespace {

const std::string read_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-register.json";
const std::string bare_path = CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json";

struct Told {
    int status;
    std::string out;
};

Told check(const std::string& source, std::vector<std::string> more = {},
           const std::string& input = {}) {
    std::istringstream in(input);
    std::ostringstream out, err;
    const CommandServices services{
        in,       out, err, "0.0-test", Language::english, LengthUnit::mm, {"press"},
        {"null"}, {},  {},  {}};
    more.insert(more.begin(), {"check", source});
    const CommandOutcome outcome = run_command_line(more, services);
    INFO(err.str());
    REQUIRE(err.str().empty());
    return {outcome.status, out.str()};
}

Job job_of(const std::string& path) {
    const ReadJob read = read_job(bytes_of(path));
    REQUIRE(read.job.has_value());
    return *read.job;
}

/// The report on a job that is given on standard input.
Json report_on(const Job& job) { return Json::parse(check("-", {"--json"}, write_job(job)).out); }

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

const Json& on_station(const Json& list, int station) {
    for (const Json& one : list)
        if (one.at("station") == station) return one;
    FAIL("no station " << station);
    return list;
}

} // namespace

TEST_CASE("check says what was read at the press, and ends as the heads do", "[check]") {
    const Told told = check(read_path);
    Assessment assessment;
    assess(job_of(read_path), assessment);
    CHECK(told.status == (assessment.fit ? 0 : 1));
    INFO(told.out);
    // The demonstration's third platen is low at the machine side, by marks and by heights.
    CHECK(has(told.out, "Head 7 · Lake blue: Something stands out of the scatter"));
    CHECK(has(told.out, "Platen 3 stands off the others"));
    CHECK(has(told.out, "Head 8 · Reed green: "));
    // Both its ways are off by 0.25 mm: 0.354 in all.
    CHECK(has(told.out, "The farthest mark is 0.35 mm off"));
    CHECK(has(told.out, "  Platen 3 is out\n"
                        "      Worst: Platen 3, 0.91 mm too low at the machine side."));
    CHECK(has(told.out, "  Platen 4: within 0.2 mm\n"));
    CHECK(has(told.out, "  Head 2 · Base white: within 0.2 mm\n"));
    CHECK(has(told.out, "Before hands go under an arm"));
    // Hand-worked in tests/core/test_job_heat.cpp from the same numbers.
    CHECK(has(told.out, "Steady at 45 °C from turn 17"));
    const Told spanish = check(read_path, {"--lang", "es"});
    CHECK(has(spanish.out, "Palet 3: desnivelado"));
    CHECK(has(spanish.out, "Estable a 45 °C desde la vuelta 17"));
}

TEST_CASE("check --json has a head's last round, or what its prints by platen come to", "[check]") {
    const Json report = Json::parse(check(read_path, {"--json"}).out);
    const Json& round = on_station(report.at("heads"), 8).at("registration");
    CHECK(round.at("rounds") == 2);
    CHECK(round.at("by_platen") == false);
    CHECK(round.at("error_max_mm").get<double>() == Approx(std::sqrt(0.125)).margin(1e-6));
    CHECK(round.at("tolerance_mm").get<double>() == 0.3);
    CHECK(round.at("within_tolerance") == false);
    const Job job = job_of(read_path);
    for (const Head& head : job.heads) {
        if (head.station != 8) continue;
        const HeadRegistration result =
            register_head(job.press, head.rounds, 1, job.registration.tolerance);
        CHECK((round.at("verdict") == "turn") == (result.verdict == RegistrationVerdict::turn));
        const auto& screws = std::get<Advice>(*result.advice).screws;
        REQUIRE(round.at("adjusters").size() == screws.size());
        for (std::size_t i = 0; i < screws.size(); ++i)
            CHECK(round.at("adjusters")[i].at("graduations_clockwise") == screws[i].graduations);
    }
    const Json& prints = on_station(report.at("heads"), 7).at("registration");
    CHECK(prints.at("by_platen") == true);
    CHECK(prints.at("verdict").is_null());
    CHECK(prints.at("adjusters").empty());
    // The farthest: (-120, -82) printed at (-119.47, -82.16).
    CHECK(prints.at("error_max_mm").get<double>() ==
          Approx(std::hypot(0.53, 0.16)).margin(1e-6));
    REQUIRE(prints.at("signs").size() == 1);
    CHECK(prints.at("signs")[0].at("kind") == "platen_off");
    CHECK(prints.at("signs")[0].at("platen") == 3);
    CHECK_FALSE(on_station(report.at("heads"), 2).contains("registration"));
}

TEST_CASE("check --json has levels and heat", "[check]") {
    const Json report = Json::parse(check(read_path, {"--json"}).out);
    const Json& levelling = report.at("levelling");
    CHECK(levelling.at("refused").is_null());
    CHECK(levelling.at("tolerance_mm").get<double>() == 0.2);
    CHECK(levelling.at("strays").empty());
    CHECK(levelling.at("settled") == true);
    REQUIRE(levelling.at("heads").size() == 2);
    for (const Json& head : levelling.at("heads")) {
        CHECK(head.at("known") == "plane");
        CHECK(head.at("out") == false);
    }
    CHECK(levelling.at("heads")[0].at("station") == 2);
    CHECK(levelling.at("heads")[1].at("station") == 9);
    REQUIRE(levelling.at("platens").size() == 4);
    for (const Json& platen : levelling.at("platens"))
        CHECK(platen.at("out") == (platen.at("platen") == 3));
    // Means of the readings at each of the three places, carried on to the press's height points.
    const Json& third = levelling.at("platens")[2];
    CHECK(third.at("operator_left_mm").get<double>() == Approx(-0.233).margin(0.001));
    CHECK(third.at("operator_right_mm").get<double>() == Approx(-0.164).margin(0.001));
    CHECK(third.at("machine_mm").get<double>() == Approx(-0.914).margin(0.001));
    const Json& heat = report.at("heat");
    CHECK(heat.at("flash_units") == 1);
    CHECK(heat.at("steady_turn") == 17);
    CHECK(heat.at("steady_c").get<double>() == Approx(44.875).margin(0.01));
    CHECK(heat.at("hottest_c").get<double>() == Approx(49.675).margin(0.01));
}

TEST_CASE("check leaves out what a job has no readings of", "[check]") {
    Job job = job_of(bare_path);
    Json report = report_on(job);
    CHECK_FALSE(report.contains("levelling"));
    CHECK(report.contains("heat"));
    for (const Json& head : report.at("heads")) CHECK_FALSE(head.contains("registration"));
    for (StationUse& use : job.uses)
        if (use == StationUse::flash) use = StationUse::open;
    CHECK_FALSE(report_on(job).contains("heat"));
    const std::string text = check("-", {}, write_job(job)).out;
    for (const char* heading : {"\nRegister\n", "\nHeights\n", "\nHeat\n"})
        CHECK_FALSE(has(text, heading));
    // A round that stands on its nominal places has not been read.
    job.heads[0].rounds.push_back({});
    job.heads[0].rounds[0].marks = {{{-150.0, -200.0}, {-150.0, -200.0}},
                                    {{150.0, 200.0}, {150.0, 200.0}}};
    report = report_on(job);
    const Json& round = report.at("heads")[0].at("registration");
    CHECK(round.at("verdict") == "not_read");
    CHECK(round.at("error_max_mm").is_null());
    CHECK(round.at("within_tolerance").is_null());
}

TEST_CASE("Levelling is called good only where all is known and nothing contradicts", "[check]") {
    JobLevelling found;
    Levelling& levelling = found.levelling;
    levelling.groups.resize(1);
    levelling.groups[0].terms = LevelTerms::plane;
    levelling.heads.resize(1);
    levelling.platens.resize(2);
    for (LevelledPart* part : {&levelling.heads[0], &levelling.platens[0], &levelling.platens[1]})
        part->known = LevelTerms::plane;
    const auto said = [&](Language language) {
        return levelling_verdict(language, LengthUnit::mm, Job{}, found);
    };
    CHECK(said(Language::english).tone == Tone::good);
    CHECK(said(Language::english).title == "Each within 0.2 mm of the usual");
    CHECK(said(Language::spanish).title == "Cada uno dentro de 0.2 mm de lo usual");
    levelling.platens[1].known = LevelTerms::none;
    CHECK(said(Language::english).tone == Tone::ask);
    CHECK(said(Language::english).title == "Those known are each within 0.2 mm of the usual");
    CHECK(has(said(Language::english).why, "read more heights"));
    levelling.platens[1].known = LevelTerms::plane;
    levelling.groups[0].settled = false;
    CHECK(said(Language::english).tone == Tone::ask);
    CHECK(has(said(Language::english).why, "read there again"));
    CHECK(has(said(Language::spanish).why, "lea ahí de nuevo"));
}
