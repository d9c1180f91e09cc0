// Touch, mouse, wheel and keys of the page, through emscripten/html5.h, as the program's events.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "app/input.h"

namespace carriageway {

class WebInput {
public:
    /// Listens on the canvas and the window. `happened(true)` asks for a turn within the browser's
    /// own event, because a phone opens its keyboard and a browser its file dialog only there.
    explicit WebInput(std::function<void(bool at_once)> happened);
    ~WebInput();
    WebInput(const WebInput&) = delete;
    WebInput& operator=(const WebInput&) = delete;

    /// Adds an event that the page reports.
    void add(InputEvent event, bool at_once);
    /// Moves what has happened since the last call to the end of `events`.
    void take(std::vector<InputEvent>& events);
    /// Something has happened that nobody has taken yet.
    bool waiting() const { return !waiting_.empty(); }
    /// A finger lies on the canvas, or the mouse button is down.
    bool held() const { return !held_.empty(); }

private:
    struct Listeners;
    void pointer(InputKind kind, int pointer, double x, double y, double time, bool at_once);

    std::function<void(bool)> happened_;
    std::vector<InputEvent> waiting_;
    bool mouse_down_ = false;
    std::set<int> held_; ///< pointers that went down and have not come up
};

} // namespace carriageway
