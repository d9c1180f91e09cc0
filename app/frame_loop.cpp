#include "app/frame_loop.h"

#include <imgui.h>
#include <imgui_stdlib.h>

namespace carriageway {

namespace {

ImVec4 colour(Theme theme, Role role) {
    const std::uint32_t rgb = colour_of(theme, role);
    return {static_cast<float>(rgb >> 16 & 255u) / 255.0f, static_cast<float>(rgb >> 8 & 255u) / 255.0f,
            static_cast<float>(rgb & 255u) / 255.0f, 1.0f};
}

} // namespace

FrameLoop::FrameLoop(Program& program, Window& window, Fonts& fonts)
    : program_(program), window_(window), fonts_(fonts) {
    ImGui::GetIO().IniFilename = nullptr; // nothing of Dear ImGui's own is kept
}

/// The window's own field over the thing that is being typed in; false: it has none.
bool FrameLoop::window_text_field(const Frame& frame) {
    const std::string* text = program_.typing();
    if (!text || frame.typing.empty()) return window_.text_field(nullptr);
    TextField field;
    field.text = *text;
    field.box = frame.typing;
    field.size = em_of(TypeSize::body) * fonts_.scale();
    field.ink = colour_of(program_.theme(), Role::ink);
    field.paper = colour_of(program_.theme(), Role::panel);
    for (const Thing& thing : frame.list.things())
        if (thing.role == ThingRole::textbox && thing.box.contains(frame.typing.centre())) {
            field.name = thing.name;
            field.label = thing.label;
        }
    return window_.text_field(&field);
}

/// The text field being typed in lies over its place in the drawing: Dear ImGui brings selection,
/// the clipboard and composition.
void FrameLoop::text_field() {
    std::string* text = program_.typing();
    const Box box = program_.frame().typing;
    const bool typing = text != nullptr && !box.empty();
    if (typing != was_typing_) window_.keyboard(typing);
    if (!typing) {
        was_typing_ = false;
        return;
    }
    const float k = fonts_.pixels_per_dp();
    const Theme theme = program_.theme();
    ImGui::PushFont(fonts_.font({TypeSize::body, false}));
    ImGui::PushStyleColor(ImGuiCol_Text, colour(theme, Role::ink));
    ImGui::PushStyleColor(ImGuiCol_FrameBg, colour(theme, Role::panel));
    ImGui::PushStyleColor(ImGuiCol_TextSelectedBg, colour(theme, Role::quiet));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0f, 0.0f});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0f);
    const float pad = std::max(0.0f, 0.5f * (box.height() * k - ImGui::GetFontSize()));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {8.0f * k, pad});
    ImGui::SetNextWindowPos({box.x0 * k, box.y0 * k});
    ImGui::SetNextWindowSize({box.width() * k, box.height() * k});
    ImGui::Begin("typing", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoBackground |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoMove);
    if (!was_typing_) ImGui::SetKeyboardFocusHere();
    ImGui::SetNextItemWidth(box.width() * k);
    if (ImGui::InputText("##typing", text)) program_.text_changed();
    ImGui::End();
    ImGui::PopStyleVar(3);
    ImGui::PopStyleColor(3);
    ImGui::PopFont();
    was_typing_ = true;
}

void FrameLoop::show() {
    const Surface surface = window_.surface();
    if (surface.width <= 0 || surface.height <= 0) return;
    fonts_.rebuild(program_.state().looks.text_scale, surface.pixels_per_dp);
    window_.begin_frame();
    ImGui::NewFrame();
    const Frame& frame = program_.build(surface, window_.now(), window_.prefers_dark(), fonts_);
    painter_.paint(frame.list, program_.theme(), fonts_, *ImGui::GetBackgroundDrawList());
    window_.tell(frame.list);
    if (!window_text_field(frame)) text_field();
    ImGui::Render();
    window_.present(colour_of(program_.theme(), Role::paper));
    ++frames_;
}

double FrameLoop::wait_time() const {
    if (settle_ > 0) return 0.0;
    const double now = window_.now();
    const double next = program_.next_frame(now);
    const double wait = next >= 0.0 ? std::max(0.0, next - now) : -1.0;
    // The caret blinks only while somebody types.
    return was_typing_ && (wait < 0.0 || wait > 0.4) ? 0.4 : wait;
}

bool FrameLoop::turn() {
    const double next = program_.next_frame(window_.now());
    program_.set_abilities(window_.abilities());
    events_.clear();
    window_.wait(wait_time(), events_);
    for (const InputEvent& event : events_) program_.handle(event);
    if (program_.closing()) return false;
    const bool due = next >= 0.0 && window_.now() >= next;
    if (!events_.empty()) settle_ = 2;
    if (events_.empty() && settle_ == 0 && !due && !was_typing_) return true;
    show();
    for (const Errand& errand : program_.take_errands()) window_.run(errand);
    if (settle_ > 0) --settle_;
    const bool held = program_.state().held;
    if (held != was_held_) window_.keep_awake(held);
    was_held_ = held;
    return true;
}

} // namespace carriageway
