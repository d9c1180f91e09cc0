// What a frame takes from the heap while a stop is dragged, once everything is warm.
#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "app/drawing/diagram.h"
#include "app/drawing/screen_painter.h"
#include "tests/bench/bench.h"
#include "tests/bench/driven_window.h"
#include "tests/bench/heap_count.h"

namespace carriageway::bench {

namespace {

constexpr int warm_up = 200, counted = 400; ///< frames

/// Where a dragged stop stands in a frame: to and fro, never twice alike.
double sway(int frame) { return 30.0 * std::sin(0.37 * frame); }

/// The head's assessment and its picture, from the stops to Dear ImGui's triangles, and nothing else
/// of the frame; the most that one frame took.
long of_coverage(DrivenWindow& window, int station) {
    Job job = window.session().job();
    Assessment assessment;
    assess(job, assessment);
    std::size_t index = 0;
    while (job.heads[index].station != station) ++index;
    Head& head = job.heads[index];
    const double from = head.stops.machine_side;

    DiagramInput input;
    input.job = &job;
    input.assessment = &assessment;
    input.projection = window.program().frame().projection;
    input.chosen = head.id;
    HeadView view;
    view.head = &head;
    view.assessed = &assessment.heads[index];
    view.aim(input.projection, place_of_station(job.press, station));
    DrawingList list;
    ScreenPainter painter;
    ImDrawList triangles(ImGui::GetDrawListSharedData());
    const Box all = window.program().frame().list.window();
    long most = 0, drawn = 0;
    for (int i = 0; i < warm_up + counted; ++i) {
        head.stops.machine_side = from + sway(i);
        const long before = heap_count();
        assess_head(job, index, assessment);
        list.begin(all, window.fonts());
        draw_head(input, view, list);
        triangles._ResetForNewFrame();
        triangles.PushTextureID(window.fonts().atlas().TexID);
        triangles.PushClipRectFullScreen();
        painter.paint(list, Theme::light, window.fonts(), triangles);
        if (i >= warm_up) most = std::max(most, heap_count() - before);
        drawn = triangles.VtxBuffer.Size;
    }
    must(drawn > 100, "nothing was drawn");
    return most;
}

/// What frames took: half of them at most `median`, one of them `most`.
struct Taken {
    double median = 0.0, most = 0.0;
};

/// All of a frame: what was touched, the edit tried, assessment, every word and mark, triangles.
Taken of_frame(DrivenWindow& window, Vec handle) {
    window.touch(handle);
    std::vector<double> counts;
    for (int i = 0; i < warm_up + counted; ++i) {
        const Vec at = handle + Vec{0.0f, static_cast<float>(sway(i))};
        const long before = heap_count();
        window.move_to(at);
        if (i >= warm_up) counts.push_back(static_cast<double>(heap_count() - before));
    }
    must(window.session().previewing(), "the stop is not being dragged");
    window.lift(handle);
    return {median(counts), *std::max_element(counts.begin(), counts.end())};
}

} // namespace

std::vector<Ratio> coverage_allocations() {
    constexpr int station = 5;
    double coverage = 0.0, frame = 0.0;
    std::string detail;
    const Job job = press_with_18_heads();
    for (const Size size : {compact, wide}) {
        DrivenWindow window(size, job);
        const Vec handle = window.handle_of(station);
        const auto one = static_cast<double>(of_coverage(window, station));
        const Taken all = of_frame(window, handle);
        coverage = std::max(coverage, one);
        frame = std::max(frame, all.median);
        detail += std::string(detail.empty() ? "" : "; ") + size.name + ' ' +
                  std::to_string(std::lround(all.median)) + ", the most " + std::to_string(std::lround(all.most));
    }
    return {{"coverage_allocations", coverage, 0.0,
             "the most in a frame, of assessing and drawing the dragged head"},
            {"coverage_frame_allocations", frame, 0.0, "the median of all of a frame: " + detail}};
}

} // namespace carriageway::bench
