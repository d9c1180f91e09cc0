// From SDL's events to the program's.
#pragma once

#include <SDL.h>

#include <vector>

#include "app/input.h"

namespace carriageway {

/// What is needed to place a pointer: sizes of the window in the system's units and in pixels.
struct Sdl2Scale {
    float pixels_per_unit_x = 1.0f, pixels_per_unit_y = 1.0f;
    float width = 0.0f, height = 0.0f; ///< px
    float pixels_per_dp = 1.0f;
};

/// Translates events and keeps what SDL tells only as changes: which fingers and buttons are down.
class Sdl2Events {
public:
    /// Appends what `event` means to `events`, at `time` s. Events that SDL makes up, mouse from
    /// touch or touch from mouse, are passed over; so are buttons other than the main one.
    void translate(const SDL_Event& event, const Sdl2Scale& scale, double time,
                   std::vector<InputEvent>& events);

    Vec mouse() const { return mouse_; } ///< where it was last, dp

private:
    struct Finger {
        bool down = false;
        SDL_TouchID device = 0;
        SDL_FingerID id = 0;
        Vec at;
    };

    void mouse(const SDL_Event& event, const Sdl2Scale& scale);
    void wheel(const SDL_MouseWheelEvent& event);
    void finger(const SDL_TouchFingerEvent& event, const Sdl2Scale& scale);
    void pinch(const SDL_MultiGestureEvent& event, const Sdl2Scale& scale);
    void key(const SDL_KeyboardEvent& event);
    void window(const SDL_WindowEvent& event);
    void let_go();
    InputEvent& add(InputKind kind, int pointer = 0);
    int slot_of(const SDL_TouchFingerEvent& event);

    std::vector<InputEvent>* events_ = nullptr;
    double time_ = 0.0;
    Vec mouse_; ///< dp
    bool mouse_down_ = false;
    std::vector<Finger> fingers_; ///< pointer 1 first
};

} // namespace carriageway
