// Running a cycle: time that goes on, stands, or is moved by hand.
#include <algorithm>
#include <cmath>

#include "app/program.h"
#include "app/views/cycle_view.h"

namespace carriageway {

void Program::carry_out(const OpenCycle& a) {
    CycleState& cycle = state_.cycle;
    const double pace = cycle.pace;
    cycle = {};
    cycle.pace = pace;
    cycle.open = cycle.playing = a.open;
    cycle.last = now_;
    if (!a.open) return;
    state_.place = Place::press;
    state_.tall_sheet = false;
}

void Program::carry_out(const PlayCycle& a) {
    state_.cycle.playing = a.playing;
    state_.cycle.last = now_;
}

void Program::carry_out(const PaceCycle& a) { state_.cycle.pace = a.pace; }

/// To the next event, or to the one before; round the cycle's end.
void Program::carry_out(const StepCycle& a) {
    CycleState& cycle = state_.cycle;
    const CycleView view =
        cycle_view(session_.shown(), session_.assessment(), state_.head, cycle.time);
    if (view.events.empty()) return;
    cycle.playing = false;
    constexpr double slack = 1e-6;
    if (a.by > 0) {
        const auto next =
            std::upper_bound(view.events.begin(), view.events.end(), cycle.time + slack);
        cycle.time = next == view.events.end() ? view.events.front() : *next;
    } else {
        const auto here =
            std::lower_bound(view.events.begin(), view.events.end(), cycle.time - slack);
        cycle.time = here == view.events.begin() ? view.events.back() : *(here - 1);
    }
}

void Program::drag_cycle(const HoldCycle& hold, Vec by) {
    state_.cycle.playing = false;
    state_.cycle.time = std::max(0.0, state_.cycle.time + by.x * hold.seconds_per_dp);
    const CycleView view =
        cycle_view(session_.shown(), session_.assessment(), state_.head, state_.cycle.time);
    state_.cycle.time = std::min(state_.cycle.time, view.seconds);
}

bool Program::cycle_runs() const {
    return state_.cycle.playing && cycle_on_screen(model());
}

void Program::run_cycle() {
    CycleState& cycle = state_.cycle;
    const double gone = now_ - cycle.last;
    cycle.last = now_;
    if (!cycle_runs()) return;
    const CycleView view =
        cycle_view(session_.shown(), session_.assessment(), state_.head, cycle.time);
    if (!(view.seconds > 0.0)) return;
    // A window that slept goes on where it was.
    constexpr double longest_frame = 0.25;
    cycle.time = std::fmod(cycle.time + std::clamp(gone, 0.0, longest_frame) * cycle.pace,
                           view.seconds);
}

} // namespace carriageway
