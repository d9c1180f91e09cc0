// The seam on GLFW: mouse and keyboard; OpenGL 3 or OpenGL ES 3. GLFW 3.3 has no touch, no on-screen
// keyboard and nothing to keep a display on.
#pragma once

#include <memory>

#include "app/window.h"

namespace carriageway {

/// Opens a window of about `width_dp` by `height_dp`. Throws std::runtime_error with a sentence that
/// says what to do. Needs a Dear ImGui context, and lives shorter than it.
std::unique_ptr<Window> open_glfw_window(int width_dp, int height_dp);

} // namespace carriageway
