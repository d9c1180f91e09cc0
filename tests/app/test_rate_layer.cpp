// The chart of a cycle as a drawing: rows, numbers, shapes and the time axis.
#include <set>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "app/drawing/rate_layer.h"
#include "app/text/rate_sentences.h"
#include "tests/app/painted.h"
#include "tests/app/visit_rate.h"

using namespace carriageway;

namespace {

/// What tells one kind of bar from another besides its colour: kinds of its marks, their corners,
/// the slant of their hatching.
std::string shape_of(StepKind kind) {
    test::Sheet sheet(200.0f, 60.0f);
    draw_rate_bar(sheet.list, {20.0f, 10.0f, 120.0f, 40.0f}, kind);
    std::string shape;
    for (const Mark& mark : sheet.list.marks()) {
        shape += std::to_string(static_cast<int>(mark.kind)) + "/" + std::to_string(mark.count);
        if (mark.kind == MarkKind::hatch) shape += "@" + std::to_string(mark.angle);
        if (mark.kind == MarkKind::fill)
            for (std::uint32_t i = 0; i < mark.count; ++i) {
                const Vec at = sheet.list.points(mark)[i];
                shape += ":" + std::to_string(at.x) + "," + std::to_string(at.y);
            }
        shape += " ";
    }
    return shape;
}

} // namespace

TEST_CASE("Eighteen stations are numbered on a phone, each with room for a finger",
          "[rate_layer]") {
    const Job job = visited_long_press(demo_job(), 18);
    Assessment assessment;
    assess(job, assessment);
    const JobPace pace = job_pace(job, assessment);
    REQUIRE(pace.runs());
    const RateChart chart = rate_chart(pace.rate);
    test::Sheet sheet(360.0f, 270.0f);
    RateDrawing drawing;
    drawing.job = &job;
    drawing.pace = &pace;
    drawing.chart = &chart;
    drawing.view = {8.0f, 8.0f, 352.0f, 262.0f};
    const RateScale scale = rate_scale(drawing, sheet.fonts);
    CHECK(scale.row >= 8.0f);
    CHECK(scale.row_box(17).y1 <= drawing.view.y1);
    draw_rate(drawing, scale, sheet.list);
    std::set<std::string> numbers;
    for (const Mark& mark : sheet.list.marks())
        if (mark.kind == MarkKind::text && sheet.list.points(mark)[0].x < scale.plot.x0 &&
            sheet.list.points(mark)[0].y < scale.plot.y1)
            numbers.emplace(sheet.list.words(mark));
    CHECK(numbers.size() == 18);
    // Every bar is drawn within its row, at its time.
    for (std::size_t place = 0; place < chart.rows.size(); ++place)
        for (const ChartBar& bar : chart.rows[place].bars) {
            const Box box = scale.bar_box(place, bar), row = scale.row_box(place);
            CHECK(box.y0 >= row.y0);
            CHECK(box.y1 <= row.y1);
            CHECK(box.x0 >= scale.plot.x0);
            CHECK(box.x1 <= scale.plot.x1 + 0.01f);
        }
}

TEST_CASE("Kinds of work differ in shape, not in colour alone", "[rate_layer]") {
    const StepKind kinds[] = {StepKind::lower, StepKind::drop,  StepKind::flood,
                              StepKind::print, StepKind::flash, StepKind::load,
                              StepKind::lift,  StepKind::stay,  StepKind::wait};
    std::set<std::string> shapes;
    for (const StepKind kind : kinds) {
        INFO(shape_of(kind));
        CHECK_FALSE(shape_of(kind).empty());
        CHECK(shapes.insert(shape_of(kind)).second);
    }
    // An empty stroke is hollow like a wait for a blade, but as high as a stroke.
    test::Sheet sheet(200.0f, 60.0f);
    draw_rate_bar(sheet.list, {20.0f, 10.0f, 120.0f, 40.0f}, StepKind::empty);
    draw_rate_bar(sheet.list, {20.0f, 10.0f, 120.0f, 40.0f}, StepKind::drop);
    const Mark &stroke = sheet.list.marks()[0], &wait = sheet.list.marks()[1];
    CHECK(sheet.list.points(stroke)[0].y < sheet.list.points(wait)[0].y);
}

TEST_CASE("The axis's marks stand apart by their words at every length of a cycle",
          "[rate_layer]") {
    test::Sheet sheet(360.0f, 270.0f);
    for (const double cycle : {0.2, 0.9, 2.0, 6.0, 8.4, 31.0, 120.0, 660.0}) {
        INFO("cycle " << cycle);
        RateScale scale;
        scale.plot = {60.0f, 0.0f, 340.0f, 200.0f};
        scale.cycle = cycle;
        const double step = axis_step(scale, sheet.fonts);
        CHECK(step > 0.0);
        CHECK(step <= cycle);
        const float apart = scale.x(step) - scale.x(0.0);
        CHECK(apart > sheet.fonts.width({TypeSize::small, false}, pace_time(step)));
    }
}
