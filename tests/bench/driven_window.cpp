#include "tests/bench/driven_window.h"

#include <imgui.h>

#include "core/edit.h"
#include "tests/bench/bench.h"

namespace carriageway::bench {

Job press_with_18_heads() {
    constexpr int stations = 20;
    const Job demo = demo_job();
    Job job = demo;
    job.press.stations = stations;
    job.press.arm_radius *= 2.0; // the same room for each arm
    job.press.rooms.clear();
    job.uses.assign(stations, StationUse::open);
    job.uses.front() = StationUse::load;
    job.uses.back() = StationUse::unload;
    job.walk.clear();
    job.record = {};
    job.heads.clear();
    for (int station = 2; station < stations; ++station) {
        Head head = demo.heads[static_cast<std::size_t>(station - 2) % demo.heads.size()];
        head.id = static_cast<HeadId>(station);
        head.station = station;
        head.wish.screen_on = 0.0;
        job.heads.push_back(std::move(head));
    }
    must(!fault_of(job) && job.heads.size() == 18, "the press with 18 heads is refused");
    return job;
}

DrivenWindow::DrivenWindow(Size size, const Job& job) : context_(ImGui::CreateContext()) {
    take_over();
    window_ = std::make_unique<NullWindow>(size.width, size.height);
    session_ = std::make_unique<Session>(job, Language::english);
    fonts_ = std::make_unique<Fonts>(*ImGui::GetIO().Fonts);
    program_ = std::make_unique<Program>(*session_);
    program_->state().first = {};
    loop_ = std::make_unique<FrameLoop>(*program_, *window_, *fonts_);
    settle();
}

DrivenWindow::~DrivenWindow() {
    take_over();
    loop_.reset();
    program_.reset();
    session_.reset();
    window_.reset();
    fonts_.reset();
    ImGui::DestroyContext(context_);
}

void DrivenWindow::take_over() { ImGui::SetCurrentContext(context_); }

void DrivenWindow::turn() {
    const long before = loop_->frames();
    must(loop_->turn() && loop_->frames() == before + 1, "a frame was not shown");
    window_->pass(1.0 / 60.0);
}

void DrivenWindow::frame() {
    InputEvent nudge;
    nudge.kind = InputKind::redraw;
    window_->happen(nudge);
    turn();
}

void DrivenWindow::settle() {
    for (int i = 0; i < 90; ++i) frame();
}

void DrivenWindow::touch(Vec at) {
    window_->pointer(InputKind::down, at, 1);
    turn();
}

void DrivenWindow::move_to(Vec at) {
    window_->pointer(InputKind::move, at, 1);
    turn();
}

void DrivenWindow::lift(Vec at) {
    window_->pointer(InputKind::up, at, 1);
    turn();
}

Vec DrivenWindow::handle_of(int station) {
    const Head* head = head_on(session_->job(), station);
    must(head != nullptr, "the station has no head");
    program_->choose_head(head->id);
    settle();
    const Thing* handle =
        program_->frame().list.find("head/" + std::to_string(station) + "/machine-stop");
    must(handle != nullptr, "the head shows no handle");
    return handle->box.centre();
}

int DrivenWindow::vertices() const { return window_->frames().back().vertices; }

} // namespace carriageway::bench
