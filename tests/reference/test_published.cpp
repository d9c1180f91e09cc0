// Published values. The source stands beside each check; "computed" is our arithmetic from the
// source's formula.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>

#include "core/limits.h"
#include "core/motion.h"
#include "core/sensor.h"
#include "core/stroke.h"
#include "core/tolerance.h"
#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Stack stack_of(std::initializer_list<double> values, bool measured) {
    Stack stack;
    for (double value : values) stack.add({value, measured});
    return stack;
}

} // namespace

TEST_CASE("conversions of NIST SP 811", "[published]") {
    // NIST Special Publication 811 (2008), appendix B.8: inch, 2.54 E-02 m, exactly.
    CHECK(mm_per_inch == 25.4);
    // The same: pound-force per square inch, 6.894 757 E+03 Pa. Computed from it: 25 psi =
    // 172.369 kPa; 80 psi = 5.51581 bar; 6 bar = 87.0226 psi.
    CHECK(kpa_per_psi == 6.894757);
    CHECK_THAT(25.0 * kpa_per_psi, WithinAbs(172.369, 0.0005));
    CHECK_THAT(80.0 * kpa_per_psi / kpa_per_bar, WithinAbs(5.51581, 0.000005));
    CHECK_THAT(6.0 * kpa_per_bar / kpa_per_psi, WithinAbs(87.0226, 0.00005));
    // The same: bar, 1.0 E+05 Pa, exactly.
    CHECK(kpa_per_bar == 100.0);
    // The same: degree, 1.745 329 E-02 rad.
    CHECK_THAT(radians(1.0), WithinAbs(1.745329e-2, 0.5e-8));
    // The blade angle given from the mesh, 75 degrees, is 15 from the vertical.
    CHECK_THAT(degrees(radians(90.0) - radians(75.0)), WithinAbs(15.0, 1e-12));
}

TEST_CASE("trapezoidal velocity profile", "[published]") {
    // Velocity-profile test of a public kinematics library: distance 8, speed 2, acceleration 1
    // take 6.0.
    CHECK_THAT(stroke_time(8.0, 2.0, 1.0), WithinRel(6.0, 1e-14));
    // Textbook inputs, distance 100 with ramps 2 and 4; computed from v_p = sqrt(2abD/(a+b)):
    // v_p 16.330, and 2D/v_p = 12.247.
    const double peak = peak_speed(100.0, std::numeric_limits<double>::max(), 2.0, 4.0);
    CHECK_THAT(peak, WithinAbs(16.330, 0.0005));
    CHECK_THAT(2.0 * 100.0 / peak, WithinAbs(12.247, 0.0005));
    CHECK_THAT(peak / 2.0 + peak / 4.0, WithinAbs(12.247, 0.0005));
    // Computed from t = s/v + v/a: 0.5 m at 0.6 m/s and 3 m/s² take 1.0333 s.
    CHECK_THAT(stroke_time(500.0, 600.0, 3000.0), WithinAbs(1.0333, 0.00005));
    // Computed from t = 2 sqrt(s/a): 0.1 m, the same, take 0.36515 s.
    CHECK_THAT(stroke_time(100.0, 600.0, 3000.0), WithinAbs(0.36515, 0.000005));
    // Where the two formulas meet, s = v²/a, they give the same time: 2 v/a.
    CHECK_THAT(stroke_time(120.0, 600.0, 3000.0), WithinRel(0.4, 1e-14));
    CHECK_THAT(stroke_time(std::nextafter(120.0, 0.0), 600.0, 3000.0), WithinRel(0.4, 1e-12));
}

TEST_CASE("tolerance stacks", "[published]") {
    // Published worked example of a tolerance stack: ±0.005, 0.003, 0.002, 0.005 give 0.0150 in
    // the worst case and a root sum square of 0.0079373.
    const Stack four = stack_of({0.005, 0.003, 0.002, 0.005}, false);
    CHECK_THAT(worst_case(four), WithinAbs(0.0150, 1e-12));
    CHECK_THAT(root_sum_square(four), WithinAbs(0.0079373, 0.5e-7));
    // The same: ten of ±0.1 give 1.000 and 0.31623. A stack holds six, so it is checked on five:
    // half of the worst case, and 0.31623/sqrt(2) = 0.223607 (computed).
    const Stack five = stack_of({0.1, 0.1, 0.1, 0.1, 0.1}, false);
    CHECK_THAT(2.0 * worst_case(five), WithinAbs(1.000, 1e-12));
    CHECK_THAT(std::sqrt(2.0) * root_sum_square(five), WithinAbs(0.31623, 0.5e-5));
}

