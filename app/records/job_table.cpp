#include "app/records/job_table.h"

#include <cstdio>

#include "app/text/paper_sentences.h"
#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "core/recipe.h"
#include "core/walk.h"

namespace carriageway {
namespace {

/// Of a head besides what is set on the walk, in the order of the columns.
constexpr Field other_fields[] = {
    Field::screen_across, Field::screen_along,     Field::screen_profile,  Field::mesh_count,
    Field::thread_diameter, Field::tension_along,  Field::tension_across,  Field::image_width,
    Field::image_length,  Field::image_offset_x,   Field::image_offset_y,  Field::image_rotation,
    Field::squeegee_hardness, Field::fabric_thickness, Field::stencil,     Field::printed_share,
    Field::finest_detail,
};

/// What one table is made for.
struct Table {
    const Job& job;
    const Assessment& assessment;
    Language language;
    LengthUnit unit;

    std::string text(Word key) const { return std::string(word(language, key)); }

    /// As closely as it is kept: a table is read by programs too.
    std::string number(Field field, double value) const {
        if (is_not_noted(field, value)) return {};
        if (is_stop(field)) return plain_ruler(job.press.ruler, value);
        return plain_quantity(value, info_of(field).quantity, unit);
    }

    std::string name(Field field, Word bare, Word with_unit) const {
        std::string words = text(paper_field_word(field));
        if (is_stop(field)) words = say(language, Word::paper_column_ruler, {words});
        const std::string of = paper_unit(language, unit, job, field);
        return of.empty() ? say(language, bare, {words}) : say(language, with_unit, {words, of});
    }
};

void add_walk_names(const Table& table, HeadId head, std::vector<std::string>& names) {
    for (const Field field : walk_fields(table.job, head)) {
        names.push_back(
            table.name(field, Word::paper_column_planned, Word::paper_column_planned_unit));
        names.push_back(
            table.name(field, Word::paper_column_really, Word::paper_column_really_unit));
    }
}

void add_walk_numbers(const Table& table, HeadId head, std::vector<std::string>& fields) {
    for (const Field field : walk_fields(table.job, head)) {
        const double planned = planned_value(table.job, head, field).value_or(0.0);
        const WalkMark* mark = mark_of(table.job, head, field);
        const bool known = mark && (mark->done || mark->real);
        fields.push_back(table.number(field, planned));
        fields.push_back(known ? table.number(field, mark->real.value_or(planned)) : std::string());
    }
}

std::vector<std::string> names_of(const Table& table) {
    std::vector<std::string> names{table.text(Word::paper_column_job),
                                   table.text(Word::column_press), table.text(Word::column_head),
                                   table.text(Word::column_colour),
                                   table.text(Word::paper_column_ink_colour)};
    if (!table.job.heads.empty()) add_walk_names(table, table.job.heads.front().id, names);
    for (const Field field : other_fields)
        names.push_back(table.name(field, Word::paper_column_bare, Word::paper_column_unit));
    for (const Word key : {Word::item_blade_edge, Word::flood_bar, Word::paper_prints,
                           Word::item_stencil_note, Word::item_ink_note})
        names.push_back(table.text(key));
    add_walk_names(table, 0, names);
    names.push_back(table.text(Word::column_verdict));
    names.push_back(table.text(Word::paper_column_findings));
    return names;
}

std::string ink_text(std::uint32_t ink) {
    char buffer[16];
    std::snprintf(buffer, sizeof buffer, "#%06X", static_cast<unsigned>(ink & 0xFFFFFFu));
    return buffer;
}

std::string findings_of(const Table& table, const HeadAssessment& head) {
    std::string out;
    for (const Finding& finding : head.findings) {
        const FindingText text = finding_text(table.language, table.unit, table.job, head, finding);
        out += (out.empty() ? "" : "; ") + text.severity + ": " + text.title;
    }
    return out;
}

/// An outline has no width and length to type: what it measures stands there instead.
double number_shown(const Head& head, const HeadAssessment& assessed, const Job& job, Field field) {
    const bool outline = !head.image.outline.empty();
    if (outline && field == Field::image_width) return assessed.image_bounds.width();
    if (outline && field == Field::image_length) return assessed.image_bounds.length();
    return number_of(job, &head, field);
}

std::vector<std::string> row_of(const Table& table, const Head& head,
                                const HeadAssessment& assessed) {
    const Job& job = table.job;
    std::vector<std::string> fields{plain_field(job.name), plain_field(job.press.name),
                                    std::to_string(head.station), plain_field(head.colour),
                                    ink_text(head.ink)};
    add_walk_numbers(table, head.id, fields);
    for (const Field field : other_fields)
        fields.push_back(table.number(field, number_shown(head, assessed, job, field)));
    const BladeEdge edge = head.squeegee.edge;
    fields.push_back(edge == BladeEdge::not_noted ? std::string() : table.text(edge_word(edge)));
    fields.push_back(table.text(head.flood.winged ? Word::with_wings : Word::without_wings));
    fields.push_back(table.text(direction_word(head.print_stroke)));
    fields.push_back(plain_field(head.notes.stencil));
    fields.push_back(plain_field(head.notes.ink));
    add_walk_numbers(table, 0, fields);
    fields.push_back(table.text(verdict_word(assessed)));
    fields.push_back(findings_of(table, assessed));
    return fields;
}

std::string csv_field(const std::string& text) {
    const bool spaced = !text.empty() && (text.front() == ' ' || text.back() == ' ');
    if (!spaced && text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string out = "\"";
    for (const char letter : text) {
        if (letter == '"') out += '"';
        out += letter;
    }
    return out + '"';
}

} // namespace

std::string plain_field(std::string_view text) {
    const bool formula = !text.empty() && std::string_view("=+-@\t\r\n").find(text.front()) !=
                                              std::string_view::npos;
    return (formula ? "'" : "") + std::string(text);
}

std::string csv_line(const std::vector<std::string>& fields) {
    std::string line;
    for (std::size_t i = 0; i < fields.size(); ++i)
        line += (i > 0 ? "," : "") + csv_field(fields[i]);
    return line + "\r\n";
}

std::string job_table(const Job& job, const Assessment& assessment, Language language,
                      LengthUnit unit) {
    const Table table{job, assessment, language, unit};
    std::string out = csv_line(names_of(table));
    for (std::size_t i = 0; i < job.heads.size(); ++i)
        out += csv_line(row_of(table, job.heads[i], assessment.heads[i]));
    return out;
}

} // namespace carriageway
