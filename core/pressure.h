// Air pressure, the thrust that it makes, and the line load that the thrust makes along a blade.
//
// Pressure kPa above the air outside, lengths mm, force N, line load N per cm of blade. Friction of
// seals and guides and the weight of holder and blade are left out: a real press gives less.
// Thrust is line load only while nothing else carries the blade.
#pragma once

#include <array>
#include <optional>

#include "core/source.h"

namespace carriageway {

/// The cylinders that press one blade down, all alike.
struct Cylinders {
    double bore = 32.0; ///< D, mm
    double rod = 12.0;  ///< d, mm, below the bore; 0 for a cylinder without one
    int count = 1;      ///< at least 1
};

// A pressure that is negative, cylinders or a blade that can't be, and numbers that are not finite
// give nothing, below.

/// Thrust of all cylinders as their rods come out: p·π·D²/4 each (any handbook of pneumatics), N.
std::optional<double> thrust(const Cylinders& cylinders, double pressure);

/// Pull of all cylinders as their rods go in: p·π·(D² − d²)/4 each, N.
std::optional<double> retract_force(const Cylinders& cylinders, double pressure);

/// What carries the blade while it prints.
enum class BladeRest {
    on_mesh,        ///< the mesh and what lies under it: all thrust is line load
    on_height_stop, ///< a stop takes up the thrust; what is left for the mesh isn't known
};

/// Thrust over the blade's length (mm), N/cm. A blade on its height stop: nothing, because thrust
/// isn't line load there.
std::optional<double> line_load(const Cylinders& cylinders, double pressure, double blade_length,
                                BladeRest rest);

/// Pressure that gives a line load (N/cm, not negative) on a blade of this length, kPa.
std::optional<double> pressure_for_line_load(const Cylinders& cylinders, double load,
                                             double blade_length);

/// Pressure that gives a blade of length `to` the line load that `pressure` gives one of length
/// `from`, with the same cylinders: p·to/from, kPa.
std::optional<double> pressure_for_blade(double pressure, double from, double to);

/// What a line load says about a needed line force (taut_mesh.h).
enum class HoldDown {
    not_known,  ///< no line load, or numbers that are not finite
    not_enough, ///< the mesh isn't pushed down to the garment
    holds_mesh, ///< it is. Necessary, and far from enough to clear the ink from the mesh.
};

/// Compares a line load with the line force needed at the worst point of a stroke, both N/cm. The
/// load must exceed the force.
HoldDown hold_down(std::optional<double> load, double needed);

/// A cylinder size.
struct CylinderSize {
    double bore = 0.0;
    double rod = 0.0;
};

/// Bores of ISO 15552, with the rod that belongs to each from memory. mm.
inline constexpr std::array<CylinderSize, 11> iso_15552_sizes{{{32, 12},
                                                               {40, 16},
                                                               {50, 20},
                                                               {63, 20},
                                                               {80, 25},
                                                               {100, 25},
                                                               {125, 32},
                                                               {160, 40},
                                                               {200, 40},
                                                               {250, 50},
                                                               {320, 63}}};

/// Pressures that are usual, kPa: advice, never a limit.
struct PressureRange {
    double least = 0.0;
    double most = 0.0;
    SourceKind source = SourceKind::common_practice;
    bool contains(double pressure) const { return pressure >= least && pressure <= most; }
};
inline constexpr PressureRange usual_squeegee_pressure{170.0, 350.0, SourceKind::common_practice};
inline constexpr PressureRange usual_flood_pressure{100.0, 200.0, SourceKind::common_practice};

} // namespace carriageway
