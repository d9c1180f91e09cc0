// Verdicts, cards, rows, steppers and captions of the Register place.
#include <algorithm>
#include <limits>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr float row_pad = 12.0f;   ///< left and right of the words of a row or card
constexpr float row_air = 18.0f;   ///< above and below them together
constexpr float row_corner = 10.0f;
constexpr float row_gap = 4.0f;    ///< to the next row
constexpr float fixing_height = 60.0f; ///< of a button that does the thing

/// Platen or turn of a round, as a stepper.
struct Count {
    RegisterNumber number;
    int least, most;
    const char *name, *less_name, *more_name;
    Word noted, not_noted, less, more;
};

void count_row(const RegisterView& view, const Count& count, Rows& rows) {
    const auto of = [&](MarkRound& round) -> int& {
        return count.number == RegisterNumber::platen ? round.platen : round.turn;
    };
    MarkRound round = view.round;
    const int value = of(round);
    const auto set_to = [&](int to) {
        of(round) = to;
        return RegisterEdit{with_round(view, round), view.index, view.state().registering.mark};
    };
    StepperEnd less{count.less_name, count.less, {}}, more{count.more_name, count.more, {}};
    // What was typed may lie beyond the end: it can always be brought back.
    if (value > count.least) less.action = set_to(value - 1);
    if (value < count.most) more.action = set_to(value + 1);
    const Language language = rows.canvas.language();
    const std::string text = value > 0 ? say(language, count.noted, {std::to_string(value)})
                                       : std::string(word(language, count.not_noted));
    stepper_row(count.name, text, std::move(less), std::move(more),
                OpenRegisterPad{view.head->id, {count.number, 0}}, rows);
}

} // namespace

void said_verdict(std::string_view name, const SaidVerdict& verdict, Rows& rows) {
    constexpr float mark_share = 0.8f, gap = 8.0f, title_gap = 4.0f, below = 12.0f;
    constexpr TypeStyle style{TypeSize::title, true};
    Canvas& canvas = rows.canvas;
    const Role role = verdict.tone == Tone::good ? Role::fit
                      : verdict.tone == Tone::act ? Role::mind
                      : verdict.tone == Tone::stop ? Role::stop
                                                   : Role::ink;
    const float line = canvas.type().height(style), mark = line * mark_share;
    const float top = rows.y;
    const Vec at{rows.x + 0.55f * mark, rows.y + 0.5f * line};
    if (verdict.tone == Tone::ask) canvas.icon(Icon::registration, at, mark, role);
    else draw_verdict(canvas.list(), at, mark, role);
    const float words = rows.x + mark + gap;
    rows.y += canvas.paragraph({words, rows.y}, rows.width - mark - gap, verdict.title, style, role,
                               rows.on);
    rows.space(title_gap);
    rows.text(verdict.why, body_text, Role::ink, below);
    canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - below}, verdict.title,
                   verdict.why);
    canvas.list().things().back().live = true;
}

void said_lines(std::string_view name, std::string_view label,
                const std::vector<std::string>& lines, TypeStyle style, float gap, float top,
                Rows& rows) {
    for (const std::string& line : lines) rows.text(line, style, Role::ink, gap);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y}, label,
                        in_one_line(lines));
}

void said_card(std::string_view name, std::string_view title, const std::vector<std::string>& lines,
               Role role, Rows& rows) {
    constexpr float line_gap = 3.0f, corner = 12.0f, thin = 1.2f, thick = 2.0f;
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * row_pad;
    float height = 2.0f * row_pad + canvas.paragraph_height(width, title, bold_text);
    for (const std::string& line : lines)
        height += line_gap + canvas.paragraph_height(width, line, small_text);
    const Box box = rows.next(height);
    canvas.list().round(box, corner, paint(Role::card));
    canvas.list().ring(box, corner, paint(role), role == Role::edge ? thin : thick);
    Thing& thing = canvas.list().thing(name, ThingRole::text, box);
    thing.label.assign(title);
    thing.value = in_one_line(lines);
    Vec at{box.x0 + row_pad, box.y0 + row_pad};
    at.y += canvas.paragraph(at, width, title, bold_text, Role::ink, Role::card);
    for (const std::string& line : lines) {
        at.y += line_gap;
        at.y += canvas.paragraph(at, width, line, small_text, Role::ink, Role::card);
    }
}

