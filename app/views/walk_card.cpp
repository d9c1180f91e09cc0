// The numbers of a place on the walk, each a card: the value large, as the press shows it, beside a
// tick for a gloved finger.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/walk_sentences.h"
#include "app/views/walk_view.h"
#include "core/recipe.h"

namespace carriageway {

namespace {

constexpr float pad = 14.0f;
constexpr float tick_width = 68.0f; ///< of what a finger may hit
constexpr float tick_side = 40.0f;  ///< of what is drawn
constexpr float least_height = 92.0f;
constexpr float card_gap = 10.0f;
constexpr float sign = 13.0f, beside_sign = 6.0f;
constexpr float two_columns_from = 540.0f; ///< dp of width at a text size of 100 %

/// What a card says.
struct CardText {
    HeadId head = 0;
    Field field = Field::count;
    bool done = false;
    std::string label, value;
    std::string really;     ///< empty: as planned
    std::string as_planned; ///< on the button that takes it back
    std::string last_run;   ///< empty: no run, or as planned
    std::string stamp;
};

std::string last_run_text(const Model& model, HeadId head, Field field,
                          const std::string& planned) {
    if (!model.last_run) return {};
    const std::optional<double> then = value_as_set(*model.last_run, head, field);
    if (!then || is_not_noted(field, *then)) return {};
    const Language language = model.state->looks.language;
    const std::string value = walk_value(language, model.state->looks.units,
                                         model.job->press.ruler, field, *then);
    return value == planned ? std::string() : say(language, Word::walk_last_run, {value});
}

CardText text_of(const Model& model, HeadId head, Field field) {
    const Language language = model.state->looks.language;
    const LengthUnit units = model.state->looks.units;
    const Job& job = *model.job;
    const auto shown = [&](std::optional<double> value) {
        return walk_value(language, units, job.press.ruler, field, value.value_or(0.0));
    };
    CardText text;
    text.head = head;
    text.field = field;
    text.done = is_done(job, head, field);
    text.label = capitalised(word(language, walk_word(field)));
    text.value = shown(value_as_set(job, head, field));
    const std::string planned = shown(planned_value(job, head, field));
    text.really = really_set_text(language, units, job, head, field);
    if (!text.really.empty())
        text.as_planned = say(language, Word::walk_as_planned, {planned});
    text.last_run = last_run_text(model, head, field, planned);
    if (const WalkMark* mark = mark_of(job, head, field); mark && mark->done)
        text.stamp = stamp_text(mark->stamp);
    return text;
}

/// The largest type in which every word of a value has room.
TypeStyle value_style(const std::string& value, float width, const Canvas& canvas) {
    TypeStyle style{TypeSize::large, true};
    for (const TypeSize smaller : {TypeSize::title, TypeSize::body, TypeSize::small})
        if (canvas.widest_word(value, style) > width) style.size = smaller;
    return style;
}

/// Where its lines go.
struct CardPlan {
    float width = 0.0f; ///< of the lines
    TypeStyle value;
    float label_height = 0.0f, value_height = 0.0f;
    float really_height = 0.0f, last_height = 0.0f, stamp_height = 0.0f;
    float button_height = 0.0f;
    float lines() const {
        return label_height + value_height + really_height + last_height + stamp_height;
    }
    float upper() const { return std::max(least_height, lines() + 24.0f); }
    float height() const { return upper() + (button_height > 0.0f ? button_height + pad : 0.0f); }
};

CardPlan plan_of(const CardText& text, float width, const Canvas& canvas) {
    constexpr float above = 3.0f;
    CardPlan plan;
    plan.width = width - pad - tick_width - 4.0f;
    plan.value = value_style(text.value, plan.width, canvas);
    const auto height = [&](const std::string& words, TypeStyle style, float indent) {
        if (words.empty()) return 0.0f;
        return above + canvas.paragraph_height(plan.width - indent, words, style);
    };
    plan.label_height = height(text.label, small_text, 0.0f) - above;
    plan.value_height = canvas.paragraph_height(plan.width, text.value, plan.value);
    plan.really_height = height(text.really, small_bold_text, sign + beside_sign);
    plan.last_height = height(text.last_run, small_text, 0.0f);
    plan.stamp_height = height(text.stamp, small_text, 0.0f);
    if (!text.as_planned.empty())
        plan.button_height = canvas.button_height(text.as_planned, {}, width - 2.0f * pad, 48.0f);
    return plan;
}

void draw_lines(const CardText& text, const CardPlan& plan, Vec at, Canvas& canvas) {
    const auto line = [&](const std::string& words, float height, TypeStyle style, Role role,
                          float indent) {
        if (words.empty()) return;
        const float own = canvas.paragraph_height(plan.width - indent, words, style);
        canvas.paragraph({at.x + indent, at.y + height - own}, plan.width - indent, words, style,
                         role, Role::quiet);
        at.y += height;
    };
    line(text.label, plan.label_height, small_text, Role::soft_ink, 0.0f);
    line(text.value, plan.value_height, plan.value, Role::ink, 0.0f);
    if (!text.really.empty())
        draw_verdict(
            canvas.list(),
            {at.x + 0.5f * sign, at.y + 3.0f + 0.5f * canvas.type().height(small_bold_text)}, sign,
            Role::mind);
    line(text.really, plan.really_height, small_bold_text, Role::ink, sign + beside_sign);
    line(text.last_run, plan.last_height, small_text, Role::ink, 0.0f);
    line(text.stamp, plan.stamp_height, small_text, Role::soft_ink, 0.0f);
}

/// The tick: a mark in a filled box when set, so that colour alone tells nothing.
void draw_tick(const CardText& text, Box target, Canvas& canvas) {
    constexpr float corner = 10.0f, mark = 26.0f, ring = 2.0f;
    const Box box = around(target.centre(), tick_side, tick_side);
    if (text.done) {
        canvas.list().round(box, corner, paint(Role::strong));
        canvas.icon(Icon::check, box.centre(), mark, Role::on_strong);
    } else {
        canvas.list().round(box, corner, paint(Role::panel));
        canvas.list().ring(box, corner, paint(Role::soft_ink), ring);
    }
    Thing& thing = canvas.list().thing(std::string("walk/tick/") + info_of(text.field).key,
                                       ThingRole::button, target);
    thing.label = say(canvas.language(), Word::walk_tick, {text.label});
    thing.value = canvas.word(text.done ? Word::walk_set : Word::walk_not_set);
    if (!text.stamp.empty()) thing.value += " · " + text.stamp;
    thing.chosen = text.done;
    thing.action = canvas.action(TickWalk{text.head, text.field, !text.done});
}

void draw_card(const CardText& text, const CardPlan& plan, Box box, Canvas& canvas) {
    canvas.list().round(box, 14.0f, paint(Role::quiet));
    const float bottom =
        plan.button_height > 0.0f ? box.y1 - pad - plan.button_height : box.y1;
    const Box lines{box.x0, box.y0, box.x1 - tick_width, bottom};
    draw_lines(text, plan, {box.x0 + pad, lines.centre().y - 0.5f * plan.lines()}, canvas);
    const std::string key = info_of(text.field).key;
    Thing& thing = canvas.list().thing("walk/number/" + key, ThingRole::button, lines);
    thing.label = text.label;
    thing.value = text.value;
    for (const std::string* more : {&text.really, &text.last_run})
        if (!more->empty()) thing.value += " · " + *more;
    thing.hint.assign(canvas.word(Word::walk_note_hint));
    thing.action = canvas.action(OpenDayPad{{DayNumber::really_set, text.head, text.field}});
    draw_tick(text, {box.x1 - tick_width, box.y0, box.x1, bottom}, canvas);
    if (text.as_planned.empty()) return;
    canvas.button("walk/as-planned/" + key, {box.x0 + pad, bottom, box.x1 - pad, box.y1 - pad},
                  text.as_planned, ButtonLook::plain,
                  canvas.action(AsPlanned{text.head, text.field}));
}

} // namespace

void walk_cards(const Model& model, HeadId head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<Field> fields = walk_fields(*model.job, head);
    const bool two = rows.width >= two_columns_from * std::max(1.0f, canvas.scale());
    const std::size_t columns = two ? 2 : 1;
    const float each = two ? 0.5f * (rows.width - card_gap) : rows.width;
    for (std::size_t i = 0; i < fields.size(); i += columns) {
        const std::size_t end = std::min(fields.size(), i + columns);
        std::vector<CardText> texts;
        std::vector<CardPlan> plans;
        float height = 0.0f;
        for (std::size_t k = i; k < end; ++k) {
            texts.push_back(text_of(model, head, fields[k]));
            plans.push_back(plan_of(texts.back(), each, canvas));
            height = std::max(height, plans.back().height());
        }
        const Box row = rows.next(height, card_gap);
        for (std::size_t k = 0; k < texts.size(); ++k) {
            const float x = row.x0 + static_cast<float>(k) * (each + card_gap);
            draw_card(texts[k], plans[k], {x, row.y0, x + each, row.y1}, canvas);
        }
    }
}

} // namespace carriageway
