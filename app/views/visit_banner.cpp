// A job from a link: that it isn't kept yet, and the buttons that keep or leave it.
#include "app/views/views.h"

namespace carriageway {

namespace {

constexpr float margin = 8.0f, padding = 8.0f, gap = 8.0f;
constexpr float least_height = 48.0f; ///< of its buttons

/// How the words and the two buttons share the width.
struct Plan {
    TypeStyle style;
    bool words = true;   ///< they stand here; otherwise only in the header
    bool beside = true;  ///< the buttons stand beside them, otherwise below
    float words_width = 0.0f, words_height = 0.0f;
    float keep_width = 0.0f, leave_width = 0.0f, button_height = 0.0f;
    float height = 0.0f; ///< of all, margins included
};

void set_buttons(const Canvas& canvas, float keep, float leave, Plan& plan) {
    plan.keep_width = keep;
    plan.leave_width = leave;
    plan.button_height = std::max(canvas.button_height(canvas.word(Word::keep_visit), {}, keep, least_height),
                                  canvas.button_height(canvas.word(Word::leave_visit), {}, leave, least_height));
}

Plan plan_of(const Canvas& canvas, float width, bool compact) {
    const std::string_view words = canvas.word(Word::visit);
    const auto natural = [&](Word key) {
        return std::max(80.0f, canvas.type().width({TypeSize::body, true}, canvas.word(key)) + 25.0f);
    };
    const float keep = natural(Word::keep_visit), leave = natural(Word::leave_visit);
    const float inside = width - 2.0f * (margin + padding);
    Plan plan;
    set_buttons(canvas, keep, leave, plan);
    plan.words_width = inside - keep - leave - 2.0f * gap - 4.0f;
    plan.beside = false;
    for (const TypeSize size : {TypeSize::body, TypeSize::small}) {
        if (plan.beside) break;
        plan.style = {size, false};
        plan.words_height = canvas.paragraph_height(plan.words_width, words, plan.style);
        plan.beside = plan.words_width >= canvas.widest_word(words, plan.style) &&
                      plan.words_height <= plan.button_height + 6.0f;
    }
    if (!plan.beside) {
        // Large letters on a small window: the header says it already, the room is the drawing's.
        plan.words = !compact || canvas.scale() < 1.2f;
        plan.style = {TypeSize::body, false};
        plan.words_width = inside;
        plan.words_height = plan.words ? canvas.paragraph_height(inside, words, plan.style) + gap : 0.0f;
        const float share = (inside - gap) / (keep + leave);
        set_buttons(canvas, keep * share, leave * share, plan);
    }
    const float content = plan.beside ? std::max(plan.words_height, plan.button_height)
                                      : plan.words_height + plan.button_height;
    plan.height = content + 2.0f * padding + 4.0f;
    return plan;
}

} // namespace

float banner_height(const Model& model, Canvas& canvas, float width, bool compact) {
    if (!model.visiting || model.state->place != Place::press) return 0.0f;
    return plan_of(canvas, width, compact).height;
}

void visit_banner(const Model&, const Layout& layout, Canvas& canvas) {
    DrawingList& list = canvas.list();
    const Plan plan = plan_of(canvas, layout.banner.width(), layout.compact);
    const int before = list.layer();
    list.set_layer(1);
    const Box box{layout.banner.x0 + margin, layout.banner.y0, layout.banner.x1 - margin, layout.banner.y1 - 4.0f};
    list.round(box, 14.0f, paint(Role::panel));
    list.ring(box, 14.0f, paint(Role::mind), 1.8f);
    const std::string_view words = canvas.word(Word::visit);
    list.thing("visit", ThingRole::region, box).label.assign(words);
    const float x = box.x0 + padding + 4.0f;
    float y = box.y0 + padding;
    if (plan.words) {
        const float top = plan.beside ? box.centre().y - 0.5f * plan.words_height : y;
        canvas.paragraph({x, top}, plan.words_width, words, plan.style, Role::ink, Role::panel);
        canvas.reading("visit/words", {x, top, x + plan.words_width, top + plan.words_height}, words, {});
    }
    if (!plan.beside) y += plan.words_height;
    const float right = box.x1 - padding;
    const float left = right - plan.leave_width - gap - plan.keep_width;
    canvas.button("visit/keep", {left, y, left + plan.keep_width, y + plan.button_height},
                  canvas.word(Word::keep_visit), ButtonLook::strong, canvas.action(KeepVisit{}));
    canvas.button("visit/leave", {right - plan.leave_width, y, right, y + plan.button_height},
                  canvas.word(Word::leave_visit), ButtonLook::plain, canvas.action(LeaveVisit{}));
    list.set_layer(before);
}

} // namespace carriageway
