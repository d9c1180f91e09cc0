// The seam on SDL2: mouse, touch screen, trackpad, keyboard; OpenGL 3 or OpenGL ES 3.
#pragma once

#include <memory>

#include "app/window.h"

namespace carriageway {

/// Opens a window of about `width_dp` by `height_dp`. Throws std::runtime_error with a sentence that
/// says what to do. Needs a Dear ImGui context, and lives shorter than it.
std::unique_ptr<Window> open_sdl2_window(int width_dp, int height_dp);

} // namespace carriageway
