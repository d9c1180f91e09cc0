// Marks of the drawing list as pixels: where they are, how opaque, and what they leave alone.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <limits>
#include <numbers>
#include <random>

#include "tests/app/painted.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::uint32_t paper = colour_of(Theme::light, Role::paper);
constexpr float ratios[] = {1.0f, 2.0f, 2.75f};

/// The polygon in triangles that share sides.
void fill_in_pieces(DrawingList& list, const std::vector<Vec>& polygon, Paint colour) {
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        const Vec piece[] = {polygon[0], polygon[i - 1], polygon[i]};
        list.fill(piece, 3, colour);
    }
}

} // namespace

TEST_CASE("a box covers whole pixels and no others", "[painter]") {
    for (const float ratio : ratios) {
        INFO("ratio " << ratio);
        Sheet sheet(40, 30, ratio);
        sheet.list.round({4, 8, 24, 20}, 0.0f, own_colour(red));
        const Picture picture = sheet.picture();
        const Marked box = marked(picture, paper);
        const auto edge = [ratio](float dp) { return static_cast<int>(std::floor(dp * ratio + 0.5f)); };
        CHECK((box.x0 == edge(4) && box.y0 == edge(8)));
        CHECK((box.x1 == edge(24) - 1 && box.y1 == edge(20) - 1));
        CHECK(box.pixels == (edge(24) - edge(4)) * (edge(20) - edge(8)));
        CHECK(picture.at(box.x0, box.y0) == red);
        CHECK(picture.at(box.x1, box.y1) == red);
    }
}

TEST_CASE("round corners are cut off, straight sides stay crisp", "[painter]") {
    Sheet sheet(40, 40);
    sheet.list.round({5, 5, 35, 35}, 10.0f, own_colour(red));
    const Picture picture = sheet.picture();
    CHECK(picture.at(5, 5) == paper);
    CHECK(picture.at(34, 34) == paper);
    CHECK(picture.at(20, 5) == red);
    CHECK(picture.at(20, 4) == paper);
    CHECK(picture.at(34, 20) == red);
    CHECK(picture.at(35, 20) == paper);
}

TEST_CASE("outlines of boxes and circles lie within them", "[painter]") {
    for (const float ratio : ratios) {
        INFO("ratio " << ratio);
        Sheet sheet(60, 60, ratio);
        sheet.list.ring({10, 10, 50, 50}, 0.0f, own_colour(red), 2.0f);
        const Picture square = sheet.picture();
        const Marked box = marked(square, paper);
        const int width = static_cast<int>(std::floor(2.0f * ratio + 0.5f));
        const int side = box.x1 - box.x0 + 1;
        CHECK(box.x0 == static_cast<int>(std::floor(10.0f * ratio + 0.5f)));
        CHECK(box.pixels == 4 * width * (side - width));

        Sheet round_sheet(60, 60, ratio);
        round_sheet.list.circle({30, 30}, 20.0f, own_colour(red), 3.0f);
        const Picture picture = round_sheet.picture();
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                const double away = std::hypot((x + 0.5) / double(ratio) - 30.0,
                                               (y + 0.5) / double(ratio) - 30.0);
                const double pixel = 1.0 / double(ratio);
                if (away > 20.0 + pixel || away < 17.0 - pixel) REQUIRE(picture.at(x, y) == paper);
                if (away < 20.0 - pixel && away > 17.0 + pixel) REQUIRE(picture.at(x, y) == red);
            }
        }
    }
}

TEST_CASE("a disc has the area of a circle", "[painter]") {
    Sheet sheet(60, 60, 2.0f);
    sheet.list.disc({30, 30}, 20.0f, own_colour(0x000000));
    const Picture picture = sheet.picture();
    double area = 0.0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            area += 1.0 - double(picture.at(x, y) >> 16) / double(paper >> 16);
    CHECK_THAT(area, WithinRel(std::numbers::pi * 40.0 * 40.0, 0.01));
}

