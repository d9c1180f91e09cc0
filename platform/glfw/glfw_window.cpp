#include "platform/glfw/glfw_window.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>

#include <algorithm>
#include <atomic>
#include <stdexcept>
#include <string>

#include "platform/desktop/display_scale.h"
#include "platform/desktop/opengl_frame.h"

namespace carriageway {

namespace {

/// Where a mouse is that has left the window, dp.
constexpr Vec nowhere{-16384.0f, -16384.0f};

std::string last_error() {
    const char* words = nullptr;
    glfwGetError(&words);
    return words != nullptr ? words : "no reason given";
}

[[noreturn]] void give_up(const std::string& what, const std::string& remedy) {
    throw std::runtime_error(what + " (" + last_error() + "). " + remedy);
}

/// The library, for as long as it lives.
class Library {
public:
    Library() {
        if (glfwInit() != GLFW_TRUE)
            give_up("There is no display to open a window on",
                    "Set DISPLAY or WAYLAND_DISPLAY, or use \"carriageway check\" or "
                    "\"carriageway picture\", which need none.");
    }
    ~Library() { glfwTerminate(); }
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;
};

/// A window with a context of OpenGL.
class Screen {
public:
    Screen(int width, int height) {
        for (const OpenGlKind& each : opengl_kinds) {
            glfwDefaultWindowHints();
            glfwWindowHint(GLFW_CLIENT_API, each.embedded ? GLFW_OPENGL_ES_API : GLFW_OPENGL_API);
            glfwWindowHint(GLFW_CONTEXT_CREATION_API,
                           each.embedded ? GLFW_EGL_CONTEXT_API : GLFW_NATIVE_CONTEXT_API);
            glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, each.major);
            glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, each.minor);
            if (each.core) {
                glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
                glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
            }
            glfwWindowHint(GLFW_DEPTH_BITS, 0);
            glfwWindowHint(GLFW_STENCIL_BITS, 0);
            glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
            window = glfwCreateWindow(width, height, "Carriageway", nullptr, nullptr);
            if (window == nullptr) continue;
            kind = each;
            glfwMakeContextCurrent(window);
            glfwSwapInterval(1);
            return;
        }
        give_up("A window with OpenGL 3 can't be opened",
                "Update or install a graphics driver, or use \"carriageway check\" or "
                "\"carriageway picture\", which need none.");
    }
    ~Screen() { glfwDestroyWindow(window); }
    Screen(const Screen&) = delete;
    Screen& operator=(const Screen&) = delete;

    GLFWwindow* window = nullptr;
    OpenGlKind kind = opengl_kinds[0];
};

/// Dear ImGui's part of GLFW.
class ImGuiInput {
public:
    explicit ImGuiInput(GLFWwindow* window) {
        if (!ImGui_ImplGlfw_InitForOpenGL(window, false))
            throw std::runtime_error("Text input can't be set up.");
    }
    ~ImGuiInput() { ImGui_ImplGlfw_Shutdown(); }
    ImGuiInput(const ImGuiInput&) = delete;
    ImGuiInput& operator=(const ImGuiInput&) = delete;
};

std::string utf8(unsigned code) {
    std::string text;
    const auto tail = [&text, code](int shift) {
        text += static_cast<char>(0x80u | ((code >> shift) & 0x3Fu));
    };
    if (code < 0x80) {
        text += static_cast<char>(code);
    } else if (code < 0x800) {
        text += static_cast<char>(0xC0u | code >> 6);
        tail(0);
    } else if (code < 0x10000) {
        text += static_cast<char>(0xE0u | code >> 12);
        tail(6);
        tail(0);
    } else {
        text += static_cast<char>(0xF0u | code >> 18);
        tail(12);
        tail(6);
        tail(0);
    }
    return text;
}

/// GLFW names keys by their place on a US keyboard; letters and signs are wanted as they are
/// printed on this one.
Key printed_key(int code, int scancode) {
    const char* name = glfwGetKeyName(code, scancode);
    if (name == nullptr || name[0] == '\0' || name[1] != '\0') return Key::none;
    switch (name[0]) {
        case 'a': return Key::a;
        case 'n': return Key::n;
        case 'o': return Key::o;
        case 'p': return Key::p;
        case 's': return Key::s;
        case 'y': return Key::y;
        case 'z': return Key::z;
        case '+':
        case '=': return Key::plus; // the key that has the plus above it
        case '-': return Key::minus;
        case '0': return Key::zero;
        default: return Key::none;
    }
}

