// The number pad: measures are typed with keys made for fingers, in mm, inches or fractions.
#include "app/text/sentences.h"
#include "app/views/day_view.h"
#include "app/views/register_view.h"
#include "app/views/views.h"
#include "core/procedures.h"

namespace carriageway {

namespace {

struct PadButton {
    PadKey key;
    const char* name;
    const char* face; ///< figures and signs only, the same in every language
};

constexpr PadButton figures[] = {
    {PadKey::d7, "pad/7", "7"}, {PadKey::d8, "pad/8", "8"}, {PadKey::d9, "pad/9", "9"},
    {PadKey::d4, "pad/4", "4"}, {PadKey::d5, "pad/5", "5"}, {PadKey::d6, "pad/6", "6"},
    {PadKey::d1, "pad/1", "1"}, {PadKey::d2, "pad/2", "2"}, {PadKey::d3, "pad/3", "3"},
    {PadKey::minus, "pad/minus", "−"}, {PadKey::d0, "pad/0", "0"}, {PadKey::point, "pad/point", "."}};

constexpr float key_gap = 6.0f;

/// What the pad types: a number of the job, a reading of what is measured, or a number of the Register
/// place.
Quantity pad_quantity(const Pad& pad) {
    if (pad.day.number != DayNumber::none) return day_quantity(pad.day);
    if (pad.target.number != RegisterNumber::none) return register_quantity(pad.target.number);
    return pad.reading ? pad.reading->quantity : info_of(pad.field).quantity;
}

std::string title_of(const Canvas& canvas, const Pad& pad) {
    if (pad.day.number != DayNumber::none) return capitalised(canvas.word(day_number_word(pad.day)));
    if (pad.target.number != RegisterNumber::none)
        return capitalised(register_title(pad.target, canvas.language()));
    return capitalised(pad.reading ? std::string_view(pad.reading->label) : canvas.word(field_word(pad.field)));
}

/// Whether the number can be measured on the press: a button beside it says how.
bool can_measure(const Pad& pad) {
    return !pad.reading && pad.day.number == DayNumber::none && pad.field < Field::count && procedure_for(pad.field) != nullptr;
}

float display_height(const Canvas& canvas, const Pad& pad) {
    const float line = canvas.type().height({TypeSize::large, true}) + 14.0f;
    return can_measure(pad) ? std::max(44.0f, line) : line;
}

/// Keys are as high as their faces need, and never too small for a finger.
float key_height(const Canvas& canvas) {
    return std::max(44.0f, canvas.type().height({TypeSize::body, true}) + 6.0f);
}

void key(Canvas& canvas, std::string_view name, Box box, std::string_view face, PadKey what,
         ButtonLook look = ButtonLook::quiet) {
    const Role fill = look == ButtonLook::quiet ? Role::quiet : Role::panel;
    canvas.list().round(box, 12.0f, paint(fill));
    canvas.list().text_centred(box.centre(), face, {TypeSize::body, true}, Role::ink, fill);
    Thing& thing = canvas.list().thing(name, ThingRole::button, box);
    thing.label.assign(face);
    thing.action = canvas.action(PadPress{what});
}

/// What the typed text comes to, or what it should look like.
std::string reading_of(const Model& model, const Pad& pad) {
    const Quantity quantity = pad_quantity(pad);
    const Language language = model.state->looks.language;
    const Ruler& ruler = model.job->press.ruler;
    if (pad.reading && pad.reading->on_ruler) {
        const std::optional<double> typed = read_quantity(pad.text, quantity, unit_of(ruler));
        if (!typed) return {};
        return "= " + format_ruler(ruler, ruler_position(ruler, ruler.inches ? *typed / mm_per_inch : *typed));
    }
    const std::optional<double> value = read_quantity(pad.text, quantity, model.state->looks.units);
    if (!value) return {};
    return "= " + format_quantity(language, *value, quantity, model.state->looks.units);
}

void draw_display(const Model& model, const Pad& pad, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const std::string title = title_of(canvas, pad);
    rows.text(title, {TypeSize::body, true}, Role::ink, 4.0f);
    const TypeStyle large{TypeSize::large, true}, small{TypeSize::small, false};
    const float line = canvas.type().height(large);
    Box box = rows.next(display_height(canvas, pad), 4.0f);
    if (can_measure(pad)) {
        const float side = std::max(48.0f, box.height());
        box.x1 -= side + key_gap;
        canvas.icon_button("pad/measure", {box.x1 + key_gap, box.y0, box.x1 + key_gap + side, box.y1},
                           Icon::measure, canvas.word(Word::measure_this),
                           canvas.action(OpenMeasuring{pad.field}), true, ButtonLook::plain);
    }
    list.round(box, 10.0f, paint(Role::paper));
    list.ring(box, 10.0f, paint(Role::focus), 2.0f);
    const std::string shown = pad.text;
    list.push_clip(box);
    const float width = canvas.type().width(large, shown);
    const float x = std::min(box.x0 + 12.0f, box.x1 - 14.0f - width);
    const Vec at{x, box.centre().y - 0.5f * line};
    if (pad.fresh && !shown.empty())
        list.round({at.x - 2.0f, at.y + 2.0f, at.x + width + 2.0f, at.y + line - 2.0f}, 3.0f,
                   paint(Role::quiet));
    list.text(at, shown, large, Role::ink, pad.fresh ? Role::quiet : Role::paper);
    const Vec caret[] = {{at.x + width + 2.0f, at.y + 3.0f}, {at.x + width + 2.0f, at.y + line - 3.0f}};
    list.line(caret, 2, paint(Role::focus), 2.0f);
    list.pop_clip();
    Thing& thing = list.thing("pad/display", ThingRole::textbox, box);
    thing.label = title;
    thing.value = shown;
    if (!pad.trouble.empty()) rows.text(pad.trouble, small, Role::stop, 6.0f);
    else rows.text(reading_of(model, pad).empty() ? std::string(" ") : reading_of(model, pad), small,
                    Role::soft_ink, 6.0f);
}

void draw_keys(const Pad& pad, Box box, Canvas& canvas) {
    const bool is_length = pad_quantity(pad) == Quantity::length;
    const float gap = key_gap;
    const int columns = 4, rows = 5;
    const float w = (box.width() - gap * (columns - 1)) / columns;
    const float h = std::clamp((box.height() - gap * (rows - 1)) / rows, key_height(canvas), 72.0f);
    const auto cell = [&](int column, int row, int span = 1) {
        const float x = box.x0 + (w + gap) * static_cast<float>(column);
        const float y = box.y0 + (h + gap) * static_cast<float>(row);
        return Box{x, y, x + w * static_cast<float>(span) + gap * static_cast<float>(span - 1), y + h};
    };
    for (int i = 0; i < 12; ++i)
        key(canvas, figures[i].name, cell(i % 3, i / 3), figures[i].face, figures[i].key);
    canvas.icon_button("pad/backspace", cell(3, 0), Icon::backspace, canvas.word(Word::erase),
                       canvas.action(PadPress{PadKey::backspace}), true, ButtonLook::quiet);
    if (is_length) {
        key(canvas, "pad/mm", cell(3, 1), "mm", PadKey::mm);
        key(canvas, "pad/inch", cell(3, 2), "in", PadKey::inch);
        key(canvas, "pad/slash", cell(3, 3), "1/2", PadKey::slash);
    }
    canvas.icon_button("pad/cancel", cell(0, 4, 1), Icon::close, canvas.word(Word::cancel),
                       canvas.action(PadPress{PadKey::cancel}), true, ButtonLook::plain);
    if (is_length) {
        canvas.icon_button("pad/space", cell(1, 4), Icon::space, canvas.word(Word::space_key),
                           canvas.action(PadPress{PadKey::space}), true, ButtonLook::quiet);
    }
    const Box accept = is_length ? cell(2, 4, 2) : cell(1, 4, 3);
    canvas.list().round(accept, 12.0f, paint(Role::strong));
    canvas.icon(Icon::check, accept.centre(), 26.0f, Role::on_strong);
    Thing& thing = canvas.list().thing("pad/accept", ThingRole::button, accept);
    thing.label.assign(canvas.word(Word::done));
    thing.action = canvas.action(PadPress{PadKey::accept});
}

} // namespace

float pad_height(const Model& model, Canvas& canvas, float window_width) {
    const Pad& pad = *model.state->pad;
    const float width = std::min(window_width - 32.0f, 420.0f);
    const TypeStyle small{TypeSize::small, false};
    const std::string below = pad.trouble.empty() ? reading_of(model, pad) : pad.trouble;
    return 14.0f + canvas.paragraph_height(width, title_of(canvas, pad), {TypeSize::body, true}) + 4.0f +
           display_height(canvas, pad) + 4.0f +
           std::max(canvas.type().height(small) * 1.06f, canvas.paragraph_height(width, below, small)) + 6.0f +
           5.0f * key_height(canvas) + 4.0f * key_gap + 10.0f;
}

void draw_pad(const Model& model, Box box, bool sheet, Canvas& canvas) {
    const Pad& pad = *model.state->pad;
    DrawingList& list = canvas.list();
    list.round({box.x0, box.y0, box.x1, box.y1 + (sheet ? 20.0f : 0.0f)}, sheet ? 16.0f : 0.0f,
               paint(Role::panel));
    list.ring({box.x0 - 2.0f, box.y0, box.x1 + 2.0f, box.y1 + 20.0f}, sheet ? 16.0f : 0.0f,
              paint(Role::edge), 1.0f);
    list.thing("pad", ThingRole::region, box).label.assign(canvas.word(Word::type_number));
    const float width = std::min(box.width() - 32.0f, 420.0f);
    Rows rows{canvas, box.centre().x - 0.5f * width, width, box.y0 + 14.0f, Role::panel};
    draw_display(model, pad, rows);
    draw_keys(pad, {rows.x, rows.y, rows.x + width, box.y1 - 8.0f}, canvas);
}

void number_pad(const Model& model, const Layout& layout, Canvas& canvas) {
    // In compact windows the pad covers the places and as much of the rest as it needs.
    Box box = layout.panel;
    if (layout.compact) {
        const float height = pad_height(model, canvas, box.width());
        box.y1 = model.window.y1;
        box.y0 = std::max(model.window.y0, std::min(layout.panel.y0, box.y1 - height));
    }
    canvas.list().set_layer(layout.compact ? 2 : 1);
    draw_pad(model, box, layout.compact, canvas);
    canvas.list().set_layer(0);
}

} // namespace carriageway
