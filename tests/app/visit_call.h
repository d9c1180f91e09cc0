// Calls, for the tests of layout: the log, every kind of question, what is read back, and a reply.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "app/views/call_view.h"
#include "tests/app/driver.h"

namespace carriageway {

inline const CallState& call_of(Driver& driver) { return driver.program().state().practice.call; }

/// The question that is asked now.
inline std::optional<CallQuestion> question_of(Driver& driver) {
    const CallPlan plan = call_plan(fault_lore(), call_of(driver), driver.session().job(),
                                    driver.session().assessment());
    if (plan.questions.empty()) return std::nullopt;
    return plan.questions.front();
}

inline bool same_question(const CallQuestion& one, const CallQuestion& other) {
    if (one.kind != other.kind) return false;
    if (one.kind == CallQuestion::Kind::test) return one.test == other.test;
    return one.head == other.head && one.field == other.field;
}

/// The answer that a cause makes likeliest, as a thing's name.
inline std::string answer_for(const CallQuestion& question, std::size_t cause) {
    const FaultTest& test = fault_lore().book.tests[question.test];
    std::size_t best = 0;
    for (std::size_t i = 1; i < test.answers.size(); ++i)
        if (answer_factor(test, i, cause) > answer_factor(test, best, cause)) best = i;
    return "call/test/" + test.id + "/" + test.answers[best].id;
}

template <class Scrolled, class Look>
void visit_call(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const JobId own = driver.session().current();
    const Job before = driver.session().job();
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    program.state().notice.reset();
    act(ShowPractice{PracticePart::call});
    scrolled("calls, none");
    act(BeginCall{0});
    program.state().notice.reset();
    scrolled("call, what is seen");
    const FaultBook& book = fault_lore().book;
    act(ChooseCallSymptom{find_symptom(book, "no_stroke")});
    scrolled("call, no head");
    const HeadId head = head_on(driver.session().job(), 6)->id;
    act(ChooseCallHead{head});
    bool tests = false, numbers = false;
    for (int i = 0; i < 12 && !(tests && numbers); ++i) {
        const std::optional<CallQuestion> question = question_of(driver);
        if (!question) break;
        bool& seen = question->kind == CallQuestion::Kind::test ? tests : numbers;
        if (!seen) scrolled("call, question " + std::to_string(i));
        seen = true;
        if (question->kind == CallQuestion::Kind::test) act(AnswerCall{{question->test, 0}});
        else act(SkipQuestion{*question});
    }
    CHECK(tests);
    CHECK(numbers);
    act(OpenPad{head, Field::machine_stop});
    look("call, pad");
    program.state().pad.reset();
    act(EditText{TextTarget::call_notes});
    look("call, notes");
    act(CancelText{});
    for (const char* cause : {"both_sensors", "air_low"})
        act(TellFix{*find_cause(book, cause), true});
    scrolled("call, told");
    const CallPlan plan = call_plan(fault_lore(), call_of(driver), driver.session().job(),
                                    driver.session().assessment());
    const std::optional<Reply> reply = reply_of(driver.session().job(), plan.edits);
    REQUIRE(reply);
    const CallId id = call_of(driver).id;
    act(LeaveCall{});
    CHECK(driver.session().current() == own);
    act(AskEraseCall{id});
    program.state().notice.reset();
    scrolled("calls, erasing");
    act(EraseCall{id});
    program.state().notice.reset();
    driver.open_link("#" + reply_link_fragment(*reply));
    scrolled("reply");
    act(SetReply{});
    look("reply, set");
    act(GoTo{Place::press});
    look("reply, press");
    act(LeaveVisit{});
    program.state().notice.reset();
    act(ShowPractice{PracticePart::exercises});
    act(GoTo{Place::press});
    driver.settle();
    CHECK(driver.session().job() == before);
}

} // namespace carriageway
