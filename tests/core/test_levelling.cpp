#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/levelling.h"
#include "core/levelling_advice.h"
#include "tests/core/height_samples.h"

using namespace carriageway;
using carriageway::tests::readings_of;
using Catch::Matchers::WithinAbs;

namespace {

const std::vector<Point> five_points{
    {-200.0, -250.0}, {200.0, -250.0}, {0.0, 0.0}, {-200.0, 250.0}, {200.0, 250.0}};

void check_plane(const Plane& found, const Plane& expected, double tolerance) {
    CHECK_THAT(found.offset, WithinAbs(expected.offset, tolerance));
    CHECK_THAT(found.tilt_x, WithinAbs(expected.tilt_x, tolerance / 200.0));
    CHECK_THAT(found.tilt_y, WithinAbs(expected.tilt_y, tolerance / 200.0));
}

const std::vector<Plane> three_platens{
    {0.3, 0.001, 0.0}, {-0.1, -0.0005, 0.0004}, {-0.2, -0.0005, -0.0004}};

} // namespace

TEST_CASE("Offsets worked by hand", "[levelling]") {
    // Heads 4.0 and 5.0, platens +0.2 and −0.2, one point each; the last reading 0.08 high, which
    // a two by two table spreads as 0.02 on every residual: heads 4.0 and 5.04, platens ±0.18.
    const std::vector<HeightReading> readings{
        {1, 7, 0.0, 0.0, 4.2}, {2, 7, 0.0, 0.0, 3.8},
        {1, 9, 0.0, 0.0, 5.2}, {2, 9, 0.0, 0.0, 4.88}};
    LevelSettings plain;
    plain.robust = false;
    const Levelling found = level(readings, plain);
    REQUIRE(found.refusal == LevelRefusal::none);
    REQUIRE(found.groups.size() == 1);
    CHECK(found.groups[0].terms == LevelTerms::offset);
    CHECK(found.groups[0].reason == LevelReason::few_points);
    CHECK(found.groups[0].freedom == 1);
    CHECK(found.heads[0].number == 7);
    CHECK_THAT(found.heads[0].plane.offset, WithinAbs(4.0, 1e-12));
    CHECK_THAT(found.heads[1].plane.offset, WithinAbs(5.04, 1e-12));
    CHECK_THAT(found.platens[0].plane.offset, WithinAbs(0.18, 1e-12));
    CHECK_THAT(found.platens[1].plane.offset, WithinAbs(-0.18, 1e-12));
    CHECK_THAT(found.residuals[3], WithinAbs(0.02, 1e-12));
    CHECK_THAT(found.residuals[2], WithinAbs(-0.02, 1e-12));
    // Squares 4·0.0004 over one degree: 0.04. A head is the mean of two readings, a platen half
    // the difference of two such means: 0.04/√2 and 0.04/2.
    CHECK_THAT(found.groups[0].deviation, WithinAbs(0.04, 1e-12));
    CHECK_THAT(standard_error(found.heads[0], {}), WithinAbs(0.04 / std::sqrt(2.0), 1e-12));
    CHECK_THAT(standard_error(found.platens[0], {}), WithinAbs(0.02, 1e-12));
}

TEST_CASE("Planes without scatter come back, with the platens' mean at zero", "[levelling]") {
    const std::vector<Plane> heads{{4.0, 0.0, 0.0}, {4.5, 0.002, -0.001}};
    const Levelling found = level(readings_of(heads, three_platens, five_points));
    REQUIRE(found.groups.size() == 1);
    CHECK(found.groups[0].terms == LevelTerms::plane);
    CHECK(found.groups[0].reason == LevelReason::none);
    CHECK(found.groups[0].settled);
    CHECK(found.strays.empty());
    for (std::size_t i = 0; i < 2; ++i) check_plane(found.heads[i].plane, heads[i], 1e-10);
    for (std::size_t i = 0; i < 3; ++i)
        check_plane(found.platens[i].plane, three_platens[i], 1e-10);
    // What the platens have in common is the heads': 0.1 more of offset on each.
    std::vector<Plane> lifted = three_platens;
    for (Plane& plane : lifted) plane.offset += 0.1;
    const Levelling shifted = level(readings_of(heads, lifted, five_points));
    CHECK_THAT(shifted.heads[0].plane.offset, WithinAbs(4.1, 1e-10));
    CHECK_THAT(shifted.platens[0].plane.offset, WithinAbs(0.3, 1e-10));
}

