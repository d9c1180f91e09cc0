// The people who practise: chosen, added, signed for, erased; and exercises and results that come
// from other devices or go there.
#include <algorithm>
#include <cmath>

#include "app/program.h"
#include "app/records/link_base.h"
#include "app/text/exercise_sentences.h"
#include "app/text/practice_sentences.h"
#include "app/views/exercise_run.h"
#include "app/views/exercise_view.h"
#include "core/job_check.h"

namespace carriageway {

namespace {

constexpr double ms_per_second = 1000.0;

/// Of a run that is marked; the same whenever it is asked for, so that it is known again.
Attempt attempt_of(const ExerciseRun& run) {
    Attempt attempt;
    attempt.topic = topic_of(run.exercise.kind);
    attempt.level = run.exercise.from_job ? lowest_level : run.exercise.level;
    attempt.seed = run.exercise.seed;
    attempt.score = run.score;
    attempt.seconds = run.seconds;
    attempt.hints = static_cast<int>(run.hints_shown);
    attempt.time = run.began + std::llround(run.seconds * ms_per_second);
    attempt.counts = !run.exercise.from_job && !run.again;
    attempt.mistakes = mistakes_of(run.marking);
    return attempt;
}

} // namespace

void Program::take_person() {
    auto record = std::make_shared<ExerciseRecord>();
    for (const ExerciseKind kind : exercise_kinds_in_order)
        record->of(kind) = session_.practised_by().of(topic_of(kind)).results;
    state_.practice.exercise.record = std::move(record);
}

/// Another window writes the library: the exercise is marked all the same, and noted nowhere.
void Program::note_exercise(const ExerciseRun& run) {
    if (session_.read_only()) return;
    if (!session_.note_attempt(attempt_of(run))) return say_trouble();
    state_.practice.exercise.run->noted_for = session_.practised_by().who.id;
    take_person();
}

void Program::carry_out(const ChooseTrainee& a) {
    TraineeState& trainee = state_.practice.trainee;
    trainee.erasing.reset();
    trainee.topic.reset();
    // What one person typed as a name is not sent with another's results.
    if (a.trainee != session_.practised_by().who.id) trainee.sender.clear();
    if (!session_.choose_trainee(a.trainee)) say_trouble();
    take_person();
    if (trainee.group) carry_out(ShowGroup{false});
}

void Program::carry_out(const ShowGroup& a) {
    TraineeState& trainee = state_.practice.trainee;
    trainee.group = a.group;
    trainee.erasing.reset();
    state_.practice_scroll = 0.0f;
    state_.typing.reset();
    if (a.group && !session_.read_group()) say_trouble();
    if (state_.show_focus) state_.focus = a.group ? "trainee/group" : "trainee/one";
}

void Program::carry_out(const OpenTopic& a) { state_.practice.trainee.topic = a.topic; }

void Program::carry_out(const SignTopic& a) {
    if (!session_.sign_topic(session_.practised_by().who.id, a.topic, a.state, a.there))
        say_trouble();
}

void Program::carry_out(const AskErase& a) {
    state_.practice.trainee.erasing = a.trainee;
    // The question stands at the end of the page: it comes into sight whole.
    if (a.trainee) state_.practice_scroll = 1e6f; // its end
    if (state_.show_focus) state_.focus = a.trainee ? "trainee/erase/keep" : "trainee/erase";
}

/// Only after it was asked for the same person: nothing else that is touched can erase one.
void Program::carry_out(const EraseTrainee& a) {
    TraineeState& trainee = state_.practice.trainee;
    if (trainee.erasing != a.trainee) return;
    trainee.erasing.reset();
    trainee.topic.reset();
    trainee.sender.clear();
    const std::optional<LibraryFault> fault = session_.erase_trainee(a.trainee);
    take_person();
    if (state_.show_focus) state_.focus = "trainee/choose/0";
    if (fault && fault->kind != LibraryFault::Kind::locked) return say_trouble();
    notice(std::string(word(state_.looks.language,
                            fault ? Word::trainee_erased_traces : Word::trainee_erased)));
}

void Program::hand_out(const std::optional<std::string>& path) {
    if (path && abilities_.give_file) errands_.push_back({ErrandKind::give_file, *path});
    else if (path) notice(say(state_.looks.language, Word::exported_to, {*path}));
    else say_trouble();
}

void Program::hand_out_link(const std::string& fragment) {
    const Language language = state_.looks.language;
    const std::string& base =
        abilities_.link_base.empty() ? state_.habits.link_base : abilities_.link_base;
    if (!usable_link_base(base)) return notice(std::string(word(language, Word::link_none)), true);
    const std::string link = link_on(base, fragment);
    if (link.empty()) return notice(std::string(word(language, Word::link_too_long)), true);
    errands_.push_back({ErrandKind::copy_text, link});
}

void Program::carry_out(const ExportTrainee& a) { hand_out(session_.export_trainee(a.trainee)); }

void Program::carry_out(const ExportGroup&) { hand_out(session_.export_group()); }

void Program::carry_out(const SendExercise& a) {
    const ExerciseState& exercise = state_.practice.exercise;
    if (exercise.stage != ExerciseStage::marked) return;
    const ExerciseRun& run = *exercise.run;
    const ExerciseResult result{attempt_of(run), state_.practice.trainee.sender};
    if (a.link)
        return hand_out_link(a.result ? result_link_fragment(result)
                                      : exercise_link_fragment(run.exercise));
    const std::string name(exercise_kind_name(run.exercise.kind));
    hand_out(a.result ? session_.export_bytes("result-" + name, ".json", write_result(result))
                      : session_.export_bytes("exercise-" + name, ".json",
                                              write_exercise(run.exercise)));
}

void Program::receive(ReadExercise read, const std::string& from) {
    const Language language = state_.looks.language;
    if (!read)
        return notice(say(language, Word::not_opened, {from, fault_sentence(language, read.fault)}),
                      true);
    // What has been answered so far is not thrown away.
    if (state_.practice.exercise.stage == ExerciseStage::under_way)
        return notice(say(language, Word::exercise_first, {from}), true);
    auto run = std::make_shared<ExerciseRun>();
    run->exercise = std::move(*read.exercise);
    if (!run->exercise.from_job) name_exercise(language, run->exercise);
    errands_.push_back({ErrandKind::link_taken, {}});
    begin_exercise(std::move(run));
}

void Program::receive(ReadResult read, const std::string& from) {
    const Language language = state_.looks.language;
    if (!read)
        return notice(say(language, Word::not_opened, {from, fault_sentence(language, read.fault)}),
                      true);
    errands_.push_back({ErrandKind::link_taken, {}});
    state_.practice.trainee.arrived = std::move(read.result);
    state_.practice.trainee.group = false;
    state_.share.reset();
    state_.measuring.open = false;
    state_.day.open = false;
    carry_out(ShowPractice{PracticePart::trainees});
}

bool Program::receive_document(const std::string& text, const std::string& key,
                               const std::string& from) {
    if (key == exercise_key) receive(read_exercise(text), from);
    else if (key == result_key) receive(read_result(text), from);
    else return false;
    return true;
}

void Program::carry_out(const NoteResult&) {
    std::optional<ExerciseResult>& arrived = state_.practice.trainee.arrived;
    const TraineeRow who = session_.practised_by().who;
    if (!arrived || who.id == 0) return;
    // Of a clock that is ahead: else nothing done later would ever be the last.
    Attempt attempt = arrived->attempt;
    attempt.time = std::min(attempt.time, session_.time());
    if (!session_.note_attempt(attempt)) return say_trouble();
    arrived.reset();
    take_person();
    notice(say(state_.looks.language, Word::exercise_result_kept, {who.name}));
}

void Program::carry_out(const DropResult&) { state_.practice.trainee.arrived.reset(); }

std::string Program::trainee_text(const EditText& edit) const {
    if (edit.target == TextTarget::sender) return state_.practice.trainee.sender;
    if (edit.target == TextTarget::trainee_name) return session_.practised_by().who.name;
    return {};
}

std::optional<bool> Program::accept_trainee_text(const TextEntry& entry) {
    const Language language = state_.looks.language;
    if (entry.target != TextTarget::new_trainee && entry.target != TextTarget::trainee_name &&
        entry.target != TextTarget::sender)
        return std::nullopt;
    const std::optional<std::string> name = trainee_name(entry.text);
    const bool blank = entry.text.find_first_not_of(" \t\r\n") == std::string::npos;
    // A field that was left blank changes nothing; the sender's may be.
    if (blank && entry.target == TextTarget::sender) state_.practice.trainee.sender.clear();
    if (blank) return true;
    if (!name) {
        notice(say(language, Word::library_bad_name, {std::to_string(longest_name)}), true);
        return false;
    }
    if (entry.target == TextTarget::sender) {
        state_.practice.trainee.sender = *name;
        return true;
    }
    const bool adding = entry.target == TextTarget::new_trainee;
    if (adding && session_.group().size() >= most_trainees) {
        notice(say(language, Word::trainee_too_many, {std::to_string(most_trainees)}), true);
        return false;
    }
    const bool done = adding ? session_.add_trainee(*name)
                             : session_.rename_trainee(session_.practised_by().who.id, *name);
    if (!done) say_trouble();
    else if (adding) state_.practice.trainee.sender.clear(); // another sits here now
    take_person();
    return done;
}

} // namespace carriageway
