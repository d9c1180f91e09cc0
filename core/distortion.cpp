#include "core/distortion.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

/// Marks about their centres: nominal (p) and measured (q).
struct Moments {
    double xx = 0.0, xy = 0.0, yy = 0.0;           ///< Σ p·pᵀ
    double ux = 0.0, uy = 0.0, vx = 0.0, vy = 0.0; ///< Σ q·pᵀ: u is q's x, v its y
};

/// A mark about its centres.
struct Centred {
    Point from;
    Point to;
};

Centred centred(const MarkReading& mark, const RigidFit& fit) {
    return {{mark.nominal.x - fit.nominal_centre.x, mark.nominal.y - fit.nominal_centre.y},
            {mark.measured.x - fit.measured_centre.x, mark.measured.y - fit.measured_centre.y}};
}

Moments moments_of(std::span<const MarkReading> marks, const RigidFit& fit) {
    Moments sum;
    for (const MarkReading& mark : marks) {
        const auto [p, q] = centred(mark, fit);
        sum.xx += p.x * p.x;
        sum.xy += p.x * p.y;
        sum.yy += p.y * p.y;
        sum.ux += q.x * p.x;
        sum.uy += q.x * p.y;
        sum.vx += q.y * p.x;
        sum.vy += q.y * p.y;
    }
    return sum;
}

/// Sum of squares left, and the freedoms it has, as one standard deviation.
void explain(Distortion& distortion, double squares, int freedoms) {
    distortion.freedoms = std::max(0, freedoms);
    if (freedoms > 0) distortion.unexplained = std::sqrt(squares / freedoms);
}

/// Marks all over: the whole linear map.
Distortion plane_distortion(std::span<const MarkReading> marks, const RigidFit& fit,
                            const Moments& m, double reading) {
    const double det = m.xx * m.yy - m.xy * m.xy;
    // Rows of the map: (a, b) makes x, (c, d) makes y.
    const double a = (m.ux * m.yy - m.uy * m.xy) / det, b = (m.uy * m.xx - m.ux * m.xy) / det;
    const double c = (m.vx * m.yy - m.vy * m.xy) / det, d = (m.vy * m.xx - m.vx * m.xy) / det;
    Distortion distortion;
    distortion.mirrored = a * d - b * c < 0.0;
    const double turn = std::atan2(c - b, a + d);
    const double cosine = std::cos(turn), sine = std::sin(turn);
    const double x_deviation = reading * std::sqrt(m.yy / det);
    const double y_deviation = reading * std::sqrt(m.xx / det);
    distortion.across = {true, cosine * a + sine * c - 1.0, x_deviation};
    distortion.along = {true, cosine * d - sine * b - 1.0, y_deviation};
    distortion.skew = {true, (cosine * b + sine * d) + (cosine * c - sine * a),
                       std::hypot(x_deviation, y_deviation)};
    double squares = 0.0;
    for (const MarkReading& mark : marks) {
        const auto [p, q] = centred(mark, fit);
        const double dx = q.x - (a * p.x + b * p.y), dy = q.y - (c * p.x + d * p.y);
        squares += dx * dx + dy * dy;
    }
    explain(distortion, squares, 2 * static_cast<int>(marks.size()) - 6);
    return distortion;
}

/// Marks on one line: the growth along it.
Distortion line_distortion(std::span<const MarkReading> marks, const RigidFit& fit,
                           const Moments& m, double reading) {
    Distortion distortion;
    distortion.line_angle = 0.5 * std::atan2(2.0 * m.xy, m.xx - m.yy);
    const double ex = std::cos(distortion.line_angle), ey = std::sin(distortion.line_angle);
    // The same direction on the print.
    const double angle = distortion.line_angle + fit.motion.rotation;
    const double fx = std::cos(angle), fy = std::sin(angle);
    double length = 0.0, product = 0.0;
    for (const MarkReading& mark : marks) {
        const auto [p, q] = centred(mark, fit);
        const double along = p.x * ex + p.y * ey;
        length += along * along;
        product += along * (q.x * fx + q.y * fy);
    }
    const double growth = product / length - 1.0;
    distortion.line = {true, growth, reading / std::sqrt(length)};
    const double from_x = std::abs(distortion.line_angle);
    if (from_x < line_slack) distortion.across = distortion.line;
    if (from_x > std::acos(0.0) - line_slack) distortion.along = distortion.line;
    double squares = 0.0;
    for (const MarkReading& mark : marks) {
        const auto [p, q] = centred(mark, fit);
        const Point left = residual_of(fit, mark);
        const double along = growth * (p.x * ex + p.y * ey);
        squares += std::pow(left.x - along * fx, 2) + std::pow(left.y - along * fy, 2);
    }
    explain(distortion, squares, 2 * static_cast<int>(marks.size()) - 4);
    return distortion;
}

} // namespace

Distortion distortion_of(std::span<const MarkReading> marks, const RigidFit& fit, double reading,
                         double least_width) {
    if (!fit.turns) return {};
    const Moments m = moments_of(marks, fit);
    const double middle = 0.5 * (m.xx + m.yy);
    const double wide = middle + std::hypot(0.5 * (m.xx - m.yy), m.xy);
    // The product of the two is the determinant: without the difference of near equals.
    const double narrow = (m.xx * m.yy - m.xy * m.xy) / wide;
    constexpr double rounding = 1e-9; // of the spread: a line but for rounding
    const double least = std::max(least_width, rounding * std::sqrt(wide));
    if (!(narrow > least * least)) return line_distortion(marks, fit, m, reading);
    return plane_distortion(marks, fit, m, reading);
}

void Causes::add(LikelyCause cause) {
    for (int i = 0; i < count; ++i)
        if (kinds[static_cast<std::size_t>(i)] == cause) return;
    kinds[static_cast<std::size_t>(count++)] = cause;
}

bool stands_out(const DistortionPart& part) {
    return part.known && std::abs(part.value) > distortion_deviations * part.deviation;
}

Causes causes_of(const Distortion& distortion) {
    Causes causes;
    const DistortionPart& along = distortion.along;
    const DistortionPart& across = distortion.across;
    const bool grows_along = stands_out(along), grows_across = stands_out(across);
    const bool alike = grows_along && grows_across &&
                       std::abs(along.value - across.value) <=
                           distortion_deviations * std::hypot(along.deviation, across.deviation);
    const bool slanted = !along.known && !across.known && stands_out(distortion.line);
    if (alike || slanted) {
        causes.add(LikelyCause::film);
        causes.add(LikelyCause::tension);
    } else if (grows_along) {
        causes.add(LikelyCause::drag);
        causes.add(LikelyCause::off_contact);
        causes.add(LikelyCause::tension);
    }
    if (grows_across || stands_out(distortion.skew)) {
        causes.add(LikelyCause::tension);
        causes.add(LikelyCause::film);
    }
    return causes;
}

} // namespace carriageway
