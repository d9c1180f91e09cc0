#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <set>

#include "core/motion.h"
#include "core/procedures.h"
#include "core/sensor.h"
#include "core/stroke.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using K = ReadingKind;

namespace {

Measured measured_field(Field field, const std::vector<KindReadings>& readings) {
    const Procedure* procedure = procedure_for(field);
    REQUIRE(procedure != nullptr);
    return measured(*procedure, readings);
}

std::vector<double> three(double value) { return {value, value, value}; }

/// The value for a field, everything that is read scattering by nothing.
double value_for(Field field, const std::vector<KindReadings>& readings) {
    const Measured result = measured_field(field, readings);
    CHECK(result.refusal == MeasuredRefusal::none);
    for (const MeasuredValue& value : result.values)
        if (value.field == field) return value.value;
    FAIL("the procedure has no value for its field");
    return 0.0;
}

bool has(const Procedure& procedure, Caution caution) {
    const auto end = procedure.cautions.begin() + procedure.caution_count;
    return std::find(procedure.cautions.begin(), end, caution) != end;
}

} // namespace

TEST_CASE("Each number of a press is fed by one procedure", "[procedures]") {
    std::multiset<Field> fed;
    for (const Procedure& procedure : procedures())
        for (int i = 0; i < procedure.field_count; ++i)
            fed.insert(procedure.fields[static_cast<std::size_t>(i)]);
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        const FieldInfo& info = info_of(field);
        INFO(info.key);
        const bool of_press = info.owner == FieldOwner::press;
        CHECK(fed.count(field) == (of_press ? 1u : 0u));
        CHECK((procedure_for(field) != nullptr) == of_press);
    }
    CHECK(adjuster_procedure().field_count == 0);
}

TEST_CASE("Procedures name readings and cautions that belong together", "[procedures]") {
    for (const Procedure& procedure : procedures()) {
        CAPTURE(static_cast<int>(procedure.fields[0]));
        REQUIRE(procedure.needed_count >= 1);
        std::set<ReadingKind> kinds;
        for (int i = 0; i < procedure.needed_count; ++i) {
            const NeededReading& needed = procedure.needed[static_cast<std::size_t>(i)];
            CHECK(needed.least >= 1);
            CHECK(kinds.insert(needed.kind).second);
        }
        // Whoever reaches in has the press locked out, or the lamps alone alive.
        if (has(procedure, Caution::hands_in_carriage))
            CHECK(has(procedure, Caution::isolated_and_bled) !=
                  has(procedure, Caution::lamps_alive));
        else if (procedure.steps != Steps::decide)
            CHECK(has(procedure, Caution::index_path));
        if (kinds.count(K::stroke_time) || kinds.count(K::resting_place))
            CHECK(has(procedure, Caution::index_path));
    }
}

TEST_CASE("What is read directly", "[procedures]") {
    CHECK(value_for(Field::arm_radius, {{K::length, {1449.0, 1450.0, 1451.0}}}) == 1450.0);
    CHECK(value_for(Field::ruler_zero, {{K::place, three(-500.0)}}) == -500.0);
    CHECK(value_for(Field::squeegee_half_depth, {{K::length, three(31.0)}}) == 15.5);
    CHECK(value_for(Field::separation_margin, {{K::decision, {5.0}}}) == 5.0);
    CHECK(value_for(Field::wings_flat_angle, {{K::angle, three(radians(25.0))}}) ==
          radians(25.0));
    CHECK(value_for(Field::squeegee_lowest_mark, {{K::mark, {0.0}}}) == 0.0);
    for (Field field : {Field::index_time, Field::lower_time, Field::lift_time})
        CHECK_THAT(value_for(field, {{K::time, {1.9, 2.0, 2.1}}}), WithinAbs(2.0, 1e-12));
    CHECK(value_for(Field::jerk, {{K::plate, {60000.0}}}) == 60000.0);
    // 100 mm hold 63 marks of a sixteenth of an inch: 1.5873 mm each.
    CHECK_THAT(value_for(Field::ruler_graduation, {{K::span, {100.0}}, {K::divisions, {63.0}}}),
               WithinAbs(1.5873, 5e-5));
    CHECK_THAT(value_for(Field::flood_mark_step, {{K::span, {1.0}}, {K::divisions, {10.0}}}),
               WithinAbs(0.1, 1e-15));
}

