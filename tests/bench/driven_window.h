// The real program on the window without a screen, one frame at a time, for timing and counting.
#pragma once

#include <memory>
#include <string>

#include "app/drawing/fonts.h"
#include "app/frame_loop.h"
#include "app/program.h"
#include "platform/null/null_window.h"

struct ImGuiContext;

namespace carriageway::bench {

/// A press of 20 stations with heads on all but the first and the last: those of the demonstration,
/// of which four are set wrong, again and again.
Job press_with_18_heads();

/// A window of this size in dp, at one pixel a dp; below 600 dp the program lays itself out compact.
struct Size {
    const char* name;
    int width, height;
};
inline constexpr Size compact{"compact", 360, 740};
inline constexpr Size wide{"wide", 1440, 900};

class DrivenWindow {
public:
    DrivenWindow(Size size, const Job& job);
    ~DrivenWindow();

    /// Makes this window's Dear ImGui context the present one. Two take turns.
    void take_over();
    /// Shows frames until every movement has come to rest.
    void settle();
    /// Shows one frame, as after anything that happened.
    void frame();
    /// The same with a finger that is down and has moved here, dp.
    void move_to(Vec at);
    void touch(Vec at);
    void lift(Vec at);

    /// Chooses a head and returns where the handle of its stop at the machine is, dp.
    Vec handle_of(int station);

    int vertices() const; ///< of the last frame
    Program& program() { return *program_; }
    Session& session() { return *session_; }
    Fonts& fonts() { return *fonts_; }

private:
    void turn(); ///< of the loop; ends the measure unless a frame was shown

    ImGuiContext* context_;
    std::unique_ptr<NullWindow> window_;
    std::unique_ptr<Session> session_;
    std::unique_ptr<Fonts> fonts_;
    std::unique_ptr<Program> program_;
    std::unique_ptr<FrameLoop> loop_;
};

} // namespace carriageway::bench
