// The Rate place: one cycle as a chart of stations against time, and what sets the rate.
#include "app/text/rate_sentences.h"
#include "app/views/panel.h"
#include "app/views/rate_view.h"
#include "app/views/register_view.h"

namespace carriageway {

namespace {

constexpr float drawing_margin = 8.0f;

RateDrawing drawing_of(const RateView& view, const Canvas& canvas, Box box) {
    RateDrawing drawing;
    drawing.job = &view.job();
    drawing.pace = &view.pace;
    drawing.chart = &view.chart;
    drawing.chosen = view.model->state->head;
    drawing.language = canvas.language();
    drawing.view = box;
    return drawing;
}

RateView rate_view(const Model& model, Canvas& canvas, Box box) {
    RateView view;
    view.model = &model;
    view.pace = job_pace(*model.job, *model.assessment);
    view.chart = rate_chart(view.pace.rate);
    if (view.pace.runs()) view.scale = rate_scale(drawing_of(view, canvas, box), canvas.type());
    return view;
}

/// Each station's row as a thing: a finger's height at least, whatever the row's own.
void attach_rows(const RateView& view, Box box, Canvas& canvas) {
    for (std::size_t place = 0; place < view.chart.rows.size(); ++place) {
        const std::optional<Action> action = station_action(view, place);
        const Box row = view.scale.row_box(place);
        Thing& thing = canvas.list().thing(
            "rate/station/" + std::to_string(view.chart.rows[place].station),
            action ? ThingRole::button : ThingRole::text, row);
        thing.label = station_name(canvas.language(), view.job(), view.pace.plan, place);
        thing.value = station_value(view, place, canvas.language());
        if (!action) continue;
        thing.action = canvas.action(*action);
        const float height = std::max(touch_side, row.height());
        thing.target = common(around(row.centre(), row.width(), height), box);
        // At the drawing's edge the finger's room goes inward.
        thing.target.y0 = std::min(thing.target.y0, box.y1 - touch_side);
        thing.target.y1 = std::max(thing.target.y1, box.y0 + touch_side);
    }
}

void chart_drawing(const RateView& view, Box box, Canvas& canvas) {
    const Language language = canvas.language();
    Thing& thing = canvas.list().thing("rate/chart", ThingRole::image, box);
    thing.label.assign(canvas.word(Word::rate_chart));
    thing.value = say(language, Word::rate_chart_value,
                      {std::to_string(view.chart.rows.size()), pace_time(view.chart.cycle),
                       slowest_text(language, view.job(), view.pace).title});
    draw_rate(drawing_of(view, canvas, box), view.scale, canvas.list());
    canvas.list().push_clip(box);
    attach_rows(view, box, canvas);
    canvas.list().pop_clip();
}

/// In the chart's place: why there is none. The panel says what to do.
void no_chart(const RateView& view, Box box, Canvas& canvas) {
    constexpr float mark_size = 34.0f, gap = 12.0f;
    constexpr TypeStyle title{TypeSize::title, true};
    const std::string_view words = canvas.word(Word::rate_none);
    const float width = std::max(1.0f, box.width() - 4.0f * drawing_margin);
    const float height = canvas.paragraph_height(width, words, title);
    const bool mark = box.height() > height + mark_size + 2.0f * gap;
    const Vec middle = box.centre();
    DrawingList& list = canvas.list();
    list.push_clip(box);
    if (mark)
        draw_verdict(list, {middle.x, middle.y - 0.5f * (height + gap)}, mark_size, Role::stop);
    if (box.height() > height)
        canvas.centred_paragraph({middle.x, middle.y + (mark ? 0.5f * (mark_size + gap) : 0.0f)},
                                 width, words, title, Role::ink, Role::paper);
    Thing& thing = list.thing("rate/chart", ThingRole::image, box);
    thing.label.assign(words);
    thing.value = in_one_line(no_rate_text(canvas.language(), view.job(), view.pace));
    list.pop_clip();
}

} // namespace

std::optional<Action> station_action(const RateView& view, std::size_t place) {
    const StationWork& work = view.pace.plan.stations[place];
    const Head* head = head_on(view.job(), work.station);
    if (head != nullptr) return ChooseHead{head->id};
    switch (work.kind) {
    case StationKind::flash: return OpenPad{0, Field::flash_dwell};
    case StationKind::load: return OpenPad{0, Field::load_time};
    case StationKind::unload: return OpenPad{0, Field::unload_time};
    default: return std::nullopt;
    }
}

std::string station_value(const RateView& view, std::size_t place, Language language) {
    const StationPace& station = view.pace.rate.stations[place];
    const std::string time = pace_time(station.seconds);
    if (station.slowest) return say(language, Word::rate_station_slowest, {time});
    return say(language, Word::rate_station_value, {time, pace_time(station.idle)});
}

void rate_place(const Model& model, const Layout& layout, Canvas& canvas) {
    canvas.list().round(layout.diagram, 0.0f, paint(Role::paper));
    const Box box = layout.diagram.inset(drawing_margin);
    const RateView view = rate_view(model, canvas, box);
    if (view.pace.runs()) chart_drawing(view, box, canvas);
    else no_chart(view, box, canvas);
    press_header(model, layout, canvas);
    if (!layout.banner.empty()) visit_banner(model, layout, canvas);
    const ViewState& state = *model.state;
    if (state.pad && !state.pad->reading && !state.day.open) number_pad(model, layout, canvas);
    else
        place_panel(model, layout, canvas.word(Word::place_rate), canvas,
                    [&](Rows& rows) { rate_panel(view, rows); });
}

} // namespace carriageway
