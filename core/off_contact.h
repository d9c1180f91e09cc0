// Off-contact: the plane in which the mesh hangs over the platen, and the gap that it leaves over
// the garment.
//
// Heights are measured from the bare platen up to the mesh, mm. Axes of a head (geometry.h), and
// z up. The gap is the mesh's height less the compressed garment: zero or below, the screen lies
// on the garment. Left and right must match (common practice).
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "core/garment.h"
#include "core/geometry.h"
#include "core/source.h"

namespace carriageway {

/// z = height + slope_x·x + slope_y·y, mm.
struct OffContactPlane {
    double height = 0.0;  ///< over the origin of the head's axes
    double slope_x = 0.0; ///< rise per mm to the right
    double slope_y = 0.0; ///< rise per mm toward the machine

    double height_at(Point at) const { return height + slope_x * at.x + slope_y * at.y; }
};

/// One measured height of the mesh.
struct MeshHeight {
    Point at;
    double height = 0.0; ///< mm over the bare platen
};

/// The three places at which a head is usually set.
struct ThreeHeights {
    MeshHeight operator_left;
    MeshHeight operator_right;
    MeshHeight machine;
};

/// Why no plane was found.
enum class PlaneTrouble {
    none,
    too_few,    ///< fewer than three points
    not_finite, ///< a place or a height is no number
    in_a_line,  ///< the points lie (nearly) in a line, or in one place
};

/// A plane through measured heights.
struct PlaneFit {
    PlaneTrouble trouble = PlaneTrouble::none; ///< unless none, nothing below is filled
    OffContactPlane plane;
    std::vector<double> residuals; ///< measured less plane, mm, one a point in the order given
    double rms = 0.0;              ///< root of the mean square of the residuals
    double largest = 0.0;          ///< largest residual, without its sign
};

/// Points count as lying in a line when they stray from it, root mean square, by less than this
/// share of their spread along it. Ours: below it, a height read 0.1 mm wrong tilts the plane by
/// more across the line than off-contact itself.
inline constexpr double least_breadth = 0.01;

/// The plane through three points, or the least-squares plane (of the heights) through more.
PlaneFit fit_plane(std::span<const MeshHeight> points);
PlaneFit fit_plane(const ThreeHeights& heights);

/// Angle between the plane and the platen, rad, never negative.
double tilt_of(const OffContactPlane& plane);

/// Gap over the compressed garment at one place, mm; negative where the mesh would lie below the
/// garment's top.
double gap_at(const OffContactPlane& plane, double garment_thickness, Point at);

/// The least and the most gap over an area, and where.
struct GapRange {
    double least = 0.0;
    double most = 0.0;
    Point least_at;
    Point most_at;
};

/// Over a rectangle: the platen, or an image's bounds. An empty one: nothing.
std::optional<GapRange> gap_range(const OffContactPlane& plane, double garment_thickness,
                                  const Rect& area);

/// Over the corners of an outline, which for a plane are its extremes. No corners: nothing.
std::optional<GapRange> gap_range(const OffContactPlane& plane, double garment_thickness,
                                  const Outline& area);

/// Left against right.
struct LeftRight {
    double difference = 0.0; ///< right less left, mm
    bool too_much = false;   ///< farther apart than the tolerance, or not finite
};

/// Left and right that differ by less count as matching, mm. Ours: about what can be read with a
/// gauge between mesh and platen.
inline constexpr double left_right_tolerance = 0.25;

/// How the plane's heights differ between `left_x` and `right_x`. The tolerance itself is allowed.
LeftRight left_right(const OffContactPlane& plane, double left_x, double right_x,
                     double tolerance = left_right_tolerance);

/// The same of the two heights as measured, whatever the places.
LeftRight left_right(const ThreeHeights& heights, double tolerance = left_right_tolerance);

/// Off-contact that is advised for a garment: advice, never a limit.
struct OffContactAdvice {
    GarmentKind kind = GarmentKind::t_shirt;
    double least = 0.0; ///< mm of gap over the garment
    double most = 0.0;
    SourceKind source = SourceKind::common_practice;
};

/// T-shirts: 1/16 to 1/8 in, published in the trade, and other sources say otherwise (one has 3/16
/// in at 27 N/cm on a 23 by 31 in frame). Fleece: published only as "a little more", in words; the
/// figures, from where T-shirts end to that 3/16 in, are ours.
inline constexpr std::array<OffContactAdvice, 2> off_contact_advice{{
    {GarmentKind::t_shirt, 1.5875, 3.175, SourceKind::published_conflicting},
    {GarmentKind::fleece, 3.175, 4.7625, SourceKind::ours},
}};

/// The row for a kind of garment.
const OffContactAdvice& advice_for(GarmentKind kind);

/// How a gap compares with advice.
enum class AgainstAdvice { below, within, above };

/// A gap at either end of the range lies within it; one that is no number lies below.
AgainstAdvice against(const OffContactAdvice& advice, double gap);

} // namespace carriageway
