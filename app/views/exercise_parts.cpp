#include "app/views/exercise_parts.h"

namespace carriageway {

namespace {

constexpr float pad = 14.0f, corner = 14.0f, line_gap = 3.0f;

/// A small rounded box with words, its right upper corner at `at`; returns its width.
float chip(Vec at, std::string_view words, Canvas& canvas) {
    constexpr float side = 9.0f, above = 3.0f;
    const float width = canvas.type().width(small_bold_text, words) + 2.0f * side;
    const float height = canvas.type().height(small_bold_text) + 2.0f * above;
    const Box box{at.x - width, at.y, at.x, at.y + height};
    canvas.list().round(box, 0.5f * height, paint(Role::quiet));
    canvas.list().text({box.x0 + side, box.y0 + above}, words, small_bold_text, Role::ink,
                       Role::quiet);
    return width;
}

float chip_width(std::string_view words, const Canvas& canvas) {
    return words.empty() ? 0.0f : canvas.type().width(small_bold_text, words) + 30.0f;
}

} // namespace

void exercise_card(const ExerciseCard& card, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float inside = rows.width - 2.0f * pad;
    // The chip stands beside the title where every word of that has room, else above it.
    const float beside = inside - chip_width(card.chip, canvas);
    const bool above = !card.chip.empty() && canvas.widest_word(card.title, bold_text) > beside;
    const float width = above ? inside : beside;
    const float chip_height = canvas.type().height(small_bold_text) + 10.0f;
    const float title = canvas.paragraph_height(width, card.title, bold_text);
    const float about = canvas.paragraph_height(inside, card.about, small_text);
    const float status = card.status.empty()
                             ? 0.0f
                             : line_gap + canvas.paragraph_height(inside, card.status, small_text);
    const float height =
        2.0f * pad + (above ? chip_height : 0.0f) + title + line_gap + about + status;
    const Box box = rows.next(std::max(64.0f, height), 10.0f);
    DrawingList& list = canvas.list();
    list.round(box, corner, paint(Role::panel));
    list.ring(box, corner, paint(Role::edge), 1.4f);
    float y = box.y0 + pad;
    if (!card.chip.empty()) chip({box.x1 - pad + 2.0f, y - 2.0f}, card.chip, canvas);
    if (above) y += chip_height;
    y += canvas.paragraph({box.x0 + pad, y}, width, card.title, bold_text, Role::ink, Role::panel);
    y += line_gap;
    y +=
        canvas.paragraph({box.x0 + pad, y}, inside, card.about, small_text, Role::ink, Role::panel);
    if (!card.status.empty())
        canvas.paragraph({box.x0 + pad, y + line_gap}, inside, card.status, small_text,
                         Role::soft_ink, Role::panel);
    Thing& thing = list.thing(card.name, ThingRole::button, box);
    thing.label = card.title;
    thing.value = card.chip.empty() ? card.status : card.chip + ", " + card.status;
    thing.hint = card.about;
    thing.action = canvas.action(card.action);
}

void exercise_tick(const std::string& name, std::string_view title, std::string_view detail,
                   bool ticked, Action action, Rows& rows) {
    constexpr float side = 26.0f;
    Canvas& canvas = rows.canvas;
    const float width = rows.width - side - 2.0f * pad - 12.0f;
    const float head = canvas.paragraph_height(width, title, body_text);
    const float rest = detail.empty() ? 0.0f : canvas.paragraph_height(width, detail, small_text);
    const Box box = rows.next(std::max(52.0f, head + rest + 20.0f), 6.0f);
    const Role on = ticked ? Role::quiet : rows.on;
    DrawingList& list = canvas.list();
    if (ticked) list.round(box, 12.0f, paint(Role::quiet));
    list.ring(box, 12.0f, paint(ticked ? Role::ink : Role::edge), ticked ? 1.8f : 1.2f);
    const Box tick = around({box.x0 + pad + 0.5f * side, box.centre().y}, side, side);
    list.round(tick, 7.0f, paint(ticked ? Role::strong : Role::paper));
    list.ring(tick, 7.0f, paint(ticked ? Role::strong : Role::soft_ink), 1.6f);
    if (ticked) canvas.icon(Icon::check, tick.centre(), 18.0f, Role::on_strong);
    const float x = tick.x1 + 12.0f;
    const float y = box.centre().y - 0.5f * (head + rest);
    canvas.paragraph({x, y}, width, title, body_text, Role::ink, on);
    if (!detail.empty())
        canvas.paragraph({x, y + head}, width, detail, small_text, Role::soft_ink, on);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label.assign(title);
    thing.value.assign(canvas.word(ticked ? Word::yes : Word::no));
    thing.hint.assign(detail);
    thing.chosen = ticked;
    thing.action = canvas.action(std::move(action));
}

void exercise_option(const std::string& name, std::string_view words, std::string_view detail,
                     bool chosen, Action action, Rows& rows) {
    Canvas& canvas = rows.canvas;
    constexpr float mark = 22.0f;
    const float width = rows.width - 2.0f * pad - mark - 12.0f;
    const float head = canvas.paragraph_height(width, words, bold_text);
    const float rest = detail.empty() ? 0.0f : canvas.paragraph_height(width, detail, small_text);
    const Box box = rows.next(std::max(60.0f, head + rest + 22.0f), 8.0f);
    const Role on = chosen ? Role::panel : Role::quiet;
    DrawingList& list = canvas.list();
    list.round(box, corner, paint(on));
    list.ring(box, corner, paint(chosen ? Role::ink : Role::edge), chosen ? 2.4f : 1.2f);
    const Vec dot{box.x0 + pad + 0.5f * mark, box.centre().y};
    list.circle(dot, 0.5f * mark, paint(chosen ? Role::ink : Role::soft_ink), 1.8f);
    if (chosen) list.disc(dot, 0.26f * mark, paint(Role::ink));
    const float x = box.x0 + pad + mark + 12.0f, y = box.centre().y - 0.5f * (head + rest);
    canvas.paragraph({x, y}, width, words, bold_text, Role::ink, on);
    if (!detail.empty())
        canvas.paragraph({x, y + head}, width, detail, small_text, Role::soft_ink, on);
    Thing& thing = list.thing(name, ThingRole::tab, box);
    thing.label.assign(words);
    thing.value.assign(detail);
    thing.chosen = chosen;
    thing.action = canvas.action(std::move(action));
}

void exercise_text(std::string_view name, std::string_view words, TypeStyle style, Role role,
                   float gap, Rows& rows) {
    const float top = rows.y;
    rows.text(words, style, role, gap);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - gap}, words, {});
}

