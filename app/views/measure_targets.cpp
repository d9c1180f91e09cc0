// Which procedure belongs to which number, how it is listed, read and drawn.
#include "app/views/measure_words.h"

namespace carriageway {

namespace {

using F = Field;
using K = ReadingKind;
using W = Word;

/// How one target is shown. Fields that share a procedure's manner share a row's words.
struct Manner {
    MeasureGroup group;
    W how;
    Scheme scheme;
};

bool between(Field field, Field first, Field last) { return field >= first && field <= last; }

Manner sensor_manner(Field field) {
    constexpr auto group = MeasureGroup::sensors;
    switch (field) {
    case F::ruler_zero: return {group, W::how_ruler_zero, Scheme::rule};
    case F::ruler_graduation: return {group, W::how_ruler_graduation, Scheme::rule};
    case F::bar_length: return {group, W::how_bar_length, Scheme::rule};
    case F::sensor_reach: return {group, W::how_sensor_reach, Scheme::gap};
    case F::sensor_hysteresis: return {group, W::how_sensor_hysteresis, Scheme::gap};
    case F::sensor_latency: return {group, W::how_sensor_latency, Scheme::stroke};
    case F::separation_margin: return {group, W::how_decision, Scheme::none};
    case F::measured_separation: return {group, W::how_separation, Scheme::bars};
    default: return {group, W::how_sensor_place, Scheme::rule};
    }
}

Manner carriage_manner(Field field) {
    constexpr auto group = MeasureGroup::carriage;
    switch (field) {
    case F::arm_radius: return {group, W::how_arm_radius, Scheme::rule};
    case F::acceleration: return {group, W::how_acceleration, Scheme::stroke};
    case F::fastest: return {group, W::how_fastest, Scheme::stroke};
    case F::drop_time: return {group, W::how_drop_time, Scheme::drop};
    case F::drop_dwell: return {group, W::how_drop_dwell, Scheme::drop};
    default: return {group, W::how_range, Scheme::rule};
    }
}

Manner blade_manner(Field field) {
    constexpr auto group = MeasureGroup::blades;
    switch (field) {
    case F::squeegee_pivot_offset:
    case F::flood_pivot_offset: return {group, W::how_pivot, Scheme::holder};
    case F::squeegee_half_depth:
    case F::flood_half_depth: return {group, W::how_half_depth, Scheme::rule};
    case F::squeegee_mm_per_mark:
    case F::flood_mm_per_mark: return {group, W::how_gauge, Scheme::gauge};
    case F::squeegee_mark_step:
    case F::flood_mark_step: return {group, W::how_gauge_step, Scheme::rule};
    case F::squeegee_zero_height:
    case F::flood_zero_height: return {group, W::how_gauge_zero, Scheme::gauge};
    case F::least_angle: return {group, W::how_least_angle, Scheme::angle};
    case F::most_angle: return {group, W::how_most_angle, Scheme::angle};
    case F::wings_flat_angle: return {group, W::how_wings_flat, Scheme::angle};
    case F::wing_length: return {group, W::how_wing_length, Scheme::rule};
    case F::squeegee_bore:
    case F::flood_bore: return {group, W::how_plate, Scheme::cylinder};
    case F::squeegee_cylinders:
    case F::flood_cylinders: return {group, W::how_count, Scheme::cylinder};
    case F::frame_clearance:
    case F::platen_inset:
    case F::least_bead: return {group, W::how_decision, Scheme::none};
    default: return {group, W::how_gauge_end, Scheme::none};
    }
}

Manner manner_of(const MeasureTarget& target) {
    if (target.screw)
        return {target.screw->levels ? MeasureGroup::heights : MeasureGroup::adjusters, W::how_screw, Scheme::screw};
    const Field field = target.field;
    switch (field) {
    case F::stop_spread: return {MeasureGroup::readings, W::how_stop_spread, Scheme::scatter};
    case F::screen_spread: return {MeasureGroup::readings, W::how_screen_spread, Scheme::scatter};
    case F::image_spread: return {MeasureGroup::readings, W::how_image_spread, Scheme::scatter};
    case F::overtravel_spread: return {MeasureGroup::readings, W::how_overtravel_spread, Scheme::stroke};
    case F::mark_spread: return {MeasureGroup::readings, W::how_mark_spread, Scheme::scatter};
    case F::height_spread: return {MeasureGroup::readings, W::how_height_spread, Scheme::scatter};
    case F::adjuster_backlash: return {MeasureGroup::adjusters, W::how_backlash, Scheme::screw};
    case F::height_across: return {MeasureGroup::heights, W::how_height_across, Scheme::heights};
    case F::height_operator_y:
    case F::height_machine_y: return {MeasureGroup::heights, W::how_height_place, Scheme::heights};
    case F::ambient: return {MeasureGroup::heat, W::how_ambient, Scheme::heat};
    case F::warming_rate: return {MeasureGroup::heat, W::how_warming, Scheme::heat};
    case F::cooling_time: return {MeasureGroup::heat, W::how_cooling, Scheme::cooling};
    case F::index_time: return {MeasureGroup::pace, W::how_index_time, Scheme::none};
    case F::lower_time: return {MeasureGroup::pace, W::how_lower_time, Scheme::none};
    case F::lift_time: return {MeasureGroup::pace, W::how_lift_time, Scheme::none};
    case F::jerk: return {MeasureGroup::carriage, W::how_jerk, Scheme::none};
    default: break;
    }
    if (field == F::arm_radius || between(field, F::range_lo, F::drop_dwell)) return carriage_manner(field);
    if (between(field, F::ruler_zero, F::measured_separation)) return sensor_manner(field);
    return blade_manner(field);
}

} // namespace

std::optional<MeasureTarget> target_for(Field field) {
    const Procedure* procedure = field < F::count ? procedure_for(field) : nullptr;
    if (!procedure) return std::nullopt;
    return MeasureTarget{procedure->fields[0], std::nullopt};
}

const Procedure& procedure_of(const MeasureTarget& target) {
    const Procedure* procedure =
        target.screw || target.field >= F::count ? nullptr : procedure_for(target.field);
    return procedure ? *procedure : adjuster_procedure();
}

std::vector<MeasureRow> measure_rows(const PressProfile& press) {
    std::vector<MeasureRow> all;
    const auto add = [&](const MeasureTarget& target) { all.push_back({manner_of(target).group, target}); };
    add({F::measured_separation, std::nullopt}); // what people come for
    for (const Procedure& procedure : procedures())
        if (procedure.field_count > 0 && procedure.fields[0] != F::measured_separation)
            add({procedure.fields[0], std::nullopt});
    for (std::size_t i = 0; i < press.adjusters.size(); ++i) add({F::count, ScrewPlace{false, i}});
    for (std::size_t i = 0; i < press.level_screws.size(); ++i) add({F::count, ScrewPlace{true, i}});
    std::vector<MeasureRow> rows;
    for (int group = 0; group < static_cast<int>(MeasureGroup::count); ++group)
        for (const MeasureRow& row : all)
            if (static_cast<int>(row.group) == group) rows.push_back(row);
    return rows;
}

bool on_ruler(const MeasureTarget& target, ReadingKind kind) {
    switch (kind) {
    case K::place: return target.field != F::ruler_zero; // the ruler's own zero
    case K::reference_place:
    case K::sensor_place:
    case K::operator_bar:
    case K::machine_bar:
    case K::switching_place:
    case K::resting_place: return true;
    default: return false;
    }
}

Quantity reading_quantity(const MeasureTarget& target, ReadingKind kind) {
    const bool own = kind == K::decision || kind == K::plate;
    if (own && target.field < F::count) return info_of(target.field).quantity;
    // The span between two numbers of a gauge is in marks.
    if (kind == K::span && (target.field == F::squeegee_mark_step || target.field == F::flood_mark_step))
        return Quantity::marks;
    return quantity_of(kind);
}

bool in_pairs(const Procedure& procedure) {
    return procedure.steps == Steps::lamps_out || procedure.steps == Steps::scatter_of_difference ||
           (procedure.steps == Steps::difference && procedure.needed_count == 2);
}

double usual_step(const PressProfile& press, const MeasureTarget& target, ReadingKind kind) {
    if (on_ruler(target, kind)) return press.ruler.graduation;
    if (target.field == Field::mark_spread || target.field == Field::height_spread) return 0.1; // a caliper
    if (kind == K::first_mark || kind == K::second_mark) {
        const bool flood = target.field == F::flood_mm_per_mark;
        return (flood ? press.flood_gauge : press.squeegee_gauge).graduation;
    }
    switch (kind) {
    case K::gap_lamp_on:
    case K::gap_lamp_off:
    case K::first_height:
    case K::second_height:
    case K::travel: return 0.1; // a caliper
    case K::waited: return 1.0;
    default: break;
    }
    switch (quantity_of(kind)) {
    case Quantity::length: return 1.0;
    case Quantity::time: return 0.01;
    case Quantity::angle: return radians(1.0);
    case Quantity::speed: return 10.0;
    case Quantity::temperature: return 1.0;
    case Quantity::turns: return 0.05;
    default: return 0.0;
    }
}

Scheme scheme_of(const MeasureTarget& target) { return manner_of(target).scheme; }

Word how_word(const MeasureTarget& target) { return manner_of(target).how; }

Word reading_word(const MeasureTarget& target, ReadingKind kind) {
    const bool zero = target.field == F::squeegee_zero_height || target.field == F::flood_zero_height;
    const bool step = target.field == F::squeegee_mark_step || target.field == F::flood_mark_step;
    switch (kind) {
    case K::length: return W::reading_length;
    case K::place: return on_ruler(target, kind) ? W::reading_ruler_place : W::reading_place;
    case K::reference_place: return W::reading_reference;
    case K::sensor_place: return W::reading_sensor;
    case K::time: return W::reading_time;
    case K::angle: return W::reading_angle;
    case K::mark: return W::reading_mark;
    case K::decision: return W::reading_decision;
    case K::span: return step ? W::reading_mark_span : W::reading_span;
    case K::divisions: return W::reading_divisions;
    case K::operator_bar: return W::reading_operator_bar;
    case K::machine_bar: return W::reading_machine_bar;
    case K::gap_lamp_on: return W::reading_lamp_on;
    case K::gap_lamp_off: return W::reading_lamp_off;
    case K::slow_speed: return W::reading_slow_speed;
    case K::slow_overtravel: return W::reading_slow_past;
    case K::fast_speed: return W::reading_fast_speed;
    case K::fast_overtravel: return W::reading_fast_past;
    case K::switching_place: return W::reading_switching;
    case K::resting_place: return W::reading_resting;
    case K::stroke_distance: return W::reading_stroke_distance;
    case K::stroke_time: return W::reading_stroke_time;
    case K::stroke_speed: return W::reading_stroke_speed;
    case K::first_angle: return W::reading_first_angle;
    case K::first_edge: return W::reading_first_edge;
    case K::second_angle: return W::reading_second_angle;
    case K::second_edge: return W::reading_second_edge;
    case K::height_a_mark: return W::reading_height_a_mark;
    case K::first_mark: return zero ? W::reading_the_mark : W::reading_first_mark;
    case K::first_height: return zero ? W::reading_the_height : W::reading_first_height;
    case K::second_mark: return W::reading_second_mark;
    case K::second_height: return W::reading_second_height;
    case K::turns: return W::reading_turns;
    case K::travel: return W::reading_travel;
    case K::plate: return target.field == F::jerk ? W::reading_figure : W::reading_plate;
    case K::counted: return W::reading_counted;
    case K::play: return W::reading_play;
    case K::room_temperature: return W::reading_room;
    case K::platen_before: return W::reading_platen_before;
    case K::platen_after: return W::reading_platen_after;
    case K::flash_time: return W::reading_flash_time;
    case K::platen_warm: return W::reading_platen_warm;
    case K::platen_later: return W::reading_platen_later;
    case K::waited: return W::reading_waited;
    }
    return W::count;
}

} // namespace carriageway
