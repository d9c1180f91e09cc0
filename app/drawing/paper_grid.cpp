// All heads side by side, a number a row: what is planned and, below it, room for what was really
// set.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/drawing/paper_parts.h"
#include "app/text/paper_sentences.h"
#include "app/text/sentences.h"
#include "core/walk.h"

namespace carriageway {

namespace {

constexpr float label = 165.0f;        ///< width of the numbers' names
constexpr float gap = 12.0f;           ///< between columns
constexpr float least_column = 112.0f; ///< of a head
constexpr float tick_side = 22.0f;

/// The heads of one page, and where their columns stand.
struct Grid {
    std::vector<const Head*> heads;
    float column = 0.0f; ///< width
    float x(std::size_t i, const PaperPages& pages) const {
        return pages.area().x0 + label + gap + static_cast<float>(i) * (column + gap);
    }
    float entry() const { return column - tick_side - 6.0f; }
};

/// As many pages as are needed, with as many heads on each as on the next.
std::vector<Grid> grids_of(const PaperJob& sheet, const PaperPages& pages) {
    const float room = pages.area().width() - label;
    const auto most = static_cast<std::size_t>(std::max(1.0f, room / (least_column + gap)));
    const std::vector<Head>& heads = sheet.job.heads;
    const std::size_t count = (heads.size() + most - 1) / most;
    std::vector<Grid> grids(count);
    for (std::size_t i = 0; i < heads.size(); ++i)
        grids[i * count / heads.size()].heads.push_back(&heads[i]);
    std::size_t widest = 0;
    for (const Grid& grid : grids) widest = std::max(widest, grid.heads.size());
    // Columns of few heads are no wider than is good to read.
    const float column = std::min(170.0f, room / static_cast<float>(widest) - gap);
    for (Grid& grid : grids) grid.column = column;
    return grids;
}

float title_height(const PaperJob& sheet, const Head& head, float width, const PaperPages& pages) {
    const float verdict = pages.height(sheet.word(verdict_word(sheet.assessed(head))),
                                       small_bold_text, width - 18.0f);
    return pages.type().height(title_text) + pages.height(head.colour, small_bold_text, width) +
           verdict + 8.0f;
}

void draw_title(const PaperJob& sheet, const Head& head, Vec at, float width, PaperPages& pages) {
    const std::string station = std::to_string(head.station);
    const float line = pages.type().height(title_text),
                small_line = pages.type().height(small_bold_text);
    pages.paragraph(at, width, station, title_text);
    draw_swatch(pages.list(),
                {at.x + pages.type().width(title_text, station) + 20.0f, at.y + 0.5f * line}, 20.0f,
                head.ink);
    float top = at.y + line;
    top += pages.paragraph({at.x, top}, width, head.colour, small_bold_text);
    const HeadAssessment& assessed = sheet.assessed(head);
    draw_paper_verdict(pages.list(), {at.x + 6.0f, top + 0.5f * small_line}, 11.0f,
                       verdict_role(assessed));
    pages.paragraph({at.x + 18.0f, top}, width - 18.0f, sheet.word(verdict_word(assessed)),
                    small_bold_text);
}

void draw_titles(const PaperJob& sheet, const Grid& grid, PaperPages& pages) {
    float height = 0.0f;
    for (const Head* head : grid.heads)
        height = std::max(height, title_height(sheet, *head, grid.column, pages));
    pages.need(height);
    for (std::size_t i = 0; i < grid.heads.size(); ++i)
        draw_title(sheet, *grid.heads[i], {grid.x(i, pages), pages.y}, grid.column, pages);
    pages.y += height;
    pages.rule(pages.area().x0, pages.area().x1, pages.y - 3.0f, 1.5f);
}

float row_height(const PaperJob& sheet, const Grid& grid, Field field, const PaperPages& pages) {
    float height = pages.height(field_title(sheet, field), small_text, label);
    for (const Head* head : grid.heads) {
        const std::string planned =
            value_text(sheet, field, planned_number(sheet, head->id, field));
        height =
            std::max(height, pages.height(planned, bold_text, grid.column) +
                                 entry_height(sheet, head->id, field, grid.entry(), pages) + 2.0f);
    }
    return height + 10.0f;
}

void draw_row(const PaperJob& sheet, const Grid& grid, Field field, PaperPages& pages) {
    const float height = row_height(sheet, grid, field, pages);
    const float top = pages.y + 4.0f;
    pages.paragraph({pages.area().x0, top}, label, field_title(sheet, field), small_text);
    for (std::size_t i = 0; i < grid.heads.size(); ++i) {
        const HeadId id = grid.heads[i]->id;
        const float x = grid.x(i, pages);
        const std::string planned = value_text(sheet, field, planned_number(sheet, id, field));
        const float entry = top + pages.paragraph({x, top}, grid.column, planned, bold_text) + 2.0f;
        const Box box{x, entry, x + grid.entry(),
                      entry + entry_height(sheet, id, field, grid.entry(), pages)};
        draw_entry(sheet, id, field, box, pages);
        const float right = x + grid.column;
        draw_tick_box(pages.list(),
                      around({right - 0.5f * tick_side, box.centre().y}, tick_side, tick_side),
                      is_done(sheet.job, id, field));
    }
    pages.y += height;
    pages.rule(pages.area().x0, pages.area().x1, pages.y, 0.5f);
}

void grid_page(const PaperJob& sheet, const Grid& grid, PaperPages& pages) {
    pages.again = {};
    pages.new_page();
    pages.flow(pages.area().x0, pages.area().width(), sheet.word(Word::paper_planned_below),
               small_text, Role::soft_ink, 8.0f);
    draw_titles(sheet, grid, pages);
    pages.again = [&] { draw_titles(sheet, grid, pages); };
    for (const Field field : walk_fields(sheet.job, grid.heads.front()->id)) {
        pages.need(row_height(sheet, grid, field, pages));
        draw_row(sheet, grid, field, pages);
    }
    pages.again = {};
}

} // namespace

void grid_pages(const PaperJob& sheet, PaperPages& pages) {
    if (sheet.job.heads.empty()) return;
    for (const Grid& grid : grids_of(sheet, pages)) grid_page(sheet, grid, pages);
    for (const Head& head : sheet.job.heads) {
        if (sheet.assessed(head).findings.empty()) continue;
        const std::string words = say(sheet.language, Word::paper_findings_of, {short_title(head)});
        pages.heading(words, 4.0f * pages.type().height(body_text));
        findings_part(sheet, head, pages);
    }
}

} // namespace carriageway
