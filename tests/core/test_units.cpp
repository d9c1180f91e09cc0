#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

TEST_CASE("Factors of units are the published ones", "[units]") {
    // NIST SP 811, B.8 and B.9: 1 in = 25.4 mm exactly, 1 psi = 6894.757 Pa.
    CHECK(mm_per_inch == 25.4);
    CHECK_THAT(1000.0 * kpa_per_psi, WithinAbs(6894.757, 1e-9));
    // Computed from the same two values.
    CHECK_THAT(6.0 * kpa_per_bar / kpa_per_psi, WithinAbs(87.0226, 5e-5));
    CHECK_THAT(80.0 * kpa_per_psi / kpa_per_bar, WithinAbs(5.51581, 5e-6));
    CHECK_THAT(25.0 * kpa_per_psi, WithinAbs(172.369, 5e-4));
}

TEST_CASE("Degrees and radians undo one another", "[units]") {
    CHECK_THAT(radians(180.0), WithinAbs(3.14159265358979, 1e-14));
    CHECK_THAT(degrees(radians(23.5)), WithinAbs(23.5, 1e-12));
}
