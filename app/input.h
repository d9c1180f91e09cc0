// What a person does, as values: the same from every window system and from the tests.
#pragma once

#include <cstdint>
#include <string>

#include "app/drawing/box.h"

namespace carriageway {

enum class InputKind : std::uint8_t {
    down,   ///< a finger or the main button touches at `at`
    move,   ///< it moves, or a mouse hovers
    up,     ///< it lifts
    cancel, ///< the system took the touch away: nothing is meant
    wheel,  ///< `by`: notches, y positive away from the user
    pinch,  ///< a trackpad's pinch: `by.x` is the factor
    key,    ///< `key` with the modifiers, pressed or repeated
    text,   ///< `text` typed
    file,   ///< `text` is the path of a file dropped or opened
    link,   ///< `text` is a link, or its fragment, with a job in it
    act,    ///< assistive technology does what a tap on the thing named `text` does
    step,   ///< and moves the slider named `text` by `by.x` steps
    focus,  ///< and moves the keyboard's focus to the thing named `text`; empty: to none
    edit,   ///< `text` is now the whole content of the window's own text field
    close,  ///< the window is to close
    newer,  ///< a newer version of the program is ready to be started
    copied, ///< copy_text was carried out; `text` is not empty where it could not be
    redraw, ///< size, theme or display changed, or another thread woke the window
};

enum class Key : std::uint8_t {
    none, enter, escape, tab, space, backspace, remove, left, right, up, down, home, end, page_up,
    page_down, plus, minus, zero, f1, a, n, o, p, s, y, z,
};

struct InputEvent {
    InputKind kind = InputKind::redraw;
    int pointer = 0;    ///< 0 the mouse; 1 and up a finger
    Vec at;             ///< dp
    Vec by;
    Key key = Key::none;
    bool control = false, shift = false, alt = false;
    std::string text;   ///< UTF-8
    double time = 0.0;  ///< s, growing
};

} // namespace carriageway
