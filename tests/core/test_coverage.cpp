#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <algorithm>
#include <cmath>
#include <random>

#include "core/coverage.h"
#include "tests/core/allocation_count.h"
#include "tests/core/outlines.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr Rect everywhere{-1000, 1000, -1000, 1000};

Coverage covered(const Outline& outline, const Bands& bands) {
    ColumnScratch column_scratch;
    CoverScratch scratch;
    std::vector<Column> columns;
    Coverage coverage;
    cut_into_columns(outline, column_scratch, columns);
    cover(columns, bands, scratch, coverage);
    return coverage;
}

double missed_area(const Coverage& coverage) {
    double area = 0.0;
    for (const MissedPiece& piece : coverage.pieces) area += piece.area;
    return area;
}

double area_of(const Coverage& coverage, MissKind kind) {
    double area = 0.0;
    for (const MissedPiece& piece : coverage.pieces)
        if (piece.kind == kind) area += piece.area;
    return area;
}

/// Whether tiles and pieces fit together: every tile in one piece, areas and bounds those of the
/// tiles, pieces in order.
void check_pieces(const Coverage& coverage) {
    std::uint32_t next = 0;
    for (const MissedPiece& piece : coverage.pieces) {
        CHECK(piece.first == next);
        CHECK(piece.count > 0);
        next += piece.count;
        REQUIRE(next <= coverage.tiles.size());
        double area = 0.0;
        Rect bounds{1e9, -1e9, 1e9, -1e9};
        for (std::uint32_t i = piece.first; i < next; ++i) {
            const Column& tile = coverage.tiles[i];
            CHECK(tile.x0 < tile.x1);
            CHECK(tile.lo0 <= tile.hi0);
            CHECK(tile.lo1 <= tile.hi1);
            area += tile.area();
            bounds = {std::min(bounds.left, tile.x0), std::max(bounds.right, tile.x1),
                      std::min({bounds.lo, tile.lo0, tile.lo1}),
                      std::max({bounds.hi, tile.hi0, tile.hi1})};
        }
        CHECK_THAT(piece.area, WithinRel(area, 1e-12));
        CHECK(piece.bounds == bounds);
    }
    CHECK(next == coverage.tiles.size());
    for (std::size_t i = 1; i < coverage.pieces.size(); ++i)
        CHECK(coverage.pieces[i - 1].kind <= coverage.pieces[i].kind);
}

} // namespace

TEST_CASE("An image inside both bands is covered whole", "[coverage]") {
    const Rect squeegee{-178, 178, -225.7, 298.9};
    const Rect flood{-190.5, 190.5, -289.3, 235.3};
    const Coverage coverage = covered(rectangle(300, 400), {squeegee, flood});
    CHECK(coverage.image_area == 120000.0);
    CHECK(coverage.covered_area == 120000.0);
    CHECK(coverage.share() == 1.0);
    CHECK(coverage.pieces.empty());
    CHECK(coverage.tiles.empty());
}

TEST_CASE("Bands that end exactly at the image miss nothing", "[coverage]") {
    const Rect exact{-150, 150, -200, 200};
    const Coverage coverage = covered(rectangle(300, 400), {exact, exact});
    CHECK(coverage.share() == 1.0);
    CHECK(coverage.pieces.empty());
}

TEST_CASE("The two ends miss in their own kind, printing toward the operator", "[coverage]") {
    // The flood then finishes at the machine end.
    const Coverage coverage = covered(
        rectangle(300, 400), {{-178, 178, -100, 300}, {-190, 190, -300, 150}, End::machine_side});
    CHECK(coverage.covered_area == 300.0 * 250.0);
    REQUIRE(coverage.pieces.size() == 2);
    CHECK(coverage.pieces[0].kind == MissKind::unprinted);
    CHECK(coverage.pieces[0].bounds == Rect{-150, 150, -200, -100});
    CHECK(coverage.pieces[0].area == 30000.0);
    CHECK(coverage.pieces[1].kind == MissKind::heavy);
    CHECK(coverage.pieces[1].bounds == Rect{-150, 150, 150, 200});
    check_pieces(coverage);
}

TEST_CASE("The two ends miss in their own kind, printing toward the machine", "[coverage]") {
    const Coverage coverage = covered(
        rectangle(300, 400), {{-178, 178, -300, 100}, {-190, 190, -150, 300}, End::operator_side});
    CHECK(coverage.covered_area == 300.0 * 250.0);
    REQUIRE(coverage.pieces.size() == 2);
    CHECK(coverage.pieces[0].kind == MissKind::unprinted);
    CHECK(coverage.pieces[0].bounds == Rect{-150, 150, 100, 200});
    CHECK(coverage.pieces[1].kind == MissKind::heavy);
    CHECK(coverage.pieces[1].bounds == Rect{-150, 150, -200, -150});
}

