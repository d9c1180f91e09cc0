#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>

#include "core/assess.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;
using sample::edge;
using sample::one_head;

namespace {

const Head& head_of(const Job& job) {
    return job.heads.front();
}

std::vector<Finding> findings_of(const Job& job) {
    Assessment assessment;
    assess(job, assessment);
    return assessment.heads.front().findings;
}

/// The job with some of its head or press changed.
template <typename Change>
Job with(Change change) {
    Job job = one_head();
    change(job, job.heads.front());
    REQUIRE_FALSE(fault_of(job));
    return job;
}

/// The one finding of a kind on a side; fails the test when there is none or are several.
Finding only(const std::vector<Finding>& findings, FindingKind kind, Side side) {
    std::vector<Finding> found;
    for (const Finding& f : findings) {
        if (f.kind == kind && f.side == side) found.push_back(f);
    }
    INFO("kind " << static_cast<int>(kind));
    REQUIRE(found.size() == 1);
    CHECK(found.front().head == 1);
    return found.front();
}

bool none_of_kind(const std::vector<Finding>& findings, FindingKind kind) {
    return std::none_of(findings.begin(), findings.end(),
                        [kind](const Finding& f) { return f.kind == kind; });
}

/// Carries a finding's remedy out and gives what is then found.
std::vector<Finding> after_remedy(Job job, const Finding& finding) {
    const auto edit = remedy_edit(finding);
    REQUIRE(edit);
    REQUIRE(apply(job, *edit));
    return findings_of(job);
}

}  // namespace

TEST_CASE("the demonstration's head as the defaults have it has nothing to be said", "[findings]") {
    CHECK(findings_of(one_head()).empty());
}

TEST_CASE("bars 58 mm apart leave both sensors on: said first, and the missed image not at all",
          "[findings]") {
    // Both sensors on: the head prints and floods nothing (common practice, no source).
    const Job job = with([](Job&, Head& head) {
        head.image.length = 90.0;
        head.image.width = 90.0;
        head.stops = {-30.0, 28.0};
    });
    const auto found = findings_of(job);
    REQUIRE_FALSE(found.empty());
    const Finding& first = found.front();
    CHECK(first.kind == FindingKind::both_sensors_on);
    CHECK(first.severity == Severity::stop);
    CHECK(first.part == Part::sensors);
    CHECK(first.value == Approx(58.0));
    CHECK(first.limit == Approx(2.0 * 4.0 + 2.0 + 60.0));
    for (const FindingKind kind : {FindingKind::unprinted, FindingKind::starved, FindingKind::heavy,
                                   FindingKind::run_past_short, FindingKind::miss_likely}) {
        CHECK(none_of_kind(found, kind));
    }
    CHECK(after_remedy(job, first).empty());
}

TEST_CASE("a machine stop too far in: the flood misses a strip, heavy where it finishes",
          "[findings]") {
    // The carriage rests 7.125 beyond the machine stop, the flood's edge `edge` before that. The
    // print goes toward the operator, so the flood finishes at the machine.
    const Job job = with([](Job&, Head& head) { head.stops.machine_side = 215.0; });
    const auto found = findings_of(job);
    const Finding heavy = only(found, FindingKind::heavy, Side::machine_side);
    CHECK(heavy.severity == Severity::stop);
    CHECK(heavy.part == Part::flood);
    CHECK(heavy.value == Approx(200.0 - (215.0 + 7.125 - edge())));
    CHECK(none_of_kind(found, FindingKind::starved));
    CHECK(none_of_kind(found, FindingKind::unprinted));
    CHECK(none_of_kind(found, FindingKind::run_past_short));  // the missed image says it
    // Only the stop at fault moves: outward from 249.7 to the next whole mm.
    REQUIRE(heavy.remedy.kind == Remedy::Kind::stops);
    CHECK(heavy.remedy.stops == Stops{-260.0, 250.0});
    CHECK(after_remedy(job, heavy).empty());
}

