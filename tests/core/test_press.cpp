#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/press.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("Directions are opposite and signed toward the machine", "[press]") {
    CHECK(sign_of(Direction::toward_machine) == 1.0);
    CHECK(sign_of(Direction::toward_operator) == -1.0);
    CHECK(opposite(Direction::toward_machine) == Direction::toward_operator);
    CHECK(opposite(Direction::toward_operator) == Direction::toward_machine);
}

TEST_CASE("A number typed as plus or minus is a rectangular half-width", "[press]") {
    // JCGM 100:2008, 4.3.7: u = a/√3. Its example H.1 (components from memory): ±0.05 °C gives
    // 0.029 °C, ±1e-6 /°C gives 0.58e-6 /°C.
    CHECK_THAT(standard_deviation({0.05, false}), WithinAbs(0.029, 0.0005));
    CHECK_THAT(standard_deviation({1e-6, false}), WithinAbs(0.58e-6, 0.005e-6));
    CHECK_THAT(standard_deviation({2.0, false}), WithinRel(2.0 / std::sqrt(3.0), 1e-15));
    CHECK(worst_deviation({2.0, false}) == 2.0);
}

TEST_CASE("A measured number is a standard deviation, reckoned with three times", "[press]") {
    CHECK(standard_deviation({0.7, true}) == 0.7);
    CHECK_THAT(worst_deviation({0.7, true}), WithinRel(2.1, 1e-15)); // ours
}

TEST_CASE("The combined deviation of the GUM's example comes out", "[press]") {
    // JCGM 100:2008, H.1: u_c = 32 nm (recomputed from unrounded inputs 31.71). Components from
    // memory: 25 nm and 9.7 nm measured, ±5 nm and ±28.75 nm rectangular.
    double variance = 0.0;
    for (const Spread& spread :
         {Spread{25.0, true}, Spread{9.7, true}, Spread{5.0, false}, Spread{28.75, false}})
        variance += standard_deviation(spread) * standard_deviation(spread);
    CHECK_THAT(std::sqrt(variance), WithinAbs(31.71, 0.05));
}

TEST_CASE("A ruler is read from its zero the way it counts", "[press]") {
    Ruler ruler{-500.0, Direction::toward_machine, 1.0, false};
    CHECK(ruler_reading(ruler, -260.0) == 240.0);
    CHECK(ruler_position(ruler, 240.0) == -260.0);
    ruler = {500.0, Direction::toward_operator, 1.0, false};
    CHECK(ruler_reading(ruler, -260.0) == 760.0);
    CHECK(ruler_position(ruler, 760.0) == -260.0);
}

TEST_CASE("A ruler in inches is read in inches", "[press]") {
    const Ruler ruler{-508.0, Direction::toward_machine, mm_per_inch / 16.0, true};
    CHECK_THAT(ruler_reading(ruler, 0.0), WithinAbs(20.0, 1e-12));
    CHECK_THAT(ruler_position(ruler, 20.5), WithinAbs(12.7, 1e-12));
    // 3/16 in past the mark at 0: the graduations beside it.
    CHECK_THAT(graduation_toward(ruler, 4.0, Direction::toward_machine),
               WithinAbs(3.0 * mm_per_inch / 16.0, 1e-9));
    CHECK_THAT(graduation_toward(ruler, 4.0, Direction::toward_operator),
               WithinAbs(2.0 * mm_per_inch / 16.0, 1e-9));
}

TEST_CASE("Graduations are found in either direction, whichever way the ruler counts",
          "[press]") {
    for (const Direction counts : {Direction::toward_machine, Direction::toward_operator}) {
        const Ruler ruler{0.5, counts, 2.0, false};
        CHECK(graduation_toward(ruler, 3.0, Direction::toward_machine) == 4.5);
        CHECK(graduation_toward(ruler, 3.0, Direction::toward_operator) == 2.5);
        CHECK(graduation_toward(ruler, -3.0, Direction::toward_machine) == -1.5);
        CHECK(graduation_toward(ruler, -3.0, Direction::toward_operator) == -3.5);
        CHECK(nearest_graduation(ruler, 3.0) == 2.5);
        CHECK(nearest_graduation(ruler, 3.6) == 4.5);
        CHECK(nearest_graduation(ruler, -3.0) == -3.5);
    }
}

TEST_CASE("A position that misses a mark by rounding stands on it", "[press]") {
    const Ruler ruler{-500.0, Direction::toward_machine, 1.0, false};
    for (const double off : {-0.9 * graduation_slack, 0.0, 0.9 * graduation_slack}) {
        CHECK(graduation_toward(ruler, -260.0 + off, Direction::toward_machine) == -260.0);
        CHECK(graduation_toward(ruler, -260.0 + off, Direction::toward_operator) == -260.0);
    }
    CHECK(graduation_toward(ruler, -260.0 + 2.0 * graduation_slack, Direction::toward_machine) ==
          -259.0);
}

TEST_CASE("A ruler without graduations leaves positions alone", "[press]") {
    const Ruler ruler{0.0, Direction::toward_machine, 0.0, false};
    CHECK(graduation_toward(ruler, 3.3, Direction::toward_machine) == 3.3);
    CHECK(nearest_graduation(ruler, 3.3) == 3.3);
}

TEST_CASE("Which way a screw is turned is the profile's", "[press]") {
    // Common practice, no source: presses differ in which way a screw moves the screen, so the
    // direction and the travel of a turn are data.
    Adjuster adjuster;
    adjuster.mm_per_turn = 1.25;
    adjuster.clockwise_positive = true;
    Adjuster other = adjuster;
    other.clockwise_positive = false;
    CHECK_THAT(turns_for(adjuster, 0.5), WithinAbs(0.4, 1e-15));
    CHECK(turns_for(other, 0.5) == -turns_for(adjuster, 0.5));
    CHECK(turns_for(other, -0.5) == turns_for(adjuster, 0.5));
    other.mm_per_turn = 2.5;
    CHECK_THAT(turns_for(other, 0.5), WithinAbs(-0.2, 1e-15));
    other.mm_per_turn = 0.0;
    CHECK(turns_for(other, 0.5) == 0.0);
}

TEST_CASE("The demonstration's profile allows the usual angles", "[press]") {
    // Common practice, no source: angles are set between 5° and 25°, gauges run from 0 to 2.
    const PressProfile press;
    CHECK_THAT(degrees(press.angles.least), WithinAbs(5.0, 1e-12));
    CHECK_THAT(degrees(press.angles.most), WithinAbs(25.0, 1e-12));
    CHECK(press.squeegee_gauge.lowest == 0.0);
    CHECK(press.squeegee_gauge.highest == 2.0);
}
