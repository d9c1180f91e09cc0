// What was read, and what follows from it.
#include "app/views/measure_sheet.h"
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

bool stands_off(const Measured& result, ReadingKind kind, std::size_t reading) {
    for (const StandingOff& off : result.standing_off)
        if (off.kind == kind && off.reading == reading) return true;
    return false;
}

/// One reading; a tap takes it out.
struct Chip {
    std::string number, value;
    float width = 0.0f;
};

void draw_chip(const Chip& chip, Box box, bool off, const std::string& name, const std::string& label, int action,
               Canvas& canvas) {
    DrawingList& list = canvas.list();
    list.round(box, 10.0f, paint(Role::quiet));
    if (off) list.ring(box, 10.0f, paint(Role::stop), 2.4f);
    const float small_line = canvas.type().height(small_text),
                line = canvas.type().height(bold_text);
    const float middle = box.centre().y;
    list.text({box.x0 + 10.0f, middle - 0.5f * small_line}, chip.number, small_text, Role::soft_ink,
              Role::quiet);
    list.text({box.x0 + 16.0f + canvas.type().width(small_text, chip.number), middle - 0.5f * line},
              chip.value, bold_text, Role::ink, Role::quiet);
    canvas.icon(Icon::close, {box.x1 - 16.0f, middle}, 13.0f, Role::soft_ink);
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label = label;
    thing.action = action;
}

void chips_of(const Model& model, const Taking& taking, std::size_t at, const Measured& result, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const KindReadings& list = taking.lists[at];
    const Language language = canvas.language();
    const float height = std::max(44.0f, canvas.type().height(bold_text) + 14.0f);
    float x = rows.x;
    for (std::size_t i = 0; i < list.values.size(); ++i) {
        Chip chip{std::to_string(i + 1), reading_text(language, model.state->looks.units, model.job->press,
                                                      taking.target, list.kind, list.values[i])};
        chip.width = std::max(44.0f, canvas.type().width(small_text, chip.number) +
                                         canvas.type().width(bold_text, chip.value) + 46.0f);
        if (x > rows.x && x + chip.width > rows.x + rows.width) {
            x = rows.x;
            rows.y += height + 6.0f;
        }
        draw_chip(chip, {x, rows.y, x + chip.width, rows.y + height}, stands_off(result, list.kind, i),
                  "measure/reading/" + std::to_string(at) + "/" + std::to_string(i),
                  say(language, Word::measure_remove, {chip.number, chip.value}),
                  canvas.action(RemoveReading{at, i, false}), canvas);
        x += chip.width + 6.0f;
    }
    if (!list.values.empty()) rows.y += height + 8.0f;
}

/// A heading with the letter that the drawing has at the same thing.
void kind_heading(const Taking& taking, std::size_t at, const NeededReading& needed, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string words = capitalised(canvas.word(reading_word(taking.target, needed.kind)));
    const std::string progress =
        say(canvas.language(), Word::measure_progress,
            {std::to_string(taking.lists[at].values.size()), std::to_string(needed.least)});
    const float radius = badge_radius(canvas.type());
    const float indent = 2.0f * radius + 8.0f;
    draw_badge(canvas.list(), {rows.x + radius, rows.y + radius}, static_cast<int>(at));
    const float top = rows.y;
    float y = rows.y + std::max(0.0f, radius - 0.53f * canvas.type().height(bold_text));
    y += canvas.paragraph({rows.x + indent, y}, rows.width - indent, words, bold_text, Role::ink,
                          rows.on);
    y += canvas.paragraph({rows.x + indent, y}, rows.width - indent, progress, small_text,
                          Role::soft_ink, rows.on);
    rows.y = std::max(y, top + 2.0f * radius) + 6.0f;
    canvas.reading("measure/kind/" + std::to_string(at), {rows.x, top, rows.x + rows.width, rows.y - 6.0f}, words,
                   progress);
}

