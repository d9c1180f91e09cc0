#include <algorithm>
#include <array>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <numbers>
#include <random>
#include <sstream>

#include "core/ink_shape.h"
#include "core/job_check.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Random = std::mt19937_64;

/// Sums of mm of a few thousand lose no more than this.
constexpr double rounding = 1e-9;

/// A picture held whole, as the shape itself never is.
struct Bitmap {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> darkness;

    Bitmap(int w, int h)
        : width(w), height(h),
          darkness(static_cast<std::size_t>(w) * static_cast<std::size_t>(h)) {}
    std::uint8_t& at(int x, int y) {
        return darkness[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                        static_cast<std::size_t>(x)];
    }
    bool ink(int x, int y) const {
        return darkness[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                        static_cast<std::size_t>(x)] >= 128;
    }
    void fill(int left, int top, int right, int bottom, std::uint8_t value = 255) {
        for (int y = top; y < bottom; ++y)
            for (int x = left; x < right; ++x) at(x, y) = value;
    }
    std::span<const std::uint8_t> row(int y) const {
        return std::span(darkness).subspan(
            static_cast<std::size_t>(y) * static_cast<std::size_t>(width),
            static_cast<std::size_t>(width));
    }
    std::uint64_t ink_pixels() const {
        return static_cast<std::uint64_t>(std::count_if(
            darkness.begin(), darkness.end(), [](std::uint8_t d) { return d >= 128; }));
    }
};

InkFound shape_of(const Bitmap& bitmap, double across, double along, const InkRules& rules = {}) {
    InkShape shape({bitmap.width, bitmap.height, across, along}, rules);
    for (int y = 0; y < bitmap.height; ++y) shape.add(y, 0, 1, bitmap.row(y));
    return shape.found();
}

/// How far outside the outline a point lies across, by the outline's own edges: 0 within it. The
/// outline is cut at the point's y, and the point compared with the outermost cuts.
double outside_by(const Outline& outline, const Point& point) {
    double left = INFINITY, right = -INFINITY;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[(i + 1) % outline.size()];
        if (std::max(a.y, b.y) < point.y - rounding || std::min(a.y, b.y) > point.y + rounding)
            continue;
        const double share = a.y == b.y ? 0.0 : std::clamp((point.y - a.y) / (b.y - a.y), 0.0, 1.0);
        const double x = a.x + share * (b.x - a.x);
        left = std::min({left, x, a.y == b.y ? b.x : x});
        right = std::max({right, x, a.y == b.y ? b.x : x});
    }
    return std::max({0.0, left - point.x, point.x - right});
}

/// The furthest that a corner of an inked pixel lies outside, and how many such pixels there are.
struct Cut {
    double most = 0.0;
    std::uint64_t pixels = 0;
};
Cut cut_by(const Bitmap& bitmap, double across, double along, const Outline& outline) {
    Cut cut;
    for (int y = 0; y < bitmap.height; ++y) {
        for (int x = 0; x < bitmap.width; ++x) {
            if (!bitmap.ink(x, y)) continue;
            double most = 0.0;
            for (const int right : {0, 1})
                for (const int below : {0, 1}) {
                    const Point corner{(x + right - 0.5 * bitmap.width) * across,
                                       (0.5 * bitmap.height - y - below) * along};
                    most = std::max(most, outside_by(outline, corner));
                }
            cut.most = std::max(cut.most, most);
            cut.pixels += most > rounding;
        }
    }
    return cut;
}

double most_outside(const Bitmap& bitmap, double across, double along, const Outline& outline) {
    return cut_by(bitmap, across, along, outline).most;
}

std::string corners_text(const Outline& outline) {
    std::ostringstream text;
    text.precision(17);
    for (const Point& corner : outline) text << corner.x << ' ' << corner.y << '\n';
    return text.str();
}

