// The top of a sheet's first page: what the job is, the press from above, and the link's code.
#include <algorithm>

#include "app/drawing/paper_parts.h"
#include "app/text/rate_sentences.h"
#include "app/text/sentences.h"

namespace carriageway {

namespace {

constexpr float gap = 24.0f; ///< between columns

struct Fact {
    Word label;
    std::string value; ///< empty: a line to write it on
};

std::string platen_text(const PaperJob& sheet) {
    return say(sheet.language, Word::paper_sides,
               {plain_length(sheet.job.platen.width, sheet.units),
                format_length(sheet.job.platen.length, sheet.units)});
}

std::string garment_text(const PaperJob& sheet) {
    if (!sheet.job.garment.name.empty()) return sheet.job.garment.name;
    return std::string(sheet.word(sheet.job.garment.kind == GarmentKind::fleece
                                      ? Word::garment_fleece
                                      : Word::garment_t_shirt));
}

std::vector<Fact> facts_of(const PaperJob& sheet) {
    const JobPace& pace = sheet.pace;
    const Assessment& assessment = *sheet.request.assessment;
    const bool heads = !sheet.job.heads.empty();
    return {
        {Word::column_press, sheet.job.press.name},
        {Word::garment, garment_text(sheet)},
        {Word::platen, platen_text(sheet)},
        {Word::paper_date, sheet.request.date},
        {Word::field_pieces, format_number(sheet.job.run.pieces, 0)},
        {Word::place_rate, pace.runs() ? rate_text(sheet.language, pace.rate)
                                       : std::string(sheet.word(Word::rate_none))},
        {Word::paper_duration,
         pace.runs() && pace.run ? duration_text(pace.run->with_filling) : "–"},
        {Word::column_verdict,
         heads ? say(sheet.language, Word::heads_fit,
                     {std::to_string(assessment.fit_heads), std::to_string(sheet.job.heads.size())})
               : std::string(sheet.word(Word::no_heads))},
    };
}

float draw_fact(const PaperJob& sheet, const Fact& fact, Vec at, float width, PaperPages& pages) {
    const std::string label = capitalised(sheet.word(fact.label));
    float height = pages.paragraph(at, width, label, small_text, Role::soft_ink);
    if (!fact.value.empty())
        return height + pages.paragraph({at.x, at.y + height}, width, fact.value, bold_text);
    height += pages.type().height(bold_text);
    pages.rule(at.x, at.x + width, at.y + height, 0.8f);
    return height;
}

void draw_facts(const PaperJob& sheet, PaperPages& pages) {
    constexpr std::size_t columns = 4;
    const float width = (pages.area().width() - gap * (columns - 1)) / columns;
    const std::vector<Fact> facts = facts_of(sheet);
    for (std::size_t i = 0; i < facts.size(); i += columns) {
        float height = 0.0f;
        for (std::size_t j = i; j < std::min(i + columns, facts.size()); ++j) {
            const float x = pages.area().x0 + static_cast<float>(j - i) * (width + gap);
            height = std::max(height, draw_fact(sheet, facts[j], {x, pages.y}, width, pages));
        }
        pages.y += height + 8.0f;
    }
}

/// The address that a link begins with, which is all of it that a person would type.
std::string_view address_of(std::string_view link) { return link.substr(0, link.find('#')); }

/// Side of the code: half a millimetre a module where there is room, so that a phone reads it.
float code_side(const QrCode& code, float room) {
    constexpr float module = 2.6f, least = 200.0f;
    const float wanted = module * static_cast<float>(code.side + 2 * quiet_modules);
    return std::min(std::max(wanted, least), room);
}

/// The code with what to do with it, from `at` down; returns its height.
float draw_code(const PaperJob& sheet, Vec at, float width, PaperPages& pages) {
    float height = 0.0f;
    const PaperRequest& request = sheet.request;
    if (request.code) {
        const float left = at.x + 0.5f * (width - code_side(*request.code, width));
        const float side = code_side(*request.code, width);
        code_drawing(*request.code, {left, at.y, left + side, at.y + side}, pages);
        height += side + 2.0f;
    }
    const Word hint = request.code        ? Word::paper_code_hint
                      : request.too_large ? Word::paper_no_link
                                          : Word::paper_no_code;
    height += pages.paragraph({at.x, at.y + height}, width, sheet.word(hint), small_text, Role::ink,
                              PaperSide::middle);
    return height + pages.paragraph({at.x, at.y + height}, width, address_of(request.link),
                                    small_text, Role::soft_ink, PaperSide::middle);
}

/// The press at the left, the code at the right; without a code the press has the width.
void draw_press_and_code(const PaperJob& sheet, PaperPages& pages) {
    const Box& area = pages.area();
    const bool beside = !sheet.request.link.empty() || sheet.request.too_large;
    const float half = 0.5f * (area.width() - gap);
    const float right = !beside              ? 0.0f
                        : sheet.request.code ? code_side(*sheet.request.code, half)
                                             : 0.3f * area.width();
    const float width = area.width() - (beside ? right + gap : 0.0f);
    const float height = std::clamp(width, 420.0f, 490.0f);
    press_drawing(sheet, {area.x0, pages.y, area.x0 + width, pages.y + height}, pages);
    float bottom = height;
    if (beside)
        bottom = std::max(bottom,
                          draw_code(sheet, {area.x1 - right, pages.y + 6.0f}, right, pages) + 6.0f);
    pages.y += bottom + 4.0f;
}

} // namespace

void front_part(const PaperJob& sheet, PaperPages& pages) {
    const Box& area = pages.area();
    pages.y += pages.paragraph({area.x0, pages.y}, area.width(), sheet.job.name, large_text) + 4.0f;
    pages.rule(area.x0, area.x1, pages.y, 3.0f);
    pages.y += 10.0f;
    draw_facts(sheet, pages);
    draw_press_and_code(sheet, pages);
}

} // namespace carriageway
