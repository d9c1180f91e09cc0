// Hatching as pixels: within its polygon, where it belongs, and through neighbours as one.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "tests/app/painted.h"

using namespace carriageway;
using namespace carriageway::test;

namespace {

const std::uint32_t paper = colour_of(Theme::light, Role::paper);

} // namespace

TEST_CASE("hatch lines stay within their polygon", "[hatch]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    std::uniform_real_distribution<float> angle(-4.0f, 4.0f), spacing(3.0f, 12.0f),
        width(0.6f, 2.5f);
    for (int round = 0; round < 60; ++round) {
        const std::vector<Vec> polygon = random_polygon(source, 3 + round % 7);
        Sheet sheet(120, 100);
        sheet.list.hatch(polygon.data(), static_cast<int>(polygon.size()), own_colour(red), angle(source),
                         spacing(source), width(source));
        const Picture picture = sheet.picture();
        int painted = 0;
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                if (picture.at(x, y) == paper) continue;
                ++painted;
                REQUIRE(outside_by(polygon, x + 0.5, y + 0.5) < 0.01);
            }
        }
        CHECK(painted > 50);
    }
}

TEST_CASE("hatch lines lie at k spacings and the phase from the screen's origin",
          "[hatch]") {
    const Vec corners[] = {{5, 5}, {115, 5}, {115, 95}, {5, 95}};
    struct Case {
        float angle, spacing, width, phase;
    };
    for (const Case& each : {Case{0.0f, 8.0f, 2.0f, 0.0f}, Case{0.5f, 9.0f, 3.0f, 2.0f},
                             Case{-0.785f, 11.0f, 2.0f, -3.0f}, Case{1.5707963f, 10.0f, 4.0f, 5.0f}}) {
        Sheet sheet(120, 100);
        sheet.list.hatch(corners, 4, own_colour(red), each.angle, each.spacing, each.width,
                         each.phase);
        const Picture picture = sheet.picture();
        for (int y = 7; y < 93; ++y) {
            for (int x = 7; x < 113; ++x) {
                const double along = -std::sin(double(each.angle)) * (x + 0.5) +
                                     std::cos(double(each.angle)) * (y + 0.5) - double(each.phase);
                const double off = std::abs(std::remainder(along, double(each.spacing)));
                const double reach = 0.5 * double(each.width);
                INFO(x << ", " << y << " is " << off << " from a line");
                if (off > reach + 0.51) REQUIRE(picture.at(x, y) == paper);
                if (off < reach - 0.51) REQUIRE(picture.at(x, y) == red);
            }
        }
    }
}

TEST_CASE("hatching runs on through neighbours as if they were one", "[hatch]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    for (int round = 0; round < 40; ++round) {
        const std::vector<Vec> polygon = random_polygon(source, 4 + round % 5);
        const float angle = 0.3f * static_cast<float>(round);
        const Paint colour{Role::flood, 150, false, 0};
        Sheet whole(120, 100), pieces(120, 100);
        whole.list.hatch(polygon.data(), static_cast<int>(polygon.size()), colour, angle, 7.0f, 1.5f);
        for (std::size_t i = 2; i < polygon.size(); ++i) {
            const Vec piece[] = {polygon[0], polygon[i - 1], polygon[i]};
            pieces.list.hatch(piece, 3, colour, angle, 7.0f, 1.5f);
        }
        const Picture a = whole.picture(), b = pieces.picture();
        int differ = 0;
        for (int y = 0; y < a.height; ++y)
            for (int x = 0; x < a.width; ++x) differ += apart(a.at(x, y), b.at(x, y)) > 2;
        // A pixel's centre may meet a cut to within the 1/256 px to which corners are placed.
        CHECK(differ <= 3);
    }
}

TEST_CASE("hatching too fine to be told apart becomes a tint", "[hatch]") {
    Sheet sheet(40, 40);
    const Vec corners[] = {{0, 0}, {40, 0}, {40, 40}, {0, 40}};
    sheet.list.hatch(corners, 4, own_colour(0x000000), 0.4f, 1.5f, 0.5f);
    const Picture picture = sheet.picture();
    const std::uint32_t tint = over(0x000000, paper, 1.0 / 3.0);
    for (int y = 0; y < 40; ++y)
        for (int x = 0; x < 40; ++x) REQUIRE(apart(picture.at(x, y), tint) <= 1);
}

TEST_CASE("a hatch whose lines touch covers its polygon", "[hatch]") {
    Sheet sheet(40, 40);
    const Vec corners[] = {{0, 0}, {40, 0}, {40, 40}, {0, 40}};
    const float width = GENERATE(4.0f, 9.0f, 1e30f);
    sheet.list.hatch(corners, 4, own_colour(red), 0.4f, 4.0f, width);
    CHECK(marked(sheet.picture(), red).pixels == 0);
}

TEST_CASE("a hatch far from its origin is painted without counting up to there", "[hatch]") {
    const Vec corners[] = {{0, 0}, {40, 0}, {40, 40}, {0, 40}};
    for (const float phase : {4e7f, -4e7f, 1e30f}) {
        Sheet sheet(40, 40);
        sheet.list.hatch(corners, 4, own_colour(red), 0.0f, 8.0f, 2.0f, phase);
        // Five lines, two pixels wide; where they lie is lost in the number.
        CHECK(marked(sheet.picture(), paper).pixels >= 4 * 2 * 40);
        CHECK(marked(sheet.picture(), paper).pixels <= 6 * 3 * 40);
    }
}
