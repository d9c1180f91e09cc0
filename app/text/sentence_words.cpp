// Which word of the catalogue belongs to which value of the core.
#include <array>
#include <cstddef>

#include "app/text/sentences.h"

namespace carriageway {
namespace {

// In the order of Field.
constexpr std::array field_words{
    Word::field_screen_across,
    Word::field_screen_along,
    Word::field_screen_profile,
    Word::field_mesh_count,
    Word::field_thread_diameter,
    Word::field_tension_along,
    Word::field_tension_across,
    Word::field_image_width,
    Word::field_image_length,
    Word::field_image_offset_x,
    Word::field_image_offset_y,
    Word::field_image_rotation,
    Word::field_squeegee_width,
    Word::field_squeegee_angle,
    Word::field_squeegee_gauge,
    Word::field_flood_width,
    Word::field_flood_angle,
    Word::field_flood_gauge,
    Word::field_print_speed,
    Word::field_flood_speed,
    Word::field_operator_stop,
    Word::field_machine_stop,
    Word::field_height_left,
    Word::field_height_right,
    Word::field_height_machine,
    Word::field_squeegee_pressure,
    Word::field_flood_pressure,
    Word::field_fabric_thickness,
    Word::field_stencil,
    Word::field_printed_share,
    Word::field_finest_detail,
    Word::field_print_strokes,
    Word::field_squeegee_hardness,
    Word::field_print_order,
    Word::field_cool_after,
    Word::field_screen_on,
    Word::field_platen_width,
    Word::field_platen_length,
    Word::field_platen_offset_x,
    Word::field_platen_offset_y,
    Word::field_run_past,
    Word::field_side_overlap,
    Word::field_garment_compressed,
    Word::field_registration_tolerance,
    Word::field_pieces,
    Word::field_flash_dwell,
    Word::field_cycle,
    Word::field_flash_temperature,
    Word::field_dryer_temperature,
    Word::field_dryer_time,
    Word::field_load_time,
    Word::field_unload_time,
    Word::field_friction,
    Word::field_mesh_stiffness,
    Word::field_transfer_share,
    Word::field_second_stroke_share,
    Word::field_ink_in_screen,
    Word::field_waste_share,
    Word::field_arm_radius,
    Word::field_ruler_zero,
    Word::field_ruler_graduation,
    Word::field_operator_sensor,
    Word::field_machine_sensor,
    Word::field_bar_length,
    Word::field_sensor_reach,
    Word::field_sensor_hysteresis,
    Word::field_sensor_latency,
    Word::field_separation_margin,
    Word::field_measured_separation,
    Word::field_separation_spread,
    Word::field_range_lo,
    Word::field_range_hi,
    Word::field_acceleration,
    Word::field_fastest,
    Word::field_drop_time,
    Word::field_drop_dwell,
    Word::field_squeegee_pivot_offset,
    Word::field_squeegee_pivot_height,
    Word::field_squeegee_half_depth,
    Word::field_flood_pivot_offset,
    Word::field_flood_pivot_height,
    Word::field_flood_half_depth,
    Word::field_squeegee_mm_per_mark,
    Word::field_squeegee_lowest_mark,
    Word::field_squeegee_highest_mark,
    Word::field_squeegee_mark_step,
    Word::field_flood_mm_per_mark,
    Word::field_flood_lowest_mark,
    Word::field_flood_highest_mark,
    Word::field_flood_mark_step,
    Word::field_least_angle,
    Word::field_most_angle,
    Word::field_wings_flat_angle,
    Word::field_wing_length,
    Word::field_frame_clearance,
    Word::field_platen_inset,
    Word::field_least_bead,
    Word::field_stop_spread,
    Word::field_screen_spread,
    Word::field_image_spread,
    Word::field_overtravel_spread,
    Word::field_squeegee_bore,
    Word::field_squeegee_cylinders,
    Word::field_flood_bore,
    Word::field_flood_cylinders,
    Word::field_squeegee_zero_height,
    Word::field_flood_zero_height,
    Word::field_height_across,
    Word::field_height_operator_y,
    Word::field_height_machine_y,
    Word::field_adjuster_backlash,
    Word::field_mark_spread,
    Word::field_height_spread,
    Word::field_ambient,
    Word::field_warming_rate,
    Word::field_cooling_time,
    Word::field_index_time,
    Word::field_lower_time,
    Word::field_lift_time,
    Word::field_jerk,
};
static_assert(field_words.size() == static_cast<std::size_t>(Field::count));

}  // namespace

Word field_word(Field field) {
    const std::size_t index = static_cast<std::size_t>(field);
    return index < field_words.size() ? field_words[index] : Word::count;
}

Word use_word(StationUse use) {
    switch (use) {
        case StationUse::open:
            return Word::use_open;
        case StationUse::load:
            return Word::use_load;
        case StationUse::unload:
            return Word::use_unload;
        case StationUse::flash:
            return Word::use_flash;
        case StationUse::cool:
            return Word::use_cool;
    }
    return Word::count;
}

Word severity_word(Severity severity) {
    switch (severity) {
        case Severity::stop:
            return Word::severity_stop;
        case Severity::mind:
            return Word::severity_mind;
        case Severity::note:
            return Word::severity_note;
    }
    return Word::count;
}

Word miss_word(MissKind kind) {
    switch (kind) {
        case MissKind::unprinted:
            return Word::unprinted;
        case MissKind::starved:
            return Word::starved;
        case MissKind::heavy:
            return Word::heavy;
    }
    return Word::count;
}

Word side_word(Side side) {
    switch (side) {
        case Side::operator_side:
            return Word::at_operator_end;
        case Side::machine_side:
            return Word::at_machine_end;
        case Side::left:
            return Word::at_left_side;
        case Side::right:
            return Word::at_right_side;
        case Side::both:
            return Word::at_both_ends;
    }
    return Word::count;
}

Word side_word(End end) {
    return end == End::operator_side ? Word::at_operator_end : Word::at_machine_end;
}

Word direction_word(Direction direction) {
    return direction == Direction::toward_machine ? Word::toward_machine : Word::toward_operator;
}

Word limit_word(LimitKind kind) {
    switch (kind) {
        case LimitKind::squeegee_run_past:
            return Word::thing_squeegee_run_past;
        case LimitKind::flood_run_past:
            return Word::thing_flood_run_past;
        case LimitKind::platen:
            return Word::thing_platen;
        case LimitKind::frame_squeegee:
            return Word::thing_frame_squeegee;
        case LimitKind::frame_flood:
            return Word::thing_frame_flood;
        case LimitKind::carriage_range:
            return Word::thing_range;
        case LimitKind::separation:
            return Word::thing_separation;
    }
    return Word::count;
}

}  // namespace carriageway