TEST_CASE("Sensors: offsets, reach, hysteresis, least separation", "[procedures]") {
    CHECK(value_for(Field::operator_sensor, {{K::reference_place, three(10.0)},
                                             {K::sensor_place, three(-20.0)}}) == -30.0);
    // A carriage pushed by hand over the model's own bars gives the model's own numbers.
    const Sensors sensors;
    const Stops stops{0.0, 500.0};
    Lamps lamps;
    double on = 0.0, off = 0.0;
    for (double gap = 20.0; gap > 0.0; gap -= 0.001) { // from the machine toward the bar
        const Lamps now = lamps_at(sensors, stops, gap - sensors.operator_offset, lamps);
        if (now.operator_on && !lamps.operator_on) on = gap;
        lamps = now;
    }
    for (double gap = 0.0; gap < 20.0; gap += 0.001) {
        const Lamps now = lamps_at(sensors, stops, gap - sensors.operator_offset, lamps);
        if (!now.operator_on && lamps.operator_on) off = gap;
        lamps = now;
    }
    CHECK_THAT(value_for(Field::sensor_reach, {{K::gap_lamp_on, three(on)}}),
               WithinAbs(sensors.reach, 0.002));
    CHECK_THAT(value_for(Field::sensor_hysteresis,
                         {{K::gap_lamp_on, three(on)}, {K::gap_lamp_off, three(off)}}),
               WithinAbs(sensors.hysteresis, 0.003));

    // Bars at ∓35 with 0.5 of scatter on each: 70, and 0.5·√(2/3) for the mean of three.
    const Measured least = measured_field(
        Field::measured_separation,
        {{K::operator_bar, {-35.5, -35.0, -34.5}}, {K::machine_bar, {34.5, 35.0, 35.5}}});
    REQUIRE(least.refusal == MeasuredRefusal::none);
    REQUIRE(least.values.size() == 2);
    CHECK(least.values[0].field == Field::measured_separation);
    CHECK_THAT(least.values[0].value, WithinAbs(70.0, 1e-12));
    CHECK_THAT(least.values[0].spread.value().value, WithinRel(0.5 * std::sqrt(2.0 / 3.0), 1e-9));
    CHECK(least.values[0].spread->measured);
    CHECK_THAT(least.values[0].freedom, WithinRel(4.0, 1e-9)); // twice two degrees, alike
    CHECK(least.values[1].field == Field::separation_spread);
    CHECK(least.values[1].value == least.values[0].spread->value);
}

TEST_CASE("Latency and acceleration from strokes of the model", "[procedures]") {
    const double latency = 0.015, acceleration = 8000.0;
    const auto beyond = [&](double speed) { return overtravel(speed, latency, acceleration); };
    CHECK_THAT(value_for(Field::sensor_latency, {{K::slow_speed, {300.0}},
                                                 {K::slow_overtravel, three(beyond(300.0))},
                                                 {K::fast_speed, {900.0}},
                                                 {K::fast_overtravel, three(beyond(900.0))}}),
               WithinAbs(latency, 1e-12));
    // A long stroke reaches its speed, a short one doesn't.
    for (const double distance : {400.0, 40.0}) {
        const double time = stroke_time(distance, 600.0, acceleration);
        CHECK_THAT(value_for(Field::acceleration, {{K::stroke_distance, three(distance)},
                                                   {K::stroke_time, three(time)},
                                                   {K::stroke_speed, {600.0}}}),
                   WithinRel(acceleration, 1e-9));
    }
    CHECK_FALSE(acceleration_of_stroke(400.0, 0.5, 600.0).has_value());
    CHECK_FALSE(acceleration_of_stroke(0.0, 0.5, 600.0).has_value());
    CHECK_FALSE(latency_at_two_speeds(600.0, 31.5, 600.0, 31.5).has_value());
    CHECK(value_for(Field::fastest,
                    {{K::stroke_distance, three(600.0)}, {K::stroke_time, three(0.5)}}) == 1200.0);
}

