#include <imgui.h>

#include <stdexcept>
#include <string>

#include "app/window.h"
#include "platform/null/null_window.h"
#ifdef CARRIAGEWAY_SDL2
#include "platform/sdl2/sdl2_window.h"
#endif
#ifdef CARRIAGEWAY_GLFW
#include "platform/glfw/glfw_window.h"
#endif

namespace carriageway {

std::unique_ptr<Window> open_window(std::string_view back_end, int width_dp, int height_dp) {
    if (ImGui::GetCurrentContext() == nullptr)
        throw std::runtime_error("A window needs a Dear ImGui context.");
    std::string known = "null";
    if (back_end == "null") return std::make_unique<NullWindow>(width_dp, height_dp);
#ifdef CARRIAGEWAY_SDL2
    known += ", sdl2";
    if (back_end == "sdl2") return open_sdl2_window(width_dp, height_dp);
#endif
#ifdef CARRIAGEWAY_GLFW
    known += ", glfw";
    if (back_end == "glfw") return open_glfw_window(width_dp, height_dp);
#endif
    throw std::runtime_error("There is no window system \"" + std::string(back_end) +
                             "\" in this build. It has: " + known + ".");
}

} // namespace carriageway
