// Where the two edges travel: from the stops to the swept bands.
//
// The carriage reference stands at c. The squeegee's edge is at c + squeegee_edge, the flood bar's
// at c + flood_edge. A holder tilted by α from the vertical moves its edge by L·sin α along the
// arm and lifts it by L·(1 − cos α); each edge trails its own working stroke, and the flood works
// on the stroke opposite to the print stroke.
#pragma once

#include "core/blade_pose.h"
#include "core/job.h"

namespace carriageway {

/// What a head's settings make of the stops: constants of one head, all in mm along y.
struct StrokeGeometry {
    double squeegee_edge = 0.0;   ///< e_s
    double flood_edge = 0.0;      ///< e_f
    double print_loss = 0.0;      ///< lost at the start of the print stroke while the blade drops
    double flood_loss = 0.0;      ///< lost at the start of the flood stroke
    double operator_overtravel = 0.0; ///< o_o
    double machine_overtravel = 0.0;  ///< o_m
    double operator_rest = 0.0; ///< c_o = operator stop + operator_rest
    double machine_rest = 0.0;  ///< c_m = machine stop + machine_rest
    double reach_lo = 0.0; ///< nearest to the operator that edges and holders stand from c
    double reach_hi = 0.0; ///< nearest to the machine
};

/// Works out the constants of one head on one press.
StrokeGeometry stroke_geometry(const PressProfile& press, const Head& head);

/// Offset of an edge from the carriage reference. `side` is -d_s for a squeegee and +d_s for a
/// flood bar, d_s being the sign of the print stroke.
double edge_offset(const Holder& holder, double angle, double side);

/// Rest positions of the carriage.
struct Ends {
    double operator_end = 0.0; ///< c_o
    double machine_end = 0.0;  ///< c_m
    double travel() const { return machine_end - operator_end; }
};
Ends ends_of(const StrokeGeometry& geometry, const Stops& stops);

/// The strip that the squeegee sweeps while it is down, and the flood's. Across the arm both are
/// centred on the arm (x = 0).
Rect squeegee_band(const StrokeGeometry& geometry, const Head& head, const Stops& stops);
Rect flood_band(const StrokeGeometry& geometry, const Head& head, const Stops& stops);

/// The end at which the flood stroke finishes.
End flood_finish(const Head& head);

} // namespace carriageway
