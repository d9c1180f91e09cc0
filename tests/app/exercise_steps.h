// What a person does in an exercise, and what must not be seen meanwhile.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "app/text/exercise_sentences.h"
#include "app/text/sentences.h"
#include "app/views/exercise_run.h"
#include "core/exercise_break.h"
#include "tests/app/driver.h"

namespace carriageway {

inline const ExerciseState& state_of(Driver& driver) { return driver.program().state().practice.exercise; }
inline const ExerciseRun& run_of(Driver& driver) {
    REQUIRE(state_of(driver).run != nullptr);
    return *state_of(driver).run;
}

inline std::string start_name(ExerciseKind kind) {
    return "exercise/start/" + std::string(exercise_kind_name(kind));
}

inline void start(Driver& driver, ExerciseKind kind) {
    driver.tap("place/practice");
    driver.tap(start_name(kind));
    REQUIRE(state_of(driver).stage == ExerciseStage::under_way);
    REQUIRE(run_of(driver).exercise.kind == kind);
}

/// Tab until a thing has the keyboard, then Enter.
inline void go_to_by_keys(Driver& driver, const std::string& name) {
    INFO("by keyboard to " << name);
    for (int tabs = 0; tabs < 400; ++tabs) {
        driver.key(Key::tab);
        if (driver.program().state().focus == name) return;
    }
    FAIL("the keyboard does not reach it");
}
inline void by_keys(Driver& driver, const std::string& name) {
    go_to_by_keys(driver, name);
    driver.key(Key::enter);
}

/// Answers with what the exercise itself holds to be right, through things that can be touched
/// where there are such.
inline void answer_rightly(Driver& driver) {
    const Exercise exercise = run_of(driver).exercise;
    for (const FaultClaim& fault : exercise.solution.faults)
        for (std::size_t i = 0; i < exercise.choices.size(); ++i)
            if (exercise.choices[i] == fault)
                driver.tap("exercise/claim/" + std::to_string(i + 1));
    for (const DialTurn& turn : exercise.solution.turns)
        driver.tap("exercise/dial/" + std::to_string(turn.adjuster + 1) +
                   (turn.clockwise ? "/clockwise" : "/counter"));
    for (std::size_t i = 0; i < exercise.numbers.size(); ++i)
        if (exercise.solution.number == exercise.numbers[i])
            driver.tap("exercise/number/" + std::to_string(i + 1));
    for (const Edit& edit : exercise.solution.edits) {
        if (exercise.kind == ExerciseKind::find_fault) break; // there they show what was broken
        driver.program().act(DoEdit{edit});
        driver.settle();
    }
}

/// No colour and no words of a verdict among what is drawn.
inline void check_marks_give_nothing_away(Driver& driver, const Job& job) {
    Assessment full;
    assess(job, full);
    for (const Mark& mark : driver.list().marks()) {
        CHECK_FALSE((!mark.colour.own && mark.kind != MarkKind::text &&
                     (mark.colour.role == Role::stop || mark.colour.role == Role::stop_fill ||
                      mark.colour.role == Role::covered || mark.colour.role == Role::allowed)));
        if (mark.kind != MarkKind::text) continue;
        for (const HeadAssessment& head : full.heads)
            for (const Finding& finding : head.findings) {
                const FindingText words =
                    finding_text(driver.session().looks().language,
                                 driver.session().looks().units, job, head, finding);
                CHECK(driver.list().words(mark) != words.why);
                if (finding.kind != FindingKind::both_sensors_on)
                    CHECK(driver.list().words(mark) != words.label);
            }
    }
}

/// Names and words that would say what is right while an exercise is answered.
inline void check_nothing_given_away(Driver& driver, const Job& job) {
    static const char* const names[] = {"finding/",       "verdict",      "set-this-head",
                                        "set-every-stop", "section/plot", "section/margins",
                                        "section/side",   "share",        "day",
                                        "add-head/",      "press/"};
    for (const Thing& thing : driver.list().things()) {
        INFO("thing " << thing.name << ": " << thing.label << " / " << thing.value);
        for (const char* const name : names) CHECK_FALSE(thing.name.starts_with(name));
        const Language language = driver.session().looks().language;
        CHECK(thing.value.find(word(language, Word::fit_to_run)) == std::string::npos);
        CHECK(thing.value.find(word(language, Word::not_fit)) == std::string::npos);
    }
    std::vector<std::string> controls;
    for (const Thing& thing : driver.list().things())
        if (thing.layer == 1 && !thing.name.starts_with("panel")) controls.push_back(thing.name);
    check_marks_give_nothing_away(driver, job);
    // What is out of sight isn't written: the panel is read to its end.
    const float scroll = driver.program().state().panel_scroll;
    for (const std::string& control : controls) {
        driver.reveal(control);
        check_marks_give_nothing_away(driver, job);
    }
    driver.program().state().panel_scroll = scroll;
    driver.settle();
}

/// What a ruler shows at a stop, as it is typed.
inline std::string typed(const Job& job, double stop) { return plain_ruler(job.press.ruler, stop); }

/// Sets both stops of the exercise's head on the pad, by touch.
inline void set_stops_by_pad(Driver& driver, const Stops& stops) {
    driver.tap("stop/machine");
    driver.tap("stop/number");
    driver.pad(typed(driver.session().job(), stops.machine_side));
    driver.tap("pad/accept");
    driver.tap("stop/operator");
    driver.tap("stop/number");
    driver.pad(typed(driver.session().job(), stops.operator_side));
    driver.tap("pad/accept");
}

/// Where the exercise's own solution puts the stops.
inline Stops solved_stops(const Exercise& exercise) {
    Job job = exercise.job;
    for (const Edit& edit : exercise.solution.edits) REQUIRE(apply(job, edit));
    return find_head(job, exercise.head)->stops;
}

/// A job without a stop or a mind, of the exercises' own making.
inline Job right_job() {
    const Exercise exercise = make_exercise(ExerciseKind::shortest_stroke, 7, 1);
    Job job = exercise.job;
    for (const Edit& edit : exercise.solution.edits) REQUIRE(apply(job, edit));
    job.name = "Lantern walk shirt";
    REQUIRE(faults_of(job).empty());
    return job;
}

} // namespace carriageway