TEST_CASE("Where the flood begins the image is starved", "[coverage]") {
    const Coverage coverage = covered(
        rectangle(300, 400), {everywhere, {-190, 190, -180, 300}, End::machine_side});
    REQUIRE(coverage.pieces.size() == 1);
    CHECK(coverage.pieces[0].kind == MissKind::starved);
    CHECK(coverage.pieces[0].bounds == Rect{-150, 150, -200, -180});
    CHECK(coverage.covered_area == 300.0 * 380.0);
}

TEST_CASE("A head that doesn't move covers nothing", "[coverage]") {
    // Common practice, no source: with both sensors on the head goes up and down and neither
    // prints nor floods.
    const Coverage coverage =
        covered(l_shape(), {everywhere, everywhere, End::machine_side, false});
    CHECK(coverage.covered_area == 0.0);
    CHECK(coverage.share() == 0.0);
    REQUIRE(coverage.pieces.size() == 1);
    CHECK(coverage.pieces[0].kind == MissKind::unprinted);
    CHECK(coverage.pieces[0].area == 6400.0);
    check_pieces(coverage);
}

TEST_CASE("Empty bands", "[coverage]") {
    SECTION("no squeegee: unprinted, whatever the flood does") {
        const Coverage coverage = covered(u_shape(), {{-50, 50, 30, 30}, everywhere});
        REQUIRE(coverage.pieces.size() == 1);
        CHECK(coverage.pieces[0].kind == MissKind::unprinted);
        CHECK(coverage.pieces[0].area == 6900.0);
    }
    SECTION("no flood: starved wherever the squeegee passes") {
        for (const End finish : {End::machine_side, End::operator_side}) {
            const Coverage coverage =
                covered(rectangle(300, 400), {{-200, 200, -100, 300}, {0, 10, 50, -50}, finish});
            CHECK(coverage.covered_area == 0.0);
            REQUIRE(coverage.pieces.size() == 2);
            CHECK(area_of(coverage, MissKind::unprinted) == 30000.0);
            CHECK(area_of(coverage, MissKind::starved) == 90000.0);
        }
    }
    SECTION("no image") {
        const Coverage coverage = covered({}, {everywhere, everywhere});
        CHECK(coverage.image_area == 0.0);
        CHECK(coverage.share() == 0.0);
        CHECK(coverage.pieces.empty());
    }
}

TEST_CASE("An image outside the bands is unprinted", "[coverage]") {
    const Coverage beside = covered(l_shape(), {{200, 300, -50, 50}, {200, 300, -50, 50}});
    REQUIRE(beside.pieces.size() == 1);
    CHECK(beside.pieces[0].area == 6400.0);
    const Coverage beyond = covered(l_shape(), {{-300, 300, 100, 150}, {-300, 300, 100, 150}});
    REQUIRE(beyond.pieces.size() == 1);
    CHECK(beyond.pieces[0].area == 6400.0);
}

TEST_CASE("Bands that don't meet cover nothing", "[coverage]") {
    const Rect squeegee{-200, 200, 0, 300};
    const Rect flood{-200, 200, -300, -50};
    const Coverage past = covered(rectangle(300, 400), {squeegee, flood, End::machine_side});
    CHECK(past.covered_area == 0.0);
    CHECK(area_of(past, MissKind::heavy) == 60000.0);
    CHECK(area_of(past, MissKind::unprinted) == 60000.0);
    const Coverage ahead = covered(rectangle(300, 400), {squeegee, flood, End::operator_side});
    CHECK(area_of(ahead, MissKind::starved) == 60000.0);
}

TEST_CASE("A band inside the image leaves a ring, which is one piece", "[coverage]") {
    const Coverage coverage =
        covered(rectangle(300, 400), {{-100, 100, -120, 140}, everywhere});
    REQUIRE(coverage.pieces.size() == 1);
    CHECK(coverage.pieces[0].kind == MissKind::unprinted);
    CHECK(coverage.pieces[0].area == 120000.0 - 200.0 * 260.0);
    CHECK(coverage.pieces[0].bounds == Rect{-150, 150, -200, 200});
    CHECK(coverage.covered_area == 200.0 * 260.0);
    check_pieces(coverage);
}

TEST_CASE("A narrower squeegee leaves a strip at each side", "[coverage]") {
    const Coverage coverage =
        covered(rectangle(300, 400), {{-140, 130, -300, 300}, {-200, 200, -300, 300}});
    REQUIRE(coverage.pieces.size() == 2);
    CHECK(coverage.pieces[0].bounds == Rect{-150, -140, -200, 200});
    CHECK(coverage.pieces[1].bounds == Rect{130, 150, -200, 200});
    CHECK(coverage.pieces[1].kind == MissKind::unprinted);
}

