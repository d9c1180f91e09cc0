#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/taut_mesh.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

/// 500 mm of mesh about the origin.
constexpr MeshSpan half_metre{-250.0, 250.0, 25.0};

MeshContact contact(double gap, double line_load, Direction stroke) {
    MeshContact made;
    made.span = half_metre;
    made.gap = gap;
    made.line_load = line_load;
    made.stroke = stroke;
    return made;
}

} // namespace

TEST_CASE("The force that holds the mesh down is least in the middle", "[taut_mesh]") {
    // By hand: 25·2·(1/250 + 1/250) = 0.4 N/cm.
    CHECK_THAT(line_force_small(half_metre, 2.0, 0.0).value(), WithinAbs(0.4, 1e-12));
    double last = 0.0;
    for (double y = 0.0; y < 250.0; y += 10.0) {
        const double exact = line_force(half_metre, 2.0, y).value();
        CHECK(exact > last);
        // The mesh leans at most upright, so the exact force is the smaller one.
        CHECK(exact < line_force_small(half_metre, 2.0, y).value());
        CHECK_THAT(line_force(half_metre, 2.0, -y).value(), WithinRel(exact, 1e-13));
        last = exact;
    }
}

TEST_CASE("A mesh pushed down is longer, and a small gap loses no digits", "[taut_mesh]") {
    // By hand: 3-4-5 twice, 2·(5 − 4) on 8.
    const MeshSpan small{0.0, 8.0, 25.0};
    CHECK_THAT(elongation(small, 3.0, 4.0).value(), WithinAbs(2.0, 1e-15));
    CHECK_THAT(strain(small, 3.0, 4.0).value(), WithinAbs(0.25, 1e-15));
    CHECK_THAT(tension_rise(small, 3.0, 4.0).value(), WithinAbs(175.0, 1e-12));
    // A gap of 1 µm: 2·g²/2a, which a difference of square roots would have lost.
    CHECK_THAT(elongation(half_metre, 1e-3, 0.0).value(), WithinRel(1e-6 / 250.0, 1e-9));
}

TEST_CASE("A mesh that isn't pushed down needs nothing and shifts nothing", "[taut_mesh]") {
    for (const double gap : {0.0, -1.0}) {
        CHECK(line_force(half_metre, gap, 100.0) == 0.0);
        CHECK(line_force_small(half_metre, gap, 100.0) == 0.0);
        CHECK(elongation(half_metre, gap, 100.0) == 0.0);
        CHECK(shift_by_height(half_metre, gap, 100.0) == 0.0);
        CHECK(shift_by_height_small(half_metre, gap, 100.0) == 0.0);
        const auto worst = worst_point(half_metre, gap, -200.0, 200.0);
        REQUIRE(worst);
        CHECK(worst->line_force == 0.0);
    }
}

TEST_CASE("The worst point of a stroke is its end nearer the frame", "[taut_mesh]") {
    const auto worst = worst_point(half_metre, 3.0, -180.0, 210.0);
    REQUIRE(worst);
    CHECK(worst->y == 210.0);
    CHECK_FALSE(worst->meets_frame);
    CHECK(worst->line_force == line_force(half_metre, 3.0, 210.0));
    const auto turned = worst_point(half_metre, 3.0, 210.0, -180.0);
    REQUIRE(turned);
    CHECK(turned->y == 210.0);
    const auto lower = worst_point(half_metre, 3.0, -211.0, 210.0);
    REQUIRE(lower);
    CHECK(lower->y == -211.0);
    // Beyond the frame it is counted up to the frame: there one part stands upright.
    const auto beyond = worst_point(half_metre, 3.0, 0.0, 300.0);
    REQUIRE(beyond);
    CHECK(beyond->meets_frame);
    CHECK(beyond->y == 250.0);
    CHECK_THAT(beyond->line_force, WithinAbs(25.0 * (1.0 + 3.0 / std::hypot(500.0, 3.0)), 1e-12));
}

