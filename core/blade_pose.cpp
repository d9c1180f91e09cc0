#include "core/blade_pose.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

/// Share of a graduation by which a setting may miss it and still stand on it: rounding of stored
/// numbers such as 0.1.
constexpr double mark_slack = 1e-6;

bool usable(const Gauge& gauge) {
    return std::isfinite(gauge.mm_per_mark) && gauge.mm_per_mark > 0.0 &&
           std::isfinite(gauge.graduation) && gauge.graduation > 0.0 &&
           std::isfinite(gauge.lowest) && std::isfinite(gauge.highest) &&
           gauge.highest >= gauge.lowest;
}

} // namespace

double edge_shift(const Holder& holder, double angle) {
    return holder.pivot_height * std::sin(angle);
}

BladePose blade_pose(const Holder& holder, const Gauge& gauge, double angle, double marks) {
    return {edge_shift(holder, angle), gauge.mm_per_mark * marks + edge_lift(holder, 0.0, angle)};
}

double edge_lift(const Holder& holder, double from, double to) {
    return holder.pivot_height * (std::cos(from) - std::cos(to));
}

double gauge_change_for_tilt(const Holder& holder, const Gauge& gauge, double from, double to) {
    if (!(gauge.mm_per_mark > 0.0)) return 0.0;
    return -edge_lift(holder, from, to) / gauge.mm_per_mark;
}

std::optional<GaugeCorrection> restore_edge_height(const Holder& holder, const Gauge& gauge,
                                                   double marks, double from, double to) {
    GaugeCorrection correction;
    correction.lift = edge_lift(holder, from, to);
    if (!usable(gauge) || !std::isfinite(correction.lift) || !std::isfinite(marks))
        return std::nullopt;
    correction.exact = gauge_change_for_tilt(holder, gauge, from, to);
    const double steps = (gauge.highest - gauge.lowest) / gauge.graduation;
    const double last = std::floor(steps + mark_slack);
    const double wanted = std::round((marks + correction.exact - gauge.lowest) / gauge.graduation);
    const double nearest = std::clamp(wanted, 0.0, last);
    correction.on_scale = wanted == nearest;
    correction.setting = gauge.lowest + nearest * gauge.graduation;
    correction.rest = correction.lift + (correction.setting - marks) * gauge.mm_per_mark;
    return correction;
}

double wing_clearance(const Angles& angles, double angle) {
    return angles.wing_length * std::sin(angles.wings_flat - angle);
}

EdgeContact edge_contact(const BladePose& pose, const SurfacesUnderEdge& surfaces) {
    const double height = surfaces.reference + pose.height;
    return {height - surfaces.mesh, height - surfaces.garment};
}

} // namespace carriageway
