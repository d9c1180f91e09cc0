// Height readings made from planes, for the tests of levelling.
#pragma once

#include <vector>

#include "core/levelling.h"

namespace carriageway::tests {

/// Readings of every platen under every head at the given points; platens and heads from 1.
inline std::vector<HeightReading> readings_of(const std::vector<Plane>& heads,
                                              const std::vector<Plane>& platens,
                                              const std::vector<Point>& points) {
    std::vector<HeightReading> readings;
    for (std::size_t h = 0; h < heads.size(); ++h)
        for (std::size_t p = 0; p < platens.size(); ++p)
            for (const Point& point : points)
                readings.push_back({static_cast<std::uint32_t>(p + 1),
                                    static_cast<std::uint32_t>(h + 1), point.x, point.y,
                                    heads[h].at(point) + platens[p].at(point)});
    return readings;
}

} // namespace carriageway::tests
