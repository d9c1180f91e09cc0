#include "platform/web/web_input.h"

#include <emscripten.h>
#include <emscripten/html5.h>

#include <cmath>
#include <utility>

#include "platform/web/web_keys.h"

namespace carriageway {

namespace {

constexpr const char* canvas = "#canvas";
const char* const window = EMSCRIPTEN_EVENT_TARGET_WINDOW;

double now() { return emscripten_get_now() / 1000.0; }

/// When a finger did something (s), rather than when a busy page came to see it: whether it flung or
/// rested is told by that. Browsers that count from elsewhere get the present.
double time_of(double timestamp) {
    const double at = timestamp / 1000.0, latest = now();
    return at > latest - 10.0 && at <= latest ? at : latest;
}

/// What one notch of a wheel scrolls, in the units of the three modes of a WheelEvent: px, lines,
/// pages. Common values of browsers, no source.
constexpr double notch_of_mode[] = {100.0, 3.0, 1.0};

EM_JS(int, page_types_text, (), {
    const at = document.activeElement;
    return at && (at.tagName === 'INPUT' && at.type === 'text' && !at.readOnly || at.tagName === 'TEXTAREA' || at.tagName === 'SELECT') ? 1 : 0;
});
EM_JS(int, page_has_focus_on_thing, (), {
    const at = document.activeElement;
    return at && at.closest && at.closest('#mirror') && at.tagName !== 'MAIN' ? 1 : 0;
});

} // namespace

/// The callbacks that html5.h wants as plain functions.
struct WebInput::Listeners {
    static WebInput& of(void* self) { return *static_cast<WebInput*>(self); }

    static EM_BOOL touch(int type, const EmscriptenTouchEvent* event, void* self) {
        const InputKind kind = type == EMSCRIPTEN_EVENT_TOUCHSTART  ? InputKind::down
                               : type == EMSCRIPTEN_EVENT_TOUCHMOVE ? InputKind::move
                               : type == EMSCRIPTEN_EVENT_TOUCHEND  ? InputKind::up
                                                                    : InputKind::cancel;
        for (int i = 0; i < event->numTouches; ++i) {
            const EmscriptenTouchPoint& touch = event->touches[i];
            if (!touch.isChanged) continue;
            // Identifiers count from 0 in some browsers and from anywhere in others; 0 is the mouse.
            of(self).pointer(kind, static_cast<int>(touch.identifier) + 1, touch.targetX, touch.targetY,
                             time_of(event->timestamp),
                             kind == InputKind::up && i + 1 == event->numTouches);
        }
        return EM_TRUE; // no mouse events follow, nothing scrolls or zooms
    }

    static EM_BOOL mouse(int type, const EmscriptenMouseEvent* event, void* self) {
        WebInput& input = of(self);
        if (type != EMSCRIPTEN_EVENT_MOUSEMOVE && event->button != 0) return EM_FALSE;
        if (type == EMSCRIPTEN_EVENT_MOUSEDOWN) {
            input.mouse_down_ = true;
            input.pointer(InputKind::down, 0, event->targetX, event->targetY, time_of(event->timestamp), false);
            return EM_FALSE; // the browser moves the focus to the canvas
        }
        // A move counts while the button is down: nothing in the program shows what it hovers over.
        if (!input.mouse_down_) return EM_FALSE;
        if (type == EMSCRIPTEN_EVENT_MOUSEUP) {
            input.mouse_down_ = false;
            input.pointer(InputKind::up, 0, event->targetX, event->targetY, time_of(event->timestamp), true);
            return EM_TRUE;
        }
        if (event->buttons == 0) { // let go outside the window
            input.mouse_down_ = false;
            input.pointer(InputKind::cancel, 0, event->targetX, event->targetY, time_of(event->timestamp), false);
            return EM_TRUE;
        }
        input.pointer(InputKind::move, 0, event->targetX, event->targetY, time_of(event->timestamp), false);
        return EM_TRUE;
    }