void exercise_asked(const std::string& title, const std::string& asked, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * pad;
    const float head = canvas.paragraph_height(width, title, bold_text);
    const float text = canvas.paragraph_height(width, asked, body_text);
    const Box box = rows.next(head + text + 2.0f * pad + 4.0f, 12.0f);
    DrawingList& list = canvas.list();
    list.round(box, corner, paint(Role::quiet));
    list.round({box.x0, box.y0 + corner, box.x0 + 4.0f, box.y1 - corner}, 2.0f, paint(Role::focus));
    canvas.paragraph({box.x0 + pad, box.y0 + pad}, width, title, bold_text, Role::ink, Role::quiet);
    canvas.paragraph({box.x0 + pad, box.y0 + pad + head + 4.0f}, width, asked, body_text, Role::ink,
                     Role::quiet);
    canvas.reading("exercise/asked", box, title, asked);
}

void exercise_hint_row(const std::string& name, const std::string& words, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * pad;
    const float height = canvas.paragraph_height(width, words, body_text);
    const Box box = rows.next(height + pad, 6.0f);
    canvas.list().ring(box, 10.0f, paint(Role::focus), 1.4f);
    canvas.paragraph({box.x0 + pad, box.y0 + 0.5f * pad}, width, words, body_text, Role::ink,
                     rows.on);
    canvas.reading(name, box, words, {});
    canvas.list().things().back().live = true;
}

void exercise_button(std::string_view name, std::string_view words, std::string_view detail,
                     ButtonLook look, Action action, Rows& rows, bool large) {
    Canvas& canvas = rows.canvas;
    const float height = canvas.button_height(words, detail, rows.width, large ? 60.0f : 48.0f);
    canvas.button(name, rows.next(height), words, look, canvas.action(std::move(action)), detail);
}

} // namespace carriageway
