#include "app/gesture.h"

namespace carriageway {

GestureReader::Pointer* GestureReader::find(int id) {
    for (int i = 0; i < count_; ++i)
        if (pointers_[static_cast<std::size_t>(i)].id == id) return &pointers_[static_cast<std::size_t>(i)];
    return nullptr;
}

void GestureReader::down(const InputEvent& event, std::vector<Gesture>& out) {
    if (find(event.pointer) || count_ == 2) return;
    Pointer& pointer = pointers_[static_cast<std::size_t>(count_++)];
    pointer = {event.pointer, event.at, event.at, {}, event.time, event.time};
    Gesture gesture;
    gesture.at = gesture.from = event.at;
    gesture.touch = event.pointer > 0;
    if (count_ == 1) {
        dragging_ = spent_ = overdue_ = false;
        gesture.kind = GestureKind::press;
        out.push_back(gesture);
        return;
    }
    // A second finger turns whatever the first began into a pinch.
    if (dragging_) {
        gesture.kind = GestureKind::drag_cancel;
        out.push_back(gesture);
    }
    dragging_ = false;
    spent_ = true;
}

void GestureReader::move(const InputEvent& event, std::vector<Gesture>& out) {
    Pointer* pointer = find(event.pointer);
    if (!pointer) return;
    const Vec by = event.at - pointer->at;
    Gesture gesture;
    gesture.touch = event.pointer > 0;
    gesture.from = pointer->from;
    if (count_ == 2) {
        const Pointer& other = pointers_[pointer == &pointers_[0] ? 1 : 0];
        const Vec middle_before = (pointer->at + other.at) * 0.5f;
        const float apart_before = std::max(20.0f, length(pointer->at - other.at));
        pointer->at = event.at;
        const Vec middle = (pointer->at + other.at) * 0.5f;
        gesture.kind = GestureKind::pinch;
        gesture.at = middle;
        gesture.by = middle - middle_before;
        gesture.factor = std::max(20.0f, length(pointer->at - other.at)) / apart_before;
        out.push_back(gesture);
        return;
    }
    const double dt = std::max(0.001, event.time - pointer->moved);
    pointer->velocity = pointer->velocity * 0.6f + by * static_cast<float>(0.4 / dt);
    pointer->moved = event.time;
    pointer->at = event.at;
    gesture.at = event.at;
    if (spent_) return;
    const float slop = gesture.touch ? touch_slop : mouse_slop;
    if (!dragging_ && length(event.at - pointer->from) > slop) {
        dragging_ = true;
        gesture.kind = GestureKind::drag_start;
        out.push_back(gesture);
        // What moved before the threshold counts too, so nothing lags behind the finger.
        gesture.by = event.at - pointer->from;
        gesture.kind = GestureKind::drag;
        out.push_back(gesture);
    } else if (dragging_) {
        gesture.kind = GestureKind::drag;
        gesture.by = by;
        out.push_back(gesture);
    }
}

void GestureReader::up(const InputEvent& event, std::vector<Gesture>& out) {
    Pointer* pointer = find(event.pointer);
    if (!pointer) return;
    Gesture gesture;
    gesture.at = event.at;
    gesture.from = pointer->from;
    gesture.touch = event.pointer > 0;
    // A finger that rested before it lifted flings nothing.
    if (event.time - pointer->moved < 0.05) gesture.velocity = pointer->velocity;
    const bool only = count_ == 1;
    if (pointer == &pointers_[0]) pointers_[0] = pointers_[1];
    --count_;
    if (!only) return;
    const bool cancelled = event.kind == InputKind::cancel;
    if (dragging_) gesture.kind = cancelled ? GestureKind::drag_cancel : GestureKind::drag_end;
    else if (spent_ || cancelled) return;
    else gesture.kind = GestureKind::tap;
    dragging_ = false;
    out.push_back(gesture);
}

void GestureReader::feed(const InputEvent& event, std::vector<Gesture>& out) {
    switch (event.kind) {
    case InputKind::down: down(event, out); break;
    case InputKind::move: move(event, out); break;
    case InputKind::up:
    case InputKind::cancel: up(event, out); break;
    default: break;
    }
}

std::optional<double> GestureReader::due() const {
    if (count_ != 1 || dragging_ || spent_) return std::nullopt;
    return pointers_[0].since + long_press_time;
}

void GestureReader::advance(double now, std::vector<Gesture>& out) {
    const std::optional<double> when = due();
    if (!when || now < *when) return;
    // Where a frame took long, what the finger did meanwhile is told after it: one more turn, so that
    // a drag is not taken for a finger that rests.
    if (!overdue_) {
        overdue_ = true;
        return;
    }
    spent_ = true;
    Gesture gesture;
    gesture.kind = GestureKind::long_press;
    gesture.at = gesture.from = pointers_[0].at;
    gesture.touch = pointers_[0].id > 0;
    out.push_back(gesture);
}

} // namespace carriageway
