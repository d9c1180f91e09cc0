#include "core/limits.h"

#include <algorithm>
#include <cstddef>

#include "core/room.h"
#include "core/sensor.h"

namespace carriageway {
namespace {

/// How far an edge and its holder stand from the carriage reference.
struct HolderReach {
    double lo = 0.0;
    double hi = 0.0;
};

/// `side` as for edge_offset().
HolderReach reach_of(const Holder& holder, double edge, double side) {
    const double pivot = side * holder.pivot_offset;
    return {std::min(edge, pivot - holder.half_depth), std::max(edge, pivot + holder.half_depth)};
}

using Limits = std::array<StopLimit, limits_a_stop>;

constexpr bool is_innermost(LimitKind kind) {
    return kind == LimitKind::squeegee_run_past || kind == LimitKind::flood_run_past;
}

void put(Limits& limits, LimitKind kind, double at) {
    limits[static_cast<std::size_t>(kind)] = {kind, at};
}

/// The binding one of the limits, innermost or outermost: the highest y or the lowest.
StopLimit binding(const Limits& limits, bool innermost, bool highest) {
    const StopLimit* found = nullptr;
    for (const StopLimit& limit : limits) {
        if (is_innermost(limit.kind) != innermost) continue;
        const bool binds =
            found == nullptr || (highest ? limit.at > found->at : limit.at < found->at);
        if (binds) found = &limit;
    }
    return *found;
}

StopInterval interval(const StopLimit& lo, const StopLimit& hi) {
    return {lo.at, hi.at, lo.kind, hi.kind};
}

/// How far inside the image's side of its path a blade that is still dropping first touches.
struct Losses {
    double squeegee = 0.0;
    double flood = 0.0;
};

Losses losses_at(End end, const Head& head, const StrokeGeometry& geometry) {
    const bool print_starts =
        (head.print_stroke == Direction::toward_operator) == (end == End::machine_side);
    return print_starts ? Losses{geometry.print_loss, 0.0} : Losses{0.0, geometry.flood_loss};
}

/// Keeps those corners of the rectangle of both intervals that satisfy the coupling, and adds the
/// two where the coupling cuts its sides.
void put_corners(AllowedSet& set) {
    const StopInterval& o = set.operator_side;
    const StopInterval& m = set.machine_side;
    const std::array<Point, 4> rectangle{{{o.lo, m.lo}, {o.hi, m.lo}, {o.hi, m.hi}, {o.lo, m.hi}}};
    const auto room = [&set](const Point& p) { return p.y - p.x - set.least_gap; };
    const auto add = [&set](Point p) {
        const auto end = set.corners.begin() + set.corner_count;
        if (std::find(set.corners.begin(), end, p) == end) {
            set.corners[static_cast<std::size_t>(set.corner_count++)] = p;
        }
    };
    for (std::size_t i = 0; i < rectangle.size(); ++i) {
        const Point& from = rectangle[i];
        const Point& to = rectangle[(i + 1) % rectangle.size()];
        if (room(from) >= 0.0) add(from);
        if ((room(from) > 0.0 && room(to) < 0.0) || (room(from) < 0.0 && room(to) > 0.0)) {
            const bool level = from.y == to.y;  // one coordinate stays on this side
            add(level ? Point{from.y - set.least_gap, from.y}
                      : Point{from.x, from.x + set.least_gap});
        }
    }
}

}  // namespace

bool AllowedSet::empty() const {
    return operator_side.empty() || machine_side.empty() ||
           machine_side.hi - operator_side.lo - least_gap < 0.0;
}

Room room_of(const Job& job, const Head& head) {
    return {opening_of(head.screen), rect_of(job.platen), job.wishes.run_past};
}

AllowedSet allowed_within(const PressProfile& press, const Head& head,
                          const StrokeGeometry& geometry, ImageSpan image, const Room& room) {
    const double d = sign_of(head.print_stroke);
    const double squeegee = geometry.squeegee_edge;
    const double flood = geometry.flood_edge;
    const HolderReach squeegee_reach = reach_of(press.squeegee_holder, squeegee, -d);
    const HolderReach flood_reach = reach_of(press.flood_holder, flood, d);
    const double inset = press.allowances.platen_inset;
    const double clearance = press.allowances.frame_clearance;
    AllowedSet set;

    // All limits are of the carriage's rest position first; the stop stands `rest` before it. The
    // platen counts for the whole path of the squeegee, also where it is still dropping: a blade
    // comes down sooner than the time in the profile as readily as later.
    const Losses lost_lo = losses_at(End::operator_side, head, geometry);
    const double lo = image.lo - room.run_past - geometry.operator_rest;
    Limits& o = set.operator_limits;
    put(o, LimitKind::squeegee_run_past, lo - squeegee - lost_lo.squeegee);
    put(o, LimitKind::flood_run_past, lo - flood - lost_lo.flood);
    put(o, LimitKind::platen, room.platen.lo + inset - squeegee - geometry.operator_rest);
    const double frame_lo = room.opening.lo + clearance - geometry.operator_rest;
    put(o, LimitKind::frame_squeegee, frame_lo - squeegee_reach.lo);
    put(o, LimitKind::frame_flood, frame_lo - flood_reach.lo);
    put(o, LimitKind::carriage_range, press.carriage.range_lo - geometry.operator_rest);

    const Losses lost_hi = losses_at(End::machine_side, head, geometry);
    const double hi = image.hi + room.run_past - geometry.machine_rest;
    Limits& m = set.machine_limits;
    put(m, LimitKind::squeegee_run_past, hi - squeegee + lost_hi.squeegee);
    put(m, LimitKind::flood_run_past, hi - flood + lost_hi.flood);
    put(m, LimitKind::platen, room.platen.hi - inset - squeegee - geometry.machine_rest);
    const double frame_hi = room.opening.hi - clearance - geometry.machine_rest;
    put(m, LimitKind::frame_squeegee, frame_hi - squeegee_reach.hi);
    put(m, LimitKind::frame_flood, frame_hi - flood_reach.hi);
    put(m, LimitKind::carriage_range, press.carriage.range_hi - geometry.machine_rest);

    set.operator_side = interval(binding(o, false, true), binding(o, true, false));
    set.machine_side = interval(binding(m, true, true), binding(m, false, false));
    set.least_gap = least_separation(press.sensors) + press.sensors.separation_margin;
    if (!set.empty()) put_corners(set);
    return set;
}

AllowedSet allowed_set(const Job& job, const Head& head, const StrokeGeometry& geometry,
                       ImageSpan image) {
    return allowed_within(job.press, head, geometry, image, room_of(job, head));
}

}  // namespace carriageway
