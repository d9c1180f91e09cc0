// Everything that can be measured, and how one of it is done.
#include "app/views/measure_sheet.h"
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

/// Stable name of a target: its field's key, or its screw.
std::string thing_name(const MeasureTarget& target) {
    if (!target.screw) return std::string("measure/") + info_of(target.field).key;
    return std::string(target.screw->levels ? "measure/level-screw/" : "measure/adjuster/") +
           std::to_string(target.screw->index);
}

std::size_t readings_of(const Model& model, const MeasureTarget& target) {
    std::size_t count = 0;
    for (const Taking& taking : model.state->measuring.taken)
        if (taking.target == target)
            for (const KindReadings& list : taking.lists) count += list.values.size();
    return count;
}

struct RowText {
    std::string title;
    std::string value;
};

RowText text_of(const Model& model, const MeasureTarget& target) {
    const Language language = model.state->looks.language;
    RowText text{target_title(language, model.job->press, target),
                 present_value(language, model.state->looks.units, model.job->press, target)};
    if (const std::size_t count = readings_of(model, target); count > 0)
        text.value += " · " + say(language, Word::measure_begun, {std::to_string(count)});
    return text;
}

float row_height(const Canvas& canvas, const RowText& text, float width) {
    const float inside = width - 44.0f;
    return std::max(48.0f, canvas.paragraph_height(inside, text.title, body_text) +
                               canvas.paragraph_height(inside, text.value, small_text) + 16.0f);
}

void target_row(const MeasureTarget& target, const RowText& text, Box box, Canvas& canvas) {
    DrawingList& list = canvas.list();
    list.round(box, 10.0f, paint(Role::quiet));
    const float inside = box.width() - 44.0f;
    const float title = canvas.paragraph_height(inside, text.title, body_text);
    const float value = canvas.paragraph_height(inside, text.value, small_text);
    const float top = box.centre().y - 0.5f * (title + value);
    canvas.paragraph({box.x0 + 12.0f, top}, inside, text.title, body_text, Role::ink, Role::quiet);
    canvas.paragraph({box.x0 + 12.0f, top + title}, inside, text.value, small_text, Role::soft_ink,
                     Role::quiet);
    const Vec tip{box.x1 - 16.0f, box.centre().y};
    const Vec chevron[] = {{tip.x - 5.0f, tip.y - 7.0f}, {tip.x + 2.0f, tip.y}, {tip.x - 5.0f, tip.y + 7.0f}};
    list.line(chevron, 3, paint(Role::soft_ink), 2.0f);
    Thing& thing = list.thing(thing_name(target), ThingRole::list_item, box);
    thing.label = text.title;
    thing.value = text.value;
    thing.action = canvas.action(ShowProcedure{target});
}

/// The text's sentences: each is one step.
std::vector<std::string_view> sentences_of(std::string_view text) {
    std::vector<std::string_view> sentences;
    while (!text.empty()) {
        const std::size_t end = text.find(". ");
        const bool last = end == std::string_view::npos;
        sentences.push_back(text.substr(0, last ? text.size() : end + 1));
        text.remove_prefix(last ? text.size() : end + 2);
    }
    return sentences;
}

void steps_of(const Procedure& procedure, const MeasureTarget& target, Rows& rows) {
    Canvas& canvas = rows.canvas;
    std::vector<std::string> steps;
    for (const std::string_view sentence : sentences_of(canvas.word(how_word(target)))) steps.emplace_back(sentence);
    int least = 1;
    for (int i = 0; i < procedure.needed_count; ++i)
        least = std::max(least, procedure.needed[static_cast<std::size_t>(i)].least);
    if (least > 1) steps.push_back(say(canvas.language(), Word::measure_repeat, {std::to_string(least)}));
    const float radius = 0.5f * canvas.type().height(bold_text) + 2.0f;
    const float indent = 2.0f * radius + 10.0f;
    std::string all;
    const float top = rows.y;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Vec centre{rows.x + radius, rows.y + radius};
        canvas.list().disc(centre, radius, paint(Role::quiet));
        canvas.list().text_centred(centre, std::to_string(i + 1), bold_text, Role::ink,
                                   Role::quiet);
        const float text = canvas.paragraph({rows.x + indent, rows.y + 2.0f}, rows.width - indent,
                                            steps[i], body_text, Role::ink, rows.on);
        rows.y += std::max(2.0f * radius, text + 2.0f) + 8.0f;
        all += (i > 0 ? " " : "") + steps[i];
    }
    canvas.reading("measure/steps", {rows.x, top, rows.x + rows.width, rows.y - 8.0f},
                   canvas.word(Word::measure_what_to_do), all);
    rows.space(6.0f);
}

