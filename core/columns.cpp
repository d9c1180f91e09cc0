// Cutting an outline into columns, and growing them along the arm.
#include <algorithm>
#include <cstddef>

#include "core/coverage.h"

namespace carriageway {

namespace {

using Span = ColumnScratch::Span;
using Crossing = ColumnScratch::Crossing;

/// The y of an edge at x. At its two ends it gives the corners themselves, without rounding, so
/// that edges that share a corner share it in every column.
double height_at(const Span& edge, double x) {
    if (x <= edge.x0) return edge.y0;
    if (x >= edge.x1) return edge.y1;
    return edge.y0 + (edge.y1 - edge.y0) * ((x - edge.x0) / (edge.x1 - edge.x0));
}

void sort_and_thin(std::vector<double>& cuts) {
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
}

/// Columns thinner than this, mm, are rounding: an edge that leans by less stands upright. Without
/// it an upright side that a rotation has tilted by the last bit would make a piece as long as the
/// side and as wide as nothing.
constexpr double thinnest_column = 1e-9;

/// The x that stands for all corners within the thinnest column of one another.
double gathered(const std::vector<double>& cuts, double x) {
    const auto after = std::upper_bound(cuts.begin(), cuts.end(), x);
    return after == cuts.begin() ? x : *(after - 1);
}

/// Lists the edges from left to right, upright ones left out, and the x of all corners.
void list_edges(const Outline& outline, ColumnScratch& scratch) {
    scratch.edges.clear();
    scratch.cuts.clear();
    for (const Point& corner : outline) scratch.cuts.push_back(corner.x);
    std::sort(scratch.cuts.begin(), scratch.cuts.end());
    scratch.cuts.erase(std::unique(scratch.cuts.begin(), scratch.cuts.end(),
                                   [](double a, double b) { return b - a <= thinnest_column; }),
                       scratch.cuts.end());
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[i + 1 < outline.size() ? i + 1 : 0];
        const double ax = gathered(scratch.cuts, a.x), bx = gathered(scratch.cuts, b.x);
        if (ax < bx) scratch.edges.push_back({ax, a.y, bx, b.y});
        if (bx < ax) scratch.edges.push_back({bx, b.y, ax, a.y});
    }
    std::sort(scratch.edges.begin(), scratch.edges.end(),
              [](const Span& a, const Span& b) { return a.x0 < b.x0; });
}

/// Whether crossing a lies above b: by the middle of the slab, where edges of a simple polygon are
/// always apart.
bool above(const Crossing& a, const Crossing& b) { return a.y0 + a.y1 > b.y0 + b.y1; }

/// Moves the active edges on to the slab from x0 to x1 and puts them in order from bottom to top.
/// From slab to slab they hardly change places, so sorting by insertion takes little.
void move_to_slab(ColumnScratch& scratch, std::size_t& next_edge, double x0, double x1) {
    std::vector<Crossing>& active = scratch.active;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < active.size(); ++i)
        if (scratch.edges[active[i].edge].x1 > x0) active[kept++] = active[i];
    active.resize(kept);
    for (; next_edge < scratch.edges.size() && scratch.edges[next_edge].x0 <= x0; ++next_edge)
        active.push_back({static_cast<std::uint32_t>(next_edge), 0.0, 0.0});
    for (std::size_t i = 0; i < active.size(); ++i) {
        const Span& edge = scratch.edges[active[i].edge];
        const Crossing crossing{active[i].edge, height_at(edge, x0), height_at(edge, x1)};
        std::size_t place = i;
        for (; place > 0 && above(active[place - 1], crossing); --place)
            active[place] = active[place - 1];
        active[place] = crossing;
    }
}

/// A column with its top at or above its bottom: rounding may put them a hair the other way where
/// they meet.
Column upright(double x0, double x1, double lo0, double lo1, double hi0, double hi1) {
    return {x0, x1, lo0, lo1, std::max(lo0, hi0), std::max(lo1, hi1)};
}

double between(double from, double to, double share) { return from + (to - from) * share; }