TEST_CASE("Nowhere on a stroke is more force needed than at its worst point", "[taut_mesh]") {
    for (const double gap : {0.5, 3.0, 10.0, 50.0, 500.0 / 3.0})
        for (const double from : {-250.0, -249.9, -240.0, -100.0, 20.0})
            for (const double to : {30.0, 200.0, 249.99, 250.0}) {
                const auto worst = worst_point(half_metre, gap, from, to);
                REQUIRE(worst);
                const double share = gap / half_metre.length();
                // What the header allows within gap³/length² of the frame.
                const double allowed = 1.0 + 0.5 * std::pow(share, 4.0) + 1e-14;
                const double hump = gap * share * share;
                for (int i = 1; i < 4000; ++i) {
                    const double y = from + (to - from) * i / 4000.0;
                    const double force = line_force(half_metre, gap, y).value();
                    const double clear = std::min(250.0 + from, 250.0 - to);
                    const double bound = clear > hump ? 1.0 + 1e-14 : allowed;
                    if (force > worst->line_force * bound) {
                        CAPTURE(gap, from, to, y);
                        CHECK(force <= worst->line_force * bound);
                    }
                }
            }
    CHECK_FALSE(worst_point(half_metre, 500.0 / 3.0 + 0.1, -200.0, 200.0));
}

TEST_CASE("Height moves the image outward, and the middle not at all", "[taut_mesh]") {
    CHECK(shift_by_height_small(half_metre, 3.0, 0.0) == 0.0);
    CHECK_THAT(shift_by_height(half_metre, 3.0, 0.0).value(), WithinAbs(0.0, 1e-12));
    // By hand: 200 from the machine's edge, 300 from the other: 4.5·(1/200 − 1/300) = 0.0075.
    CHECK_THAT(shift_by_height_small(half_metre, 3.0, 50.0).value(), WithinAbs(0.0075, 1e-15));
    for (double y = 10.0; y < 240.0; y += 10.0) {
        const double outward = shift_by_height(half_metre, 3.0, y).value();
        CHECK(outward > 0.0);
        CHECK_THAT(shift_by_height(half_metre, 3.0, -y).value(), WithinAbs(-outward, 1e-12));
    }
}

TEST_CASE("A point lands where both parts are strained alike", "[taut_mesh]") {
    // By hand: with a gap of 60 the edge reaches points from 53.3 mm off the frame.
    for (const double gap : {0.1, 3.0, 12.0, 60.0})
        for (double y = -187.5; y <= 187.5; y += 12.5) {
            const auto shift = shift_by_height(half_metre, gap, y);
            REQUIRE(shift);
            const double a = y + 250.0, b = 250.0 - y;
            const double near = std::hypot(a + *shift, gap) / a;
            const double far = std::hypot(b - *shift, gap) / b;
            CHECK_THAT(near - far, WithinAbs(0.0, 1e-13));
        }
}

TEST_CASE("A point that the edge can't press down has no landing place", "[taut_mesh]") {
    // By hand: with the edge at the frame itself the parts are g and √(l² + g²) long, so less than
    // l·g/(g + √(l² + g²)) = 2.98 mm of mesh for g = 3 never lies under it.
    CHECK_FALSE(shift_by_height(half_metre, 3.0, -250.0 + 2.97));
    CHECK(shift_by_height(half_metre, 3.0, -250.0 + 2.99));
    CHECK_FALSE(shift_by_height(half_metre, 3.0, 250.0 - 2.97));
    CHECK(shift_by_height(half_metre, 3.0, 250.0 - 2.99));
}

TEST_CASE("Drag moves the mesh along the stroke", "[taut_mesh]") {
    // By hand: 0.3·3·250·250/(500·700) = 0.160714 in the middle.
    const double middle = shift_by_drag(half_metre, 3.0, Direction::toward_machine, 0.0).value();
    CHECK_THAT(middle, WithinAbs(0.160714, 5e-7));
    CHECK(shift_by_drag(half_metre, 3.0, Direction::toward_operator, 0.0) == -middle);
    for (double y = -240.0; y <= 240.0; y += 20.0)
        CHECK(shift_by_drag(half_metre, 3.0, Direction::toward_machine, y).value() <= middle);
    CHECK(shift_by_drag(half_metre, 0.0, Direction::toward_machine, 0.0) == 0.0);
    // Twice as stiff, half as far; twice the friction, twice as far.
    CHECK_THAT(
        shift_by_drag(half_metre, 3.0, Direction::toward_machine, 0.0, {0.3, 1400.0}).value(),
        WithinRel(0.5 * middle, 1e-14));
    CHECK_THAT(shift_by_drag(half_metre, 3.0, Direction::toward_machine, 0.0, {0.6, 700.0}).value(),
               WithinRel(2.0 * middle, 1e-14));
}