/// A picture of noise, discs, bars and halftone, more or less of each.
Bitmap random_bitmap(Random& random) {
    const auto whole = [&random](int lo, int hi) {
        return std::uniform_int_distribution<int>(lo, hi)(random);
    };
    Bitmap bitmap(whole(1, 90), whole(1, 90));
    for (int noise = whole(0, 3) * whole(0, 300); noise > 0; --noise)
        bitmap.at(whole(0, bitmap.width - 1), whole(0, bitmap.height - 1)) =
            static_cast<std::uint8_t>(whole(0, 255));
    for (int discs = whole(0, 3); discs > 0; --discs) {
        const int cx = whole(-5, bitmap.width + 5), cy = whole(-5, bitmap.height + 5);
        const int radius = whole(1, 30), hole = whole(0, radius);
        for (int y = 0; y < bitmap.height; ++y)
            for (int x = 0; x < bitmap.width; ++x) {
                const int square = (x - cx) * (x - cx) + (y - cy) * (y - cy);
                if (square <= radius * radius && square >= hole * hole) bitmap.at(x, y) = 200;
            }
    }
    for (int bars = whole(0, 2); bars > 0; --bars) {
        const int x = whole(0, bitmap.width - 1), y = whole(0, bitmap.height - 1);
        bitmap.fill(x, y, whole(x, bitmap.width), whole(y, bitmap.height), 128);
    }
    return bitmap;
}

bool same(const InkFound& a, const InkFound& b) {
    return a.outline == b.outline && a.extent == b.extent && a.ink_area == b.ink_area &&
           a.printed_share == b.printed_share && a.ink_pixels == b.ink_pixels &&
           a.specks == b.specks && a.speck_pixels == b.speck_pixels && a.slack == b.slack;
}

}  // namespace

TEST_CASE("A filled rectangle is its own outline, about the picture's centre", "[ink_shape]") {
    Bitmap bitmap(100, 80);
    bitmap.fill(10, 20, 60, 70);
    const InkFound found = shape_of(bitmap, 2.0, 3.0);
    // Columns 10 to 60 of 100 at 2 mm: -80 to 20. Rows 20 to 70 of 80 at 3 mm, downward: 60 to -90.
    CHECK(found.extent == Rect{-80.0, 20.0, -90.0, 60.0});
    CHECK(found.outline == Outline{{20.0, -90.0}, {20.0, 60.0}, {-80.0, 60.0}, {-80.0, -90.0}});
    CHECK(found.ink_pixels == 2500);
    CHECK(found.ink_area == 15000.0);
    CHECK(found.printed_share == 1.0);
    CHECK(found.specks == 0);
}

TEST_CASE("A hole is filled in the outline and counted out of the share", "[ink_shape]") {
    Bitmap bitmap(100, 100);
    bitmap.fill(0, 0, 100, 100);
    bitmap.fill(20, 20, 80, 70, 0);
    const InkFound found = shape_of(bitmap, 1.0, 1.0);
    CHECK(signed_area(found.outline) == 10000.0);
    CHECK(found.printed_share == 0.7);  // 60 by 50 of 100 by 100 is missing
}

TEST_CASE("A pixel is ink from half the darkness on", "[ink_shape]") {
    Bitmap bitmap(3, 1);
    bitmap.at(0, 0) = 127;
    bitmap.at(1, 0) = 128;
    const InkFound found = shape_of(bitmap, 4.0, 4.0);
    CHECK(found.ink_pixels == 1);
    CHECK(found.extent == Rect{-2.0, 2.0, -2.0, 2.0});
}

TEST_CASE("Parts that lie apart are bridged straight", "[ink_shape]") {
    Bitmap bitmap(100, 100);
    bitmap.fill(0, 0, 20, 10);     // at the top left
    bitmap.fill(80, 90, 100, 100);  // at the bottom right
    const InkFound found = shape_of(bitmap, 1.0, 1.0);
    // Two rectangles of 20 by 10, and between them a slanting strip 20 wide and 80 long.
    CHECK_THAT(signed_area(found.outline), WithinRel(2 * 200.0 + 20.0 * 80.0, 0.05));
    CHECK_FALSE(image_fault({300, 400, found.outline, 0, 0, 0}));
    CHECK(most_outside(bitmap, 1.0, 1.0, found.outline) <= rounding);
}

