#include "platform/web/web_window.h"

#include <emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>

#include <algorithm>
#include <stdexcept>

#include <nlohmann/json.hpp>

#include "platform/web/page_calls.h"

namespace carriageway {

namespace {

constexpr const char* canvas = "#canvas";

/// s between two tellings while something is held. Each costs as much as a frame on a slow phone, and
/// nobody hears or reads ten values a second. Ours.
constexpr double telling_pause = 0.1;

std::string css_colour(std::uint32_t rgb) {
    static constexpr char digits[] = "0123456789abcdef";
    std::string out = "#";
    for (int shift = 20; shift >= 0; shift -= 4) out += digits[(rgb >> shift) & 15u];
    return out;
}

} // namespace

/// A lost WebGL context comes back by itself where its loss is taken note of.
struct WebWindow::Context {
    static WebWindow& of(void* self) { return *static_cast<WebWindow*>(self); }
    static EM_BOOL lost(int, const void*, void* self) {
        of(self).context_lost();
        return EM_TRUE; // otherwise it is never restored
    }
    static EM_BOOL restored(int, const void*, void* self) {
        of(self).open_context();
        of(self).happen({}, false);
        return EM_TRUE;
    }
};

WebWindow::WebWindow(std::function<void()> turn)
    : turn_(std::move(turn)), input_([this](bool at_once) {
          if (!at_once || in_turn_) return plan(0.0);
          turn_();
      }) {
    EmscriptenWebGLContextAttributes wanted;
    emscripten_webgl_init_context_attributes(&wanted);
    wanted.majorVersion = 2; // as page/check.js has opened it: without edges smoothed, as Dear ImGui does it
    const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE made = emscripten_webgl_create_context(canvas, &wanted);
    if (made <= 0) throw std::runtime_error("This browser has no WebGL 2.");
    context_ = static_cast<int>(made);
    emscripten_set_webglcontextlost_callback(canvas, this, EM_TRUE, &Context::lost);
    emscripten_set_webglcontextrestored_callback(canvas, this, EM_TRUE, &Context::restored);
    open_context();
    ImGui::GetIO().BackendPlatformName = "web";
    abilities_.pick_file = abilities_.give_file = abilities_.copy_text = true;
    abilities_.share_text = page::can("share");
    abilities_.link_base = page::link_base();
}

WebWindow::~WebWindow() {
    emscripten_set_webglcontextlost_callback(canvas, this, EM_TRUE, nullptr);
    emscripten_set_webglcontextrestored_callback(canvas, this, EM_TRUE, nullptr);
    frame_.reset();
    emscripten_webgl_destroy_context(context_);
}

void WebWindow::open_context() {
    emscripten_webgl_make_context_current(context_);
    frame_.reset();
    frame_ = std::make_unique<OpenGlFrame>(OpenGlKind{3, 0, true, false, "#version 300 es"});
    ImGui::GetIO().Fonts->SetTexID(nullptr); // to be uploaded again
}

void WebWindow::context_lost() { frame_.reset(); }

Surface WebWindow::surface() const {
    Surface surface;
    surface.width = static_cast<int>(page::surface(0));
    surface.height = static_cast<int>(page::surface(1));
    surface.pixels_per_dp = static_cast<float>(std::max(0.25, page::surface(2)));
    surface.inset_left = static_cast<float>(page::surface(3));
    surface.inset_top = static_cast<float>(page::surface(4));
    surface.inset_right = static_cast<float>(page::surface(5));
    surface.inset_bottom = static_cast<float>(page::surface(6));
    return surface;
}

void WebWindow::plan(double seconds) { page::later(seconds); }

/// A page can't wait: it takes what there is; the next turn is planned when this one has ended.
void WebWindow::wait(double, std::vector<InputEvent>& events) { input_.take(events); }

void WebWindow::begin_frame() {
    in_turn_ = true;
    const Surface now_shown = surface();
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(now_shown.width), static_cast<float>(now_shown.height)};
    io.DisplayFramebufferScale = {1.0f, 1.0f};
    io.DeltaTime = static_cast<float>(std::clamp(now() - shown_at_, 1e-4, 1.0));
    shown_at_ = now();
    if (frame_) {
        frame_->begin();
        return;
    }
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height); // Dear ImGui wants the atlas built
}

void WebWindow::present(std::uint32_t background) {
    in_turn_ = false;
    const Surface shown = surface();
    if (frame_) frame_->draw(shown.width, shown.height, background);
}

double WebWindow::now() const { return emscripten_get_now() / 1000.0; }
void WebWindow::keep_awake(bool awake) { page::awake(awake); }
bool WebWindow::prefers_dark() const { return page::dark(); }
void WebWindow::title(const std::string& text) { page::title(text); }

bool WebWindow::text_field(const TextField* field) {
    if (!field) {
        if (field_) page::field({});
        field_.reset();
        return true;
    }
    if (field_ && *field_ == *field) return true;
    field_ = *field;
    const Box box = field->box;
    page::field(page::text_of({{"name", field->name},
                               {"label", field->label},
                               {"text", field->text},
                               {"box", {box.x0, box.y0, box.x1, box.y1}},
                               {"size", field->size},
                               {"ink", css_colour(field->ink)},
                               {"paper", css_colour(field->paper)}}));
    return true;
}

void WebWindow::tell(const DrawingList& list) {
    owed_ = input_.held() && now() < told_at_ + telling_pause;
    if (owed_) return;
    told_at_ = now();
    const std::string changes = mirror_.changes(list);
    if (!changes.empty()) page::mirror(changes);
}

double WebWindow::owed_in() const {
    return owed_ ? std::max(0.0, told_at_ + telling_pause - now()) : -1.0;
}

void WebWindow::run(const Errand& errand) {
    switch (errand.kind) {
    case ErrandKind::pick_file: return page::pick();
    case ErrandKind::give_file: return page::give(errand.text);
    case ErrandKind::copy_text: return page::copy(errand.text);
    case ErrandKind::share_text: return page::share(errand.text);
    case ErrandKind::take_over: return page::take_over();
    case ErrandKind::update: return page::update();
    case ErrandKind::link_taken: return page::link_taken();
    }
}

} // namespace carriageway
