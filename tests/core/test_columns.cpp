#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <algorithm>
#include <cmath>
#include <random>
#include <utility>

#include "core/coverage.h"
#include "tests/core/allocation_count.h"
#include "tests/core/outlines.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

std::vector<Column> columns_of(const Outline& outline) {
    ColumnScratch scratch;
    std::vector<Column> columns;
    cut_into_columns(outline, scratch, columns);
    return columns;
}

std::vector<Column> grown(const Outline& outline, double run_past) {
    ColumnScratch scratch;
    std::vector<Column> columns;
    grow_columns(columns_of(outline), run_past, scratch, columns);
    return columns;
}

double area_of(const std::vector<Column>& columns) {
    double area = 0.0;
    for (const Column& column : columns) area += column.area();
    return area;
}

Column upright(double x0, double x1, double lo, double hi) { return {x0, x1, lo, lo, hi, hi}; }

/// How much of the line at x lies in the columns; x must not be on a side of one.
double length_at(const std::vector<Column>& columns, double x) {
    double length = 0.0;
    for (const Column& column : columns)
        if (x > column.x0 && x < column.x1) {
            const Column half = part_of(column, column.x0, x);
            length += half.hi1 - half.lo1;
        }
    return length;
}

/// The same straight from the corners: the stretches inside the outline, each grown at both ends,
/// overlaps counted once.
double grown_length_at(const Outline& outline, double x, double run_past) {
    std::vector<double> crossings;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[(i + 1) % outline.size()];
        if ((a.x < x) != (b.x < x))
            crossings.push_back(a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x));
    }
    std::sort(crossings.begin(), crossings.end());
    double length = 0.0;
    double end = -1e300;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        const double from = std::max(end, crossings[i] - run_past);
        end = std::max(end, crossings[i + 1] + run_past);
        length += end - from;
    }
    return length;
}

} // namespace

TEST_CASE("A rectangle is one column", "[columns]") {
    CHECK(columns_of(rectangle(300, 400)) == std::vector{upright(-150, 150, -200, 200)});
}

TEST_CASE("An L and a U cut at their inner corners", "[columns]") {
    CHECK(columns_of(l_shape()) ==
          std::vector{upright(0, 40, 0, 100), upright(40, 100, 0, 40)});
    CHECK(columns_of(u_shape()) == std::vector{upright(0, 30, 0, 100), upright(30, 60, 0, 30),
                                               upright(60, 90, 0, 100)});
    CHECK(columns_of(c_shape()) == std::vector{upright(0, 30, 0, 100), upright(30, 90, 0, 30),
                                               upright(30, 90, 70, 100)});
}

TEST_CASE("A corner is the same point in every column that ends in it", "[columns]") {
    const std::vector<Column> columns = columns_of({{0, -10.1}, {17.3, 0.7}, {3.9, 31.7}});
    REQUIRE(columns.size() == 2);
    CHECK(columns[0].x0 == 0.0);
    CHECK(columns[0].lo0 == -10.1);
    CHECK(columns[0].hi0 == -10.1);
    CHECK(columns[0].hi1 == 31.7);
    CHECK(columns[1].hi0 == 31.7);
    CHECK(columns[0].lo1 == columns[1].lo0);
    CHECK(columns[1].lo1 == 0.7);
    CHECK(columns[1].hi1 == 0.7);
}

TEST_CASE("Winding and first corner don't matter", "[columns]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    for (int i = 0; i < 50; ++i) {
        Outline outline = random_star(random, 3 + i);
        const std::vector<Column> columns = columns_of(outline);
        CHECK(columns_of(reversed(outline)) == columns);
        std::rotate(outline.begin(), outline.begin() + 2, outline.end());
        CHECK(columns_of(outline) == columns);
    }
}

TEST_CASE("Columns make up the outline", "[columns]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    for (int i = 0; i < 200; ++i) {
        const Outline outline = random_star(random, 3 + i % 60);
        const std::vector<Column> columns = columns_of(outline);
        CHECK_THAT(area_of(columns), WithinRel(std::abs(signed_area(outline)), 1e-11));
        for (std::size_t k = 1; k < columns.size(); ++k) {
            const Column& before = columns[k - 1];
            const Column& column = columns[k];
            CHECK(column.x0 < column.x1);
            const bool same_slab = column.x0 == before.x0 && column.x1 == before.x1;
            const bool above = column.lo0 + column.lo1 >= before.hi0 + before.hi1;
            CHECK(((same_slab && above) || column.x0 == before.x1));
        }
    }
}

TEST_CASE("Outlines without an inside give no columns", "[columns]") {
    CHECK(columns_of({}).empty());
    CHECK(columns_of({{3, 4}}).empty());
    CHECK(columns_of({{0, 0}, {0, 10}, {0, 20}}).empty());
    CHECK(area_of(columns_of({{0, 0}, {10, 10}})) == 0.0);
}

