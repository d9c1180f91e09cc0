#include "platform/null/null_window.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

ImGuiKey imgui_key(Key key) {
    switch (key) {
        case Key::none: return ImGuiKey_None;
        case Key::enter: return ImGuiKey_Enter;
        case Key::escape: return ImGuiKey_Escape;
        case Key::tab: return ImGuiKey_Tab;
        case Key::space: return ImGuiKey_Space;
        case Key::backspace: return ImGuiKey_Backspace;
        case Key::remove: return ImGuiKey_Delete;
        case Key::left: return ImGuiKey_LeftArrow;
        case Key::right: return ImGuiKey_RightArrow;
        case Key::up: return ImGuiKey_UpArrow;
        case Key::down: return ImGuiKey_DownArrow;
        case Key::home: return ImGuiKey_Home;
        case Key::end: return ImGuiKey_End;
        case Key::page_up: return ImGuiKey_PageUp;
        case Key::page_down: return ImGuiKey_PageDown;
        case Key::plus: return ImGuiKey_KeypadAdd;
        case Key::minus: return ImGuiKey_Minus;
        case Key::zero: return ImGuiKey_0;
        case Key::f1: return ImGuiKey_F1;
        case Key::a: return ImGuiKey_A;
        case Key::n: return ImGuiKey_N;
        case Key::o: return ImGuiKey_O;
        case Key::p: return ImGuiKey_P;
        case Key::s: return ImGuiKey_S;
        case Key::y: return ImGuiKey_Y;
        case Key::z: return ImGuiKey_Z;
    }
    return ImGuiKey_None;
}

} // namespace

NullWindow::NullWindow(int width_dp, int height_dp, float pixels_per_dp) {
    surface_.pixels_per_dp = pixels_per_dp;
    surface_.width = static_cast<int>(std::lround(static_cast<float>(width_dp) * pixels_per_dp));
    surface_.height = static_cast<int>(std::lround(static_cast<float>(height_dp) * pixels_per_dp));
    ImGuiIO& io = ImGui::GetIO();
    io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
    io.BackendRendererName = "null";
    io.BackendPlatformName = "null";
}

NullWindow::~NullWindow() {
    ImGuiIO& io = ImGui::GetIO();
    io.BackendFlags &= ~ImGuiBackendFlags_RendererHasVtxOffset;
    io.BackendRendererName = nullptr;
    io.BackendPlatformName = nullptr;
}

void NullWindow::happen(InputEvent event) {
    if (event.time == 0.0) event.time = time_;
    waiting_.push_back(std::move(event));
}

void NullWindow::pointer(InputKind kind, Vec at, int pointer) {
    InputEvent event;
    event.kind = kind;
    event.at = at;
    event.pointer = pointer;
    happen(event);
}

void NullWindow::tap(Vec at, int pointer) {
    this->pointer(InputKind::down, at, pointer);
    this->pointer(InputKind::up, at, pointer);
}

void NullWindow::drag(Vec from, Vec to, int steps, int pointer) {
    this->pointer(InputKind::down, from, pointer);
    for (int i = 1; i <= steps; ++i) {
        const float share = static_cast<float>(i) / static_cast<float>(steps);
        this->pointer(InputKind::move, from + (to - from) * share, pointer);
    }
    this->pointer(InputKind::up, to, pointer);
}

void NullWindow::press(Key key, bool control, bool shift) {
    InputEvent event;
    event.kind = InputKind::key;
    event.key = key;
    event.control = control;
    event.shift = shift;
    happen(event);
}

void NullWindow::type(std::string_view text) {
    InputEvent event;
    event.kind = InputKind::text;
    event.text.assign(text);
    happen(event);
}

void NullWindow::resize(const Surface& surface) {
    surface_ = surface;
    happen({});
}

void NullWindow::wait(double seconds, std::vector<InputEvent>& events) {
    if (woken_.exchange(false)) happen({});
    if (waiting_.empty()) {
        if (seconds >= 0.0) {
            time_ += seconds;
            return;
        }
        InputEvent close;
        close.kind = InputKind::close;
        happen(close);
    }
    for (const InputEvent& event : waiting_) feed_imgui(event);
    events.insert(events.end(), waiting_.begin(), waiting_.end());
    waiting_.clear();
}

void NullWindow::feed_imgui(const InputEvent& event) const {
    ImGuiIO& io = ImGui::GetIO();
    const float ratio = surface_.pixels_per_dp;
    switch (event.kind) {
        case InputKind::down:
        case InputKind::move:
        case InputKind::up:
            if (event.pointer > 1) break; // Dear ImGui knows one pointer
            io.AddMouseSourceEvent(event.pointer == 0 ? ImGuiMouseSource_Mouse
                                                      : ImGuiMouseSource_TouchScreen);
            io.AddMousePosEvent(event.at.x * ratio, event.at.y * ratio);
            if (event.kind != InputKind::move)
                io.AddMouseButtonEvent(0, event.kind == InputKind::down);
            break;
        case InputKind::cancel: io.AddMouseButtonEvent(0, false); break;
        case InputKind::wheel: io.AddMouseWheelEvent(event.by.x, event.by.y); break;
        case InputKind::key:
            if (event.key == Key::none) break;
            io.AddKeyEvent(ImGuiMod_Ctrl, event.control);
            io.AddKeyEvent(ImGuiMod_Shift, event.shift);
            io.AddKeyEvent(ImGuiMod_Alt, event.alt);
            io.AddKeyEvent(imgui_key(event.key), true);
            io.AddKeyEvent(imgui_key(event.key), false);
            // Fingers leave the modifiers too, or the next letters would be shortcuts.
            for (const ImGuiKey modifier : {ImGuiMod_Ctrl, ImGuiMod_Shift, ImGuiMod_Alt})
                io.AddKeyEvent(modifier, false);
            break;
        case InputKind::text: io.AddInputCharactersUTF8(event.text.c_str()); break;
        default: break; // nothing that Dear ImGui would know
    }
}

void NullWindow::begin_frame() {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(surface_.width), static_cast<float>(surface_.height)};
    io.DisplayFramebufferScale = {1.0f, 1.0f};
    io.DeltaTime = static_cast<float>(std::clamp(time_ - shown_at_, 1e-4, 1.0));
    shown_at_ = time_;
    drawn_ = nullptr;
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height); // builds the atlas where that is due
}

void NullWindow::present(std::uint32_t background) {
    drawn_ = ImGui::GetDrawData();
    PresentedFrame frame;
    frame.background = background;
    frame.width = surface_.width;
    frame.height = surface_.height;
    frame.vertices = drawn_ != nullptr ? drawn_->TotalVtxCount : 0;
    frame.indices = drawn_ != nullptr ? drawn_->TotalIdxCount : 0;
    frame.time = time_;
    frames_.push_back(frame);
}

} // namespace carriageway
