// The seam: all that a window system must do for the program.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/errand.h"
#include "app/input.h"

namespace carriageway {

/// The drawable area. Sizes in pixels; insets in dp (notches, rounded corners, system bars).
struct Surface {
    int width = 0, height = 0;
    float pixels_per_dp = 1.0f;
    float inset_left = 0.0f, inset_top = 0.0f, inset_right = 0.0f, inset_bottom = 0.0f;
    bool operator==(const Surface&) const = default;
};

/// The text field being typed in, for a window that lays one of its own over the drawing.
struct TextField {
    std::string name;  ///< of its thing
    std::string label; ///< and what it is called, in the user's language
    std::string text; ///< UTF-8
    Box box;          ///< dp
    float size = 16.0f; ///< of its letters' em, dp
    std::uint32_t ink = 0, paper = 0xFFFFFF; ///< 0xRRGGBB
    bool operator==(const TextField&) const = default;
};

class DrawingList;

class Window {
public:
    virtual ~Window() = default;
    virtual Surface surface() const = 0;
    /// Blocks until something happens or `seconds` have passed (below 0: however long it takes),
    /// then appends all that is waiting. Also feeds Dear ImGui for text fields.
    virtual void wait(double seconds, std::vector<InputEvent>& events) = 0;
    /// Ends a wait() from any thread.
    virtual void wake() = 0;
    virtual void begin_frame() = 0; ///< before ImGui::NewFrame
    virtual void present(std::uint32_t background) = 0; ///< after ImGui::Render
    virtual double now() const = 0; ///< s
    virtual void keyboard(bool shown) = 0;   ///< on-screen keyboard, where there is one
    /// Shows a text field of the window's own, or none (nullptr); its contents come back as
    /// InputKind::edit. False: it has none, and Dear ImGui's is shown.
    virtual bool text_field(const TextField*) { return false; }
    /// Takes note of a frame's things, where assistive technology can be told of them.
    virtual void tell(const DrawingList&) {}
    virtual Abilities abilities() const { return {}; }
    virtual void run(const Errand&) {}
    virtual void keep_awake(bool awake) = 0; ///< keep the display on
    virtual bool prefers_dark() const = 0;
    virtual void title(const std::string& text) = 0;
};

/// Opens a window; throws std::runtime_error with a sentence a person can act on. Needs a Dear
/// ImGui context. Names: "sdl2", "glfw", "null".
std::unique_ptr<Window> open_window(std::string_view back_end, int width_dp, int height_dp);

} // namespace carriageway
