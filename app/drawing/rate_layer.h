// One cycle of a press as a chart: a row for each station, time from left to right.
//
// The band at the left is the table's turn, the same for every station; then what is done there,
// and a thin line while it waits for the slowest one. What happens is told apart by shape and
// hatching as well as by colour: wedges for the head coming down and up, hatching one way for the
// flood and the other way for the print, upright lines for the flash, dots where people work.
//
// Everything in dp; times in s are those of core/rate_chart.h.
#pragma once

#include <string>
#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/text/words.h"
#include "core/job_pace.h"
#include "core/rate_chart.h"

namespace carriageway {

struct RateDrawing {
    const Job* job = nullptr;
    const JobPace* pace = nullptr; ///< that runs
    const RateChart* chart = nullptr; ///< of its rate
    HeadId chosen = 0;
    Language language = Language::english;
    Box view;
};

/// Where the parts of the chart lie.
struct RateScale {
    Box plot;        ///< of all rows, without names and words
    float names = 0.0f; ///< x where the stations' names begin
    float row = 0.0f;   ///< height of a row
    double cycle = 1.0; ///< s from left to right of the plot
    bool full_names = false; ///< names rather than numbers alone
    bool head_words = false; ///< room for words above the rows
    bool axis_words = false; ///< and for numbers below them
    Box legend;      ///< empty: no room for it here
    float x(double seconds) const {
        return plot.x0 + static_cast<float>(seconds / cycle) * plot.width();
    }
    /// The whole row of the station at `place`, its name included.
    Box row_box(std::size_t place) const {
        const float top = plot.y0 + row * static_cast<float>(place);
        return {names, top, plot.x1, top + row};
    }
    /// Where a bar of that row is drawn.
    Box bar_box(std::size_t place, const ChartBar& bar) const;
};

RateScale rate_scale(const RateDrawing& drawing, const TypeMeasure& type);

/// Seconds between two marks of the axis, so that their numbers have room.
double axis_step(const RateScale& scale, const TypeMeasure& type);

/// Draws all of it; adds no things. The legend only where the scale has room for it.
void draw_rate(const RateDrawing& drawing, const RateScale& scale, DrawingList& list);

// -- app/drawing/rate_bars.cpp --

/// Draws one bar.
void draw_rate_bar(DrawingList& list, Box box, StepKind kind);

/// The band of the table's turn.
void draw_index_band(DrawingList& list, Box box);

/// The kinds of bars that a chart has, in the order in which they are explained: the first of a
/// pair stands for both (head down and up; wait for the blade and dwell).
std::vector<StepKind> kinds_of(const RateChart& chart);

/// How a kind is drawn and said where it is explained.
void draw_rate_swatch(DrawingList& list, Box box, StepKind kind);
Word legend_word(StepKind kind, bool both);
inline constexpr float swatch_width = 30.0f, swatch_height = 14.0f;

/// Height that the explanation of these kinds needs in a width, several on a line; 0 where one of
/// them needs more than the width, or there is none. And the explanation itself.
float legend_height(const std::vector<StepKind>& kinds, float width, bool both, Language language,
                    const TypeMeasure& type);
void draw_rate_legend(const std::vector<StepKind>& kinds, Box box, bool both, Language language,
                      DrawingList& list);

} // namespace carriageway
