// Polygons and lines on paper: cut off at a box, told apart, hatched.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <random>

#include "app/drawing/pdf_polygon.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

double area_of(const PdfPolygon& polygon) {
    double doubled = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const PdfPoint a = polygon[i], b = polygon[(i + 1) % polygon.size()];
        doubled += a.x * b.y - b.x * a.y;
    }
    return 0.5 * doubled;
}

const PdfBox unit{0.0, 0.0, 10.0, 10.0};

} // namespace

TEST_CASE("a polygon is cut off at a box", "[pdf]") {
    PdfPolygon inside{{1, 1}, {9, 2}, {5, 8}};
    const PdfPolygon before = inside;
    cut_to(inside, unit);
    CHECK(inside == before);

    PdfPolygon large{{-1e12, -1e12}, {1e12, -1e12}, {1e12, 1e12}, {-1e12, 1e12}};
    cut_to(large, unit);
    CHECK_THAT(area_of(large), WithinAbs(100.0, 1e-6));

    PdfPolygon corner{{5, 5}, {15, 5}, {5, 15}}; // by hand: 5 by 5, whole, as 10 + 10 > 15
    cut_to(corner, unit);
    CHECK_THAT(area_of(corner), WithinAbs(25.0, 1e-12));

    PdfPolygon away{{20, 20}, {30, 20}, {20, 30}};
    cut_to(away, unit);
    CHECK(away.size() < 3);
}

TEST_CASE("a line is cut off at a box", "[pdf]") {
    PdfLine across{{-10, 5}, {30, 5}};
    REQUIRE(cut_to(across, unit));
    CHECK((across.from == PdfPoint{0, 5} && across.to == PdfPoint{10, 5}));
    PdfLine slanting{{-5, 0}, {15, 20}}; // y = x + 5: from (0, 5) to (5, 10)
    REQUIRE(cut_to(slanting, unit));
    CHECK_THAT(slanting.from.x, WithinAbs(0.0, 1e-12));
    CHECK_THAT(slanting.to.x, WithinAbs(5.0, 1e-12));
    PdfLine past{{-5, 8}, {5, 18}};
    CHECK_FALSE(cut_to(past, unit));
    PdfLine upright{{11, -5}, {11, 15}};
    CHECK_FALSE(cut_to(upright, unit));
    PdfLine point{{3, 3}, {3, 3}};
    CHECK(cut_to(point, unit));
}

TEST_CASE("polygons with a common side don't overlap, those with a common part do", "[pdf]") {
    const PdfPolygon left{{0, 0}, {5, 0}, {5, 5}, {0, 5}},
        right{{5, -2}, {9, -2}, {9, 9}, {5, 9}};
    CHECK_FALSE(overlap(left, right));
    CHECK_FALSE(overlap(right, left));
    const PdfPolygon over_both{{4, 1}, {6, 1}, {5, 3}};
    CHECK(overlap(left, over_both));
    CHECK(overlap(over_both, right));
    CHECK(overlap(left, left));
    const PdfPolygon within{{1, 1}, {2, 1}, {1, 2}};
    CHECK(overlap(left, within));
    CHECK(overlap(within, left));
}

TEST_CASE("corners are put clockwise", "[pdf]") {
    PdfPolygon one{{0, 0}, {0, 5}, {5, 0}}, other{{0, 0}, {5, 0}, {0, 5}};
    make_clockwise(one);
    make_clockwise(other);
    CHECK(area_of(one) == 12.5); // y down: above 0 is clockwise
    CHECK(area_of(other) == 12.5);
}

TEST_CASE("hatch lines are where the screen has them, and all that are needed", "[pdf]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    std::uniform_real_distribution<double> turn(-4.0, 4.0), step(3.0, 20.0), shift(-50.0, 50.0);
    const PdfPolygon square{{0, 0}, {100, 0}, {100, 100}, {0, 100}};
    for (int round = 0; round < 200; ++round) {
        const PdfHatch hatch{turn(source), step(source), 1.0, shift(source)};
        const std::vector<PdfLine> lines = hatch_lines({square}, hatch, 1000);
        const double nx = -std::sin(hatch.angle), ny = std::cos(hatch.angle);
        double least = 1e9, most = -1e9;
        for (const PdfLine& line : lines) {
            const double level = nx * line.from.x + ny * line.from.y;
            CHECK_THAT(nx * line.to.x + ny * line.to.y, WithinAbs(level, 1e-9));
            CHECK_THAT(std::remainder(level - hatch.phase, hatch.spacing), WithinAbs(0.0, 1e-9));
            least = std::min(least, level);
            most = std::max(most, level);
        }
        double lo = 1e9, hi = -1e9;
        for (const PdfPoint& corner : square) {
            lo = std::min(lo, nx * corner.x + ny * corner.y);
            hi = std::max(hi, nx * corner.x + ny * corner.y);
        }
        CHECK(least - hatch.spacing < lo - 0.5);
        CHECK(most + hatch.spacing > hi + 0.5);
        CHECK(std::lround((most - least) / hatch.spacing) + 1 == static_cast<long>(lines.size()));
    }
    CHECK(hatch_lines({square}, {0.0, 1.0, 0.5, 0.0}, 7).size() == 7);
    CHECK(hatch_lines({}, {}, 7).empty());
    CHECK(hatch_lines({square}, {0.0, 0.0, 0.5, 0.0}, 7).empty());
}
