#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/motion.h"
#include "core/stroke.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

/// L·sin 15° of the demonstration's holders, 65·0.25881905.
constexpr double tilt_at_15 = 16.8232379;

} // namespace

TEST_CASE("Each edge trails its own working stroke", "[stroke]") {
    Head head;
    SECTION("printing toward the operator") {
        head.print_stroke = Direction::toward_operator;
        const StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
        CHECK_THAT(geometry.squeegee_edge, WithinAbs(15.0 + tilt_at_15, 1e-6));
        CHECK_THAT(geometry.flood_edge, WithinAbs(-15.0 - tilt_at_15, 1e-6));
    }
    SECTION("printing toward the machine") {
        head.print_stroke = Direction::toward_machine;
        const StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
        CHECK_THAT(geometry.squeegee_edge, WithinAbs(-15.0 - tilt_at_15, 1e-6));
        CHECK_THAT(geometry.flood_edge, WithinAbs(15.0 + tilt_at_15, 1e-6));
    }
}

TEST_CASE("The demonstration's edges stand 64 mm apart at 15° and 85 at 25°", "[stroke]") {
    Head head;
    StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
    CHECK_THAT(geometry.squeegee_edge - geometry.flood_edge, WithinAbs(64.0, 0.5));
    head.squeegee.angle = head.flood.angle = radians(25.0);
    geometry = stroke_geometry(PressProfile{}, head);
    CHECK_THAT(geometry.squeegee_edge - geometry.flood_edge, WithinAbs(85.0, 0.5));
}

TEST_CASE("Overtravel at an end is that of the stroke that arrives there", "[stroke]") {
    // By hand: 600 mm/s: 9 + 22.5 = 31.5 mm; 700 mm/s: 10.5 + 30.625 = 41.125 mm.
    Head head;
    head.print_speed = 600.0;
    head.flood_speed = 700.0;
    head.print_stroke = Direction::toward_operator;
    StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
    CHECK_THAT(geometry.operator_overtravel, WithinAbs(31.5, 1e-12));
    CHECK_THAT(geometry.machine_overtravel, WithinAbs(41.125, 1e-12));
    // r − a_o − o_o = 4 + 30 − 31.5, and −r − a_m + o_m = −4 − 30 + 41.125.
    CHECK_THAT(geometry.operator_rest, WithinAbs(2.5, 1e-12));
    CHECK_THAT(geometry.machine_rest, WithinAbs(7.125, 1e-12));

    head.print_stroke = Direction::toward_machine;
    geometry = stroke_geometry(PressProfile{}, head);
    CHECK_THAT(geometry.operator_overtravel, WithinAbs(41.125, 1e-12));
    CHECK_THAT(geometry.machine_overtravel, WithinAbs(31.5, 1e-12));
}

TEST_CASE("The bands of the demonstration's stops", "[stroke]") {
    // By hand from the numbers above: c from −257.5 to 267.125.
    Head head;
    head.print_stroke = Direction::toward_operator;
    const Stops stops{-260.0, 260.0};
    const StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
    const Ends ends = ends_of(geometry, stops);
    CHECK_THAT(ends.operator_end, WithinAbs(-257.5, 1e-12));
    CHECK_THAT(ends.machine_end, WithinAbs(267.125, 1e-12));
    CHECK_THAT(ends.travel(), WithinAbs(524.625, 1e-12));

    const Rect squeegee = squeegee_band(geometry, head, stops);
    CHECK_THAT(squeegee.lo, WithinAbs(-225.676762, 1e-6));
    CHECK_THAT(squeegee.hi, WithinAbs(298.948238, 1e-6));
    CHECK(squeegee.left == -178.0);
    CHECK(squeegee.right == 178.0);
    const Rect flood = flood_band(geometry, head, stops);
    CHECK_THAT(flood.lo, WithinAbs(-289.323238, 1e-6));
    CHECK_THAT(flood.hi, WithinAbs(235.301762, 1e-6));
    CHECK(flood.width() == 381.0);
    CHECK(flood_finish(head) == End::machine_side);
}

TEST_CASE("What both bands cover is shorter than the travel by the distance of the edges",
          "[stroke]") {
    for (const Direction direction : {Direction::toward_operator, Direction::toward_machine}) {
        Head head;
        head.print_stroke = direction;
        const StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
        const Stops stops{-240.0, 250.0};
        const Rect squeegee = squeegee_band(geometry, head, stops);
        const Rect flood = flood_band(geometry, head, stops);
        const double covered = std::min(squeegee.hi, flood.hi) - std::max(squeegee.lo, flood.lo);
        CHECK_THAT(covered, WithinAbs(ends_of(geometry, stops).travel() -
                                          2.0 * (15.0 + tilt_at_15), 1e-6));
    }
}