/// Where hands go into the press: a block that stands out, before anything is done.
void cautions_of(const Procedure& procedure, Rows& rows) {
    if (procedure.caution_count == 0) return;
    Canvas& canvas = rows.canvas;
    const float top = rows.y;
    Rows inside = rows;
    inside.x += 16.0f;
    inside.width -= 16.0f;
    inside.text(canvas.word(Word::measure_before), bold_text, Role::mind, 4.0f);
    std::string all;
    for (int i = 0; i < procedure.caution_count; ++i) {
        const std::string_view words = canvas.word(caution_word(procedure.cautions[static_cast<std::size_t>(i)]));
        inside.text(words, body_text, Role::ink, 6.0f);
        all += std::string(words) + " ";
    }
    inside.text(canvas.word(Word::caution_manual), small_text, Role::soft_ink, 0.0f);
    all += canvas.word(Word::caution_manual);
    canvas.list().round({rows.x, top, rows.x + 4.0f, inside.y}, 2.0f, paint(Role::mind));
    canvas.reading("measure/cautions", {rows.x, top, rows.x + rows.width, inside.y},
                   canvas.word(Word::measure_before), all);
    rows.y = inside.y + 16.0f;
}

} // namespace

void measure_list(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::measure_intro), body_text, Role::soft_ink, 10.0f);
    const std::vector<MeasureRow> all = measure_rows(model.job->press);
    const int columns = rows.width > 640.0f * std::max(1.0f, canvas.scale()) ? 2 : 1;
    const float between = 12.0f;
    const float width = (rows.width - between * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    for (std::size_t i = 0; i < all.size();) {
        const MeasureGroup group = all[i].group;
        rows.space(6.0f);
        rows.text(canvas.word(group_word(group)), {TypeSize::title, true}, Role::ink, 8.0f);
        while (i < all.size() && all[i].group == group) {
            // Rows side by side are as high as the higher one.
            std::vector<RowText> texts;
            float height = 0.0f;
            const std::size_t first = i;
            for (int c = 0; c < columns && i < all.size() && all[i].group == group; ++c, ++i) {
                texts.push_back(text_of(model, all[i].target));
                height = std::max(height, row_height(canvas, texts.back(), width));
            }
            for (std::size_t c = 0; c < texts.size(); ++c) {
                const float x = rows.x + static_cast<float>(c) * (width + between);
                target_row(all[first + c].target, texts[c], {x, rows.y, x + width, rows.y + height}, canvas);
            }
            rows.space(height + 6.0f);
        }
    }
}

void measure_guide(const Model& model, const Taking& taking, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const MeasureTarget& target = taking.target;
    const Procedure& procedure = procedure_of(target);
    rows.text(
        say(canvas.language(), Word::measure_now,
            {present_value(canvas.language(), model.state->looks.units, model.job->press, target)}),
        body_text, Role::soft_ink, 10.0f);
    cautions_of(procedure, rows);
    if (const Scheme scheme = scheme_of(target); scheme != Scheme::none) {
        const float height = std::clamp(0.5f * rows.width, 150.0f, 220.0f) * std::max(1.0f, 0.5f + 0.5f * canvas.scale());
        const Box box = rows.next(height, 14.0f);
        SchemeInput input;
        input.scheme = scheme;
        input.press = &model.job->press;
        input.flood = target.field >= Field::flood_pivot_offset && target.field <= Field::flood_half_depth;
        input.places = on_ruler(target, procedure.needed[0].kind);
        input.machine = target.field == Field::height_machine_y;
        input.badges = procedure.needed_count;
        draw_scheme(input, box, canvas.list());
        canvas.list().thing("measure/scheme", ThingRole::image, box).label.assign(
            canvas.word(scheme_word(scheme)));
    }
    rows.text(canvas.word(Word::measure_what_to_do), bold_text, Role::ink, 8.0f);
    steps_of(procedure, target, rows);
}

} // namespace carriageway