TEST_CASE("Lone specks are left out and told; the same dots in a halftone are not", "[ink_shape]") {
    // 0.1 mm a pixel: a speck is below 5 pixels both ways, cells are 8 pixels.
    Bitmap bitmap(600, 600);
    bitmap.fill(200, 200, 400, 400);
    bitmap.fill(10, 10, 14, 14);      // a speck
    bitmap.fill(500, 500, 503, 504);  // another
    bitmap.fill(560, 100, 562, 105);  // 0.5 mm long: none
    const InkFound found = shape_of(bitmap, 0.1, 0.1);
    CHECK(found.specks == 2);
    CHECK(found.speck_pixels == 16 + 12);
    CHECK(found.ink_pixels == 200 * 200 + 2 * 5);
    CHECK_THAT(found.extent.left, WithinAbs(-10.0, rounding));
    CHECK_THAT(found.extent.right, WithinAbs(26.2, rounding));
    CHECK_THAT(found.extent.hi, WithinAbs(20.0, rounding));
    CHECK_THAT(found.extent.lo, WithinAbs(-10.0, rounding));

    InkRules everything;
    everything.speck = 0.0;
    CHECK(shape_of(bitmap, 0.1, 0.1, everything).specks == 0);
    CHECK(shape_of(bitmap, 0.1, 0.1, everything).ink_pixels == bitmap.ink_pixels());

    // Dots of 0.3 mm, 0.7 mm apart: a highlight.
    Bitmap dots(600, 600);
    for (int y = 100; y < 500; y += 7)
        for (int x = 100; x < 500; x += 7) dots.fill(x, y, x + 3, y + 3);
    const InkFound highlight = shape_of(dots, 0.1, 0.1);
    CHECK(highlight.specks == 0);
    CHECK(highlight.ink_pixels == dots.ink_pixels());
    CHECK_THAT(highlight.printed_share, WithinAbs(9.0 / 49.0, 0.01));
}

TEST_CASE("Specks alone are no ink", "[ink_shape]") {
    Bitmap bitmap(600, 600);
    bitmap.fill(10, 10, 14, 14);
    const InkFound found = shape_of(bitmap, 0.1, 0.1);
    CHECK(found.outline.empty());
    CHECK(found.specks == 1);
    CHECK(found.ink_pixels == 0);
    CHECK(found.printed_share == 0.0);
    CHECK(shape_of(Bitmap(50, 50), 1.0, 1.0).outline.empty());
}

TEST_CASE("A disc's outline is near its circle with few corners", "[ink_shape]") {
    // 0.5 mm a pixel, radius 190 mm: 760 pixels across.
    Bitmap bitmap(800, 800);
    for (int y = 0; y < 800; ++y)
        for (int x = 0; x < 800; ++x)
            if (std::hypot(x - 399.5, y - 399.5) < 380.0) bitmap.at(x, y) = 255;
    const InkFound found = shape_of(bitmap, 0.5, 0.5);
    const double circle = std::numbers::pi * 190.0 * 190.0;
    CHECK_THAT(found.ink_area, WithinRel(circle, 1e-3));
    CHECK(found.outline.size() <= 200);
    CHECK(found.slack == 0.5);
    // At most the slack, a band and a pixel too large all round.
    CHECK(signed_area(found.outline) >= found.ink_area);
    CHECK(signed_area(found.outline) <= std::numbers::pi * 192.0 * 192.0);
    CHECK(most_outside(bitmap, 0.5, 0.5, found.outline) <= rounding);

    InkRules few;
    few.most_corners = 4;
    const InkFound box = shape_of(bitmap, 0.5, 0.5, few);
    CHECK(box.outline.size() == 4);
    CHECK(most_outside(bitmap, 0.5, 0.5, box.outline) <= rounding);
}

