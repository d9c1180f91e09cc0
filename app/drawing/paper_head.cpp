// A head's own page: its drawing to scale, all its numbers in large figures with room for what was
// really set, its screen and ink, and what is to be fixed.
#include <algorithm>
#include <cmath>

#include "app/drawing/diagram.h"
#include "app/drawing/paper_parts.h"
#include "app/text/paper_sentences.h"
#include "app/text/recipe_sentences.h"
#include "app/text/sentences.h"
#include "core/walk.h"

namespace carriageway {

namespace {

constexpr float gap = 24.0f;

/// Its station in large figures, its ink and colour, its verdict; then a rule.
void head_title_row(const PaperJob& sheet, const Head& head, PaperPages& pages) {
    const Box& area = pages.area();
    const HeadAssessment& assessed = sheet.assessed(head);
    const std::string_view verdict = sheet.word(verdict_word(assessed));
    const float verdict_width = pages.type().width(title_text, verdict) + 30.0f;
    float left = area.x0, height = 0.0f;
    {
        const PaperScale large(pages.type(), 1.7f);
        const TypeStyle number{TypeSize::large, true};
        const std::string station = std::to_string(head.station);
        height = pages.paragraph({left, pages.y}, 200.0f, station, number);
        left += pages.type().width(number, station) + 16.0f;
    }
    const float middle = pages.y + 0.5f * height;
    draw_swatch(pages.list(), {left + 14.0f, middle}, 28.0f, head.ink);
    left += 40.0f;
    const float room = area.x1 - verdict_width - gap - left;
    const float name = pages.height(head.colour, title_text, room);
    const float top = std::max(pages.y, middle - 0.5f * name);
    pages.paragraph({left, top}, room, head.colour, title_text);
    const float line = pages.type().height(title_text);
    draw_paper_verdict(pages.list(), {area.x1 - verdict_width + 12.0f, middle}, 20.0f,
                       verdict_role(assessed));
    pages.paragraph({area.x1 - verdict_width + 30.0f, middle - 0.5f * line}, verdict_width, verdict,
                    title_text);
    pages.y = std::max(pages.y + height, top + name) + 2.0f;
    pages.rule(area.x0, area.x1, pages.y, 3.0f);
    pages.y += 12.0f;
}

struct Fact {
    std::string label, value;
};

Fact number_fact(const PaperJob& sheet, const Head& head, Field field) {
    return {field_title(sheet, field),
            value_text(sheet, field, planned_number(sheet, head.id, field))};
}

std::string sides_text(const PaperJob& sheet, double across, double along) {
    return say(sheet.language, Word::paper_sides,
               {plain_length(across, sheet.units), format_length(along, sheet.units)});
}

std::string place_text(const PaperJob& sheet, const Image& image) {
    const std::string x = format_length(image.offset_x, sheet.units),
                      y = format_length(image.offset_y, sheet.units);
    if (image.rotation == 0.0) return say(sheet.language, Word::paper_place, {x, y});
    return say(sheet.language, Word::paper_place_turned, {x, y, format_angle(image.rotation)});
}

std::string edge_text(const PaperJob& sheet, const Head& head) {
    const BladeEdge edge = head.squeegee.edge;
    return std::string(
        sheet.word(edge == BladeEdge::not_noted ? Word::recipe_not_noted : edge_word(edge)));
}

std::vector<Fact> facts_of(const PaperJob& sheet, const Head& head) {
    const auto word = [&](Word key) { return capitalised(sheet.word(key)); };
    const auto note = [&](const std::string& text) {
        return text.empty() ? std::string(sheet.word(Word::recipe_not_noted)) : text;
    };
    const HeadAssessment& assessed = sheet.assessed(head);
    const Rect& bounds = assessed.image_bounds;
    return {
        {word(Word::paper_frame), sides_text(sheet, head.screen.across, head.screen.along)},
        {word(Word::image), sides_text(sheet, bounds.width(), bounds.length())},
        {word(Word::paper_image_at), place_text(sheet, head.image)},
        {word(Word::travel),
         assessed.both_on ? "–" : format_length(assessed.ends.travel(), sheet.units)},
        {word(Word::paper_prints), std::string(sheet.word(direction_word(head.print_stroke)))},
        number_fact(sheet, head, Field::mesh_count),
        number_fact(sheet, head, Field::thread_diameter),
        number_fact(sheet, head, Field::tension_along),
        number_fact(sheet, head, Field::tension_across),
        number_fact(sheet, head, Field::squeegee_hardness),
        {word(Word::item_blade_edge), edge_text(sheet, head)},
        {word(Word::flood_bar),
         std::string(sheet.word(head.flood.winged ? Word::with_wings : Word::without_wings))},
        number_fact(sheet, head, Field::stencil),
        {word(Word::item_stencil_note), note(head.notes.stencil)},
        {word(Word::item_ink_note), note(head.notes.ink)},
    };
}

/// Labels at the left, values beside them.
void draw_facts(const PaperJob& sheet, const Head& head, float width, PaperPages& pages) {
    const float label = 0.42f * width, value = width - label - 10.0f;
    const float left = pages.area().x0;
    for (const Fact& fact : facts_of(sheet, head)) {
        const float height = std::max(pages.height(fact.label, small_text, label),
                                      pages.height(fact.value, small_bold_text, value));
        pages.need(height + 4.0f);
        pages.paragraph({left, pages.y}, label, fact.label, small_text, Role::soft_ink);
        pages.paragraph({left + label + 10.0f, pages.y}, value, fact.value, small_bold_text);
        pages.y += height + 4.0f;
    }
}

/// What the hatching means, and the scale.
void draw_legend_and_scale(const PaperJob& sheet, double times, float width, PaperPages& pages) {
    DiagramInput input;
    input.language = sheet.language;
    input.projection.view = {pages.area().x0 - 12.0f, pages.y, pages.area().x0 + width, pages.y};
    const float height = legend_box(input.projection.view, pages.type(), sheet.language).height();
    input.projection.view.y1 = pages.y + height + 8.0f;
    DrawingList drawing;
    drawing.begin(pages.list().window(), pages.type());
    draw_legend(input, drawing);
    put_on_paper(drawing, pages);
    const float used = legend_box(input.projection.view, pages.type(), sheet.language).x1 -
                       pages.area().x0 + 12.0f;
    const std::string scale = say(sheet.language, Word::paper_scale, {format_number(times, 0)});
    float top = pages.y + 4.0f;
    for (const std::string_view words :
         {std::string_view(scale), sheet.word(Word::paper_as_planned)})
        top += pages.paragraph({pages.area().x0 + used, top}, width - used, words, small_text,
                               Role::ink, PaperSide::right);
    pages.y = std::max(pages.y + height, top) + 10.0f;
}

void draw_numbers(const PaperJob& sheet, const Head& head, float left, float width,
                  PaperPages& pages) {
    draw_number_headings(sheet, {left, pages.y}, width, pages);
    pages.y += number_headings_height(sheet, width, pages);
    for (const Field field : walk_fields(sheet.job, head.id)) {
        const float height = number_row_height(sheet, head.id, field, width, pages);
        pages.need(height);
        draw_number_row(sheet, head.id, field, {left, pages.y, left + width, pages.y + height},
                        pages);
        pages.y += height;
    }
}

void draw_finding(const PaperJob& sheet, const Head& head, const Finding& finding,
                  PaperPages& pages) {
    constexpr float sign = 24.0f;
    const FindingText text =
        finding_text(sheet.language, sheet.units, sheet.job, sheet.assessed(head), finding);
    const float left = pages.area().x0 + sign, width = pages.area().width() - sign;
    const float line = pages.type().height(bold_text);
    const std::string title_words = capitalised(text.severity) + ": " + text.title;
    pages.need(line + 2.0f * pages.type().height(small_text));
    const Role role = finding.severity == Severity::stop   ? Role::stop
                      : finding.severity == Severity::mind ? Role::mind
                                                           : Role::fit;
    draw_paper_verdict(pages.list(), {pages.area().x0 + 8.0f, pages.y + 0.5f * line}, 15.0f, role);
    pages.flow(left, width, title_words, bold_text, Role::ink, 1.0f);
    pages.flow(left, width, text.why, small_text, Role::ink, 1.0f);
    if (!text.remedy.main.empty()) {
        std::string remedy = say(sheet.language, Word::paper_instead, {text.remedy.main});
        if (!text.remedy.detail.empty()) remedy += " (" + text.remedy.detail + ")";
        pages.flow(left, width, remedy, small_bold_text, Role::ink, 1.0f);
    }
    pages.y += 7.0f;
}

/// Lines to write on, where the page has room for some.
void draw_note_lines(const PaperJob& sheet, PaperPages& pages) {
    constexpr float line = 44.0f, most = 6.0f;
    const float heading = 3.0f * pages.type().height(bold_text);
    const float count = std::min(most, std::floor((pages.room() - heading) / line));
    if (count < 2.0f) return;
    pages.heading(sheet.word(Word::paper_notes), count * line);
    for (float i = 0.0f; i < count; i += 1.0f) {
        pages.y += line;
        pages.rule(pages.area().x0, pages.area().x1, pages.y, 0.5f);
    }
}

} // namespace

void findings_part(const PaperJob& sheet, const Head& head, PaperPages& pages) {
    for (const Finding& finding : sheet.assessed(head).findings)
        draw_finding(sheet, head, finding, pages);
}

void head_page(const PaperJob& sheet, const Head& head, PaperPages& pages) {
    pages.again = {};
    pages.new_page();
    pages.again = [&] {
        const std::string words = say(sheet.language, Word::paper_continued, {short_title(head)});
        pages.y +=
            pages.paragraph({pages.area().x0, pages.y}, pages.area().width(), words, bold_text) +
            8.0f;
    };
    head_title_row(sheet, head, pages);
    const float top = pages.y;
    const std::size_t first = pages.count();
    const float left = 0.55f * pages.area().width(), right = pages.area().width() - left - gap;
    const Box box{pages.area().x0, top, pages.area().x0 + left, top + 0.55f * pages.room()};
    const HeadDrawing drawn = head_drawing(sheet, head, box, pages);
    pages.y = drawn.bottom + 8.0f;
    draw_legend_and_scale(sheet, drawn.times, left, pages);
    draw_facts(sheet, head, left, pages);
    const float bottom = pages.y;
    const bool same = pages.count() == first;
    if (same) pages.y = top;
    draw_numbers(sheet, head, pages.area().x0 + left + gap, right, pages);
    if (same && pages.count() == first) pages.y = std::max(pages.y, bottom);
    const std::vector<Finding>& findings = sheet.assessed(head).findings;
    const float line = pages.type().height(bold_text);
    pages.heading(sheet.word(findings.empty() ? Word::nothing_to_fix : Word::what_to_fix),
                  findings.empty() ? 0.0f : 3.0f * line);
    findings_part(sheet, head, pages);
    draw_note_lines(sheet, pages);
    pages.again = {};
}

} // namespace carriageway