TEST_CASE("printed the other way, the same strip is starved", "[findings]") {
    // Toward the machine: the flood leads at the machine end, and finishes at the operator's. The
    // flood moves toward the operator at 700 mm/s (41.125), the print toward the machine (31.5):
    // the carriage rests at -260 + 34 - 41.125 and the flood edge `edge` beyond it.
    const Job job = with([](Job&, Head& head) {
        head.print_stroke = Direction::toward_machine;
        head.stops = {-210.0, 245.0};
    });
    const auto found = findings_of(job);
    const double flood_lo = -210.0 + 34.0 - 41.125 + edge();
    const Finding missed = only(found, FindingKind::heavy, Side::operator_side);
    CHECK(missed.value == Approx(flood_lo + 200.0));

    const Job other = with([](Job&, Head& head) { head.stops.operator_side = -200.0; });
    // Printed toward the operator the squeegee trails there: the image is unprinted.
    const Finding unprinted = only(findings_of(other), FindingKind::unprinted, Side::operator_side);
    CHECK(unprinted.part == Part::squeegee);
    CHECK(unprinted.value == Approx(-200.0 + 2.5 + edge() + 200.0));
    CHECK(after_remedy(other, unprinted).empty());
}

TEST_CASE("where the flood begins late, image is starved", "[findings]") {
    // The blade drops 0.3 s into a flood stroke that waits 0.1: at 8000 mm/s2 it is at 700 mm/s
    // after 0.0875 s and 30.625 mm, then 0.1125 s more: 109.375 mm lost in all. The print stroke
    // loses 600 mm/s likewise: 22.5 + 75 = 97.5.
    const Job job = with([](Job& j, Head& head) {
        head.stops.machine_side = 250.0;
        j.press.carriage.drop_time = 0.3;
        j.press.carriage.drop_dwell = 0.1;
    });
    const auto found = findings_of(job);
    const double flood_lo = -260.0 + 2.5 - edge() + 109.375;
    const double squeegee_lo = -260.0 + 2.5 + edge();
    REQUIRE(squeegee_lo < -200.0);
    const Finding starved = only(found, FindingKind::starved, Side::operator_side);
    CHECK(starved.value == Approx(flood_lo + 200.0));
    const Finding unprinted = only(found, FindingKind::unprinted, Side::machine_side);
    CHECK(unprinted.value == Approx(200.0 - (250.0 + 7.125 + edge() - 97.5)));
}

TEST_CASE("image beside the blades is missed across", "[findings]") {
    const Job narrow = with([](Job&, Head& head) { head.squeegee.width = 280.0; });
    auto found = findings_of(narrow);
    for (const Side side : {Side::left, Side::right}) {
        const Finding unprinted = only(found, FindingKind::unprinted, side);
        CHECK(unprinted.value == Approx(10.0));
        CHECK(unprinted.remedy.kind == Remedy::Kind::none);  // no number mends it
    }
    CHECK(none_of_kind(found, FindingKind::blade_too_narrow));

    const Job flood = with([](Job&, Head& head) { head.flood.width = 280.0; });
    found = findings_of(flood);
    CHECK(only(found, FindingKind::starved, Side::left).value == Approx(10.0));
    const Finding narrower = only(found, FindingKind::flood_narrower, Side::both);
    CHECK(narrower.severity == Severity::mind);
    CHECK(narrower.value == Approx(280.0));
    CHECK(narrower.limit == Approx(356.0));
}

TEST_CASE("the squeegee off the platen, and near its edge", "[findings]") {
    // Its edge rests at 7.125 + edge beyond the machine stop; the platen ends at 309.5.
    const Job off = with([](Job&, Head& head) { head.stops.machine_side = 275.0; });
    auto found = findings_of(off);
    const Finding beyond = only(found, FindingKind::off_platen, Side::machine_side);
    CHECK(beyond.severity == Severity::stop);
    CHECK(beyond.value == Approx(275.0 + 7.125 + edge() - 309.5));
    CHECK(after_remedy(off, beyond).empty());

    const Job near = with([](Job&, Head& head) { head.stops.operator_side = -275.0; });
    found = findings_of(near);
    const Finding close = only(found, FindingKind::near_platen_edge, Side::operator_side);
    CHECK(close.severity == Severity::mind);
    CHECK(close.value == Approx(-275.0 + 2.5 + edge() + 249.5));
    CHECK(close.limit == Approx(10.0));
    CHECK(after_remedy(near, close).empty());
}

