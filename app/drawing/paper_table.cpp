#include "app/drawing/paper_table.h"

#include <algorithm>
#include <numeric>

namespace carriageway {

namespace {

constexpr float gap = 10.0f;      ///< between columns
constexpr float pad = 4.0f;       ///< above and below a row's words
constexpr float longest = 150.0f; ///< a single word that is wider is broken
constexpr float one_line = 115.0f; ///< words up to this stay on one line where there is room
constexpr float most_text = 230.0f;
constexpr float sizes[] = {1.2f, 1.1f, 1.0f, 0.94f, 0.88f, 0.82f};
constexpr float least_good = 0.94f; ///< smaller letters only where words would have to be broken

TypeStyle style_of(const PaperCell& cell) { return cell.bold ? small_bold_text : small_text; }

/// Room for a sign before a cell's words.
float sign_room(const PaperCell& cell, const TypeMeasure& type) {
    return cell.swatch || cell.verdict ? 1.2f * type.height(small_text) : 0.0f;
}

/// Width of a cell's widest word; or, `whole`, of its words on a line, of long ones on three lines.
float cell_width(const PaperCell& cell, bool whole, const TypeMeasure& type) {
    const auto width = [&](TypeStyle style, const std::string& words) {
        const float least = std::min(longest, widest_word(type, style, words));
        const float line = type.width(style, words);
        const float few_lines = std::min(line, std::clamp(line / 3.0f, one_line, most_text));
        return whole ? std::max(least, few_lines) : least;
    };
    return sign_room(cell, type) +
           std::max(width(style_of(cell), cell.words), width(small_bold_text, cell.below));
}

float cell_height(const PaperCell& cell, float width, const PaperPages& pages) {
    const float inside = width - sign_room(cell, pages.type());
    return pages.height(cell.words, style_of(cell), inside) +
           pages.height(cell.below, small_bold_text, inside);
}

void draw_cell(const PaperCell& cell, bool number, Vec at, float width, PaperPages& pages) {
    const float sign = sign_room(cell, pages.type());
    const float line = pages.type().height(small_text);
    const Vec centre{at.x + 0.45f * line, at.y + 0.5f * line};
    if (cell.swatch) draw_swatch(pages.list(), centre, 0.75f * line, *cell.swatch);
    if (cell.verdict) draw_paper_verdict(pages.list(), centre, 0.7f * line, *cell.verdict);
    const PaperSide side = number ? PaperSide::right : PaperSide::left;
    at.x += sign;
    at.y += pages.paragraph(at, width - sign, cell.words, style_of(cell), Role::ink, side);
    pages.paragraph(at, width - sign, cell.below, small_bold_text, Role::ink, side);
}

} // namespace

float widest_word(const TypeMeasure& type, TypeStyle style, std::string_view words) {
    float widest = 0.0f;
    while (!words.empty()) {
        const std::size_t end = std::min(words.find(' '), words.size());
        widest = std::max(widest, type.width(style, words.substr(0, end)));
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return widest;
}

void draw_swatch(DrawingList& list, Vec centre, float size, std::uint32_t ink) {
    const Box box = around(centre, size, size);
    list.round(box, 0.2f * size, own_colour(ink));
    list.ring(box, 0.2f * size, paint(Role::ink), 1.2f);
}

void draw_paper_verdict(DrawingList& list, Vec c, float size, Role role) {
    const float h = 0.5f * size;
    const Paint ink = paint(Role::ink);
    if (role == Role::stop) {
        const Vec corners[] = {{c.x, c.y - h}, {c.x + 1.1f * h, c.y + 0.85f * h},
                               {c.x - 1.1f * h, c.y + 0.85f * h}};
        list.fill(corners, 3, ink);
    } else if (role == Role::mind) {
        const Vec corners[] = {{c.x, c.y - h}, {c.x + h, c.y}, {c.x, c.y + h}, {c.x - h, c.y}};
        list.fill(corners, 4, ink);
    } else {
        list.disc(c, 0.72f * h, ink);
    }
}

std::vector<float> PaperTable::widths(float room, bool whole, const PaperPages& pages) const {
    const TypeMeasure& type = pages.type();
    std::vector<float> widths;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        float width = std::max(widest_word(type, small_text, columns_[i].heading),
                               type.width(small_text, columns_[i].unit));
        for (const std::vector<PaperCell>& row : rows_)
            width = std::max(width, cell_width(row[i], whole, type));
        widths.push_back(std::min(width, room));
    }
    return widths;
}

PaperTable::Plan PaperTable::plan_of(PaperPages& pages, float most) const {
    const float gaps = gap * static_cast<float>(columns_.size() - 1);
    const float room = pages.area().width() - gaps;
    Plan plan;
    std::vector<float> wanted;
    for (const float times : sizes) {
        if (times > most) continue;
        const PaperScale scale(pages.type(), times);
        plan.times = times;
        plan.width = widths(room, false, pages);
        wanted = widths(room, true, pages);
        const std::vector<float>& fits = times >= least_good ? wanted : plan.width;
        if (std::reduce(fits.begin(), fits.end()) <= room) break;
    }
    const float least = std::reduce(plan.width.begin(), plan.width.end());
    const float all = std::reduce(wanted.begin(), wanted.end());
    const float even = std::max(0.0f, room - all) / static_cast<float>(columns_.size());
    const float share = all > least ? std::clamp((room - least) / (all - least), 0.0f, 1.0f) : 0.0f;
    float x = pages.area().x0;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        plan.width[i] += share * (wanted[i] - plan.width[i]) + even;
        if (least > room) plan.width[i] *= room / least;
        plan.x.push_back(x);
        x += plan.width[i] + gap;
    }
    return plan;
}

