#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "core/off_contact.h"
#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

/// Left and right at the operator's side 400 apart, machine side 600 farther.
ThreeHeights heights(double left, double right, double machine) {
    return {{{-200.0, -300.0}, left}, {{200.0, -300.0}, right}, {{0.0, 300.0}, machine}};
}

PlaneFit fit_of(const std::vector<MeshHeight>& points) { return fit_plane(points); }

const Rect image{-150.0, 150.0, -200.0, 200.0};

} // namespace

TEST_CASE("Three equal heights make a level plane", "[off_contact]") {
    const PlaneFit fit = fit_plane(heights(3.0, 3.0, 3.0));
    REQUIRE(fit.trouble == PlaneTrouble::none);
    CHECK_THAT(fit.plane.height, WithinAbs(3.0, 1e-12));
    CHECK_THAT(tilt_of(fit.plane), WithinAbs(0.0, 1e-15));
    const auto range = gap_range(fit.plane, 0.5, image);
    REQUIRE(range);
    CHECK_THAT(range->least, WithinAbs(2.5, 1e-12));
    CHECK_THAT(range->most, WithinAbs(2.5, 1e-12));
    CHECK_FALSE(left_right(heights(3.0, 3.0, 3.0)).too_much);
}

TEST_CASE("Three heights make the plane through them", "[off_contact]") {
    // By hand: left 2, right 4, machine 6: 2/400 to the right; operator's middle 3, so 3/600 along,
    // and halfway 4.5 over the origin.
    const PlaneFit fit = fit_plane(heights(2.0, 4.0, 6.0));
    REQUIRE(fit.trouble == PlaneTrouble::none);
    CHECK_THAT(fit.plane.slope_x, WithinAbs(0.005, 1e-15));
    CHECK_THAT(fit.plane.slope_y, WithinAbs(0.005, 1e-15));
    CHECK_THAT(fit.plane.height, WithinAbs(4.5, 1e-12));
    CHECK_THAT(tilt_of(fit.plane), WithinAbs(std::atan(0.005 * std::sqrt(2.0)), 1e-12));
    REQUIRE(fit.residuals.size() == 3);
    CHECK_THAT(fit.largest, WithinAbs(0.0, 1e-12));
    // Over the image: 4.5 ± (150 + 200)·0.005, less a garment of 1.
    const auto range = gap_range(fit.plane, 1.0, image);
    REQUIRE(range);
    CHECK_THAT(range->least, WithinAbs(1.75, 1e-12));
    CHECK_THAT(range->most, WithinAbs(5.25, 1e-12));
    CHECK(range->least_at == Point{-150.0, -200.0});
    CHECK(range->most_at == Point{150.0, 200.0});
    CHECK_THAT(gap_at(fit.plane, 1.0, {200.0, -300.0}), WithinAbs(3.0, 1e-12));
}

TEST_CASE("The range over an area holds every gap inside it", "[off_contact]") {
    for (const double left : {1.0, 2.5, 4.0})
        for (const double right : {1.0, 3.0})
            for (const double machine : {0.0, 3.5}) {
                const OffContactPlane plane = fit_plane(heights(left, right, machine)).plane;
                const auto range = gap_range(plane, 0.6, image);
                REQUIRE(range);
                for (double x = -150.0; x <= 150.0; x += 25.0)
                    for (double y = -200.0; y <= 200.0; y += 25.0) {
                        const double gap = gap_at(plane, 0.6, {x, y});
                        CHECK(gap >= range->least - 1e-12);
                        CHECK(gap <= range->most + 1e-12);
                    }
                CHECK_THAT(gap_at(plane, 0.6, range->least_at), WithinAbs(range->least, 1e-12));
                CHECK_THAT(gap_at(plane, 0.6, range->most_at), WithinAbs(range->most, 1e-12));
            }
}

TEST_CASE("A garment thicker than the setting leaves a negative gap", "[off_contact]") {
    const OffContactPlane flat{0.0, 0.0, 0.0};
    CHECK(gap_at(flat, 0.8, {10.0, 10.0}) == -0.8);
}

TEST_CASE("More than three points make a least-squares plane with residuals", "[off_contact]") {
    // By hand: a square with one corner 0.4 too high. The plane takes a quarter of it at the middle
    // and 0.1/100 along each axis; the residuals are 0.1 with the signs of x·y.
    std::vector<MeshHeight> points{{{-100.0, -100.0}, 3.0},
                                   {{100.0, -100.0}, 3.0},
                                   {{100.0, 100.0}, 3.4},
                                   {{-100.0, 100.0}, 3.0}};
    const PlaneFit fit = fit_plane(points);
    REQUIRE(fit.trouble == PlaneTrouble::none);
    CHECK_THAT(fit.plane.height, WithinAbs(3.1, 1e-12));
    CHECK_THAT(fit.plane.slope_x, WithinAbs(0.001, 1e-14));
    CHECK_THAT(fit.plane.slope_y, WithinAbs(0.001, 1e-14));
    REQUIRE(fit.residuals.size() == 4);
    for (const std::size_t i : {0u, 2u}) CHECK_THAT(fit.residuals[i], WithinAbs(0.1, 1e-12));
    for (const std::size_t i : {1u, 3u}) CHECK_THAT(fit.residuals[i], WithinAbs(-0.1, 1e-12));
    CHECK_THAT(fit.rms, WithinAbs(0.1, 1e-12));
    CHECK_THAT(fit.largest, WithinAbs(0.1, 1e-12));
}

