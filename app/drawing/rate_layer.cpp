#include "app/drawing/rate_layer.h"

#include <algorithm>
#include <cmath>

#include "app/drawing/label_placer.h"
#include "app/text/measure.h"
#include "app/text/rate_sentences.h"

namespace carriageway {

namespace {

constexpr float margin = 12.0f;      ///< round the whole chart
constexpr float mark_room = 14.0f;   ///< for the triangle before the slowest one's name
constexpr float names_gap = 8.0f;    ///< between names and plot
constexpr float words_air = 4.0f;    ///< over and under a line of words
constexpr float tallest_row = 64.0f;
constexpr float comfortable_row = 17.0f; ///< below it the legend leaves its room to the rows
constexpr float widest_names = 0.34f;    ///< of the view
constexpr float least_ringed = 16.0f;    ///< height of a row with a ring round it

std::string number_of(const ChartRow& row) { return std::to_string(row.station); }

/// A line of words with its air.
float words_line(const TypeMeasure& type) { return type.height(small_text) + 2.0f * words_air; }

/// The part of the view's height that words above and below may take.
constexpr float share_of_words = 0.4f;

void draw_gridlines(const RateScale& scale, double step, DrawingList& list) {
    constexpr int faint = 70;
    for (int i = 0; i * step <= scale.cycle; ++i) {
        const float x = scale.x(i * step);
        const float below = scale.axis_words ? words_air : 0.0f;
        const Vec line[] = {{x, scale.plot.y0}, {x, scale.plot.y1 + below}};
        list.line(line, 2, paint(Role::edge, faint), 1.0f);
    }
}

/// Numbers below the axis, each with its unit. They keep clear of each other by axis_step().
void number_axis(const RateScale& scale, double step, LabelPlacer& labels, DrawingList& list) {
    if (!scale.axis_words) return;
    const float y = scale.plot.y1 + words_air + 0.5f * list.type().height(small_text);
    for (int i = 0; i * step <= scale.cycle; ++i) {
        const std::string words = i == 0 ? std::string("0") : pace_time(i * step);
        const float width = list.type().width(small_text, words);
        const Box box =
            around({scale.x(i * step), y}, width + 4.0f, list.type().height(small_text));
        if (labels.place(box))
            list.text_centred(box.centre(), words, small_text, Role::soft_ink, Role::paper);
    }
}

/// Columns in which numbers of this height stand by turns; 0: rows are too low for most_columns.
int columns_of(float row, float height) {
    constexpr int most_columns = 3;
    for (int columns = 1; columns <= most_columns; ++columns)
        if (static_cast<float>(columns) * row >= height) return columns;
    return 0;
}

/// Width of one column of numbers.
float column_width(const RateDrawing& drawing, const TypeMeasure& type) {
    constexpr float apart = 5.0f;
    float widest = 0.0f;
    for (const ChartRow& row : drawing.chart->rows)
        widest = std::max(widest, type.width(small_bold_text, number_of(row)));
    return widest + apart;
}

/// The slowest station's row, and the chosen head's: a ground of their own.
void draw_row_ground(const RateDrawing& drawing, const RateScale& scale, std::size_t place,
                     DrawingList& list) {
    const ChartRow& row = drawing.chart->rows[place];
    const Head* head = head_on(*drawing.job, row.station);
    const bool chosen = head != nullptr && head->id == drawing.chosen;
    const Box box = scale.row_box(place);
    if (row.slowest) {
        const float edge = std::min(4.0f, 0.3f * scale.row);
        list.round(box, edge, paint(Role::quiet));
        // In a low row a ring would run through its number: the triangle and the ground do.
        if (scale.row >= least_ringed) list.ring(box, edge, paint(Role::ink), 1.8f);
        const float size = std::min(9.0f, 0.7f * scale.row);
        const Vec tip{box.x0 + size + 2.0f, box.centre().y};
        const float half = 0.6f * size;
        const Vec mark[] = {{tip.x - size, tip.y - half}, tip, {tip.x - size, tip.y + half}};
        list.fill(mark, 3, paint(Role::ink));
    }
    if (chosen) list.ring(box, 4.0f, paint(Role::focus), 2.0f);
}

/// Name or number of a row. Rows lower than a line have their numbers in columns by turns, and
/// where that doesn't do either, only the slowest one has its number.
void label_row(const RateDrawing& drawing, const RateScale& scale, std::size_t place,
               LabelPlacer& labels, DrawingList& list) {
    const ChartRow& row = drawing.chart->rows[place];
    const TypeStyle style = row.slowest ? small_bold_text : small_text;
    const std::string words =
        scale.full_names
            ? station_name(drawing.language, *drawing.job, drawing.pace->plan, place)
            : number_of(row);
    const float width = list.type().width(style, words), height = list.type().height(style);
    const int columns = columns_of(scale.row, height);
    if (columns == 0 && !row.slowest) return;
    const auto column = static_cast<float>(columns > 1 ? static_cast<int>(place) % columns : 0);
    const float x = scale.names + mark_room + column * column_width(drawing, list.type());
    const float middle = scale.row_box(place).centre().y;
    const float y = std::clamp(middle - 0.5f * height, drawing.view.y0,
                               std::max(drawing.view.y0, drawing.view.y1 - height));
    const bool within = scale.row >= height;
    if (labels.place({x, y, x + width, y + height}))
        list.text({x, y}, words, style, Role::ink,
                  row.slowest && within ? Role::quiet : Role::paper);
}

void label_rows(const RateDrawing& drawing, const RateScale& scale, LabelPlacer& labels,
                DrawingList& list) {
    const std::vector<ChartRow>& rows = drawing.chart->rows;
    // The slowest first, then what works, then what only waits.
    for (const int turn : {0, 1, 2})
        for (std::size_t place = 0; place < rows.size(); ++place) {
            const bool works = rows[place].kind != StationKind::idle &&
                               rows[place].kind != StationKind::cool;
            if (turn == (rows[place].slowest ? 0 : works ? 1 : 2))
                label_row(drawing, scale, place, labels, list);
        }
}

/// Words on a ground of their own, within a row.
bool write_in_row(DrawingList& list, LabelPlacer& labels, Vec centre, std::string_view words,
                  TypeStyle style) {
    constexpr float beside = 5.0f;
    const float height = list.type().height(style);
    const Box box = around(centre, list.type().width(style, words) + 2.0f * beside, height);
    if (!labels.place(box)) return false;
    list.round(box, 4.0f, paint(Role::panel));
    list.text_centred(box.centre(), words, style, Role::ink, Role::panel);
    return true;
}

/// What a bar is, on bars that are long enough.
void label_bars(const RateDrawing& drawing, const RateScale& scale, LabelPlacer& labels,
                DrawingList& list) {
    constexpr float air = 16.0f;
    const bool both = handled_together(drawing.pace->plan);
    const std::vector<ChartRow>& rows = drawing.chart->rows;
    for (std::size_t place = 0; place < rows.size(); ++place)
        for (const ChartBar& bar : rows[place].bars) {
            if (bar.kind == StepKind::wait || bar.kind == StepKind::index) continue;
            const Box box = scale.bar_box(place, bar);
            const std::string_view words = word(drawing.language, step_word(bar.kind, both));
            if (box.height() < list.type().height(small_text) ||
                box.width() < list.type().width(small_text, words) + air)
                continue;
            write_in_row(list, labels, box.centre(), words, small_text);
        }
}

/// "slowest" in its row: where the table turns, or at the right end where a flood lies there.
void label_slowest(const RateDrawing& drawing, const RateScale& scale, LabelPlacer& labels,
                   DrawingList& list) {
    const std::string_view words = word(drawing.language, Word::rate_mark_slowest);
    const float half = 0.5f * list.type().width(small_bold_text, words) + 9.0f;
    const float band = scale.x(drawing.chart->index) - scale.plot.x0;
    for (std::size_t place = 0; place < drawing.chart->rows.size(); ++place) {
        const ChartRow& row = drawing.chart->rows[place];
        if (!row.slowest || scale.row < list.type().height(small_text)) continue;
        const bool floods = std::any_of(row.bars.begin(), row.bars.end(),
                                        [](const ChartBar& bar) { return bar.over_index; });
        const float x = !floods && band >= 2.0f * half ? scale.plot.x0 + 0.5f * band
                                                       : scale.plot.x1 - half;
        write_in_row(list, labels, {x, scale.row_box(place).centre().y}, words, small_bold_text);
    }
}

/// What the band is, and where the cycle ends.
void label_head(const RateDrawing& drawing, const RateScale& scale, LabelPlacer& labels,
                DrawingList& list) {
    const std::string end =
        say(drawing.language, Word::rate_cycle_end, {pace_time(drawing.chart->cycle)});
    const float height = list.type().height(small_text);
    const float y = scale.plot.y0 - words_air - 0.5f * height;
    const float width = list.type().width(small_bold_text, end);
    const Box right{scale.plot.x1 - width, y - 0.5f * height, scale.plot.x1, y + 0.5f * height};
    if (scale.head_words && labels.place(right))
        list.text({right.x0, right.y0}, end, small_bold_text, Role::ink, Role::paper);
    const std::string_view turns = word(drawing.language, Word::rate_step_index);
    const float left = scale.plot.x0;
    const Box band{left, right.y0, left + list.type().width(small_text, turns) + names_gap,
                   right.y1};
    if (scale.head_words && drawing.chart->index > 0.0 && labels.place(band))
        list.text({band.x0, band.y0}, turns, small_text, Role::soft_ink, Role::paper);
}

void draw_edges(const RateScale& scale, DrawingList& list) {
    constexpr float beyond = 3.0f;
    const Box plot = scale.plot;
    const Vec end[] = {{plot.x1, plot.y0 - beyond}, {plot.x1, plot.y1 + beyond}};
    const Vec axis[] = {{plot.x0, plot.y1}, {plot.x1, plot.y1}};
    list.line(axis, 2, paint(Role::edge), 1.4f);
    list.line(end, 2, paint(Role::ink), 2.0f);
}

/// Width of the names' column, and whether it holds names or numbers.
float names_width(const RateDrawing& drawing, const TypeMeasure& type, float row, bool& full) {
    float names = 0.0f;
    for (std::size_t place = 0; place < drawing.chart->rows.size(); ++place)
        names =
            std::max(names, type.width(small_bold_text, station_name(drawing.language, *drawing.job,
                                                                     drawing.pace->plan, place)));
    full =
        row >= type.height(small_text) && names + mark_room <= widest_names * drawing.view.width();
    const auto columns =
        static_cast<float>(std::max(1, columns_of(row, type.height(small_bold_text))));
    return mark_room + (full ? names : columns * column_width(drawing, type)) + names_gap;
}

} // namespace

Box RateScale::bar_box(std::size_t place, const ChartBar& bar) const {
    constexpr float share = 0.16f, most = 7.0f;
    const Box whole = row_box(place);
    const float off = std::min(share * row, most);
    return {x(bar.start), whole.y0 + off, x(bar.end), whole.y1 - off};
}

RateScale rate_scale(const RateDrawing& drawing, const TypeMeasure& type) {
    const RateChart& chart = *drawing.chart;
    const Box view = drawing.view;
    const auto count = static_cast<float>(std::max<std::size_t>(chart.rows.size(), 1));
    RateScale scale;
    scale.cycle = std::max(chart.cycle, 1e-6);
    scale.names = view.x0 + margin;
    const float words = words_line(type);
    scale.axis_words = words <= 0.5f * share_of_words * view.height();
    scale.head_words = 2.0f * words <= share_of_words * view.height();
    Box plot{view.x0, view.y0 + (scale.head_words ? words : 0.5f * margin), view.x1 - margin,
             view.y1 - (scale.axis_words ? words : 0.5f * margin)};
    const std::vector<StepKind> kinds = kinds_of(chart);
    const float width = view.width() - 2.0f * margin;
    const float legend = legend_height(kinds, width, handled_together(drawing.pace->plan),
                                       drawing.language, type);
    const bool fits = legend > 0.0f && (plot.height() - legend - margin) / count >=
                                           comfortable_row * type.scale();
    if (fits) plot.y1 -= legend + margin;
    scale.row = std::min(tallest_row * std::max(1.0f, type.scale()), plot.height() / count);
    plot.y1 = plot.y0 + scale.row * count;
    plot.x0 = scale.names + names_width(drawing, type, scale.row, scale.full_names);
    scale.plot = plot;
    if (fits) {
        const float top = plot.y1 + (scale.axis_words ? words : 0.0f) + 0.5f * margin;
        scale.legend = {view.x0 + margin, top, view.x1 - margin, top + legend};
    }
    return scale;
}

double axis_step(const RateScale& scale, const TypeMeasure& type) {
    constexpr double steps[] = {0.1, 0.2,  0.5,  1.0,  2.0,   5.0,
                                10.0, 20.0, 50.0, 100.0, 200.0, 500.0};
    constexpr float air = 14.0f;
    for (const double step : steps) {
        const auto last = std::floor(scale.cycle / step) * step;
        const float words = type.width(small_text, pace_time(last)) + air;
        if (step / scale.cycle * static_cast<double>(scale.plot.width()) >=
            static_cast<double>(words))
            return step;
    }
    return scale.cycle;
}

void draw_rate(const RateDrawing& drawing, const RateScale& scale, DrawingList& list) {
    const std::vector<ChartRow>& rows = drawing.chart->rows;
    list.push_clip(drawing.view);
    for (std::size_t place = 0; place < rows.size(); ++place)
        draw_row_ground(drawing, scale, place, list);
    const double step = axis_step(scale, list.type());
    draw_gridlines(scale, step, list);
    const Box plot = scale.plot;
    draw_index_band(list, {plot.x0, plot.y0, scale.x(drawing.chart->index), plot.y1});
    for (std::size_t place = 0; place < rows.size(); ++place)
        for (const ChartBar& bar : rows[place].bars)
            draw_rate_bar(list, scale.bar_box(place, bar), bar.kind);
    draw_edges(scale, list);
    LabelPlacer labels(drawing.view);
    label_head(drawing, scale, labels, list);
    label_rows(drawing, scale, labels, list);
    number_axis(scale, step, labels, list);
    label_slowest(drawing, scale, labels, list);
    label_bars(drawing, scale, labels, list);
    if (!scale.legend.empty())
        draw_rate_legend(kinds_of(*drawing.chart), scale.legend,
                         handled_together(drawing.pace->plan), drawing.language, list);
    list.pop_clip();
}

} // namespace carriageway
