// What the side view shows only of a head that runs: the print on the garment and the ink on the
// mesh, both gliding past a carriage that stays in the middle of the drawing.
#pragma once

#include <array>

#include "app/drawing/cycle_layer.h"
#include "app/drawing/side_layer.h"

namespace carriageway {

/// From millimetres to the box: heights near the mesh are exaggerated.
struct SideScale {
    Box box;
    double lo = 0.0;      ///< place along the arm, from the carriage reference, at the left
    double dp = 1.0;      ///< per mm
    double exaggeration = 1.0;
    float ground = 0.0f;  ///< y of the bare platen

    float x(double along) const { return box.x0 + static_cast<float>((along - lo) * dp); }
    float height(double mm) const { return ground - static_cast<float>(mm * dp * exaggeration); }
};

/// The mesh from the left to the right of the box, dp.
using MeshLine = std::array<Vec, 4>;

/// How far a lifted blade stands over the mesh, and a lifted head over its platen, mm, drawn to
/// scale: what it looks like, no number of a press.
inline constexpr double blade_lift = 6.0;
inline constexpr double head_lift = 14.0;

/// What of the image lies on the garment by now, through the image's middle: thick where it is
/// heavy, a hairline where it is starved, none where it is missed. Below it the image's extent.
void draw_print(const SideInput& input, const SideScale& scale, DrawingList& list);

/// Ink over the mesh, and the bead that a working blade pushes along.
void draw_ink(const SideInput& input, const SideScale& scale, const MeshLine& mesh,
              DrawingList& list);

} // namespace carriageway
