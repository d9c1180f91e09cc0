// Rows of numbers on paper: what is planned in large figures, a box to write down what was really
// set, and one to tick.
#include <algorithm>

#include "app/drawing/paper_parts.h"
#include "core/walk.h"

namespace carriageway {

namespace {

constexpr float gap = 10.0f;
constexpr float tick_side = 24.0f;
constexpr float least_row = 46.0f;   ///< 9 mm: room to write by hand
constexpr float least_entry = 32.0f;
constexpr float inset = 6.0f;        ///< words of an entry to its ring

/// Where a row's parts stand.
struct Columns {
    float label, planned, entry; ///< their widths
    explicit Columns(float width) {
        const float room = width - tick_side - 3.0f * gap;
        label = 0.36f * room;
        planned = 0.31f * room;
        entry = room - label - planned;
    }
};

/// The largest letters that a text fits a line in; the smallest where it fits in none.
TypeStyle fitting_style(const TypeMeasure& type, std::string_view words, float width) {
    for (const TypeSize size : {TypeSize::title, TypeSize::body})
        if (type.width({size, true}, words) <= width) return {size, true};
    return small_bold_text;
}

/// What is known of a number already: its real value, and who ticked it.
struct Known {
    std::string value, initials;
};

bool on_one_line(const Known& known, float width, const TypeMeasure& type) {
    return type.width(bold_text, known.value) + gap + type.width(small_text, known.initials) <=
           width;
}

/// With its unit where that fits a line.
Known known_of(const PaperJob& sheet, HeadId head, Field field, float width,
               const TypeMeasure& type) {
    Known known;
    const WalkMark* mark = mark_of(sheet.job, head, field);
    if (!mark) return known;
    if (mark->real || mark->done) known.initials = mark->stamp.initials;
    if (mark->real) known.value = value_text(sheet, field, *mark->real);
    if (mark->real && !on_one_line(known, width, type))
        known.value = number_text(sheet, field, *mark->real);
    return known;
}

} // namespace

float entry_height(const PaperJob& sheet, HeadId head, Field field, float width,
                   const PaperPages& pages) {
    const float inside = width - 2.0f * inset;
    const Known known = known_of(sheet, head, field, inside, pages.type());
    float text = pages.height(known.value, bold_text, inside);
    if (!on_one_line(known, inside, pages.type()))
        text += pages.height(known.initials, small_text, inside);
    return std::max(least_entry, text + 6.0f);
}

void draw_tick_box(DrawingList& list, Box box, bool done) {
    list.ring(box, 2.0f, paint(Role::ink), 1.4f);
    if (!done) return;
    const float w = box.width(), h = box.height();
    const Vec tick[] = {{box.x0 + 0.2f * w, box.y0 + 0.52f * h},
                        {box.x0 + 0.42f * w, box.y0 + 0.76f * h},
                        {box.x0 + 0.82f * w, box.y0 + 0.22f * h}};
    list.line(tick, 3, paint(Role::ink), 0.11f * w);
}

void draw_entry(const PaperJob& sheet, HeadId head, Field field, Box box, PaperPages& pages) {
    pages.list().ring(box, 2.0f, paint(Role::ink), 1.0f);
    const TypeMeasure& type = pages.type();
    const float inside = box.width() - 2.0f * inset;
    const Known known = known_of(sheet, head, field, inside, type);
    const float value = pages.height(known.value, bold_text, inside);
    if (on_one_line(known, inside, type)) {
        const Vec at{box.x0 + inset, box.centre().y};
        const float width = type.width(small_text, known.initials);
        pages.paragraph({at.x, at.y - 0.5f * value}, inside, known.value, bold_text);
        pages.paragraph({box.x1 - inset - width, at.y - 0.5f * type.height(small_text)},
                        width + 1.0f, known.initials, small_text);
        return;
    }
    const float all = value + pages.height(known.initials, small_text, inside);
    float top = box.centre().y - 0.5f * all;
    top += pages.paragraph({box.x0 + inset, top}, inside, known.value, bold_text);
    pages.paragraph({box.x0 + inset, top}, inside, known.initials, small_text);
}

float number_row_height(const PaperJob& sheet, HeadId head, Field field, float width,
                        const PaperPages& pages) {
    const Columns columns(width);
    const std::string planned = value_text(sheet, field, planned_number(sheet, head, field));
    const TypeStyle style = fitting_style(pages.type(), planned, columns.planned);
    return std::max({least_row,
                     pages.height(field_title(sheet, field), small_text, columns.label) + 6.0f,
                     pages.height(planned, style, columns.planned) + 6.0f,
                     entry_height(sheet, head, field, columns.entry, pages) + 8.0f});
}

void draw_number_row(const PaperJob& sheet, HeadId head, Field field, Box box, PaperPages& pages) {
    const Columns columns(box.width());
    const float middle = box.centre().y;
    const std::string title = field_title(sheet, field);
    const std::string planned = value_text(sheet, field, planned_number(sheet, head, field));
    const TypeStyle style = fitting_style(pages.type(), planned, columns.planned);
    float x = box.x0;
    pages.paragraph({x, middle - 0.5f * pages.height(title, small_text, columns.label)},
                    columns.label, title, small_text);
    x += columns.label + gap;
    pages.paragraph({x, middle - 0.5f * pages.height(planned, style, columns.planned)},
                    columns.planned, planned, style, Role::ink, PaperSide::right);
    x += columns.planned + gap;
    const float half = 0.5f * entry_height(sheet, head, field, columns.entry, pages);
    draw_entry(sheet, head, field, {x, middle - half, x + columns.entry, middle + half}, pages);
    draw_tick_box(pages.list(), around({box.x1 - 0.5f * tick_side, middle}, tick_side, tick_side),
                  is_done(sheet.job, head, field));
    pages.rule(box.x0, box.x1, box.y1, 0.5f);
}

float number_headings_height(const PaperJob& sheet, float width, const PaperPages& pages) {
    const Columns columns(width);
    return std::max(pages.height(sheet.word(Word::paper_planned), small_text, columns.planned),
                    pages.height(sheet.word(Word::paper_really), small_text, columns.entry)) +
           5.0f;
}

void draw_number_headings(const PaperJob& sheet, Vec at, float width, PaperPages& pages) {
    const Columns columns(width);
    const float bottom = at.y + number_headings_height(sheet, width, pages) - 4.0f;
    const auto put = [&](Word key, float x, float room, PaperSide side) {
        const std::string_view words = sheet.word(key);
        pages.paragraph({x, bottom - pages.height(words, small_text, room)}, room, words,
                        small_text, Role::soft_ink, side);
    };
    float x = at.x + columns.label + gap;
    put(Word::paper_planned, x, columns.planned, PaperSide::right);
    x += columns.planned + gap;
    put(Word::paper_really, x, columns.entry, PaperSide::left);
    pages.rule(at.x, at.x + width, bottom + 4.0f, 1.0f);
}

} // namespace carriageway
