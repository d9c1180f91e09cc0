// The program as a page: no command line, turns instead of a loop, and what the page tells.
#include <emscripten.h>
#include <imgui.h>

#include <cstring>
#include <memory>
#include <string>

#include "app/drawing/fonts.h"
#include "app/frame_loop.h"
#include "app/program.h"
#include "app/time_of_day.h"
#include "platform/web/page_calls.h"
#include "platform/web/web_store.h"
#include "platform/web/web_window.h"

namespace carriageway {
namespace {

/// Everything, for as long as the page lives.
struct Page {
    Page()
        : window([this] { turn(); }),
          session(
              library_folder, [this] { window.wake(); }, time_of_day,
              page::language().rfind("es", 0) == 0 ? Language::spanish : Language::english),
          fonts(*ImGui::GetIO().Fonts), program(session), loop(program, window, fonts) {
        if (!session.trouble().empty()) program.notice(session.trouble(), true);
    }

    void turn() {
        if (turning) return; // an event within a turn: the plan at its end takes it in
        turning = true;
        loop.turn();
        window.tell_owed(program.frame().list);
        turning = false;
        window.plan(wait_time());
    }

    /// How long the next turn may wait (s): 0 not at all, below 0 however long.
    double wait_time() const {
        if (window.input_waits()) return 0.0;
        const double wait = loop.wait_time(), owed = window.owed_in();
        return wait < 0.0 || (owed >= 0.0 && owed < wait) ? owed : wait;
    }

    bool turning = false;
    WebWindow window;
    Session session;
    Fonts fonts;
    Program program;
    FrameLoop loop;
};

std::unique_ptr<Page> the_page;

struct Telling {
    const char* name;
    InputKind kind;
    bool at_once; ///< the person's doing, which the browser must see answered within its event
};
constexpr Telling tellings[] = {
    {"act", InputKind::act, true},        {"step", InputKind::step, true},
    {"focus", InputKind::focus, false},   {"edit", InputKind::edit, false},
    {"file", InputKind::file, false},     {"link", InputKind::link, false},
    {"surface", InputKind::redraw, false}, {"fresh", InputKind::newer, false},
    {"copied", InputKind::copied, false},
};

InputEvent key_event(Key key) {
    InputEvent event;
    event.kind = InputKind::key;
    event.key = key;
    return event;
}

void tell(const std::string& kind, const std::string& text, double number) {
    WebWindow& window = the_page->window;
    for (const Telling& telling : tellings) {
        if (kind != telling.name) continue;
        InputEvent event;
        event.kind = telling.kind;
        event.text = Mirror::own_name(text);
        event.by.x = static_cast<float>(number);
        return window.happen(std::move(event), telling.at_once);
    }
    if (kind == "accept") return window.happen(key_event(Key::enter), false);
    if (kind == "cancel") return window.happen(key_event(Key::escape), false);
    if (kind == "not-copied") {
        InputEvent event;
        event.kind = InputKind::copied;
        event.text = kind;
        return window.happen(std::move(event), false);
    }
    if (kind == "kept") return library_kept(text);
    if (kind == "hidden") return static_cast<void>(library_flushed());
    if (kind == "reader") {
        library_given_up();
        window.wake();
    }
}

} // namespace
} // namespace carriageway

extern "C" {

EMSCRIPTEN_KEEPALIVE void carriageway_turn() {
    if (carriageway::the_page) carriageway::the_page->turn();
}

/// What the page has to say; see page_calls.h.
EMSCRIPTEN_KEEPALIVE void carriageway_tell(const char* kind, const char* text, double number) {
    if (carriageway::the_page) carriageway::tell(kind, text, number);
}

/// Whether leaving the page would lose edits: those to a job from a link that nobody has kept.
EMSCRIPTEN_KEEPALIVE int carriageway_unkept() {
    if (!carriageway::the_page) return 0;
    const carriageway::Session& session = carriageway::the_page->session;
    return session.visiting() && session.can_undo();
}

/// For tests: whether nothing moves, waits or is still to be told; whether everything is kept, as the
/// program shows it; frames shown so far, and all things last told as JSON (to be freed).
EMSCRIPTEN_KEEPALIVE int carriageway_rests() {
    if (!carriageway::the_page) return 0;
    return carriageway::the_page->wait_time() != 0.0 && carriageway::the_page->window.owed_in() < 0.0;
}
EMSCRIPTEN_KEEPALIVE int carriageway_saved() {
    return carriageway::the_page && carriageway::the_page->session.save_state() == carriageway::SaveState::saved;
}
EMSCRIPTEN_KEEPALIVE int carriageway_frames() {
    return carriageway::the_page ? static_cast<int>(carriageway::the_page->loop.frames()) : 0;
}
EMSCRIPTEN_KEEPALIVE char* carriageway_things() {
    return strdup(carriageway::the_page ? carriageway::the_page->window.mirror().all().c_str() : "[]");
}
}

int main() {
    ImGui::CreateContext();
    carriageway::the_page = std::make_unique<carriageway::Page>();
    carriageway::the_page->window.plan(0.0);
    return 0;
}
