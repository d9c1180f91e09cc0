// The recipe: what brings a job back as it was, head by head; what nobody has noted stands out, and
// nothing is forced.
#include <algorithm>
#include <initializer_list>
#include <span>

#include "app/drawing/diagram.h"
#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "core/walk.h"

namespace carriageway {

namespace {

/// A label with its value. A gap has an outline and a sign instead of a filled ground.
struct RecipeRow {
    std::string name;
    std::string_view label;
    std::string value;
    bool gap = false;
    std::optional<Action> action;
};

/// Where the words of a row go: side by side while every word of the label has room.
struct RowPlan {
    float inside = 0.0f, label_width = 0.0f, value_width = 0.0f;
    float label_height = 0.0f, value_height = 0.0f;
    bool stacked = false;
    float height() const {
        return stacked ? label_height + value_height : std::max(label_height, value_height);
    }
};

constexpr float pad = 12.0f, between = 10.0f, sign = 12.0f, beside_sign = 6.0f;

RowPlan plan_of(const RecipeRow& row, float width, const Canvas& canvas) {
    constexpr float least_share = 0.4f;
    RowPlan plan;
    plan.inside = width - 2.0f * pad;
    const float mark = row.gap ? sign + beside_sign : 0.0f;
    plan.value_width = canvas.type().width(bold_text, row.value) + mark;
    const float beside = plan.inside - plan.value_width - between;
    plan.stacked = beside < std::max(least_share * width, canvas.widest_word(row.label, body_text));
    plan.label_width = plan.stacked ? plan.inside : beside;
    plan.label_height = canvas.paragraph_height(plan.label_width, row.label, body_text);
    plan.value_height = canvas.paragraph_height(plan.inside - mark, row.value, bold_text);
    return plan;
}

void recipe_row(const RecipeRow& row, Rows& rows) {
    constexpr float corner = 10.0f, air = 18.0f;
    Canvas& canvas = rows.canvas;
    const RowPlan plan = plan_of(row, rows.width, canvas);
    const Box box = rows.next(std::max(48.0f, plan.height() + air), 6.0f);
    DrawingList& list = canvas.list();
    const bool filled = row.action && !row.gap;
    const Role on = filled ? Role::quiet : rows.on;
    if (filled) list.round(box, corner, paint(Role::quiet));
    else if (row.gap) list.ring(box, corner, paint(Role::mind), 1.6f);
    const float top = box.centre().y - 0.5f * plan.height();
    const float label_top = plan.stacked ? top : box.centre().y - 0.5f * plan.label_height;
    canvas.paragraph({box.x0 + pad, label_top}, plan.label_width, row.label, body_text, Role::ink,
                     on);
    Vec at{plan.stacked ? box.x0 + pad : box.x1 - pad - plan.value_width,
           plan.stacked ? top + plan.label_height : box.centre().y - 0.5f * plan.value_height};
    float room = plan.stacked ? plan.inside : plan.value_width + 1.0f;
    if (row.gap) {
        draw_verdict(list, {at.x + 0.5f * sign, at.y + 0.5f * canvas.type().height(bold_text)},
                     sign, Role::mind);
        at.x += sign + beside_sign;
        room -= sign + beside_sign;
    }
    canvas.paragraph(at, room, row.value, bold_text, row.gap ? Role::mind : Role::ink, on);
    Thing& thing = list.thing(row.name, row.action ? ThingRole::button : ThingRole::text, box);
    thing.label.assign(row.label);
    thing.value = row.value;
    if (row.action) thing.action = canvas.action(*row.action);
}

/// A number; what was really set on the walk stands below it, or in its place where nothing else is
/// known.
void number_entry(const Model& model, HeadId head, Field field, Rows& rows) {
    const Language language = rows.canvas.language();
    const LengthUnit units = model.state->looks.units;
    const double planned = number_of(*model.job, find_head(*model.job, head), field);
    const double set = value_as_set(*model.job, head, field).value_or(planned);
    const bool gap = is_not_noted(field, set);
    const double shown = is_not_noted(field, planned) ? set : planned;
    const std::string name = "recipe/" + field_thing(model, head, field);
    recipe_row({name, rows.canvas.word(field_word(field)),
                recipe_value(language, units, field, shown), gap, OpenPad{head, field}},
               rows);
    const WalkMark* mark = mark_of(*model.job, head, field);
    if (!mark || !mark->real) return;
    const std::string really = say(language, Word::recipe_really_set,
                                   {recipe_value(language, units, field, *mark->real)});
    const float top = rows.y;
    rows.text(really, small_text, Role::soft_ink, 8.0f);
    rows.canvas.reading(name + "/really", {rows.x, top, rows.x + rows.width, rows.y}, really, {});
}

void note_entry(const Model& model, HeadId head, Note note, Word label, std::string_view text,
                const std::string& name, Rows& rows) {
    rows.space(4.0f);
    text_row(model, name, rows.canvas.word(label), text, rows.canvas.word(Word::recipe_not_noted),
             EditText{TextTarget::note, 0, head, note}, rows);
}

std::string head_thing(const Head& head) { return "recipe/head/" + std::to_string(head.station); }

void edge_entry(const Head& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const auto chip = [&](const char* name, BladeEdge edge) {
        return Chip{head_thing(head) + "/edge/" + name,
                    std::string(canvas.word(edge_word(edge))),
                    {},
                    head.squeegee.edge == edge,
                    DoEdit{Edit{SetBladeEdge{head.id, edge}}}};
    };
    const std::vector<Chip> chips = {chip("square", BladeEdge::square),
                                     chip("rounded", BladeEdge::rounded),
                                     chip("single-bevel", BladeEdge::single_bevel),
                                     chip("double-bevel", BladeEdge::double_bevel),
                                     chip("not-noted", BladeEdge::not_noted)};
    rows.space(4.0f);
    const bool gap = head.squeegee.edge == BladeEdge::not_noted;
    rows.text(canvas.word(Word::recipe_edge), small_text, gap ? Role::mind : Role::soft_ink, 4.0f);
    chip_grid(head_thing(head) + "/edge", canvas.word(Word::recipe_edge), chips,
              chip_columns(chips, 5, rows.width, canvas), rows);
}

void stroke_entry(const Model& model, const Head& head, Rows& rows) {
    number_entry(model, head.id, Field::print_strokes, rows);
    recipe_row({head_thing(head) + "/prints", rows.canvas.word(Word::recipe_prints),
                std::string(rows.canvas.word(direction_word(head.print_stroke))), false,
                std::nullopt},
               rows);
}

/// The numbers that make up an entry; none: it isn't made of numbers.
std::vector<Field> fields_of(RecipeItem item) {
    switch (item) {
    case RecipeItem::mesh: return {Field::mesh_count, Field::thread_diameter};
    case RecipeItem::stencil_build_up: return {Field::stencil};
    case RecipeItem::blade_hardness: return {Field::squeegee_hardness};
    case RecipeItem::speeds: return {Field::print_speed, Field::flood_speed};
    case RecipeItem::pressures: return {Field::squeegee_pressure, Field::flood_pressure};
    case RecipeItem::off_contact:
        return {Field::height_left, Field::height_right, Field::height_machine};
    case RecipeItem::platen_size: return {Field::platen_width, Field::platen_length};
    case RecipeItem::flash_dwell: return {Field::flash_dwell};
    case RecipeItem::flash_temperature: return {Field::flash_temperature};
    case RecipeItem::dryer: return {Field::dryer_temperature, Field::dryer_time};
    default: return {};
    }
}

void entry_rows(const Model& model, const RecipeEntry& entry, const Head* head, Rows& rows) {
    if (entry.item == RecipeItem::garment_name)
        return note_entry(model, 0, Note::garment, Word::recipe_garment, model.job->garment.name,
                          "recipe/garment", rows);
    for (const Field field : fields_of(entry.item)) number_entry(model, entry.head, field, rows);
    if (!head) return;
    if (entry.item == RecipeItem::ink_note)
        note_entry(model, head->id, Note::ink, Word::recipe_ink, head->notes.ink,
                   head_thing(*head) + "/ink", rows);
    if (entry.item == RecipeItem::stencil_note)
        note_entry(model, head->id, Note::stencil, Word::recipe_stencil, head->notes.stencil,
                   head_thing(*head) + "/stencil", rows);
    if (entry.item == RecipeItem::blade_edge) edge_entry(*head, rows);
    if (entry.item == RecipeItem::stroke_pattern) stroke_entry(model, *head, rows);
}

int gaps_among(std::span<const RecipeEntry> entries) {
    return static_cast<int>(std::count_if(entries.begin(), entries.end(),
                                          [](const RecipeEntry& entry) { return !entry.known; }));
}

/// "Not noted: ink, blade edge"; empty where nothing is missing.
std::string gaps_text(Language language, std::span<const RecipeEntry> entries) {
    std::string names;
    for (const RecipeEntry& entry : entries)
        if (!entry.known) {
            if (!names.empty()) names += ", ";
            names += word(language, recipe_word(entry.item));
        }
    return names.empty() ? names : say(language, Word::recipe_gap_list, {names});
}

/// Name of the head, or of what belongs to the job, with its ink and what of it isn't noted.
void owner_heading(const Model& model, const Head* head, std::span<const RecipeEntry> entries,
                   Rows& rows) {
    constexpr float radius = 9.0f, above = 14.0f;
    Canvas& canvas = rows.canvas;
    rows.space(above);
    const std::string name =
        head ? head_name(model, *head) : std::string(canvas.word(Word::recipe_job));
    const float indent = head ? 2.0f * radius + 10.0f : 0.0f;
    const float top = rows.y;
    if (head) {
        const Vec centre{rows.x + radius, top + 0.5f * canvas.type().height(title_text)};
        canvas.list().disc(centre, radius, own_colour(head->ink));
        canvas.list().circle(centre, radius, paint(Role::edge), 1.4f);
    }
    rows.y += canvas.paragraph({rows.x + indent, rows.y}, rows.width - indent, name, title_text,
                               Role::ink, rows.on);
    const std::string missing = gaps_text(canvas.language(), entries);
    rows.text(missing, small_text, Role::mind, 0.0f);
    rows.space(8.0f);
    canvas.reading(head ? head_thing(*head) : std::string("recipe/job"),
                   {rows.x, top, rows.x + rows.width, rows.y}, name, missing);
}

/// The filter, and how much is known.
void recipe_top(const Model& model, const std::vector<RecipeEntry>& entries, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool only = model.state->day.only_gaps;
    rows.text(canvas.word(Word::recipe_hint), body_text, Role::ink, 8.0f);
    const std::string status = recipe_status(model);
    const float top = rows.y;
    rows.text(status, bold_text, Role::ink, 10.0f);
    canvas.reading("recipe/progress", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, status,
                   {});
    canvas.list().things().back().live = true;
    choices("recipe/show", canvas.word(Word::recipe_show),
            {{"recipe/all", std::string(canvas.word(Word::recipe_all)),
              canvas.action(ShowGaps{false}), !only},
             {"recipe/gaps", std::string(canvas.word(Word::recipe_gaps)),
              canvas.action(ShowGaps{true}), only}},
            rows);
    if (only && gaps_among(entries) == 0)
        rows.text(canvas.word(Word::recipe_complete), body_text, Role::soft_ink, 8.0f);
}

} // namespace

void recipe_part(const Model& model, Rows& rows) {
    const std::vector<RecipeEntry> entries = recipe_of(*model.job);
    recipe_top(model, entries, rows);
    const bool only = model.state->day.only_gaps;
    // Entries of one head, or of the job, stand together.
    for (std::size_t i = 0; i < entries.size();) {
        std::size_t end = i;
        while (end < entries.size() && entries[end].head == entries[i].head) ++end;
        const std::span<const RecipeEntry> owned(entries.data() + i, end - i);
        const Head* head = find_head(*model.job, entries[i].head);
        const int gaps = gaps_among(owned);
        i = end;
        if (only && gaps == 0) continue;
        owner_heading(model, head, owned, rows);
        for (const RecipeEntry& entry : owned)
            if (!only || !entry.known) entry_rows(model, entry, head, rows);
    }
}

std::string recipe_status(const Model& model) {
    const Language language = model.state->looks.language;
    const std::vector<RecipeEntry> entries = recipe_of(*model.job);
    const int gaps = gaps_among(entries);
    const int all = static_cast<int>(entries.size());
    std::string text = say(language, Word::recipe_progress,
                           {std::to_string(all - gaps), std::to_string(all)});
    if (gaps > 0)
        text += ", " + say(language, Word::recipe_gap_count, {std::to_string(gaps)});
    return text;
}

} // namespace carriageway
