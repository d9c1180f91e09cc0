#include "core/levelling_advice.h"

#include <array>
#include <cmath>
#include <utility>

#include "core/robust.h"

namespace carriageway {

namespace {

/// Standard errors beyond the tolerance that make a part surely out. Ours.
constexpr double sure_errors = 2.0;

/// Twice the area of the triangle of three screws, mm², from which they are not in a line. Ours.
constexpr double least_triangle = 100.0;

std::array<Point, 3> all_of(const LevelPoints& points) {
    return {points.operator_left, points.operator_right, points.machine_side};
}

Plane operator+(const Plane& a, const Plane& b) {
    return {a.offset + b.offset, a.tilt_x + b.tilt_x, a.tilt_y + b.tilt_y};
}

Plane operator-(const Plane& a, const Plane& b) {
    return {a.offset - b.offset, a.tilt_x - b.tilt_x, a.tilt_y - b.tilt_y};
}

/// Twice the area of the triangle of three points, signed, mm².
double doubled_area(const Point& a, const Point& b, const Point& c) {
    return (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
}

/// The plane through three heights; their mean where the points stand in a line.
Plane plane_through(const std::array<Point, 3>& at, const std::array<double, 3>& height) {
    const double area = doubled_area(at[0], at[1], at[2]);
    if (std::abs(area) < least_triangle)
        return {(height[0] + height[1] + height[2]) / 3.0, 0.0, 0.0};
    const double first = height[1] - height[0], second = height[2] - height[0];
    Plane plane;
    plane.tilt_x = (first * (at[2].y - at[0].y) - second * (at[1].y - at[0].y)) / area;
    plane.tilt_y = (second * (at[1].x - at[0].x) - first * (at[2].x - at[0].x)) / area;
    plane.offset = height[0] - plane.tilt_x * at[0].x - plane.tilt_y * at[0].y;
    return plane;
}

PartOff off_of(const LevelledPart& part, const Plane& plane, const LevelTargets& targets) {
    PartOff off;
    off.number = part.number;
    off.group = part.group;
    off.known = part.known;
    if (part.known == LevelTerms::none) return off;
    const LevelPoints& points = targets.points;
    const auto look = [&](const Point& point) {
        const double here = plane.at(point);
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

/// The usual gap of a group's heads over the usual platen in the middle of the three points: where
/// a head's tilt moves it neither up nor down.
double usual_gap(const Levelling& levelling, int group, const Plane& usual,
                 const LevelPoints& points) {
    const auto [a, b, c] = all_of(points);
    const Point middle{(a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0};
    std::vector<double> gaps;
    for (const LevelledPart& head : levelling.heads)
        if (head.group == group && head.known != LevelTerms::none)
            gaps.push_back((head.plane + usual).at(middle));
    return gaps.empty() ? 0.0 : median(std::move(gaps));
}

bool spans_plane(const std::vector<LevelScrew>& screws) {
    for (std::size_t a = 0; a < screws.size(); ++a)
        for (std::size_t b = a + 1; b < screws.size(); ++b)
            for (std::size_t c = b + 1; c < screws.size(); ++c) {
                const Point at[] = {{screws[a].x, screws[a].y}, {screws[b].x, screws[b].y},
                                    {screws[c].x, screws[c].y}};
                if (std::abs(doubled_area(at[0], at[1], at[2])) > least_triangle) return true;
            }
    return false;
}

} // namespace

Plane usual_platen(const Levelling& levelling, int group, const LevelPoints& points) {
    const auto at = all_of(points);
    std::array<std::vector<double>, 3> heights;
    std::vector<double> offsets;
    for (const LevelledPart& platen : levelling.platens) {
        if (platen.group != group || platen.known == LevelTerms::none) continue;
        offsets.push_back(platen.plane.offset);
        if (platen.known != LevelTerms::plane) continue;
        for (std::size_t i = 0; i < at.size(); ++i)
            heights[i].push_back(platen.plane.at(at[i]));
    }
    if (offsets.empty()) return {};
    if (heights[0].empty()) return {median(std::move(offsets)), 0.0, 0.0};
    return plane_through(at, {median(std::move(heights[0])), median(std::move(heights[1])),
                              median(std::move(heights[2]))});
}

std::vector<PartOff> heads_off(const Levelling& levelling, const LevelTargets& targets) {
    std::vector<Plane> zero; // what to take from a head's plane, by group
    for (std::size_t i = 0; i < levelling.groups.size(); ++i) {
        const int group = static_cast<int>(i);
        const Plane usual = usual_platen(levelling, group, targets.points);
        const double wanted =
            targets.wanted_gap.value_or(usual_gap(levelling, group, usual, targets.points));
        zero.push_back(Plane{wanted, 0.0, 0.0} - usual);
    }
    std::vector<PartOff> result;
    for (const LevelledPart& head : levelling.heads)
        result.push_back(
            off_of(head, head.plane - zero[static_cast<std::size_t>(head.group)], targets));
    return result;
}

std::vector<PartOff> platens_off(const Levelling& levelling, const LevelTargets& targets) {
    std::vector<PartOff> result;
    for (const LevelledPart& platen : levelling.platens)
        result.push_back(off_of(
            platen, platen.plane - usual_platen(levelling, platen.group, targets.points), targets));
    return result;
}

PlatenTurns turns_of(const LevelledPart& platen, const Plane& usual,
                     const std::vector<LevelScrew>& screws) {
    PlatenTurns result;
    if (platen.known == LevelTerms::none) return result;
    result.takes_tilt = spans_plane(screws);
    const Plane off = platen.plane - usual;
    for (const LevelScrew& screw : screws) {
        ScrewTurn turn;
        turn.raise = off.at({screw.x, screw.y});
        if (screw.mm_per_turn > 0.0)
            turn.turns = (screw.clockwise_raises ? turn.raise : -turn.raise) / screw.mm_per_turn;
        result.screws.push_back(turn);
    }
    return result;
}

} // namespace carriageway
