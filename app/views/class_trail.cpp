// The view for a class: its switches, and the trail behind the pointer.
#include "app/views/class_view.h"

namespace carriageway {

namespace {

constexpr float widest_trail = 9.0f, narrowest_trail = 2.0f; ///< dp
constexpr float opaque = 230.0f;                             ///< of 255

/// How fresh a point is: 1 now, 0 gone.
float freshness(const TrailPoint& point, double now) {
    return static_cast<float>(std::clamp(1.0 - (now - point.time) / trail_seconds, 0.0, 1.0));
}

} // namespace

void class_rows(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const ClassState& state = model.state->class_view;
    const auto words = [&](Word key) { return std::string(canvas.word(key)); };
    const TypeStyle label{TypeSize::small, false};
    rows.text(canvas.word(Word::class_view), label, Role::soft_ink, 4.0f);
    choices("class", canvas.word(Word::class_view),
            {{"class/off", words(Word::class_off), canvas.action(ShowClass{false}), !state.on},
             {"class/on", words(Word::class_on), canvas.action(ShowClass{true}), state.on}},
            rows);
    rows.text(canvas.word(Word::class_on_detail), label, Role::soft_ink, 10.0f);
    if (!state.on) return;
    rows.text(canvas.word(Word::class_follow), label, Role::soft_ink, 4.0f);
    choices("follow", canvas.word(Word::class_follow),
            {{"follow/no", words(Word::class_follow_no), canvas.action(FollowExercise{false}),
              !state.follow},
             {"follow/yes", words(Word::class_follow_yes), canvas.action(FollowExercise{true}),
              state.follow}},
            rows);
}

void class_trail(const ClassState& state, DrawingList& list) {
    if (!state.on || state.trail.empty()) return;
    const int before = list.layer();
    list.set_layer(3);
    for (std::size_t i = 1; i < state.trail.size(); ++i) {
        const float fresh = freshness(state.trail[i], state.now);
        if (fresh <= 0.0f) continue;
        const Vec part[] = {state.trail[i - 1].at, state.trail[i].at};
        const float width = narrowest_trail + (widest_trail - narrowest_trail) * fresh;
        list.line(part, 2, paint(Role::focus, static_cast<int>(opaque * fresh)), width);
    }
    const TrailPoint& last = state.trail.back();
    const float fresh = freshness(last, state.now);
    list.disc(last.at, 0.5f * widest_trail + 3.0f,
              paint(Role::focus, static_cast<int>(opaque * fresh)));
    list.set_layer(before);
}

} // namespace carriageway
