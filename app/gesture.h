// Fingers and mouse to gestures: taps, long presses, drags, pinches. Pure: time comes with the
// events.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "app/input.h"

namespace carriageway {

enum class GestureKind : std::uint8_t {
    press,       ///< a finger or button went down at `at`
    tap,         ///< and up again without moving
    long_press,  ///< held still
    drag_start,  ///< moved beyond the threshold; `from` is where it went down
    drag,        ///< `by` since the last
    drag_end,    ///< `velocity` in dp/s
    drag_cancel, ///< taken away or turned into a pinch: put back what it moved
    pinch,       ///< two fingers: `factor` about `at`, moved `by`
};

struct Gesture {
    GestureKind kind = GestureKind::tap;
    Vec at;
    Vec from;
    Vec by;
    Vec velocity;
    float factor = 1.0f;
    bool touch = false;
};

/// dp that a pointer may move and still tap. A finger rolls more than a mouse. Ours.
inline constexpr float touch_slop = 10.0f;
inline constexpr float mouse_slop = 3.0f;
/// s after which holding still means "explain". Common practice on phones, no source.
inline constexpr double long_press_time = 0.55;

class GestureReader {
public:
    /// Feeds one pointer event; appends what it comes to.
    void feed(const InputEvent& event, std::vector<Gesture>& out);
    /// Lets time pass; appends a long press when one has come about, which takes two calls after
    /// its time.
    void advance(double now, std::vector<Gesture>& out);
    /// When a long press would come about; nothing when none can.
    std::optional<double> due() const;

private:
    struct Pointer {
        int id = -1;
        Vec at;
        Vec from;
        Vec velocity;
        double since = 0.0;
        double moved = 0.0;
    };
    Pointer* find(int id);
    void down(const InputEvent& event, std::vector<Gesture>& out);
    void move(const InputEvent& event, std::vector<Gesture>& out);
    void up(const InputEvent& event, std::vector<Gesture>& out);

    std::array<Pointer, 2> pointers_;
    int count_ = 0;
    bool dragging_ = false;
    bool overdue_ = false; ///< a long press is due: what happened until then may still be told
    bool spent_ = false;   ///< a long press or a pinch has used this touch up: no tap follows
};

} // namespace carriageway