    static EM_BOOL wheel(int, const EmscriptenWheelEvent* event, void* self) {
        InputEvent out;
        out.at = {static_cast<float>(event->mouse.targetX), static_cast<float>(event->mouse.targetY)};
        const double notch = notch_of_mode[event->deltaMode <= 2 ? event->deltaMode : 0];
        if (event->mouse.ctrlKey) { // a trackpad's pinch comes as this, too
            out.kind = InputKind::pinch;
            out.by.x = static_cast<float>(std::exp(-0.01 * event->deltaY * 100.0 / notch));
        } else {
            out.kind = InputKind::wheel;
            out.by = {static_cast<float>(-event->deltaX / notch), static_cast<float>(-event->deltaY / notch)};
        }
        of(self).add(std::move(out), false);
        return EM_TRUE;
    }

    static EM_BOOL key(int, const EmscriptenKeyboardEvent* event, void* self) {
        const std::string_view name = event->key;
        // Tab is the browser's, which walks through the mirror; a text field has all of the rest.
        if (name == "Tab" || event->metaKey || page_types_text()) return EM_FALSE;
        // So is what presses the element that has the focus.
        if ((name == "Enter" || name == " ") && page_has_focus_on_thing()) return EM_FALSE;
        InputEvent out;
        out.kind = InputKind::key;
        out.key = key_of(name);
        out.control = event->ctrlKey;
        out.shift = event->shiftKey;
        out.alt = event->altKey;
        const bool shortcut = out.control && (out.key == Key::z || out.key == Key::y);
        const bool stepping = out.control && (out.key == Key::left || out.key == Key::right ||
                                              out.key == Key::up || out.key == Key::down);
        if (out.control && !shortcut && !stepping) return EM_FALSE; // the browser's own
        const std::string text = text_of_key(name);
        if (out.key == Key::none && text.empty()) return EM_FALSE;
        if (out.key != Key::none) of(self).add(out, true);
        if (!text.empty() && !out.control && !out.alt) {
            out.kind = InputKind::text;
            out.key = Key::none;
            out.text = text;
            of(self).add(std::move(out), true);
        }
        return EM_TRUE;
    }

    static EM_BOOL left(int, const EmscriptenFocusEvent*, void* self) {
        WebInput& input = of(self);
        if (input.mouse_down_) input.pointer(InputKind::cancel, 0, 0.0, 0.0, now(), false);
        input.mouse_down_ = false;
        return EM_FALSE;
    }

    static void listen(WebInput* self, bool on) {
        const auto touching = on ? &touch : nullptr;
        emscripten_set_touchstart_callback(canvas, self, EM_TRUE, touching);
        emscripten_set_touchmove_callback(canvas, self, EM_TRUE, touching);
        emscripten_set_touchend_callback(canvas, self, EM_TRUE, touching);
        emscripten_set_touchcancel_callback(canvas, self, EM_TRUE, touching);
        const auto clicking = on ? &mouse : nullptr;
        emscripten_set_mousedown_callback(canvas, self, EM_TRUE, clicking);
        emscripten_set_mousemove_callback(window, self, EM_TRUE, clicking);
        emscripten_set_mouseup_callback(window, self, EM_TRUE, clicking);
        emscripten_set_wheel_callback(canvas, self, EM_TRUE, on ? &wheel : nullptr);
        emscripten_set_keydown_callback(window, self, EM_FALSE, on ? &key : nullptr);
        emscripten_set_blur_callback(window, self, EM_FALSE, on ? &left : nullptr);
    }
};

WebInput::WebInput(std::function<void(bool)> happened) : happened_(std::move(happened)) {
    Listeners::listen(this, true);
}

WebInput::~WebInput() { Listeners::listen(this, false); }

void WebInput::pointer(InputKind kind, int pointer, double x, double y, double time, bool at_once) {
    if (kind == InputKind::down) held_.insert(pointer);
    if (kind == InputKind::up || kind == InputKind::cancel) held_.erase(pointer);
    InputEvent event;
    event.kind = kind;
    event.pointer = pointer;
    event.at = {static_cast<float>(x), static_cast<float>(y)};
    event.time = time;
    add(std::move(event), at_once);
}

void WebInput::add(InputEvent event, bool at_once) {
    if (event.time == 0.0) event.time = now();
    waiting_.push_back(std::move(event));
    happened_(at_once);
}

void WebInput::take(std::vector<InputEvent>& events) {
    for (InputEvent& event : waiting_) events.push_back(std::move(event));
    waiting_.clear();
}

} // namespace carriageway
