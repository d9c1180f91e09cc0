#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <limits>

#include "core/ink.h"
#include "core/mesh.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

/// 30 µm on a quarter of a square metre, everything lost or left besides set aside.
InkUse plain() {
    InkUse use;
    use.film = 30.0;
    use.image_area = 250000.0;
    use.screen_load = 0.0;
    use.waste = 0.0;
    use.pieces = 1;
    return use;
}

double per_piece(const InkUse& use) {
    const auto need = ink_need(use);
    REQUIRE(need);
    return need->per_piece;
}

} // namespace

TEST_CASE("A film in µm is cm³ per m²", "[ink]") {
    CHECK_THAT(per_piece(plain()), WithinAbs(7.5, 1e-12));
    CHECK(wet_film(25.0, 12.0) == 37.0);
    for (const double bad : {-1.0, nan_value, infinite}) {
        CHECK(wet_film(bad, 12.0) == 0.0);
        CHECK(wet_film(25.0, bad) == 0.0);
    }
}

TEST_CASE("Each share takes its part of the ink", "[ink]") {
    InkUse use = plain();
    use.printed_share = 0.5;
    CHECK_THAT(per_piece(use), WithinAbs(3.75, 1e-12));
    use.transfer = 0.8;
    CHECK_THAT(per_piece(use), WithinAbs(3.0, 1e-12));
    // A second stroke gives half of the first, a third as much again.
    use.later_stroke = 0.5;
    use.strokes = 2;
    CHECK_THAT(per_piece(use), WithinAbs(4.5, 1e-12));
    use.strokes = 3;
    CHECK_THAT(per_piece(use), WithinAbs(6.0, 1e-12));
}

TEST_CASE("A run needs what it prints, what lies in the screen, and waste", "[ink]") {
    InkUse use = plain();
    use.pieces = 144;
    use.screen_load = 150.0;
    use.waste = 0.1;
    const auto need = ink_need(use);
    REQUIRE(need);
    CHECK_THAT(need->printed, WithinAbs(1080.0, 1e-9));
    CHECK(need->in_screen == 150.0);
    CHECK_THAT(need->wasted, WithinAbs(108.0, 1e-9));
    CHECK_THAT(need->total(), WithinAbs(1338.0, 1e-9));
    use.pieces = 0;
    const auto none = ink_need(use);
    REQUIRE(none);
    CHECK(none->total() == 0.0);
    CHECK_THAT(none->per_piece, WithinAbs(7.5, 1e-12));
}

TEST_CASE("Ink for numbers that can't be is nothing", "[ink]") {
    for (const double bad : {-0.1, nan_value, infinite})
        for (double InkUse::*number :
             {&InkUse::film, &InkUse::image_area, &InkUse::printed_share, &InkUse::later_stroke,
              &InkUse::transfer, &InkUse::screen_load, &InkUse::waste}) {
            InkUse use = plain();
            use.*number = bad;
            CHECK_FALSE(ink_need(use));
        }
    for (double InkUse::*share :
         {&InkUse::printed_share, &InkUse::later_stroke, &InkUse::transfer}) {
        InkUse use = plain();
        use.*share = 1.01;
        CHECK_FALSE(ink_need(use));
    }
    InkUse use = plain();
    use.strokes = 0;
    CHECK_FALSE(ink_need(use));
    use = plain();
    use.pieces = -1;
    CHECK_FALSE(ink_need(use));
}

TEST_CASE("From mesh and stencil to ink", "[ink]") {
    const auto mesh = mesh_data(90.0, 40.0);
    REQUIRE(mesh);
    InkUse use = plain();
    use.film = wet_film(mesh->row.volume, 10.0);
    CHECK_THAT(per_piece(use), WithinRel(35.0 * 0.25, 1e-14));
}
