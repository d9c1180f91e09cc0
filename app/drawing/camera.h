// From the press plane (mm) to the screen (dp), and back.
//
// Press plane: origin at the press centre, x to the right, y up (away from the operator who stands
// at the bottom of the drawing). Each head has axes of its own in that plane (geometry.h); a
// camera is turned so that a chosen head stands upright with its operator side at the bottom.
#pragma once

#include "app/drawing/box.h"
#include "core/job.h"

namespace carriageway {

/// Where a head's axes lie in the press plane.
struct HeadPlace {
    Point origin;  ///< of the head's axes, mm
    Point along;   ///< unit vector of the head's +y (toward the press centre)
    Point across;  ///< unit vector of the head's +x
    Point to_press(Point in_head) const {
        return {origin.x + across.x * in_head.x + along.x * in_head.y,
                origin.y + across.y * in_head.x + along.y * in_head.y};
    }
};

/// Place of the head on station `station`: station 1 at the top, the others in the order in which
/// a garment reaches them.
HeadPlace place_of_station(const PressProfile& press, int station);

/// A similarity: turn, scale and shift.
struct Camera {
    Point centre;        ///< point of the press plane at the middle of the view, mm
    double scale = 0.2;  ///< dp per mm, above 0
    double turn = 0.0;   ///< rad by which the plane is turned on screen, counter-clockwise
    bool operator==(const Camera&) const = default;
};

/// A camera together with the part of the screen that it fills.
struct Projection {
    Camera camera;
    Box view;
    Vec to_screen(Point in_press) const;
    /// The same, not rounded to what a Vec holds.
    Point on_screen(Point in_press) const;
    /// What a step of the press plane, mm, comes to on screen, dp.
    Point step_on_screen(Point step) const;
    Point to_press(Vec on_screen) const;
    float size(double mm) const { return static_cast<float>(mm * camera.scale); }
};

/// The camera that shows the whole press in a view with room for labels round it.
Camera camera_for_press(const PressProfile& press, Box view, float room);

/// The camera that shows one head upright with its rail; `above` and `below`: dp to keep free.
Camera camera_for_head(const Job& job, const Head& head, Box view, float rail_room);

/// Between two cameras, `share` 0 to 1, turning the short way round and zooming evenly.
Camera between(const Camera& from, const Camera& to, double share);

/// Zooms by `factor` so that the press point under `anchor` stays there.
Camera zoomed(const Projection& projection, double factor, Vec anchor);

/// Moves the drawing by a screen distance.
Camera panned(const Projection& projection, Vec by);

inline constexpr double least_scale = 0.03; ///< dp per mm
inline constexpr double most_scale = 8.0;

} // namespace carriageway