TEST_CASE("the end-gauge example of the GUM", "[published]") {
    // JCGM 100:2008, H.1.3.5: expansion coefficients differ by at most ±1e-6 /°C, every value
    // equally likely: u = 0.58e-6 /°C. H.1.3.6: temperatures by at most ±0.05 °C: u = 0.029 °C. The
    // function divides by the root of three whatever the unit (4.3.7).
    CHECK_THAT(standard_deviation({1.0, false}), WithinAbs(0.58, 0.005));
    CHECK_THAT(standard_deviation({0.05, false}), WithinAbs(0.029, 0.0005));
    // H.1.3.1: 0.075 µm at three standard deviations, u = 25 nm, taken as it is.
    CHECK(standard_deviation({25.0, true}) == 25.0);
    CHECK_THAT(worst_deviation({25.0, true}), WithinAbs(75.0, 1e-12));
    // H.1.3.2: u(d) from 5.8, 3.9 and 6.7 nm: 9.7 nm. H.1.4: u_c from 25, 9.7, 2.9 and 16.6 nm:
    // 32 nm, u_c² = 1002 nm². The root sum square counts three standard deviations of a measured
    // value, so a third of it is the combined standard deviation.
    CHECK_THAT(root_sum_square(stack_of({5.8, 3.9, 6.7}, true)) / 3.0, WithinAbs(9.7, 0.05));
    const double combined = root_sum_square(stack_of({25.0, 9.7, 2.9, 16.6}, true)) / 3.0;
    CHECK_THAT(combined, WithinAbs(32.0, 0.5));
    CHECK_THAT(combined * combined, WithinAbs(1002.0, 2.0));
    // H.1.4 again, with the temperature difference as the rectangle that it is (computed: 50 mm by
    // 11.5e-6 /°C by 0.05 °C, a half-width of 28.75 nm): beyond three combined standard deviations
    // lies less than the 0.135 % of a normal distribution, because a rectangle has no tail.
    Stack stack = stack_of({25.0, 5.8, 3.9, 6.7, 2.9}, true);
    stack.add({50e6 * 11.5e-6 * 0.05, false});
    CHECK_THAT(chance_beyond(stack, 0.0), WithinAbs(0.5, 1e-12));
    CHECK(chance_beyond(stack, 3.0 * 31.71) < 0.00135);
    CHECK(chance_beyond(stack, 3.0 * 31.71) > 0.0005);
}

TEST_CASE("chances of the normal and the rectangular distribution", "[published]") {
    // JCGM 100:2008, table G.1: 95.45 % lie within two, 99.73 % within three standard deviations.
    CHECK_THAT(1.0 - 2.0 * chance_beyond(stack_of({1.0}, true), 2.0), WithinAbs(0.9545, 0.00005));
    CHECK_THAT(1.0 - 2.0 * chance_beyond(stack_of({1.0}, true), 3.0), WithinAbs(0.9973, 0.00005));
    // The same, 4.3.7: 57.74 % of a rectangular distribution lie within one standard deviation
    // (1/sqrt 3), all of it within the half-width.
    const Stack one = stack_of({1.0}, false);
    CHECK_THAT(1.0 - 2.0 * chance_beyond(one, standard_deviation({1.0, false})),
               WithinAbs(0.5774, 0.00005));
    CHECK(chance_beyond(one, 1.0) == 0.0);
    // The same, 4.3.9: two equal rectangular ones make a triangular one, of variance (2a)²/6.
    CHECK_THAT(chance_beyond(stack_of({1.0, 1.0}, false), 1.0), WithinAbs(0.125, 1e-12));
}

TEST_CASE("the worked example of the model", "[published]") {
    // Not published elsewhere: the numbers that the model gives for its invented press, computed
    // by hand. 300 by 400 image at the frame's centre, both angles 15 degrees, print 0.6 m/s
    // toward the operator, flood 0.7 m/s, 8 m/s², 15 ms.
    Job job;
    Head head;
    head.id = 1;
    head.station = 1;
    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    // The edges stand 64 apart at 15 degrees and 85 at 25.
    CHECK_THAT(std::abs(geometry.squeegee_edge - geometry.flood_edge), WithinAbs(64.0, 0.5));
    Head steep = head;
    steep.squeegee.angle = steep.flood.angle = radians(25.0);
    const StrokeGeometry wide = stroke_geometry(job.press, steep);
    CHECK_THAT(std::abs(wide.squeegee_edge - wide.flood_edge), WithinAbs(85.0, 0.5));
    // Overtravel 0.6 · 15 + 0.36/16 m = 9 + 22.5 mm, and 0.7 · 15 + 0.49/16 m = 10.5 + 30.625 mm.
    CHECK_THAT(geometry.operator_overtravel, WithinAbs(31.5, 1e-9));
    CHECK_THAT(geometry.machine_overtravel, WithinAbs(41.125, 1e-9));
    // Least separation 2 · 4 + 2 + 60.
    CHECK_THAT(least_separation(job.press.sensors), WithinAbs(70.0, 1e-12));
    // Travel 514; the squeegee's band ends 21 inside the platen, the flood's (its edge; its holder
    // reaches less far) 17 short of the clearance of 50 to the frame.
    const AllowedSet allowed = allowed_set(job, head, geometry, {-200.0, 200.0});
    const auto stops = shortest_stroke(allowed, geometry, head, {-200.0, 200.0});
    REQUIRE(stops.has_value());
    CHECK_THAT(ends_of(geometry, *stops).travel(), WithinAbs(514.0, 0.5));
    const Rect squeegee = squeegee_band(geometry, head, *stops);
    const Rect flood = flood_band(geometry, head, *stops);
    const Rect platen = rect_of(job.platen), opening = opening_of(head.screen);
    CHECK_THAT(std::min(squeegee.lo - platen.lo, platen.hi - squeegee.hi), WithinAbs(21.0, 0.5));
    CHECK_THAT(std::min(flood.lo - opening.lo, opening.hi - flood.hi) - 50.0,
               WithinAbs(17.0, 0.5));
}
