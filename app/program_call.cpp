// A call: begun on a job of its own, asked through, and ended. Each step is kept at once.
#include <algorithm>

#include "app/program.h"
#include "app/views/call_view.h"
#include "core/job_check.h"

namespace carriageway {

namespace {

/// A job's name that fits: where it would be too long, the words before it alone.
std::string call_job_name(Language language, const std::string& about) {
    std::string name = say(language, Word::call_job_name, {about});
    if (name.size() <= longest_name) return name;
    return std::string(word(language, Word::call_begin));
}

template <class Item> void put_in(std::vector<Item>& all, const Item& one) {
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

/// A press as it was kept, with one head on the first station that can hold one.
Job job_on(const PressProfile& press, Language language) {
    Job job = empty_job({});
    job.press = press;
    job.uses.assign(static_cast<std::size_t>(press.stations), StationUse::open);
    job.uses.front() = StationUse::load;
    job.uses.back() = StationUse::unload;
    for (int station = 2; station < press.stations; ++station) {
        if (!station_room(press, station).print_head) continue;
        job.heads.push_back(
            new_head(job, station, std::string(word(language, Word::call_head_name))));
        break;
    }
    return job;
}

} // namespace

/// The call's job is a new one of the library: nothing that a caller says reaches another, and it
/// is still there when the program was closed meanwhile.
bool Program::begin_call_job(PressId press) {
    const Language language = state_.looks.language;
    Job job = session_.job();
    if (press != 0) {
        const std::optional<PressProfile> kept = session_.kept_press(press);
        if (!kept) {
            say_trouble();
            return false;
        }
        job = job_on(*kept, language);
    }
    // What was noted by people on a walk or in a run is not the caller's.
    job.walk.clear();
    job.record = {};
    job.name = call_job_name(language, press != 0 ? job.press.name : job.name);
    const bool was_visiting = session_.visiting();
    if (!session_.open_new(job)) {
        say_trouble();
        return false;
    }
    arrive(was_visiting);
    return true;
}

void Program::carry_out(const BeginCall& a) {
    const Language language = state_.looks.language;
    // What has been answered so far is not thrown away.
    if (state_.practice.exercise.stage == ExerciseStage::under_way)
        return notice(say(language, Word::exercise_first, {word(language, Word::call_title)}),
                      true);
    close_exercise();
    const JobId before = session_.current();
    if (!begin_call_job(a.press)) return;
    CallState call;
    call.before = before;
    call.record.time = session_.time();
    call.record.press = session_.job().press.name;
    call.notes.job = session_.current();
    if (session_.job().heads.size() == 1) call.notes.head = session_.job().heads.front().id;
    state_.practice.call = std::move(call);
    keep_call();
    show_call();
}

void Program::carry_out(const OpenCall& a) {
    CallState& call = state_.practice.call;
    const Language language = state_.looks.language;
    if (state_.practice.exercise.stage == ExerciseStage::under_way)
        return notice(say(language, Word::exercise_first, {word(language, Word::call_title)}),
                      true);
    close_exercise();
    read_calls();
    const auto row = std::find_if(call.log.begin(), call.log.end(),
                                  [&](const CallRow& one) { return one.id == a.call; });
    if (row == call.log.end())
        return notice(std::string(word(language, Word::library_no_such_call)), true);
    CallState opened;
    opened.id = row->id;
    opened.record = row->call;
    opened.symptom = find_symptom(fault_lore().book, row->call.symptom);
    opened.notes = read_call_notes(fault_lore().book, row->call.notes);
    opened.before = call.id == a.call ? call.before : session_.current();
    const bool was_visiting = session_.visiting();
    if (session_.current() == 0 || session_.current() != opened.notes.job) {
        if (opened.notes.job != 0 && session_.open(opened.notes.job)) {
            arrive(was_visiting);
        } else {
            if (only_to_look() || !begin_call_job(0)) return;
            opened.notes.job = session_.current();
            notice(std::string(word(language, Word::call_job_gone)));
        }
    }
    if (!find_head(session_.job(), opened.notes.head)) opened.notes.head = 0;
    state_.practice.call = std::move(opened);
    if (!session_.read_only()) keep_call();
    show_call();
}

void Program::carry_out(const LeaveCall&) {
    const JobId before = state_.practice.call.before;
    const bool own = call_is_at_hand(state_.practice.call, session_.current());
    if (!session_.read_only()) keep_call();
    state_.practice.call = {};
    const bool was_visiting = session_.visiting();
    // Where the job from before has gone, the call's stays open.
    if (own && before != 0 && before != session_.current() && session_.open(before))
        arrive(was_visiting);
    else if (own && before == 0 && session_.bring_visit_back()) arrive(was_visiting);
    show_call();
}

void Program::carry_out(const ChooseCallSymptom& a) {
    CallState& call = state_.practice.call;
    call.symptom.reset();
    if (a.symptom && *a.symptom < fault_lore().book.symptoms.size()) call.symptom = a.symptom;
    // Answers go with what they were asked about; numbers that were read out stay true.
    call.notes.answers.clear();
    call.notes.skipped.clear();
    call.notes.told.clear();
    keep_call();
    show_call();
}

void Program::carry_out(const ChooseCallHead& a) {
    state_.practice.call.notes.head = find_head(session_.job(), a.head) ? a.head : 0;
    keep_call();
}

void Program::carry_out(const AnswerCall& a) {
    const std::vector<FaultTest>& tests = fault_lore().book.tests;
    if (a.answer.test >= tests.size() || a.answer.answer >= tests[a.answer.test].answers.size())
        return;
    std::vector<TestAnswer>& answers = state_.practice.call.notes.answers;
    const bool again = std::find(answers.begin(), answers.end(), a.answer) != answers.end();
    std::erase_if(answers, [&](const TestAnswer& one) { return one.test == a.answer.test; });
    if (!again) answers.push_back(a.answer);
    keep_call();
    go_to_question();
}

void Program::carry_out(const SkipQuestion& a) {
    CallNotes& notes = state_.practice.call.notes;
    if (a.question.kind == CallQuestion::Kind::test) put_in(notes.skipped, a.question.test);
    else
        for (const Field field : numbers_with(a.question.field))
            put_in(notes.read, NumberRead{a.question.head, field});
    keep_call();
    go_to_question();
}

/// The next question takes this one's place: the keyboard goes there.
void Program::go_to_question() {
    if (!state_.show_focus) return;
    const FaultLore& lore = fault_lore();
    const CallPlan plan =
        call_plan(lore, state_.practice.call, session_.job(), session_.assessment());
    state_.focus = "call/another";
    if (plan.questions.empty()) return;
    const CallQuestion& next = plan.questions.front();
    state_.focus = "call/as-shown";
    if (next.kind == CallQuestion::Kind::number) return;
    const FaultTest& test = lore.book.tests[next.test];
    state_.focus = "call/test/" + test.id + "/" + test.answers.front().id;
}

void Program::carry_out(const TellFix& a) {
    CallState& call = state_.practice.call;
    std::erase(call.notes.told, a.cause);
    if (a.told && a.cause < fault_lore().book.causes.size()) call.notes.told.push_back(a.cause);
    call.picture_after = a.told;
    keep_call();
}

void Program::carry_out(const ShowCallAfter& a) { state_.practice.call.picture_after = a.after; }

void Program::carry_out(const FixesAreSet&) {
    CallState& call = state_.practice.call;
    if (!call_is_at_hand(call, session_.current())) return;
    const CallPlan plan =
        call_plan(fault_lore(), call, session_.job(), session_.assessment());
    if (plan.edits.empty() || !apply_edit(Edit{Together{plan.edits}})) return;
    call.picture_after = false;
    keep_call();
}

void Program::carry_out(const EndCallAs& a) {
    state_.practice.call.record.outcome = a.outcome;
    keep_call();
}

void Program::note_read_out(HeadId head, Field field) {
    CallState& call = state_.practice.call;
    if (!call_is_at_hand(call, session_.current())) return;
    put_in(call.notes.read, NumberRead{head, field});
    keep_call();
}

std::string Program::call_text(const EditText& edit) const {
    const CallState& call = state_.practice.call;
    return edit.target == TextTarget::call_press ? call.record.press : call.notes.text;
}

std::optional<bool> Program::accept_call_text(const TextEntry& entry) {
    if (entry.target != TextTarget::call_press && entry.target != TextTarget::call_notes)
        return std::nullopt;
    const bool press = entry.target == TextTarget::call_press;
    const std::size_t most = press ? longest_call_text : longest_own_notes;
    if (entry.text.size() > most || !is_utf8(entry.text)) {
        notice(say(state_.looks.language, Word::call_text_too_long, {std::to_string(most)}), true);
        return false;
    }
    CallState& call = state_.practice.call;
    (press ? call.record.press : call.notes.text) = entry.text;
    keep_call();
    return true;
}

} // namespace carriageway
