#include "tests/reference/reference_head.h"

#include <algorithm>
#include <cmath>

namespace carriageway::reference {

namespace {

double square(double value) { return value * value; }

/// Distance from rest while a blade is still dropping.
double drop_loss(const Carriage& carriage, double speed) {
    const double late = std::max(0.0, carriage.drop_time - carriage.drop_dwell);
    const double ramp = std::min(late, speed / carriage.acceleration);
    return 0.5 * carriage.acceleration * square(ramp) + speed * (late - ramp);
}

double coasting(const PressProfile& press, double speed) {
    return speed * press.sensors.latency + square(speed) / (2.0 * press.carriage.acceleration);
}

Strip reach_of(double edge, double pivot, double half_depth) {
    return {std::min(edge, pivot - half_depth), std::max(edge, pivot + half_depth)};
}

Strip operator+(Strip a, Strip b) { return {a.lo + b.lo, a.hi + b.hi}; }

/// The same offset at both ends.
Strip both(double offset) { return {offset, offset}; }

void edges_and_losses(ReferenceHead& result, const PressProfile& press, const Head& head,
                      bool to_machine) {
    const double d = to_machine ? 1.0 : -1.0;
    const Holder& s = press.squeegee_holder;
    const Holder& f = press.flood_holder;
    const double s0 = -d * s.pivot_offset, f0 = d * f.pivot_offset;
    result.squeegee_edge = s0 - d * s.pivot_height * std::sin(head.squeegee.angle);
    result.flood_edge = f0 + d * f.pivot_height * std::sin(head.flood.angle);
    result.print_loss = drop_loss(press.carriage, head.print_speed);
    result.flood_loss = drop_loss(press.carriage, head.flood_speed);
    result.squeegee_reach = reach_of(result.squeegee_edge, s0, s.half_depth);
    result.flood_reach = reach_of(result.flood_edge, f0, f.half_depth);
}

} // namespace

ReferenceHead reference_head(const Job& job, const Head& head) {
    const PressProfile& press = job.press;
    const Sensors& sensors = press.sensors;
    const bool to_machine = head.print_stroke == Direction::toward_machine;
    ReferenceHead result;
    edges_and_losses(result, press, head, to_machine);
    result.operator_overtravel =
        coasting(press, to_machine ? head.flood_speed : head.print_speed);
    result.machine_overtravel = coasting(press, to_machine ? head.print_speed : head.flood_speed);
    result.rest = {sensors.reach - sensors.operator_offset - result.operator_overtravel,
                   -sensors.reach - sensors.machine_offset + result.machine_overtravel};
    // A stroke toward the machine starts, and loses, at the operator's end.
    const Strip print_lost = to_machine ? Strip{result.print_loss, 0.0}
                                        : Strip{0.0, -result.print_loss};
    const Strip flood_lost = to_machine ? Strip{0.0, -result.flood_loss}
                                        : Strip{result.flood_loss, 0.0};
    result.squeegee = result.rest + both(result.squeegee_edge) + print_lost;
    result.flood = result.rest + both(result.flood_edge) + flood_lost;
    result.squeegee_reach = result.rest + result.squeegee_reach;
    result.flood_reach = result.rest + result.flood_reach;
    result.latest_band_lo = std::max(result.squeegee.lo, result.flood.lo);
    result.earliest_band_hi = std::min(result.squeegee.hi, result.flood.hi);
    result.least_separation =
        sensors.separation_measured
            ? sensors.measured_separation
            : 2.0 * sensors.reach + sensors.hysteresis + sensors.machine_offset -
                  sensors.operator_offset;
    return result;
}

Outline placed_outline(const Image& image) {
    Outline outline = image.outline;
    if (outline.empty()) {
        const double w = 0.5 * image.width, l = 0.5 * image.length;
        outline = {{-w, -l}, {w, -l}, {w, l}, {-w, l}};
    }
    const double c = std::cos(image.rotation), s = std::sin(image.rotation);
    for (Point& corner : outline)
        corner = {image.offset_x + c * corner.x - s * corner.y,
                  image.offset_y + s * corner.x + c * corner.y};
    return outline;
}

std::pair<double, double> placed_span(const Image& image) {
    const Outline outline = placed_outline(image);
    std::pair<double, double> span{outline.front().y, outline.front().y};
    for (const Point& corner : outline)
        span = {std::min(span.first, corner.y), std::max(span.second, corner.y)};
    return span;
}

StopLimits stop_limits(const Job& job, const Head& head) {
    const ReferenceHead h = reference_head(job, head);
    const auto [image_lo, image_hi] = placed_span(head.image);
    const double lo = image_lo - job.wishes.run_past, hi = image_hi + job.wishes.run_past;
    const Allowances& keep = job.press.allowances;
    const double platen_lo = job.platen.offset_y - 0.5 * job.platen.length + keep.platen_inset;
    const double platen_hi = job.platen.offset_y + 0.5 * job.platen.length - keep.platen_inset;
    const double frame =
        0.5 * head.screen.along - head.screen.profile_width - keep.frame_clearance;
    const Carriage& carriage = job.press.carriage;
    return {{lo - h.squeegee.lo, lo - h.flood.lo},
            {platen_lo - h.rest.lo - h.squeegee_edge, -frame - h.squeegee_reach.lo, -frame - h.flood_reach.lo,
             carriage.range_lo - h.rest.lo},
            {hi - h.squeegee.hi, hi - h.flood.hi},
            {platen_hi - h.rest.hi - h.squeegee_edge, frame - h.squeegee_reach.hi, frame - h.flood_reach.hi,
             carriage.range_hi - h.rest.hi},
            h.least_separation + job.press.sensors.separation_margin};
}

double lack_of_room(const StopLimits& limits) {
    double lack = -1e300;
    for (double least : limits.operator_at_least)
        for (double most : limits.operator_at_most) lack = std::max(lack, least - most);
    for (double least : limits.machine_at_least)
        for (double most : limits.machine_at_most) lack = std::max(lack, least - most);
    for (double most : limits.machine_at_most)
        for (double least : limits.operator_at_least)
            lack = std::max(lack, limits.gap_at_least - (most - least));
    return lack;
}

} // namespace carriageway::reference
