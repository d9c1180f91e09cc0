// The view for a class: begun and left, the pointer's trail, and the camera that follows what is
// practised.
#include <algorithm>
#include <variant>

#include "app/drawing/diagram.h"
#include "app/program.h"
#include "app/views/cycle_view.h"
#include "app/views/exercise_run.h"

namespace carriageway {

namespace {

/// Nearer than this (dp) to the last point, or sooner after it (s), the pointer leaves no new one:
/// a trail has at most some fifty.
constexpr float least_way = 2.0f;
constexpr double least_time = 0.016;

/// Faster than this (dp/s) no hand goes on: another finger touches. Ours.
constexpr double fastest_hand = 8000.0;

/// What `Followed::what` says besides an exercise, which is the time at which it began.
constexpr std::int64_t a_cycle = -1, a_fault = -2, a_call = -3;

/// The head that an edit changes; 0: none, or the whole press.
HeadId head_of(const Edit& edit) {
    return std::visit(
        [](const auto& what) -> HeadId {
            if constexpr (requires { HeadId{what.head}; }) return what.head;
            else return 0;
        },
        edit.what);
}

} // namespace

void Program::carry_out(const ShowClass& a) {
    ClassState& view = state_.class_view;
    if (a.on == view.on) return;
    Looks looks = state_.looks;
    if (a.on) {
        view.own_scale = looks.text_scale;
        view.scale = std::max(least_class_scale, looks.text_scale);
        view.followed = followed(); // what is under way already is where the person has it
    } else {
        view.trail.clear();
    }
    view.on = a.on;
    state_.looks.text_scale = a.on ? view.scale : view.own_scale;
    notice(std::string(word(looks.language, a.on ? Word::class_entered : Word::class_left)));
}

void Program::carry_out(const FollowExercise& a) {
    state_.class_view.follow = a.follow;
    state_.class_view.followed = followed();
}

void Program::trace_pointer(const InputEvent& event) {
    ClassState& view = state_.class_view;
    if (!view.on || (event.kind != InputKind::move && event.kind != InputKind::down)) return;
    if (!view.trail.empty()) {
        const TrailPoint& last = view.trail.back();
        const float way = length(event.at - last.at);
        const double since = now_ - last.time;
        const bool begins = event.kind == InputKind::down && event.pointer != 0; // a finger
        if (!begins && (way < least_way || since < least_time)) return;
        if (begins || way > fastest_hand * since) view.trail.clear();
    }
    view.trail.push_back({event.at, now_});
}

void Program::run_trail() {
    state_.class_view.now = now_;
    std::erase_if(state_.class_view.trail,
                  [&](const TrailPoint& point) { return now_ - point.time >= trail_seconds; });
}

/// The head that what is under way is about. An exercise to find a fault isn't given away: there it
/// is the head of what was ticked last.
Followed Program::followed() const {
    const PracticeState& practice = state_.practice;
    if (examined(practice.exercise)) {
        const ExerciseRun& run = *practice.exercise.run;
        const std::int64_t began = run.began + 1; // a moment of the clock is never 0
        const std::vector<Edit>& made = session_.practised();
        HeadId head = shows_whole_press(run.exercise.kind) ? 0 : run.exercise.head;
        if (!run.answer.faults.empty()) head = run.answer.faults.back().head;
        if (!made.empty() && head_of(made.back()) != 0) head = head_of(made.back());
        return {began, head};
    }
    if (state_.cycle.open && cycle_on_screen(model())) return {a_cycle, state_.head};
    if (state_.place != Place::practice) return {};
    if (practice.part == PracticePart::faults) return {a_fault, practice.fault.head};
    const bool call = practice.part == PracticePart::call && practice.call.id != 0;
    return call ? Followed{a_call, practice.call.notes.head} : Followed{};
}

/// Brings the camera there once, when it is another; by hand it may then go anywhere.
void Program::follow_exercise() {
    ClassState& view = state_.class_view;
    if (!view.on || !view.follow) return;
    const Followed now = followed();
    if (now == view.followed) return;
    view.followed = now;
    const Head* head = find_head(session_.shown(), now.head);
    if (!head) return;
    // Seen when the press is gone to.
    if (now.what == a_fault || now.what == a_call) state_.head = now.head;
    const bool chosen = state_.head == now.head;
    state_.own_camera = !chosen;
    move_camera(chosen ? home_camera()
                       : camera_for_head(session_.shown(), *head, layout_.diagram, rail_room));
}

} // namespace carriageway