TEST_CASE("a blade that meets the frame, and a carriage at the end of its range", "[findings]") {
    const Job job = with([](Job&, Head& head) { head.stops.operator_side = -290.0; });
    const auto found = findings_of(job);
    const Finding frame = only(found, FindingKind::meets_frame, Side::operator_side);
    CHECK(frame.severity == Severity::stop);
    CHECK(frame.part == Part::flood);
    CHECK(frame.value == Approx(-290.0 + 2.5 - edge() + 355.5));
    CHECK(frame.limit == Approx(50.0));
    CHECK(after_remedy(job, frame).empty());

    const Job far = with([](Job& j, Head& head) {
        j.press.carriage.range_hi = 265.0;
        head.stops.machine_side = 260.0;
    });
    const Finding range = only(findings_of(far), FindingKind::beyond_range, Side::machine_side);
    CHECK(range.severity == Severity::stop);
    CHECK(range.value == Approx(260.0 + 7.125 - 265.0));
    CHECK(after_remedy(far, range).empty());
}

TEST_CASE("a carriage too fast for its bars loses its position", "[findings]") {
    // Bars of 20 with a reach of 4 hold 28 mm. At the operator end the print arrives: 31.5.
    const Job job = with([](Job& j, Head&) { j.press.sensors.bar_length = 20.0; });
    const auto found = findings_of(job);
    const Finding lost = only(found, FindingKind::position_lost, Side::operator_side);
    CHECK(lost.severity == Severity::stop);
    CHECK(lost.value == Approx(31.5));
    CHECK(lost.limit == Approx(28.0));
    REQUIRE(lost.remedy.kind == Remedy::Kind::number);
    CHECK(lost.remedy.field == Field::print_speed);
    // 0.015 v + v^2 / 16000 = 28 at v = 560.0: v = 8000 (-0.015 + sqrt(0.000225 + 0.007)) = 560.
    CHECK(lost.remedy.value == Approx(560.0));
    CHECK(only(found, FindingKind::position_lost, Side::machine_side).remedy.field ==
          Field::flood_speed);
    CHECK(none_of_kind(findings_of([&] {
                           Job after = job;
                           for (const Finding& f : found) {
                               if (const auto edit = remedy_edit(f)) apply(after, *edit);
                           }
                           return after;
                       }()),
                       FindingKind::position_lost));
}

TEST_CASE("less run-past than wished is minded, not refused", "[findings]") {
    const Job job = with([](Job&, Head& head) { head.stops.machine_side = 240.0; });
    const auto found = findings_of(job);
    REQUIRE(found.size() == 1);
    const Finding thin = only(found, FindingKind::run_past_short, Side::machine_side);
    CHECK(thin.severity == Severity::mind);
    CHECK(thin.part == Part::flood);
    CHECK(thin.value == Approx(240.0 + 7.125 - edge() - 200.0));
    CHECK(thin.limit == Approx(25.0));
    CHECK(after_remedy(job, thin).empty());
}

