#include "core/pressure.h"

#include <cmath>
#include <numbers>

namespace carriageway {

namespace {

constexpr double mm_per_cm = 10.0;

/// kPa times mm² in N.
constexpr double newton = 1e-3;

bool positive(double value) { return std::isfinite(value) && value > 0.0; }
bool not_negative(double value) { return std::isfinite(value) && value >= 0.0; }

bool usable(const Cylinders& cylinders) {
    return positive(cylinders.bore) && not_negative(cylinders.rod) &&
           cylinders.rod < cylinders.bore && cylinders.count >= 1;
}

/// Newtons per kPa of all cylinders, of a bore with what a rod takes away.
double force_per_kpa(const Cylinders& cylinders, double rod) {
    const double area = 0.25 * std::numbers::pi * (cylinders.bore * cylinders.bore - rod * rod);
    return newton * area * cylinders.count;
}

} // namespace

std::optional<double> thrust(const Cylinders& cylinders, double pressure) {
    if (!usable(cylinders) || !not_negative(pressure)) return std::nullopt;
    return pressure * force_per_kpa(cylinders, 0.0);
}

std::optional<double> retract_force(const Cylinders& cylinders, double pressure) {
    if (!usable(cylinders) || !not_negative(pressure)) return std::nullopt;
    return pressure * force_per_kpa(cylinders, cylinders.rod);
}

std::optional<double> line_load(const Cylinders& cylinders, double pressure, double blade_length,
                                BladeRest rest) {
    const auto force = thrust(cylinders, pressure);
    if (!force || !positive(blade_length) || rest == BladeRest::on_height_stop) return std::nullopt;
    return *force / (blade_length / mm_per_cm);
}

std::optional<double> pressure_for_line_load(const Cylinders& cylinders, double load,
                                             double blade_length) {
    if (!usable(cylinders) || !not_negative(load) || !positive(blade_length)) return std::nullopt;
    return load * (blade_length / mm_per_cm) / force_per_kpa(cylinders, 0.0);
}

std::optional<double> pressure_for_blade(double pressure, double from, double to) {
    if (!not_negative(pressure) || !positive(from) || !positive(to)) return std::nullopt;
    return pressure * to / from;
}

HoldDown hold_down(std::optional<double> load, double needed) {
    if (!load || !std::isfinite(*load) || !std::isfinite(needed)) return HoldDown::not_known;
    return *load > needed ? HoldDown::holds_mesh : HoldDown::not_enough;
}

} // namespace carriageway
