#include "tests/app/driver.h"

#include <cstdlib>
#include <filesystem>

#include <catch2/catch_test_macros.hpp>
#include <imgui.h>

#include "app/drawing/picture.h"
#include "app/drawing/png_file.h"

namespace carriageway {

Driver::Driver(WindowSize size, const std::string& folder, Language language, float pixels_per_dp,
               FirstSteps first)
    : context_(ImGui::CreateContext()) {
    ImGui::SetCurrentContext(context_);
    window_ = std::make_unique<NullWindow>(size.width, size.height, pixels_per_dp);
    if (folder.empty())
        session_ = std::make_unique<Session>(demo_job(), language);
    else
        session_ = std::make_unique<Session>(
            folder, [] {}, [] { return Timestamp{1'700'000'000'000}; }, language);
    fonts_ = std::make_unique<Fonts>(*ImGui::GetIO().Fonts);
    program_ = std::make_unique<Program>(*session_);
    if (first == FirstSteps::done) program_->state().first = {};
    loop_ = std::make_unique<FrameLoop>(*program_, *window_, *fonts_);
    settle();
}

Driver::~Driver() {
    loop_.reset();
    program_.reset();
    session_.reset();
    window_.reset();
    fonts_.reset();
    ImGui::DestroyContext(context_);
}

void Driver::set_looks(Language language, float text_scale, ThemeChoice theme) {
    Looks looks = session_->looks();
    looks.language = language;
    looks.text_scale = text_scale;
    looks.theme = theme;
    session_->set_looks(looks);
    program_->state().looks = looks;
    settle();
}

void Driver::settle() {
    InputEvent nudge;
    nudge.kind = InputKind::redraw;
    // 40 turns of 1/60 s outlast the camera's movement, but no notice. A nudge each turn keeps the
    // null window from closing, which is what it does when nothing can ever end a wait.
    for (int i = 0; i < 40; ++i) {
        window_->happen(nudge);
        REQUIRE(loop_->turn());
        const double due = program_->next_frame(window_->now());
        if (i > 3 && (due < 0.0 || due > window_->now() + 0.02)) break;
        window_->pass(1.0 / 60.0);
    }
}

const Thing& Driver::find(std::string_view name) const {
    const Thing* thing = list().find(name);
    INFO("thing " << name);
    REQUIRE(thing != nullptr);
    return *thing;
}

void Driver::reveal(std::string_view name) {
    for (int tries = 0; tries < 400; ++tries) {
        const Thing& thing = find(name);
        const Box clip = list().clip_box(thing.clip);
        const Vec centre = thing.box.centre();
        if (clip.contains({centre.x, thing.box.y0 + 2.0f}) && clip.contains({centre.x, thing.box.y1 - 2.0f}))
            return;
        if (thing.box.height() > clip.height() && clip.contains(centre)) return;
        InputEvent wheel;
        wheel.kind = InputKind::wheel;
        wheel.at = clip.centre();
        wheel.by = {0.0f, thing.box.y0 < clip.y0 ? 1.0f : -1.0f};
        window_->happen(wheel);
        settle();
    }
}

void Driver::tap(std::string_view name, int pointer) {
    reveal(name);
    window_->tap(find(name).box.centre(), pointer);
    settle();
}

void Driver::drag(std::string_view name, Vec by, int pointer, int steps) {
    reveal(name);
    const Vec from = find(name).box.centre();
    window_->drag(from, from + by, steps, pointer);
    settle();
}

void Driver::key(Key key, bool control, bool shift) {
    window_->press(key, control, shift);
    settle();
}

void Driver::type(std::string_view text) {
    window_->type(text);
    settle();
}

void Driver::pad(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        std::string name = "pad/";
        if (text.substr(i, 2) == "mm") { name += "mm"; ++i; }
        else if (text.substr(i, 2) == "in") { name += "inch"; ++i; }
        else if (c == '.') name += "point";
        else if (c == '/') name += "slash";
        else if (c == ' ') name += "space";
        else if (c == '-') name += "minus";
        else name += c;
        tap(name);
    }
}

Picture Driver::painted() const {
    const Surface surface = window_->surface();
    return paint_picture(list(), program_->theme(), *fonts_, surface.width, surface.height);
}

void Driver::as_in_a_browser() {
    Abilities abilities;
    abilities.pick_file = abilities.give_file = abilities.copy_text = abilities.share_text = true;
    abilities.link_base = "https://example.org/carriageway/";
    window_->can_do(abilities);
    settle();
}

void Driver::open_link(const std::string& text) {
    InputEvent event;
    event.kind = InputKind::link;
    event.text = text;
    window_->happen(event);
    settle();
}

void Driver::give_file(const std::string& path) {
    InputEvent event;
    event.kind = InputKind::file;
    event.text = path;
    window_->happen(event);
}

void Driver::drop_file(const std::string& path) {
    give_file(path);
    settle();
}

void Driver::picture(const std::string& name) const {
    const char* folder = std::getenv("CARRIAGEWAY_PICTURES");
    if (!folder) return;
    REQUIRE_FALSE(write_png(painted(), std::filesystem::path(folder) / (name + ".png")));
}

const HeadAssessment& Driver::head(int station) const {
    const Head* head = head_on(session_->shown(), station);
    REQUIRE(head != nullptr);
    return *carriageway::find_head(session_->assessment(), head->id);
}

} // namespace carriageway
