// The sheet for the run: its contents, or one of its parts, over everything else.
#include <ctime>

#include "app/text/sentences.h"
#include "app/views/day_view.h"
#include "app/views/register_view.h"
#include "app/views/sheet.h"

namespace carriageway {

namespace {

constexpr float padding = 20.0f;
constexpr float tool = 48.0f;
constexpr float widest_text = 640.0f;
constexpr float margin_of_sheet = 24.0f;

struct PartRow {
    DayPart part;
    const char* name;
    Word words;
    void (*draw)(const Model&, Rows&);
    std::string (*status)(const Model&); ///< nullptr: not offered in the contents
};

std::string paper_status(const Model& model) {
    return std::string(word(model.state->looks.language, Word::day_paper_hint));
}

constexpr PartRow part_rows[] = {
    {DayPart::contents, "contents", Word::day_title, contents_part, nullptr},
    {DayPart::stations, "stations", Word::day_stations, stations_part, stations_status},
    {DayPart::walk, "walk", Word::day_walk, walk_part, walk_status},
    {DayPart::lists, "lists", Word::day_lists, lists_part, lists_status},
    {DayPart::recipe, "recipe", Word::day_recipe, recipe_part, recipe_status},
    {DayPart::paper, "paper", Word::day_paper, paper_part, paper_status},
    {DayPart::runs, "runs", Word::day_runs, runs_part, runs_status},
    {DayPart::compare, "compare", Word::day_compare, compare_part, nullptr},
    {DayPart::merge, "merge", Word::day_merge, merge_part, nullptr},
};

const PartRow& row_of(DayPart part) { return part_rows[static_cast<std::size_t>(part)]; }

/// The title between the way back and the button that closes; returns its height.
float title_row(const Model& model, Box box, Canvas& canvas) {
    const DayPart part = model.state->day.part;
    const bool back = part != DayPart::contents;
    const float left = box.x0 + (back ? 6.0f + tool + 4.0f : padding);
    const float right = box.x1 - 8.0f - tool - (model.can_undo ? tool + 4.0f : 0.0f);
    const float width = right - 8.0f - left;
    const std::string_view title = canvas.word(row_of(part).words);
    // A long name takes smaller lines rather than the window.
    const bool long_name =
        canvas.paragraph_height(width, title, title_text) > 1.5f * canvas.type().height(title_text);
    const TypeStyle style = long_name ? TypeStyle{TypeSize::body, true} : title_text;
    const float text = canvas.paragraph_height(width, title, style);
    const float height = std::max(tool, text) + 16.0f;
    const float middle = box.y0 + 0.5f * height;
    const auto button = [&](const char* name, float x, Icon icon, Word words, Action action) {
        canvas.icon_button(name, {x, middle - 0.5f * tool, x + tool, middle + 0.5f * tool}, icon,
                           canvas.word(words), canvas.action(std::move(action)), true,
                           ButtonLook::bare);
    };
    if (back)
        button("day/back", box.x0 + 6.0f, Icon::back, Word::day_contents, ShowDay{DayPart::contents});
    canvas.paragraph({left, middle - 0.5f * text}, width, title, style, Role::ink, Role::panel);
    canvas.reading("day/title", {left, box.y0, left + width, box.y0 + height}, title, {});
    if (model.can_undo) button("day/undo", right, Icon::undo, Word::undo, Undo{});
    button("day/close", box.x1 - 8.0f - tool, Icon::close, Word::close, CloseDay{});
    const Vec line[] = {{box.x0, box.y0 + height}, {box.x1, box.y0 + height}};
    canvas.list().line(line, 2, paint(Role::edge), 1.0f);
    return height;
}

bool typing_number(const Model& model) {
    return model.state->pad && !model.state->pad->reading &&
           model.state->pad->target.number == RegisterNumber::none;
}

} // namespace

void contents_part(const Model& model, Rows& rows) {
    constexpr float icon_room = 40.0f;
    Canvas& canvas = rows.canvas;
    const TypeStyle bold{TypeSize::body, true}, small{TypeSize::small, false};
    for (const PartRow& part : part_rows) {
        if (part.status == nullptr) continue;
        const std::string_view name = canvas.word(part.words);
        const std::string status = part.status(model);
        const float width = rows.width - icon_room - 14.0f;
        const float first = canvas.paragraph_height(width, name, bold);
        const float second = canvas.paragraph_height(width, status, small);
        const Box box = rows.next(std::max(64.0f, first + second + 24.0f), 8.0f);
        canvas.list().round(box, 12.0f, paint(Role::quiet));
        const float top = box.centre().y - 0.5f * (first + second + 2.0f);
        canvas.paragraph({box.x0 + 14.0f, top}, width, name, bold, Role::ink, Role::quiet);
        canvas.paragraph({box.x0 + 14.0f, top + first + 2.0f}, width, status, small, Role::soft_ink,
                         Role::quiet);
        canvas.icon(Icon::next, {box.x1 - 0.5f * icon_room, box.centre().y}, 20.0f, Role::soft_ink);
        Thing& thing = canvas.list().thing(std::string("day/") + part.name, ThingRole::button, box);
        thing.label.assign(name);
        thing.value = status;
        thing.action = canvas.action(ShowDay{part.part});
    }
    rows.space(8.0f);
    text_row(model, "day/initials", canvas.word(Word::initials), model.state->habits.initials,
             canvas.word(Word::initials_hint), EditText{TextTarget::initials}, rows);
    rows.text(canvas.word(Word::caution), small, Role::soft_ink);
}

void text_row(const Model& model, const std::string& name, std::string_view label,
              std::string_view value, std::string_view hint, const EditText& edit, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle small{TypeSize::small, false}, body{TypeSize::body, false};
    const std::optional<TextEntry>& typing = model.state->typing;
    rows.text(label, small, Role::soft_ink, 2.0f);
    const bool here = typing && typing->target == edit.target && typing->head == edit.head &&
                      (edit.target != TextTarget::note || typing->note == edit.note);
    if (here) {
        const Box box = rows.next(std::max(48.0f, canvas.type().height(body) + 20.0f));
        canvas.list().ring(box, 10.0f, paint(Role::focus), 2.0f);
        canvas.frame().typing = {box.x0 + 8.0f, box.y0 + 3.0f, box.x1 - 8.0f, box.y1 - 3.0f};
        Thing& thing = canvas.list().thing("typing", ThingRole::textbox, box);
        thing.label.assign(label);
        thing.value = typing->text;
        wide_button("typing/done", canvas.word(Word::done), ButtonLook::strong, AcceptText{}, rows);
        return;
    }
    const std::string_view shown = value.empty() ? hint : value;
    const Role ink = value.empty() ? Role::soft_ink : Role::ink;
    const float text = canvas.paragraph_height(rows.width - 28.0f, shown, body);
    const Box box = rows.next(std::max(48.0f, text + 20.0f), 10.0f);
    canvas.list().round(box, 10.0f, paint(Role::paper));
    canvas.list().ring(box, 10.0f, paint(Role::edge), 1.2f);
    canvas.paragraph({box.x0 + 14.0f, box.centre().y - 0.5f * text}, rows.width - 28.0f, shown, body,
                     ink, Role::paper);
    Thing& thing = canvas.list().thing(name, ThingRole::textbox, box);
    thing.label.assign(label);
    thing.value.assign(value);
    thing.hint.assign(hint);
    thing.action = canvas.action(edit);
}

Quantity day_quantity(const DayTarget& target) {
    switch (target.number) {
    case DayNumber::really_set: return info_of(target.field).quantity;
    case DayNumber::minutes: return Quantity::ratio;
    default: return Quantity::count;
    }
}

Word day_number_word(const DayTarget& target) {
    switch (target.number) {
    case DayNumber::really_set: return field_word(target.field);
    case DayNumber::printed: return Word::day_printed;
    case DayNumber::spoiled: return Word::day_spoiled;
    case DayNumber::minutes: return Word::day_minutes;
    case DayNumber::none: break;
    }
    return Word::count;
}

void caution_row(std::string_view words, Rows& rows) {
    constexpr float sign = 22.0f, side = 14.0f;
    Canvas& canvas = rows.canvas;
    const TypeStyle small{TypeSize::small, false};
    const float width = rows.width - 3.0f * side - sign;
    const float text = canvas.paragraph_height(width, words, small);
    const Box box = rows.next(std::max(44.0f, text + 20.0f), 10.0f);
    canvas.list().round(box, 10.0f, paint(Role::quiet));
    draw_verdict(canvas.list(), {box.x0 + side + 0.5f * sign, box.centre().y}, sign, Role::mind);
    canvas.paragraph({box.x0 + 2.0f * side + sign, box.centre().y - 0.5f * text}, width, words, small,
                     Role::ink, Role::quiet);
}

void wide_button(std::string_view name, std::string_view words, ButtonLook look, Action action,
                 Rows& rows, bool large) {
    Canvas& canvas = rows.canvas;
    const float height = canvas.button_height(words, {}, rows.width, large ? 60.0f : 48.0f);
    canvas.button(name, rows.next(height, 10.0f), words, look, canvas.action(std::move(action)));
}

std::string stamp_text(const Stamp& stamp) {
    std::string text;
    if (stamp.time > 0) {
        const std::time_t seconds = static_cast<std::time_t>(stamp.time / 1000);
        char buffer[32] = "";
        if (const std::tm* local = std::localtime(&seconds))
            std::strftime(buffer, sizeof buffer, "%Y-%m-%d %H:%M", local);
        text = buffer;
    }
    if (!stamp.initials.empty()) text += (text.empty() ? "" : " · ") + stamp.initials;
    return text;
}

void day_sheet(const Model& model, Canvas& canvas) {
    DrawingList& list = canvas.list();
    cover(canvas.frame());
    const int before = list.layer();
    list.set_layer(2);
    const bool full = fills_window(model.window);
    const float side = full ? 0.0f : margin_of_sheet;
    const Box box = full ? model.window
                         : around(model.window.centre(),
                                  std::min(model.window.width() - 2.0f * side, 760.0f),
                                  std::min(model.window.height() - 2.0f * side, 860.0f));
    sheet_ground(canvas, "day-sheet", canvas.word(Word::day_title), box, full);
    const bool typing = typing_number(model);
    const float pad = typing ? pad_height(model, canvas, box.width()) : 0.0f;
    // Large letters on a small phone leave no room for more than the pad.
    const bool pad_alone = typing && pad > box.height() - 120.0f;
    const float title = pad_alone ? 0.0f : title_row(model, box, canvas);
    const float bottom = box.y1 - (full ? 0.0f : 8.0f);
    Box view{box.x0, box.y0 + title + 1.0f, box.x1, bottom};
    if (typing) view.y1 = std::max(box.y0, bottom - pad);
    if (!pad_alone && view.height() > 40.0f) {
        list.push_clip(view);
        const float width = std::min(view.width() - 2.0f * padding, widest_text);
        const float top = view.y0 + 14.0f - model.state->day_scroll;
        Rows rows{canvas, view.centre().x - 0.5f * width, width, top, Role::panel};
        row_of(model.state->day.part).draw(model, rows);
        list.pop_clip();
        canvas.frame().scrolls.push_back({view, rows.y - top + 28.0f, &ViewState::day_scroll});
    }
    if (typing) {
        const Box at{box.x0, pad_alone ? box.y0 : view.y1, box.x1, bottom};
        draw_pad(model, at, full, canvas);
    }
    list.set_layer(before);
}

} // namespace carriageway
