// What a head comes to as it was really set: its verdict, the findings with what to do, and a small
// drawing.
#include <algorithm>

#include "app/drawing/diagram.h"
#include "app/text/sentences.h"
#include "app/text/walk_sentences.h"
#include "app/views/walk_view.h"

namespace carriageway {

namespace {

Role role_of(Severity severity) {
    switch (severity) {
    case Severity::stop: return Role::stop;
    case Severity::mind: return Role::mind;
    case Severity::note: break;
    }
    return Role::soft_ink;
}

/// A verdict with its mark, its reason and what to do. There is no button: a real number is changed
/// at the press, not here.
void said(const std::string& name, const FindingText& words, Role role, bool live, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const float mark = canvas.type().height(bold_text) * 0.8f, indent = mark + 8.0f;
    const float top = rows.y;
    draw_verdict(canvas.list(),
                 {rows.x + 0.5f * mark, top + 0.5f * canvas.type().height(bold_text)}, mark, role);
    rows.y += canvas.paragraph({rows.x + indent, top}, rows.width - indent, words.title, bold_text,
                               role, rows.on) +
              3.0f;
    rows.text(words.why, small_text, Role::ink, 2.0f);
    std::string todo = words.remedy.main;
    if (!words.remedy.detail.empty()) todo += ": " + words.remedy.detail;
    if (!todo.empty()) rows.text(todo, small_bold_text, Role::ink, 2.0f);
    Thing& thing = canvas.list().thing(name, ThingRole::text,
                                       {rows.x, top, rows.x + rows.width, rows.y});
    thing.label = words.severity.empty() ? words.title : words.severity + ": " + words.title;
    thing.value = todo.empty() ? words.why : words.why + " " + todo;
    thing.live = live;
    rows.space(10.0f);
}

FindingText words_of(const Model& model, const HeadAssessment& head, std::size_t index) {
    return finding_text(model.state->looks.language, model.state->looks.units, judged_job(model),
                        head, head.findings[index]);
}

bool set_otherwise(const Model& model, HeadId head) {
    const Head* planned = find_head(*model.job, head);
    const Head* judged = find_head(judged_job(model), head);
    return planned && judged && !(*planned == *judged);
}

/// Real values of this head that are left out of the verdict.
void unusable_lines(const Model& model, HeadId head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    int shown = 0;
    for (const UnusableMark& mark : unusable_marks(*model.job)) {
        if (mark.head != head) continue;
        const std::string words =
            unusable_text(canvas.language(), model.state->looks.units, *model.job, mark);
        const float top = rows.y;
        caution_row(words, rows);
        canvas.reading("walk/unusable/" + std::to_string(++shown),
                       {rows.x, top, rows.x + rows.width, rows.y}, words, {});
        canvas.list().things().back().live = true;
    }
}

/// A limit bar beside the frame, outward from its inner end.
void draw_bar(const HeadView& view, End end, double inner, double bar, bool planned,
              DrawingList& list) {
    constexpr double gap = 16.0, width = 26.0; // mm
    const double x = 0.5 * view.head->screen.across + gap;
    const double outer = inner + (end == End::machine_side ? bar : -bar);
    const Rect rect{x, x + width, std::min(inner, outer), std::max(inner, outer)};
    if (planned) outline_rect(list, view, rect, paint(Role::soft_ink), 1.4f);
    else fill_rect(list, view, rect, paint(Role::ink));
}

} // namespace

const Job& judged_job(const Model& model) {
    return model.job_as_set ? *model.job_as_set : *model.job;
}

const HeadAssessment* judged_head(const Model& model, HeadId head) {
    return find_head(model.as_set ? *model.as_set : *model.assessment, head);
}

void walk_verdict(const Model& model, HeadId head, Rows& rows) {
    const HeadAssessment* judged = judged_head(model, head);
    if (!judged) return;
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(set_otherwise(model, head) ? Word::walk_head_as_set
                                                     : Word::walk_head_as_planned),
              small_text, Role::soft_ink, 2.0f);
    if (judged->findings.empty()) {
        FindingText fit;
        fit.title = canvas.word(Word::fit_to_run);
        const LengthUnit units = model.state->looks.units;
        fit.why = say(canvas.language(), Word::run_past_left,
                      {format_length(judged->operator_run_past, units),
                       format_length(judged->machine_run_past, units)});
        said("walk/verdict", fit, Role::fit, true, rows);
    } else {
        said("walk/verdict", words_of(model, *judged, 0),
             role_of(judged->findings.front().severity), true, rows);
    }
    unusable_lines(model, head, rows);
}

void walk_findings(const Model& model, HeadId head, Rows& rows) {
    const HeadAssessment* judged = judged_head(model, head);
    if (!judged || judged->findings.size() < 2) return;
    rows.space(8.0f);
    rows.text(rows.canvas.word(Word::walk_also), bold_text, Role::ink, 6.0f);
    for (std::size_t i = 1; i < judged->findings.size(); ++i)
        said("walk/finding/" + std::to_string(i), words_of(model, *judged, i),
             role_of(judged->findings[i].severity), false, rows);
}

void walk_drawing(const Model& model, HeadId head, Box box, Canvas& canvas) {
    const Job& job = judged_job(model);
    const Head* planned = find_head(*model.job, head);
    const Head* set = find_head(job, head);
    const HeadAssessment* judged = judged_head(model, head);
    if (!planned || !set || !judged) return;
    DrawingList& list = canvas.list();
    DiagramInput input;
    input.job = &job;
    input.assessment = model.as_set ? model.as_set : model.assessment;
    input.with_handles = false;
    input.language = canvas.language();
    input.units = model.state->looks.units;
    const float bars = 22.0f; // dp beside the frame
    input.projection = {camera_for_head(job, *set, box, bars), box};
    HeadView view;
    view.head = set;
    view.assessed = judged;
    view.aim(input.projection, place_of_station(job.press, set->station));
    list.push_clip(box);
    list.round(box, 12.0f, paint(Role::paper));
    draw_head(input, view, list);
    for (const End end : {End::operator_side, End::machine_side}) {
        const double bar = job.press.sensors.bar_length;
        draw_bar(view, end, stop_of(set->stops, end), bar, false, list);
        if (stop_of(set->stops, end) != stop_of(planned->stops, end))
            draw_bar(view, end, stop_of(planned->stops, end), bar, true, list);
    }
    list.pop_clip();
    list.thing("walk/drawing", ThingRole::image, box).label =
        say(canvas.language(), Word::walk_drawing, {head_name(model, *set)});
}

} // namespace carriageway
