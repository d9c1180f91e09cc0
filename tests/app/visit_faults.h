// Faults, for the tests of layout: the list of symptoms, and symptoms with every cause open and
// tests answered. On the smallest window at the largest text all of them are visited, as no words
// are as likely to be cut anywhere else.
#pragma once

#include <algorithm>

#include <catch2/catch_test_macros.hpp>

#include "app/records/fault_book.h"
#include "tests/app/driver.h"

namespace carriageway {

/// Opens every cause of a symptom, whatever its rank.
inline void open_causes(Driver& driver, std::size_t symptom) {
    for (const SymptomCause& made_by : fault_lore().book.symptoms[symptom].causes)
        driver.program().act(OpenCause{made_by.cause, true});
    driver.settle();
}

/// Every test that could decide a cause of a symptom is answered, each with its first answer.
inline void answer_tests(Driver& driver, std::size_t symptom) {
    const FaultBook& book = fault_lore().book;
    for (const SymptomCause& made_by : book.symptoms[symptom].causes)
        for (const std::size_t test : book.causes[made_by.cause].tests) {
            const TestAnswer answer{test, 0};
            const auto& given = driver.program().state().practice.fault.answers;
            if (std::find(given.begin(), given.end(), answer) == given.end())
                driver.program().act(AnswerTest{answer});
        }
    driver.settle();
}

template <class Scrolled, class Look>
void visit_faults(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    const Looks looks = driver.session().looks();
    const bool all = driver.window().surface().width <= small_phone.width &&
                     looks.text_scale >= 2.0f && looks.language != Language::pseudo;
    program.act(FindFaultAt{0});
    driver.settle();
    scrolled("faults, symptoms");
    const FaultBook& book = fault_lore().book;
    for (std::size_t symptom = 0; symptom < book.symptoms.size(); ++symptom) {
        const std::string& id = book.symptoms[symptom].id;
        if (!all && id != "no_stroke" && id != "colours_wander") continue;
        program.act(ChooseSymptom{symptom});
        driver.settle();
        look("faults, " + id);
        answer_tests(driver, symptom);
        open_causes(driver, symptom);
        scrolled("faults, " + id + ", all open");
    }
    program.act(FindFaultAt{driver.session().job().heads.front().id});
    driver.settle();
    scrolled("faults, at a head");
    program.act(FindFaultAt{0});
    program.act(ChooseSymptom{});
    program.act(ShowPractice{PracticePart::exercises});
    program.act(GoTo{Place::press});
    driver.settle();
    CHECK(driver.session().job() == before);
}

} // namespace carriageway
