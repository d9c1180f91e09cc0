#include "core/silhouette.h"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace carriageway {
namespace {

/// How far out a side must reach at one y. `out` grows away from the bands.
struct Knot {
    double y = 0.0;
    double out = 0.0;
};

/// What one side must reach where bands begin, meet and end. `sign`: +1 right, -1 left.
std::vector<Knot> knots_of(const std::vector<Band>& bands, double sign) {
    std::vector<Knot> knots;
    for (const Band& band : bands) {
        const double out = sign > 0.0 ? band.right : -band.left;
        // Meeting bands have their common end from one and the same figure.
        if (!knots.empty() && !(band.lo > knots.back().y)) {
            knots.back().out = std::max(knots.back().out, out);
        } else {
            knots.push_back({band.lo, out});
        }
        knots.push_back({band.hi, out});
    }
    return knots;
}

/// The chain's corners at some of the knots, from `start` on the first one's y, each edge as long
/// as the slack allows. It never lies further out than the outermost knot.
std::vector<Knot> chain_from(double start, const std::vector<Knot>& knots, double slack,
                             double outermost) {
    std::vector<Knot> chain{{knots.front().y, start}};
    std::size_t at = 0;
    while (at + 1 < knots.size()) {
        const Knot from = chain.back();
        double least = -std::numeric_limits<double>::infinity();
        double most = std::numeric_limits<double>::infinity();
        std::size_t end = at;
        Knot corner;
        for (std::size_t next = at + 1; next < knots.size(); ++next) {
            const Knot& knot = knots[next];
            const double run = knot.y - from.y;
            const double ceiling = std::min(knot.out + slack, outermost);
            least = std::max(least, (knot.out - from.out) / run);
            most = std::min(most, (ceiling - from.out) / run);
            if (least > most) break;
            end = next;
            const bool last = next + 1 == knots.size();
            const double slope = last ? least : 0.5 * (least + most);
            // Rounding must not let the corner itself cut ink.
            corner = {knot.y, std::clamp(from.out + slope * run, knot.out, ceiling)};
        }
        chain.push_back(corner);
        at = end;
    }
    return chain;
}

/// The chain with fewer corners of those that start close to the bands and as far out as they may.
std::vector<Knot> chain_over(const std::vector<Knot>& knots, double slack) {
    double outermost = knots.front().out;
    for (const Knot& knot : knots) outermost = std::max(outermost, knot.out);
    const double close = knots.front().out;
    std::vector<Knot> chain = chain_from(close, knots, slack, outermost);
    std::vector<Knot> wide = chain_from(std::min(close + slack, outermost), knots, slack, outermost);
    return wide.size() < chain.size() ? wide : chain;
}

}  // namespace

Outline silhouette(const std::vector<Band>& bands, int most_corners, double& slack) {
    if (bands.empty()) return {};
    const std::vector<Knot> right = knots_of(bands, 1.0);
    const std::vector<Knot> left = knots_of(bands, -1.0);
    const std::size_t most = static_cast<std::size_t>(std::max(most_corners, 4));
    slack = std::max(slack, 0.0);
    std::vector<Knot> right_chain = chain_over(right, slack);
    std::vector<Knot> left_chain = chain_over(left, slack);
    while (right_chain.size() + left_chain.size() > most) {
        slack = slack > 0.0 ? 2.0 * slack : 1e-3 * (bands.back().hi - bands.front().lo);
        right_chain = chain_over(right, slack);
        left_chain = chain_over(left, slack);
    }
    Outline outline;
    outline.reserve(right_chain.size() + left_chain.size());
    for (const Knot& knot : right_chain) outline.push_back({knot.out, knot.y});
    for (std::size_t i = left_chain.size(); i-- > 0;)
        outline.push_back({-left_chain[i].out, left_chain[i].y});
    return outline;
}

}  // namespace carriageway