TEST_CASE("wings lie flat at 25 degrees and ride clear at 15 (common practice, no source)",
          "[findings]") {
    for (const double fine : {15.0, 25.0}) {
        const Job job = with([fine](Job&, Head& head) { head.flood.angle = radians(fine); });
        CHECK(none_of_kind(findings_of(job), FindingKind::wings_dig_in));
        CHECK(none_of_kind(findings_of(job), FindingKind::angle_unusual));
    }
    Job job = with([](Job&, Head& head) { head.flood.angle = radians(26.0); });
    const Finding wings = only(findings_of(job), FindingKind::wings_dig_in, Side::both);
    CHECK(wings.severity == Severity::stop);
    CHECK(degrees(wings.value) == Approx(26.0));
    CHECK(degrees(wings.limit) == Approx(25.0));
    CHECK(none_of_kind(after_remedy(job, wings), FindingKind::wings_dig_in));
    job.heads[0].flood.winged = false;
    CHECK(none_of_kind(findings_of(job), FindingKind::wings_dig_in));
}

TEST_CASE("angles from 5 to 25 degrees are usual (common practice, no source)", "[findings]") {
    for (const double fine : {5.0, 15.0, 25.0}) {
        const Job job = with([fine](Job&, Head& head) { head.squeegee.angle = radians(fine); });
        CHECK(none_of_kind(findings_of(job), FindingKind::angle_unusual));
    }
    const Job flat = with([](Job&, Head& head) { head.squeegee.angle = radians(4.0); });
    const Finding unusual = only(findings_of(flat), FindingKind::angle_unusual, Side::both);
    CHECK(unusual.severity == Severity::mind);
    CHECK(unusual.part == Part::squeegee);
    CHECK(degrees(unusual.limit) == Approx(5.0));
    CHECK(none_of_kind(after_remedy(flat, unusual), FindingKind::angle_unusual));
}

TEST_CASE("the bead needs room between the edges", "[findings]") {
    const Job thin = with([](Job& j, Head&) { j.press.allowances.least_bead = 70.0; });
    const Finding narrow = only(findings_of(thin), FindingKind::bead_too_narrow, Side::both);
    CHECK(narrow.severity == Severity::mind);
    CHECK(narrow.value == Approx(2.0 * edge()));
    CHECK(narrow.limit == Approx(70.0));
    const Job crossed = with([](Job& j, Head&) {
        j.press.squeegee_holder.pivot_offset = -40.0;
        j.press.flood_holder.pivot_offset = 0.0;
    });
    const Finding none = only(findings_of(crossed), FindingKind::bead_too_narrow, Side::both);
    CHECK(none.severity == Severity::stop);
    CHECK(none.value == Approx(2.0 * (edge() - 15.0) - 40.0));
}

TEST_CASE("widths across the arm", "[findings]") {
    const Job overlap = with([](Job&, Head& head) {
        head.squeegee.width = 320.0;
        head.image.offset_x = 3.0;
    });
    const Finding side = only(findings_of(overlap), FindingKind::blade_too_narrow, Side::right);
    CHECK(side.severity == Severity::mind);
    CHECK(side.value == Approx(160.0 - 153.0));
    CHECK(side.limit == Approx(12.0));

    const Job wide = with([](Job& j, Head& head) {
        head.squeegee.width = 390.0;
        head.flood.width = 400.0;
        j.platen.offset_x = 10.0;  // -193 to 213
    });
    const auto found = findings_of(wide);
    const Finding off = only(found, FindingKind::blade_off_platen, Side::left);
    CHECK(off.severity == Severity::mind);
    CHECK(off.value == Approx(390.0));
    CHECK(off.limit == Approx(386.0));

    const Job frame = with([](Job&, Head& head) { head.flood.width = 420.0; });
    const Finding near = only(findings_of(frame), FindingKind::side_meets_frame, Side::both);
    CHECK(near.severity == Severity::mind);
    CHECK(near.part == Part::flood);
    CHECK(near.value == Approx(254.0 - 210.0));
    const Job meets = with([](Job&, Head& head) { head.flood.width = 520.0; });
    CHECK(only(findings_of(meets), FindingKind::side_meets_frame, Side::both).severity ==
          Severity::stop);
}

TEST_CASE("an image must lie on the mesh", "[findings]") {
    const Job job = with([](Job&, Head& head) { head.image.offset_x = 120.0; });
    const Finding outside = only(findings_of(job), FindingKind::image_outside_mesh, Side::right);
    CHECK(outside.severity == Severity::stop);
    CHECK(outside.value == Approx(120.0 + 150.0 - 254.0));
}