/// One kind of reading: what it is, what was read, and the button for the next.
void kind_block(const Model& model, const Taking& taking, std::size_t at, const Measured& result, bool typing,
                Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Procedure& procedure = procedure_of(taking.target);
    const NeededReading& needed = procedure.needed[at];
    kind_heading(taking, at, needed, rows);
    chips_of(model, taking, at, result, rows);
    if (typing) return rows.space(6.0f);
    const std::string name = std::to_string(at);
    const bool wanted = static_cast<int>(taking.lists[at].values.size()) < needed.least;
    const bool step = !needed.exact && taking.lists[at].half_step > 0.0;
    const std::string nearest =
        step ? say(canvas.language(), Word::measure_nearest,
                   {format_quantity(canvas.language(), 2.0 * taking.lists[at].half_step,
                                    reading_quantity(taking.target, needed.kind), model.state->looks.units)})
             : std::string();
    const std::string_view add = canvas.word(Word::measure_add);
    const float half = 0.5f * (rows.width - 8.0f);
    const bool beside = step && canvas.type().width(bold_text, add) + 28.0f < half &&
                        canvas.type().width(bold_text, nearest) + 28.0f < half;
    const float first = beside ? half : rows.width;
    const float height = canvas.button_height(add, {}, first, 48.0f);
    canvas.button("measure/add/" + name, {rows.x, rows.y, rows.x + first, rows.y + height}, add,
                  wanted ? ButtonLook::quiet : ButtonLook::plain, canvas.action(AddReading{at}));
    float x = rows.x + half + 8.0f;
    if (!beside) {
        rows.space(height + 6.0f);
        x = rows.x;
    }
    if (step) {
        const float other = canvas.button_height(nearest, {}, rows.x + rows.width - x, 48.0f);
        canvas.button("measure/step/" + name, {x, rows.y, rows.x + rows.width, rows.y + other}, nearest,
                      ButtonLook::bare, canvas.action(SetReadingStep{at}));
        rows.space(other);
    } else if (beside) {
        rows.space(height);
    }
    rows.space(14.0f);
}

void off_lines(const Model& model, const Taking& taking, const Measured& result, bool typing, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    for (std::size_t k = 0; k < taking.lists.size(); ++k)
        for (std::size_t i = 0; i < taking.lists[k].values.size(); ++i) {
            if (!stands_off(result, taking.lists[k].kind, i)) continue;
            const std::string value = reading_text(language, model.state->looks.units, model.job->press,
                                                   taking.target, taking.lists[k].kind, taking.lists[k].values[i]);
            const std::string number = std::to_string(i + 1);
            const std::string words = say(language, Word::measure_stands_off, {number, value});
            const float top = rows.y;
            rows.text(words, bold_text, Role::stop, 6.0f);
            canvas.reading("measure/off/" + std::to_string(k), {rows.x, top, rows.x + rows.width, rows.y - 6.0f},
                           words, {});
            if (typing) continue;
            const std::string again = say(language, Word::measure_take_again, {number});
            canvas.button("measure/again/" + std::to_string(k),
                          rows.next(canvas.button_height(again, {}, rows.width, 48.0f), 10.0f), again,
                          ButtonLook::plain, canvas.action(RemoveReading{k, i, true}));
        }
}

void result_block(const Model& model, const Taking& taking, const Measured& result, bool typing, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const LengthUnit unit = model.state->looks.units;
    const Vec line[] = {{rows.x, rows.y}, {rows.x + rows.width, rows.y}};
    canvas.list().line(line, 2, paint(Role::edge), 1.0f);
    rows.space(10.0f);
    const float top = rows.y;
    rows.text(canvas.word(Word::measure_result), small_text, Role::soft_ink, 2.0f);
    const bool good = result.refusal == MeasuredRefusal::none;
    const std::string words = good ? result_text(language, unit, result) : refused_text(language, unit, taking, result);
    const bool waiting = result.refusal == MeasuredRefusal::missing;
    const float large = canvas.paragraph_height(rows.width, words, {TypeSize::large, true});
    const bool fits = large < 2.5f * canvas.type().height({TypeSize::large, true});
    if (good) rows.text(words, {fits ? TypeSize::large : TypeSize::title, true}, Role::ink, 4.0f);
    else
        rows.text(words, body_text, waiting ? Role::ink : Role::stop, 8.0f);
    canvas.reading("measure/result", {rows.x, top, rows.x + rows.width, rows.y},
                   canvas.word(Word::measure_result), words);
    canvas.list().things().back().live = true;
    off_lines(model, taking, result, typing, rows);
    if (!good) return;
    const bool decided = procedure_of(taking.target).needed[0].exact;
    if (!decided || result.values[0].spread)
        rows.text(canvas.word(result.values[0].spread ? Word::measure_plus_minus
                                                      : Word::measure_no_spread),
                  small_text, Role::soft_ink, 10.0f);
    if (typing) return;
    const std::string use = say(language, Word::measure_use, {words});
    canvas.button("measure/use", rows.next(canvas.button_height(use, {}, rows.width, 60.0f), 12.0f), use,
                  ButtonLook::strong, canvas.action(UseMeasured{}));
}

} // namespace

void measure_entry(const Model& model, const Taking& taking, std::optional<std::size_t> only, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Measured result = measured(procedure_of(taking.target), taking.lists);
    const bool typing = model.state->pad.has_value();
    if (!only) rows.text(canvas.word(Word::measure_readings), bold_text, Role::ink, 8.0f);
    for (std::size_t i = 0; i < taking.lists.size(); ++i)
        if (!only || *only == i) kind_block(model, taking, i, result, typing, rows);
    result_block(model, taking, result, typing, rows);
}

} // namespace carriageway
