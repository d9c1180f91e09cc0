// The people who practise, for the tests of layout: nobody, one person with much done, the group,
// erasing, and a result that arrived.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "tests/app/driver.h"

namespace carriageway {

/// Attempts of every topic that has exercises, with mistakes; and signatures of every state.
inline void do_much(Session& session, int person) {
    const Mistake made[] = {{MarkReason::fault_missed, FindingKind::heavy, {}},
                            {MarkReason::line_not_set, {}, Field::squeegee_angle},
                            {MarkReason::moves_more, {}, {}}};
    for (const PracticeTopic topic : topics_in_order) {
        const int index = static_cast<int>(topic);
        for (int i = 0; has_exercises(topic) && i < (index + person) % 4; ++i) {
            Attempt attempt;
            attempt.topic = topic;
            attempt.level = 1 + (index + person) % highest_level;
            attempt.seed = static_cast<std::uint64_t>(1 + i);
            attempt.score = i == 1 ? 0.55 : 1.0;
            attempt.seconds = 200.0 * (1 + i);
            attempt.time = session.time() - 1000 * i;
            attempt.mistakes.assign(made, made + (index + i) % 4);
            REQUIRE(session.note_attempt(attempt));
        }
        for (int state = 0; state < (index + person) % 4; ++state)
            REQUIRE(session.sign_topic(session.practised_by().who.id, topic,
                                       static_cast<SignState>(state), true));
    }
}

template <class Scrolled, class Look>
void visit_trainees(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    Session& session = driver.session();
    const Job before = session.job();
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(ShowPractice{PracticePart::trainees});
    scrolled("trainees, nobody");
    act(ShowGroup{true});
    scrolled("trainees, no group");
    act(ShowGroup{false});
    for (const char* name : {"Robin", "Ana María of the night shift", "Lou"}) {
        REQUIRE(session.add_trainee(name));
        do_much(session, static_cast<int>(session.group().size()));
    }
    act(ShowPractice{PracticePart::trainees});
    for (const PracticeTopic topic : {PracticeTopic::find_fault, PracticeTopic::call}) {
        act(OpenTopic{topic});
        scrolled(std::string("trainee, ") + topic_key(topic));
    }
    act(AskErase{session.practised_by().who.id});
    scrolled("trainee, erasing");
    act(EditText{TextTarget::new_trainee});
    look("trainee, typing");
    act(CancelText{});
    act(ShowGroup{true});
    scrolled("trainees, group");
    ExerciseResult result;
    result.name = "Robin";
    program.state().practice.trainee.arrived = result;
    act(ShowGroup{false});
    look("trainees, a result for a person");
    act(ChooseTrainee{0});
    look("trainees, a result for nobody yet");
    act(DropResult{});
    for (const TraineeSummary& person : std::vector<TraineeSummary>(session.group()))
        REQUIRE_FALSE(session.erase_trainee(person.who.id));
    act(ShowPractice{PracticePart::exercises});
    act(GoTo{Place::press});
    CHECK(session.job() == before);
}

} // namespace carriageway