TEST_CASE("A flood inside the image starves three sides and is heavy past its finish",
          "[coverage]") {
    const Rect flood{-100, 110, -120, 140};
    const Coverage to_machine =
        covered(rectangle(300, 400), {everywhere, flood, End::machine_side});
    REQUIRE(to_machine.pieces.size() == 2);
    CHECK(to_machine.pieces[0].kind == MissKind::starved);
    CHECK(to_machine.pieces[0].area == 300.0 * 340.0 - 210.0 * 260.0);
    CHECK(to_machine.pieces[1].kind == MissKind::heavy);
    CHECK(to_machine.pieces[1].bounds == Rect{-150, 150, 140, 200});
    check_pieces(to_machine);

    const Coverage to_operator =
        covered(rectangle(300, 400), {everywhere, flood, End::operator_side});
    REQUIRE(to_operator.pieces.size() == 2);
    CHECK(to_operator.pieces[0].area == 300.0 * 320.0 - 210.0 * 260.0);
    CHECK(to_operator.pieces[1].bounds == Rect{-150, 150, -200, -120});
}

TEST_CASE("A narrower flood starves a strip at each side", "[coverage]") {
    const Coverage coverage =
        covered(rectangle(300, 400), {everywhere, {-140, 140, -1000, 1000}, End::machine_side});
    REQUIRE(coverage.pieces.size() == 2);
    CHECK(area_of(coverage, MissKind::starved) == 2.0 * 10.0 * 400.0);
}

TEST_CASE("The legs of a U are missed one by one, its back in one piece", "[coverage]") {
    const Coverage legs = covered(u_shape(), {{-10, 100, -10, 80}, everywhere});
    REQUIRE(legs.pieces.size() == 2);
    CHECK(legs.pieces[0].bounds == Rect{0, 30, 80, 100});
    CHECK(legs.pieces[1].bounds == Rect{60, 90, 80, 100});
    const Coverage back = covered(u_shape(), {{-10, 100, 20, 110}, everywhere});
    REQUIRE(back.pieces.size() == 1);
    CHECK(back.pieces[0].bounds == Rect{0, 90, 0, 20});
    const Coverage all_but_back = covered(u_shape(), {{-10, 100, -10, 20}, everywhere});
    REQUIRE(all_but_back.pieces.size() == 1);
    CHECK(all_but_back.pieces[0].area == 6900.0 - 1800.0);
    // Cut exactly at the floor of the notch, the legs have nothing that joins them.
    CHECK(covered(u_shape(), {{-10, 100, -10, 30}, everywhere}).pieces.size() == 2);
}

TEST_CASE("The legs of a sideways U lie in one slab and are told apart", "[coverage]") {
    const Coverage legs = covered(c_shape(), {{-10, 50, -10, 110}, everywhere});
    REQUIRE(legs.pieces.size() == 2);
    CHECK(legs.pieces[0].bounds == Rect{50, 90, 0, 30});
    CHECK(legs.pieces[1].bounds == Rect{50, 90, 70, 100});
    const Coverage round = covered(c_shape(), {{20, 80, 20, 80}, everywhere});
    REQUIRE(round.pieces.size() == 1);
    CHECK_THAT(round.covered_area, WithinAbs(10.0 * 60.0 + 50.0 * 20.0, 1e-9));
}

TEST_CASE("Tiles that touch in a point only are two pieces", "[coverage]") {
    const Outline notched{{-100, -100}, {100, -100}, {100, 100}, {0, 50}, {-100, 100}};
    const Coverage apart = covered(notched, {{-200, 200, -200, 50}, everywhere});
    REQUIRE(apart.pieces.size() == 2);
    CHECK(apart.pieces[0].area == 2500.0);
    CHECK(apart.pieces[1].area == 2500.0);
    CHECK(covered(notched, {{-200, 200, -200, 49.99}, everywhere}).pieces.size() == 1);
    CHECK(covered(notched, {{-200, 200, -200, 50.01}, everywhere}).pieces.size() == 2);
}

TEST_CASE("Columns with nothing between them are two pieces", "[coverage]") {
    CoverScratch scratch;
    Coverage coverage;
    cover({{0, 10, 0, 0, 50, 50}, {20, 30, 0, 0, 50, 50}}, {}, scratch, coverage);
    REQUIRE(coverage.pieces.size() == 2);
    CHECK(coverage.pieces[0].bounds == Rect{0, 10, 0, 50});
    CHECK(coverage.pieces[1].bounds == Rect{20, 30, 0, 50});
}

