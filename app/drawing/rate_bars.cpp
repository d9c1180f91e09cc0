// How each kind of work looks in the chart of a cycle, and its explanation.
#include <algorithm>
#include <iterator>

#include "app/drawing/rate_layer.h"
#include "app/text/rate_sentences.h"

namespace carriageway {

namespace {

constexpr float quarter = 0.785f, upright = 1.571f; ///< rad, of hatch lines
constexpr float least_hatched = 4.0f;  ///< dp; a narrower bar is filled instead
constexpr float line_width = 1.4f;
constexpr int pale = 70, even_paler = 40; ///< alpha under hatching

// A row of the explanation.
constexpr float swatch_gap = 7.0f, swatch_after = 16.0f, line_air = 6.0f;

/// How a bar with hatching looks.
struct Hatched {
    Role role;
    float angle;
    float spacing;
};

void corners_of(Box box, Vec (&corners)[4]) {
    corners[0] = {box.x0, box.y0};
    corners[1] = {box.x1, box.y0};
    corners[2] = {box.x1, box.y1};
    corners[3] = {box.x0, box.y1};
}

void draw_hatched(DrawingList& list, Box box, const Hatched& look) {
    Vec corners[4];
    corners_of(box, corners);
    const bool narrow = box.width() < least_hatched;
    list.fill(corners, 4, paint(look.role, narrow ? 255 : pale));
    if (narrow) return;
    list.hatch(corners, 4, paint(look.role), look.angle, look.spacing, line_width);
    list.loop(corners, 4, paint(look.role), line_width);
}

/// A head coming down, or going up: a wedge.
void draw_wedge(DrawingList& list, Box box, bool down) {
    const Vec tip = down ? Vec{box.x0, box.y0} : Vec{box.x1, box.y0};
    const Vec wedge[] = {tip, {box.x1, box.y1}, {box.x0, box.y1}};
    list.fill(wedge, 3, paint(Role::soft_ink));
}

/// Nothing moves: a hollow bar, lower than the others.
void draw_pause(DrawingList& list, Box box) {
    constexpr float share = 0.28f;
    const float off = share * box.height();
    Vec corners[4];
    corners_of({box.x0, box.y0 + off, box.x1, box.y1 - off}, corners);
    list.loop(corners, 4, paint(Role::soft_ink), 1.2f);
}

/// People at work: dots.
void draw_dotted(DrawingList& list, Box box) {
    constexpr float apart = 9.0f, radius = 1.7f;
    Vec corners[4];
    corners_of(box, corners);
    list.fill(corners, 4, paint(Role::covered));
    const float y = box.centre().y;
    for (float x = box.x0 + 0.5f * apart; x < box.x1 - radius; x += apart)
        list.disc({x, y}, std::min(radius, 0.35f * box.height()), paint(Role::covered_ink));
    list.loop(corners, 4, paint(Role::covered_ink), line_width);
}

/// Both blades up: an outline alone.
void draw_hollow(DrawingList& list, Box box) {
    Vec corners[4];
    corners_of(box, corners);
    list.loop(corners, 4, paint(Role::soft_ink), line_width);
}

void draw_wait(DrawingList& list, Box box) {
    const float y = box.centre().y;
    const Vec line[] = {{box.x0, y}, {box.x1, y}};
    list.line(line, 2, paint(Role::edge), 1.2f);
}

/// The kind that explains it: of a pair, the first.
StepKind explained(StepKind kind) {
    if (kind == StepKind::lift) return StepKind::lower;
    return kind == StepKind::dwell ? StepKind::drop : kind;
}

float entry_width(StepKind kind, bool both, Language language, const TypeMeasure& type) {
    return swatch_width + swatch_gap +
           type.width(small_text, word(language, legend_word(kind, both)));
}

/// Calls `put(kind, x, line)` for each entry of an explanation in lines as wide as `width`; returns
/// how many lines there are.
template <class Put>
int lay_out_legend(const std::vector<StepKind>& kinds, float width, bool both, Language language,
                   const TypeMeasure& type, const Put& put) {
    float x = 0.0f;
    int line = 0;
    for (const StepKind kind : kinds) {
        const float wide = entry_width(kind, both, language, type);
        if (x > 0.0f && x + wide > width) {
            x = 0.0f;
            ++line;
        }
        put(kind, x, line);
        x += wide + swatch_after;
    }
    return kinds.empty() ? 0 : line + 1;
}

float line_height(const TypeMeasure& type) {
    return std::max(swatch_height, type.height(small_text)) + line_air;
}

} // namespace

void draw_rate_bar(DrawingList& list, Box box, StepKind kind) {
    switch (kind) {
    case StepKind::index: break; // the band says it for all rows
    case StepKind::lower: return draw_wedge(list, box, true);
    case StepKind::lift: return draw_wedge(list, box, false);
    case StepKind::drop:
    case StepKind::dwell: return draw_pause(list, box);
    case StepKind::flood: return draw_hatched(list, box, {Role::flood, -quarter, 6.0f});
    case StepKind::print: return draw_hatched(list, box, {Role::squeegee, quarter, 6.0f});
    case StepKind::empty: return draw_hollow(list, box);
    case StepKind::flash: return draw_hatched(list, box, {Role::mind, upright, 5.0f});
    case StepKind::load:
    case StepKind::unload: return draw_dotted(list, box);
    case StepKind::cool:
    case StepKind::stay: return draw_hatched(list, box, {Role::soft_ink, 0.0f, 4.0f});
    case StepKind::wait: return draw_wait(list, box);
    }
}

void draw_index_band(DrawingList& list, Box box) {
    Vec corners[4];
    corners_of(box, corners);
    list.fill(corners, 4, paint(Role::rail, even_paler + pale));
    list.hatch(corners, 4, paint(Role::edge, pale), 0.0f, 5.0f, 1.0f);
}

std::vector<StepKind> kinds_of(const RateChart& chart) {
    constexpr StepKind order[] = {StepKind::index, StepKind::lower, StepKind::drop,
                                  StepKind::flood, StepKind::print, StepKind::empty,
                                  StepKind::flash, StepKind::load,  StepKind::unload,
                                  StepKind::cool,  StepKind::stay,  StepKind::wait};
    std::vector<StepKind> out;
    for (const StepKind kind : order) {
        bool there = false;
        for (const ChartRow& row : chart.rows)
            for (const ChartBar& bar : row.bars) there = there || explained(bar.kind) == kind;
        if (there) out.push_back(kind);
    }
    return out;
}

Word legend_word(StepKind kind, bool both) {
    return kind == StepKind::lower ? Word::rate_steps_down_up : step_word(kind, both);
}

void draw_rate_swatch(DrawingList& list, Box box, StepKind kind) {
    if (kind == StepKind::index) return draw_index_band(list, box);
    if (kind != StepKind::lower) return draw_rate_bar(list, box, kind);
    const float middle = box.centre().x;
    draw_wedge(list, {box.x0, box.y0, middle - 2.0f, box.y1}, true);
    draw_wedge(list, {middle + 2.0f, box.y0, box.x1, box.y1}, false);
}

float legend_height(const std::vector<StepKind>& kinds, float width, bool both, Language language,
                    const TypeMeasure& type) {
    for (const StepKind kind : kinds)
        if (entry_width(kind, both, language, type) > width) return 0.0f;
    const int lines =
        lay_out_legend(kinds, width, both, language, type, [](StepKind, float, int) {});
    return static_cast<float>(lines) * line_height(type);
}

void draw_rate_legend(const std::vector<StepKind>& kinds, Box box, bool both, Language language,
                      DrawingList& list) {
    const TypeMeasure& type = list.type();
    const float line = line_height(type);
    const auto put = [&](StepKind kind, float x, int row) {
        const Vec at{box.x0 + x, box.y0 + line * (static_cast<float>(row) + 0.5f)};
        const Vec middle{at.x + 0.5f * swatch_width, at.y};
        draw_rate_swatch(list, around(middle, swatch_width, swatch_height), kind);
        list.text({at.x + swatch_width + swatch_gap, at.y - 0.5f * type.height(small_text)},
                  word(language, legend_word(kind, both)), small_text, Role::soft_ink, Role::paper);
    };
    lay_out_legend(kinds, box.width(), both, language, type, put);
}

} // namespace carriageway
