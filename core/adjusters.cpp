#include "core/adjusters.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace carriageway {

namespace {

constexpr AdjusterSide every_side[] = {AdjusterSide::left, AdjusterSide::right,
                                       AdjusterSide::across};

bool is_near(double place) { return std::abs(place) <= farthest_adjuster; }

/// Where a screw touches; a guide in place of a missing one touches at the origin.
Point place_of(const Adjuster* adjuster) {
    return adjuster == nullptr ? Point{} : Point{adjuster->x, adjuster->y};
}

double travel_of(const Adjuster* adjuster, const BySide& travel) {
    return adjuster == nullptr ? 0.0 : travel[index_of(adjuster->side)];
}

/// The rotation near 0 at which the edges through two places touch tips that moved by `left` and
/// `right`: cos φ·(Δy + Δtravel) − sin φ·Δx = Δy.
std::optional<double> rotation_between(const Adjuster& left, const Adjuster& right,
                                       const BySide& travel) {
    const double dx = right.x - left.x, dy = right.y - left.y;
    const double moved_dy =
        dy + travel[index_of(AdjusterSide::right)] - travel[index_of(AdjusterSide::left)];
    const double radius = std::hypot(dx, moved_dy);
    if (!(std::abs(dy) <= radius)) return std::nullopt;
    // radius·cos(φ + β) = Δy, of whose two solutions one is at home for no travel: as dx > 0 has
    // β > 0 there, the one with + acos, and the other way round.
    const double beta = std::atan2(dx, moved_dy);
    const double open = std::acos(dy / radius);
    return (dx > 0.0 ? open : -open) - beta;
}

/// The move that goes with a rotation: the guide along touches with `along`, the one across with
/// `across`.
RigidMotion touching(double rotation, const Point& along, double along_travel, const Point& across,
                     double across_travel) {
    const double c = std::cos(rotation), s = std::sin(rotation);
    // How far the tips stand in the turned frame's own directions, less where its edges are.
    const double up = -s * along.x + c * (along.y + along_travel) - along.y;
    const double right = c * (across.x + across_travel) + s * across.y - across.x;
    return {rotation, c * right - s * up, s * right + c * up};
}

/// The travel along of a place whose edge must touch: the inverse of touching().
double along_travel(const RigidMotion& pose, const Point& place) {
    const double c = std::cos(pose.rotation), s = std::sin(pose.rotation);
    return (place.y + s * (place.x - pose.x)) / c + pose.y - place.y;
}

double across_travel(const RigidMotion& pose, const Point& place) {
    const double c = std::cos(pose.rotation), s = std::sin(pose.rotation);
    return (place.x - s * (place.y - pose.y)) / c + pose.x - place.x;
}

} // namespace

std::optional<AdjusterFault> adjuster_fault(std::span<const Adjuster> adjusters) {
    for (std::size_t i = 0; i < adjusters.size(); ++i) {
        const Adjuster& one = adjusters[i];
        if (!is_near(one.x) || !is_near(one.y) || !std::isfinite(one.mm_per_turn))
            return AdjusterFault{AdjusterFaultKind::not_finite, i};
        if (one.graduations < 1 || one.graduations > most_dial_marks ||
            !(one.mm_per_turn / one.graduations >= least_step))
            return AdjusterFault{AdjusterFaultKind::no_travel, i};
        for (std::size_t before = 0; before < i; ++before) {
            const Adjuster& other = adjusters[before];
            if (other.side == one.side) return AdjusterFault{AdjusterFaultKind::repeated_side, i};
            const bool a_pair =
                one.side != AdjusterSide::across && other.side != AdjusterSide::across;
            if (a_pair && std::abs(one.x - other.x) < least_lever)
                return AdjusterFault{AdjusterFaultKind::no_lever, i};
        }
    }
    return std::nullopt;
}

const Adjuster* find_adjuster(std::span<const Adjuster> adjusters, AdjusterSide side) {
    const auto found = std::find_if(adjusters.begin(), adjusters.end(),
                                    [side](const Adjuster& one) { return one.side == side; });
    return found == adjusters.end() ? nullptr : &*found;
}

Reach reach_of(std::span<const Adjuster> adjusters) {
    const bool left = find_adjuster(adjusters, AdjusterSide::left) != nullptr;
    const bool right = find_adjuster(adjusters, AdjusterSide::right) != nullptr;
    return {left || right, find_adjuster(adjusters, AdjusterSide::across) != nullptr,
            left && right};
}

std::optional<RigidMotion> pose_of(std::span<const Adjuster> adjusters, const BySide& travel) {
    if (adjuster_fault(adjusters)) return std::nullopt;
    const Adjuster* left = find_adjuster(adjusters, AdjusterSide::left);
    const Adjuster* right = find_adjuster(adjusters, AdjusterSide::right);
    const Adjuster* across = find_adjuster(adjusters, AdjusterSide::across);
    double rotation = 0.0;
    if (left != nullptr && right != nullptr) {
        const auto solved = rotation_between(*left, *right, travel);
        if (!solved || !(std::abs(*solved) < 0.5 * std::numbers::pi)) return std::nullopt;
        rotation = *solved;
    }
    const Adjuster* along = left != nullptr ? left : right;
    return touching(rotation, place_of(along), travel_of(along, travel), place_of(across),
                    travel_of(across, travel));
}

BySide travel_for(std::span<const Adjuster> adjusters, const RigidMotion& pose) {
    BySide travel{};
    if (adjuster_fault(adjusters) || !(std::abs(pose.rotation) < 0.5 * std::numbers::pi))
        return travel;
    for (const AdjusterSide side : every_side) {
        const Adjuster* one = find_adjuster(adjusters, side);
        if (one == nullptr) continue;
        travel[index_of(side)] = side == AdjusterSide::across ? across_travel(pose, place_of(one))
                                                              : along_travel(pose, place_of(one));
    }
    return travel;
}

RigidMotion reachable(std::span<const Adjuster> adjusters, const RigidMotion& wanted,
                      const Point& centre) {
    const Reach reach = reach_of(adjusters);
    const Point to = moved(wanted, centre);
    RigidMotion motion;
    motion.rotation = reach.turning ? wanted.rotation : 0.0;
    const Point turned = moved(motion, centre);
    motion.x = to.x - turned.x;
    motion.y = to.y - turned.y;
    // What no screw moves goes on touching its guide at the origin.
    if (!reach.along) motion.y = 0.0; // and then nothing turns it either
    if (!reach.across) motion.x = -motion.y * std::tan(motion.rotation);
    return motion;
}

} // namespace carriageway
