// What Dear ImGui has drawn, in an OpenGL window: shared by the window systems.
#pragma once

#include <cstdint>
#include <memory>

namespace carriageway {

/// One way to ask for OpenGL, and the shading language that goes with it.
struct OpenGlKind {
    int major, minor;
    bool embedded; ///< OpenGL ES
    bool core;     ///< the core profile
    const char* shading;
};

/// In the order in which to try them.
inline constexpr OpenGlKind opengl_kinds[] = {
    {3, 2, false, true, "#version 150"},
    {3, 0, true, false, "#version 300 es"},
    {3, 0, false, false, "#version 130"},
};

/// Dear ImGui's renderer. Needs a current context of OpenGL for as long as it lives.
class OpenGlFrame {
public:
    /// Throws std::runtime_error when the driver lacks what is needed.
    explicit OpenGlFrame(const OpenGlKind& kind);
    ~OpenGlFrame();
    OpenGlFrame(const OpenGlFrame&) = delete;
    OpenGlFrame& operator=(const OpenGlFrame&) = delete;

    /// Uploads the atlas when it has no texture yet or was built anew.
    void begin();
    /// Fills the window, `width` by `height` pixels, with `background` (0xRRGGBB) and draws on it.
    void draw(int width, int height, std::uint32_t background);
};

} // namespace carriageway
