// A frame of the press place against a frame of Dear ImGui's own demonstration window, all of its
// sections closed. Both go as far as a list of triangles; neither is put on a screen.
#include <imgui.h>

#include <cmath>

#include "tests/bench/bench.h"
#include "tests/bench/driven_window.h"

namespace carriageway::bench {

namespace {

constexpr int rounds = 301;

/// The demonstration's window, as it opens.
class DemoWindow {
public:
    explicit DemoWindow(Size size) : context_(ImGui::CreateContext()) {
        take_over();
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {static_cast<float>(size.width), static_cast<float>(size.height)};
        io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
        unsigned char* pixels = nullptr;
        int width = 0, height = 0;
        io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
        for (int i = 0; i < 90; ++i) frame();
    }
    ~DemoWindow() { ImGui::DestroyContext(context_); }
    DemoWindow(const DemoWindow&) = delete;
    DemoWindow& operator=(const DemoWindow&) = delete;

    void take_over() { ImGui::SetCurrentContext(context_); }
    void frame() {
        ImGui::GetIO().DeltaTime = 1.0f / 60.0f;
        ImGui::NewFrame();
        ImGui::ShowDemoWindow();
        ImGui::Render();
        vertices_ = ImGui::GetDrawData()->TotalVtxCount;
    }
    int vertices() const { return vertices_; }

private:
    ImGuiContext* context_;
    int vertices_ = 0;
};

struct Frames {
    double ratio = 0.0, per_vertex = 0.0;
    std::string detail;
};

/// A finger on a free corner of the diagram that moves it in every frame: nothing of the drawing is as
/// it was in the frame before.
class Pan {
public:
    explicit Pan(DrivenWindow& window)
        : window_(window), from_{window.program().frame().diagram.x1 - 14.0f,
                                 window.program().frame().diagram.y0 + 14.0f} {
        window_.touch(from_);
        const Camera before = window_.program().state().camera;
        for (int i = 0; i < 10; ++i) frame();
        must(!(window_.program().state().camera == before), "the diagram does not move");
    }
    void frame() {
        ++frames_;
        const float sway = 24.0f * std::sin(0.37f * static_cast<float>(frames_));
        window_.move_to(from_ + Vec{-24.0f + sway, 24.0f + 0.5f * sway});
    }

private:
    DrivenWindow& window_;
    Vec from_;
    int frames_ = 0;
};

Frames measure(Size size, const Job& job) {
    DrivenWindow ours(size, job);
    DemoWindow theirs(wide); // where all of it is seen
    const Pair pair = in_turn(
        rounds,
        [&] {
            ours.take_over();
            ours.frame();
        },
        [&] {
            theirs.take_over();
            theirs.frame();
        });
    must(ours.vertices() > 1000 && theirs.vertices() > 500, "a frame is nearly empty");
    Frames frames;
    frames.ratio = pair.ratio();
    frames.per_vertex = pair.ratio() * theirs.vertices() / ours.vertices();
    const int vertices = ours.vertices();
    ours.take_over();
    Pan pan(ours);
    const Pair panned = in_turn(
        rounds,
        [&] {
            ours.take_over();
            pan.frame();
        },
        [&] {
            theirs.take_over();
            theirs.frame();
        });
    frames.detail = std::string(size.name) + ", the worse of the two; a frame: " +
                    sides("press place", median(pair.ours), "demo", median(pair.theirs)) + "; vertices " +
                    std::to_string(vertices) + " and " + std::to_string(theirs.vertices()) +
                    "; while all of it is moved: " + ratio_words(panned.ratio()) + ", per thousand " +
                    ratio_words(panned.ratio() * theirs.vertices() / ours.vertices());
    return frames;
}

} // namespace

std::vector<Ratio> frame_vs_demo() {
    const Job job = press_with_18_heads();
    const Frames small = measure(compact, job), large = measure(wide, job);
    const Frames& worse = small.ratio > large.ratio ? small : large;
    const Frames& denser = small.per_vertex > large.per_vertex ? small : large;
    return {{"frame_vs_demo", worse.ratio, 40.0, worse.detail},
            {"frame_per_thousand_vertices", denser.per_vertex, 1.5, denser.detail}};
}

} // namespace carriageway::bench
