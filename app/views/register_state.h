// What the Register place shows: mode, round, mark, and where the next height is read.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>

#include "core/geometry.h"

namespace carriageway {

enum class RegisterMode { marks, platens, heights };

/// Numbers of a round, a mark or a height that the pad types.
enum class RegisterNumber { none, error_x, error_y, place_x, place_y, platen, turn, height };

/// Which of them.
struct RegisterTarget {
    RegisterNumber number = RegisterNumber::none;
    std::size_t index = 0; ///< of the mark
    bool operator==(const RegisterTarget&) const = default;
};

/// Where on a head a height is read.
enum class HeightPoint { operator_left, operator_right, machine, centre };
inline constexpr int height_points = 4;

struct RegisterState {
    RegisterMode mode = RegisterMode::marks;
    std::optional<std::size_t> round; ///< looked at; none: the last
    std::optional<std::size_t> mark;  ///< chosen
    std::optional<Point> moving;      ///< where the chosen mark is being dragged
    std::uint32_t platen = 1;         ///< of the next height
    HeightPoint point = HeightPoint::operator_left;
};

} // namespace carriageway
