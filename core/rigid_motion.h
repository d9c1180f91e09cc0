// Motions of a screen in its plane: turned, then moved, never stretched; and the one that best
// carries some marks onto others.
//
// Axes as in geometry.h, mm and rad. A motion takes p to R(rotation)·p + (x, y): it turns about the
// origin, counter-clockwise seen from above, before it moves.
#pragma once

#include <optional>
#include <span>

#include "core/readings.h"

namespace carriageway {

/// A turn about the origin and then a move.
struct RigidMotion {
    double rotation = 0.0; ///< rad, counter-clockwise
    double x = 0.0;        ///< mm
    double y = 0.0;        ///< mm
    bool operator==(const RigidMotion&) const = default;
};

/// Where a motion takes a point.
Point moved(const RigidMotion& motion, const Point& point);

/// The motion that undoes another.
RigidMotion inverse_of(const RigidMotion& motion);

/// A motion fitted to marks, and what its uncertainty needs.
struct RigidFit {
    RigidMotion motion;    ///< from where the marks should be to where they printed
    Point nominal_centre;  ///< mean of the nominal places
    Point measured_centre; ///< mean of the measured places
    bool turns = false;    ///< false for a single mark: its rotation is 0 because none is known
    double spread = 0.0;   ///< √Σr², r from the nominal centre, mm
    double strength = 0.0; ///< √(C² + S²), mm²: what holds the rotation
};

/// The motion that carries the nominal marks closest to the measured ones: least squares, no
/// scale, no reflection. θ = atan2(S, C) with C = Σ(x·x′ + y·y′) and S = Σ(x·y′ − y·x′) about the
/// centres (the plane case of Umeyama 1991, IEEE PAMI 13(4):376-380). Nothing when there is no
/// mark, one isn't finite, or no rotation is defined: all marks in one place, or C = S = 0 but for
/// rounding, as with a mirrored square. It asks nothing more of the marks; register_marks() does.
std::optional<RigidFit> best_motion(std::span<const MarkReading> marks);

/// Where a mark printed less where the fitted motion puts it, mm.
Point residual_of(const RigidFit& fit, const MarkReading& mark);

} // namespace carriageway