TEST_CASE("The place of the origin doesn't matter", "[levelling]") {
    const std::vector<Plane> heads{{4.0, 0.001, 0.0}, {4.5, 0.002, -0.001}};
    std::vector<HeightReading> readings = readings_of(heads, three_platens, five_points);
    readings[3].height += 0.03;
    const Levelling near = level(readings);
    for (HeightReading& reading : readings) {
        reading.x += 5000.0;
        reading.y -= 5000.0;
    }
    const Levelling far = level(readings);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK_THAT(far.heads[i].plane.at({5000.0, -5000.0}),
                   WithinAbs(near.heads[i].plane.at({}), 1e-9));
        CHECK_THAT(standard_error(far.heads[i], {5100.0, -5100.0}),
                   WithinAbs(standard_error(near.heads[i], {100.0, -100.0}), 1e-7));
    }
}

TEST_CASE("A misread reading is named and doesn't move the planes", "[levelling]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::normal_distribution<double> scatter(0.0, 0.03);
    const std::vector<Plane> heads{{4.0, 0.0, 0.0}, {4.5, 0.002, -0.001}, {3.9, 0.0, 0.001}};
    std::vector<HeightReading> readings = readings_of(heads, three_platens, five_points);
    for (HeightReading& reading : readings) reading.height += scatter(random);
    const Levelling before = level(readings);
    CHECK(before.strays.empty());
    readings[17].height += 1.0; // a whole millimetre misread
    readings[30].height *= 0.1; // a decimal point
    const Levelling after = level(readings);
    REQUIRE(after.strays.size() == 2);
    CHECK(after.strays[0].reading == 17);
    CHECK_THAT(after.strays[0].residual, WithinAbs(1.0, 0.2));
    CHECK(after.strays[0].score > 4.0);
    CHECK(after.strays[1].reading == 30);
    CHECK(after.strays[1].residual < -3.0);
    CHECK(after.groups[0].strays == 2);
    CHECK(after.groups[0].freedom == before.groups[0].freedom - 2);
    for (std::size_t i = 0; i < 3; ++i) check_plane(after.heads[i].plane, heads[i], 0.1);
    // Not so without the robust fit.
    LevelSettings plain;
    plain.robust = false;
    const Levelling pulled = level(readings, plain);
    CHECK(pulled.strays.empty());
    CHECK(std::abs(pulled.heads[1].plane.at(five_points[2]) - heads[1].at(five_points[2])) > 0.05);
}

TEST_CASE("Bad readings are refused", "[levelling]") {
    CHECK(level({}).refusal == LevelRefusal::no_readings);
    const double endless = std::numeric_limits<double>::infinity();
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    CHECK(level({{1, 1, 0.0, 0.0, nothing}}).refusal == LevelRefusal::not_finite);
    const Levelling second = level({{1, 1, 0.0, 0.0, 4.0}, {1, 1, endless, 0.0, 4.0}});
    CHECK(second.refusal == LevelRefusal::not_finite);
    CHECK(second.refused_reading == 1);
    std::vector<HeightReading> many;
    for (std::uint32_t i = 0; i <= most_level_parts; ++i) many.push_back({i, 1, 0.0, 0.0, 4.0});
    CHECK(level(many).refusal == LevelRefusal::too_many_parts);
}

TEST_CASE("Heads and platens never read together stay apart", "[levelling]") {
    std::vector<HeightReading> readings =
        readings_of({{4.0, 0.0, 0.0}}, {{0.1, 0.0, 0.0}, {-0.1, 0.0, 0.0}}, five_points);
    for (const Point& point : five_points) readings.push_back({8, 9, point.x, point.y, 5.0});
    const Levelling found = level(readings);
    REQUIRE(found.groups.size() == 2);
    CHECK(found.heads[0].group != found.heads[1].group);
    CHECK(found.platens[2].number == 8);
    CHECK(found.platens[2].group == found.heads[1].group);
    CHECK_THAT(found.heads[0].plane.offset, WithinAbs(4.0, 1e-10));
    CHECK_THAT(found.heads[1].plane.offset, WithinAbs(5.0, 1e-10));
    CHECK_THAT(found.platens[2].plane.offset, WithinAbs(0.0, 1e-10)); // it is its group's mean
}

