#include <algorithm>
#include <array>

#include "core/limits.h"

namespace carriageway {
namespace {

/// Middle of what both bands cover, for a stroke whose stops stand at 0 and at `length`.
double covered_middle(const StrokeGeometry& geometry, const Head& head, double length) {
    const Stops stops{0.0, length};
    const Rect squeegee = squeegee_band(geometry, head, stops);
    const Rect flood = flood_band(geometry, head, stops);
    return 0.5 * (std::max(squeegee.lo, flood.lo) + std::min(squeegee.hi, flood.hi));
}

/// A place that a stop may be put on, and how little that is liked.
struct Choice {
    double at = 0.0;
    int cost = 0;
    bool allowed = true;
};

// An exact place off the graduations costs more than both stops on inner ones.
constexpr int inward_cost = 1;
constexpr int exact_cost = 3;

/// What a mark may miss of a limit and still satisfy it. Half the ruler's slack, so that rounding
/// stays below what findings call a difference.
constexpr double mark_slack = 0.5 * graduation_slack;

using Choices = std::array<Choice, 3>;

Choices choices_of(const Ruler& ruler, const StopInterval& interval, double at, Direction outward) {
    // graduation_toward() takes a mark up to graduation_slack behind for reached; starting half a
    // slack outward leaves mark_slack of that.
    const double start = at + sign_of(outward) * mark_slack;
    const auto allowed = [&interval](double mark) {
        return mark >= interval.lo - mark_slack && mark <= interval.hi + mark_slack;
    };
    const double out = graduation_toward(ruler, start, outward);
    const double in = graduation_toward(ruler, at, opposite(outward));
    return {{{out, 0, allowed(out)}, {in, inward_cost, allowed(in)}, {at, exact_cost, true}}};
}

}  // namespace

std::optional<Stops> shortest_stroke(const AllowedSet& allowed, const StrokeGeometry& geometry,
                                     const Head& head, ImageSpan image) {
    if (allowed.empty()) return std::nullopt;
    const StopInterval& o = allowed.operator_side;
    const StopInterval& m = allowed.machine_side;
    const double innermost = m.lo - o.hi;
    if (innermost >= allowed.least_gap) return Stops{o.hi, m.lo};

    // The coupling binds: one degree of freedom is left, where along the arm the stroke lies.
    const double length = allowed.least_gap;
    const double lo = std::max(o.lo, m.lo - length);
    const double hi = std::max(lo, std::min(o.hi, m.hi - length));
    const double middle = 0.5 * (image.lo + image.hi);
    const double wished = middle - covered_middle(geometry, head, length);
    const double operator_stop = std::clamp(wished, lo, hi);
    return Stops{operator_stop, std::clamp(operator_stop + length, m.lo, m.hi)};
}

Stops on_graduations(const Ruler& ruler, const AllowedSet& allowed, const Stops& stops) {
    const Choices of_operator =
        choices_of(ruler, allowed.operator_side, stops.operator_side, Direction::toward_operator);
    const Choices of_machine =
        choices_of(ruler, allowed.machine_side, stops.machine_side, Direction::toward_machine);
    Stops best = stops;
    int least_cost = 2 * exact_cost;
    for (const Choice& o : of_operator) {
        for (const Choice& m : of_machine) {
            const bool apart = m.at - o.at >= allowed.least_gap - mark_slack;
            if (!o.allowed || !m.allowed || !apart || o.cost + m.cost >= least_cost) continue;
            least_cost = o.cost + m.cost;
            best = {o.at, m.at};
        }
    }
    return best;
}

}  // namespace carriageway
