// A blade from the side: what its angle and its gauge make of the edge.
//
// A holder pivots at a height L above its edge. Tilted by α from the vertical, the edge stands
// L·sin α behind the pivot and L·(1 − cos α) higher than with the holder upright. The gauge raises
// holder and edge together; lower marks are nearer the platen (common practice). Heights mm, up
// positive; the reference is the edge of an upright holder at mark 0.
#pragma once

#include <optional>

#include "core/press.h"

namespace carriageway {

/// Where an edge is, seen from the side.
struct BladePose {
    double shift = 0.0;  ///< mm that the edge trails its pivot, against its working stroke
    double height = 0.0; ///< mm above the reference
};

/// How far the edge trails its pivot: L·sin α, mm. Negative for a blade that leans the other way.
double edge_shift(const Holder& holder, double angle);

/// The pose at an angle and a gauge setting (marks, on or off the scale).
BladePose blade_pose(const Holder& holder, const Gauge& gauge, double angle, double marks);

/// How far tilting from `from` to `to` lifts the edge: L·(cos from − cos to). Positive is up.
double edge_lift(const Holder& holder, double from, double to);

/// Change of a gauge, in marks, that brings an edge back to its height after tilting. Lower marks
/// are nearer the platen, so a lifted edge wants lower marks: the result is then negative. A gauge
/// whose mark is worth nothing: 0.
double gauge_change_for_tilt(const Holder& holder, const Gauge& gauge, double from, double to);

/// What to do at the gauge after an angle was changed.
struct GaugeCorrection {
    double lift = 0.0;    ///< mm that the edge was lifted by tilting; negative: it came down
    double exact = 0.0;   ///< marks to change by, not rounded; negative: toward the platen
    double setting = 0.0; ///< marks to set: the graduation of the scale nearest to that
    double rest = 0.0;    ///< mm that the edge then stands higher than before; negative: lower
    bool on_scale = true; ///< false: the scale ends first, and `setting` is its end
};

/// The gauge setting that brings the edge back after tilting from `from` to `to`, for a gauge that
/// stands at `marks`. Graduations count from the lowest mark; the scale's highest graduation is the
/// last one that is not above `highest`. Nothing for a gauge whose mark or graduation is not
/// positive or whose scale is upside down, and for numbers that are not finite.
std::optional<GaugeCorrection> restore_edge_height(const Holder& holder, const Gauge& gauge,
                                                   double marks, double from, double to);

/// Clearance of a wing's tip over the mesh at an angle: L_w·sin(α_w − α). Negative: it digs in.
double wing_clearance(const Angles& angles, double angle);

/// Heights of the surfaces under an edge, mm above the bare platen.
struct SurfacesUnderEdge {
    double reference = 0.0; ///< the gauge's reference, as measured on the press
    double mesh = 0.0;      ///< the mesh as it hangs there, not pushed down
    double garment = 0.0;   ///< top of the compressed garment
};

/// How an edge stands to the mesh and the garment.
struct EdgeContact {
    double over_mesh = 0.0;    ///< mm of air; negative: it pushes the mesh down by as much
    double over_garment = 0.0; ///< mm left to the garment; negative: it is forced into it
    bool touches_mesh() const { return over_mesh <= 0.0; }
    bool reaches_garment() const { return over_garment <= 0.0; }
};

/// The edge against the mesh and the garment.
EdgeContact edge_contact(const BladePose& pose, const SurfacesUnderEdge& surfaces);

} // namespace carriageway
