// The overview's tables: every head's numbers at a glance.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/drawing/paper_parts.h"
#include "app/text/paper_sentences.h"
#include "app/text/recipe_sentences.h"

namespace carriageway {

namespace {

/// A column of numbers of the heads.
struct NumberColumn {
    Word group;
    Word heading;
    Field field;
};

constexpr NumberColumn squeegee_columns[] = {
    {Word::section_screen, Word::mesh, Field::mesh_count},
    {Word::section_screen, Word::paper_thread, Field::thread_diameter},
    {Word::section_squeegee, Word::paper_width, Field::squeegee_width},
    {Word::section_squeegee, Word::paper_hardness, Field::squeegee_hardness},
    {Word::section_squeegee, Word::paper_angle, Field::squeegee_angle},
    {Word::section_squeegee, Word::paper_gauge, Field::squeegee_gauge},
    {Word::section_squeegee, Word::paper_air, Field::squeegee_pressure},
    {Word::section_squeegee, Word::paper_speed, Field::print_speed},
    {Word::section_squeegee, Word::paper_strokes, Field::print_strokes},
};

constexpr NumberColumn other_columns[] = {
    {Word::section_flood_bar, Word::paper_width, Field::flood_width},
    {Word::section_flood_bar, Word::paper_angle, Field::flood_angle},
    {Word::section_flood_bar, Word::paper_gauge, Field::flood_gauge},
    {Word::section_flood_bar, Word::paper_air, Field::flood_pressure},
    {Word::section_flood_bar, Word::paper_speed, Field::flood_speed},
    {Word::paper_stops_ruler, Word::column_operator, Field::operator_stop},
    {Word::paper_stops_ruler, Word::column_machine, Field::machine_stop},
    {Word::section_off_contact, Word::paper_left, Field::height_left},
    {Word::section_off_contact, Word::paper_right, Field::height_right},
    {Word::section_off_contact, Word::column_machine, Field::height_machine},
};

PaperColumn column_of(const PaperJob& sheet, const NumberColumn& column) {
    return {std::string(sheet.word(column.group)), std::string(sheet.word(column.heading)),
            paper_unit(sheet.language, sheet.units, sheet.job, column.field), true};
}

/// Which head it is: its station, its ink and the colour's name.
void add_head_columns(const PaperJob& sheet, std::vector<PaperColumn>& columns) {
    columns.push_back({{}, std::string(sheet.word(Word::column_head)), {}, true});
    columns.push_back({{}, std::string(sheet.word(Word::column_colour)), {}, false});
}

void add_head_cells(const Head& head, std::vector<PaperCell>& cells) {
    cells.push_back({std::to_string(head.station), {}, true, {}, {}});
    cells.push_back({head.colour, {}, true, head.ink, {}});
}

PaperCell number_cell(const PaperJob& sheet, const Head& head, Field field) {
    PaperCell cell;
    cell.words = number_text(sheet, field, planned_number(sheet, head.id, field));
    if (cell.words.empty()) cell.words = "–";
    if (const std::optional<double> real = real_number(sheet, head.id, field))
        cell.below = say(sheet.language, Word::paper_instead, {number_text(sheet, field, *real)});
    return cell;
}

PaperCell verdict_cell(const PaperJob& sheet, const Head& head) {
    PaperCell cell;
    const HeadAssessment& assessed = sheet.assessed(head);
    cell.words = sheet.word(verdict_word(assessed));
    cell.bold = true;
    cell.verdict = verdict_role(assessed);
    return cell;
}

PaperTable first_table(const PaperJob& sheet) {
    std::vector<PaperColumn> columns;
    add_head_columns(sheet, columns);
    for (const NumberColumn& column : squeegee_columns) columns.push_back(column_of(sheet, column));
    const PaperColumn edge{std::string(sheet.word(Word::section_squeegee)),
                           std::string(sheet.word(Word::paper_edge)), {}, false};
    columns.push_back(edge);
    columns.push_back({{}, std::string(sheet.word(Word::column_verdict)), {}, false});
    PaperTable table(std::move(columns));
    for (const Head& head : sheet.job.heads) {
        std::vector<PaperCell> cells;
        add_head_cells(head, cells);
        for (const NumberColumn& column : squeegee_columns)
            cells.push_back(number_cell(sheet, head, column.field));
        const bool noted = head.squeegee.edge != BladeEdge::not_noted;
        cells.push_back({noted ? std::string(sheet.word(edge_word(head.squeegee.edge))) : "–",
                         {},
                         false,
                         {},
                         {}});
        cells.push_back(verdict_cell(sheet, head));
        table.row(std::move(cells));
    }
    return table;
}

PaperTable second_table(const PaperJob& sheet) {
    std::vector<PaperColumn> columns;
    add_head_columns(sheet, columns);
    for (const NumberColumn& column : other_columns) columns.push_back(column_of(sheet, column));
    PaperTable table(std::move(columns));
    for (const Head& head : sheet.job.heads) {
        std::vector<PaperCell> cells;
        add_head_cells(head, cells);
        for (const NumberColumn& column : other_columns)
            cells.push_back(number_cell(sheet, head, column.field));
        table.row(std::move(cells));
    }
    return table;
}

bool anything_real(const PaperJob& sheet) {
    const std::vector<WalkMark>& walk = sheet.job.walk;
    return std::any_of(walk.begin(), walk.end(), [&](const WalkMark& mark) {
        return mark.head != 0 && real_number(sheet, mark.head, mark.field);
    });
}

} // namespace

void heads_part(const PaperJob& sheet, PaperPages& pages) {
    constexpr TypeStyle small{TypeSize::small, false};
    if (sheet.job.heads.empty()) return;
    if (anything_real(sheet))
        pages.flow(pages.area().x0, pages.area().width(), sheet.word(Word::paper_arrow_note),
                   small);
    const PaperTable first = first_table(sheet), second = second_table(sheet);
    const float letters = std::min(first.letters(pages), second.letters(pages));
    first.draw(pages, letters);
    pages.y += 14.0f;
    second.draw(pages, letters);
    pages.y += 6.0f;
}

} // namespace carriageway
