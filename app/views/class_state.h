// A class before a projector: how the program shows itself to it. Nothing here is part of a job or
// kept.
#pragma once

#include <cstdint>
#include <vector>

#include "app/drawing/box.h"

namespace carriageway {

/// The pointer leaves a trail that fades within this (s). Ours.
inline constexpr double trail_seconds = 0.8;
/// Text is at least this large. Ours: letters of a body text are seen from the back of a room.
inline constexpr float least_class_scale = 1.6f;

/// Where the pointer was.
struct TrailPoint {
    Vec at;            ///< dp
    double time = 0.0; ///< s on the window's clock
};

/// What the camera was brought to last.
struct Followed {
    std::int64_t what = 0; ///< 0: nothing; otherwise which exercise, cycle or question
    std::uint32_t head = 0;
    bool operator==(const Followed&) const = default;
};

struct ClassState {
    bool on = false;
    bool follow = true;     ///< the camera goes to the head that an exercise is about
    float own_scale = 1.0f; ///< of the text, as the person has it otherwise
    float scale = 1.0f;     ///< meanwhile
    std::vector<TrailPoint> trail; ///< the oldest first
    double now = 0.0;       ///< s on the window's clock, of the frame
    Followed followed;
};

} // namespace carriageway