TEST_CASE("The outline of any picture covers its ink and is one that core accepts",
          "[ink_shape]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    std::uniform_real_distribution<double> power(-4.5, 2.0);  // of 2, mm a pixel
    std::uniform_int_distribution<int> corners(4, 60), cells(1, 100), speck(0, 1);
    int judged = 0, bridged = 0, with_specks = 0;
    for (int round = 0; round < 1500; ++round) {
        INFO("round " << round);
        Bitmap bitmap = random_bitmap(random);
        const double across = std::exp2(power(random)), along = std::exp2(power(random));
        InkRules rules;
        rules.speck = speck(random) * 0.5;
        rules.most_corners = corners(random);
        rules.most_cells = cells(random);
        const InkFound found = shape_of(bitmap, across, along, rules);
        REQUIRE(found.ink_pixels + found.speck_pixels == bitmap.ink_pixels());
        with_specks += found.specks > 0;
        REQUIRE((found.outline.empty() == (found.ink_pixels == 0)));
        if (found.outline.empty()) continue;
        REQUIRE(found.outline.size() <= static_cast<std::size_t>(rules.most_corners));
        const double area = signed_area(found.outline);
        REQUIRE_THAT(found.printed_share, WithinRel(static_cast<double>(found.ink_pixels) * across *
                                                        along / area, 1e-12));
        REQUIRE(bounds_of(found.outline) == found.extent);
        if (area > least_image_area) {
            INFO(corners_text(found.outline));
            REQUIRE_FALSE(image_fault({300, 400, found.outline, 0, 0, 0}));
        }
        ++judged;
        bridged += found.printed_share < 0.5;
        // What isn't covered is not more than the specks.
        REQUIRE(cut_by(bitmap, across, along, found.outline).pixels <= found.speck_pixels);
    }
    // The rounds held what they are meant to hold.
    CHECK(judged > 1000);
    CHECK(bridged > 100);
    CHECK(with_specks > 5);
}

TEST_CASE("The order in which pixels are added changes nothing", "[ink_shape]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    // First column, first row, steps: the seven passes of an interlaced picture (PNG
    // specification, third edition, 8.1).
    struct Pass {
        int x, y, dx, dy;
    };
    constexpr std::array<Pass, 7> passes{{{0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4},
                                          {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}}};
    for (int round = 0; round < 100; ++round) {
        INFO("round " << round);
        Bitmap bitmap = random_bitmap(random);
        const InkFound by_rows = shape_of(bitmap, 0.2, 0.3);
        REQUIRE(same(by_rows, shape_of(bitmap, 0.2, 0.3)));
        InkShape interlaced({bitmap.width, bitmap.height, 0.2, 0.3});
        InkShape upward({bitmap.width, bitmap.height, 0.2, 0.3});
        for (const Pass& pass : passes)
            for (int y = pass.y; y < bitmap.height; y += pass.dy) {
                std::vector<std::uint8_t> row;
                for (int x = pass.x; x < bitmap.width; x += pass.dx) row.push_back(bitmap.at(x, y));
                interlaced.add(y, pass.x, pass.dx, row);
            }
        for (int y = bitmap.height; y-- > 0;) upward.add(y, 0, 1, bitmap.row(y));
        REQUIRE(same(by_rows, interlaced.found()));
        REQUIRE(same(by_rows, upward.found()));
    }
}

TEST_CASE("Pixels outside the picture are left out, and pictures without size find nothing",
          "[ink_shape]") {
    const std::vector<std::uint8_t> black(20, 255);
    InkShape shape({10, 10, 1.0, 1.0});
    shape.add(-1, 0, 1, black);
    shape.add(10, 0, 1, black);
    shape.add(0, 10, 1, black);
    shape.add(0, -1, 1, black);
    shape.add(0, 0, 0, black);
    CHECK(shape.found().ink_pixels == 0);
    shape.add(5, 4, 1, black);  // columns 4 to 9 are there
    shape.add(6, 1, 3, black);  // columns 1, 4 and 7
    CHECK(shape.found().ink_pixels == 9);
    for (const PixelGrid& grid : {PixelGrid{0, 10, 1, 1}, PixelGrid{10, -1, 1, 1},
                                  PixelGrid{10, 10, 0, 1}, PixelGrid{10, 10, 1, NAN},
                                  PixelGrid{10, 10, INFINITY, 1}, PixelGrid{}}) {
        InkShape nothing(grid);
        nothing.add(0, 0, 1, black);
        CHECK(nothing.found().outline.empty());
    }
}