TEST_CASE("hairlines that run along the pixels are one pixel wide and full", "[painter]") {
    for (const float at : {10.0f, 10.3f, 10.5f, 10.9f}) {
        Sheet sheet(40, 40);
        const Vec across[] = {{5, at}, {35, at}};
        const Vec down[] = {{at + 10.0f, 5}, {at + 10.0f, 35}};
        sheet.list.line(across, 2, own_colour(red), 1.0f);
        const Picture one = sheet.picture();
        CHECK(marked(one, paper).pixels == 30);
        CHECK(one.at(20, marked(one, paper).y0) == red);
        sheet.list.line(down, 2, own_colour(red), 0.4f);
        CHECK(marked(sheet.picture(), paper).pixels == 30 + 30 - 1);
    }
}

TEST_CASE("a slanting line has its width and is where it should be", "[painter]") {
    Sheet sheet(80, 80);
    const Vec ends[] = {{10, 10}, {70, 50}};
    sheet.list.line(ends, 2, own_colour(0x000000), 4.0f);
    const Picture picture = sheet.picture();
    double area = 0.0;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            area += 1.0 - double(picture.at(x, y) >> 16) / double(paper >> 16);
            const double off = std::abs(40.0 * (x + 0.5 - 10.0) - 60.0 * (y + 0.5 - 10.0)) /
                               std::hypot(40.0, 60.0);
            if (off > 3.5) REQUIRE(picture.at(x, y) == paper);
        }
    }
    CHECK_THAT(area, WithinRel(4.0 * std::hypot(60.0, 40.0), 0.03));
}

TEST_CASE("an upright loop is centred on its points", "[painter]") {
    Sheet sheet(60, 60);
    const Vec corners[] = {{10, 10}, {50, 10}, {50, 40}, {10, 40}};
    sheet.list.loop(corners, 4, own_colour(red), 4.0f);
    const Marked box = marked(sheet.picture(), paper);
    CHECK((box.x0 == 8 && box.y0 == 8 && box.x1 == 51 && box.y1 == 41));
    CHECK(box.pixels == 44 * 34 - 36 * 26);
}

TEST_CASE("opaque pieces with common sides show no seam", "[painter]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    for (int round = 0; round < 60; ++round) {
        const std::vector<Vec> polygon = random_polygon(source, 3 + round % 7);
        Sheet sheet(120, 100, round % 2 == 0 ? 1.0f : 1.6f);
        fill_in_pieces(sheet.list, polygon, own_colour(red));
        const Picture picture = sheet.picture();
        const double ratio = double(sheet.fonts.pixels_per_dp());
        int inside = 0;
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                const double by = outside_by(polygon, (x + 0.5) / ratio, (y + 0.5) / ratio);
                // A corner may reach out by twice the soft edge.
                if (by > 2.1 / ratio) REQUIRE(picture.at(x, y) == paper);
                // Corners are placed to 1/256 px, so a centre this near to a side may be at the
                // foot of its soft edge.
                if (by * ratio > -0.01) continue;
                REQUIRE(picture.at(x, y) == red);
                ++inside;
            }
        }
        CHECK(inside > 500);
    }
}

TEST_CASE("see-through pieces are painted once: nowhere twice, nowhere left out", "[painter]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    const Paint glass{Role::squeegee, 128, false, 0};
    const std::uint32_t once =
        over(colour_of(Theme::light, Role::squeegee), paper, 128.0 / 255.0);
    for (int round = 0; round < 60; ++round) {
        const std::vector<Vec> polygon = random_polygon(source, 3 + round % 7);
        Sheet sheet(120, 100);
        fill_in_pieces(sheet.list, polygon, glass);
        const Picture picture = sheet.picture();
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                const std::uint32_t at = picture.at(x, y);
                REQUIRE((at == paper || apart(at, once) <= 1));
                // Corners are placed to 1/256 px.
                const double by = outside_by(polygon, x + 0.5, y + 0.5);
                if (by < -0.01) REQUIRE(at != paper);
                if (by > 0.01) REQUIRE(at == paper);
            }
        }
    }
}

