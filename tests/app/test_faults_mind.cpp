// Faults through the real program: where things are measured, who says so, and what to mind before
// hands reach in.
#include <algorithm>
#include <set>

#include <catch2/catch_test_macros.hpp>

#include "app/text/sentences.h"
#include "app/views/measure_words.h"
#include "tests/app/visit_faults.h"

using namespace carriageway;

namespace {

const FaultBook& book() { return fault_lore().book; }

} // namespace

TEST_CASE("To measure leads to where it is measured", "[faults]") {
    std::set<Measure::Kind> seen;
    for (std::size_t cause = 0; cause < book().causes.size(); ++cause) {
        const FaultCause& of = book().causes[cause];
        std::size_t symptom = 0;
        const auto has_it = [&](const Symptom& one) {
            return std::any_of(one.causes.begin(), one.causes.end(),
                               [&](const SymptomCause& by) { return by.cause == cause; });
        };
        while (!has_it(book().symptoms[symptom])) ++symptom;
        INFO(of.id);
        Driver driver(phone);
        const HeadId head = head_on(driver.session().job(), 7)->id;
        driver.program().act(FindFaultAt{head});
        driver.program().act(ChooseSymptom{symptom});
        open_causes(driver, symptom);
        if (of.measure.kind == Measure::Kind::none) {
            CHECK_FALSE(driver.has("faults/measure/" + of.id));
            continue;
        }
        const bool first = seen.insert(of.measure.kind).second;
        if (first) driver.tap("faults/measure/" + of.id);
        else driver.program().act(MeasureCause{of.measure, head});
        driver.settle();
        const ViewState& now = driver.program().state();
        switch (of.measure.kind) {
        case Measure::Kind::number:
            REQUIRE(now.pad);
            CHECK(now.pad->field == of.measure.field);
            CHECK((now.pad->head == head ||
                   info_of(of.measure.field).owner != FieldOwner::head));
            CHECK(driver.has("pad/display"));
            break;
        case Measure::Kind::procedure:
            CHECK(now.measuring.open);
            REQUIRE(now.measuring.target);
            CHECK(now.measuring.target->field == of.measure.field);
            break;
        default:
            CHECK(now.place == Place::registration);
            CHECK(now.registering.mode ==
                  (of.measure.kind == Measure::Kind::marks       ? RegisterMode::marks
                   : of.measure.kind == Measure::Kind::platen_marks ? RegisterMode::platens
                                                                    : RegisterMode::heights));
        }
    }
    CHECK(seen.size() == 5);
}

TEST_CASE("A number of a head is asked for only once it is said which head", "[faults]") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(phone, {}, language);
        driver.program().act(MeasureCause{{Measure::Kind::number, Field::squeegee_pressure}, 0});
        driver.settle();
        CHECK_FALSE(driver.program().state().pad);
        CHECK(driver.find("notice").label == word(language, Word::faults_which_head_first));
    }
}

TEST_CASE("Of every symptom and cause it stands who says so, and what to mind", "[faults]") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(tablet, {}, language);
        const auto who = [&](std::size_t source) {
            return say(language, Word::faults_who_says,
                       {text_of(language, fault_lore().sources[source])});
        };
        for (std::size_t symptom = 0; symptom < book().symptoms.size(); ++symptom) {
            driver.program().act(FindFaultAt{0});
            driver.program().act(ChooseSymptom{symptom});
            open_causes(driver, symptom);
            INFO(book().symptoms[symptom].id);
            CHECK(driver.find("faults/symptom/source").label ==
                  who(book().symptoms[symptom].causes.front().source));
            for (const SymptomCause& made_by : book().symptoms[symptom].causes) {
                const FaultCause& cause = book().causes[made_by.cause];
                const std::string name = "faults/cause/" + cause.id;
                INFO(cause.id);
                CHECK(driver.find(name + "/source").label == who(cause.source));
                CHECK(driver.find(name + "/mend").label ==
                      text_of(language, fault_lore().causes[made_by.cause].fix));
                CHECK(driver.has(name + "/caution") == (cause.caution != Caution::none));
                if (cause.caution != Caution::none)
                    CHECK(driver.find(name + "/caution").label ==
                          word(language, caution_word(cause.caution)));
            }
            answer_tests(driver, symptom); // so that all of them stand there
            for (const SymptomCause& made_by : book().symptoms[symptom].causes)
                for (const std::size_t test : book().causes[made_by.cause].tests) {
                    const FaultTest& of = book().tests[test];
                    INFO(of.id);
                    CHECK(driver.has("faults/test/" + of.id + "/caution") ==
                          (of.caution != Caution::none));
                }
        }
    }
}

TEST_CASE("Where hands reach in or stand by what moves, tests and fixes say so", "[faults]") {
    // These are made on a printed garment, at a table.
    const std::set<std::string> at_table{"stretch_print", "peel_colours"};
    for (const FaultTest& test : book().tests) {
        INFO(test.id);
        CHECK((test.caution == Caution::none) == (at_table.count(test.id) == 1));
    }
    for (const FaultCause& cause : book().causes) {
        INFO(cause.id);
        CHECK(cause.caution != Caution::none);
        // What is set by hand inside the head is set on a press that can't move.
        static const std::set<Fix> inside{Fix::stops_advised, Fix::heights_level,
                                          Fix::wings_flat,    Fix::angle_usual,
                                          Fix::gap_advised,   Fix::blade_on_platen,
                                          Fix::flood_wider,   Fix::flood_reaches};
        if (inside.count(cause.fix) == 1) CHECK(cause.caution == Caution::isolated_and_bled);
    }
}
