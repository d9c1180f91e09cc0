// Sections, rows of numbers and choices, as every panel uses them.
#include "app/text/sentences.h"
#include "app/views/exercise_view.h"

namespace carriageway {

std::string head_name(const Model& model, const Head& head) {
    return head_title(model.state->looks.language, head);
}

std::string field_thing(const Model& model, HeadId head, Field field) {
    const Head* of = find_head(*model.job, head);
    const std::string owner = info_of(field).owner == FieldOwner::head
                                  ? "head/" + std::to_string(of ? of->station : 0)
                              : info_of(field).owner == FieldOwner::job ? std::string("job")
                                                                        : std::string("press");
    return owner + "/" + info_of(field).key;
}

std::string field_value(const Model& model, HeadId head, Field field) {
    double value = number_of(*model.job, find_head(*model.job, head), field);
    if (const Head* of = find_head(*model.job, head); of && !of->image.outline.empty()) {
        const Rect bounds = bounds_of(of->image.outline);
        if (field == Field::image_width) value = bounds.width();
        if (field == Field::image_length) value = bounds.length();
    }
    if (is_stop(field)) return format_ruler(model.job->press.ruler, value);
    return format_quantity(model.state->looks.language, value, info_of(field).quantity,
                           model.state->looks.units);
}

bool section_head(const Model& model, Section section, std::string_view name, std::string_view words,
                  Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle style{TypeSize::body, true};
    const float line = canvas.paragraph_height(rows.width - 40.0f, words, style);
    const Box box = rows.next(std::max(48.0f, line + 20.0f), 4.0f);
    const bool open = model.state->is_open(section);
    DrawingList& list = canvas.list();
    const Vec edge[] = {{box.x0, box.y0}, {box.x1, box.y0}};
    list.line(edge, 2, paint(Role::edge), 1.0f);
    canvas.paragraph({box.x0, box.centre().y - 0.5f * line}, rows.width - 40.0f, words, style, Role::ink,
                     rows.on);
    canvas.icon(open ? Icon::up : Icon::down, {box.x1 - 14.0f, box.centre().y}, 20.0f, Role::soft_ink);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label.assign(words);
    thing.chosen = open;
    thing.action = canvas.action(ToggleSection{section});
    return open;
}

void number_row(const Model& model, HeadId head, Field field, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string_view label = canvas.word(field_word(field));
    const std::string value = field_value(model, head, field);
    const TypeStyle body{TypeSize::body, false}, bold{TypeSize::body, true};
    const float value_width = canvas.type().width(bold, value);
    const float label_width = rows.width - value_width - 34.0f;
    // Label and value share a line while every word of the label has room in it.
    const bool stacked = label_width < std::max(0.4f * rows.width, canvas.widest_word(label, body));
    const float inside = rows.width - 24.0f;
    const float text = canvas.paragraph_height(stacked ? inside : label_width, label, body);
    const float line = canvas.paragraph_height(inside, value, bold);
    const float height = std::max(48.0f, (stacked ? text + line : std::max(text, line)) + 18.0f);
    const Box box = rows.next(height, 4.0f);
    DrawingList& list = canvas.list();
    list.round(box, 10.0f, paint(Role::quiet));
    const float top = box.centre().y - 0.5f * (stacked ? text + line : text);
    canvas.paragraph({box.x0 + 12.0f, top}, stacked ? inside : label_width, label, body, Role::ink, Role::quiet);
    if (stacked)
        canvas.paragraph({box.x0 + 12.0f, top + text}, inside, value, bold, Role::ink, Role::quiet);
    else
        list.text({box.x1 - 12.0f - value_width, box.centre().y - 0.5f * line}, value, bold, Role::ink,
                  Role::quiet);
    Thing& thing = list.thing(field_thing(model, head, field), ThingRole::button, box);
    thing.label.assign(label);
    thing.value = value;
    if (looked_at_only(model)) thing.role = ThingRole::text;
    else thing.action = canvas.action(OpenPad{head, field});
}

void choices(std::string_view name, std::string_view label, std::span<const Choice> options, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const TypeStyle style{TypeSize::small, true};
    float widest = 0.0f;
    for (const Choice& option : options)
        widest = std::max(widest, canvas.type().width(style, option.words) + 16.0f);
    // Side by side where the words fit, else two and two, else one below the other.
    std::size_t columns = std::max<std::size_t>(1, options.size());
    const auto fits = [&] { return widest <= (rows.width - 4.0f) / static_cast<float>(columns); };
    if (!fits()) columns = columns > 2 && columns % 2 == 0 ? 2 : 1;
    if (!fits()) columns = 1;
    const float each = (rows.width - 4.0f) / static_cast<float>(columns);
    float tallest = canvas.type().height(style);
    for (const Choice& option : options)
        tallest = std::max(tallest, canvas.paragraph_height(each - 16.0f, option.words, style));
    const float line = std::max(44.0f, tallest + 18.0f);
    const std::size_t lines = (options.size() + columns - 1) / columns;
    const Box box = rows.next(line * static_cast<float>(lines) + 4.0f, 12.0f);
    DrawingList& list = canvas.list();
    list.round(box, 12.0f, paint(Role::quiet));
    list.thing(name, ThingRole::region, box).label.assign(label);
    for (std::size_t i = 0; i < options.size(); ++i) {
        const Choice& option = options[i];
        const Vec at{box.x0 + 2.0f + each * static_cast<float>(i % columns),
                     box.y0 + 2.0f + line * static_cast<float>(i / columns)};
        const Box part{at.x, at.y, at.x + each, at.y + line};
        if (option.chosen) {
            list.round(part.inset(1.0f), 10.0f, paint(Role::panel));
            list.ring(part.inset(1.0f), 10.0f, paint(Role::ink), 1.6f);
        }
        canvas.centred_paragraph(part.centre(), part.width() - 16.0f, option.words, style,
                                 option.chosen ? Role::ink : Role::soft_ink,
                                 option.chosen ? Role::panel : Role::quiet);
        Thing& thing = list.thing(option.name, ThingRole::tab, part);
        thing.label = option.words;
        thing.chosen = option.chosen;
        thing.action = option.action;
    }
}

} // namespace carriageway