/// Grows the columns of one slab and lists, beside its sides, each x at which the gap between two
/// neighbours closes.
void grow_slab(const Column* first, std::size_t count, double run_past, ColumnScratch& scratch) {
    scratch.slab.clear();
    scratch.cuts.clear();
    for (std::size_t i = 0; i < count; ++i) {
        Column grown = first[i];
        grown.lo0 -= run_past;
        grown.lo1 -= run_past;
        grown.hi0 += run_past;
        grown.hi1 += run_past;
        if (i > 0) {
            const Column& below = scratch.slab.back();
            const double gap0 = grown.lo0 - below.hi0;
            const double gap1 = grown.lo1 - below.hi1;
            if ((gap0 < 0.0 && gap1 > 0.0) || (gap0 > 0.0 && gap1 < 0.0)) {
                const double at = between(grown.x0, grown.x1, gap0 / (gap0 - gap1));
                if (at > grown.x0 + thinnest_column && at < grown.x1 - thinnest_column)
                    scratch.cuts.push_back(at);
            }
        }
        scratch.slab.push_back(grown);
    }
    scratch.cuts.push_back(first->x0);
    scratch.cuts.push_back(first->x1);
    sort_and_thin(scratch.cuts);
}

/// Adds the grown columns between two cuts, between which each gap is open or closed throughout.
void add_grown(const std::vector<Column>& slab, double x0, double x1, std::vector<Column>& out) {
    const std::size_t first = out.size();
    for (const Column& column : slab) {
        Column part = part_of(column, x0, x1);
        if (out.size() > first) {
            Column& below = out.back();
            const double gap = (part.lo0 - below.hi0) + (part.lo1 - below.hi1);
            if (gap <= 0.0) {
                below.hi0 = std::max(below.hi0, part.hi0);
                below.hi1 = std::max(below.hi1, part.hi1);
                continue;
            }
            part.lo0 = std::max(part.lo0, below.hi0);
            part.lo1 = std::max(part.lo1, below.hi1);
        }
        out.push_back(part);
    }
}

} // namespace

Column part_of(const Column& column, double x0, double x1) {
    const double length = column.x1 - column.x0;
    Column part = column;
    if (x0 > column.x0) {
        const double share = (x0 - column.x0) / length;
        part.x0 = x0;
        part.lo0 = between(column.lo0, column.lo1, share);
        part.hi0 = between(column.hi0, column.hi1, share);
    }
    if (x1 < column.x1) {
        const double share = (x1 - column.x0) / length;
        part.x1 = x1;
        part.lo1 = between(column.lo0, column.lo1, share);
        part.hi1 = between(column.hi0, column.hi1, share);
    }
    return part;
}

void cut_into_columns(const Outline& outline, ColumnScratch& scratch, std::vector<Column>& out) {
    out.clear();
    list_edges(outline, scratch);
    scratch.active.clear();
    std::size_t next_edge = 0;
    for (std::size_t slab = 0; slab + 1 < scratch.cuts.size(); ++slab) {
        const double x0 = scratch.cuts[slab];
        const double x1 = scratch.cuts[slab + 1];
        move_to_slab(scratch, next_edge, x0, x1);
        for (std::size_t i = 0; i + 1 < scratch.active.size(); i += 2) {
            const Crossing& lo = scratch.active[i];
            const Crossing& hi = scratch.active[i + 1];
            out.push_back(upright(x0, x1, lo.y0, lo.y1, hi.y0, hi.y1));
        }
    }
}

void grow_columns(const std::vector<Column>& columns, double run_past, ColumnScratch& scratch,
                  std::vector<Column>& out) {
    out.clear();
    if (!(run_past > 0.0)) {
        out.assign(columns.begin(), columns.end());
        return;
    }
    for (std::size_t first = 0; first < columns.size();) {
        std::size_t end = first + 1;
        while (end < columns.size() && columns[end].x0 == columns[first].x0) ++end;
        grow_slab(&columns[first], end - first, run_past, scratch);
        for (std::size_t i = 0; i + 1 < scratch.cuts.size(); ++i)
            add_grown(scratch.slab, scratch.cuts[i], scratch.cuts[i + 1], out);
        first = end;
    }
}

} // namespace carriageway
