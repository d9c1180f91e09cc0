// Findings, moves, limits and refusals in words.
#include <catch2/catch_test_macros.hpp>
#include <set>
#include <string>
#include <vector>

#include "app/text/sentences.h"

using namespace carriageway;

namespace {

constexpr Language english = Language::english;
constexpr Language spanish = Language::spanish;
constexpr LengthUnit mm = LengthUnit::mm;

/// A job of one head, station 6, whose ruler's zero stands at -500 and counts toward the machine.
Job one_head() {
    Job job;
    Head head;
    head.id = 1;
    head.station = 6;
    head.colour = "navy";
    job.heads.push_back(head);
    job.uses.resize(static_cast<std::size_t>(job.press.stations));
    return job;
}

Finding finding(FindingKind kind, Side side, double value, double limit, Part part = Part::stops) {
    Finding made;
    made.severity = Severity::stop;
    made.kind = kind;
    made.head = 1;
    made.part = part;
    made.side = side;
    made.value = value;
    made.limit = limit;
    return made;
}

FindingText told(const Finding& about, Language language = english, LengthUnit unit = mm) {
    const Job job = one_head();
    return finding_text(language, unit, job, HeadAssessment{}, about);
}

/// The last enumerator, for loops over a whole enum.
constexpr int last_kind = static_cast<int>(FindingKind::length_differs);

}  // namespace

TEST_CASE("a finding is told with its numbers and units") {
    const Finding heavy = finding(FindingKind::heavy, Side::machine_side, 19.0, 0.0, Part::flood);
    const FindingText text = told(heavy);
    CHECK(text.title == "Heavy at the machine end");
    CHECK(text.why == "The flood turns back 19 mm inside the image; it should run 25 mm past it.");
    CHECK(text.label == "19 mm not flooded");
    CHECK(text.severity == "stop");
    CHECK(text.remedy.main.empty());

    const FindingText inches = told(heavy, english, LengthUnit::inch);
    CHECK(inches.label == "0.75 in not flooded");
    const FindingText en_espanol = told(heavy, spanish);
    CHECK(en_espanol.title == "Cargado en el lado de la máquina");
    CHECK(en_espanol.severity == "alto");
}

TEST_CASE("a remedy names the stop, the direction and the ruler's numbers") {
    Finding heavy = finding(FindingKind::heavy, Side::machine_side, 19.0, 0.0, Part::flood);
    heavy.remedy.kind = Remedy::Kind::stops;
    heavy.remedy.stops = {-260.0, 304.0};
    const RemedyText one = told(heavy).remedy;
    CHECK(one.main == "Stop 44 mm toward the machine");
    CHECK(one.detail == "machine stop, ruler 760 → 804 mm");

    heavy.remedy.stops = {-279.0, 260.0};
    CHECK(told(heavy).remedy.main == "Stop 19 mm toward the operator");
    CHECK(told(heavy).remedy.detail == "operator stop, ruler 240 → 221 mm");

    heavy.remedy.stops = {-279.0, 356.0};
    CHECK(told(heavy).remedy.main == "Set the stops 635 mm apart");
    CHECK(told(heavy).remedy.detail == "ruler: operator 240 → 221 mm, machine 760 → 856 mm");

    heavy.remedy.stops = {-260.0, 260.001};  // as it stands
    CHECK(told(heavy).remedy.main.empty());
}

TEST_CASE("a stroke too long is shortened, and by how much") {
    Finding longer = finding(FindingKind::stroke_too_long, Side::both, 132.0, 0.0);
    longer.remedy.kind = Remedy::Kind::stops;
    longer.remedy.stops = {-200.0, 188.0};
    CHECK(told(longer).title == "Stroke 132 mm too long");
    CHECK(told(longer).remedy.main == "Shorten the stroke by 132 mm");
    CHECK(told(longer).remedy.detail == "ruler: operator 240 → 300 mm, machine 760 → 688 mm");
}

TEST_CASE("a number as a remedy") {
    Finding wings =
        finding(FindingKind::wings_dig_in, Side::both, radians(28.0), radians(25.0), Part::flood);
    wings.remedy.kind = Remedy::Kind::number;
    wings.remedy.field = Field::flood_angle;
    wings.remedy.value = radians(25.0);
    const FindingText text = told(wings);
    CHECK(text.why ==
          "The flood bar stands at 28°; steeper than 25° the tips of its wings dig into the mesh.");
    CHECK(text.remedy.main == "Set the flood bar angle to 25°");
    CHECK(text.remedy.detail == "15 → 25°");
}