/// The first column behind those that stand under one group.
std::size_t PaperTable::group_end(std::size_t column) const {
    std::size_t end = column + 1;
    if (columns_[column].group.empty()) return end;
    while (end < columns_.size() && columns_[end].group == columns_[column].group) ++end;
    return end;
}

float PaperTable::groups_height(const Plan& plan, const PaperPages& pages) const {
    float height = 0.0f;
    for (std::size_t i = 0; i < columns_.size(); i = group_end(i)) {
        const std::size_t last = group_end(i) - 1;
        const float width = plan.x[last] + plan.width[last] - plan.x[i];
        height = std::max(height, pages.height(columns_[i].group, small_bold_text, width));
    }
    return height > 0.0f ? height + 5.0f : 0.0f;
}

void PaperTable::draw_groups(const Plan& plan, PaperPages& pages) const {
    const float bottom = pages.y + groups_height(plan, pages);
    for (std::size_t i = 0; i < columns_.size(); i = group_end(i)) {
        const std::string& words = columns_[i].group;
        if (words.empty()) continue;
        const std::size_t last = group_end(i) - 1;
        const float width = plan.x[last] + plan.width[last] - plan.x[i];
        const float text = pages.height(words, small_bold_text, width);
        pages.paragraph({plan.x[i], bottom - 4.0f - text}, width, words, small_bold_text, Role::ink,
                        PaperSide::middle);
        pages.rule(plan.x[i], plan.x[i] + width, bottom - 2.0f, 1.0f);
    }
    pages.y = bottom;
}

float PaperTable::headings_height(const Plan& plan, const PaperPages& pages) const {
    float height = 0.0f;
    for (std::size_t i = 0; i < columns_.size(); ++i)
        height = std::max(height, pages.height(columns_[i].heading, small_text, plan.width[i]) +
                                      pages.height(columns_[i].unit, small_text, plan.width[i]));
    return height + 6.0f;
}

void PaperTable::draw_headings(const Plan& plan, PaperPages& pages) const {
    draw_groups(plan, pages);
    const float height = headings_height(plan, pages);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        const PaperColumn& column = columns_[i];
        const PaperSide side = column.number ? PaperSide::right : PaperSide::left;
        const float width = plan.width[i];
        const float text = pages.height(column.heading, small_text, width) +
                           pages.height(column.unit, small_text, width);
        float top = pages.y + height - 5.0f - text;
        top +=
            pages.paragraph({plan.x[i], top}, width, column.heading, small_text, Role::ink, side);
        pages.paragraph({plan.x[i], top}, width, column.unit, small_text, Role::soft_ink, side);
    }
    pages.y += height;
    pages.rule(pages.area().x0, pages.area().x1, pages.y - 2.0f, 1.5f);
}

float PaperTable::row_height(const std::vector<PaperCell>& cells, const Plan& plan,
                             const PaperPages& pages) const {
    float height = pages.type().height(small_text);
    for (std::size_t i = 0; i < cells.size(); ++i)
        height = std::max(height, cell_height(cells[i], plan.width[i], pages));
    return height + 2.0f * pad;
}

void PaperTable::draw_row(const std::vector<PaperCell>& cells, const Plan& plan,
                          PaperPages& pages) const {
    for (std::size_t i = 0; i < cells.size(); ++i)
        draw_cell(cells[i], columns_[i].number, {plan.x[i], pages.y + pad}, plan.width[i], pages);
    pages.y += row_height(cells, plan, pages);
    pages.rule(pages.area().x0, pages.area().x1, pages.y, 0.5f);
}

void PaperTable::draw(PaperPages& pages, float most) const {
    if (columns_.empty() || rows_.empty()) return;
    const Plan plan = plan_of(pages, most);
    const PaperScale scale(pages.type(), plan.times);
    const float headings = groups_height(plan, pages) + headings_height(plan, pages);
    pages.need(headings + row_height(rows_.front(), plan, pages));
    draw_headings(plan, pages);
    for (const std::vector<PaperCell>& cells : rows_) {
        const std::size_t before = pages.count();
        pages.need(row_height(cells, plan, pages));
        if (pages.count() != before) draw_headings(plan, pages);
        draw_row(cells, plan, pages);
    }
}

} // namespace carriageway
