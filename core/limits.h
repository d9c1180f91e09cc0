// Where the two stops of a head may stand, and the shortest good stroke.
//
// Every wish is linear in the two stops: each stop has an interval (outermost: frame, platen or
// the carriage's range; innermost: the image and its run-past), and one coupling keeps the bars
// farther apart than the least separation plus a margin. So the allowed set is a polygon with at
// most five corners. All positions are y in mm of the bars' inner ends.
#pragma once

#include <array>
#include <optional>

#include "core/stroke.h"

namespace carriageway {

/// What holds a stop.
enum class LimitKind {
    squeegee_run_past, ///< innermost: the squeegee must pass the image by the run-past
    flood_run_past,    ///< innermost: the flood must
    platen,            ///< outermost: the squeegee must stay on the platen
    frame_squeegee,    ///< outermost: squeegee (edge or holder) to the frame
    frame_flood,       ///< outermost: flood bar (edge or holder) to the frame
    carriage_range,    ///< outermost: the carriage's mechanical range
    separation,        ///< the two bars' least separation and margin
};
inline constexpr int limits_a_stop = 6; ///< kinds that hold one stop

/// One limit of one stop: where it binds.
struct StopLimit {
    LimitKind kind = LimitKind::carriage_range;
    double at = 0.0; ///< the stop may not go beyond this y
};

/// Where one stop may stand.
struct StopInterval {
    double lo = 0.0;
    double hi = 0.0;
    LimitKind lo_kind = LimitKind::carriage_range; ///< what binds at lo
    LimitKind hi_kind = LimitKind::carriage_range;
    bool empty() const { return lo > hi; }
};

/// The allowed set of (operator stop, machine stop).
struct AllowedSet {
    StopInterval operator_side; ///< lo is its outermost, hi its innermost
    StopInterval machine_side;  ///< lo is its innermost, hi its outermost
    double least_gap = 0.0;     ///< machine stop − operator stop at least this
    std::array<StopLimit, limits_a_stop> operator_limits; ///< all of them, in LimitKind's order
    std::array<StopLimit, limits_a_stop> machine_limits;
    std::array<Point, 6> corners; ///< x: operator stop, y: machine stop; counter-clockwise
    int corner_count = 0;         ///< 0 when the set is empty
    bool empty() const;
};

/// What the image asks for and where it may go; y in mm.
struct ImageSpan {
    double lo = 0.0;
    double hi = 0.0;
};

/// Works out the allowed set of one head.
AllowedSet allowed_set(const Job& job, const Head& head, const StrokeGeometry& geometry,
                       ImageSpan image);

/// The shortest stroke within an allowed set: least (machine stop − operator stop); among equals
/// the one whose covered part is best centred on the image. Nothing when the set is empty.
std::optional<Stops> shortest_stroke(const AllowedSet& allowed, const StrokeGeometry& geometry,
                                     const Head& head, ImageSpan image);

/// Stops moved outward to the ruler's graduations where the allowed set has room, else to the
/// nearest graduation inside it, else left as they are.
Stops on_graduations(const Ruler& ruler, const AllowedSet& allowed, const Stops& stops);

/// Two limits that leave no room between them.
struct Conflict {
    LimitKind outer = LimitKind::carriage_range;
    LimitKind inner = LimitKind::squeegee_run_past;
    End end = End::operator_side; ///< for separation: the end of `outer`, and `other` the other's
    LimitKind other = LimitKind::carriage_range; ///< separation only: outermost at the other end
    bool separation = false; ///< whether the bars' separation is what doesn't fit
    double by = 0.0;         ///< mm that are missing
};

/// The worst conflict of an empty set. Must not be called on one that isn't empty (asserted).
Conflict conflict_of(const AllowedSet& allowed);

/// A single change that would make room.
enum class ChangeKind { move_image, shorten_run_past, squeegee_angle, flood_angle, longer_frame,
                        longer_platen };
struct Change {
    ChangeKind kind = ChangeKind::move_image;
    /// move_image: mm, + toward the machine; shorten_run_past: mm less; angles: the new angle, rad;
    /// longer_frame and longer_platen: mm longer altogether, the centre staying where it is.
    double amount = 0.0;
    double moved = 0.0;  ///< mm that it moves an edge, the image or a limit: what "smallest" ranks
};

/// The smallest single change that opens an empty set, by the mm that it moves. Another frame or
/// platen comes after everything else, however small: nobody buys one to save 2 mm. Among equals
/// the first in ChangeKind's order. Angles are tried in half degrees within the profile's angles,
/// keeping the least bead between the edges and a winged flood bar no steeper than its wings
/// allow; a moved image stays inside the frame. The change is more than enough by a billionth of a mm, so that
/// carrying it out opens the set in spite of rounding. Nothing: no single change of these does, or
/// the set isn't empty.
std::optional<Change> smallest_change(const Job& job, const Head& head, ImageSpan image);

} // namespace carriageway
