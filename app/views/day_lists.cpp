// The lists of the run: which one is shown, how far it is, and what stands around its steps.
#include "app/text/list_sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/list_view.h"
#include "core/list_edits.h"

namespace carriageway {

namespace {

constexpr int most_columns = 3;

/// In the order of a day: the five lists, with the run between the first piece and the night.
struct Shown {
    CheckList list;
    bool in_run;
};
constexpr Shown shown_rows[] = {
    {CheckList::before_run, false},   {CheckList::first_piece, false},
    {CheckList::first_piece, true},   {CheckList::before_night, false},
    {CheckList::before_unloading, false}, {CheckList::tear_down, false}};
constexpr std::size_t shown_count = std::size(shown_rows);

std::size_t chosen_row(const DayState& day) {
    for (std::size_t i = 0; i < shown_count; ++i)
        if (shown_rows[i].in_run == day.in_run && (day.in_run || shown_rows[i].list == day.list))
            return i;
    return 0;
}

Word word_of(const Shown& shown) {
    return shown.in_run ? Word::list_in_run : list_word(shown.list);
}

std::string progress_text(Language language, const ListProgress& progress) {
    return say(language, Word::list_progress,
               {std::to_string(progress.ticked), std::to_string(progress.steps)});
}

/// "3 of 12"; of the run, what was counted last.
std::string detail_of(const Model& model, const Shown& shown) {
    const Language language = model.state->looks.language;
    if (!shown.in_run) return progress_text(language, list_progress(*model.job, shown.list));
    const std::vector<PieceCount>& counts = model.job->record.counts;
    const double printed = counts.empty() ? 0.0 : counts.back().printed;
    return say(language, Word::tally_printed, {format_number(printed, 0)});
}

std::vector<Chip> list_chips(const Model& model, const Canvas& canvas) {
    std::vector<Chip> chips;
    const std::size_t chosen = chosen_row(model.state->day);
    for (std::size_t i = 0; i < shown_count; ++i) {
        const Shown& shown = shown_rows[i];
        chips.push_back({std::string("lists/") + (shown.in_run ? "in-run" : list_name(shown.list)),
                         std::string(canvas.word(word_of(shown))), detail_of(model, shown),
                         i == chosen, ShowList{shown.list, shown.in_run}});
    }
    return chips;
}

/// What is shown and how far it is, as a thing that is read aloud when it changes.
void say_progress(const Chip& here, Box box, Canvas& canvas) {
    canvas.reading("lists/progress", box, here.words, here.detail);
    canvas.list().things().back().live = true;
}

/// Where words are too large for a grid: the list's name between the way back and the way on.
void list_stepper(const std::vector<Chip>& chips, std::size_t chosen, Rows& rows) {
    constexpr float side = 48.0f, beside = 6.0f;
    Canvas& canvas = rows.canvas;
    const float width = rows.width - 2.0f * (side + beside);
    const Chip& here = chips[chosen];
    const float first = canvas.paragraph_height(width, here.words, bold_text);
    const float second = canvas.paragraph_height(width, here.detail, small_text);
    const Box row = rows.next(std::max(60.0f, first + second + 12.0f), 12.0f);
    const auto end = [&](const char* name, float x, Icon icon, Word words, std::size_t to) {
        canvas.icon_button(name, {x, row.y0, x + side, row.y1}, icon, canvas.word(words),
                           canvas.action(chips[to].action), true, ButtonLook::quiet);
    };
    end("lists/previous", row.x0, Icon::back, Word::list_previous,
        (chosen + shown_count - 1) % shown_count);
    const Vec centre = row.centre();
    const float top = centre.y - 0.5f * (first + second);
    canvas.centred_paragraph({centre.x, top + 0.5f * first}, width, here.words, bold_text,
                             Role::ink, rows.on);
    canvas.centred_paragraph({centre.x, top + first + 0.5f * second}, width, here.detail,
                             small_text, Role::soft_ink, rows.on);
    say_progress(here, around(centre, width, row.height()), canvas);
    end("lists/next", row.x1 - side, Icon::next, Word::list_next, (chosen + 1) % shown_count);
}

/// Below a grid: what the part that follows is. That of the run begins with its own numbers.
void list_title(const Chip& here, bool run, Rows& rows) {
    const float top = rows.y;
    rows.text(here.words, title_text, Role::ink, 2.0f);
    if (!run) rows.text(here.detail, {TypeSize::body, false}, Role::soft_ink, 0.0f);
    rows.space(10.0f);
    say_progress(here, {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, rows.canvas);
}

void one_list(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const DayState& day = model.state->day;
    if (model.state->habits.initials.empty() && !day.changing_list)
        text_row(model, "lists/initials", canvas.word(Word::initials), {},
                 canvas.word(Word::initials_hint), EditText{TextTarget::initials}, rows);
    if (!day.changing_list) list_cautions(model, rows);
    list_steps(model, rows);
    if (day.changing_list) list_change(model, rows);
    else if (day.list == CheckList::first_piece) first_piece_approval(model, rows);
    rows.space(8.0f);
    wide_button("lists/change",
                canvas.word(day.changing_list ? Word::list_change_done : Word::list_change),
                day.changing_list ? ButtonLook::strong : ButtonLook::plain,
                ShowList{day.list, false, !day.changing_list}, rows);
}

} // namespace

void lists_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<Chip> chips = list_chips(model, canvas);
    const int columns = chip_columns(chips, most_columns, rows.width, canvas);
    const std::size_t chosen = chosen_row(model.state->day);
    if (columns > 1) {
        chip_grid("lists/choose", canvas.word(Word::list_choose), chips, columns, rows);
        rows.space(6.0f);
        list_title(chips[chosen], model.state->day.in_run, rows);
    } else {
        list_stepper(chips, chosen, rows);
    }
    if (model.state->day.in_run) in_run_part(model, rows);
    else one_list(model, rows);
    rows.space(6.0f);
    const float top = rows.y;
    const std::string_view decides = canvas.word(Word::list_decides);
    rows.text(decides, small_text, Role::soft_ink);
    canvas.reading("lists/decides", {rows.x, top, rows.x + rows.width, rows.y}, decides, {});
}

std::string lists_status(const Model& model) {
    const Language language = model.state->looks.language;
    const ListProgress all = list_progress(*model.job);
    const std::vector<PieceCount>& counts = model.job->record.counts;
    const std::string ticked = std::to_string(all.ticked), steps = std::to_string(all.steps);
    if (counts.empty()) return say(language, Word::list_all_progress, {ticked, steps});
    return say(language, Word::list_all_progress_printed,
               {ticked, steps, format_number(counts.back().printed, 0)});
}

const char* list_name(CheckList list) {
    switch (list) {
    case CheckList::before_run: return "before-run";
    case CheckList::first_piece: return "first-piece";
    case CheckList::before_night: return "before-night";
    case CheckList::before_unloading: return "before-unloading";
    case CheckList::tear_down: return "tear-down";
    }
    return "";
}

void list_heading(std::string_view words, Rows& rows) {
    rows.space(10.0f);
    rows.text(words, bold_text, Role::ink, 6.0f);
}

} // namespace carriageway
