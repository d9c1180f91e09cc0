// The log of calls: kept at each step, shown, and erased.
#include <algorithm>

#include "app/program.h"
#include "app/records/fault_book.h"

namespace carriageway {

namespace {

/// How many calls the log shows. Ours: years of them.
constexpr int most_calls_shown = 500;

/// What is told first: a log's line has room for one.
std::string found_id(const FaultBook& book, const CallNotes& notes) {
    return notes.told.empty() ? std::string() : book.causes[notes.told.front()].id;
}

} // namespace

void Program::read_calls() { state_.practice.call.log = session_.recent_calls(most_calls_shown); }

void Program::keep_call() {
    CallState& call = state_.practice.call;
    if (call.notes.job == 0) return; // none is open
    const FaultBook& book = fault_lore().book;
    CallRecord record = call.record;
    record.symptom = call.symptom ? book.symptoms[*call.symptom].id : std::string();
    record.found = found_id(book, call.notes);
    record.notes = write_call_notes(book, call.notes);
    const std::optional<CallId> id = session_.keep_call(call.id, record);
    if (!id) return say_trouble();
    call.id = *id;
    call.record = std::move(record);
}

void Program::show_call() {
    read_calls();
    carry_out(ShowPractice{PracticePart::call});
    if (state_.show_focus) state_.focus = "practice/call";
}

void Program::carry_out(const AskEraseCall& a) {
    CallState& call = state_.practice.call;
    const CallId asked = call.erasing.value_or(0);
    call.erasing = a.call;
    if (!state_.show_focus) return;
    const std::string name = "call/row/" + std::to_string(a.call.value_or(asked));
    state_.focus = name + (a.call ? "/keep" : "/erase");
}

/// Only after it was asked for the same call. Its job goes the way of every deleted job: it can be
/// brought back.
void Program::carry_out(const EraseCall& a) {
    CallState& call = state_.practice.call;
    if (call.erasing != a.call) return;
    call.erasing.reset();
    JobId job = 0;
    for (const CallRow& row : call.log)
        if (row.id == a.call) job = read_call_notes(fault_lore().book, row.call.notes).job;
    if (!session_.erase_call(a.call)) {
        read_calls();
        return say_trouble();
    }
    read_calls();
    if (state_.show_focus) state_.focus = "call/begin";
    const std::vector<JobRow>& rows = session_.rows();
    const bool there = job != 0 && std::any_of(rows.begin(), rows.end(), [&](const JobRow& row) {
        return row.id == job;
    });
    const bool was_visiting = session_.visiting();
    const bool open = there && session_.current() == job;
    const bool removed = there && session_.remove(job);
    if (open && removed) arrive(was_visiting);
    if (open && removed) carry_out(ShowPractice{PracticePart::call});
    notice(std::string(word(state_.looks.language, Word::call_erased)), false, removed ? job : 0);
}

} // namespace carriageway
