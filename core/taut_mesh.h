// The mesh as a taut string under the squeegee's edge: the force that holds it down, and where a
// point of the image lands.
//
// Seen from the side, the mesh spans the opening from `lo` to `hi` along the arm (head's axes,
// mm). The edge pushes it down by the gap at y, which leaves two straight parts, a = y − lo and
// b = hi − y long. Tension, line force and line load are N per cm of width. Threads across the
// arm, the blade's finite length and the mesh beyond its ends are left out.
#pragma once

#include <optional>

#include "core/press.h"

namespace carriageway {

/// The mesh along the arm.
struct MeshSpan {
    double lo = -355.5;    ///< inner edge of the frame at the operator's side
    double hi = 355.5;     ///< at the machine's side
    double tension = 25.0; ///< along the arm, N/cm, above 0
    double length() const { return hi - lo; }
};

/// What no press tells and the shifts below assume. All three of them, free slip included (see
/// shift_by_height), must be said where a shift is shown. Figures: common practice, no source.
struct MeshAssumptions {
    double friction = 0.3;    ///< of the edge on the inked mesh
    double stiffness = 700.0; ///< K: N/cm per unit strain, above 0
};

// In all that follows: a span that is empty, a tension or stiffness that is not positive, a y that
// does not lie between the frame's edges, and numbers that are not finite give nothing. A gap that
// is not positive pushes nothing down: the mesh lies on the garment, and force, elongation and
// shift are 0.

/// Line force that holds the mesh down, for gaps small against a and b: T·g·(1/a + 1/b), N/cm.
/// (Any text on the vibrating string.)
std::optional<double> line_force_small(const MeshSpan& span, double gap, double y);

/// The same with the vertical components of the two parts summed exactly:
/// T·g·(1/√(a² + g²) + 1/√(b² + g²)). The tension is taken as set; see tension_rise.
std::optional<double> line_force(const MeshSpan& span, double gap, double y);

/// How much longer the mesh is when pushed down: √(a² + g²) + √(b² + g²) − a − b, mm.
std::optional<double> elongation(const MeshSpan& span, double gap, double y);

/// Elongation over the span's length.
std::optional<double> strain(const MeshSpan& span, double gap, double y);

/// Tension that the elongation adds, N/cm: stiffness times strain. Small beside the tension for
/// any usual gap; shown so that it can be seen to be.
std::optional<double> tension_rise(const MeshSpan& span, double gap, double y,
                                   const MeshAssumptions& assumed = {});

/// Where along a stroke the mesh is hardest to hold down.
struct WorstPoint {
    double y = 0.0;
    double line_force = 0.0;  ///< N/cm needed there
    bool meets_frame = false; ///< the stroke leaves the opening: counted up to the frame's edge
};

/// The largest line_force of the stroke from y0 to y1 (either way round) inside the opening. The
/// force is least in the middle and grows toward both ends, so it is that at the end nearer to the
/// frame; only within gap³/length² of the frame, less than a thread, does it fall again, by less
/// than half of (gap/length)⁴ of itself. Holds for gaps up to a third of the length, beyond which,
/// and for a stroke outside the opening, there is no answer.
std::optional<WorstPoint> worst_point(const MeshSpan& span, double gap, double y0, double y1);

/// How far beyond its place on the film a point of the image lands, toward the machine, for small
/// gaps: g²/2·(1/b − 1/a). `y` is the point's place on the screen as it hangs. Too little by about
/// (shift/gap)² of itself: less than 0.07 % where the gap is under a twentieth of a and b
/// (tests/reference asks for 1 %).
std::optional<double> shift_by_height_small(const MeshSpan& span, double gap, double y);

/// The same exactly. The model assumes that the mesh slips freely under the edge, so that both
/// parts are strained alike: the point a from one edge lands where √(Y² + g²)/a =
/// √((l − Y)² + g²)/b, Y being its landing place from the same edge. Solved for Y by Newton's steps
/// inside a bracket that halves wherever a step would leave it or gains too little; right to about
/// 1e-14 of the length. A point so near the frame that the edge can't press it down inside the
/// opening gives nothing.
std::optional<double> shift_by_height(const MeshSpan& span, double gap, double y);

/// How far the blade drags the point along its stroke, toward the machine positive:
/// d·μ·q·a·b/(l·K), with the line load q in N/cm, not negative.
std::optional<double> shift_by_drag(const MeshSpan& span, double line_load, Direction stroke,
                                    double y, const MeshAssumptions& assumed = {});

/// How one head's squeegee works its mesh.
struct MeshContact {
    MeshSpan span;
    double gap = 2.0;       ///< over the compressed garment, mm
    double line_load = 3.0; ///< N/cm
    Direction stroke = Direction::toward_operator;
    MeshAssumptions assumed;
};

/// A shift, or a growth, by cause; mm.
struct MeshShift {
    double height = 0.0; ///< from the gap's geometry, exactly
    double drag = 0.0;
    double total() const { return height + drag; }
};

/// Where a point of the image lands less where it is on the film; toward the machine positive.
std::optional<MeshShift> mesh_shift(const MeshContact& contact, double y);

/// How much longer than on the film the print is between y1 and y2 (y1 < y2): u(y2) − u(y1).
/// Negative: shorter. Drag moves both ends of a centred image alike and so adds nothing there.
/// y1 beyond y2: nothing.
std::optional<MeshShift> print_growth(const MeshContact& contact, double y1, double y2);

/// How much longer a head prints the same stretch of film than the base head does.
std::optional<MeshShift> length_difference(const MeshContact& head, const MeshContact& base,
                                           double y1, double y2);

} // namespace carriageway