TEST_CASE("A part of a column keeps its own sides", "[columns]") {
    const Column column{0.0, 10.0, 0.1, 1.1, 2.3, 9.7};
    CHECK(part_of(column, 0.0, 10.0) == column);
    const Column left = part_of(column, 0.0, 4.0);
    const Column right = part_of(column, 4.0, 10.0);
    CHECK(left.lo0 == column.lo0);
    CHECK(right.hi1 == column.hi1);
    CHECK(left.lo1 == right.lo0);
    CHECK(left.hi1 == right.hi0);
    CHECK_THAT(left.area() + right.area(), WithinRel(column.area(), 1e-14));
}

TEST_CASE("An image grows along the arm only", "[columns]") {
    CHECK(grown(rectangle(300, 400), 25.0) == std::vector{upright(-150, 150, -225, 225)});
    CHECK(grown(l_shape(), 10.0) ==
          std::vector{upright(0, 40, -10, 110), upright(40, 100, -10, 50)});
    CHECK(grown(l_shape(), 0.0) == columns_of(l_shape()));
    CHECK(grown(l_shape(), -5.0) == columns_of(l_shape()));
}

TEST_CASE("A U open toward the machine grows at its notch too", "[columns]") {
    // The two legs grow by 2·10 · 30 each, the back by 2·10 · 30.
    CHECK_THAT(area_of(grown(u_shape(), 10.0)), WithinAbs(6900.0 + 3.0 * 600.0, 1e-9));
}

TEST_CASE("A U open sideways closes when it grows by half its notch", "[columns]") {
    CHECK(grown(c_shape(), 15.0) == std::vector{upright(0, 30, -15, 115), upright(30, 90, -15, 45),
                                                upright(30, 90, 55, 115)});
    CHECK(grown(c_shape(), 20.0) ==
          std::vector{upright(0, 30, -20, 120), upright(30, 90, -20, 120)});
    CHECK_THAT(area_of(grown(c_shape(), 25.0)), WithinAbs(90.0 * 150.0, 1e-9));
}

TEST_CASE("A wedge closes as far as it is narrow", "[columns]") {
    // The gap is 40·(x − 30)/60; grown by 5 it closes up to x = 45 and 30 are left at the end.
    const std::vector<Column> columns = grown(wedged_shape(), 5.0);
    CHECK_THAT(area_of(columns), WithinAbs(90.0 * 110.0 - 0.5 * 45.0 * 30.0, 1e-9));
    REQUIRE(columns.size() == 4);
    CHECK_THAT(columns[1].x1, WithinAbs(45.0, 1e-12));
    CHECK(columns[2].x0 == columns[1].x1);
    CHECK(columns[3].x0 == columns[1].x1);
}

TEST_CASE("Several wedges in one slab close each at its own place", "[columns]") {
    // Three prongs on a back at the left, with gaps that widen over 100 mm from 10 to 40 and from
    // 20 to 60: growing by 6 closes part of the first, by 12 part of both.
    const Outline outline{{0, 0},    {0, -10},  {150, -10}, {150, 20}, {50, 20},
                          {50, 30},  {150, 60}, {150, 80},  {50, 80},  {50, 100},
                          {150, 140}, {150, 200}, {0, 200}};
    REQUIRE(is_simple(outline));
    for (const double run_past : {1.0, 6.0, 12.0, 18.0, 25.0, 40.0}) {
        const std::vector<Column> columns = grown(outline, run_past);
        for (double x = 0.5; x < 150.0; x += 1.0)
            CHECK_THAT(length_at(columns, x),
                       WithinAbs(grown_length_at(outline, x, run_past), 1e-9));
    }
}

TEST_CASE("Grown outlines agree with every line along the arm", "[columns]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> share(0.0, 1.0);
    int merged = 0;
    for (int i = 0; i < 200; ++i) {
        const Outline outline = random_star(random, 3 + i % 60);
        const double run_past = 60.0 * share(random);
        const std::vector<Column> columns = grown(outline, run_past);
        merged += columns.size() != columns_of(outline).size() ? 1 : 0;
        const Rect bounds = bounds_of(outline);
        for (int k = 0; k < 40; ++k) {
            const double x = bounds.left + bounds.width() * share(random);
            CHECK_THAT(length_at(columns, x),
                       WithinAbs(grown_length_at(outline, x, run_past), 1e-8));
        }
    }
    CHECK(merged > 50);
}

TEST_CASE("Cutting and growing take no memory once warm", "[columns]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    const Outline outline = random_star(random, 200);
    ColumnScratch scratch;
    std::vector<Column> columns;
    std::vector<Column> larger;
    cut_into_columns(outline, scratch, columns);
    grow_columns(columns, 25.0, scratch, larger);
    const std::size_t before = allocation_count();
    cut_into_columns(outline, scratch, columns);
    grow_columns(columns, 25.0, scratch, larger);
    CHECK(allocation_count() == before);
    CHECK(before > 0);
}