TEST_CASE("where no stops fit, that is said with what is missing", "[findings]") {
    const Job job = with([](Job&, Head& head) { head.image.offset_y = -15.0; });
    const Finding none = only(findings_of(job), FindingKind::no_stops_fit, Side::operator_side);
    CHECK(none.severity == Severity::stop);
    CHECK(none.value == Approx(0.5));
    CHECK_FALSE(remedy_edit(none));
}

TEST_CASE("bars closer than the margin are minded", "[findings]") {
    const Job job = with([](Job&, Head& head) {
        head.image.length = 10.0;
        head.stops = {-36.0, 36.0};
    });
    const Finding thin = only(findings_of(job), FindingKind::separation_thin, Side::both);
    CHECK(thin.severity == Severity::mind);
    CHECK(thin.value == Approx(72.0));
    CHECK(thin.limit == Approx(75.0));
}

TEST_CASE("a stroke is called too long only where the stops are right otherwise", "[findings]") {
    const Job job = with([](Job&, Head& head) { head.image.length = 300.0; });
    const auto found = findings_of(job);
    REQUIRE(found.size() == 1);
    CHECK(found[0].kind == FindingKind::stroke_too_long);
    CHECK(found[0].severity == Severity::mind);
    // Default stops, 520 apart; 300 + 50 + 2 edges of travel need 4.625 less between the stops.
    CHECK(found[0].value == Approx(520.0 - (350.0 + 2.0 * edge() - 4.625)));
    CHECK(after_remedy(job, found[0]).empty());

    const Job off = with([](Job&, Head& head) {
        head.image.length = 300.0;
        head.stops.machine_side = 290.0;
    });
    CHECK(none_of_kind(findings_of(off), FindingKind::stroke_too_long));
}

TEST_CASE("image that is likely to be missed now and then is minded", "[findings]") {
    const Job job = with([](Job& j, Head& head) {
        j.wishes.run_past = 3.0;
        head.stops.machine_side = 228.0;  // the flood passes by 3.3, deviations come to 5
    });
    const auto found = findings_of(job);
    const Finding likely = only(found, FindingKind::miss_likely, Side::both);
    CHECK(likely.severity == Severity::mind);
    CHECK(likely.limit == chance_to_mind);
    CHECK(likely.value > chance_to_mind);
    CHECK(likely.value < 0.05);
    CHECK(none_of_kind(found, FindingKind::heavy));
}

TEST_CASE("speeds that the press hasn't", "[findings]") {
    const Job job = with([](Job& j, Head&) { j.press.carriage.fastest = 650.0; });
    const auto found = findings_of(job);
    REQUIRE(found.size() == 1);
    CHECK(found[0].kind == FindingKind::speed_beyond_press);
    CHECK(found[0].severity == Severity::mind);
    CHECK(found[0].part == Part::flood);
    CHECK(found[0].value == Approx(700.0));
    CHECK(none_of_kind(after_remedy(job, found[0]), FindingKind::speed_beyond_press));
}

TEST_CASE("findings come worst first", "[findings]") {
    const Job job = with([](Job&, Head& head) {
        head.stops = {-290.0, 215.0};
        head.flood.angle = radians(30.0);
        head.squeegee.angle = radians(3.0);
    });
    const auto found = findings_of(job);
    REQUIRE(found.size() > 3);
    CHECK(found.front().severity == Severity::stop);
    // So steep a flood bar also comes off the mesh, which is only a note.
    CHECK(found.back().severity == Severity::note);
    CHECK(found.back().kind == FindingKind::flood_high);
    CHECK(std::is_sorted(found.begin(), found.end(), [](const Finding& a, const Finding& b) {
        return a.severity != b.severity ? a.severity < b.severity : a.kind < b.kind;
    }));
    CHECK(head_of(job).id == found.front().head);
}
