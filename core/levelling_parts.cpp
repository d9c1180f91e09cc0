#include "core/levelling_parts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace carriageway {

namespace {

/// Least readings, and least root mean square of their distances from the best line through their
/// points, in shares of the largest distance from their centre, for a part to have tilts. Ours:
/// narrower points are meant to be a line.
constexpr int least_points = 3;
constexpr double least_width = 0.02;

std::vector<std::uint32_t> sorted_once(std::vector<std::uint32_t> numbers) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

std::size_t place_in(const std::vector<std::uint32_t>& sorted, std::uint32_t number) {
    return static_cast<std::size_t>(std::lower_bound(sorted.begin(), sorted.end(), number) -
                                    sorted.begin());
}

} // namespace

LevelParts level_parts(const std::vector<HeightReading>& readings) {
    std::vector<std::uint32_t> heads, platens;
    for (const HeightReading& reading : readings) {
        heads.push_back(reading.head);
        platens.push_back(reading.platen);
    }
    LevelParts parts{sorted_once(heads), sorted_once(platens), {}, {}};
    for (const HeightReading& reading : readings) {
        parts.head_of.push_back(place_in(parts.heads, reading.head));
        parts.platen_of.push_back(parts.heads.size() + place_in(parts.platens, reading.platen));
    }
    return parts;
}

std::vector<std::size_t> joined(const LevelParts& parts, const std::vector<std::size_t>& readings) {
    std::vector<std::size_t> above(parts.count());
    std::iota(above.begin(), above.end(), std::size_t{0});
    const auto top = [&above](std::size_t part) {
        while (above[part] != part) part = above[part] = above[above[part]];
        return part;
    };
    for (std::size_t reading : readings)
        above[top(parts.platen_of[reading])] = top(parts.head_of[reading]);
    for (std::size_t part = 0; part < above.size(); ++part) above[part] = top(part);
    return above;
}

bool carry_plane(const std::vector<Point>& points) {
    if (points.size() < static_cast<std::size_t>(least_points)) return false;
    const auto count = static_cast<double>(points.size());
    Point centre;
    for (const Point& point : points) {
        centre.x += point.x / count;
        centre.y += point.y / count;
    }
    double xx = 0.0, xy = 0.0, yy = 0.0, farthest = 0.0;
    for (const Point& point : points) {
        const double x = point.x - centre.x, y = point.y - centre.y;
        xx += x * x / count;
        xy += x * y / count;
        yy += y * y / count;
        farthest = std::max(farthest, std::hypot(x, y));
    }
    const double narrow = 0.5 * (xx + yy - std::hypot(xx - yy, 2.0 * xy));
    return narrow > least_width * least_width * farthest * farthest;
}

} // namespace carriageway
