#include "platform/sdl2/sdl2_window.h"

#include <SDL.h>
#include <imgui.h>
#include <imgui_impl_sdl2.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <stdexcept>
#include <string>
#include <string_view>

#include "platform/desktop/display_scale.h"
#include "platform/desktop/opengl_frame.h"
#include "platform/sdl2/sdl2_events.h"

namespace carriageway {

namespace {

[[noreturn]] void give_up(const std::string& what, const std::string& remedy) {
    throw std::runtime_error(what + " (" + SDL_GetError() + "). " + remedy);
}

/// SDL's video, for as long as it lives.
class Video {
public:
    Video() {
        SDL_SetMainReady();
        SDL_SetHint(SDL_HINT_APP_NAME, "Carriageway");
        SDL_SetHint(SDL_HINT_IME_SHOW_UI, "1");
        SDL_SetHint(SDL_HINT_WINDOWS_DPI_SCALING, "1");
        SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1"); // until keep_awake
        if (SDL_InitSubSystem(parts) != 0)
            no_display();
        // SDL falls back to a driver that shows nothing; that is meant only where it is asked for.
        const std::string_view driver = SDL_GetCurrentVideoDriver();
        if ((driver == "offscreen" || driver == "dummy") && SDL_getenv("SDL_VIDEODRIVER") == nullptr) {
            SDL_QuitSubSystem(parts);
            SDL_SetError("no screen was found");
            no_display();
        }
        wake_event = SDL_RegisterEvents(1);
    }
    ~Video() { SDL_QuitSubSystem(parts); }
    Video(const Video&) = delete;
    Video& operator=(const Video&) = delete;

    Uint32 wake_event = 0;

private:
    static constexpr Uint32 parts = SDL_INIT_VIDEO | SDL_INIT_EVENTS;
    [[noreturn]] static void no_display() {
        give_up("There is no display to open a window on",
                "Set DISPLAY or WAYLAND_DISPLAY, or use \"carriageway check\" or "
                "\"carriageway picture\", which need none.");
    }
};

/// A window with a context of OpenGL.
class Screen {
public:
    Screen(int width, int height) {
        for (const OpenGlKind& each : opengl_kinds) {
            if (!open(each, width, height)) continue;
            kind = each;
            SDL_GL_SetSwapInterval(1);
            return;
        }
        give_up("A window with OpenGL 3 can't be opened",
                "Update or install a graphics driver, or use \"carriageway check\" or "
                "\"carriageway picture\", which need none.");
    }
    ~Screen() { close(); }
    Screen(const Screen&) = delete;
    Screen& operator=(const Screen&) = delete;

    SDL_Window* window = nullptr;
    SDL_GLContext context = nullptr;
    OpenGlKind kind = opengl_kinds[0];

private:
    bool open(const OpenGlKind& wanted, int width, int height) {
        SDL_GL_ResetAttributes();
        SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, wanted.major);
        SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, wanted.minor);
        SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK,
                            wanted.embedded ? SDL_GL_CONTEXT_PROFILE_ES
                            : wanted.core   ? SDL_GL_CONTEXT_PROFILE_CORE
                                            : 0);
        if (wanted.core)
            SDL_GL_SetAttribute(SDL_GL_CONTEXT_FLAGS, SDL_GL_CONTEXT_FORWARD_COMPATIBLE_FLAG);
        SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 0);
        SDL_GL_SetAttribute(SDL_GL_DOUBLEBUFFER, 1);
        window = SDL_CreateWindow("Carriageway", SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED,
                                  width, height,
                                  SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE |
                                      SDL_WINDOW_ALLOW_HIGHDPI);
        if (window != nullptr) context = SDL_GL_CreateContext(window);
        if (context != nullptr && SDL_GL_MakeCurrent(window, context) == 0) return true;
        close();
        return false;
    }
    void close() {
        if (context != nullptr) SDL_GL_DeleteContext(context);
        if (window != nullptr) SDL_DestroyWindow(window);
        context = nullptr;
        window = nullptr;
    }
};

/// Dear ImGui's part of SDL.
class ImGuiInput {
public:
    explicit ImGuiInput(const Screen& screen) {
        if (!ImGui_ImplSDL2_InitForOpenGL(screen.window, screen.context))
            throw std::runtime_error("Text input can't be set up.");
    }
    ~ImGuiInput() { ImGui_ImplSDL2_Shutdown(); }
    ImGuiInput(const ImGuiInput&) = delete;
    ImGuiInput& operator=(const ImGuiInput&) = delete;
};

class Sdl2Window : public Window {
public:
    Sdl2Window(int width_dp, int height_dp)
        : wanted_(static_cast<float>(wanted_scale())),
          screen_(static_cast<int>(static_cast<float>(width_dp) * wanted_),
                  static_cast<int>(static_cast<float>(height_dp) * wanted_)),
          input_(screen_),
          frame_(screen_.kind) {
        // A physical keyboard may be typed on at any time; an on-screen one comes when asked for.
        if (SDL_HasScreenKeyboardSupport())
            SDL_StopTextInput();
        else
            SDL_StartTextInput();
    }

