#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <algorithm>
#include <limits>

#include "core/geometry.h"
#include "tests/core/outlines.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;

namespace {

/// Whether an outline is refused from whichever corner and whichever way round it is given.
bool refused(Outline outline) {
    for (std::size_t i = 0; i < std::max<std::size_t>(1, outline.size()); ++i) {
        if (is_simple(outline) || is_simple(reversed(outline))) return false;
        if (!outline.empty()) std::rotate(outline.begin(), outline.begin() + 1, outline.end());
    }
    return true;
}

} // namespace

TEST_CASE("Area is positive counter-clockwise and negative clockwise", "[geometry]") {
    CHECK(signed_area(rectangle(300, 400)) == 120000.0);
    CHECK(signed_area(reversed(rectangle(300, 400))) == -120000.0);
    CHECK(signed_area(l_shape()) == 6400.0);
    CHECK(signed_area(u_shape()) == 6900.0);
    CHECK(signed_area(c_shape()) == 6600.0);
    CHECK(signed_area(wedged_shape()) == 7800.0);
    CHECK(signed_area({{0, 0}, {1, 1}}) == 0.0);
    CHECK(signed_area({}) == 0.0);
}

TEST_CASE("Area keeps its digits far from the origin", "[geometry]") {
    Outline far = rectangle(3, 4);
    for (Point& corner : far) corner = {corner.x + 1e8, corner.y - 1e8};
    CHECK(signed_area(far) == 12.0);
}

TEST_CASE("Bounds hold every corner", "[geometry]") {
    CHECK(bounds_of(l_shape()) == Rect{0, 100, 0, 100});
    CHECK(bounds_of({{3, -7}}) == Rect{3, 3, -7, -7});
    CHECK(bounds_of({}) == Rect{});
    CHECK(bounds_of({}).empty());
}

TEST_CASE("A rectangle is empty unless it has an inside", "[geometry]") {
    CHECK_FALSE(Rect{0, 1, 0, 1}.empty());
    CHECK(Rect{0, 0, 0, 1}.empty());
    CHECK(Rect{0, 1, 1, 0}.empty());
    CHECK(Rect{0, std::numeric_limits<double>::quiet_NaN(), 0, 1}.empty());
}

TEST_CASE("Simple outlines are accepted either way round", "[geometry]") {
    for (const Outline& outline :
         {rectangle(300, 400), l_shape(), u_shape(), c_shape(), wedged_shape(), comb(20)}) {
        CHECK(is_simple(outline));
        CHECK(is_simple(reversed(outline)));
    }
    // A corner on a straight side does no harm.
    CHECK(is_simple({{0, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}}));
}

TEST_CASE("Random stars are simple", "[geometry]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    for (int i = 0; i < 200; ++i) CHECK(is_simple(random_star(random, 3 + i % 40)));
}

TEST_CASE("Outlines that aren't simple polygons are refused", "[geometry]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    SECTION("too few corners") {
        CHECK(refused({}));
        CHECK(refused({{0, 0}, {10, 0}}));
    }
    SECTION("not numbers") {
        CHECK(refused({{0, 0}, {10, 0}, {10, nan}, {0, 10}}));
        CHECK(refused({{0, 0}, {inf, 0}, {10, 10}, {0, 10}}));
        CHECK(refused({{0, 0}, {1e300, 0}, {1e300, 1e300}, {0, 1e300}}));
    }
    SECTION("edges that cross") {
        CHECK(refused({{0, 0}, {30, 10}, {10, 0}, {0, 30}}));
        CHECK(refused({{0, 0}, {20, 20}, {20, 0}, {0, 30}}));
    }
    SECTION("a repeated corner") {
        CHECK(refused({{0, 0}, {10, 0}, {10, 0}, {10, 10}, {0, 10}}));
        CHECK(refused({{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}}));
    }
    SECTION("a corner that two places share") {
        CHECK(refused({{0, 0}, {5, 5}, {10, 0}, {10, 10}, {5, 5}, {0, 10}}));
    }
    SECTION("a corner on another edge") {
        CHECK(refused({{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}));
    }
    SECTION("an edge that runs back over its neighbour") {
        CHECK(refused({{0, 0}, {10, 0}, {10, 20}, {10, 10}, {0, 10}}));
        CHECK(refused({{0, 0}, {10, 0}, {10, 20}, {10, -5}, {0, -5}}));
    }
    SECTION("an edge along a distant one") {
        CHECK(refused(
            {{0, 0}, {40, 0}, {40, 20}, {30, 20}, {30, 0}, {10, 0}, {10, 20}, {0, 20}}));
    }
    SECTION("no area worth the name") {
        CHECK(refused({{0, 0}, {10, 10}, {20, 20}}));
        CHECK(refused({{0, 0}, {1, 0}, {1, 1}, {0, 1}}));
        CHECK(is_simple({{0, 0}, {1.1, 0}, {1.1, 1}, {0, 1}}));
    }
}
