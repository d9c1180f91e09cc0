#include "core/off_contact.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

/// Second moments of the points' places about their middle, and with the heights.
struct Moments {
    Point middle;
    double height = 0.0; ///< mean
    double xx = 0.0, xy = 0.0, yy = 0.0;
    double xz = 0.0, yz = 0.0;
};

bool all_finite(std::span<const MeshHeight> points) {
    return std::all_of(points.begin(), points.end(), [](const MeshHeight& point) {
        return std::isfinite(point.at.x) && std::isfinite(point.at.y) &&
               std::isfinite(point.height);
    });
}

Moments moments_of(std::span<const MeshHeight> points) {
    Moments sum;
    const double share = 1.0 / static_cast<double>(points.size());
    for (const MeshHeight& point : points) {
        sum.middle.x += share * point.at.x;
        sum.middle.y += share * point.at.y;
        sum.height += share * point.height;
    }
    for (const MeshHeight& point : points) {
        const double x = point.at.x - sum.middle.x, y = point.at.y - sum.middle.y;
        const double z = point.height - sum.height;
        sum.xx += x * x;
        sum.xy += x * y;
        sum.yy += y * y;
        sum.xz += x * z;
        sum.yz += y * z;
    }
    return sum;
}

/// Whether the places have no breadth across the line that fits them best. The two principal
/// moments are the squares of the spreads along and across that line, times the points.
bool in_a_line(const Moments& sum) {
    const double mean = 0.5 * (sum.xx + sum.yy);
    const double along = mean + std::hypot(0.5 * (sum.xx - sum.yy), sum.xy);
    // The product of the two is the determinant; taken this way it loses nothing to cancellation
    // that matters beside `least_breadth`.
    const double across = along > 0.0 ? (sum.xx * sum.yy - sum.xy * sum.xy) / along : 0.0;
    return !(across > least_breadth * least_breadth * along);
}

void take_residuals(std::span<const MeshHeight> points, PlaneFit& fit) {
    double squares = 0.0;
    for (const MeshHeight& point : points) {
        const double residual = point.height - fit.plane.height_at(point.at);
        fit.residuals.push_back(residual);
        fit.largest = std::max(fit.largest, std::abs(residual));
        squares += residual * residual;
    }
    fit.rms = std::sqrt(squares / static_cast<double>(points.size()));
}

} // namespace

PlaneFit fit_plane(std::span<const MeshHeight> points) {
    PlaneFit fit;
    if (points.size() < 3) {
        fit.trouble = PlaneTrouble::too_few;
        return fit;
    }
    const Moments sum = moments_of(points);
    // The sums too, of numbers so large that they overflow.
    if (!all_finite(points) || !std::isfinite(sum.xx + sum.yy + sum.xz + sum.yz + sum.height)) {
        fit.trouble = PlaneTrouble::not_finite;
        return fit;
    }
    if (in_a_line(sum)) {
        fit.trouble = PlaneTrouble::in_a_line;
        return fit;
    }
    const double determinant = sum.xx * sum.yy - sum.xy * sum.xy;
    fit.plane.slope_x = (sum.xz * sum.yy - sum.yz * sum.xy) / determinant;
    fit.plane.slope_y = (sum.yz * sum.xx - sum.xz * sum.xy) / determinant;
    fit.plane.height =
        sum.height - fit.plane.slope_x * sum.middle.x - fit.plane.slope_y * sum.middle.y;
    take_residuals(points, fit);
    return fit;
}

PlaneFit fit_plane(const ThreeHeights& heights) {
    const std::array<MeshHeight, 3> points{heights.operator_left, heights.operator_right,
                                           heights.machine};
    return fit_plane(std::span<const MeshHeight>(points));
}

double tilt_of(const OffContactPlane& plane) {
    return std::atan(std::hypot(plane.slope_x, plane.slope_y));
}

double gap_at(const OffContactPlane& plane, double garment_thickness, Point at) {
    return plane.height_at(at) - garment_thickness;
}

namespace {

std::optional<GapRange> gap_range_of(const OffContactPlane& plane, double garment_thickness,
                                     std::span<const Point> corners) {
    if (corners.empty()) return std::nullopt;
    const double first = gap_at(plane, garment_thickness, corners.front());
    GapRange range{first, first, corners.front(), corners.front()};
    for (const Point& corner : corners) {
        const double gap = gap_at(plane, garment_thickness, corner);
        if (gap < range.least) {
            range.least = gap;
            range.least_at = corner;
        }
        if (gap > range.most) {
            range.most = gap;
            range.most_at = corner;
        }
    }
    return range;
}

} // namespace

std::optional<GapRange> gap_range(const OffContactPlane& plane, double garment_thickness,
                                  const Outline& area) {
    return gap_range_of(plane, garment_thickness, area);
}

std::optional<GapRange> gap_range(const OffContactPlane& plane, double garment_thickness,
                                  const Rect& area) {
    if (area.empty()) return std::nullopt;
    const std::array<Point, 4> corners{{{area.left, area.lo},
                                        {area.right, area.lo},
                                        {area.right, area.hi},
                                        {area.left, area.hi}}};
    return gap_range_of(plane, garment_thickness, corners);
}

LeftRight left_right(const OffContactPlane& plane, double left_x, double right_x,
                     double tolerance) {
    const double difference = plane.slope_x * (right_x - left_x);
    return {difference, !(std::abs(difference) <= tolerance)};
}

LeftRight left_right(const ThreeHeights& heights, double tolerance) {
    const double difference = heights.operator_right.height - heights.operator_left.height;
    return {difference, !(std::abs(difference) <= tolerance)};
}

const OffContactAdvice& advice_for(GarmentKind kind) {
    const auto found =
        std::find_if(off_contact_advice.begin(), off_contact_advice.end(),
                     [kind](const OffContactAdvice& row) { return row.kind == kind; });
    return found == off_contact_advice.end() ? off_contact_advice.front() : *found;
}

AgainstAdvice against(const OffContactAdvice& advice, double gap) {
    if (gap > advice.most) return AgainstAdvice::above;
    return gap >= advice.least ? AgainstAdvice::within : AgainstAdvice::below;
}

} // namespace carriageway
