// What the parts of the Register place share: which head and round, cards, rows and captions.
#include <algorithm>

#include "app/text/sentences.h"
#include "app/views/register_view.h"

namespace carriageway {

const Head* registered_head(const Job& job, const ViewState& state) {
    if (const Head* head = find_head(job, state.head)) return head;
    return base_head(job);
}

std::size_t round_index(const Head& head, const RegisterState& state) {
    if (state.round && *state.round < head.rounds.size()) return *state.round;
    return head.rounds.empty() ? 0 : head.rounds.size() - 1;
}

void move_mark(MarkRound& round, std::size_t mark, const Point& to) {
    MarkReading& moved = round.marks[mark];
    moved.measured.x += to.x - moved.nominal.x;
    moved.measured.y += to.y - moved.nominal.y;
    moved.nominal = to;
}

RegisterView register_view(const Model& model, const Head& head) {
    RegisterView view;
    view.model = &model;
    view.head = &head;
    view.rounds = head.rounds;
    const RegisterState& state = model.state->registering;
    view.index = round_index(head, state);
    if (view.index < view.rounds.size()) {
        MarkRound& round = view.rounds[view.index];
        if (state.moving && state.mark && *state.mark < round.marks.size())
            move_mark(round, *state.mark, *state.moving);
        view.round = round;
    }
    view.result = register_head(model.job->press, view.rounds, view.index,
                                model.job->registration.tolerance);
    return view;
}

LevelView level_view(const Job& job) {
    LevelView view;
    view.levelling = level(job.height_readings);
    LevelTargets targets;
    targets.points = level_points(job.press.height_points);
    view.heads = heads_off(view.levelling, targets);
    view.platens = platens_off(view.levelling, targets);
    for (const std::vector<PartOff>* parts : {&view.heads, &view.platens})
        for (const PartOff& part : *parts) view.out += part.out ? 1 : 0;
    return view;
}

Point place_of(const HeightPoints& points, HeightPoint point) {
    const LevelPoints at = level_points(points);
    switch (point) {
    case HeightPoint::operator_left: return at.operator_left;
    case HeightPoint::operator_right: return at.operator_right;
    case HeightPoint::machine: return at.machine_side;
    case HeightPoint::centre: break;
    }
    return {0.0, 0.0};
}

Quantity register_quantity(RegisterNumber number) {
    return number == RegisterNumber::platen || number == RegisterNumber::turn ? Quantity::count
                                                                              : Quantity::length;
}

std::string register_title(const RegisterTarget& target, Language language) {
    const auto of_mark = [&](Word key) {
        return say(language, Word::reg_mark, {std::to_string(target.index + 1)}) + ": " +
               std::string(word(language, key));
    };
    switch (target.number) {
    case RegisterNumber::error_x: return of_mark(Word::reg_error_x);
    case RegisterNumber::error_y: return of_mark(Word::reg_error_y);
    case RegisterNumber::place_x: return of_mark(Word::reg_place_x);
    case RegisterNumber::place_y: return of_mark(Word::reg_place_y);
    case RegisterNumber::platen: return std::string(word(language, Word::reg_platen_number));
    case RegisterNumber::turn: return std::string(word(language, Word::reg_turn_number));
    case RegisterNumber::height: return std::string(word(language, Word::level_gap));
    case RegisterNumber::none: break;
    }
    return {};
}

void said_verdict(std::string_view name, const SaidVerdict& verdict, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle style{TypeSize::title, true};
    const Role role = verdict.tone == Tone::good ? Role::fit
                      : verdict.tone == Tone::act ? Role::mind
                      : verdict.tone == Tone::stop ? Role::stop
                                                   : Role::ink;
    const float mark = canvas.type().height(style) * 0.8f;
    const float top = rows.y;
    const Vec at{rows.x + 0.55f * mark, rows.y + 0.5f * canvas.type().height(style)};
    if (verdict.tone == Tone::ask) canvas.icon(Icon::registration, at, mark, role);
    else draw_verdict(canvas.list(), at, mark, role);
    const float inside = rows.width - mark - 8.0f;
    rows.y += canvas.paragraph({rows.x + mark + 8.0f, rows.y}, inside, verdict.title, style, role, rows.on) + 4.0f;
    rows.text(verdict.why, {TypeSize::body, false}, Role::ink, 12.0f);
    canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - 12.0f}, verdict.title, verdict.why);
    canvas.list().things().back().live = true;
}

