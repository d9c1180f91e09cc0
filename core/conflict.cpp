#include <algorithm>
#include <cassert>
#include <cmath>

#include "core/fields.h"
#include "core/limits.h"
#include "core/room.h"

namespace carriageway {
namespace {

/// Added to what a closed form says is enough, mm, so that rounding can't leave the set empty.
constexpr double opening_slack = 1e-9;

/// Changes that move equally far, mm: rounding of sums.
constexpr double equal_moves = 1e-6;

/// Steps in which angles are tried.
constexpr double half_degree = radians(0.5);

/// The head whose set is empty, worked out.
struct Closed {
    const PressProfile& press;
    const Head& head;
    ImageSpan image;
    Room room;
    StrokeGeometry geometry;
    AllowedSet allowed;

    bool opens(const StrokeGeometry& with) const {
        return !allowed_within(press, head, with, image, room).empty();
    }
    bool opens(ImageSpan with) const {
        return !allowed_within(press, head, geometry, with, room).empty();
    }
    bool opens(const Room& with) const {
        return !allowed_within(press, head, geometry, image, with).empty();
    }
};

/// How far the two ends of an interval have passed one another; negative: room.
double missing(const StopInterval& interval) {
    return interval.lo - interval.hi;
}

std::optional<Change> moved_image(const Closed& closed) {
    const double operator_end = missing(closed.allowed.operator_side);
    const double machine_end = missing(closed.allowed.machine_side);
    // Toward the machine makes room at the operator end and takes as much at the machine end.
    double by = 0.0;
    if (operator_end > 0.0) by = operator_end + opening_slack;
    if (operator_end <= 0.0 && machine_end > 0.0) by = -machine_end - opening_slack;
    if (by == 0.0) return std::nullopt;
    const ImageSpan image{closed.image.lo + by, closed.image.hi + by};
    const Rect& opening = closed.room.opening;
    if (image.lo < opening.lo || image.hi > opening.hi || !closed.opens(image)) return std::nullopt;
    return Change{ChangeKind::move_image, by, std::abs(by)};
}

std::optional<Change> shorter_run_past(const Closed& closed) {
    const double by =
        std::max(missing(closed.allowed.operator_side), missing(closed.allowed.machine_side)) +
        opening_slack;
    Room room = closed.room;
    room.run_past -= by;
    if (by <= 0.0 || room.run_past < 0.0 || !closed.opens(room)) return std::nullopt;
    return Change{ChangeKind::shorten_run_past, by, by};
}

/// Room for the bead between the edges, negative when they have changed places.
double bead(const Head& head, const StrokeGeometry& geometry) {
    return -sign_of(head.print_stroke) * (geometry.squeegee_edge - geometry.flood_edge);
}

std::optional<Change> other_angle(const Closed& closed, ChangeKind kind) {
    const bool squeegee = kind == ChangeKind::squeegee_angle;
    const Angles& angles = closed.press.angles;
    const double d = sign_of(closed.head.print_stroke);
    const bool winged = !squeegee && closed.head.flood.winged;
    const double most = winged ? std::min(angles.most, angles.wings_flat) : angles.most;
    const int first = static_cast<int>(std::ceil(angles.least / half_degree - 1e-9));
    const int last = static_cast<int>(std::floor(most / half_degree + 1e-9));
    std::optional<Change> best;
    for (int step = first; step <= last; ++step) {
        const double angle = step * half_degree;
        StrokeGeometry geometry = closed.geometry;
        double& edge = squeegee ? geometry.squeegee_edge : geometry.flood_edge;
        const double before = edge;
        edge = squeegee ? edge_offset(closed.press.squeegee_holder, angle, -d)
                        : edge_offset(closed.press.flood_holder, angle, d);
        const double moved = std::abs(edge - before);
        if (best && moved >= best->moved) continue;
        if (bead(closed.head, geometry) < closed.press.allowances.least_bead) continue;
        if (closed.opens(geometry)) best = Change{kind, angle, moved};
    }
    return best;
}

bool is_frame(LimitKind kind) {
    return kind == LimitKind::frame_squeegee || kind == LimitKind::frame_flood;
}
bool is_platen(LimitKind kind) {
    return kind == LimitKind::platen;
}

/// The outermost limits of both stops, those of one thing apart from all others.
struct Outermost {
    double operator_ours = 0.0, operator_others = 0.0;
    double machine_ours = 0.0, machine_others = 0.0;
};

Outermost outermost(const AllowedSet& allowed, bool (*ours)(LimitKind)) {
    constexpr double far = 1e9;  // beyond any accepted number
    Outermost found{-far, -far, far, far};
    for (int i = 0; i < limits_a_stop; ++i) {
        const auto index = static_cast<std::size_t>(i);
        const StopLimit& o = allowed.operator_limits[index];
        const StopLimit& m = allowed.machine_limits[index];
        if (o.kind == LimitKind::squeegee_run_past || o.kind == LimitKind::flood_run_past) continue;
        double& at_operator = ours(o.kind) ? found.operator_ours : found.operator_others;
        double& at_machine = ours(m.kind) ? found.machine_ours : found.machine_others;
        at_operator = std::max(at_operator, o.at);
        at_machine = std::min(at_machine, m.at);
    }
    return found;
}

/// What a frame or a platen must gain at each of its two ends.
double needed_at_each_end(const AllowedSet& allowed, bool (*ours)(LimitKind)) {
    const Outermost at = outermost(allowed, ours);
    const double gap = allowed.least_gap;
    return std::max({at.operator_ours - allowed.operator_side.hi,
                     allowed.machine_side.lo - at.machine_ours,
                     gap - (at.machine_others - at.operator_ours),
                     gap - (at.machine_ours - at.operator_others),
                     0.5 * (gap - (at.machine_ours - at.operator_ours))}) +
           opening_slack;
}

/// Longer at both ends, its centre staying where it is.
void lengthen(Rect& rect, double at_each_end) {
    rect.lo -= at_each_end;
    rect.hi += at_each_end;
}

std::optional<Change> longer(const Closed& closed, ChangeKind kind) {
    const bool frame = kind == ChangeKind::longer_frame;
    if (frame && closed.room.opening.empty()) return std::nullopt;
    const double by = needed_at_each_end(closed.allowed, frame ? is_frame : is_platen);
    Room room = closed.room;
    lengthen(frame ? room.opening : room.platen, by);
    const Field field = frame ? Field::screen_along : Field::platen_length;
    const double now = frame ? closed.head.screen.along : closed.room.platen.length();
    if (by <= 0.0 || !accepts(field, now + 2.0 * by) || !closed.opens(room)) return std::nullopt;
    return Change{kind, 2.0 * by, by};
}

bool needs_hardware(ChangeKind kind) {
    return kind == ChangeKind::longer_frame || kind == ChangeKind::longer_platen;
}

/// Whether a change is to be preferred to another that comes before it in ChangeKind's order.
bool better(const Change& change, const Change& than) {
    if (needs_hardware(change.kind) != needs_hardware(than.kind)) {
        return needs_hardware(than.kind);
    }
    return change.moved < than.moved - equal_moves;
}

}  // namespace

Conflict conflict_of(const AllowedSet& allowed) {
    assert(allowed.empty());
    const StopInterval& o = allowed.operator_side;
    const StopInterval& m = allowed.machine_side;
    Conflict worst;
    worst.outer = o.lo_kind;
    worst.inner = o.hi_kind;
    worst.end = End::operator_side;
    worst.by = missing(o);
    if (missing(m) > worst.by) {
        worst.outer = m.hi_kind;
        worst.inner = m.lo_kind;
        worst.end = End::machine_side;
        worst.by = missing(m);
    }
    const double apart = allowed.least_gap - (m.hi - o.lo);
    if (apart > worst.by) {
        worst.outer = o.lo_kind;
        worst.inner = LimitKind::separation;
        worst.end = End::operator_side;
        worst.other = m.hi_kind;
        worst.separation = true;
        worst.by = apart;
    }
    return worst;
}

std::optional<Change> smallest_change(const Job& job, const Head& head, ImageSpan image) {
    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    const Room room = room_of(job, head);
    const Closed closed{job.press, head,
                        image,     room,
                        geometry,  allowed_within(job.press, head, geometry, image, room)};
    if (!closed.allowed.empty()) return std::nullopt;
    const std::optional<Change> changes[] = {
        moved_image(closed),
        shorter_run_past(closed),
        other_angle(closed, ChangeKind::squeegee_angle),
        other_angle(closed, ChangeKind::flood_angle),
        longer(closed, ChangeKind::longer_frame),
        longer(closed, ChangeKind::longer_platen),
    };
    std::optional<Change> best;
    for (const std::optional<Change>& change : changes) {
        if (change && (!best || better(*change, *best))) best = change;
    }
    return best;
}

}  // namespace carriageway
