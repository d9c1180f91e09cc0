#include "core/procedures.h"

#include <algorithm>
#include <initializer_list>

namespace carriageway {

namespace {

using F = Field;
using K = ReadingKind;
using S = Steps;
using C = Caution;

/// Repeats that are asked for where a reading scatters. Ours: the fewest that give a standard
/// deviation worth having.
constexpr int repeats = 3;
/// Repeats where the scatter itself is the number. Ours.
constexpr int many = 8;

constexpr NeededReading several(ReadingKind kind) { return {kind, repeats, false}; }
constexpr NeededReading once(ReadingKind kind) { return {kind, 1, false}; }
constexpr NeededReading exactly(ReadingKind kind) { return {kind, 1, true}; }
constexpr NeededReading often(ReadingKind kind) { return {kind, many, false}; }

Procedure procedure(std::initializer_list<Field> fields, Steps steps,
                    std::initializer_list<NeededReading> needed,
                    std::initializer_list<Caution> cautions) {
    Procedure result;
    result.steps = steps;
    for (Field field : fields)
        result.fields[static_cast<std::size_t>(result.field_count++)] = field;
    for (const NeededReading& one : needed)
        result.needed[static_cast<std::size_t>(result.needed_count++)] = one;
    for (Caution caution : cautions)
        result.cautions[static_cast<std::size_t>(result.caution_count++)] = caution;
    return result;
}

Procedure decision(Field field) {
    return procedure({field}, S::decide, {exactly(K::decision)}, {});
}

/// With rule, caliper or scale on a press that is locked out, hands at the carriage.
Procedure by_hand(Field field, Steps steps, std::initializer_list<NeededReading> needed) {
    return procedure({field}, steps, needed, {C::hands_in_carriage, C::isolated_and_bled});
}

/// On a press that runs: from outside.
Procedure running(Field field, Steps steps, std::initializer_list<NeededReading> needed) {
    return procedure({field}, steps, needed, {C::index_path});
}

void add_frame_and_ruler(std::vector<Procedure>& list) {
    list.push_back(by_hand(F::arm_radius, S::read, {several(K::length)}));
    list.push_back(by_hand(F::ruler_zero, S::read, {several(K::place)}));
    list.push_back(by_hand(F::ruler_graduation, S::ratio,
                           {once(K::span), exactly(K::divisions)}));
}

void add_sensors(std::vector<Procedure>& list) {
    for (Field field : {F::operator_sensor, F::machine_sensor})
        list.push_back(by_hand(field, S::difference,
                               {several(K::reference_place), several(K::sensor_place)}));
    list.push_back(by_hand(F::bar_length, S::read, {several(K::length)}));
    const auto lamps = {C::hands_in_carriage, C::lamps_alive};
    list.push_back(procedure({F::sensor_reach}, S::read, {several(K::gap_lamp_on)}, lamps));
    list.push_back(procedure({F::sensor_hysteresis}, S::difference,
                             {several(K::gap_lamp_on), several(K::gap_lamp_off)}, lamps));
    list.push_back(procedure({F::sensor_latency}, S::latency_at_two_speeds,
                             {once(K::slow_speed), several(K::slow_overtravel),
                              once(K::fast_speed), several(K::fast_overtravel)},
                             {C::hands_in_carriage, C::lamps_alive, C::index_path}));
    list.push_back(decision(F::separation_margin));
    list.push_back(procedure({F::measured_separation, F::separation_spread}, S::lamps_out,
                             {several(K::operator_bar), several(K::machine_bar)}, lamps));
}

void add_carriage(std::vector<Procedure>& list) {
    list.push_back(by_hand(F::range_lo, S::read, {several(K::place)}));
    list.push_back(by_hand(F::range_hi, S::read, {several(K::place)}));
    list.push_back(running(F::acceleration, S::acceleration_of_stroke,
                           {several(K::stroke_distance), several(K::stroke_time),
                            once(K::stroke_speed)}));
    list.push_back(running(F::fastest, S::ratio,
                           {several(K::stroke_distance), several(K::stroke_time)}));
    list.push_back(running(F::drop_time, S::read, {several(K::time)}));
    list.push_back(running(F::drop_dwell, S::read, {several(K::time)}));
}

void add_holders(std::vector<Procedure>& list) {
    const auto tilted = {once(K::first_angle), several(K::first_edge), once(K::second_angle),
                         several(K::second_edge)};
    const auto cautions = {C::hands_in_carriage, C::isolated_and_bled};
    list.push_back(procedure({F::squeegee_pivot_offset, F::squeegee_pivot_height}, S::two_angles,
                             tilted, cautions));
    list.push_back(by_hand(F::squeegee_half_depth, S::read_half, {several(K::length)}));
    list.push_back(procedure({F::flood_pivot_offset, F::flood_pivot_height}, S::two_angles,
                             tilted, cautions));
    list.push_back(by_hand(F::flood_half_depth, S::read_half, {several(K::length)}));
}

void add_gauges(std::vector<Procedure>& list) {
    const Field fields[2][4] = {{F::squeegee_mm_per_mark, F::squeegee_lowest_mark,
                                 F::squeegee_highest_mark, F::squeegee_mark_step},
                                {F::flood_mm_per_mark, F::flood_lowest_mark,
                                 F::flood_highest_mark, F::flood_mark_step}};
    for (const auto& gauge : fields) {
        list.push_back(by_hand(gauge[0], S::gauge_marks,
                               {once(K::first_mark), several(K::first_height),
                                once(K::second_mark), several(K::second_height)}));
        list.push_back(by_hand(gauge[1], S::read, {exactly(K::mark)}));
        list.push_back(by_hand(gauge[2], S::read, {exactly(K::mark)}));
        // Numbers printed on the gauge: their difference is exact.
        list.push_back(by_hand(gauge[3], S::ratio, {exactly(K::span), exactly(K::divisions)}));
    }
}

void add_angles_and_allowances(std::vector<Procedure>& list) {
    for (Field field : {F::least_angle, F::most_angle, F::wings_flat_angle})
        list.push_back(by_hand(field, S::read, {several(K::angle)}));
    list.push_back(by_hand(F::wing_length, S::read, {several(K::length)}));
    for (Field field : {F::frame_clearance, F::platen_inset, F::least_bead})
        list.push_back(decision(field));
    for (Field field : {F::stop_spread, F::screen_spread, F::image_spread})
        list.push_back(by_hand(field, S::scatter, {often(K::place)}));
    list.push_back(procedure({F::overtravel_spread}, S::scatter_of_difference,
                             {often(K::switching_place), often(K::resting_place)},
                             {C::hands_in_carriage, C::lamps_alive, C::index_path}));
}

/// Cylinders and where a screen's height is set.
void add_cylinders_and_heights(std::vector<Procedure>& list) {
    for (Field field : {F::squeegee_bore, F::flood_bore})
        list.push_back(by_hand(field, S::read, {exactly(K::plate)}));
    for (Field field : {F::squeegee_cylinders, F::flood_cylinders})
        list.push_back(by_hand(field, S::read, {exactly(K::counted)}));
    list.push_back(by_hand(F::height_across, S::read_half, {several(K::length)}));
    for (Field field : {F::height_operator_y, F::height_machine_y})
        list.push_back(by_hand(field, S::read, {several(K::place)}));
}

void add_readings(std::vector<Procedure>& list) {
    list.push_back(by_hand(F::adjuster_backlash, S::read, {several(K::play)}));
    // The print is taken off a press that may turn.
    list.push_back(running(F::mark_spread, S::scatter, {often(K::length)}));
    list.push_back(by_hand(F::height_spread, S::scatter, {often(K::length)}));
}

/// With a surface thermometer, beside a press that runs hot.
void add_heat(std::vector<Procedure>& list) {
    const auto hot = {C::index_path, C::hot_surface};
    list.push_back(procedure({F::ambient}, S::read, {several(K::room_temperature)}, hot));
    list.push_back(procedure({F::warming_rate}, S::rise_a_second,
                             {several(K::platen_before), several(K::platen_after),
                              once(K::flash_time)},
                             hot));
    list.push_back(procedure({F::cooling_time}, S::cooling,
                             {once(K::room_temperature), several(K::platen_warm),
                              several(K::platen_later), once(K::waited)},
                             hot));
}

/// How the table turns and the heads come down, timed beside a press that runs; the jerk is the
/// drive's own figure.
void add_pace(std::vector<Procedure>& list) {
    for (Field field : {F::index_time, F::lower_time, F::lift_time})
        list.push_back(running(field, S::read, {several(K::time)}));
    list.push_back(by_hand(F::jerk, S::read, {exactly(K::plate)}));
}

/// Where a gauge's zero lies, from the height of an upright edge at one mark.
void add_gauge_zeros(std::vector<Procedure>& list) {
    for (Field field : {F::squeegee_zero_height, F::flood_zero_height})
        list.push_back(by_hand(field, S::height_at_zero,
                               {exactly(K::first_mark), exactly(K::height_a_mark),
                                several(K::first_height)}));
}

std::vector<Procedure> all_procedures() {
    std::vector<Procedure> list;
    add_frame_and_ruler(list);
    add_sensors(list);
    add_carriage(list);
    add_holders(list);
    add_gauges(list);
    add_angles_and_allowances(list);
    add_cylinders_and_heights(list);
    add_gauge_zeros(list);
    add_readings(list);
    add_heat(list);
    add_pace(list);
    list.push_back(procedure({}, S::ratio, {several(K::travel), exactly(K::turns)},
                             {C::hands_in_carriage, C::isolated_and_bled}));
    return list;
}

} // namespace

Quantity quantity_of(ReadingKind kind) {
    switch (kind) {
        case K::time:
        case K::stroke_time:
        case K::flash_time:
        case K::waited:
            return Quantity::time;
        case K::angle:
        case K::first_angle:
        case K::second_angle:
            return Quantity::angle;
        case K::mark:
        case K::first_mark:
        case K::second_mark:
            return Quantity::marks;
        case K::divisions:
        case K::counted:
            return Quantity::count;
        case K::turns:
        case K::play:
            return Quantity::turns;
        case K::room_temperature:
        case K::platen_before:
        case K::platen_after:
        case K::platen_warm:
        case K::platen_later:
            return Quantity::temperature;
        case K::slow_speed:
        case K::fast_speed:
        case K::stroke_speed:
            return Quantity::speed;
        default:
            return Quantity::length;
    }
}

const std::vector<Procedure>& procedures() {
    static const std::vector<Procedure> list = all_procedures();
    return list;
}

const Procedure* procedure_for(Field field) {
    for (const Procedure& one : procedures())
        for (int i = 0; i < one.field_count; ++i)
            if (one.fields[static_cast<std::size_t>(i)] == field) return &one;
    return nullptr;
}

const Procedure& adjuster_procedure() { return procedures().back(); }

} // namespace carriageway
