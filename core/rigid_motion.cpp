#include "core/rigid_motion.h"

#include <cmath>

namespace carriageway {

namespace {

/// C and S smaller than this share of what the marks' spreads allow are rounding alone.
constexpr double rounding_share = 1e-9;

bool finite(const Point& point) { return std::isfinite(point.x) && std::isfinite(point.y); }

Point centre_of(std::span<const MarkReading> marks, Point MarkReading::*which) {
    Point sum;
    for (const MarkReading& mark : marks) {
        sum.x += (mark.*which).x;
        sum.y += (mark.*which).y;
    }
    const auto count = static_cast<double>(marks.size());
    return {sum.x / count, sum.y / count};
}

Point less(const Point& a, const Point& b) { return {a.x - b.x, a.y - b.y}; }

Point turned(double rotation, const Point& point) {
    const double c = std::cos(rotation), s = std::sin(rotation);
    return {c * point.x - s * point.y, s * point.x + c * point.y};
}

} // namespace

Point moved(const RigidMotion& motion, const Point& point) {
    const Point about_origin = turned(motion.rotation, point);
    return {about_origin.x + motion.x, about_origin.y + motion.y};
}

RigidMotion inverse_of(const RigidMotion& motion) {
    const Point back = turned(-motion.rotation, {-motion.x, -motion.y});
    return {-motion.rotation, back.x, back.y};
}

std::optional<RigidFit> best_motion(std::span<const MarkReading> marks) {
    if (marks.empty()) return std::nullopt;
    for (const MarkReading& mark : marks)
        if (!finite(mark.nominal) || !finite(mark.measured)) return std::nullopt;
    RigidFit fit;
    fit.nominal_centre = centre_of(marks, &MarkReading::nominal);
    fit.measured_centre = centre_of(marks, &MarkReading::measured);
    if (marks.size() > 1) {
        double c = 0.0, s = 0.0, nominal = 0.0, measured = 0.0;
        for (const MarkReading& mark : marks) {
            const Point from = less(mark.nominal, fit.nominal_centre);
            const Point to = less(mark.measured, fit.measured_centre);
            c += from.x * to.x + from.y * to.y;
            s += from.x * to.y - from.y * to.x;
            nominal += from.x * from.x + from.y * from.y;
            measured += to.x * to.x + to.y * to.y;
        }
        fit.spread = std::sqrt(nominal);
        fit.strength = std::hypot(c, s);
        if (!(fit.strength > rounding_share * fit.spread * std::sqrt(measured)))
            return std::nullopt;
        fit.motion.rotation = std::atan2(s, c);
        fit.turns = true;
    }
    const Point centre = turned(fit.motion.rotation, fit.nominal_centre);
    fit.motion.x = fit.measured_centre.x - centre.x;
    fit.motion.y = fit.measured_centre.y - centre.y;
    return fit;
}

Point residual_of(const RigidFit& fit, const MarkReading& mark) {
    // About the centres, so that marks far from the origin lose no digits.
    const Point from = turned(fit.motion.rotation, less(mark.nominal, fit.nominal_centre));
    return less(less(mark.measured, fit.measured_centre), from);
}

} // namespace carriageway
