#include "app/drawing/pdf_polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace carriageway {

namespace {

double dot(PdfPoint a, PdfPoint b) { return a.x * b.x + a.y * b.y; }
PdfPoint between(PdfPoint a, PdfPoint b, double share) {
    return {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share};
}

/// Keeps the part of a convex polygon where (distance along `normal`) ≤ `level`.
void cut_at(PdfPolygon& polygon, PdfPoint normal, double level) {
    PdfPolygon kept;
    if (polygon.empty()) return;
    PdfPoint before = polygon.back();
    double before_by = level - dot(before, normal);
    for (const PdfPoint at : polygon) {
        const double by = level - dot(at, normal);
        if ((by >= 0.0) != (before_by >= 0.0))
            kept.push_back(between(before, at, before_by / (before_by - by)));
        if (by >= 0.0) kept.push_back(at);
        before = at;
        before_by = by;
    }
    polygon = std::move(kept);
}

/// From where to where something reaches along a direction.
struct LineReach {
    double lo = std::numeric_limits<double>::max();
    double hi = std::numeric_limits<double>::lowest();
};
LineReach reach_of(const PdfPolygon& polygon, PdfPoint along) {
    LineReach reach;
    for (const PdfPoint& at : polygon) {
        const double value = dot(at, along);
        reach.lo = std::min(reach.lo, value);
        reach.hi = std::max(reach.hi, value);
    }
    return reach;
}

/// Whether a side of `a` has all of `b` on its outside.
bool parted_by_side(const PdfPolygon& a, const PdfPolygon& b) {
    for (std::size_t i = 0; i < a.size(); ++i) {
        const PdfPoint from = a[i], to = a[(i + 1) % a.size()];
        const double size = std::hypot(to.x - from.x, to.y - from.y);
        if (!(size > 0.0)) continue;
        const PdfPoint normal{(to.y - from.y) / size, (from.x - to.x) / size};
        const LineReach mine = reach_of(a, normal), other = reach_of(b, normal);
        constexpr double touching = 1e-3; // dp: far less than any printer resolves
        if (other.lo >= mine.hi - touching || mine.lo >= other.hi - touching) return true;
    }
    return false;
}

} // namespace

PdfBox pdf_box(const Box& box) {
    return {static_cast<double>(box.x0), static_cast<double>(box.y0), static_cast<double>(box.x1),
            static_cast<double>(box.y1)};
}

PdfBox around_all(const PdfPolygon& points) {
    const LineReach x = reach_of(points, {1.0, 0.0}), y = reach_of(points, {0.0, 1.0});
    return {x.lo, y.lo, x.hi, y.hi};
}

bool overlap(const PdfBox& a, const PdfBox& b) {
    return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

void cut_to(PdfPolygon& polygon, const PdfBox& box) {
    cut_at(polygon, {-1.0, 0.0}, -box.x0);
    cut_at(polygon, {1.0, 0.0}, box.x1);
    cut_at(polygon, {0.0, -1.0}, -box.y0);
    cut_at(polygon, {0.0, 1.0}, box.y1);
}

bool cut_to(PdfLine& line, const PdfBox& box) {
    double first = 0.0, last = 1.0; // shares of the way
    const auto side = [&](double from, double way, double limit) {
        // from + share·way ≤ limit
        if (way == 0.0) return from <= limit;
        const double share = (limit - from) / way;
        if (way > 0.0)
            last = std::min(last, share);
        else
            first = std::max(first, share);
        return first <= last;
    };
    const double dx = line.to.x - line.from.x, dy = line.to.y - line.from.y;
    if (!side(line.from.x, dx, box.x1) || !side(-line.from.x, -dx, -box.x0) ||
        !side(line.from.y, dy, box.y1) || !side(-line.from.y, -dy, -box.y0))
        return false;
    line = {between(line.from, line.to, first), between(line.from, line.to, last)};
    return true;
}

void make_clockwise(PdfPolygon& polygon) {
    double doubled_area = 0.0;
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        const PdfPoint o = polygon[0], a = polygon[i - 1], b = polygon[i];
        doubled_area += (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
    }
    if (doubled_area < 0.0) std::reverse(polygon.begin(), polygon.end());
}

bool overlap(const PdfPolygon& a, const PdfPolygon& b) {
    return !parted_by_side(a, b) && !parted_by_side(b, a);
}

std::vector<PdfLine> hatch_lines(const std::vector<PdfPolygon>& polygons,
                                   const PdfHatch& hatch, int most) {
    const PdfPoint along{std::cos(hatch.angle), std::sin(hatch.angle)};
    const PdfPoint normal{-along.y, along.x};
    LineReach across, length;
    for (const PdfPolygon& polygon : polygons) {
        const LineReach mine = reach_of(polygon, normal), its = reach_of(polygon, along);
        across = {std::min(across.lo, mine.lo), std::max(across.hi, mine.hi)};
        length = {std::min(length.lo, its.lo), std::max(length.hi, its.hi)};
    }
    std::vector<PdfLine> lines;
    if (!(across.lo <= across.hi) || !(hatch.spacing > 0.0)) return lines;
    const double phase = std::remainder(hatch.phase, hatch.spacing), half = 0.5 * hatch.width;
    const double first = std::ceil((across.lo - half - phase) / hatch.spacing);
    const double count = std::floor((across.hi + half - phase) / hatch.spacing) - first + 1.0;
    for (int i = 0; i < std::min<double>(count, most); ++i) {
        const double level = (first + i) * hatch.spacing + phase;
        const auto at = [&](double far) {
            return PdfPoint{normal.x * level + along.x * far, normal.y * level + along.y * far};
        };
        lines.push_back({at(length.lo), at(length.hi)});
    }
    return lines;
}

} // namespace carriageway
