// The demonstration job: four heads set wrong along the arm, the others right.
#include <fstream>
#include <iterator>
#include <map>
#include <string>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "core/assess.h"
#include "core/head_registration.h"
#include "core/levelling_advice.h"

using namespace carriageway;
using Catch::Approx;

namespace {

Job demo(const std::string& name = "demo-job.json") {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/" + name, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    const ReadJob read = read_job(text);
    REQUIRE(read.job.has_value());
    return *read.job;
}

const HeadAssessment& on_station(const Job& job, const Assessment& assessment, int station) {
    return *find_head(assessment, head_on(job, station)->id);
}

} // namespace

TEST_CASE("the demonstration has six colours on ten stations and the faults it is there for") {
    const Job job = demo();
    CHECK(job.press.stations == 10);
    CHECK(job.heads.size() == 6);
    Assessment assessment;
    assess(job, assessment);
    CHECK(assessment.fit_heads == 3);

    const HeadAssessment& overlapped = on_station(job, assessment, 6);
    CHECK(overlapped.both_on);
    CHECK(overlapped.separation == Approx(58.0));
    CHECK(overlapped.least_separation == Approx(70.0));
    CHECK(overlapped.findings.front().kind == FindingKind::both_sensors_on);
    CHECK(overlapped.coverage.covered_area == 0.0);

    const HeadAssessment& strip = on_station(job, assessment, 5);
    REQUIRE(strip.coverage.pieces.size() == 1);
    CHECK(strip.coverage.pieces.front().kind == MissKind::heavy);
    CHECK(strip.squeegee.hi > strip.image_bounds.hi); // only the flood misses it
    CHECK(strip.findings.front().value == Approx(18.7).margin(0.05));

    std::map<FindingKind, double> far;
    for (const Finding& finding : on_station(job, assessment, 7).findings) far[finding.kind] = finding.value;
    REQUIRE(far.count(FindingKind::off_platen) == 1);
    REQUIRE(far.count(FindingKind::meets_frame) == 1);
    CHECK(far[FindingKind::off_platen] == Approx(5.2).margin(0.05));
    CHECK(far[FindingKind::meets_frame] == Approx(37.2).margin(0.05));

    const HeadAssessment& long_stroke = on_station(job, assessment, 8);
    REQUIRE(long_stroke.findings.size() == 1);
    CHECK(long_stroke.findings.front().kind == FindingKind::stroke_too_long);
    CHECK(long_stroke.findings.front().value == Approx(124.9).margin(0.05));

    for (const int station : {2, 9}) CHECK(on_station(job, assessment, station).findings.empty());
}

TEST_CASE("setting every stop clears the demonstration") {
    Job job = demo();
    Assessment assessment;
    assess(job, assessment);
    const std::optional<Edit> edit = set_every_stop(job, assessment);
    REQUIRE(edit.has_value());
    REQUIRE(apply(job, *edit));
    assess(job, assessment);
    CHECK(assessment.fit);
    for (const HeadAssessment& head : assessment.heads) {
        CHECK(head.fit);
        CHECK(head.coverage.share() == Approx(1.0).margin(1e-12));
        CHECK(head.findings.empty());
    }
}

TEST_CASE("the demonstration of marks and heights says what it is there for") {
    const Job job = demo("demo-register.json");
    Job bare = demo();
    CHECK(job.press.adjusters == bare.press.adjusters);
    // Station 8: off by 1.7 mm, then nearer.
    const Head& green = *head_on(job, 8);
    REQUIRE(green.rounds.size() == 2);
    const double tolerance = job.registration.tolerance;
    const HeadRegistration first = register_head(job.press, green.rounds, 0, tolerance);
    const HeadRegistration second = register_head(job.press, green.rounds, 1, tolerance);
    CHECK(first.verdict == RegistrationVerdict::turn);
    REQUIRE(second.sizes.size() == 2);
    CHECK(second.sizes[1].max < 0.3 * second.sizes[0].max);
    // Station 7: prints on four platens, of which the third lies off.
    std::vector<std::size_t> places;
    const auto prints = platen_readings(head_on(job, 7)->rounds, places);
    const auto scatter = scatter_of(prints, job.press.readings.mark);
    REQUIRE(std::holds_alternative<Scatter>(scatter));
    const std::vector<ScatterSign> signs = signs_of(std::get<Scatter>(scatter));
    REQUIRE(signs.size() == 1);
    CHECK(signs[0].cause == ScatterCause::platen_off);
    CHECK(signs[0].platen == 3);
    // Heights: the third platen is low, and no other part is out.
    const Levelling levelling = level(job.height_readings);
    for (const PartOff& head : heads_off(levelling)) CHECK_FALSE(head.out);
    for (const PartOff& platen : platens_off(levelling)) CHECK(platen.out == (platen.number == 3));
}

TEST_CASE("the demonstration in the program is the file") {
    const std::string_view text(reinterpret_cast<const char*>(embedded::demo_job), embedded::demo_job_size);
    const ReadJob read = read_job(text);
    REQUIRE(read.job.has_value());
    CHECK(*read.job == demo());
}
