// The walk round the press: where it is, and what is ticked on it.
#include "app/program.h"
#include "core/walk.h"

namespace carriageway {

void Program::resume_walk() {
    DayState& day = state_.day;
    const Job& job = session_.job();
    const bool under_way =
        find_head(job, day.walk_head) && !progress_at(job, day.walk_head).finished();
    const std::optional<HeadId> next =
        under_way ? day.walk_head : next_unfinished(job, day.walk_head);
    day.walk_head = next.value_or(0);
    day.walk_all = !next;
}

void Program::carry_out(const WalkTo& a) {
    DayState& day = state_.day;
    day.walk_head = a.head;
    day.walk_all = a.all;
    state_.day_scroll = 0.0f;
    state_.pad.reset();
    state_.typing.reset();
    // The button that led on may not be there any more.
    if (state_.show_focus && state_.focus != "walk/previous") state_.focus = "walk/next";
    if (state_.show_focus && a.all) state_.focus = "walk/previous";
}

void Program::carry_out(const TickWalk& a) {
    apply_edit(Edit{tick(session_.job(), a.head, a.field, stamp(), a.done)});
}

void Program::carry_out(const TickHead& a) {
    if (const std::optional<Edit> edit = tick_all(session_.job(), a.head, stamp(), a.done))
        apply_edit(*edit);
}

void Program::carry_out(const AsPlanned& a) {
    const Job& job = session_.job();
    if (const std::optional<double> planned = planned_value(job, a.head, a.field))
        apply_edit(Edit{really_set(job, a.head, a.field, *planned, stamp())});
}

void Program::carry_out(const WalkAgain&) {
    if (session_.job().walk.empty()) return;
    apply_edit(Edit{SetWalk{}});
    carry_out(WalkTo{next_unfinished(session_.job()).value_or(0)});
    notice(std::string(word(state_.looks.language, Word::walk_again_done)));
}

} // namespace carriageway
