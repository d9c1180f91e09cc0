// The units that are read, and how many of the core's unit each of them is.
#pragma once

#include "core/fields.h"
#include "core/units.h"

namespace carriageway {

/// A unit as people type it, in small letters: `quantity` says of what it is one.
struct UnitName {
    Quantity quantity;
    const char* name;
    double in_core; ///< one of it, in the core's unit
};

inline constexpr double mm_per_foot = 12.0 * mm_per_inch;

inline constexpr UnitName unit_names[] = {
    {Quantity::length, "mm", 1.0},
    {Quantity::length, "cm", 10.0},
    {Quantity::length, "m", 1000.0},
    {Quantity::length, "in", mm_per_inch},
    {Quantity::length, "inch", mm_per_inch},
    {Quantity::length, "inches", mm_per_inch},
    {Quantity::length, "\"", mm_per_inch},
    {Quantity::length, "''", mm_per_inch},
    {Quantity::length, "pulg", mm_per_inch},
    {Quantity::length, "pulgada", mm_per_inch},
    {Quantity::length, "pulgadas", mm_per_inch},
    {Quantity::length, "ft", mm_per_foot},
    {Quantity::length, "foot", mm_per_foot},
    {Quantity::length, "feet", mm_per_foot},
    {Quantity::length, "'", mm_per_foot},
    {Quantity::length, "pie", mm_per_foot},
    {Quantity::length, "pies", mm_per_foot},
    {Quantity::thread, "um", 1.0},
    {Quantity::angle, "deg", rad_per_degree},
    {Quantity::angle, "degrees", rad_per_degree},
    {Quantity::angle, "grados", rad_per_degree},
    {Quantity::speed, "m/s", 1000.0},
    {Quantity::speed, "cm/s", 10.0},
    {Quantity::speed, "mm/s", 1.0},
    {Quantity::speed, "in/s", mm_per_inch},
    {Quantity::acceleration, "m/s^2", 1000.0},
    {Quantity::acceleration, "m/s2", 1000.0},
    {Quantity::acceleration, "mm/s^2", 1.0},
    {Quantity::acceleration, "mm/s2", 1.0},
    {Quantity::time, "s", 1.0},
    {Quantity::time, "ms", 0.001},
    {Quantity::tension, "n/cm", 1.0},
    {Quantity::mesh_count, "/cm", 1.0},
    {Quantity::mesh_count, "threads/cm", 1.0},
    {Quantity::mesh_count, "hilos/cm", 1.0},
    {Quantity::mesh_count, "/in", 10.0 / mm_per_inch},
    {Quantity::mesh_count, "threads/in", 10.0 / mm_per_inch},
    {Quantity::mesh_count, "hilos/pulgada", 10.0 / mm_per_inch},
    {Quantity::marks, "mark", 1.0},
    {Quantity::marks, "marks", 1.0},
    {Quantity::marks, "marca", 1.0},
    {Quantity::marks, "marcas", 1.0},
    {Quantity::pressure, "kpa", 1.0},
    {Quantity::pressure, "bar", kpa_per_bar},
    {Quantity::pressure, "psi", kpa_per_psi},
    {Quantity::share, "%", 0.01},
    {Quantity::temperature, "c", 1.0},
    {Quantity::volume, "cm^3", 1.0},
    {Quantity::volume, "cm3", 1.0},
    {Quantity::volume, "ml", 1.0},
    {Quantity::volume, "l", 1000.0},
    {Quantity::warming, "c/s", 1.0},
    {Quantity::turns, "turn", 1.0},
    {Quantity::turns, "turns", 1.0},
    {Quantity::turns, "vuelta", 1.0},
    {Quantity::turns, "vueltas", 1.0},
    {Quantity::jerk, "m/s^3", 1000.0},
    {Quantity::jerk, "m/s3", 1000.0},
    {Quantity::jerk, "mm/s^3", 1.0},
    {Quantity::jerk, "mm/s3", 1.0},
    {Quantity::hardness, "shore a", 1.0},
    {Quantity::hardness, "shore", 1.0},
};

} // namespace carriageway
