#include "core/geometry.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace carriageway {

namespace {

/// -1, 0 or +1: whether c lies right of, on, or left of the line from a to b. What rounding alone
/// could have decided counts as on the line, so that outlines that all but touch are refused.
int turn(const Point& a, const Point& b, const Point& c) {
    constexpr double rounding = 8.0 * std::numeric_limits<double>::epsilon();
    const double first = (b.x - a.x) * (c.y - a.y);
    const double second = (b.y - a.y) * (c.x - a.x);
    const double cross = first - second;
    const double doubt = rounding * (std::abs(first) + std::abs(second));
    return cross > doubt ? 1 : (cross < -doubt ? -1 : 0);
}

bool apart(double a0, double a1, double b0, double b1) {
    return std::max(a0, a1) < std::min(b0, b1) || std::max(b0, b1) < std::min(a0, a1);
}

/// Whether two closed segments have a point in common.
bool meet(const Point& a, const Point& b, const Point& c, const Point& d) {
    if (apart(a.x, b.x, c.x, d.x) || apart(a.y, b.y, c.y, d.y)) return false;
    return turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0;
}

} // namespace

double signed_area(const Outline& outline) {
    if (outline.size() < 3) return 0.0;
    // Measured from the first corner, so that an outline far from the origin loses no digits.
    const Point origin = outline.front();
    double twice = 0.0;
    for (std::size_t i = 1; i + 1 < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[i + 1];
        twice += (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
    }
    return 0.5 * twice;
}

Rect bounds_of(const Outline& outline) {
    if (outline.empty()) return {};
    Rect bounds{outline[0].x, outline[0].x, outline[0].y, outline[0].y};
    for (const Point& corner : outline) {
        bounds.left = std::min(bounds.left, corner.x);
        bounds.right = std::max(bounds.right, corner.x);
        bounds.lo = std::min(bounds.lo, corner.y);
        bounds.hi = std::max(bounds.hi, corner.y);
    }
    return bounds;
}

bool is_simple(const Outline& outline) {
    const std::size_t count = outline.size();
    if (count < 3) return false;
    for (const Point& corner : outline)
        if (!std::isfinite(corner.x) || !std::isfinite(corner.y)) return false;
    const double area = std::abs(signed_area(outline));
    if (!std::isfinite(area) || area <= least_image_area) return false;
    for (std::size_t i = 0; i < count; ++i) {
        const Point& from = outline[i];
        const Point& to = outline[(i + 1) % count];
        // Later edges but the neighbours: the next one, and for the first edge also the last. A
        // repeated corner, or an edge that runs back over its neighbour, makes the edges on either
        // side of it meet.
        const std::size_t end = i == 0 ? count - 1 : count;
        for (std::size_t j = i + 2; j < end; ++j)
            if (meet(from, to, outline[j], outline[(j + 1) % count])) return false;
    }
    return true;
}

} // namespace carriageway
