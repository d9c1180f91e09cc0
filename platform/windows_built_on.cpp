#include "platform/windows_built_on.h"

#ifdef CARRIAGEWAY_SDL2
#include <SDL.h>
#endif
#ifdef CARRIAGEWAY_GLFW
#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#endif

namespace carriageway {

namespace {

[[maybe_unused]] std::string with_points(int major, int minor, int patch) {
    return std::to_string(major) + "." + std::to_string(minor) + "." + std::to_string(patch);
}

} // namespace

std::vector<BuiltOn> windows_built_on() {
    std::vector<BuiltOn> all;
#ifdef CARRIAGEWAY_SDL2
    SDL_version sdl{};
    SDL_GetVersion(&sdl);
    all.push_back({"SDL", with_points(sdl.major, sdl.minor, sdl.patch), "Zlib"});
#endif
#ifdef CARRIAGEWAY_GLFW
    int major = 0, minor = 0, patch = 0;
    glfwGetVersion(&major, &minor, &patch); // may be called before anything else of it
    all.push_back({"GLFW", with_points(major, minor, patch), "Zlib"});
#endif
    return all;
}

} // namespace carriageway
