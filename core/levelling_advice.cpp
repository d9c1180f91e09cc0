#include "core/levelling_advice.h"

#include <cmath>

namespace carriageway {

namespace {

/// Standard errors beyond the tolerance that make a part surely out. Ours.
constexpr double sure_errors = 2.0;

/// Twice the area of the triangle of three screws, mm², from which they are not in a line. Ours.
constexpr double least_triangle = 100.0;

PartOff off_of(const LevelledPart& part, double wanted, const LevelTargets& targets) {
    PartOff off;
    off.number = part.number;
    off.group = part.group;
    off.known = part.known;
    if (part.known == LevelTerms::none) return off;
    const LevelPoints& points = targets.points;
    const auto look = [&](const Point& point) {
        const double here = part.plane.at(point) - wanted;
        if (std::abs(here) > std::abs(off.worst)) off.worst = here;
        const double beyond = std::abs(here) - targets.tolerance;
        if (beyond > 0.0) off.out = true;
        if (beyond > sure_errors * standard_error(part, point)) off.surely_out = true;
        return here;
    };
    off.operator_left = look(points.operator_left);
    off.operator_right = look(points.operator_right);
    off.machine_side = look(points.machine_side);
    return off;
}

/// The mean gap of a group's heads in the middle of the three points: where a head's tilt moves it
/// neither up nor down.
double mean_gap(const Levelling& levelling, int group, const LevelPoints& points) {
    const Point middle{
        (points.operator_left.x + points.operator_right.x + points.machine_side.x) / 3.0,
        (points.operator_left.y + points.operator_right.y + points.machine_side.y) / 3.0};
    double sum = 0.0, count = 0.0;
    for (const LevelledPart& head : levelling.heads) {
        if (head.group != group || head.known == LevelTerms::none) continue;
        sum += head.plane.at(middle);
        count += 1.0;
    }
    return count > 0.0 ? sum / count : 0.0;
}

bool spans_plane(const std::vector<LevelScrew>& screws) {
    for (std::size_t a = 0; a < screws.size(); ++a)
        for (std::size_t b = a + 1; b < screws.size(); ++b)
            for (std::size_t c = b + 1; c < screws.size(); ++c) {
                const double doubled =
                    (screws[b].x - screws[a].x) * (screws[c].y - screws[a].y) -
                    (screws[c].x - screws[a].x) * (screws[b].y - screws[a].y);
                if (std::abs(doubled) > least_triangle) return true;
            }
    return false;
}

} // namespace

std::vector<PartOff> heads_off(const Levelling& levelling, const LevelTargets& targets) {
    std::vector<double> wanted;
    for (std::size_t group = 0; group < levelling.groups.size(); ++group)
        wanted.push_back(targets.wanted_gap.value_or(
            mean_gap(levelling, static_cast<int>(group), targets.points)));
    std::vector<PartOff> result;
    for (const LevelledPart& head : levelling.heads)
        result.push_back(off_of(head, wanted[static_cast<std::size_t>(head.group)], targets));
    return result;
}

std::vector<PartOff> platens_off(const Levelling& levelling, const LevelTargets& targets) {
    std::vector<PartOff> result;
    for (const LevelledPart& platen : levelling.platens)
        result.push_back(off_of(platen, 0.0, targets));
    return result;
}

PlatenTurns turns_of(const LevelledPart& platen, const std::vector<LevelScrew>& screws) {
    PlatenTurns result;
    if (platen.known == LevelTerms::none) return result;
    result.takes_tilt = spans_plane(screws);
    for (const LevelScrew& screw : screws) {
        ScrewTurn turn;
        turn.raise = platen.plane.at({screw.x, screw.y});
        if (screw.mm_per_turn > 0.0)
            turn.turns = (screw.clockwise_raises ? turn.raise : -turn.raise) / screw.mm_per_turn;
        result.screws.push_back(turn);
    }
    return result;
}

} // namespace carriageway