TEST_CASE("with no stops to advise, the conflict and the smallest change are told") {
    const Job job = one_head();
    HeadAssessment worked;
    worked.conflict = Conflict{LimitKind::platen,
                               LimitKind::squeegee_run_past,
                               End::machine_side,
                               LimitKind::carriage_range,
                               false,
                               12.5};
    const Finding none = finding(FindingKind::no_stops_fit, Side::machine_side, 12.5, 0.0);
    FindingText text = finding_text(english, mm, job, worked, none);
    CHECK(text.why ==
          "At the machine end the squeegee's run-past needs 12.5 mm more than the "
          "platen's edge leaves.");
    CHECK(text.remedy.main == "No single change makes room: other image, frame or platen");

    worked.change = Change{ChangeKind::move_image, -12.5, 12.5};
    text = finding_text(english, mm, job, worked, none);
    CHECK(text.remedy.main == "Move the image 12.5 mm toward the operator on its screen");

    worked.conflict = Conflict{LimitKind::frame_flood,
                               LimitKind::separation,
                               End::operator_side,
                               LimitKind::platen,
                               true,
                               7.0};
    text = finding_text(english, mm, job, worked, none);
    CHECK(text.why ==
          "The sensors need the stops 7 mm farther apart than the frame ahead of the "
          "flood bar at the operator end and the platen's edge at the machine end "
          "allow.");
}

TEST_CASE("the frame: how near, or how far into it") {
    const Finding near =
        finding(FindingKind::meets_frame, Side::operator_side, 31.0, 50.0, Part::squeegee);
    CHECK(told(near).title == "Squeegee too near the frame");
    CHECK(told(near).label == "31 mm to the frame");
    const Finding into =
        finding(FindingKind::meets_frame, Side::operator_side, -6.0, 50.0, Part::flood);
    CHECK(told(into).why ==
          "At the operator end the flood bar would go 6 mm into the frame; "
          "50 mm of clearance is wanted.");
    const Finding across =
        finding(FindingKind::side_meets_frame, Side::both, 31.0, 50.0, Part::squeegee);
    CHECK(told(across).why ==
          "At both sides the squeegee comes within 31 mm of the frame; "
          "50 mm of clearance is wanted.");
}

TEST_CASE("what is there is never shown as nothing") {
    const Finding sliver =
        finding(FindingKind::starved, Side::operator_side, 0.004, 0.0, Part::flood);
    CHECK(told(sliver).label == "less than 0.1 mm not flooded");
    CHECK(told(sliver, english, LengthUnit::inch).label == "less than 0.01 in not flooded");
}

TEST_CASE("edges in one another's place") {
    const Finding none =
        finding(FindingKind::bead_too_narrow, Side::both, -5.0, 40.0, Part::squeegee);
    CHECK(told(none).why ==
          "The squeegee's edge stands 5 mm past the flood bar's, so no ink can "
          "lie between them; 40 mm is wanted.");
    CHECK(told(none).label == "0 mm between the edges");
}

TEST_CASE("every finding has a title, a reason with a unit and a label, in every language") {
    for (const Language language : {english, spanish, Language::pseudo}) {
        for (int kind = 0; kind <= last_kind; ++kind) {
            for (const Part part : {Part::squeegee, Part::flood}) {
                for (const Side side : {Side::operator_side, Side::machine_side, Side::left,
                                        Side::right, Side::both}) {
                    for (const double value : {-3.0, 0.2, 70.0}) {
                        const Job job = one_head();
                        HeadAssessment worked;
                        worked.conflict = Conflict{};
                        const Finding about =
                            finding(static_cast<FindingKind>(kind), side, value, 12.0, part);
                        const FindingText text = finding_text(language, mm, job, worked, about);
                        INFO("kind " << kind << ": " << text.title << " / " << text.why);
                        CHECK_FALSE(text.title.empty());
                        CHECK_FALSE(text.label.empty());
                        CHECK_FALSE(text.severity.empty());
                        CHECK(text.why.size() > 20);
                        for (const std::string* part_of : {&text.title, &text.why, &text.label}) {
                            CHECK(part_of->find('{') == std::string::npos);
                            CHECK(part_of->find('?') == std::string::npos);
                        }
                    }
                }
            }
        }
    }
}