TEST_CASE("A holder's pivot from its edge at two angles", "[procedures]") {
    const Holder holder{15.0, 65.0, 15.0};
    const double a1 = radians(5.0), a2 = radians(25.0);
    const std::vector<KindReadings> readings{
        {K::first_angle, {a1}, radians(0.5)},
        {K::first_edge, three(edge_offset(holder, a1, 1.0))},
        {K::second_angle, {a2}, radians(0.5)},
        {K::second_edge, three(edge_offset(holder, a2, 1.0))}};
    CHECK_THAT(value_for(Field::squeegee_pivot_height, readings), WithinAbs(65.0, 1e-9));
    CHECK_THAT(value_for(Field::squeegee_pivot_offset, readings), WithinAbs(15.0, 1e-9));
    const Measured result = measured_field(Field::flood_pivot_height, readings);
    REQUIRE(result.values.size() == 2);
    // Half a degree over √3 in each angle, to first order: L/(sin a2 − sin a1) times the changes
    // of the sines, in squares.
    const double u = radians(0.5) / std::sqrt(3.0);
    const double expected =
        65.0 / (std::sin(a2) - std::sin(a1)) * u * std::hypot(std::cos(a1), std::cos(a2));
    CHECK_THAT(result.values[1].spread.value().value, WithinRel(expected, 0.01));
    CHECK(std::isinf(result.values[1].freedom));
    CHECK_FALSE(pivot_height_of(a1, 20.0, a1, 30.0).has_value());
    CHECK_FALSE(pivot_offset_of(a1, 20.0, a1, 30.0).has_value());
}

TEST_CASE("Gauges and screws", "[procedures]") {
    CHECK_THAT(value_for(Field::squeegee_mm_per_mark, {{K::first_mark, {0.0}},
                                                       {K::first_height, three(2.0)},
                                                       {K::second_mark, {1.5}},
                                                       {K::second_height, three(11.0)}}),
               WithinAbs(6.0, 1e-12));
    const Measured screw =
        measured(adjuster_procedure(), {{K::turns, {4.0}}, {K::travel, {4.9, 5.0, 5.1}}});
    REQUIRE(screw.values.size() == 1);
    CHECK(screw.values[0].field == Field::count);
    CHECK_THAT(screw.values[0].value, WithinAbs(1.25, 1e-12));
    CHECK_THAT(screw.values[0].spread.value().value,
               WithinRel(0.1 / std::sqrt(3.0) / 4.0, 1e-9));
}

TEST_CASE("Scatter of what is set anew", "[procedures]") {
    const std::vector<double> places{2, 4, 4, 4, 5, 5, 7, 9}; // s² = 32/7
    const Measured stop = measured_field(Field::stop_spread, {{K::place, places}});
    REQUIRE(stop.values.size() == 1);
    CHECK_THAT(stop.values[0].value, WithinRel(std::sqrt(32.0 / 7.0), 1e-12));
    CHECK(stop.values[0].freedom == 7.0);
    // The marks wander together: only the difference is overtravel.
    std::vector<double> resting = places;
    for (double& place : resting) place += 30.0;
    resting[0] += 1.0;
    const Measured overtravel = measured_field(
        Field::overtravel_spread, {{K::switching_place, places}, {K::resting_place, resting}});
    REQUIRE(overtravel.values.size() == 1);
    CHECK_THAT(overtravel.values[0].value, WithinRel(std::sqrt(1.0 / 8.0), 1e-9));
    resting.push_back(31.0);
    CHECK(measured_field(Field::overtravel_spread,
                         {{K::switching_place, places}, {K::resting_place, resting}})
              .refusal == MeasuredRefusal::unequal_counts);
}

