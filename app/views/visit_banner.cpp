// A job from a link: that it isn't kept yet, and the buttons that keep or leave it. In its place an
// exercise that is under way: what is asked, and the buttons that have it marked or leave it.
#include "app/views/exercise_view.h"

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

/// What a banner says and offers.
struct Banner {
    std::string words;
    Word keep = Word::keep_visit, leave = Word::leave_visit;
    std::string_view name = "visit", keep_name = "visit/keep", leave_name = "visit/leave";
    Role ring = Role::mind;
};

std::optional<Banner> banner_of(const Model& model) {
    if (model.state->place != Place::press) return std::nullopt;
    const Language language = model.state->looks.language;
    if (examined(model.state->practice.exercise))
        return Banner{exercise_banner_words(model), Word::exercise_mark, Word::exercise_leave,
                      "exercise", "exercise/mark", "exercise/leave", Role::focus};
    if (!model.visiting) return std::nullopt;
    Banner banner;
    banner.words = word(language, Word::visit);
    return banner;
}

void set_buttons(const Canvas& canvas, const Banner& banner, float keep, float leave, Plan& plan) {
    plan.keep_width = keep;
    plan.leave_width = leave;
    plan.button_height =
        std::max(canvas.button_height(canvas.word(banner.keep), {}, keep, least_height),
                 canvas.button_height(canvas.word(banner.leave), {}, leave, least_height));
}

Plan plan_of(const Canvas& canvas, const Banner& banner, float width, bool compact) {
    const std::string_view words = banner.words;
    const auto natural = [&](Word key) {
        return std::max(80.0f, canvas.type().width({TypeSize::body, true}, canvas.word(key)) + 25.0f);
    };
    const float keep = natural(banner.keep), leave = natural(banner.leave);
    const float inside = width - 2.0f * (margin + padding);
    Plan plan;
    set_buttons(canvas, banner, keep, leave, plan);
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
        set_buttons(canvas, banner, keep * share, leave * share, plan);
    }
    const float content = plan.beside ? std::max(plan.words_height, plan.button_height)
                                      : plan.words_height + plan.button_height;
    plan.height = content + 2.0f * padding + 4.0f;
    return plan;
}

} // namespace

float banner_height(const Model& model, Canvas& canvas, float width, bool compact) {
    const std::optional<Banner> banner = banner_of(model);
    return banner ? plan_of(canvas, *banner, width, compact).height : 0.0f;
}

void visit_banner(const Model& model, const Layout& layout, Canvas& canvas) {
    const std::optional<Banner> banner = banner_of(model);
    if (!banner) return;
    const bool exercise = examined(model.state->practice.exercise);
    DrawingList& list = canvas.list();
    const Plan plan = plan_of(canvas, *banner, layout.banner.width(), layout.compact);
    const int before = list.layer();
    list.set_layer(1);
    const Box box{layout.banner.x0 + margin, layout.banner.y0, layout.banner.x1 - margin, layout.banner.y1 - 4.0f};
    list.round(box, 14.0f, paint(Role::panel));
    list.ring(box, 14.0f, paint(banner->ring), 1.8f);
    const std::string& words = banner->words;
    list.thing(banner->name, ThingRole::region, box).label = words;
    const float x = box.x0 + padding + 4.0f;
    float y = box.y0 + padding;
    if (plan.words) {
        const float top = plan.beside ? box.centre().y - 0.5f * plan.words_height : y;
        canvas.paragraph({x, top}, plan.words_width, words, plan.style, Role::ink, Role::panel);
        canvas.reading(std::string(banner->name) + "/words", {x, top, x + plan.words_width, top + plan.words_height}, words, {});
    }
    if (!plan.beside) y += plan.words_height;
    const float right = box.x1 - padding;
    const float left = right - plan.leave_width - gap - plan.keep_width;
    canvas.button(banner->keep_name, {left, y, left + plan.keep_width, y + plan.button_height},
                  canvas.word(banner->keep), ButtonLook::strong,
                  exercise ? canvas.action(MarkExercise{}) : canvas.action(KeepVisit{}));
    canvas.button(banner->leave_name, {right - plan.leave_width, y, right, y + plan.button_height},
                  canvas.word(banner->leave), ButtonLook::plain,
                  exercise ? canvas.action(LeaveExercise{}) : canvas.action(LeaveVisit{}));
    list.set_layer(before);
}

} // namespace carriageway