TEST_CASE("Too few points give less, and say so", "[levelling]") {
    const std::vector<Plane> heads{{4.0, 0.0, 0.0}, {4.5, 0.0, 0.0}};
    SECTION("all in a line: offsets alone") {
        const Levelling found = level(
            readings_of(heads, three_platens, {{-200.0, 0.0}, {0.0, 0.0}, {200.0, 0.0}}));
        CHECK(found.groups[0].reason == LevelReason::few_points);
        CHECK(found.heads[0].known == LevelTerms::offset);
        CHECK_THAT(found.platens[0].plane.offset, WithinAbs(0.3, 1e-9));
        CHECK(found.platens[0].plane.tilt_x == 0.0);
    }
    SECTION("one platen read once: the others keep their planes") {
        std::vector<HeightReading> readings = readings_of(heads, three_platens, five_points);
        readings.push_back({4, 1, 100.0, 100.0, 4.7});
        readings.push_back({4, 3, 0.0, 0.0, 6.0}); // a head that saw this platen alone
        const Levelling found = level(readings);
        CHECK(found.groups.size() == 1);
        CHECK(found.groups[0].terms == LevelTerms::plane);
        CHECK(found.groups[0].reason == LevelReason::few_points_of_some);
        check_plane(found.platens[0].plane, three_platens[0], 1e-10);
        CHECK(found.platens[3].known == LevelTerms::offset);
        CHECK_THAT(found.platens[3].plane.offset, WithinAbs(0.7, 1e-10));
        CHECK(std::isinf(standard_error(found.platens[3], {})));
        CHECK(found.heads[2].known == LevelTerms::none);
        CHECK(found.residuals.back() == 0.0);
    }
    SECTION("points that leave tilts open although each part has enough of them") {
        // Each pair at one point: nine readings for nine offsets and tilts of six parts.
        std::vector<HeightReading> readings;
        const std::vector<Point> corners{{-200.0, -250.0}, {200.0, -250.0}, {0.0, 250.0}};
        for (std::uint32_t h = 0; h < 3; ++h)
            for (std::uint32_t p = 0; p < 3; ++p)
                readings.push_back({p + 1, h + 1, corners[(h + p) % 3].x, corners[(h + p) % 3].y,
                                    4.0 + 0.1 * h + 0.01 * p});
        const Levelling found = level(readings);
        CHECK(found.groups[0].terms == LevelTerms::offset);
        CHECK(found.groups[0].reason == LevelReason::few_points);
    }
    SECTION("no scatter at all and no step to judge by") {
        LevelSettings exact;
        exact.step = 0.0;
        const Levelling found = level(
            {{1, 1, 0, 0, 0}, {2, 1, 0, 0, 0}, {1, 2, 0, 0, 0}, {2, 2, 0, 0, 0}}, exact);
        CHECK(found.heads[0].plane.offset == 0.0);
        CHECK(found.strays.empty());
    }
    SECTION("a single reading: an offset and nothing to judge it by") {
        const Levelling found = level({{1, 1, 0.0, 0.0, 4.0}});
        CHECK(found.heads[0].known == LevelTerms::offset);
        CHECK_THAT(found.heads[0].plane.offset, WithinAbs(4.0, 1e-12));
        CHECK(found.groups[0].freedom == 0);
        CHECK(std::isinf(standard_error(found.heads[0], {})));
    }
}

