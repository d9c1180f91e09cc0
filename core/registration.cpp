#include "core/registration.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace carriageway {

namespace {

using Kind = RegistrationFaultKind;
using MaybeFault = std::optional<RegistrationFault>;

bool finite(const MarkReading& mark) {
    return std::isfinite(mark.nominal.x) && std::isfinite(mark.nominal.y) &&
           std::isfinite(mark.measured.x) && std::isfinite(mark.measured.y);
}

double far_out(const MarkReading& mark) {
    return std::max(std::hypot(mark.nominal.x, mark.nominal.y),
                    std::hypot(mark.measured.x, mark.measured.y));
}

/// Whether the numbers can be reckoned with at all.
MaybeFault number_fault(std::span<const MarkReading> marks, double reading) {
    if (marks.empty()) return RegistrationFault{Kind::no_marks, 0, 0, 0.0, 1.0};
    if (marks.size() > most_marks)
        return RegistrationFault{Kind::too_many_marks, 0, 0, static_cast<double>(marks.size()),
                                 static_cast<double>(most_marks)};
    if (!std::isfinite(reading) || !(reading > 0.0))
        return RegistrationFault{Kind::reading_error, 0, 0, reading, 0.0};
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (!finite(marks[i])) return RegistrationFault{Kind::not_finite, i, i, 0.0, 0.0};
        const double distance = far_out(marks[i]);
        if (distance > farthest_mark)
            return RegistrationFault{Kind::too_far, i, i, distance, farthest_mark};
    }
    for (std::size_t i = 0; i < marks.size(); ++i)
        for (std::size_t j = i + 1; j < marks.size(); ++j)
            if (marks[i].nominal == marks[j].nominal)
                return RegistrationFault{Kind::duplicate, i, j, 0.0, 0.0};
    return std::nullopt;
}

double spread_of(std::span<const MarkReading> marks) {
    double x = 0.0, y = 0.0, squares = 0.0;
    const auto count = static_cast<double>(marks.size());
    for (const MarkReading& mark : marks) {
        x += mark.nominal.x / count;
        y += mark.nominal.y / count;
    }
    for (const MarkReading& mark : marks)
        squares += std::pow(mark.nominal.x - x, 2) + std::pow(mark.nominal.y - y, 2);
    return std::sqrt(squares);
}

/// Growth or skew beyond anything that a print has, whatever the reading error.
MaybeFault size_fault(const Distortion& distortion) {
    for (const DistortionPart& part :
         {distortion.along, distortion.across, distortion.skew, distortion.line}) {
        const double sure = std::abs(part.value) - far_deviations * part.deviation;
        if (part.known && sure > most_distortion)
            return RegistrationFault{Kind::size_implausible, 0, 0, part.value, most_distortion};
    }
    return std::nullopt;
}

/// Whether the marks can have printed as they were read.
MaybeFault fit_fault(const Registration& registration) {
    const Distortion& distortion = registration.distortion;
    if (distortion.mirrored) return RegistrationFault{Kind::mirrored, 0, 0, 0.0, 0.0};
    const double rotation = registration.fit.motion.rotation;
    if (std::abs(rotation) > most_rotation)
        return RegistrationFault{Kind::turned_too_far, 0, 0, rotation, most_rotation};
    if (const MaybeFault fault = size_fault(distortion)) return fault;
    const double limit = far_deviations * registration.reading;
    if (distortion.freedoms > 0 && distortion.unexplained > limit) {
        std::size_t worst = 0;
        const auto length = [&registration](std::size_t i) {
            return std::hypot(registration.residuals[i].x, registration.residuals[i].y);
        };
        for (std::size_t i = 1; i < registration.residuals.size(); ++i)
            if (length(i) > length(worst)) worst = i;
        return RegistrationFault{Kind::marks_disagree, worst, worst, distortion.unexplained, limit};
    }
    return std::nullopt;
}

/// Variance of the fitted rotation per variance of a reading: dθ = (C·dS − S·dC)/(C² + S²).
double rotation_variance(const RigidFit& fit) {
    if (!fit.turns) return 0.0;
    const double ratio = fit.spread / fit.strength;
    return ratio * ratio;
}

/// Standard deviation of a coordinate that stands `lever` mm from the marks' centre.
double deviation_at(const Registration& registration, double lever) {
    const double centre = 1.0 / static_cast<double>(registration.marks.size());
    return registration.reading *
           std::sqrt(centre + lever * lever * rotation_variance(registration.fit));
}

void add_sizes(Registration& registration) {
    std::vector<Point> errors;
    errors.reserve(registration.marks.size());
    for (const MarkReading& mark : registration.marks) {
        errors.push_back(error_of(mark));
        registration.residuals.push_back(residual_of(registration.fit, mark));
    }
    const ErrorSize error = size_of(errors), residual = size_of(registration.residuals);
    registration.error_rms = error.rms;
    registration.error_max = error.max;
    registration.residual_rms = residual.rms;
    registration.residual_max = residual.max;
}

} // namespace

std::variant<Registration, RegistrationFault> register_marks(std::span<const MarkReading> marks,
                                                             const Spread& reading_error) {
    const double reading = standard_deviation(reading_error);
    if (const MaybeFault fault = number_fault(marks, reading)) return *fault;
    const double spread = spread_of(marks);
    if (marks.size() > 1 && spread < least_spread * reading)
        return RegistrationFault{Kind::too_close, 0, 0, spread, least_spread * reading};
    const std::optional<RigidFit> fit = best_motion(marks);
    if (!fit) return RegistrationFault{Kind::no_rotation, 0, 0, 0.0, 0.0};
    Registration registration;
    registration.marks.assign(marks.begin(), marks.end());
    registration.reading = reading;
    registration.fit = *fit;
    registration.distortion = distortion_of(marks, *fit, reading, least_spread * reading);
    add_sizes(registration);
    if (const MaybeFault fault = fit_fault(registration)) return *fault;
    // The motion's x and y are where it takes the origin, about the centre of the print.
    const Point lever{fit->motion.x - fit->measured_centre.x,
                      fit->motion.y - fit->measured_centre.y};
    registration.deviation = {reading * std::sqrt(rotation_variance(*fit)),
                              deviation_at(registration, lever.y),
                              deviation_at(registration, lever.x)};
    return registration;
}

double deviation_along(const Registration& registration, double x) {
    return deviation_at(registration, x - registration.fit.nominal_centre.x);
}

double deviation_across(const Registration& registration, double y) {
    return deviation_at(registration, y - registration.fit.nominal_centre.y);
}

double deviation_of_centre(const Registration& registration) {
    return deviation_at(registration, 0.0);
}

double chance_limit(int freedoms) {
    if (freedoms < 1) return 0.0;
    constexpr double one_sided = 1.6906; // a normal error exceeds it in one case of 22
    const double part = 2.0 / (9.0 * freedoms);
    return freedoms * std::pow(1.0 - part + one_sided * std::sqrt(part), 3);
}

bool errors_stand_out(const Registration& registration) {
    const auto count = static_cast<double>(registration.marks.size());
    const double over = registration.error_rms / registration.reading;
    return count * over * over > chance_limit(2 * static_cast<int>(registration.marks.size()));
}

ErrorSize size_of(std::span<const Point> errors) {
    ErrorSize size;
    if (errors.empty()) return size;
    double squares = 0.0;
    for (const Point& error : errors) {
        squares += error.x * error.x + error.y * error.y;
        size.max = std::max(size.max, std::hypot(error.x, error.y));
    }
    size.rms = std::sqrt(squares / static_cast<double>(errors.size()));
    return size;
}

} // namespace carriageway
