#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <limits>

#include "core/pressure.h"
#include "core/taut_mesh.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
const Cylinders two{40.0, 16.0, 2};

} // namespace

TEST_CASE("Thrust over the blade's length is line load", "[pressure]") {
    // By hand: 200 kPa on two bores of 40: 2·0.2·1256.637 = 502.655 N; over 35.6 cm 14.1195 N/cm.
    REQUIRE(thrust(two, 200.0));
    CHECK_THAT(*thrust(two, 200.0), WithinAbs(502.655, 5e-4));
    CHECK_THAT(*line_load(two, 200.0, 356.0, BladeRest::on_mesh), WithinAbs(14.1195, 5e-5));
    // Rods take away 2·0.2·201.062 N.
    CHECK_THAT(*thrust(two, 200.0) - *retract_force(two, 200.0), WithinAbs(80.425, 5e-4));
    CHECK(*thrust(two, 0.0) == 0.0);
}

TEST_CASE("The pressure for a line load gives that line load", "[pressure]") {
    for (const double load : {0.0, 0.5, 3.0, 14.0})
        for (const double length : {150.0, 356.0, 480.0}) {
            const auto pressure = pressure_for_line_load(two, load, length);
            REQUIRE(pressure);
            CHECK_THAT(*line_load(two, *pressure, length, BladeRest::on_mesh),
                       WithinAbs(load, 1e-12));
        }
}

TEST_CASE("Another blade wants pressure in proportion to its length", "[pressure]") {
    const auto pressure = pressure_for_blade(240.0, 400.0, 300.0);
    REQUIRE(pressure);
    CHECK_THAT(*pressure, WithinAbs(180.0, 1e-12));
    CHECK_THAT(*line_load(two, *pressure, 300.0, BladeRest::on_mesh),
               WithinRel(*line_load(two, 240.0, 400.0, BladeRest::on_mesh), 1e-14));
}

TEST_CASE("A blade on its height stop has no line load", "[pressure]") {
    const auto load = line_load(two, 200.0, 356.0, BladeRest::on_height_stop);
    CHECK_FALSE(load);
    CHECK(hold_down(load, 1.0) == HoldDown::not_known);
}

TEST_CASE("A line load must exceed the force that the mesh needs", "[pressure]") {
    CHECK(hold_down(1.01, 1.0) == HoldDown::holds_mesh);
    CHECK(hold_down(1.0, 1.0) == HoldDown::not_enough);
    CHECK(hold_down(0.5, 1.0) == HoldDown::not_enough);
    CHECK(hold_down(nan_value, 1.0) == HoldDown::not_known);
    CHECK(hold_down(1.0, infinite) == HoldDown::not_known);
    // Together with the worst point of a stroke: 25 N/cm, 3 mm, 100 mm from the frame of 711. By
    // hand 25·3·(1/100 + 1/611) = 0.873 N/cm, far below 14 N/cm.
    const auto worst = worst_point(MeshSpan{}, 3.0, -255.5, 200.0);
    REQUIRE(worst);
    CHECK_THAT(worst->line_force, WithinAbs(0.873, 1e-3));
    CHECK(hold_down(line_load(two, 200.0, 356.0, BladeRest::on_mesh), worst->line_force) ==
          HoldDown::holds_mesh);
    CHECK(hold_down(line_load(two, 10.0, 356.0, BladeRest::on_mesh), worst->line_force) ==
          HoldDown::not_enough);
}

TEST_CASE("Cylinders and blades that can't be give nothing", "[pressure]") {
    for (const double bad : {0.0, -1.0, nan_value, infinite}) {
        CHECK_FALSE(thrust({bad, 0.0, 1}, 100.0));
        CHECK_FALSE(line_load(two, 100.0, bad, BladeRest::on_mesh));
        CHECK_FALSE(pressure_for_line_load(two, 1.0, bad));
        CHECK_FALSE(pressure_for_blade(100.0, bad, 300.0));
        CHECK_FALSE(pressure_for_blade(100.0, 300.0, bad));
    }
    for (const double bad : {-1.0, nan_value, infinite}) {
        CHECK_FALSE(thrust(two, bad));
        CHECK_FALSE(retract_force(two, bad));
        CHECK_FALSE(retract_force({40.0, bad, 1}, 100.0));
        CHECK_FALSE(pressure_for_line_load(two, bad, 300.0));
        CHECK_FALSE(pressure_for_blade(bad, 300.0, 300.0));
    }
    CHECK_FALSE(thrust({40.0, 16.0, 0}, 100.0));
    CHECK_FALSE(retract_force({40.0, 40.0, 1}, 100.0));
    CHECK(retract_force({40.0, 0.0, 1}, 100.0) == thrust({40.0, 0.0, 1}, 100.0));
}

TEST_CASE("practice: squeegee 170 to 350 kPa, flood 100 to 200 (common practice, no source)",
          "[pressure]") {
    CHECK(usual_squeegee_pressure.contains(170.0));
    CHECK(usual_squeegee_pressure.contains(350.0));
    CHECK_FALSE(usual_squeegee_pressure.contains(351.0));
    CHECK(usual_flood_pressure.contains(100.0));
    CHECK_FALSE(usual_flood_pressure.contains(99.0));
    CHECK_FALSE(usual_flood_pressure.contains(nan_value));
    CHECK(usual_squeegee_pressure.source == SourceKind::common_practice);
    CHECK(usual_flood_pressure.source == SourceKind::common_practice);
}
