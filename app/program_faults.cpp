// Faults: what was seen, which head, and what was answered.
#include <algorithm>

#include "app/program.h"
#include "app/records/fault_book.h"

namespace carriageway {

void Program::carry_out(const ChooseSymptom& a) {
    FaultState& fault = state_.practice.fault;
    const HeadId head = fault.head;
    fault = {};
    fault.head = head;
    if (a.symptom && *a.symptom < fault_lore().book.symptoms.size()) fault.symptom = a.symptom;
    state_.practice_scroll = 0.0f;
}

void Program::carry_out(const FindFaultAt& a) {
    state_.practice.fault.head = find_head(session_.job(), a.head) ? a.head : 0;
    if (state_.place != Place::practice || state_.practice.part != PracticePart::faults)
        carry_out(ShowPractice{PracticePart::faults});
}

/// The same answer again takes it back. What was answered about another job is forgotten.
void Program::carry_out(const AnswerTest& a) {
    std::vector<TestAnswer>& answers = state_.practice.fault.answers;
    if (state_.practice.fault.job != session_.current()) answers.clear();
    state_.practice.fault.job = session_.current();
    const bool again = std::find(answers.begin(), answers.end(), a.answer) != answers.end();
    std::erase_if(answers, [&](const TestAnswer& one) { return one.test == a.answer.test; });
    if (!again) answers.push_back(a.answer);
}

void Program::carry_out(const ForgetAnswers&) { state_.practice.fault.answers.clear(); }

void Program::carry_out(const OpenCause& a) {
    FaultState& fault = state_.practice.fault;
    std::erase(fault.opened, a.cause);
    std::erase(fault.closed, a.cause);
    (a.open ? fault.opened : fault.closed).push_back(a.cause);
}

void Program::carry_out(const MendCause& a) {
    if (apply_edit(a.edit))
        notice(std::string(word(state_.looks.language, Word::faults_was_set)));
}

void Program::carry_out(const MeasureCause& a) {
    const HeadId head = find_head(session_.job(), a.head) ? a.head : 0;
    switch (a.measure.kind) {
    case Measure::Kind::none: return;
    case Measure::Kind::number: {
        const bool of_head = info_of(a.measure.field).owner == FieldOwner::head;
        if (of_head && head == 0)
            return notice(std::string(word(state_.looks.language, Word::faults_which_head_first)));
        choose_head(of_head ? head : 0);
        return act(OpenPad{of_head ? head : 0, a.measure.field});
    }
    case Measure::Kind::procedure: return act(OpenMeasuring{a.measure.field});
    case Measure::Kind::marks:
    case Measure::Kind::platen_marks:
    case Measure::Kind::heights: {
        if (head != 0) act(RegisterHead{head});
        act(GoTo{Place::registration});
        const bool marks = a.measure.kind == Measure::Kind::marks;
        const bool heights = a.measure.kind == Measure::Kind::heights;
        return act(ChooseRegisterMode{marks     ? RegisterMode::marks
                                      : heights ? RegisterMode::heights
                                                : RegisterMode::platens});
    }
    }
}

} // namespace carriageway
