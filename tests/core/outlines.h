// Outlines that several tests use. mm.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "core/geometry.h"

namespace carriageway::tests {

/// A rectangle about the origin, counter-clockwise.
inline Outline rectangle(double width, double length) {
    const double x = 0.5 * width;
    const double y = 0.5 * length;
    return {{-x, -y}, {x, -y}, {x, y}, {-x, y}};
}

/// An L of 100 by 100 whose two legs are 40 wide; area 6400.
inline Outline l_shape() { return {{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}}; }

/// A U open toward the machine: 90 by 100, with a notch 30 wide and 70 deep; area 6900.
inline Outline u_shape() {
    return {{0, 0}, {90, 0}, {90, 100}, {60, 100}, {60, 30}, {30, 30}, {30, 100}, {0, 100}};
}

/// A U open to the right: 90 by 100, with a notch 40 long between y = 30 and 70 and 60 deep; area
/// 6600.
inline Outline c_shape() {
    return {{0, 0}, {90, 0}, {90, 30}, {30, 30}, {30, 70}, {90, 70}, {90, 100}, {0, 100}};
}

/// The same with a notch that narrows to the point (30, 50); area 7800.
inline Outline wedged_shape() {
    return {{0, 0}, {90, 0}, {90, 30}, {30, 50}, {90, 70}, {90, 100}, {0, 100}};
}

/// A comb with its teeth toward the machine: each 1 wide with 1 between, `teeth` of them, on a
/// back from y = 0 to 10; teeth end at 50.
inline Outline comb(int teeth) {
    Outline outline{{0.0, 0.0}, {2.0 * teeth - 1.0, 0.0}};
    for (int tooth = teeth - 1; tooth >= 0; --tooth) {
        const double left = 2.0 * tooth;
        outline.push_back({left + 1.0, 50.0});
        outline.push_back({left, 50.0});
        if (tooth > 0) {
            outline.push_back({left, 10.0});
            outline.push_back({left - 1.0, 10.0});
        }
    }
    return outline;
}

/// A random simple outline: corners at rising angles about a point, at random distances from it.
inline Outline random_star(std::mt19937_64& random, int corners) {
    std::uniform_real_distribution<double> share(0.0, 1.0);
    const Point centre{200.0 * share(random) - 100.0, 200.0 * share(random) - 100.0};
    Outline outline;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * std::numbers::pi * (i + 0.8 * share(random)) / corners;
        const double distance = 20.0 + 180.0 * share(random);
        outline.push_back({centre.x + distance * std::cos(angle),
                           centre.y + distance * std::sin(angle)});
    }
    return outline;
}

/// The same outline the other way round.
inline Outline reversed(Outline outline) {
    std::reverse(outline.begin(), outline.end());
    return outline;
}

/// The same outline with operator and machine side exchanged.
inline Outline mirrored(Outline outline) {
    for (Point& corner : outline) corner.y = -corner.y;
    return outline;
}

} // namespace carriageway::tests