TEST_CASE("A least-squares plane leaves nothing that another plane would take out",
          "[off_contact]") {
    // The residuals' sum and their moments about both axes vanish (the normal equations).
    std::vector<MeshHeight> points;
    for (int i = 0; i < 17; ++i)
        points.push_back({{-200.0 + 37.0 * (i % 11), -300.0 + 53.0 * ((i * 5) % 13)},
                          3.0 + 0.1 * ((i * 7) % 10)});
    const PlaneFit fit = fit_plane(points);
    REQUIRE(fit.trouble == PlaneTrouble::none);
    double sum = 0.0, about_x = 0.0, about_y = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        sum += fit.residuals[i];
        about_x += fit.residuals[i] * points[i].at.x;
        about_y += fit.residuals[i] * points[i].at.y;
    }
    CHECK(fit.rms > 0.1);
    CHECK_THAT(sum, WithinAbs(0.0, 1e-11));
    CHECK_THAT(about_x, WithinAbs(0.0, 1e-9));
    CHECK_THAT(about_y, WithinAbs(0.0, 1e-9));
}

TEST_CASE("Points that carry no plane are refused", "[off_contact]") {
    const std::vector<MeshHeight> two{{{0.0, 0.0}, 1.0}, {{1.0, 0.0}, 1.0}};
    CHECK(fit_plane(two).trouble == PlaneTrouble::too_few);
    CHECK(fit_plane(std::span<const MeshHeight>{}).trouble == PlaneTrouble::too_few);
    std::vector<MeshHeight> line{{{0.0, 0.0}, 1.0}, {{100.0, 50.0}, 2.0}, {{300.0, 150.0}, 4.0}};
    CHECK(fit_plane(line).trouble == PlaneTrouble::in_a_line);
    line.push_back(line.front());
    CHECK(fit_plane(line).trouble == PlaneTrouble::in_a_line);
    const std::vector<MeshHeight> one_place(5, {{40.0, 30.0}, 1.0});
    CHECK(fit_plane(one_place).trouble == PlaneTrouble::in_a_line);
    // 1 mm beside a line of 400: 0.3 % as broad as long. 20 mm: 5 %.
    CHECK(fit_of({{{-200.0, 0.0}, 1.0}, {{200.0, 0.0}, 1.0}, {{0.0, 1.0}, 1.0}}).trouble ==
          PlaneTrouble::in_a_line);
    CHECK(fit_of({{{-200.0, 0.0}, 1.0}, {{200.0, 0.0}, 1.0}, {{0.0, 20.0}, 1.0}}).trouble ==
          PlaneTrouble::none);
    for (const double bad : {nan_value, infinite, -infinite}) {
        CHECK(fit_plane(heights(1.0, bad, 1.0)).trouble == PlaneTrouble::not_finite);
        ThreeHeights misplaced = heights(1.0, 1.0, 1.0);
        misplaced.machine.at.y = bad;
        CHECK(fit_plane(misplaced).trouble == PlaneTrouble::not_finite);
    }
    CHECK(fit_of({{{1e200, 0.0}, 1.0}, {{0.0, 1e200}, 1.0}, {{0.0, 0.0}, 1.0}}).trouble ==
          PlaneTrouble::not_finite);
}

TEST_CASE("Whether points lie in a line doesn't depend on where or how they lie", "[off_contact]") {
    for (double turn = 0.0; turn < 180.0; turn += 7.5)
        for (const double away : {0.0, 5000.0}) {
            const double c = std::cos(radians(turn)), s = std::sin(radians(turn));
            const auto placed = [&](double along, double across) {
                return MeshHeight{{away + along * c - across * s, along * s + across * c}, 1.0};
            };
            CHECK(fit_of({placed(-200, 0), placed(200, 0), placed(0, 1)}).trouble ==
                  PlaneTrouble::in_a_line);
            CHECK(fit_of({placed(-200, 0), placed(200, 0), placed(0, 20)}).trouble ==
                  PlaneTrouble::none);
        }
}

TEST_CASE("Left and right must match within the tolerance", "[off_contact]") {
    // Common practice, no source: left and right must match.
    const ThreeHeights uneven = heights(3.0, 2.5, 3.0);
    CHECK_THAT(left_right(uneven).difference, WithinAbs(-0.5, 1e-12));
    CHECK(left_right(uneven).too_much);
    CHECK_FALSE(left_right(uneven, 0.5).too_much);
    const OffContactPlane plane = fit_plane(uneven).plane;
    CHECK_THAT(left_right(plane, -100.0, 100.0).difference, WithinAbs(-0.25, 1e-12));
    CHECK_FALSE(left_right(plane, -99.0, 99.0).too_much);
    CHECK(left_right(plane, -101.0, 101.0).too_much);
    CHECK(left_right(heights(nan_value, 1.0, 1.0)).too_much);
}

TEST_CASE("An empty area has no gap", "[off_contact]") {
    CHECK_FALSE(gap_range(OffContactPlane{}, 0.0, Rect{}));
    CHECK_FALSE(gap_range(OffContactPlane{}, 0.0, Outline{}));
}

TEST_CASE("Advice has a row and a source for each garment", "[off_contact]") {
    const OffContactAdvice& shirt = advice_for(GarmentKind::t_shirt);
    CHECK(shirt.source == SourceKind::published_conflicting);
    CHECK(against(shirt, 1.0) == AgainstAdvice::below);
    CHECK(against(shirt, shirt.least) == AgainstAdvice::within);
    CHECK(against(shirt, shirt.most) == AgainstAdvice::within);
    CHECK(against(shirt, 4.0) == AgainstAdvice::above);
    CHECK(against(shirt, nan_value) == AgainstAdvice::below);
    // Fleece wants more; how much more is ours.
    const OffContactAdvice& fleece = advice_for(GarmentKind::fleece);
    CHECK(fleece.kind == GarmentKind::fleece);
    CHECK(fleece.source == SourceKind::ours);
    CHECK(fleece.least >= shirt.least);
    CHECK(fleece.most > shirt.most);
}