TEST_CASE("A slanted side is cut where it leaves the band", "[coverage]") {
    // A square on its corner, 200 across its diagonals; a band over y ≤ 50 misses its top, a
    // triangle of 50 in height.
    const Outline diamond{{0, -100}, {100, 0}, {0, 100}, {-100, 0}};
    const Coverage coverage = covered(diamond, {{-200, 200, -200, 50}, everywhere});
    REQUIRE(coverage.pieces.size() == 1);
    CHECK_THAT(coverage.pieces[0].area, WithinAbs(2500.0, 1e-9));
    CHECK_THAT(coverage.covered_area, WithinAbs(17500.0, 1e-9));
    CHECK_THAT(coverage.pieces[0].bounds.left, WithinAbs(-50.0, 1e-12));
    // With the sides cut off at ±60 as well: corners of 40 in height at each side.
    const Coverage sides = covered(diamond, {{-60, 60, -200, 50}, everywhere});
    CHECK(sides.pieces.size() == 3);
    CHECK_THAT(missed_area(sides), WithinAbs(2500.0 + 2.0 * 1600.0, 1e-9));
    // At ±40 the pieces run together round the top.
    CHECK(covered(diamond, {{-40, 40, -200, 50}, everywhere}).pieces.size() == 1);
}

TEST_CASE("What is missed by rounding is no piece, but its area stays honest", "[coverage]") {
    const Outline image = rectangle(300, 400);
    const Coverage coverage = covered(image, {{-178, 178, -300, 200.0 - 1e-8}, everywhere});
    CHECK(coverage.pieces.empty());
    CHECK(coverage.tiles.empty());
    CHECK(coverage.covered_area < coverage.image_area);
    CHECK_THAT(coverage.share(), WithinAbs(1.0, 1e-9));
    CHECK(covered(image, {{-178, 178, -300, 200.0 - 1e-6}, everywhere}).pieces.size() == 1);
}

TEST_CASE("Random images: areas add up, and neither winding nor mirroring matters",
          "[coverage]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> spot(-200.0, 200.0);
    const auto band = [&] {
        const double x = spot(random), y = spot(random), u = spot(random), v = spot(random);
        return Rect{std::min(x, u), std::max(x, u), std::min(y, v), std::max(y, v)};
    };
    int with_pieces = 0;
    for (int i = 0; i < 500; ++i) {
        const Outline outline = random_star(random, 3 + i % 40);
        const Bands bands{band(), band(), i % 2 == 0 ? End::machine_side : End::operator_side};
        const Coverage coverage = covered(outline, bands);
        check_pieces(coverage);
        CHECK_THAT(coverage.covered_area + missed_area(coverage),
                   WithinRel(std::abs(signed_area(outline)), 1e-8));
        const Coverage again = covered(reversed(outline), bands);
        CHECK(again.tiles == coverage.tiles);
        with_pieces += coverage.pieces.size() > 2 ? 1 : 0;

        const auto over = [](const Rect& r) { return Rect{r.left, r.right, -r.hi, -r.lo}; };
        const Coverage mirror =
            covered(mirrored(outline),
                    {over(bands.squeegee), over(bands.flood),
                     i % 2 == 0 ? End::operator_side : End::machine_side});
        CHECK(mirror.pieces.size() == coverage.pieces.size());
        for (const MissKind kind : {MissKind::unprinted, MissKind::starved, MissKind::heavy})
            CHECK_THAT(area_of(mirror, kind),
                       WithinAbs(area_of(coverage, kind), 1e-8 * coverage.image_area));
    }
    CHECK(with_pieces > 100);
}

TEST_CASE("A comb misses each tooth by itself", "[coverage]") {
    const int teeth = 450;
    const Outline outline = comb(teeth);
    const Coverage coverage = covered(outline, {{-10, 2000, -10, 40}, {-10, 2000, -10, 2000}});
    CHECK(coverage.pieces.size() == static_cast<std::size_t>(teeth));
    CHECK_THAT(missed_area(coverage), WithinAbs(10.0 * teeth, 1e-6));
    check_pieces(coverage);
}

TEST_CASE("Covering takes no memory once warm", "[coverage]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    ColumnScratch column_scratch;
    CoverScratch scratch;
    std::vector<Column> columns;
    Coverage coverage;
    cut_into_columns(random_star(random, 300), column_scratch, columns);
    const Bands bands{{-80, 90, -70, 60}, {-60, 120, -60, 90}, End::machine_side};
    cover(columns, bands, scratch, coverage);
    REQUIRE_FALSE(coverage.pieces.empty());
    const std::size_t before = allocation_count();
    for (int i = 0; i < 10; ++i) cover(columns, bands, scratch, coverage);
    CHECK(allocation_count() == before);
}
