#include "platform/sdl2/sdl2_events.h"

#include <algorithm>

namespace carriageway {

namespace {

/// Where a mouse is that has left the window, dp.
constexpr Vec nowhere{-16384.0f, -16384.0f};

/// How much a pinch on a trackpad zooms: spreading two fingers by a quarter of its size doubles.
/// Ours, tried by hand.
constexpr float pinch_strength = 4.0f;

Key key_of(SDL_Keycode code) {
    switch (code) {
        case SDLK_RETURN:
        case SDLK_KP_ENTER: return Key::enter;
        case SDLK_ESCAPE:
        case SDLK_AC_BACK: return Key::escape;
        case SDLK_TAB: return Key::tab;
        case SDLK_SPACE: return Key::space;
        case SDLK_BACKSPACE: return Key::backspace;
        case SDLK_DELETE: return Key::remove;
        case SDLK_LEFT: return Key::left;
        case SDLK_RIGHT: return Key::right;
        case SDLK_UP: return Key::up;
        case SDLK_DOWN: return Key::down;
        case SDLK_HOME: return Key::home;
        case SDLK_END: return Key::end;
        case SDLK_PAGEUP: return Key::page_up;
        case SDLK_PAGEDOWN: return Key::page_down;
        case SDLK_PLUS:
        case SDLK_EQUALS: // the key that has the plus above it
        case SDLK_KP_PLUS: return Key::plus;
        case SDLK_MINUS:
        case SDLK_KP_MINUS: return Key::minus;
        case SDLK_0:
        case SDLK_KP_0: return Key::zero;
        case SDLK_F1: return Key::f1;
        case SDLK_a: return Key::a;
        case SDLK_n: return Key::n;
        case SDLK_o: return Key::o;
        case SDLK_p: return Key::p;
        case SDLK_s: return Key::s;
        case SDLK_y: return Key::y;
        case SDLK_z: return Key::z;
        default: return Key::none;
    }
}

} // namespace

void Sdl2Events::translate(const SDL_Event& event, const Sdl2Scale& scale, double time,
                           std::vector<InputEvent>& events) {
    events_ = &events;
    time_ = time;
    switch (event.type) {
        case SDL_MOUSEMOTION:
        case SDL_MOUSEBUTTONDOWN:
        case SDL_MOUSEBUTTONUP: mouse(event, scale); break;
        case SDL_MOUSEWHEEL: wheel(event.wheel); break;
        case SDL_FINGERDOWN:
        case SDL_FINGERMOTION:
        case SDL_FINGERUP: finger(event.tfinger, scale); break;
        case SDL_MULTIGESTURE: pinch(event.mgesture, scale); break;
        case SDL_KEYDOWN: key(event.key); break;
        case SDL_TEXTINPUT: add(InputKind::text).text = event.text.text; break;
        case SDL_DROPFILE: add(InputKind::file).text = event.drop.file; break;
        case SDL_WINDOWEVENT: window(event.window); break;
        case SDL_QUIT: add(InputKind::close); break;
        case SDL_LOCALECHANGED: add(InputKind::redraw); break;
        default: break;
    }
}

InputEvent& Sdl2Events::add(InputKind kind, int pointer) {
    InputEvent event;
    event.kind = kind;
    event.pointer = pointer;
    event.time = time_;
    if (pointer == 0) event.at = mouse_;
    const SDL_Keymod held = SDL_GetModState();
    event.control = (held & (KMOD_CTRL | KMOD_GUI)) != 0;
    event.shift = (held & KMOD_SHIFT) != 0;
    event.alt = (held & KMOD_ALT) != 0;
    events_->push_back(event);
    return events_->back();
}

void Sdl2Events::mouse(const SDL_Event& event, const Sdl2Scale& scale) {
    const bool motion = event.type == SDL_MOUSEMOTION;
    if ((motion ? event.motion.which : event.button.which) == SDL_TOUCH_MOUSEID) return;
    const int x = motion ? event.motion.x : event.button.x;
    const int y = motion ? event.motion.y : event.button.y;
    const Vec at{static_cast<float>(x) * scale.pixels_per_unit_x / scale.pixels_per_dp,
                 static_cast<float>(y) * scale.pixels_per_unit_y / scale.pixels_per_dp};
    if (motion) {
        mouse_ = at;
        add(InputKind::move);
        return;
    }
    if (event.button.button != SDL_BUTTON_LEFT) return;
    const bool down = event.type == SDL_MOUSEBUTTONDOWN;
    if (!down && !mouse_down_) return; // was cancelled
    mouse_ = at;
    mouse_down_ = down;
    add(down ? InputKind::down : InputKind::up);
}

void Sdl2Events::wheel(const SDL_MouseWheelEvent& event) {
    if (event.which == SDL_TOUCH_MOUSEID) return;
    add(InputKind::wheel).by = {event.preciseX, event.preciseY};
}

/// The finger's place in the list; -1 for one that lifts or moves without having touched.
int Sdl2Events::slot_of(const SDL_TouchFingerEvent& event) {
    const auto same = [&event](const Finger& finger) {
        return finger.down && finger.device == event.touchId && finger.id == event.fingerId;
    };
    auto found = std::find_if(fingers_.begin(), fingers_.end(), same);
    if (found == fingers_.end() && event.type == SDL_FINGERDOWN) {
        found = std::find_if(fingers_.begin(), fingers_.end(),
                             [](const Finger& finger) { return !finger.down; });
        if (found == fingers_.end()) found = fingers_.emplace(found);
        found->device = event.touchId;
        found->id = event.fingerId;
    }
    return found == fingers_.end() ? -1 : static_cast<int>(found - fingers_.begin());
}

void Sdl2Events::finger(const SDL_TouchFingerEvent& event, const Sdl2Scale& scale) {
    // Trackpads report fingers too, in places of their own.
    if (event.touchId == SDL_MOUSE_TOUCHID ||
        SDL_GetTouchDeviceType(event.touchId) == SDL_TOUCH_DEVICE_INDIRECT_ABSOLUTE ||
        SDL_GetTouchDeviceType(event.touchId) == SDL_TOUCH_DEVICE_INDIRECT_RELATIVE)
        return;
    const int slot = slot_of(event);
    if (slot < 0) return;
    Finger& finger = fingers_[static_cast<std::size_t>(slot)];
    finger.at = {event.x * scale.width / scale.pixels_per_dp,
                 event.y * scale.height / scale.pixels_per_dp};
    finger.down = event.type != SDL_FINGERUP;
    const InputKind kind = event.type == SDL_FINGERDOWN ? InputKind::down
                           : event.type == SDL_FINGERUP ? InputKind::up
                                                        : InputKind::move;
    add(kind, slot + 1).at = finger.at;
}

/// Two fingers on a touch screen are two pointers; only trackpads have pinches of their own.
void Sdl2Events::pinch(const SDL_MultiGestureEvent& event, const Sdl2Scale&) {
    const SDL_TouchDeviceType device = SDL_GetTouchDeviceType(event.touchId);
    if (device != SDL_TOUCH_DEVICE_INDIRECT_ABSOLUTE &&
        device != SDL_TOUCH_DEVICE_INDIRECT_RELATIVE)
        return;
    if (event.dDist == 0.0f) return;
    add(InputKind::pinch).by = {std::exp2(pinch_strength * event.dDist), 0.0f};
}

void Sdl2Events::key(const SDL_KeyboardEvent& event) {
    const Key key = key_of(event.keysym.sym);
    if (key == Key::none) return;
    InputEvent& added = add(InputKind::key);
    added.key = key;
    added.control = (event.keysym.mod & (KMOD_CTRL | KMOD_GUI)) != 0;
    added.shift = (event.keysym.mod & KMOD_SHIFT) != 0;
    added.alt = (event.keysym.mod & KMOD_ALT) != 0;
}

void Sdl2Events::window(const SDL_WindowEvent& event) {
    switch (event.event) {
        case SDL_WINDOWEVENT_CLOSE: break; // SDL_QUIT follows for the last window
        case SDL_WINDOWEVENT_LEAVE:
            if (mouse_down_) break;
            mouse_ = nowhere;
            add(InputKind::move);
            break;
        case SDL_WINDOWEVENT_FOCUS_LOST:
            let_go();
            add(InputKind::redraw);
            break;
        case SDL_WINDOWEVENT_MOVED:
        case SDL_WINDOWEVENT_ENTER: break;
        default: add(InputKind::redraw); break;
    }
}

/// What is held when the window loses the keyboard may lift elsewhere: nothing is meant by it.
void Sdl2Events::let_go() {
    if (mouse_down_) add(InputKind::cancel);
    mouse_down_ = false;
    for (std::size_t i = 0; i < fingers_.size(); ++i) {
        if (!fingers_[i].down) continue;
        fingers_[i].down = false;
        add(InputKind::cancel, static_cast<int>(i) + 1).at = fingers_[i].at;
    }
}

} // namespace carriageway