Key key_of(int code, int scancode) {
    switch (code) {
        case GLFW_KEY_ENTER:
        case GLFW_KEY_KP_ENTER: return Key::enter;
        case GLFW_KEY_ESCAPE: return Key::escape;
        case GLFW_KEY_TAB: return Key::tab;
        case GLFW_KEY_SPACE: return Key::space;
        case GLFW_KEY_BACKSPACE: return Key::backspace;
        case GLFW_KEY_DELETE: return Key::remove;
        case GLFW_KEY_LEFT: return Key::left;
        case GLFW_KEY_RIGHT: return Key::right;
        case GLFW_KEY_UP: return Key::up;
        case GLFW_KEY_DOWN: return Key::down;
        case GLFW_KEY_HOME: return Key::home;
        case GLFW_KEY_END: return Key::end;
        case GLFW_KEY_PAGE_UP: return Key::page_up;
        case GLFW_KEY_PAGE_DOWN: return Key::page_down;
        case GLFW_KEY_KP_ADD: return Key::plus;
        case GLFW_KEY_KP_SUBTRACT: return Key::minus;
        case GLFW_KEY_KP_0: return Key::zero;
        case GLFW_KEY_F1: return Key::f1;
        default: return printed_key(code, scancode);
    }
}

class GlfwWindow : public Window {
public:
    GlfwWindow(int width_dp, int height_dp)
        : wanted_(static_cast<float>(wanted_scale())),
          screen_(static_cast<int>(static_cast<float>(width_dp) * wanted_),
                  static_cast<int>(static_cast<float>(height_dp) * wanted_)),
          input_(screen_.window),
          frame_(screen_.kind) {
        glfwSetWindowUserPointer(screen_.window, this);
        listen_to_pointer();
        listen_to_keyboard();
        listen_to_window();
    }

    Surface surface() const override {
        Surface surface;
        glfwGetFramebufferSize(screen_.window, &surface.width, &surface.height);
        // Some systems give pixels and a scale, others units of their own.
        float scale_x = 1.0f, scale_y = 1.0f;
        glfwGetWindowContentScale(screen_.window, &scale_x, &scale_y);
        surface.pixels_per_dp = std::max({1.0f, scale_x, pixels_per_unit()}) * wanted_;
        return surface;
    }

    void wait(double seconds, std::vector<InputEvent>& events) override {
        if (waiting_.empty() && !woken_) {
            if (seconds < 0.0)
                glfwWaitEvents();
            else if (seconds > 0.0)
                glfwWaitEventsTimeout(seconds);
        }
        glfwPollEvents();
        if (woken_.exchange(false)) add(InputKind::redraw, 0);
        events.insert(events.end(), waiting_.begin(), waiting_.end());
        waiting_.clear();
    }

    void wake() override {
        if (!woken_.exchange(true)) glfwPostEmptyEvent();
    }

    void begin_frame() override {
        frame_.begin();
        ImGui_ImplGlfw_NewFrame();
        // All drawing is in pixels, whatever the system's units are.
        const Surface now = surface();
        ImGuiIO& io = ImGui::GetIO();
        io.DisplaySize = {static_cast<float>(now.width), static_cast<float>(now.height)};
        io.DisplayFramebufferScale = {1.0f, 1.0f};
    }

    void present(std::uint32_t background) override {
        const Surface now = surface();
        frame_.draw(now.width, now.height, background);
        glfwSwapBuffers(screen_.window);
    }

    double now() const override { return glfwGetTime(); }
    void keyboard(bool) override {}
    void keep_awake(bool) override {}
    bool prefers_dark() const override { return false; } // GLFW can't say
    void title(const std::string& text) override {
        glfwSetWindowTitle(screen_.window, text.c_str());
    }

private:
    static GlfwWindow& of(GLFWwindow* window) {
        return *static_cast<GlfwWindow*>(glfwGetWindowUserPointer(window));
    }
    void listen_to_pointer();
    void listen_to_keyboard();
    void listen_to_window();

    float pixels_per_unit() const {
        int width = 0, height = 0, pixels_x = 0, pixels_y = 0;
        glfwGetWindowSize(screen_.window, &width, &height);
        glfwGetFramebufferSize(screen_.window, &pixels_x, &pixels_y);
        return width > 0 ? static_cast<float>(pixels_x) / static_cast<float>(width) : 1.0f;
    }