    Surface surface() const override {
        Surface surface;
        SDL_GL_GetDrawableSize(screen_.window, &surface.width, &surface.height);
        surface.pixels_per_dp = std::max(1.0f, units().x) * wanted_;
        return surface;
    }

    void wait(double seconds, std::vector<InputEvent>& events) override;

    void wake() override {
        if (woken_.exchange(true)) return; // one is on its way
        SDL_Event event{};
        event.type = video_.wake_event;
        if (SDL_PushEvent(&event) != 1) woken_ = false;
    }

    void begin_frame() override {
        frame_.begin();
        ImGui_ImplSDL2_NewFrame();
        // All drawing is in pixels, whatever the system's units are.
        const Surface now = surface();
        ImGuiIO& io = ImGui::GetIO();
        io.DisplaySize = {static_cast<float>(now.width), static_cast<float>(now.height)};
        io.DisplayFramebufferScale = {1.0f, 1.0f};
        if (units().x == 1.0f) return;
        // Dear ImGui has just asked SDL where the mouse is, in the system's units.
        const Vec mouse = translator_.mouse() * now.pixels_per_dp;
        io.AddMousePosEvent(mouse.x, mouse.y);
    }

    void present(std::uint32_t background) override {
        const Surface now = surface();
        frame_.draw(now.width, now.height, background);
        SDL_GL_SwapWindow(screen_.window);
    }

    double now() const override {
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
    }

    void keyboard(bool shown) override {
        if (!SDL_HasScreenKeyboardSupport()) return;
        if (shown)
            SDL_StartTextInput();
        else
            SDL_StopTextInput();
    }

    void keep_awake(bool awake) override {
        if (awake)
            SDL_DisableScreenSaver();
        else
            SDL_EnableScreenSaver();
    }

    bool prefers_dark() const override { return false; } // SDL 2 can't say
    void title(const std::string& text) override {
        SDL_SetWindowTitle(screen_.window, text.c_str());
    }

private:
    /// Pixels per unit of the window system.
    Vec units() const {
        int width = 0, height = 0, pixels_x = 0, pixels_y = 0;
        SDL_GetWindowSize(screen_.window, &width, &height);
        SDL_GL_GetDrawableSize(screen_.window, &pixels_x, &pixels_y);
        if (width < 1 || height < 1) return {1.0f, 1.0f};
        return {static_cast<float>(pixels_x) / static_cast<float>(width),
                static_cast<float>(pixels_y) / static_cast<float>(height)};
    }
    void take(SDL_Event& event, std::vector<InputEvent>& events);
    void feed_imgui(SDL_Event event, Vec pixels_per_unit) const;

    float wanted_ = 1.0f;
    Video video_;
    Screen screen_;
    ImGuiInput input_;
    OpenGlFrame frame_;
    Sdl2Events translator_;
    std::atomic<bool> woken_{false};
    std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

void Sdl2Window::wait(double seconds, std::vector<InputEvent>& events) {
    constexpr double longest = 1e6; // s: fits into SDL's milliseconds
    SDL_Event event;
    int there = 0;
    if (seconds < 0.0)
        there = SDL_WaitEvent(&event);
    else if (seconds > 0.0)
        there = SDL_WaitEventTimeout(
            &event, static_cast<int>(std::ceil(std::min(seconds, longest) * 1000.0)));
    if (there != 0) take(event, events);
    // SDL_PollEvent would stop at the mark that waiting has left in the queue.
    SDL_PumpEvents();
    while (SDL_PeepEvents(&event, 1, SDL_GETEVENT, SDL_FIRSTEVENT, SDL_LASTEVENT) == 1)
        take(event, events);
}

void Sdl2Window::take(SDL_Event& event, std::vector<InputEvent>& events) {
    if (event.type == video_.wake_event) {
        woken_ = false;
        events.emplace_back().time = now();
        return;
    }
    const Vec unit = units();
    const Surface shown = surface();
    Sdl2Scale scale;
    scale.pixels_per_unit_x = unit.x;
    scale.pixels_per_unit_y = unit.y;
    scale.width = static_cast<float>(shown.width);
    scale.height = static_cast<float>(shown.height);
    scale.pixels_per_dp = shown.pixels_per_dp;
    feed_imgui(event, unit);
    translator_.translate(event, scale, now(), events);
    if (event.type == SDL_DROPFILE) SDL_free(event.drop.file);
}

void Sdl2Window::feed_imgui(SDL_Event event, Vec pixels_per_unit) const {
    if (event.type == SDL_MOUSEMOTION) {
        event.motion.x = static_cast<int>(static_cast<float>(event.motion.x) * pixels_per_unit.x);
        event.motion.y = static_cast<int>(static_cast<float>(event.motion.y) * pixels_per_unit.y);
    }
    ImGui_ImplSDL2_ProcessEvent(&event);
}

} // namespace

std::unique_ptr<Window> open_sdl2_window(int width_dp, int height_dp) {
    return std::make_unique<Sdl2Window>(width_dp, height_dp);
}

} // namespace carriageway
