// The first steps: begun on the first start or when asked, gone through, and put away for good.
#include "app/program.h"
#include "app/views/first_view.h"

namespace carriageway {

namespace {

std::uint64_t sections_open(const ViewState& state) {
    static_assert(static_cast<std::size_t>(Section::count) <= 64);
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < state.open.size(); ++i)
        if (state.open[i]) bits |= std::uint64_t{1} << i;
    return bits;
}

} // namespace

/// Shows them on the job that is open, or on a copy of the demonstration that is never stored.
void Program::begin_first_steps(bool copy) {
    if (state_.first.step != FirstStep::none) put_first_steps_away();
    let_go();
    FirstState first;
    first.head_before = state_.head;
    first.copy = copy;
    if (copy) session_.practise(demo_job());
    first.head = head_to_learn_on(session_.assessment());
    const Head* head = find_head(session_.job(), first.head);
    if (!head) { // a demonstration with nothing wrong teaches nothing
        if (copy) session_.end_practice();
        return;
    }
    first.stops = head->stops;
    first.job = session_.current();
    first.step = FirstStep::drag;
    state_.first = first;
    choose_head(0); // all of the press, with one head that pulses
    state_.stop = End::machine_side;
    state_.cycle.open = false;
    state_.tall_sheet = false;
    if (state_.show_focus) state_.focus = "head/" + std::to_string(head->station);
}

/// On the demonstration where it lies open untouched, otherwise on a copy of it.
void Program::carry_out(const BeginFirstSteps&) {
    if (examined(state_.practice.exercise)) carry_out(LeaveExercise{});
    put_first_steps_away();
    begin_first_steps(session_.practising() || session_.visiting() ||
                      !(session_.job() == demo_job()));
}

void Program::go_to_first_step(FirstStep step) {
    FirstState& first = state_.first;
    first.step = step;
    first.pulses = first_pulses;
    state_.panel_scroll = 0.0f; // where the step stands
    // On a phone what is to be read would lie below the edge; the drawing has its room back after.
    state_.tall_sheet = step == FirstStep::read;
    if (step != FirstStep::read && step != FirstStep::fix) return;
    // What is wrong stands in the head's own panel.
    if (state_.head != first.head) choose_head(first.head);
    first.opened = sections_open(state_);
}

void Program::carry_out(const NextFirstStep&) {
    switch (state_.first.step) {
    case FirstStep::none: return;
    case FirstStep::drag: return go_to_first_step(FirstStep::read);
    case FirstStep::read: return go_to_first_step(FirstStep::fix);
    case FirstStep::fix: return go_to_first_step(FirstStep::done);
    case FirstStep::done: return carry_out(EndFirstSteps{});
    }
}

void Program::carry_out(const EndFirstSteps&) {
    if (state_.first.step == FirstStep::none) return;
    put_first_steps_away();
    notice(std::string(word(state_.looks.language, Word::first_where_again)));
    // The button that had the keyboard is gone.
    const Head* head = find_head(session_.job(), state_.head);
    if (state_.show_focus) state_.focus = head ? "stop/more" : "place/press";
}

void Program::put_first_steps_away() {
    FirstState& first = state_.first;
    if (first.step == FirstStep::none) return;
    const bool copy = first.copy && first_steps_go_on(first);
    const HeadId before = first.head_before;
    first = {};
    state_.tall_sheet = false;
    if (copy) {
        let_go();
        fling_.reset();
        session_.end_practice();
        state_.head = find_head(session_.job(), before) ? before : 0;
        state_.pad.reset();
        state_.typing.reset();
        state_.day.open = state_.measuring.open = false;
        state_.tilted.reset();
        state_.own_camera = false;
        state_.move.reset();
        state_.panel_scroll = 0.0f;
    }
    if (state_.habits.first_steps || session_.read_only()) return;
    Habits habits = state_.habits;
    habits.first_steps = true;
    set_habits(habits);
}

/// Whether the job that they are about is still the one that is open.
bool Program::first_steps_go_on(const FirstState& first) const {
    if (examined(state_.practice.exercise) || session_.practising() != first.copy) return false;
    return session_.current() == first.job && !session_.visiting() &&
           find_head(session_.job(), first.head) != nullptr;
}

void Program::mind_first_steps() {
    FirstState& first = state_.first;
    if (first.step == FirstStep::none) return;
    if (!first_steps_go_on(first)) return put_first_steps_away();
    if (first.began < 0.0) first.began = now_;
    if (first.step == FirstStep::drag)
        first.pulses = std::clamp((now_ - first.began) / first_pulse_seconds, 0.0,
                                  static_cast<double>(first_pulses));
    const bool moved = !(find_head(session_.job(), first.head)->stops == first.stops);
    if (first.step == FirstStep::drag && moved && !state_.held)
        return go_to_first_step(FirstStep::read);
    if (first.step == FirstStep::read && (sections_open(state_) & ~first.opened) != 0)
        return go_to_first_step(FirstStep::fix);
    const HeadAssessment* assessed = find_head(session_.assessment(), first.head);
    if (first.step == FirstStep::fix && assessed && assessed->fit && !session_.previewing())
        go_to_first_step(FirstStep::done);
}

bool Program::first_pulses_run() const {
    return state_.first.step == FirstStep::drag && state_.first.pulses < first_pulses &&
           first_ring_on_screen(model());
}

} // namespace carriageway
