// The sheet for the run: opening and leaving it, and the numbers and texts typed there.
#include "app/program.h"
#include "app/text/sentences.h"
#include "app/views/day_view.h"
#include "core/job_check.h"
#include "core/walk.h"

namespace carriageway {

namespace {

/// As much of a text as fits into so many bytes, without half a character.
std::string first_bytes(std::string text, std::size_t most) {
    if (text.size() > most) text.resize(most);
    while (!is_utf8(text)) text.pop_back();
    return text;
}

} // namespace

void Program::carry_out(const OpenDay& a) {
    DayState& day = state_.day;
    if (!day.open) day.opener = state_.focus;
    day.open = true;
    state_.measuring.open = false;
    state_.share.reset();
    state_.notice.reset();
    carry_out(ShowDay{a.part});
}

void Program::carry_out(const ShowDay& a) {
    DayState& day = state_.day;
    day.part = a.part;
    day.changing_list = false;
    state_.day_scroll = 0.0f;
    state_.pad.reset();
    state_.typing.reset();
    if (a.part == DayPart::walk) resume_walk();
    if (state_.show_focus) state_.focus = a.part == DayPart::contents ? "day/close" : "day/back";
}

void Program::carry_out(const CloseDay&) {
    if (!state_.day.open) return;
    state_.pad.reset();
    state_.typing.reset();
    state_.focus = state_.day.opener;
    state_.day.open = false;
}

Stamp Program::stamp() const { return {session_.time(), state_.habits.initials}; }

void Program::carry_out(const OpenDayPad& a) {
    Pad pad;
    pad.day = a.target;
    const Job& job = session_.job();
    if (a.target.number == DayNumber::really_set) {
        const WalkMark* mark = mark_of(job, a.target.head, a.target.field);
        const double planned = number_of(job, find_head(job, a.target.head), a.target.field);
        const double value = mark && mark->real ? *mark->real : planned;
        const bool stop = is_stop(a.target.field);
        pad.text = stop ? plain_ruler(job.press.ruler, value)
                        : plain_quantity(value, info_of(a.target.field).quantity, state_.looks.units);
    } else {
        pad.fresh = false;
    }
    state_.pad = pad;
    if (state_.show_focus) state_.focus = "pad/accept";
}

void Program::accept_day_pad() {
    Pad& pad = *state_.pad;
    const DayTarget target = pad.day;
    const Quantity quantity = day_quantity(target);
    const bool stop = target.number == DayNumber::really_set && is_stop(target.field);
    const Ruler& ruler = session_.job().press.ruler;
    const std::optional<double> typed =
        read_quantity(pad.text, quantity, stop ? unit_of(ruler) : state_.looks.units);
    if (!typed) {
        pad.trouble = say(state_.looks.language,
                          quantity == Quantity::length ? Word::number_not_read
                                                       : Word::number_not_read_plain,
                          {pad.text});
        return;
    }
    if (target.number == DayNumber::really_set) {
        const double value =
            stop ? ruler_position(ruler, ruler.inches ? *typed / mm_per_inch : *typed) : *typed;
        if (!accepts(target.field, value)) {
            pad.trouble = refusal_text(state_.looks.language, state_.looks.units,
                                       Refusal::out_of_range, target.field,
                                       session_.job().press.stations);
            return;
        }
        apply_edit(Edit{really_set(session_.job(), target.head, target.field, value, stamp())});
        state_.pad.reset();
        return;
    }
    accept_counted(target.number, *typed);
}

std::string Program::day_text(const EditText& edit) const {
    const Job& job = session_.job();
    switch (edit.target) {
    case TextTarget::initials: return state_.habits.initials;
    case TextTarget::link_base: return state_.habits.link_base;
    case TextTarget::approved_by: return job.record.approval.by;
    case TextTarget::approved_against: return job.record.approval.against;
    case TextTarget::stoppage_note:
        return job.record.stoppages.empty() ? std::string() : job.record.stoppages.back().note;
    case TextTarget::note:
        if (edit.note == Note::garment) return job.garment.name;
        if (edit.note == Note::run) return job.record.notes;
        if (const Head* head = find_head(job, edit.head))
            return edit.note == Note::ink ? head->notes.ink : head->notes.stencil;
        return {};
    default: return {};
    }
}

std::optional<bool> Program::accept_day_text(const TextEntry& entry) {
    Habits habits = state_.habits;
    RunRecord record = session_.job().record;
    switch (entry.target) {
    case TextTarget::initials:
        habits.initials = first_bytes(entry.text, longest_initials);
        set_habits(habits);
        return true;
    case TextTarget::link_base:
        habits.link_base = entry.text;
        set_habits(habits);
        return true;
    case TextTarget::note: return apply_edit(Edit{SetNote{entry.head, entry.note, entry.text}});
    case TextTarget::approved_by:
        record.approval.by = entry.text;
        record.approval.time = entry.text.empty() ? 0 : session_.time();
        return put_record(record);
    case TextTarget::approved_against:
        record.approval.against = entry.text;
        return put_record(record);
    case TextTarget::stoppage_note:
        if (record.stoppages.empty()) return true;
        record.stoppages.back().note = entry.text;
        return put_record(record);
    case TextTarget::own_step: return add_own_step(entry.text);
    default: return std::nullopt;
    }
}

void Program::set_habits(const Habits& habits) {
    state_.habits = habits;
    session_.set_habits(habits);
}

/// The sheet lies over everything: only what moves about in it goes on to the rest.
bool Program::day_key(const InputEvent& event) {
    if (event.key == Key::escape) {
        if (state_.day.part == DayPart::contents) act(CloseDay{});
        else act(ShowDay{DayPart::contents});
        return true;
    }
    const bool undo = event.control && (event.key == Key::z || event.key == Key::y);
    return undo ? false : sheet_key(event);
}

} // namespace carriageway