TEST_CASE("what holds a stop, as a clause") {
    Job job = one_head();
    CHECK(limit_text(english, mm, job, LimitKind::flood_run_past) ==
          "past here the flood runs less than 25 mm past the image");
    CHECK(limit_text(english, mm, job, LimitKind::platen) ==
          "past here the squeegee is less than 10 mm inside the platen");
    // 2·4 + 2 + (30 − −30) = 70 of least separation, and a margin of 5.
    CHECK(limit_text(english, mm, job, LimitKind::separation) ==
          "nearer than 75 mm apart, both sensors may be on");
    job.wishes.run_past = 0.0;
    job.press.allowances.platen_inset = 0.0;
    CHECK(limit_text(english, mm, job, LimitKind::flood_run_past) ==
          "past here the flood misses image");
    CHECK(limit_text(english, mm, job, LimitKind::platen) ==
          "past here the squeegee leaves the platen");
    CHECK(limit_text(spanish, mm, job, LimitKind::platen) ==
          "desde aquí la racleta sale del palet");
}

TEST_CASE("the smallest change, as an instruction") {
    CHECK(change_text(english, mm, {ChangeKind::shorten_run_past, 4.0, 4.0}) ==
          "Accept 4 mm less run-past");
    CHECK(change_text(english, mm, {ChangeKind::flood_angle, radians(12.5), 3.0}) ==
          "Set the flood bar to 12.5°");
    CHECK(change_text(english, mm, {ChangeKind::longer_frame, 30.0, 15.0}) ==
          "Use a frame 30 mm longer");
    CHECK(change_text(spanish, mm, {ChangeKind::longer_platen, 30.0, 15.0}) ==
          "Usar un palet 30 mm más largo");
}

TEST_CASE("refusals say what to do") {
    std::set<std::string> told_so_far;
    for (int refusal = 0; refusal <= static_cast<int>(Refusal::too_deep); ++refusal) {
        const std::string text = refusal_text(english, mm, static_cast<Refusal>(refusal));
        INFO(text);
        CHECK(text.size() > 20);
        CHECK(text.find('{') == std::string::npos);
        CHECK(told_so_far.insert(text).second);
    }
    const std::string range =
        refusal_text(english, mm, Refusal::out_of_range, Field::squeegee_angle);
    const FieldInfo& info = info_of(Field::squeegee_angle);
    CHECK(range == "For squeegee angle, type a number from " + format_angle(info.least) + " to " +
                       format_angle(info.most) + ".");
    CHECK(refusal_text(english, mm, Refusal::no_such_station, Field::count, 10).find("1 to 10") !=
          std::string::npos);
}

TEST_CASE("every number has a label of its own, in the order of the fields") {
    std::set<Word> seen;
    for (int index = 0; index < static_cast<int>(Field::count); ++index) {
        const Word label = field_word(static_cast<Field>(index));
        INFO(index);
        CHECK_FALSE(word(english, label).empty());
        CHECK(seen.insert(label).second);
        CHECK(name_of(label).substr(0, 6) == "field_");
    }
    CHECK(field_word(Field::machine_stop) == Word::field_machine_stop);
    CHECK(field_word(Field::side_overlap) == Word::field_side_overlap);
    CHECK(field_word(Field::drop_dwell) == Word::field_drop_dwell);
    CHECK(field_word(Field::count) == Word::count);
}

TEST_CASE("heads, stations and sides") {
    Head head;
    head.station = 6;
    CHECK(head_title(english, head) == "Head 6");
    head.colour = "navy";
    CHECK(head_title(english, head) == "Head 6 · navy");
    CHECK(head_title(spanish, head) == "Cabezal 6 · navy");
    CHECK(word(english, use_word(StationUse::flash)) == "flash");
    CHECK(word(english, side_word(End::machine_side)) == "the machine end");
    CHECK(word(english, direction_word(Direction::toward_operator)) == "toward the operator");
    CHECK(word(english, miss_word(MissKind::starved)) == "starved");
}
