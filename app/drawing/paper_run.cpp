// What surrounds the heads on a sheet: stations, the flash unit and the cycle, gaps of the recipe,
// the list before the run, cautions.
#include <algorithm>

#include "app/drawing/paper_parts.h"
#include "app/text/list_sentences.h"
#include "core/walk.h"

namespace carriageway {

namespace {

constexpr float gap = 24.0f;

/// Cells side by side, row by row from the left, each row as high as its highest cell. `height_of`
/// and `draw` take a cell's place; the latter its top left as well.
template <class Height, class Draw>
void in_columns(PaperPages& pages, std::size_t cells, std::size_t columns, const Height& height_of,
                const Draw& draw) {
    const float width = (pages.area().width() - gap * static_cast<float>(columns - 1)) /
                        static_cast<float>(columns);
    for (std::size_t i = 0; i < cells; i += columns) {
        const std::size_t end = std::min(i + columns, cells);
        float height = 0.0f;
        for (std::size_t j = i; j < end; ++j) height = std::max(height, height_of(j, width));
        pages.need(height);
        for (std::size_t j = i; j < end; ++j) {
            const float x = pages.area().x0 + static_cast<float>(j - i) * (width + gap);
            draw(j, Box{x, pages.y, x + width, pages.y + height});
        }
        pages.y += height;
    }
}

void stations_section(const PaperJob& sheet, PaperPages& pages) {
    std::vector<std::string> texts;
    for (int station = 1; station <= sheet.job.press.stations; ++station)
        if (!head_on(sheet.job, station))
            texts.push_back(std::to_string(station) + "  " + station_words(sheet, station));
    if (texts.empty()) return;
    pages.heading(sheet.word(Word::paper_stations), pages.type().height(small_text));
    in_columns(
        pages, texts.size(), 4,
        [&](std::size_t i, float width) {
            return pages.height(texts[i], small_text, width) + 3.0f;
        },
        [&](std::size_t i, Box box) {
            pages.paragraph({box.x0, box.y0}, box.width(), texts[i], small_text);
        });
}

/// The numbers that are set once for the press.
void numbers_section(const PaperJob& sheet, PaperPages& pages) {
    const std::vector<Field> fields = walk_fields(sheet.job, 0);
    const bool flash = fields.size() > 1;
    const float width = 0.5f * (pages.area().width() - gap);
    const float headings = number_headings_height(sheet, width, pages);
    pages.heading(sheet.word(flash ? Word::walk_job : Word::walk_job_cycle),
                  headings + number_row_height(sheet, 0, fields.front(), width, pages));
    const std::size_t columns = std::min<std::size_t>(2, fields.size());
    for (std::size_t i = 0; i < columns; ++i)
        draw_number_headings(sheet,
                             {pages.area().x0 + static_cast<float>(i) * (width + gap), pages.y},
                             width, pages);
    pages.y += headings;
    in_columns(
        pages, fields.size(), 2,
        [&](std::size_t i, float each) {
            return number_row_height(sheet, 0, fields[i], each, pages);
        },
        [&](std::size_t i, Box box) { draw_number_row(sheet, 0, fields[i], box, pages); });
}

void gaps_section(const PaperJob& sheet, PaperPages& pages) {
    const std::vector<std::string> lines = gap_lines(sheet);
    if (lines.empty()) return;
    // A few lines stay together.
    float height = 0.0f;
    for (const std::string& line : lines)
        height += pages.height(line, small_text, pages.area().width()) + 2.0f;
    pages.heading(sheet.word(Word::paper_gaps), std::min(height, 200.0f));
    for (const std::string& line : lines)
        pages.flow(pages.area().x0, pages.area().width(), line, small_text, Role::ink, 2.0f);
}

/// A step to tick, with the few words that stand for its caution.
struct Step {
    std::string text;
    std::string_view sign; ///< empty: none
    bool done = false;
};

std::vector<Step> steps_of(const PaperJob& sheet, CheckList list) {
    std::vector<Step> steps;
    const std::vector<CheckTick>& ticks = sheet.job.record.ticks;
    for (const CheckItem& item : checks_of(sheet.job.press)) {
        if (item.list != list) continue;
        const bool done = std::any_of(ticks.begin(), ticks.end(),
                                      [&](const CheckTick& tick) { return tick.item == item.id; });
        steps.push_back(
            {step_text(sheet.language, item), sheet.word(sign_word(caution_of(item))), done});
    }
    return steps;
}

constexpr float tick_side = 20.0f, beside_tick = 30.0f;

float step_height(const Step& step, float width, const PaperPages& pages) {
    constexpr float air = 6.0f;
    const float room = width - beside_tick;
    const float text =
        pages.height(step.text, body_text, room) + pages.height(step.sign, small_text, room);
    return std::max(text, tick_side) + air;
}

void draw_step(const Step& step, Box box, PaperPages& pages) {
    const Box tick{box.x0, box.y0, box.x0 + tick_side, box.y0 + tick_side};
    draw_tick_box(pages.list(), tick, step.done);
    const float left = box.x0 + beside_tick, width = box.width() - beside_tick;
    const float text = pages.paragraph({left, box.y0}, width, step.text, body_text);
    pages.paragraph({left, box.y0 + text}, width, step.sign, small_text, Role::soft_ink);
}

float half_width(const PaperPages& pages) { return 0.5f * (pages.area().width() - gap); }

void list_section(const PaperJob& sheet, CheckList which, PaperPages& pages) {
    const std::vector<Step> steps = steps_of(sheet, which);
    if (steps.empty()) return;
    pages.heading(sheet.word(list_word(which)),
                  step_height(steps.front(), half_width(pages), pages));
    in_columns(
        pages, steps.size(), 2,
        [&](std::size_t i, float width) { return step_height(steps[i], width, pages); },
        [&](std::size_t i, Box box) { draw_step(steps[i], box, pages); });
}

/// What a list takes, its heading included; no less.
float list_room(const PaperJob& sheet, CheckList which, const PaperPages& pages) {
    float height = 3.0f * pages.type().height(body_text);
    const std::vector<Step> steps = steps_of(sheet, which);
    for (std::size_t i = 0; i < steps.size(); i += 2) {
        float row = 0.0f;
        for (std::size_t j = i; j < std::min(i + 2, steps.size()); ++j)
            row = std::max(row, step_height(steps[j], half_width(pages), pages));
        height += row;
    }
    return height;
}

/// Who approved the first piece and against what; lines to write on where nobody has.
void approval_section(const PaperJob& sheet, PaperPages& pages) {
    const Approval& approval = sheet.job.record.approval;
    const std::pair<Word, const std::string&> rows[] = {{Word::approval_by, approval.by},
                                                        {Word::approval_against, approval.against}};
    const auto height_of = [&](std::size_t i, float width) {
        const float value = pages.height(rows[i].second, body_text, width);
        return pages.type().height(small_text) +
               std::max(value, 1.2f * pages.type().height(body_text)) + 4.0f;
    };
    in_columns(pages, 2, 2, height_of, [&](std::size_t i, Box box) {
        const float label = pages.paragraph({box.x0, box.y0}, box.width(),
                                            sheet.word(rows[i].first), small_text, Role::soft_ink);
        pages.paragraph({box.x0, box.y0 + label}, box.width(), rows[i].second, body_text);
        pages.rule(box.x0, box.x1, box.y1 - 2.0f, 0.8f);
    });
}

/// The later lists, as far as this page has room: none of them takes a page of its own.
void later_lists(const PaperJob& sheet, PaperPages& pages) {
    const float approval = 4.0f * pages.type().height(body_text);
    for (const CheckList list : {CheckList::first_piece, CheckList::before_night,
                                 CheckList::before_unloading, CheckList::tear_down}) {
        const bool first = list == CheckList::first_piece;
        if (list_room(sheet, list, pages) + (first ? approval : 0.0f) > pages.room()) continue;
        list_section(sheet, list, pages);
        if (first) approval_section(sheet, pages);
    }
}

void cautions_section(const PaperJob& sheet, PaperPages& pages) {
    constexpr float sign = 20.0f;
    std::vector<Word> words{Word::caution_index_path, Word::caution_isolated};
    if (std::find(sheet.job.uses.begin(), sheet.job.uses.end(), StationUse::flash) !=
        sheet.job.uses.end())
        words.push_back(Word::caution_hot);
    words.push_back(Word::caution_solvents);
    const float line = pages.type().height(small_text);
    const float width = pages.area().width() - sign;
    float height = 0.0f;
    for (const Word word : words)
        height += pages.height(sheet.word(word), small_text, width) + 3.0f;
    pages.heading(sheet.word(Word::paper_cautions), height);
    for (const Word word : words) {
        pages.need(line);
        draw_paper_verdict(pages.list(), {pages.area().x0 + 6.0f, pages.y + 0.5f * line}, 11.0f,
                           Role::mind);
        pages.flow(pages.area().x0 + sign, width, sheet.word(word), small_text, Role::ink, 3.0f);
    }
}

} // namespace

void run_part(const PaperJob& sheet, PaperPages& pages) {
    stations_section(sheet, pages);
    gaps_section(sheet, pages);
    numbers_section(sheet, pages);
    list_section(sheet, CheckList::before_run, pages);
    cautions_section(sheet, pages);
    later_lists(sheet, pages);
}

} // namespace carriageway
