#include "tests/reference/random_outlines.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace carriageway::reference {

namespace {

constexpr double full_turn = 2.0 * std::numbers::pi;

/// Corners about the origin at random angles, never closer than a part of an even share.
Outline around(Seeded& random, int corners, double across, double along, double shortest) {
    Outline outline;
    const double start = random.between(0.0, full_turn);
    for (int i = 0; i < corners; ++i) {
        const double share = (i + random.between(-0.35, 0.35)) / corners;
        const double angle = start + full_turn * share;
        const double distance = random.between(shortest, 1.0);
        outline.push_back({0.5 * across * distance * std::cos(angle),
                           0.5 * along * distance * std::sin(angle)});
    }
    return outline;
}

Outline star(Seeded& random, double across, double along) {
    const int points = random.whole(3, 9);
    const double inner = random.between(0.2, 0.7);
    const double start = random.between(0.0, full_turn);
    Outline outline;
    for (int i = 0; i < 2 * points; ++i) {
        const double distance = i % 2 == 0 ? 0.5 : 0.5 * inner;
        const double angle = start + full_turn * i / (2 * points);
        outline.push_back(
            {across * distance * std::cos(angle), along * distance * std::sin(angle)});
    }
    return outline;
}

double turn(Point a, Point b, Point c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool cross(Point a, Point b, Point c, Point d) {
    return (turn(a, b, c) > 0.0) != (turn(a, b, d) > 0.0) &&
           (turn(c, d, a) > 0.0) != (turn(c, d, b) > 0.0);
}

/// Takes out one crossing by walking a part the other way round. Each time the way gets shorter,
/// so it comes to an end.
bool untangle_once(Outline& outline) {
    const std::size_t n = outline.size();
    for (std::size_t i = 0; i + 2 < n; ++i)
        for (std::size_t j = i + 2; j < n; ++j) {
            if (i == 0 && j == n - 1) continue;
            if (!cross(outline[i], outline[i + 1], outline[j], outline[(j + 1) % n])) continue;
            std::reverse(outline.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                         outline.begin() + static_cast<std::ptrdiff_t>(j) + 1);
            return true;
        }
    return false;
}

Outline untangled(Seeded& random, double across, double along) {
    Outline outline;
    const int corners = random.whole(4, 12);
    for (int i = 0; i < corners; ++i)
        outline.push_back({random.between(-0.5, 0.5) * across, random.between(-0.5, 0.5) * along});
    while (untangle_once(outline)) {
    }
    return outline;
}

Outline letter(Seeded& random, OutlineKind kind, double across, double along) {
    const double w = 0.5 * across, l = 0.5 * along;
    const double x0 = random.between(-0.8, -0.1) * w, x1 = random.between(0.1, 0.8) * w;
    const double y0 = random.between(-0.8, -0.1) * l, y1 = random.between(0.1, 0.8) * l;
    if (kind == OutlineKind::letter_l)
        return {{-w, -l}, {w, -l}, {w, y0}, {x0, y0}, {x0, l}, {-w, l}};
    if (kind == OutlineKind::letter_u)
        return {{-w, -l}, {w, -l}, {w, l}, {x1, l}, {x1, y0}, {x0, y0}, {x0, l}, {-w, l}};
    const double slit = random.between(0.01, 0.2) * (y1 - y0);
    const double middle = random.between(y0 + slit, y1 - slit);
    return {{-w, -l},          {w, -l},           {w, middle - slit}, {x1, middle - slit},
            {x1, y0},          {x0, y0},          {x0, y1},           {x1, y1},
            {x1, middle + slit}, {w, middle + slit}, {w, l},            {-w, l}};
}

Outline comb(Seeded& random, double across, double along) {
    const int teeth = random.whole(2, 7);
    const bool shared = random.chance(0.6);
    const double root = random.between(-0.4, 0.1) * along, tip = 0.5 * along;
    const double pitch = across / (2 * teeth - 1);
    Outline outline{{-0.5 * across, -0.5 * along}, {0.5 * across, -0.5 * along}};
    for (int tooth = teeth - 1; tooth >= 0; --tooth) {
        const double left = -0.5 * across + 2 * tooth * pitch;
        const double high = shared ? tip : tip * random.between(0.4, 1.0);
        outline.push_back({left + pitch, high});
        outline.push_back({left, high});
        if (tooth == 0) break;
        const double low = shared ? root : root - random.between(0.0, 0.05) * along;
        outline.push_back({left, low});
        outline.push_back({left - pitch, low});
    }
    return outline;
}

Outline stairs(Seeded& random, double across, double along) {
    const int steps = random.whole(2, 8);
    Outline outline{{-0.5 * across, -0.5 * along}, {0.5 * across, -0.5 * along}};
    for (int i = steps - 1; i >= 0; --i) {
        const double high = -0.5 * along + along * (steps - i) / steps;
        outline.push_back({-0.5 * across + across * (i + 1) / steps, high});
        outline.push_back({-0.5 * across + across * i / steps, high});
    }
    return outline;
}

/// One notch a side, of the depth and half-width given as shares of the half-sides.
Outline notched(Seeded& random, double across, double along) {
    const double w = 0.5 * across, l = 0.5 * along;
    const double x = random.between(0.05, 0.35) * w, y = random.between(0.05, 0.35) * l;
    const double dx = random.between(0.4, 0.9) * w, dy = random.between(0.4, 0.9) * l;
    return {{-w, -l}, {-x, -l}, {-x, -dy}, {x, -dy}, {x, -l}, {w, -l}, {w, -y},  {dx, -y},
            {dx, y},  {w, y},   {w, l},    {x, l},   {x, dy}, {-x, dy}, {-x, l}, {-w, l},
            {-w, y},  {-dx, y}, {-dx, -y}, {-w, -y}};
}

/// Two turns of a band that winds inward: out along one side, back along the other.
Outline spiral(Seeded& random, double across, double along) {
    const double width = random.between(0.02, 0.06), pitch = random.between(0.07, 0.09);
    const int corners = 2 * random.whole(4, 10); // even: the turns lie at the same angles
    Outline outline, back;
    for (int i = 0; i <= corners; ++i) {
        const double turns = 2.0 * i / corners;
        const double outer = 0.5 - pitch * turns * 2.0;
        const double c = std::cos(full_turn * turns), s = std::sin(full_turn * turns);
        outline.push_back({across * outer * c, along * outer * s});
        back.push_back({across * (outer - width) * c, along * (outer - width) * s});
    }
    outline.insert(outline.end(), back.rbegin(), back.rend());
    return outline;
}

Outline drawn(Seeded& random, OutlineKind kind, double across, double along) {
    switch (kind) {
        case OutlineKind::convex: return around(random, random.whole(3, 12), across, along, 1.0);
        case OutlineKind::star: return star(random, across, along);
        case OutlineKind::radial: return around(random, random.whole(5, 24), across, along, 0.3);
        case OutlineKind::untangled: return untangled(random, across, along);
        case OutlineKind::letter_l:
        case OutlineKind::letter_u:
        case OutlineKind::letter_c: return letter(random, kind, across, along);
        case OutlineKind::comb: return comb(random, across, along);
        case OutlineKind::stairs: return stairs(random, across, along);
        case OutlineKind::notched: return notched(random, across, along);
        case OutlineKind::spiral: return spiral(random, across, along);
        case OutlineKind::rectangle:
        case OutlineKind::count: break;
    }
    const double w = 0.5 * across, l = 0.5 * along;
    return {{-w, -l}, {w, -l}, {w, l}, {-w, l}};
}

} // namespace

OutlineKind random_outline_kind(Seeded& random) {
    return static_cast<OutlineKind>(random.whole(0, static_cast<int>(OutlineKind::count) - 1));
}

Outline random_outline(Seeded& random, OutlineKind kind, double across, double along) {
    Outline outline = drawn(random, kind, across, along);
    // Random points may fall nearly in a line, or a notch be drawn to nothing: drawn again.
    while (std::abs(signed_area(outline)) < 4.0 * least_image_area)
        outline = drawn(random, kind, across, along);
    if (random.chance(0.5))
        for (Point& corner : outline) corner.x = -corner.x;
    if (random.chance(0.5))
        for (Point& corner : outline) corner.y = -corner.y;
    if (random.chance(0.5)) std::reverse(outline.begin(), outline.end());
    const int first = random.whole(0, static_cast<int>(outline.size()) - 1);
    std::rotate(outline.begin(), outline.begin() + first, outline.end());
    return outline;
}

Outline on_grid(const Outline& outline, int quarter_turns) {
    Outline result;
    for (const Point& corner : outline) {
        Point placed{std::round(8.0 * corner.x) / 8.0, std::round(8.0 * corner.y) / 8.0};
        for (int i = 0; i < quarter_turns; ++i) placed = {-placed.y, placed.x};
        result.push_back(placed);
    }
    return result;
}

} // namespace carriageway::reference
