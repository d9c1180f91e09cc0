#include "core/taut_mesh.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace carriageway {

namespace {

/// Gap over length up to which the force grows from the middle to the frame.
constexpr double deepest = 1.0 / 3.0;

bool positive(double value) { return std::isfinite(value) && value > 0.0; }

bool usable(const MeshSpan& span) { return positive(span.length()) && positive(span.tension); }

/// The two parts of the mesh beside an edge.
struct Parts {
    double a = 0.0;
    double b = 0.0;
    double gap = 0.0;
};

std::optional<Parts> parts_at(const MeshSpan& span, double gap, double y) {
    if (!usable(span) || !std::isfinite(gap) || !(y > span.lo && y < span.hi)) return std::nullopt;
    return Parts{y - span.lo, span.hi - y, std::max(0.0, gap)};
}

/// Vertical share of the tension of a part `flat` long, pushed down by `gap`, which isn't 0.
double slope_of(double flat, double gap) { return gap / std::hypot(flat, gap); }

/// How much longer a part is than flat; as a quotient, because the difference would cancel.
double lengthened(double flat, double gap) {
    return gap > 0.0 ? gap * gap / (std::hypot(flat, gap) + flat) : 0.0;
}

/// Equal strain as something to bring to zero: √(Y² + g²)·b − √((l − Y)² + g²)·a, and its
/// derivative. It grows all the way from Y = 0 to Y = l.
struct Balance {
    double length, gap, a, b;

    double at(double landing) const {
        return std::hypot(landing, gap) * b - std::hypot(length - landing, gap) * a;
    }
    double rate(double landing) const {
        return landing * b / std::hypot(landing, gap) +
               (length - landing) * a / std::hypot(length - landing, gap);
    }
};

/// Y at which the balance is zero, from a first guess. Newton's step where it stays inside the
/// bracket and at least halves the step before it; the bracket's middle otherwise. So it always
/// ends, and near the root as fast as Newton does.
double balanced(const Balance& balance, double guess) {
    double lo = 0.0, hi = balance.length;
    double landing = std::clamp(guess, lo, hi);
    double last = hi - lo;
    const double enough = 2.0 * std::numeric_limits<double>::epsilon() * balance.length;
    constexpr int most_steps = 200; // 60 halvings reach the last digit
    for (int i = 0; i < most_steps; ++i) {
        const double off = balance.at(landing);
        if (off == 0.0) break;
        (off < 0.0 ? lo : hi) = landing;
        double next = landing - off / balance.rate(landing);
        if (!(next > lo && next < hi) || !(std::abs(next - landing) < 0.5 * last))
            next = lo + 0.5 * (hi - lo);
        last = std::abs(next - landing);
        landing = next;
        if (last <= enough) break;
    }
    return landing;
}

double small_shift(const Parts& parts) {
    // 1/b − 1/a as one quotient: near the middle the difference would cancel.
    return 0.5 * parts.gap * parts.gap * (parts.a - parts.b) / (parts.a * parts.b);
}

MeshShift less(const MeshShift& from, const MeshShift& what) {
    return {from.height - what.height, from.drag - what.drag};
}

} // namespace

std::optional<double> line_force_small(const MeshSpan& span, double gap, double y) {
    const auto parts = parts_at(span, gap, y);
    if (!parts) return std::nullopt;
    return span.tension * parts->gap * (1.0 / parts->a + 1.0 / parts->b);
}

std::optional<double> line_force(const MeshSpan& span, double gap, double y) {
    const auto parts = parts_at(span, gap, y);
    if (!parts) return std::nullopt;
    if (parts->gap == 0.0) return 0.0;
    return span.tension * (slope_of(parts->a, parts->gap) + slope_of(parts->b, parts->gap));
}

std::optional<double> elongation(const MeshSpan& span, double gap, double y) {
    const auto parts = parts_at(span, gap, y);
    if (!parts) return std::nullopt;
    return lengthened(parts->a, parts->gap) + lengthened(parts->b, parts->gap);
}

std::optional<double> strain(const MeshSpan& span, double gap, double y) {
    const auto longer = elongation(span, gap, y);
    if (!longer) return std::nullopt;
    return *longer / span.length();
}

std::optional<double> tension_rise(const MeshSpan& span, double gap, double y,
                                   const MeshAssumptions& assumed) {
    const auto strained = strain(span, gap, y);
    if (!strained || !positive(assumed.stiffness)) return std::nullopt;
    return assumed.stiffness * *strained;
}

std::optional<WorstPoint> worst_point(const MeshSpan& span, double gap, double y0, double y1) {
    if (!usable(span) || !std::isfinite(y0) || !std::isfinite(y1) ||
        !(gap <= deepest * span.length()))
        return std::nullopt;
    const double from = std::min(y0, y1), to = std::max(y0, y1);
    const double lo = std::max(from, span.lo), hi = std::min(to, span.hi);
    if (!(lo < span.hi) || !(hi > span.lo)) return std::nullopt;
    const double y = lo - span.lo <= span.hi - hi ? lo : hi;
    WorstPoint worst{y, 0.0, from < span.lo || to > span.hi};
    if (gap > 0.0)
        worst.line_force = span.tension * (slope_of(y - span.lo, gap) + slope_of(span.hi - y, gap));
    return worst;
}

std::optional<double> shift_by_height_small(const MeshSpan& span, double gap, double y) {
    const auto parts = parts_at(span, gap, y);
    if (!parts) return std::nullopt;
    return small_shift(*parts);
}

std::optional<double> shift_by_height(const MeshSpan& span, double gap, double y) {
    const auto parts = parts_at(span, gap, y);
    if (!parts) return std::nullopt;
    if (parts->gap == 0.0) return 0.0;
    const Balance balance{span.length(), parts->gap, parts->a, parts->b};
    // Lands inside the opening only where the balance changes sign between the frame's edges.
    if (!(balance.at(0.0) < 0.0) || !(balance.at(span.length()) > 0.0)) return std::nullopt;
    return balanced(balance, parts->a + small_shift(*parts)) - parts->a;
}

std::optional<double> shift_by_drag(const MeshSpan& span, double line_load, Direction stroke,
                                    double y, const MeshAssumptions& assumed) {
    const auto parts = parts_at(span, 0.0, y);
    if (!parts || !std::isfinite(line_load) || line_load < 0.0 || !positive(assumed.stiffness) ||
        !std::isfinite(assumed.friction) || assumed.friction < 0.0)
        return std::nullopt;
    return sign_of(stroke) * assumed.friction * line_load * parts->a * parts->b /
           (span.length() * assumed.stiffness);
}

std::optional<MeshShift> mesh_shift(const MeshContact& contact, double y) {
    const auto height = shift_by_height(contact.span, contact.gap, y);
    const auto drag =
        shift_by_drag(contact.span, contact.line_load, contact.stroke, y, contact.assumed);
    if (!height || !drag) return std::nullopt;
    return MeshShift{*height, *drag};
}

std::optional<MeshShift> print_growth(const MeshContact& contact, double y1, double y2) {
    if (!(y1 <= y2)) return std::nullopt;
    const auto near = mesh_shift(contact, y1);
    const auto far = mesh_shift(contact, y2);
    if (!near || !far) return std::nullopt;
    return less(*far, *near);
}

std::optional<MeshShift> length_difference(const MeshContact& head, const MeshContact& base,
                                           double y1, double y2) {
    const auto ours = print_growth(head, y1, y2);
    const auto theirs = print_growth(base, y1, y2);
    if (!ours || !theirs) return std::nullopt;
    return less(*ours, *theirs);
}

} // namespace carriageway
