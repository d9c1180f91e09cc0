// A job's earlier runs as a line, the newest first, what can be done with one, and the same job on
// another press.
#include "app/text/measure.h"
#include "app/text/sentences.h"
#include "app/views/day_view.h"

namespace carriageway {

namespace {

constexpr float dot = 7.0f;
constexpr float line_room = 34.0f; ///< left of the cards, where the line of time runs

std::string date_of(const Canvas& canvas, const RunRow& run) {
    const std::string date = stamp_text({run.ended, {}});
    return date.empty() ? std::string(canvas.word(Word::runs_undated)) : date;
}

std::string detail_of(const Canvas& canvas, const RunRow& run) {
    std::string detail =
        run.printed > 0.0
            ? say(canvas.language(), Word::runs_pieces,
                  {format_number(run.printed, 0), format_number(run.spoiled, 0)})
            : std::string(canvas.word(Word::runs_no_count));
    if (!run.press.empty()) detail = run.press + " · " + detail;
    if (!run.approved_by.empty())
        detail += " · " + say(canvas.language(), Word::runs_approved, {run.approved_by});
    return detail;
}

/// A point on the line of time, with the line down to the next.
void time_mark(Rows& rows, const Box& card, bool filled, bool last) {
    DrawingList& list = rows.canvas.list();
    const Vec at{card.x0 - 0.55f * line_room, card.centre().y};
    const Vec line[] = {{at.x, at.y}, {at.x, card.y1 + 0.5f * card.height() + 8.0f}};
    if (!last) list.line(line, 2, paint(Role::edge), 2.0f);
    if (filled) list.disc(at, dot, paint(Role::ink));
    else list.circle(at, dot, paint(Role::ink), 2.0f);
}

/// What can be done with the chosen run.
void run_actions(const RunRow& run, const std::string& base, Rows& rows) {
    Canvas& canvas = rows.canvas;
    wide_button(base + "/compare", canvas.word(Word::runs_compare), ButtonLook::strong,
                CompareRun{run.id}, rows);
    wide_button(base + "/again", canvas.word(Word::runs_again), ButtonLook::plain,
                RunAgain{run.id}, rows);
    wide_button(base + "/delete", canvas.word(Word::runs_remove), ButtonLook::plain,
                RemoveRun{run.id}, rows);
}

void run_card(const Model& model, const RunRow& run, bool last, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const bool chosen = model.state->day.run == run.id;
    const std::string title = date_of(canvas, run), detail = detail_of(canvas, run);
    Rows inner{canvas, rows.x + line_room, rows.width - line_room, rows.y, rows.on};
    const float width = inner.width - 28.0f - 30.0f;
    const float first = canvas.paragraph_height(width, title, bold_text);
    const float second = canvas.paragraph_height(width, detail, small_text);
    const Box card = inner.next(std::max(60.0f, first + second + 22.0f));
    canvas.list().round(card, 12.0f, paint(Role::card));
    canvas.list().ring(card, 12.0f, paint(chosen ? Role::ink : Role::edge), chosen ? 1.8f : 1.2f);
    const float top = card.centre().y - 0.5f * (first + second + 2.0f);
    canvas.paragraph({card.x0 + 14.0f, top}, width, title, bold_text, Role::ink, Role::card);
    canvas.paragraph({card.x0 + 14.0f, top + first + 2.0f}, width, detail, small_text,
                     Role::soft_ink, Role::card);
    canvas.icon(chosen ? Icon::up : Icon::down, {card.x1 - 24.0f, card.centre().y}, 18.0f,
                Role::soft_ink);
    const std::string base = "runs/" + std::to_string(run.id);
    Thing& thing = canvas.list().thing(base, ThingRole::list_item, card);
    thing.label = title;
    thing.value = detail;
    thing.chosen = chosen;
    thing.action = canvas.action(ChooseRun{chosen ? RunId{0} : run.id});
    time_mark(rows, card, true, last);
    if (chosen) run_actions(run, base, inner);
    rows.y = inner.y;
}

void carry_section(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.space(10.0f);
    rows.text(canvas.word(Word::carry_title), {TypeSize::title, true});
    rows.text(canvas.word(Word::carry_hint), small_text, Role::soft_ink, 10.0f);
    bool any = false;
    for (const PressRow& press : *model.presses) {
        if (press.name == model.job->press.name) continue;
        any = true;
        wide_button("runs/carry/" + std::to_string(press.id),
                    say(canvas.language(), Word::carry_to, {press.name}), ButtonLook::plain,
                    CarryToPress{press.id}, rows);
    }
    if (!any) rows.text(canvas.word(Word::carry_no_press), small_text, Role::soft_ink);
}

} // namespace

std::string runs_status(const Model& model) {
    const Language language = model.state->looks.language;
    const std::vector<RunRow>& runs = *model.runs;
    if (runs.empty()) return say(language, Word::runs_count, {"0"});
    const std::string date = stamp_text({runs.front().ended, {}});
    if (runs.size() == 1) return say(language, Word::runs_count_one, {date});
    return say(language, Word::runs_count_many, {std::to_string(runs.size()), date});
}

void runs_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    if (model.visiting) {
        rows.text(canvas.word(Word::runs_not_kept), {}, Role::ink, 12.0f);
    } else {
        if (model.runs->empty()) rows.text(canvas.word(Word::runs_none), {}, Role::soft_ink, 12.0f);
        wide_button("runs/finish", canvas.word(Word::runs_finish), ButtonLook::strong, FinishRun{},
                    rows, true);
        for (const RunRow& run : *model.runs)
            run_card(model, run, &run == &model.runs->back(), rows);
    }
    carry_section(model, rows);
}

} // namespace carriageway
