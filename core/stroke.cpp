#include "core/stroke.h"

#include <algorithm>

#include "core/motion.h"

namespace carriageway {

namespace {

/// Widens a reach from the carriage reference so that it takes in an edge and its holder.
void take_in(StrokeGeometry& geometry, const Holder& holder, double side, double edge) {
    const double pivot = side * holder.pivot_offset;
    geometry.reach_lo = std::min({geometry.reach_lo, edge, pivot - holder.half_depth});
    geometry.reach_hi = std::max({geometry.reach_hi, edge, pivot + holder.half_depth});
}

/// Where a blade with its edge at `edge` touches, for a stroke in `direction` that loses `loss` at
/// its start.
Rect band(const StrokeGeometry& geometry, const Stops& stops, double edge, double width,
          Direction direction, double loss) {
    const Ends ends = ends_of(geometry, stops);
    Rect swept{-0.5 * width, 0.5 * width, ends.operator_end + edge, ends.machine_end + edge};
    if (direction == Direction::toward_machine)
        swept.lo += loss;
    else
        swept.hi -= loss;
    return swept;
}

} // namespace

StrokeGeometry stroke_geometry(const PressProfile& press, const Head& head) {
    const Carriage& carriage = press.carriage;
    const Sensors& sensors = press.sensors;
    const double d = sign_of(head.print_stroke);
    const double late = std::max(0.0, carriage.drop_time - carriage.drop_dwell);
    const bool prints_to_machine = head.print_stroke == Direction::toward_machine;
    const double to_machine = prints_to_machine ? head.print_speed : head.flood_speed;
    const double to_operator = prints_to_machine ? head.flood_speed : head.print_speed;

    StrokeGeometry geometry;
    geometry.squeegee_edge = edge_offset(press.squeegee_holder, head.squeegee.angle, -d);
    geometry.flood_edge = edge_offset(press.flood_holder, head.flood.angle, d);
    geometry.print_loss = distance_from_rest(late, head.print_speed, carriage.acceleration);
    geometry.flood_loss = distance_from_rest(late, head.flood_speed, carriage.acceleration);
    geometry.operator_overtravel = overtravel(to_operator, sensors.latency, carriage.acceleration);
    geometry.machine_overtravel = overtravel(to_machine, sensors.latency, carriage.acceleration);
    geometry.operator_rest =
        sensors.reach - sensors.operator_offset - geometry.operator_overtravel;
    geometry.machine_rest = -sensors.reach - sensors.machine_offset + geometry.machine_overtravel;
    geometry.reach_lo = geometry.reach_hi = geometry.squeegee_edge;
    take_in(geometry, press.squeegee_holder, -d, geometry.squeegee_edge);
    take_in(geometry, press.flood_holder, d, geometry.flood_edge);
    return geometry;
}

double edge_offset(const Holder& holder, double angle, double side) {
    return side * (holder.pivot_offset + edge_shift(holder, angle));
}

Ends ends_of(const StrokeGeometry& geometry, const Stops& stops) {
    return {stops.operator_side + geometry.operator_rest,
            stops.machine_side + geometry.machine_rest};
}

Rect squeegee_band(const StrokeGeometry& geometry, const Head& head, const Stops& stops) {
    return band(geometry, stops, geometry.squeegee_edge, head.squeegee.width, head.print_stroke,
                geometry.print_loss);
}

Rect flood_band(const StrokeGeometry& geometry, const Head& head, const Stops& stops) {
    return band(geometry, stops, geometry.flood_edge, head.flood.width,
                opposite(head.print_stroke), geometry.flood_loss);
}

End flood_finish(const Head& head) {
    return opposite(head.print_stroke) == Direction::toward_machine ? End::machine_side
                                                                    : End::operator_side;
}

} // namespace carriageway