    InputEvent& add(InputKind kind, int modifiers) {
        InputEvent event;
        event.kind = kind;
        event.at = mouse_;
        event.time = now();
        event.control = (modifiers & (GLFW_MOD_CONTROL | GLFW_MOD_SUPER)) != 0;
        event.shift = (modifiers & GLFW_MOD_SHIFT) != 0;
        event.alt = (modifiers & GLFW_MOD_ALT) != 0;
        waiting_.push_back(event);
        return waiting_.back();
    }
    /// The modifiers held, where GLFW does not tell them with the event.
    int held() const {
        const auto down = [this](int left, int right, int modifier) {
            return glfwGetKey(screen_.window, left) == GLFW_PRESS ||
                           glfwGetKey(screen_.window, right) == GLFW_PRESS
                       ? modifier
                       : 0;
        };
        return down(GLFW_KEY_LEFT_CONTROL, GLFW_KEY_RIGHT_CONTROL, GLFW_MOD_CONTROL) |
               down(GLFW_KEY_LEFT_SUPER, GLFW_KEY_RIGHT_SUPER, GLFW_MOD_SUPER) |
               down(GLFW_KEY_LEFT_SHIFT, GLFW_KEY_RIGHT_SHIFT, GLFW_MOD_SHIFT) |
               down(GLFW_KEY_LEFT_ALT, GLFW_KEY_RIGHT_ALT, GLFW_MOD_ALT);
    }
    void moved(double x, double y) {
        const float unit = pixels_per_unit();
        const Vec pixels{static_cast<float>(x) * unit, static_cast<float>(y) * unit};
        mouse_ = pixels * (1.0f / surface().pixels_per_dp);
        add(InputKind::move, held());
        ImGui_ImplGlfw_CursorPosCallback(screen_.window, static_cast<double>(pixels.x),
                                         static_cast<double>(pixels.y));
    }
    void pressed(int button, int action, int modifiers) {
        ImGui_ImplGlfw_MouseButtonCallback(screen_.window, button, action, modifiers);
        if (button != GLFW_MOUSE_BUTTON_LEFT) return;
        const bool down = action == GLFW_PRESS;
        if (!down && !mouse_down_) return; // was cancelled
        mouse_down_ = down;
        add(down ? InputKind::down : InputKind::up, modifiers);
    }
    void focused(int yes) {
        ImGui_ImplGlfw_WindowFocusCallback(screen_.window, yes);
        // What is held when the window loses the keyboard may lift elsewhere: nothing is meant.
        if (yes == GLFW_FALSE && mouse_down_) add(InputKind::cancel, 0);
        if (yes == GLFW_FALSE) mouse_down_ = false;
        add(InputKind::redraw, 0);
    }

    float wanted_ = 1.0f;
    Library library_;
    Screen screen_;
    ImGuiInput input_;
    OpenGlFrame frame_;
    std::vector<InputEvent> waiting_;
    std::atomic<bool> woken_{false};
    Vec mouse_; ///< dp
    bool mouse_down_ = false;
};

void GlfwWindow::listen_to_pointer() {
    glfwSetCursorPosCallback(screen_.window,
                             [](GLFWwindow* w, double x, double y) { of(w).moved(x, y); });
    glfwSetMouseButtonCallback(screen_.window, [](GLFWwindow* w, int button, int action,
                                                  int modifiers) {
        of(w).pressed(button, action, modifiers);
    });
    glfwSetScrollCallback(screen_.window, [](GLFWwindow* w, double x, double y) {
        ImGui_ImplGlfw_ScrollCallback(w, x, y);
        GlfwWindow& self = of(w);
        self.add(InputKind::wheel, self.held()).by = {static_cast<float>(x), static_cast<float>(y)};
    });
    glfwSetCursorEnterCallback(screen_.window, [](GLFWwindow* w, int entered) {
        ImGui_ImplGlfw_CursorEnterCallback(w, entered);
        GlfwWindow& self = of(w);
        if (entered == GLFW_TRUE || self.mouse_down_) return;
        self.mouse_ = nowhere;
        self.add(InputKind::move, 0);
    });
}

void GlfwWindow::listen_to_keyboard() {
    glfwSetKeyCallback(screen_.window,
                       [](GLFWwindow* w, int code, int scancode, int action, int modifiers) {
                           ImGui_ImplGlfw_KeyCallback(w, code, scancode, action, modifiers);
                           if (action == GLFW_RELEASE) return;
                           const Key key = key_of(code, scancode);
                           if (key != Key::none) of(w).add(InputKind::key, modifiers).key = key;
                       });
    glfwSetCharCallback(screen_.window, [](GLFWwindow* w, unsigned code) {
        ImGui_ImplGlfw_CharCallback(w, code);
        of(w).add(InputKind::text, 0).text = utf8(code);
    });
}

void GlfwWindow::listen_to_window() {
    glfwSetWindowFocusCallback(screen_.window,
                               [](GLFWwindow* w, int yes) { of(w).focused(yes); });
    glfwSetWindowRefreshCallback(screen_.window,
                                 [](GLFWwindow* w) { of(w).add(InputKind::redraw, 0); });
    glfwSetFramebufferSizeCallback(
        screen_.window, [](GLFWwindow* w, int, int) { of(w).add(InputKind::redraw, 0); });
    glfwSetWindowContentScaleCallback(
        screen_.window, [](GLFWwindow* w, float, float) { of(w).add(InputKind::redraw, 0); });
    glfwSetWindowCloseCallback(screen_.window, [](GLFWwindow* w) {
        glfwSetWindowShouldClose(w, GLFW_FALSE); // the program decides
        of(w).add(InputKind::close, 0);
    });
    glfwSetDropCallback(screen_.window, [](GLFWwindow* w, int count, const char** paths) {
        for (int i = 0; i < count; ++i) of(w).add(InputKind::file, 0).text = paths[i];
    });
}

} // namespace

std::unique_ptr<Window> open_glfw_window(int width_dp, int height_dp) {
    return std::make_unique<GlfwWindow>(width_dp, height_dp);
}

} // namespace carriageway
