// The loop that owns the clock: wait for something to happen, build a frame, show it, sleep again.
#pragma once

#include "app/drawing/fonts.h"
#include "app/drawing/screen_painter.h"
#include "app/program.h"
#include "app/window.h"

namespace carriageway {

class FrameLoop {
public:
    FrameLoop(Program& program, Window& window, Fonts& fonts);

    /// Waits for events (not at all where a frame is due), handles them and shows a frame. False
    /// when the window is to close.
    bool turn();

    /// How long the next turn may wait (s) while nothing happens: 0 not at all, below 0 however long.
    double wait_time() const;

    /// Frames shown so far: a window left alone shows none.
    long frames() const { return frames_; }

private:
    void show();
    void text_field();
    bool window_text_field(const Frame& frame);

    Program& program_;
    Window& window_;
    Fonts& fonts_;
    ScreenPainter painter_;
    std::vector<InputEvent> events_;
    long frames_ = 0;
    int settle_ = 2; ///< frames still owed after an event: Dear ImGui needs one to take it in
    bool was_typing_ = false; ///< in Dear ImGui's text field, whose caret blinks
    bool was_held_ = false;
};

} // namespace carriageway
