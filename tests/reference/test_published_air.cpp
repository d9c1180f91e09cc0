// Published values of air cylinders. The source stands beside each check; "computed" is our
// arithmetic from the source's formula.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/pressure.h"
#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

TEST_CASE("bores of ISO 15552", "[published]") {
    // ISO 15552, as a public parts table has it: 32 to 320 mm. The rods of the sizes up to 125:
    // from memory.
    constexpr double bores[] = {32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 320};
    constexpr double rods[] = {12, 16, 20, 20, 25, 25, 32};
    REQUIRE(iso_15552_sizes.size() == std::size(bores));
    for (std::size_t i = 0; i < std::size(bores); ++i) CHECK(iso_15552_sizes[i].bore == bores[i]);
    for (std::size_t i = 0; i < std::size(rods); ++i) CHECK(iso_15552_sizes[i].rod == rods[i]);
}

TEST_CASE("thrust and retracting force at 6 bar", "[published]") {
    // Engineering handbook: thrust p·π·D²/4, retracting p·π·(D² − d²)/4. Computed at 6 bar, N.
    struct Row {
        double bore, rod, out, in;
    };
    constexpr Row rows[] = {
        {32, 12, 482.5, 414.7},    {40, 16, 754.0, 633.3},   {50, 20, 1178.1, 989.6},
        {63, 20, 1870.3, 1681.9},  {80, 25, 3015.9, 2721.4}, {100, 25, 4712.4, 4417.9},
        {125, 32, 7363.1, 6880.6},
    };
    for (const Row& row : rows) {
        CAPTURE(row.bore);
        const Cylinders one{row.bore, row.rod, 1};
        CHECK_THAT(thrust(one, 6.0 * kpa_per_bar).value(), WithinAbs(row.out, 0.05));
        CHECK_THAT(retract_force(one, 6.0 * kpa_per_bar).value(), WithinAbs(row.in, 0.05));
        // Two of them push twice as hard.
        CHECK_THAT(thrust({row.bore, row.rod, 2}, 6.0 * kpa_per_bar).value(),
                   WithinAbs(2.0 * row.out, 0.1));
    }
}

TEST_CASE("thrust at a pressure in psi", "[published]") {
    // NIST SP 811, B.8: 1 psi = 6894.757 Pa. Computed with the handbook's formula: a bore of 50 mm
    // at 80 psi pushes with 1083.03 N.
    CHECK_THAT(thrust({50.0, 20.0, 1}, 80.0 * kpa_per_psi).value(), WithinAbs(1083.03, 0.005));
    // The same: 1 in = 25.4 mm exactly; 6 bar = 87.0226 psi, 80 psi = 5.51581 bar and 25 psi =
    // 172.369 kPa (computed), as pressures that give the same thrust.
    CHECK(mm_per_inch == 25.4);
    const Cylinders one{50.0, 20.0, 1};
    CHECK_THAT(thrust(one, 87.0226 * kpa_per_psi).value(),
               WithinAbs(thrust(one, 6.0 * kpa_per_bar).value(), 0.001));
    CHECK_THAT(thrust(one, 5.51581 * kpa_per_bar).value(), WithinAbs(1083.03, 0.005));
    CHECK_THAT(thrust(one, 172.369).value(),
               WithinAbs(thrust(one, 25.0 * kpa_per_psi).value(), 0.001));
}

TEST_CASE("usual pressures", "[published]") {
    // Common practice, no source: squeegee 170 to 350 kPa, flood 100 to 200. 25 psi, computed from
    // NIST SP 811 as 172.369 kPa, lies just inside both.
    CHECK(usual_squeegee_pressure.least == 170.0);
    CHECK(usual_squeegee_pressure.most == 350.0);
    CHECK(usual_flood_pressure.least == 100.0);
    CHECK(usual_flood_pressure.most == 200.0);
    CHECK(usual_squeegee_pressure.contains(25.0 * kpa_per_psi));
    CHECK(usual_flood_pressure.contains(25.0 * kpa_per_psi));
}
