// Plane geometry of one head, seen from above.
//
// Axes of a head (mm): x across the arm, positive to the right of an operator who faces the press
// centre; y along the arm, positive toward the machine (press centre), negative toward the
// operator. The origin is the centre of the screen frame as clamped.
#pragma once

#include <vector>

namespace carriageway {

/// One point in a head's plane, mm.
struct Point {
    double x = 0.0;
    double y = 0.0;
    bool operator==(const Point&) const = default;
};

/// A simple polygon: corners in order, either way round, not closed by a repeated corner.
using Outline = std::vector<Point>;

/// An axis-aligned rectangle, mm. Empty when `hi <= lo` or `right <= left`.
struct Rect {
    double left = 0.0;
    double right = 0.0;
    double lo = 0.0; ///< end nearer the operator
    double hi = 0.0; ///< end nearer the machine
    bool operator==(const Rect&) const = default;

    bool empty() const { return !(hi > lo) || !(right > left); }
    double width() const { return right - left; }
    double length() const { return hi - lo; }
};

/// Twice the usual shoelace sum halved: the signed area in mm², positive when the corners run
/// counter-clockwise. Fewer than three corners: 0.
double signed_area(const Outline& outline);

/// The smallest axis-aligned rectangle around the corners. No corners: all zero (and so empty).
Rect bounds_of(const Outline& outline);

/// Whether the outline is a usable simple polygon: at least three corners, all finite, no two
/// edges that cross or touch except neighbours at their shared corner, and an area above
/// `least_image_area`. Takes a time that grows with the square of the corners: for checking input,
/// not for each frame.
bool is_simple(const Outline& outline);

/// Images smaller than this (mm²) are taken for a slip of the keyboard. Ours.
inline constexpr double least_image_area = 1.0;

/// Most corners an outline may have. Ours: far above what a drawing needs, low enough that
/// checking and drawing stay instant.
inline constexpr int most_outline_corners = 2000;

} // namespace carriageway