TEST_CASE("What is off, and what to turn", "[levelling]") {
    // The platens' medians at the three points are 0, −0.2 and 0 mm: the usual platen is −0.05 −
    // 0.0005·x + 0.0002·y. Three heads at 4.0, 4.0 and 4.6 mm, of which the third is tilted 0.001 mm
    // per mm across; between the points the gaps over the usual platen have the median 3.933.
    const std::vector<Plane> heads{{4.0, 0.0, 0.0}, {4.0, 0.0, 0.0}, {4.6, 0.001, 0.0}};
    const Levelling found = level(readings_of(heads, three_platens, five_points));
    LevelTargets targets;
    targets.tolerance = 0.25;
    const std::vector<PartOff> off = heads_off(found, targets);
    CHECK_FALSE(off[0].out);
    CHECK_THAT(off[0].worst, WithinAbs(-0.4 / 3.0, 1e-9));
    CHECK(off[2].out);
    CHECK(off[2].surely_out);
    CHECK_THAT(off[2].operator_left, WithinAbs(1.4 / 3.0, 1e-9));
    CHECK_THAT(off[2].operator_right, WithinAbs(2.0 / 3.0, 1e-9));
    CHECK_THAT(off[2].machine_side, WithinAbs(2.0 / 3.0, 1e-9));
    CHECK_THAT(off[2].worst, WithinAbs(2.0 / 3.0, 1e-9));
    targets.wanted_gap = 4.6;
    CHECK_THAT(heads_off(found, targets)[0].worst, WithinAbs(-0.8, 1e-9));
    CHECK_THAT(heads_off(found, targets)[2].operator_left, WithinAbs(-0.2, 1e-9));
    CHECK_THAT(heads_off(found, targets)[2].operator_right, WithinAbs(0.0, 1e-9));

    // The first platen lies 0.1, 0.5 and 0.3 mm low at the points: 0.1, 0.7 and 0.3 against the usual.
    CHECK_THAT(platens_off(found, targets)[0].worst, WithinAbs(0.7, 1e-9));
    const Plane usual = usual_platen(found, 0, targets.points);
    check_plane(usual, {-0.05, -0.0005, 0.0002}, 1e-12);
    const std::vector<LevelScrew> screws{{"A", -200.0, 0.0, 1.25, true},
                                         {"B", 200.0, 0.0, 1.25, false},
                                         {"C", 0.0, 300.0, 2.0, true}};
    const PlatenTurns turns = turns_of(found.platens[0], usual, screws);
    CHECK(turns.takes_tilt);
    CHECK_THAT(turns.screws[0].turns, WithinAbs(0.04, 1e-9));
    CHECK_THAT(turns.screws[1].raise, WithinAbs(0.65, 1e-9));
    CHECK_THAT(turns.screws[1].turns, WithinAbs(-0.52, 1e-9));
    CHECK_THAT(turns.screws[2].turns, WithinAbs(0.145, 1e-9));
    CHECK_FALSE(turns_of(found.platens[0], usual, {screws[0], screws[1]}).takes_tilt);
    CHECK(turns_of({}, {}, screws).screws.empty());
    const LevelScrew stuck{"D", 0.0, 0.0, 0.0, true};
    CHECK(turns_of(found.platens[0], usual, {stuck}).screws[0].turns == 0.0);
}

TEST_CASE("One platen that lies off leaves the others in their place", "[levelling]") {
    // Four platens, the third 0.9 mm low: against the mean the others would be 0.225 mm high.
    const std::vector<Plane> platens{{}, {}, {0.9, 0.0, 0.0}, {}};
    const std::vector<Plane> heads{{3.0, 0.0, 0.0}, {3.0, 0.0, 0.0}};
    const Levelling found = level(readings_of(heads, platens, five_points));
    const std::vector<PartOff> off = platens_off(found);
    for (const std::size_t good : {0u, 1u, 3u}) CHECK_THAT(off[good].worst, WithinAbs(0.0, 1e-9));
    CHECK_THAT(off[2].worst, WithinAbs(0.9, 1e-9));
    for (const PartOff& head : heads_off(found)) CHECK_THAT(head.worst, WithinAbs(0.0, 1e-9));
}

TEST_CASE("Levelling does the same every time, and stops", "[levelling]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::cauchy_distribution<double> wild(0.0, 0.05); // no scatter is worse behaved
    std::vector<Plane> heads(16, Plane{4.0, 0.0, 0.0}), platens(18);
    std::vector<HeightReading> readings = readings_of(heads, platens, five_points);
    for (HeightReading& reading : readings) reading.height += wild(random);
    const Levelling once = level(readings), again = level(readings);
    CHECK(once.residuals == again.residuals);
    CHECK(once.strays.size() == again.strays.size());
    const LevelSettings settings;
    CHECK(once.groups[0].rounds <= 2 * settings.most_rounds + 43);
    for (const LevelledPart& head : once.heads) CHECK_THAT(head.plane.offset, WithinAbs(4.0, 0.1));
}