void value_row(std::string_view name, std::string_view label, std::string_view value, Action action,
               bool chosen, Rows& rows) {
    constexpr float between = 10.0f, least_share = 0.4f, ring_width = 1.8f;
    Canvas& canvas = rows.canvas;
    const float inside = rows.width - 2.0f * row_pad;
    const float value_width = canvas.type().width(bold_text, value);
    const float beside = inside - value_width - between;
    // Label and value share a line while every word of the label has room in it.
    const bool stacked =
        beside < std::max(least_share * rows.width, canvas.widest_word(label, body_text));
    const float label_width = stacked ? inside : beside;
    const float text = canvas.paragraph_height(label_width, label, body_text);
    const float line = canvas.paragraph_height(inside, value, bold_text);
    const float words = stacked ? text + line : std::max(text, line);
    const Box box = rows.next(std::max(touch_side, words + row_air), row_gap);
    DrawingList& list = canvas.list();
    list.round(box, row_corner, paint(Role::quiet));
    if (chosen) list.ring(box, row_corner, paint(Role::ink), ring_width);
    const Vec at{box.x0 + row_pad, box.centre().y - 0.5f * (stacked ? words : text)};
    canvas.paragraph(at, label_width, label, body_text, Role::ink, Role::quiet);
    if (stacked)
        canvas.paragraph({at.x, at.y + text}, inside, value, bold_text, Role::ink, Role::quiet);
    else
        list.text({box.x1 - row_pad - value_width, box.centre().y - 0.5f * line}, value, bold_text,
                  Role::ink, Role::quiet);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label.assign(label);
    thing.value.assign(value);
    thing.chosen = chosen;
    thing.action = canvas.action(std::move(action));
}

void wide_button(std::string_view name, std::string_view words, std::string_view detail,
                 ButtonLook look, Action action, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float least = look == ButtonLook::strong ? fixing_height : touch_side;
    const float height = canvas.button_height(words, detail, rows.width, least);
    canvas.button(name, rows.next(height), words, look, canvas.action(std::move(action)), detail);
}

void stepper_row(std::string_view name, const std::string& text, StepperEnd less, StepperEnd more,
                 std::optional<Action> action, Rows& rows) {
    constexpr float beside = 6.0f;
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * (touch_side + beside);
    const float inside = width - 2.0f * row_pad;
    const Box row = rows.next(
        std::max(touch_side, canvas.paragraph_height(inside, text, bold_text) + row_air), row_gap);
    const auto end = [&](StepperEnd& step, float x, Icon icon) {
        const bool there = step.action.has_value();
        canvas.icon_button(
            step.name, {x, row.y0, x + touch_side, row.y1}, icon, canvas.word(step.label),
            there ? canvas.action(std::move(*step.action)) : -1, there, ButtonLook::quiet);
    };
    end(less, row.x0, Icon::minus);
    const Box middle = around(row.centre(), width, row.height());
    if (action) canvas.list().round(middle, row_corner, paint(Role::quiet));
    canvas.centred_paragraph(middle.centre(), inside, text, bold_text, Role::ink,
                             action ? Role::quiet : rows.on);
    Thing& thing = canvas.list().thing(name, action ? ThingRole::button : ThingRole::text, middle);
    thing.label.assign(text);
    if (action) thing.action = canvas.action(std::move(*action));
    end(more, row.x1 - touch_side, Icon::plus);
}

void print_steppers(const RegisterView& view, int least, Rows& rows) {
    count_row(view,
              {RegisterNumber::platen, least, view.job().press.stations, "register/platen",
               "register/platen/less", "register/platen/more", Word::level_platen,
               Word::scatter_no_platen, Word::level_previous_platen, Word::level_next_platen},
              rows);
    // Turns have no end of their own; the job refuses what is absurd.
    count_row(view,
              {RegisterNumber::turn, least, std::numeric_limits<int>::max(), "register/turn",
               "register/turn/less", "register/turn/more", Word::scatter_turn,
               Word::scatter_no_turn, Word::scatter_previous_turn, Word::scatter_next_turn},
              rows);
}

bool write_free(DrawingList& list, LabelPlacer& labels, std::span<const Vec> places,
                std::string_view words, TypeStyle style, Role on) {
    constexpr float beside = 4.0f, above = 2.0f;
    const float width = list.type().width(style, words) + beside;
    const float height = list.type().height(style) + above;
    for (const Vec place : places) {
        if (!labels.place(around(place, width, height))) continue;
        list.text_centred(place, words, style, Role::ink, on);
        return true;
    }
    return false;
}

float caption(Box box, std::string_view words, Canvas& canvas) {
    constexpr float margin = 12.0f, below = 4.0f, most_share = 0.4f;
    const float width = box.width() - 2.0f * margin;
    const float height = canvas.paragraph_height(width, words, small_text);
    if (height + 2.0f * below > most_share * box.height()) return 0.0f;
    canvas.centred_paragraph({box.centre().x, box.y1 - below - 0.5f * height}, width, words,
                             small_text, Role::soft_ink, Role::paper);
    return height + 2.0f * below;
}

} // namespace carriageway