void said_card(std::string_view name, std::string_view title, const std::vector<std::string>& lines,
               Role role, Rows& rows) {
    Canvas& canvas = rows.canvas;
    constexpr float pad = 12.0f;
    const TypeStyle bold{TypeSize::body, true}, small{TypeSize::small, false};
    const float width = rows.width - 2.0f * pad;
    float height = 2.0f * pad + canvas.paragraph_height(width, title, bold);
    for (const std::string& line : lines) height += 3.0f + canvas.paragraph_height(width, line, small);
    const Box box = rows.next(height, 8.0f);
    canvas.list().round(box, 12.0f, paint(Role::card));
    canvas.list().ring(box, 12.0f, paint(role), role == Role::edge ? 1.2f : 2.0f);
    Thing& thing = canvas.list().thing(name, ThingRole::text, box);
    thing.label.assign(title);
    for (const std::string& line : lines) thing.value += (thing.value.empty() ? "" : " ") + line;
    float y = box.y0 + pad;
    y += canvas.paragraph({box.x0 + pad, y}, width, title, bold, Role::ink, Role::card);
    for (const std::string& line : lines) {
        y += 3.0f;
        y += canvas.paragraph({box.x0 + pad, y}, width, line, small, Role::ink, Role::card);
    }
}

void value_row(std::string_view name, std::string_view label, std::string_view value, Action action,
               bool chosen, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle body{TypeSize::body, false}, bold{TypeSize::body, true};
    const float inside = rows.width - 24.0f;
    const float value_width = canvas.type().width(bold, value);
    const float label_width = inside - value_width - 10.0f;
    const bool stacked = label_width < std::max(0.4f * rows.width, canvas.widest_word(label, body));
    const float text = canvas.paragraph_height(stacked ? inside : label_width, label, body);
    const float line = canvas.paragraph_height(inside, value, bold);
    const Box box = rows.next(std::max(48.0f, (stacked ? text + line : std::max(text, line)) + 18.0f), 4.0f);
    DrawingList& list = canvas.list();
    list.round(box, 10.0f, paint(Role::quiet));
    if (chosen) list.ring(box, 10.0f, paint(Role::ink), 1.8f);
    const float top = box.centre().y - 0.5f * (stacked ? text + line : text);
    canvas.paragraph({box.x0 + 12.0f, top}, stacked ? inside : label_width, label, body, Role::ink, Role::quiet);
    if (stacked) canvas.paragraph({box.x0 + 12.0f, top + text}, inside, value, bold, Role::ink, Role::quiet);
    else list.text({box.x1 - 12.0f - value_width, box.centre().y - 0.5f * line}, value, bold, Role::ink, Role::quiet);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label.assign(label);
    thing.value.assign(value);
    thing.chosen = chosen;
    thing.action = canvas.action(std::move(action));
}

void wide_button(std::string_view name, std::string_view words, std::string_view detail,
                 ButtonLook look, Action action, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float height =
        canvas.button_height(words, detail, rows.width, look == ButtonLook::strong ? 60.0f : 48.0f);
    canvas.button(name, rows.next(height), words, look, canvas.action(std::move(action)), detail);
}

void FreeTexts::write(std::initializer_list<Vec> places, std::string_view words, TypeStyle style, Role on) {
    const float width = list_.type().width(style, words) + 4.0f, height = list_.type().height(style) + 2.0f;
    for (const Vec place : places) {
        const Box box = around(place, width, height);
        if (std::any_of(taken_.begin(), taken_.end(), [&](const Box& taken) { return overlap(box, taken); })) continue;
        taken_.push_back(box);
        list_.text_centred(place, words, style, Role::ink, on);
        return;
    }
}

float caption(Box box, std::string_view words, Canvas& canvas) {
    const TypeStyle small{TypeSize::small, false};
    const float height = canvas.paragraph_height(box.width() - 24.0f, words, small);
    canvas.centred_paragraph({box.centre().x, box.y1 - 4.0f - 0.5f * height}, box.width() - 24.0f, words, small,
                             Role::soft_ink, Role::paper);
    return height + 8.0f;
}

} // namespace carriageway