TEST_CASE("A print grows by what its two ends move apart", "[taut_mesh]") {
    const MeshContact made = contact(3.0, 3.0, Direction::toward_machine);
    const auto growth = print_growth(made, -150.0, 100.0);
    const auto lower = mesh_shift(made, -150.0), upper = mesh_shift(made, 100.0);
    REQUIRE((growth && lower && upper));
    CHECK_THAT(growth->total(), WithinAbs(upper->total() - lower->total(), 1e-14));
    CHECK(growth->height > 0.0);
    // By hand: 0.3·3/(500·700)·(350·150 − 100·400) = 0.0321429.
    CHECK_THAT(growth->drag, WithinAbs(0.0321429, 5e-8));
    // A centred image is dragged alike at both ends.
    CHECK_THAT(print_growth(made, -150.0, 150.0)->drag, WithinAbs(0.0, 1e-15));
    CHECK(print_growth(made, 20.0, 20.0)->total() == 0.0);
    CHECK_FALSE(print_growth(made, 21.0, 20.0));
    CHECK_FALSE(print_growth(made, -250.0, 20.0));
}

TEST_CASE("Two heads print the same film at different lengths", "[taut_mesh]") {
    const MeshContact base = contact(2.0, 3.0, Direction::toward_operator);
    const MeshContact high = contact(4.0, 3.0, Direction::toward_operator);
    const auto difference = length_difference(high, base, -200.0, 200.0);
    REQUIRE(difference);
    // By hand: g²/2·(1/50 − 1/450)·2 ends, 16 − 4 = 12 in g²: 0.2133 mm; closed form, so about.
    CHECK_THAT(difference->height, WithinAbs(0.2133, 0.002));
    CHECK_THAT(difference->drag, WithinAbs(0.0, 1e-15));
    CHECK(length_difference(base, base, -200.0, 200.0)->total() == 0.0);
    CHECK_THAT(length_difference(base, high, -200.0, 200.0)->total(),
               WithinAbs(-difference->total(), 1e-14));
    // Stroked the other way, an image off the middle is dragged the other way.
    const MeshContact turned = contact(2.0, 3.0, Direction::toward_machine);
    CHECK_THAT(length_difference(turned, base, -100.0, 200.0)->drag,
               WithinAbs(2.0 * print_growth(turned, -100.0, 200.0)->drag, 1e-14));
}

TEST_CASE("A mesh that can't be gives nothing", "[taut_mesh]") {
    const auto none_at = [](const MeshSpan& span, double gap, double y) {
        CHECK_FALSE(line_force_small(span, gap, y));
        CHECK_FALSE(line_force(span, gap, y));
        CHECK_FALSE(elongation(span, gap, y));
        CHECK_FALSE(strain(span, gap, y));
        CHECK_FALSE(tension_rise(span, gap, y));
        CHECK_FALSE(shift_by_height_small(span, gap, y));
        CHECK_FALSE(shift_by_height(span, gap, y));
        CHECK_FALSE(mesh_shift({span, gap, 3.0, Direction::toward_machine, {}}, y));
    };
    for (const double y : {-250.0, 250.0, 300.0, nan_value, infinite}) none_at(half_metre, 3.0, y);
    for (const double gap : {nan_value, infinite, -infinite}) none_at(half_metre, gap, 0.0);
    for (const double tension : {0.0, -1.0, nan_value, infinite})
        none_at({-250.0, 250.0, tension}, 3.0, 0.0);
    none_at({250.0, -250.0, 25.0}, 3.0, 0.0);
    none_at({-infinite, infinite, 25.0}, 3.0, 0.0);
    none_at({nan_value, 250.0, 25.0}, 3.0, 0.0);
    for (const double bad : {-1.0, nan_value, infinite}) {
        CHECK_FALSE(shift_by_drag(half_metre, bad, Direction::toward_machine, 0.0));
        CHECK_FALSE(shift_by_drag(half_metre, 3.0, Direction::toward_machine, 0.0, {bad, 700.0}));
        CHECK_FALSE(shift_by_drag(half_metre, 3.0, Direction::toward_machine, 0.0, {0.3, bad}));
    }
    CHECK_FALSE(tension_rise(half_metre, 3.0, 0.0, {0.3, 0.0}));
    CHECK_FALSE(worst_point(half_metre, 3.0, 260.0, 300.0));
    CHECK_FALSE(worst_point(half_metre, 3.0, nan_value, 100.0));
    CHECK_FALSE(worst_point(half_metre, nan_value, -100.0, 100.0));
    CHECK_FALSE(worst_point({-250.0, 250.0, 0.0}, 3.0, -100.0, 100.0));
}