TEST_CASE("Readings that are refused", "[procedures]") {
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    const auto refusal = [](Field field, const std::vector<KindReadings>& readings) {
        return measured_field(field, readings).refusal;
    };
    CHECK(refusal(Field::arm_radius, {}) == MeasuredRefusal::missing);
    CHECK(refusal(Field::arm_radius, {{K::length, {1450.0, 1450.0}}}) == MeasuredRefusal::missing);
    CHECK(refusal(Field::arm_radius, {{K::length, {1450.0, 1450.0, nothing}}}) ==
          MeasuredRefusal::not_finite);
    CHECK(refusal(Field::arm_radius, {{K::length, three(1450.0), -1.0}}) ==
          MeasuredRefusal::not_finite);
    CHECK(refusal(Field::arm_radius, {{K::length, three(1450.0)}, {K::time, {1.0}}}) ==
          MeasuredRefusal::not_wanted);
    CHECK(refusal(Field::arm_radius, {{K::length, three(1450.0)}, {K::length, three(1450.0)}}) ==
          MeasuredRefusal::not_wanted);
    CHECK(refusal(Field::flood_mark_step, {{K::span, {1.0}}, {K::divisions, {0.0}}}) ==
          MeasuredRefusal::no_difference);
    CHECK(refusal(Field::acceleration, {{K::stroke_distance, three(400.0)},
                                        {K::stroke_time, three(0.5)},
                                        {K::stroke_speed, {600.0}}}) ==
          MeasuredRefusal::impossible);
    const Measured far = measured_field(Field::arm_radius, {{K::length, three(3.0)}});
    CHECK(far.refusal == MeasuredRefusal::outside_limits);
    CHECK(far.values.at(0).value == 3.0);
    CHECK(measured(adjuster_procedure(), {{K::turns, {4.0}}, {K::travel, three(-5.0)}}).refusal ==
          MeasuredRefusal::impossible);
}

TEST_CASE("What is read once has no spread, and what stands off is named", "[procedures]") {
    const Measured once =
        measured_field(Field::ruler_graduation, {{K::span, {100.0}}, {K::divisions, {100.0}}});
    CHECK(once.refusal == MeasuredRefusal::none);
    CHECK_FALSE(once.values.at(0).spread.has_value());
    const Measured stepped = measured_field(
        Field::ruler_graduation, {{K::span, {100.0}, 0.5}, {K::divisions, {100.0}}});
    CHECK_THAT(stepped.values.at(0).spread.value().value,
               WithinRel(0.005 / std::sqrt(3.0), 1e-9));
    const Measured wild = measured_field(
        Field::bar_length, {{K::length, {60.0, 60.1, 59.9, 60.0, 70.0, 60.1}}});
    REQUIRE(wild.standing_off.size() == 1);
    CHECK(wild.standing_off[0].kind == K::length);
    CHECK(wild.standing_off[0].reading == 4);
}

TEST_CASE("Heat of a platen, play of a screw, a gauge's zero", "[procedures]") {
    // 4 s of flash that warm it by 5.2 °C: 1.3 °C a second.
    CHECK_THAT(value_for(Field::warming_rate, {{K::platen_before, three(30.0)},
                                               {K::platen_after, three(35.2)},
                                               {K::flash_time, {4.0}}}),
               WithinAbs(1.3, 1e-12));
    // Half of the difference to the room is gone after ln 2 of the time constant: 420·ln 2 = 291.1.
    CHECK_THAT(value_for(Field::cooling_time, {{K::room_temperature, {22.0}},
                                               {K::platen_warm, three(62.0)},
                                               {K::platen_later, three(42.0)},
                                               {K::waited, {420.0 * std::log(2.0)}}}),
               WithinAbs(420.0, 1e-9));
    CHECK(measured_field(Field::cooling_time, {{K::room_temperature, {22.0}},
                                               {K::platen_warm, three(40.0)},
                                               {K::platen_later, three(41.0)},
                                               {K::waited, {60.0}}})
              .refusal == MeasuredRefusal::impossible);
    CHECK(value_for(Field::adjuster_backlash, {{K::play, three(0.25)}}) == 0.25);
    CHECK(value_for(Field::squeegee_cylinders, {{K::counted, {2.0}}}) == 2.0);
    CHECK(measured_field(Field::squeegee_cylinders, {{K::counted, {2.5}}}).refusal ==
          MeasuredRefusal::outside_limits);
    CHECK(value_for(Field::height_across, {{K::length, three(500.0)}}) == 250.0);
    // At mark 2 an edge 3.3 over the platen, 6 a mark: at mark 0 it would stand at -8.7.
    CHECK_THAT(value_for(Field::squeegee_zero_height, {{K::first_mark, {2.0}},
                                                       {K::height_a_mark, {6.0}},
                                                       {K::first_height, three(3.3)}}),
               WithinAbs(-8.7, 1e-12));
}
