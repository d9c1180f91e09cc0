// Units of the core, and the factors that lead out of them.
//
// Inside the core every length is in mm, every angle in rad, time in s, speed in mm/s, pressure in
// kPa, tension and line load in N/cm. Only the edge of the program (files, screen, command line)
// converts, with the factors below.
#pragma once

#include <numbers>

namespace carriageway {

/// Exact by definition (NIST SP 811, B.8).
inline constexpr double mm_per_inch = 25.4;
/// 1 psi in kPa (NIST SP 811, B.8: 6894.757 Pa).
inline constexpr double kpa_per_psi = 6.894757;
inline constexpr double kpa_per_bar = 100.0;
inline constexpr double rad_per_degree = std::numbers::pi / 180.0;

constexpr double radians(double degrees) { return degrees * rad_per_degree; }
constexpr double degrees(double radians) { return radians / rad_per_degree; }

} // namespace carriageway