TEST_CASE("nothing is painted outside a clip", "[painter]") {
    Sheet sheet(100, 100);
    const Vec all[] = {{-50, -40}, {150, -30}, {160, 150}, {-40, 140}};
    sheet.list.push_clip({20, 30, 70, 60});
    sheet.list.push_clip({40, 0, 90, 50});
    sheet.list.fill(all, 4, own_colour(red));
    sheet.list.hatch(all, 4, own_colour(blue), 0.7f, 5.0f, 2.0f);
    sheet.list.disc({55, 45}, 40.0f, own_colour(red));
    sheet.list.text({30, 25}, "words words words", {TypeSize::large, true}, Role::ink, Role::paper);
    const Picture clipped = sheet.picture();
    const Marked box = marked(clipped, paper);
    CHECK((box.x0 == 40 && box.y0 == 30 && box.x1 == 69 && box.y1 == 49));
    CHECK(box.pixels == 30 * 20);
    sheet.list.push_clip({0, 0, 10, 10}); // has nothing in common with the ones before
    sheet.list.fill(all, 4, own_colour(blue));
    CHECK(sheet.picture() == clipped);
    sheet.list.pop_clip();
    sheet.list.pop_clip();
    sheet.list.pop_clip();
    sheet.list.fill(all, 4, own_colour(blue));
    CHECK(marked(sheet.picture(), blue).pixels == 0);
}

TEST_CASE("layers lie over each other in their order, whenever they were written", "[painter]") {
    Sheet sheet(20, 20);
    const auto box_on = [&sheet](int layer, std::uint32_t colour) {
        sheet.list.set_layer(layer);
        sheet.list.round({0, 0, 20, 20}, 0.0f, own_colour(colour));
    };
    box_on(2, red);
    box_on(0, blue);
    box_on(1, 0x00AA00);
    CHECK(sheet.picture().at(10, 10) == red);
    box_on(2, blue);
    CHECK(sheet.picture().at(10, 10) == blue);
}

TEST_CASE("a role is painted in the colour of the theme, a colour of its own in both", "[painter]") {
    Sheet sheet(20, 20);
    sheet.list.round({0, 0, 10, 20}, 0.0f, paint(Role::covered));
    sheet.list.round({10, 0, 15, 20}, 0.0f, own_colour(red));
    for (const Theme theme : {Theme::light, Theme::dark}) {
        const Picture picture = sheet.picture(theme);
        CHECK(picture.at(5, 5) == colour_of(theme, Role::covered));
        CHECK(picture.at(12, 5) == red);
        CHECK(picture.at(17, 5) == colour_of(theme, Role::paper));
    }
}

TEST_CASE("marks that can't be drawn are left out", "[painter]") {
    Sheet sheet(50, 50);
    const float nan = std::numeric_limits<float>::quiet_NaN();
    const float infinite = std::numeric_limits<float>::infinity();
    for (const float bad : {nan, infinite, -infinite, 1e30f}) {
        const Vec corners[] = {{0, 0}, {50, bad}, {50, 50}};
        sheet.list.fill(corners, 3, own_colour(red));
        sheet.list.hatch(corners, 3, own_colour(red), 0.0f, 4.0f, 1.0f);
        sheet.list.line(corners, 3, own_colour(red), 2.0f);
        sheet.list.disc({bad, 20}, 10.0f, own_colour(red));
        sheet.list.round({0, 0, bad, 20}, 4.0f, own_colour(red));
        sheet.list.text({bad, 10}, "words", {}, Role::ink, Role::paper);
    }
    const Vec corners[] = {{0, 0}, {50, 0}, {50, 50}};
    sheet.list.line(corners, 3, own_colour(red), nan);
    sheet.list.disc({20, 20}, infinite, own_colour(red));
    sheet.list.disc({20, 20}, -5.0f, own_colour(red));
    sheet.list.hatch(corners, 3, own_colour(red), 0.0f, nan, 1.0f);
    sheet.list.hatch(corners, 3, own_colour(red), nan, 4.0f, 1.0f);
    sheet.list.hatch(corners, 3, own_colour(red), 0.0f, 0.0f, 1.0f);
    sheet.list.hatch(corners, 3, own_colour(red), 0.0f, 4.0f, -1.0f);
    sheet.list.hatch(corners, 3, own_colour(red), 0.0f, 4.0f, 1.0f, infinite);
    CHECK(marked(sheet.picture(), paper).pixels == 0);
}

TEST_CASE("a polygon far larger than the window fills it", "[painter]") {
    Sheet sheet(50, 50);
    const Vec corners[] = {{-4e5f, -3e5f}, {5e5f, -4e5f}, {4e5f, 5e5f}, {-5e5f, 4e5f}};
    sheet.list.fill(corners, 4, own_colour(red));
    CHECK(marked(sheet.picture(), red).pixels == 0);
}
