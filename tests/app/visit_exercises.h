// Exercises, for the tests of layout: the list, each kind under way and marked, and a trainer's own.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "app/views/exercise_run.h"
#include "tests/app/driver.h"

namespace carriageway {

/// One kind from its start to its result, with every hint shown.
template <class Scrolled, class Look>
void visit_exercise(Driver& driver, ExerciseKind kind, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const std::string name = "exercise " + std::string(exercise_kind_name(kind));
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(StartExercise{kind});
    const ExerciseRun& run = *program.state().practice.exercise.run;
    while (run.hints_shown < run.hints.size()) act(ShowHint{});
    scrolled(name);
    if (is_at_press(kind)) {
        const Head& head = driver.session().job().heads.front();
        act(ChooseHead{head.id});
        scrolled(name + ", head");
        if (kind == ExerciseKind::read_sheet) {
            act(OpenPad{head.id, Field::squeegee_angle});
            look(name + ", pad");
            program.state().pad.reset();
        }
        act(GoTo{Place::rate});
        look(name + ", covered");
        act(ReturnToExercise{});
    }
    act(MarkExercise{});
    scrolled(name + ", nothing answered");
    act(RepeatExercise{});
    const Exercise exercise = program.state().practice.exercise.run->exercise;
    for (std::size_t i = 0; i < exercise.choices.size(); ++i) act(TickClaim{i});
    if (!exercise.numbers.empty()) act(ChooseAnswer{0});
    for (const DialTurn& turn : exercise.solution.turns)
        act(ChooseTurn{turn.adjuster, turn.clockwise ? 1 : -1});
    if (is_at_press(kind) && kind != ExerciseKind::find_fault)
        for (const Edit& edit : exercise.solution.edits) act(DoEdit{edit});
    look(name + ", answered");
    act(MarkExercise{});
    scrolled(name + ", marked");
    act(ShowExercises{});
}

/// Every state of the exercises; leaves the job as it was.
template <class Scrolled, class Look>
void visit_exercises(Driver& driver, Scrolled scrolled, Look look) {
    Program& program = driver.program();
    const Job before = driver.session().job();
    const auto act = [&](const Action& action) {
        program.act(action);
        driver.settle();
    };
    act(ShowPractice{PracticePart::exercises});
    scrolled("exercises");
    for (const ExerciseKind kind : exercise_kinds_in_order)
        visit_exercise(driver, kind, scrolled, look);
    scrolled("exercises, done");
    act(MakeOwnExercise{});
    scrolled("exercise of one's own, not right yet");
    act(ShowExercises{});
    // One that is right: as a visit, which is left again.
    const Exercise made = make_exercise(ExerciseKind::shortest_stroke, 7, 1);
    Job right = made.job;
    for (const Edit& edit : made.solution.edits) REQUIRE(apply(right, edit));
    right.name = before.name;
    driver.session().visit(right);
    act(MakeOwnExercise{});
    act(ChooseOwnHead{right.heads.front().id});
    scrolled("exercise of one's own");
    driver.session().leave_visit();
    act(ShowExercises{});
    act(GoTo{Place::press});
    CHECK(driver.session().job() == before);
}

} // namespace carriageway
