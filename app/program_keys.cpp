// The keyboard: everything that a finger can reach can be reached by keys.
#include "app/program.h"

namespace carriageway {

namespace {

bool can_focus(const Thing& thing) {
    return thing.enabled && (thing.action >= 0 || thing.hold >= 0 || thing.less >= 0);
}

/// Characters that the number pad takes from the keyboard.
std::optional<PadKey> pad_key_of(char c) {
    if (c >= '0' && c <= '9') return static_cast<PadKey>(c - '0');
    switch (c) {
    case '.':
    case ',': return PadKey::point;
    case '/': return PadKey::slash;
    case ' ': return PadKey::space;
    case '-': return PadKey::minus;
    case '"':
    case 'i': return PadKey::inch;
    case 'm': return PadKey::mm;
    case 'c': return PadKey::cm;
    default: return std::nullopt;
    }
}

} // namespace

const Thing* Program::focused() const {
    return state_.focus.empty() ? nullptr : frame_.list.find(state_.focus);
}

void Program::move_focus(int by) {
    const std::span<const Thing> things = frame_.list.things();
    std::vector<std::size_t> stops;
    std::size_t at = things.size();
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (!can_focus(things[i])) continue;
        if (things[i].name == state_.focus) at = stops.size();
        stops.push_back(i);
    }
    if (stops.empty()) return;
    const std::size_t count = stops.size();
    std::size_t next = by > 0 ? 0 : count - 1;
    if (at < count) next = (at + count + static_cast<std::size_t>(by > 0 ? 1 : count - 1)) % count;
    state_.focus = things[stops[next]].name;
    state_.show_focus = true;
    keep_focus_in_sight();
}

void Program::keep_focus_in_sight() {
    const Thing* thing = focused();
    if (!thing) return;
    for (const ScrollArea& area : frame_.scrolls) {
        if (thing->box.x0 < area.box.x0 - 1.0f || thing->box.x1 > area.box.x1 + 1.0f) continue;
        if (thing->clip == 0 || area.covered) continue;
        float& offset = state_.*area.offset;
        if (thing->box.y0 < area.box.y0) offset -= area.box.y0 - thing->box.y0 + 12.0f;
        else if (thing->box.y1 > area.box.y1) offset += thing->box.y1 - area.box.y1 + 12.0f;
    }
}

/// Arrow keys on a stop: 1 mm, with Ctrl 0.1, with Shift 10, toward the end that they point to.
void Program::adjust_focused(const InputEvent& event, int direction) {
    const Thing* thing = focused();
    if (thing && thing->less >= 0 && thing->more >= 0 && !event.alt) {
        const Action action = frame_.actions[static_cast<std::size_t>(thing->more)];
        if (const StepStop* step = action.as<StepStop>()) {
            const double mm = event.control ? 0.1 : event.shift ? 10.0 : 1.0;
            act(StepStop{step->head, step->end, 0.0, mm * direction});
            return;
        }
    }
    if (state_.place != Place::press || state_.pad) return;
    if (state_.head == 0 || event.alt) {
        // Nothing to set: the arrows move the drawing, as they do with Alt anywhere.
        const float step = 60.0f;
        const bool across = event.key == Key::left || event.key == Key::right;
        const Vec by = across ? Vec{-step * static_cast<float>(direction), 0.0f}
                              : Vec{0.0f, step * static_cast<float>(direction)};
        state_.own_camera = true;
        state_.move.reset();
        state_.camera = panned({state_.camera, layout_.diagram}, by);
        return;
    }
    const double mm = event.control ? 0.1 : event.shift ? 10.0 : 1.0;
    act(StepStop{state_.head, state_.stop, 0.0, mm * direction});
}

bool Program::pad_key(const InputEvent& event) {
    if (!state_.pad) return false;
    for (const char c : event.text)
        if (const std::optional<PadKey> key = pad_key_of(c)) press_pad(*key);
    return true;
}

/// The share sheet lies over everything: only what moves about in it goes on to the rest.
bool Program::sheet_key(const InputEvent& event) {
    switch (event.key) {
    case Key::escape: act(CloseShare{}); return true;
    case Key::up: scroll_at(window_.centre(), -60.0f); return true;
    case Key::down: scroll_at(window_.centre(), 60.0f); return true;
    case Key::page_up: scroll_at(window_.centre(), -200.0f); return true;
    case Key::page_down: scroll_at(window_.centre(), 200.0f); return true;
    case Key::tab:
    case Key::enter:
    case Key::space: return false;
    default: return true;
    }
}

void Program::key(const InputEvent& event) {
    if (state_.typing) {
        // The text field has the keyboard; only these leave it.
        if (event.key == Key::escape) cancel_text();
        else if (event.key == Key::enter) accept_text();
        return;
    }
    if (state_.pad) {
        if (event.key == Key::escape) return press_pad(PadKey::cancel);
        if (event.key == Key::backspace) return press_pad(PadKey::backspace);
        if (event.key == Key::enter && (!state_.show_focus || !focused())) return press_pad(PadKey::accept);
        // Figures reach the pad as text; here they would move the diagram behind it.
        if (event.key != Key::tab && event.key != Key::enter) return;
    }
    if (state_.share && sheet_key(event)) return;
    if (state_.measuring.open && !state_.share && measure_key(event)) return;
    if (state_.day.open && !state_.share && !state_.measuring.open && day_key(event)) return;
    switch (event.key) {
    case Key::tab: move_focus(event.shift ? -1 : 1); break;
    case Key::enter:
    case Key::space: {
        const Thing* thing = focused();
        if (thing && thing->action >= 0) act(Action(frame_.actions[static_cast<std::size_t>(thing->action)]));
        state_.show_focus = true;
        break;
    }
    case Key::escape:
        if (state_.place != Place::press) act(GoTo{Place::press});
        else if (state_.head != 0) act(ChooseHead{0});
        break;
    case Key::p:
        if (!event.control && !event.alt) act(ShowClass{!state_.class_view.on});
        break;
    case Key::z:
        if (event.control) act(event.shift ? Action(Redo{}) : Action(Undo{}));
        break;
    case Key::y:
        if (event.control) act(Redo{});
        break;
    case Key::up:
    case Key::right: adjust_focused(event, 1); break;
    case Key::down:
    case Key::left: adjust_focused(event, -1); break;
    case Key::plus: act(Zoom{1.5}); break;
    case Key::minus: act(Zoom{1.0 / 1.5}); break;
    case Key::zero:
    case Key::home: act(ShowAll{}); break;
    case Key::page_down: scroll_at(layout_.panel.centre(), 200.0f); break;
    case Key::page_up: scroll_at(layout_.panel.centre(), -200.0f); break;
    default: break;
    }
}

} // namespace carriageway
