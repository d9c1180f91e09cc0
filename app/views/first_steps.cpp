// The card of the first steps, and the ring round the head that they are about.
#include <cmath>

#include "app/views/first_view.h"

namespace carriageway {

namespace {

constexpr float padding = 14.0f, corner = 14.0f, gap = 8.0f;
constexpr float least_button = 48.0f, least_fix = 60.0f;

/// What a step says.
struct StepWords {
    Word title;
    Word task;
    int number = 0; ///< of three; 0: none
};

StepWords words_of(const Model& model) {
    const FirstState& first = model.state->first;
    const bool looked_at = model.state->head == first.head;
    switch (first.step) {
    case FirstStep::none:
    case FirstStep::drag:
        return {Word::first_drag, looked_at ? Word::first_drag_task : Word::first_tap_task, 1};
    case FirstStep::read: return {Word::first_read, Word::first_read_task, 2};
    case FirstStep::fix: return {Word::first_fix, Word::first_fix_task, 3};
    case FirstStep::done: break;
    }
    return {Word::first_done, first.copy ? Word::first_done_copy : Word::first_done_task, 0};
}

/// A button as high as its words need in a width.
float height_of(const Canvas& canvas, std::string_view words, float width, float least) {
    return canvas.button_height(words, {}, width, least);
}

/// Skip and next: side by side where the words fit, otherwise one below the other.
void buttons(const Model& model, Rows& inner) {
    Canvas& canvas = inner.canvas;
    const FirstState& first = model.state->first;
    if (first.step == FirstStep::done) {
        const std::string_view words =
            canvas.word(first.copy ? Word::first_back_to_job : Word::first_close);
        const float height = height_of(canvas, words, inner.width, least_button);
        canvas.button("first/close", inner.next(height, 0.0f), words, ButtonLook::strong,
                      canvas.action(EndFirstSteps{}));
        return;
    }
    const std::string_view skip = canvas.word(Word::first_skip);
    const std::string_view next = canvas.word(Word::first_next);
    const float half = 0.5f * (inner.width - gap);
    const auto fits = [&](std::string_view words) {
        return canvas.type().width(bold_text, words) <= half - 24.0f;
    };
    const bool beside = fits(skip) && fits(next);
    const float width = beside ? half : inner.width;
    const float height = std::max(height_of(canvas, skip, width, least_button),
                                  height_of(canvas, next, width, least_button));
    const float y = inner.y;
    const Box left{inner.x, y, inner.x + width, y + height};
    const Box right = beside ? Box{left.x1 + gap, y, inner.x + inner.width, y + height}
                             : Box{inner.x, left.y1 + gap, left.x1, left.y1 + gap + height};
    canvas.button("first/skip", left, skip, ButtonLook::plain, canvas.action(EndFirstSteps{}));
    canvas.button("first/next", right, next, ButtonLook::quiet, canvas.action(NextFirstStep{}));
    inner.y = right.y1;
}

/// Sets the head as it should be.
void set_button(const Model& model, Rows& inner) {
    const FirstState& first = model.state->first;
    const HeadAssessment* head = find_head(*model.assessment, first.head);
    if (first.step != FirstStep::fix || !head || !head->advised) return;
    const std::string_view words = inner.canvas.word(Word::first_set);
    const float height = height_of(inner.canvas, words, inner.width, least_fix);
    inner.canvas.button("first/set", inner.next(height), words, ButtonLook::strong,
                        inner.canvas.action(DoEdit{Edit{SetStops{head->head, *head->advised}}}));
}

/// Everything in the card but its ground, from `inner.y` down.
void contents(const Model& model, Rows& inner) {
    Canvas& canvas = inner.canvas;
    const StepWords words = words_of(model);
    const float top = inner.y;
    const std::string number = std::to_string(words.number);
    const std::string counted = say(canvas.language(), Word::first_number, {number});
    if (words.number > 0) inner.text(counted, small_bold_text, Role::soft_ink, 2.0f);
    inner.text(canvas.word(words.title), bold_text, Role::ink, 4.0f);
    std::string task = std::string(canvas.word(words.task));
    if (words.task == Word::first_tap_task)
        if (const Head* head = find_head(*model.job, model.state->first.head))
            task = say(canvas.language(), words.task, {std::to_string(head->station)});
    inner.text(task, body_text, Role::ink, 4.0f);
    Thing& said = canvas.list().thing("first/step", ThingRole::text,
                                      {inner.x, top, inner.x + inner.width, inner.y});
    said.label.assign(canvas.word(words.title));
    if (words.number > 0) said.label = counted + ": " + said.label;
    said.value = task;
    said.live = true;
    if (model.state->first.copy && words.number > 0)
        inner.text(canvas.word(Word::first_on_copy), small_text, Role::soft_ink, 4.0f);
    inner.space(6.0f);
    set_button(model, inner);
    buttons(model, inner);
}

} // namespace

HeadId head_to_learn_on(const Assessment& assessment) {
    HeadId found = 0;
    for (const HeadAssessment& head : assessment.heads) {
        if (head.fit) continue;
        if (found == 0) found = head.head;
        for (const Finding& finding : head.findings)
            if (finding.kind == FindingKind::both_sensors_on) return head.head;
    }
    return found;
}

bool first_steps_on_screen(const Model& model) {
    return model.state->first.step != FirstStep::none && model.state->place == Place::press;
}

bool first_ring_on_screen(const Model& model) {
    const ViewState& state = *model.state;
    return first_steps_on_screen(model) && state.first.step == FirstStep::drag && !state.day.open &&
           !state.share && !state.measuring.open && !state.held;
}

void first_card(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    // The ground is drawn before what stands on it, as high as that came to: it is worked out on a
    // list of its own.
    thread_local Frame aside; // kept for its broken lines
    aside.begin(list.window(), list.type());
    Canvas measured(aside, canvas.language());
    Rows dry{measured, rows.x + padding, rows.width - 2.0f * padding, 0.0f, Role::card};
    contents(model, dry);
    const Box box = rows.next(dry.y + 2.0f * padding, 14.0f);
    list.round(box, corner, paint(Role::card));
    list.ring(box, corner, paint(Role::focus), 2.0f);
    const Box inside = box.inset(padding);
    Rows inner{canvas, inside.x0, inside.width(), inside.y0, Role::card};
    contents(model, inner);
}

void first_ring(const Model& model, const std::vector<Box>& boxes, Canvas& canvas) {
    if (!first_ring_on_screen(model)) return;
    const double pulses = model.state->first.pulses;
    const bool rests = pulses >= first_pulses;
    const float share = rests ? 0.0f : static_cast<float>(pulses - std::floor(pulses));
    constexpr float rest = 4.0f, reach = 16.0f, width = 3.5f;
    constexpr int opaque = 255;
    DrawingList& list = canvas.list();
    for (const Box& box : boxes) {
        const float round = std::min(12.0f, 0.5f * std::min(box.width(), box.height()));
        list.ring(box.inset(-rest), round + rest, paint(Role::focus), width);
        if (rests) continue;
        // It leaves the resting ring, grows and fades.
        const float out = rest + reach * share;
        const int alpha = static_cast<int>(opaque * (1.0f - share));
        list.ring(box.inset(-out), round + out, paint(Role::focus, alpha), width);
    }
}

void first_again_row(const Model&, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string_view words = canvas.word(Word::first_again);
    const std::string_view detail = canvas.word(Word::first_again_detail);
    const float height = canvas.button_height(words, detail, rows.width, least_button);
    canvas.button("first/again", rows.next(height, 12.0f), words, ButtonLook::plain,
                  canvas.action(BeginFirstSteps{}), detail);
}

} // namespace carriageway