TEST_CASE("A 300 × 400 image takes 514 mm of travel and then everything fits", "[stroke]") {
    // The demonstration's own numbers: run-past 25 mm, image at the frame's centre.
    Head head;
    const StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
    const double operator_end = -225.0 - geometry.squeegee_edge;
    const double machine_end = 225.0 - geometry.flood_edge;
    CHECK_THAT(machine_end - operator_end, WithinAbs(513.6, 0.05));
    const Stops stops{operator_end - geometry.operator_rest, machine_end - geometry.machine_rest};
    const Rect squeegee = squeegee_band(geometry, head, stops);
    const Rect flood = flood_band(geometry, head, stops);
    CHECK_THAT(rect_of(Platen{}).hi - squeegee.hi, WithinAbs(21.0, 0.5));
    CHECK_THAT(flood.lo - (opening_of(head.screen).lo + 50.0), WithinAbs(17.0, 0.5));
}

TEST_CASE("A blade that is still dropping loses the start of its stroke", "[stroke]") {
    // By hand: 0.1 s late; print 600·(0.1 − 0.0375) = 37.5, flood 700·(0.1 − 0.04375) = 39.375.
    PressProfile press;
    press.carriage.drop_time = 0.15;
    press.carriage.drop_dwell = 0.05;
    const PressProfile patient;
    Head head;
    const Stops stops{-260.0, 260.0};
    for (const Direction direction : {Direction::toward_operator, Direction::toward_machine}) {
        head.print_stroke = direction;
        const StrokeGeometry geometry = stroke_geometry(press, head);
        CHECK_THAT(geometry.print_loss, WithinAbs(37.5, 1e-9));
        CHECK_THAT(geometry.flood_loss, WithinAbs(39.375, 1e-9));
        const StrokeGeometry whole = stroke_geometry(patient, head);
        CHECK(whole.print_loss == 0.0);
        const Rect squeegee = squeegee_band(geometry, head, stops);
        const Rect whole_squeegee = squeegee_band(whole, head, stops);
        const Rect flood = flood_band(geometry, head, stops);
        const Rect whole_flood = flood_band(whole, head, stops);
        const bool machine = direction == Direction::toward_machine;
        // The print stroke toward the machine begins at the operator end; the flood the other way.
        CHECK_THAT(squeegee.lo - whole_squeegee.lo, WithinAbs(machine ? 37.5 : 0.0, 1e-9));
        CHECK_THAT(whole_squeegee.hi - squeegee.hi, WithinAbs(machine ? 0.0 : 37.5, 1e-9));
        CHECK_THAT(flood.lo - whole_flood.lo, WithinAbs(machine ? 0.0 : 39.375, 1e-9));
        CHECK_THAT(whole_flood.hi - flood.hi, WithinAbs(machine ? 39.375 : 0.0, 1e-9));
    }
}

TEST_CASE("A stroke shorter than its loss covers nothing", "[stroke]") {
    PressProfile press;
    press.carriage.drop_dwell = 0.05;
    const Head head;
    const StrokeGeometry geometry = stroke_geometry(press, head);
    const Stops stops{-10.0, 10.0};
    CHECK(squeegee_band(geometry, head, stops).empty());
}

TEST_CASE("The flood finishes where the print begins", "[stroke]") {
    Head head;
    head.print_stroke = Direction::toward_machine;
    CHECK(flood_finish(head) == End::operator_side);
    head.print_stroke = Direction::toward_operator;
    CHECK(flood_finish(head) == End::machine_side);
}

TEST_CASE("The reach takes in edges and holders", "[stroke]") {
    Head head;
    StrokeGeometry geometry = stroke_geometry(PressProfile{}, head);
    CHECK(geometry.reach_lo == geometry.flood_edge);
    CHECK(geometry.reach_hi == geometry.squeegee_edge);
    // At 5° an edge stands at 15 + 5.67, within its holder, which ends at 15 + 15.
    head.squeegee.angle = head.flood.angle = radians(5.0);
    geometry = stroke_geometry(PressProfile{}, head);
    CHECK(geometry.reach_lo == -30.0);
    CHECK(geometry.reach_hi == 30.0);
    head.print_stroke = Direction::toward_machine;
    geometry = stroke_geometry(PressProfile{}, head);
    CHECK(geometry.reach_lo == -30.0);
    CHECK(geometry.reach_hi == 30.0);
}
