// Exercises: one is begun, answered, marked and left. What a person has open waits meanwhile.
#include <algorithm>

#include "app/program.h"
#include "app/text/exercise_sentences.h"
#include "app/views/exercise_run.h"
#include "app/views/exercise_veil.h"
#include "app/views/exercise_view.h"
#include "core/exercise_break.h"

namespace carriageway {

namespace {

constexpr double ms_per_second = 1000.0;

} // namespace

void Program::show_practice(ExerciseStage stage) {
    state_.practice.exercise.stage = stage;
    carry_out(ShowPractice{PracticePart::exercises});
    if (state_.show_focus) state_.focus = "practice/exercises";
}

/// The job that was put aside is open again, and what was looked at of it.
void Program::close_exercise() {
    ExerciseState& exercise = state_.practice.exercise;
    if (!session_.practising()) return;
    let_go();
    fling_.reset();
    session_.end_practice();
    state_.head = exercise.head_before;
    state_.own_camera = false;
    state_.move.reset();
    exercise.at_press = false;
}

void Program::begin_exercise(std::shared_ptr<ExerciseRun> run) {
    ExerciseState& exercise = state_.practice.exercise;
    close_exercise();
    let_go();
    fling_.reset();
    state_.notice.reset();
    state_.measuring.open = false;
    state_.day.open = false;
    run->hints = hints_of(run->exercise);
    run->began = session_.time();
    exercise.run = std::move(run);
    exercise.at_press = is_at_press(exercise.run->exercise.kind);
    show_practice(ExerciseStage::under_way);
    if (exercise.at_press) go_to_exercise();
}

/// Puts the job aside that is open and shows the exercise's own at the press.
void Program::go_to_exercise() {
    ExerciseState& exercise = state_.practice.exercise;
    const Exercise& asked = exercise.run->exercise;
    drop_film(); // it is for a head of the job that is put aside
    exercise.head_before = state_.head;
    session_.practise(asked.job);
    keep_answers_back();
    state_.stop = End::machine_side;
    choose_head(shows_whole_press(asked.kind) ? 0 : asked.head);
    if (state_.show_focus) state_.focus = "exercise/mark";
}

void Program::keep_answers_back() {
    if (examined(state_.practice.exercise))
        carriageway::keep_answers_back(session_.assessment(), kept_back_);
}

void Program::mind_exercise() {
    ExerciseState& exercise = state_.practice.exercise;
    if (!examined(exercise) || session_.practising()) return;
    exercise.stage = ExerciseStage::kinds;
    exercise.at_press = false;
    exercise.run.reset();
}

void Program::carry_out(const StartExercise& a) {
    // What has been answered so far is not thrown away: that one is marked or given up first.
    mind_exercise();
    if (state_.practice.exercise.stage == ExerciseStage::under_way)
        return carry_out(ReturnToExercise{});
    auto run = std::make_shared<ExerciseRun>();
    const std::uint64_t seed = static_cast<std::uint64_t>(session_.time()) + exercises_begun_++;
    run->exercise = make_exercise(a.kind, seed, exercise_level(state_.practice.exercise, a.kind));
    name_exercise(state_.looks.language, run->exercise);
    begin_exercise(std::move(run));
}

void Program::carry_out(const RepeatExercise&) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (!exercise.run) return;
    auto run = std::make_shared<ExerciseRun>();
    run->exercise = exercise.run->exercise;
    run->again = true;
    begin_exercise(std::move(run));
}

void Program::carry_out(const ReturnToExercise&) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (examined(exercise)) carry_out(GoTo{Place::press});
    else show_practice(exercise.stage);
}

void Program::carry_out(const ShowHint&) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::under_way) return;
    ExerciseRun& run = *exercise.run;
    if (run.hints_shown < run.hints.size()) ++run.hints_shown;
}

void Program::carry_out(const TickClaim& a) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::under_way) return;
    ExerciseRun& run = *exercise.run;
    if (a.claim >= run.exercise.choices.size()) return;
    const FaultClaim claim = run.exercise.choices[a.claim];
    std::vector<FaultClaim>& ticked = run.answer.faults;
    const auto found = std::find(ticked.begin(), ticked.end(), claim);
    if (found == ticked.end()) ticked.push_back(claim);
    else ticked.erase(found);
}

void Program::carry_out(const ChooseAnswer& a) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::under_way) return;
    ExerciseRun& run = *exercise.run;
    if (a.choice < run.exercise.numbers.size()) run.answer.number = run.exercise.numbers[a.choice];
}

void Program::carry_out(const ChooseTurn& a) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::under_way) return;
    std::vector<DialTurn>& turns = exercise.run->answer.turns;
    std::erase_if(turns, [&](const DialTurn& turn) { return turn.adjuster == a.adjuster; });
    if (a.way != 0) turns.push_back({a.adjuster, a.way > 0});
}

void Program::carry_out(const MarkExercise&) {
    ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::under_way) return;
    let_go(); // what a finger holds is not made yet
    ExerciseRun& run = *exercise.run;
    if (exercise.at_press) run.answer.edits = session_.practised();
    run.seconds = std::max(0.0, static_cast<double>(session_.time() - run.began) / ms_per_second);
    run.marking = mark(run.exercise, run.answer);
    run.score = after_hints(run.marking.score, static_cast<int>(run.hints_shown));
    if (!run.exercise.from_job && !run.again) {
        if (!exercise.record) exercise.record = std::make_shared<ExerciseRecord>();
        exercise.record->of(run.exercise.kind).push_back({run.exercise.level, run.score});
    }
    run.level_after = exercise_level(exercise, run.exercise.kind);
    close_exercise();
    note_exercise(run);
    show_practice(ExerciseStage::marked);
    if (state_.show_focus) state_.focus = run.exercise.from_job ? "exercise/repeat"
                                                                : "exercise/another";
}

void Program::carry_out(const LeaveExercise&) {
    close_exercise();
    state_.practice.exercise.run.reset();
    show_practice(ExerciseStage::kinds);
}

void Program::carry_out(const ShowExercises&) { carry_out(LeaveExercise{}); }

/// As a visit: the person may try what mends it, and even keep it.
void Program::carry_out(const OpenMarked&) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::marked) return;
    Job job = exercise.run->exercise.job;
    const HeadId head = exercise.run->exercise.head;
    const bool was_visiting = session_.visiting();
    session_.visit(std::move(job));
    for (const Edit& edit : exercise.run->answer.edits) session_.commit(edit);
    arrive(was_visiting);
    if (head != 0) choose_head(head);
}

void Program::carry_out(const MakeOwnExercise&) {
    state_.practice.exercise.own_head = 0;
    show_practice(ExerciseStage::own);
}

void Program::carry_out(const ChooseOwnHead& a) { state_.practice.exercise.own_head = a.head; }

void Program::carry_out(const BreakHead& a) {
    const HeadId head = state_.practice.exercise.own_head;
    const std::vector<Breaking> all = breakings_of(session_.job(), head);
    if (a.breaking >= all.size()) return;
    std::optional<Exercise> made = exercise_from(session_.job(), {all[a.breaking].edit});
    if (!made)
        return notice(std::string(word(state_.looks.language, Word::exercise_own_none)), true);
    auto run = std::make_shared<ExerciseRun>();
    run->exercise = std::move(*made);
    begin_exercise(std::move(run));
}

} // namespace carriageway
