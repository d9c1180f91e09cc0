// All places of the walk at once: how far each is, what was set other than planned, and how two
// people share the walk.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"
#include "app/text/walk_sentences.h"
#include "app/views/list_view.h"
#include "app/views/walk_view.h"

namespace carriageway {

namespace {

constexpr float pad = 14.0f;

std::string place_name(const Model& model, HeadId head) {
    const Head* set = find_head(*model.job, head);
    return "walk/go/" + (set ? std::to_string(set->station) : std::string("job"));
}

/// "12 of 16 set · stop: Both sensors on"
std::string detail_of(const Model& model, HeadId head, const HeadAssessment* judged) {
    const Language language = model.state->looks.language;
    const WalkProgress here = progress_at(*model.job, head);
    std::string text = say(language, Word::walk_place_progress,
                           {std::to_string(here.done), std::to_string(here.of)});
    if (!judged) return text;
    if (judged->findings.empty())
        return text + " · " + std::string(word(language, Word::fit_to_run));
    const FindingText finding = finding_text(language, model.state->looks.units,
                                             judged_job(model), *judged, judged->findings.front());
    return text + " · " + finding.severity + ": " + finding.title;
}

void place_row(const Model& model, HeadId head, Rows& rows) {
    constexpr float mark = 18.0f, icon_room = 40.0f;
    Canvas& canvas = rows.canvas;
    const HeadAssessment* judged = judged_head(model, head);
    const std::string name = walk_place(canvas.language(), *model.job, head);
    const std::string detail = detail_of(model, head, judged);
    const float indent = pad + (judged ? mark + 10.0f : 0.0f);
    const float width = rows.width - indent - icon_room;
    const float first = canvas.paragraph_height(width, name, bold_text);
    const float second = canvas.paragraph_height(width, detail, small_text);
    const Box box = rows.next(std::max(60.0f, first + second + 22.0f), 8.0f);
    canvas.list().round(box, 12.0f, paint(Role::quiet));
    const float top = box.centre().y - 0.5f * (first + second + 2.0f);
    if (judged)
        draw_verdict(canvas.list(), {box.x0 + pad + 0.5f * mark, box.centre().y}, mark,
                     verdict_role(*judged));
    canvas.paragraph({box.x0 + indent, top}, width, name, bold_text, Role::ink, Role::quiet);
    canvas.paragraph({box.x0 + indent, top + first + 2.0f}, width, detail, small_text,
                     Role::soft_ink, Role::quiet);
    const bool finished = progress_at(*model.job, head).finished();
    canvas.icon(finished ? Icon::check : Icon::next, {box.x1 - 0.5f * icon_room, box.centre().y},
                20.0f, finished ? Role::ink : Role::soft_ink);
    Thing& thing = canvas.list().thing(place_name(model, head), ThingRole::button, box);
    thing.label = name;
    thing.value = detail;
    thing.action = canvas.action(WalkTo{head});
}

/// A line of its own, to be read.
void line(const std::string& name, const std::string& label, const std::string& words, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float top = rows.y;
    rows.text(label, bold_text, Role::ink, 2.0f);
    rows.text(words, small_text, Role::ink, 0.0f);
    canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y}, label, words);
    rows.space(10.0f);
}

/// What was set other than planned, in walking order.
void other_than_planned(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const Job& job = *model.job;
    list_heading(canvas.word(Word::walk_other), rows);
    int shown = 0;
    for (const HeadId head : walk_order(job))
        for (const Field field : walk_fields(job, head)) {
            const std::string really =
                really_set_text(language, model.state->looks.units, job, head, field);
            if (really.empty()) continue;
            const std::string what = walk_place(language, job, head) + ": " +
                                     std::string(canvas.word(walk_word(field)));
            line("walk/other/" + std::to_string(++shown), what, really, rows);
        }
    if (shown == 0) rows.text(canvas.word(Word::walk_other_none), body_text, Role::soft_ink, 8.0f);
}

void unusable(const Model& model, Rows& rows) {
    int shown = 0;
    for (const UnusableMark& mark : unusable_marks(*model.job)) {
        const std::string words = unusable_text(rows.canvas.language(),
                                                model.state->looks.units, *model.job, mark);
        const float top = rows.y;
        caution_row(words, rows);
        rows.canvas.reading("walk/unusable/" + std::to_string(++shown),
                            {rows.x, top, rows.x + rows.width, rows.y}, words, {});
    }
}

void two_halves(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    list_heading(canvas.word(Word::walk_two), rows);
    const float top = rows.y;
    const std::string_view words = canvas.word(Word::walk_two_explained);
    rows.text(words, body_text, Role::ink, 10.0f);
    canvas.reading("walk/two", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, words, {});
    wide_button("walk/share", canvas.word(Word::walk_share), ButtonLook::plain,
                can_share(model) ? Action{ShareJob{model.current}}
                                 : Action{ExportJob{model.current}},
                rows, true);
}

} // namespace

void walk_all(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string status = walk_status(model);
    const float top = rows.y;
    rows.text(status, {TypeSize::title, true}, Role::ink, 10.0f);
    canvas.reading("walk/status", {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, status, {});
    for (const HeadId head : walk_order(*model.job)) place_row(model, head, rows);
    other_than_planned(model, rows);
    unusable(model, rows);
    two_halves(model, rows);
    if (model.job->walk.empty()) return;
    rows.space(8.0f);
    wide_button("walk/again", canvas.word(Word::walk_again), ButtonLook::plain, WalkAgain{}, rows);
}

} // namespace carriageway
