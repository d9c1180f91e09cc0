// The window that tests work: what is scripted arrives, in order and once; nothing blocks.
#include <imgui.h>

#include <catch2/catch_test_macros.hpp>
#include <string>

#include "platform/null/null_window.h"

using namespace carriageway;

namespace {

/// A Dear ImGui context for as long as it lives.
class Context {
public:
    Context() : context_(ImGui::CreateContext()) { ImGui::GetIO().IniFilename = nullptr; }
    ~Context() { ImGui::DestroyContext(context_); }
    Context(const Context&) = delete;
    Context& operator=(const Context&) = delete;

private:
    ImGuiContext* context_;
};

std::vector<InputEvent> waited(NullWindow& window, double seconds) {
    std::vector<InputEvent> events;
    window.wait(seconds, events);
    return events;
}

} // namespace

TEST_CASE("what is scripted arrives in order and once", "[null]") {
    Context context;
    NullWindow window(360, 740, 2.0f);
    CHECK((window.surface().width == 720 && window.surface().height == 1480));
    window.pass(3.0);
    window.drag({10, 20}, {30, 60}, 2, 1);
    window.press(Key::z, true);
    window.type("3 1/2 in");
    const std::vector<InputEvent> events = waited(window, -1.0);
    REQUIRE(events.size() == 6);
    CHECK((events[0].kind == InputKind::down && events[0].at == Vec{10, 20}));
    CHECK((events[1].kind == InputKind::move && events[1].at == Vec{20, 40}));
    CHECK((events[3].kind == InputKind::up && events[3].at == Vec{30, 60}));
    CHECK((events[3].pointer == 1 && events[3].time == 3.0));
    CHECK((events[4].key == Key::z && events[4].control && !events[4].shift));
    CHECK(events[5].text == "3 1/2 in");
    CHECK(waited(window, 0.0).empty());
}

TEST_CASE("a wait moves the clock; one that nothing can end closes", "[null]") {
    Context context;
    NullWindow window(100, 100);
    CHECK(waited(window, 2.5).empty());
    CHECK(window.now() == 2.5);
    window.wake();
    window.wake();
    const std::vector<InputEvent> woken = waited(window, 10.0);
    REQUIRE(woken.size() == 1);
    CHECK(woken[0].kind == InputKind::redraw);
    CHECK(window.now() == 2.5); // it ended at once
    const std::vector<InputEvent> end = waited(window, -1.0);
    REQUIRE(end.size() == 1);
    CHECK(end[0].kind == InputKind::close);
}

TEST_CASE("a change of the display is told", "[null]") {
    Context context;
    NullWindow window(100, 100);
    Surface surface = window.surface();
    surface.pixels_per_dp = 3.0f;
    surface.inset_top = 24.0f;
    window.resize(surface);
    REQUIRE(waited(window, 1.0).size() == 1);
    CHECK(window.surface() == surface);
}

TEST_CASE("frames are counted, and text reaches Dear ImGui", "[null]") {
    Context context;
    NullWindow window(200, 100, 2.0f);
    char buffer[32] = "";
    const auto frame = [&] {
        waited(window, 0.016);
        window.begin_frame();
        ImGui::NewFrame();
        CHECK(ImGui::GetIO().DisplaySize.x == 400.0f);
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize({400, 200});
        ImGui::Begin("field");
        if (window.frames().empty()) ImGui::SetKeyboardFocusHere();
        ImGui::InputText("##text", buffer, sizeof buffer);
        ImGui::End();
        ImGui::Render();
        window.present(0x123456);
    };
    CHECK(window.last_drawn() == nullptr);
    for (int i = 0; i < 3; ++i) frame();
    window.type("8.9 cm");
    for (int i = 0; i < 3; ++i) frame();
    CHECK(std::string(buffer) == "8.9 cm");
    window.press(Key::backspace);
    for (int i = 0; i < 3; ++i) frame();
    CHECK(std::string(buffer) == "8.9 c");
    REQUIRE(window.frames().size() == 9);
    CHECK(window.frames()[4].background == 0x123456u);
    CHECK(window.frames()[4].vertices > 0);
    CHECK(window.frames()[4].width == 400);
    CHECK(window.last_drawn() == ImGui::GetDrawData());
}
