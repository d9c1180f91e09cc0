// The fields of a press profile.
#include <array>

#include "app/records/form_parts.h"

namespace carriageway {
namespace {

constexpr std::int64_t most_check_id = std::numeric_limits<std::uint32_t>::max();

const Choices turnings{"clockwise", "counter_clockwise"};
const Choices adjuster_sides{"left", "right", "across"};
const Choices check_list_names{"before_run", "first_piece", "before_night", "before_unloading",
                               "tear_down"};
const Choices caution_names{"none",        "hands_in_carriage", "index_path", "isolated_and_bled",
                            "lamps_alive", "hot_surface",       "solvents"};

// In the order of CheckStep.
constexpr std::array step_names{
    "own",
    "table_clear",
    "guards_closed",
    "arms_down_locked",
    "holders_seated",
    "screens_at_stop",
    "clamps_in_order",
    "pressure_locked",
    "stops_tight",
    "screens_taped",
    "ink_in_screens",
    "platens_glued",
    "flash_warm",
    "image_complete",
    "colours_meet",
    "hand_feels_right",
    "wash_or_stretch",
    "place_on_garment",
    "screens_held_mechanically",
    "ink_covered",
    "heads_up",
    "flash_off_cooled",
    "air_and_power_off",
    "mechanical_hold_released",
    "arms_up_locked",
    "air_bled",
    "ink_out",
    "blades_out_washed",
    "screens_out",
    "adjusters_to_middle",
    "stops_noted",
    "platens_cleaned",
};
static_assert(step_names.size() == static_cast<std::size_t>(CheckStep::count));
const Choices check_step_names(step_names.begin(), step_names.end());

/// Numbers of a press, by their field.
struct PressNumbers {
    Form& form;
    PressProfile& press;
    void operator()(std::initializer_list<Field> fields) const {
        for (const Field field : fields) describe_number(form, number_of(press, field), field);
    }
};

void describe_spread(const PressNumbers& numbers, const char* key, Field field, bool& measured) {
    numbers.form.object(key, [&] {
        numbers({field});
        numbers.form.truth("measured", measured);
    });
}

void describe_sensors(const PressNumbers& numbers) {
    Sensors& sensors = numbers.press.sensors;
    numbers({Field::operator_sensor, Field::machine_sensor, Field::bar_length, Field::sensor_reach,
             Field::sensor_hysteresis, Field::sensor_latency, Field::separation_margin});
    numbers.form.truth("separation_measured", sensors.separation_measured);
    numbers({Field::measured_separation});
    describe_spread(numbers, "separation_spread", Field::separation_spread,
                    sensors.separation_spread.measured);
}

void describe_allowances(const PressNumbers& numbers) {
    Allowances& allowances = numbers.press.allowances;
    numbers({Field::frame_clearance, Field::platen_inset, Field::least_bead});
    describe_spread(numbers, "stop_spread", Field::stop_spread, allowances.stop.measured);
    describe_spread(numbers, "screen_spread", Field::screen_spread, allowances.screen.measured);
    describe_spread(numbers, "image_spread", Field::image_spread, allowances.image.measured);
    describe_spread(numbers, "overtravel_spread", Field::overtravel_spread,
                    allowances.overtravel.measured);
}

void describe_adjuster(Form& form, Adjuster& adjuster) {
    form.object("", [&] {
        form.text("name", adjuster.name, any_name);
        describe_choice(form, "side", adjuster.side, adjuster_sides);
        form.number("x_mm", adjuster.x, range_of(Field::image_offset_x));
        form.number("y_mm", adjuster.y, range_of(Field::image_offset_y));
        form.number("mm_per_turn", adjuster.mm_per_turn,
                    {0.0, most_mm_per_turn, 1.0, true, Quantity::length});
        describe_whole(form, "graduations", adjuster.graduations, {1, most_dial_marks});
        form.truth("clockwise_positive", adjuster.clockwise_positive);
    });
}

void describe_readings(const PressNumbers& numbers) {
    Readings& readings = numbers.press.readings;
    numbers({Field::adjuster_backlash});
    describe_spread(numbers, "mark_spread", Field::mark_spread, readings.mark.measured);
    describe_spread(numbers, "height_spread", Field::height_spread, readings.height.measured);
}

void describe_level_screw(Form& form, LevelScrew& screw) {
    form.object("", [&] {
        form.text("name", screw.name, any_name);
        form.number("x_mm", screw.x, range_of(Field::image_offset_x));
        form.number("y_mm", screw.y, range_of(Field::image_offset_y));
        form.number("mm_per_turn", screw.mm_per_turn,
                    {0.0, most_mm_per_turn, 1.0, true, Quantity::length});
        form.truth("clockwise_raises", screw.clockwise_raises);
    });
}

void describe_mesh(Form& form, MeshRow& mesh) {
    constexpr double most_um = 10000.0;
    const auto number = [&](const char* key, double& value, double most, Quantity quantity) {
        form.number(key, value, {0.0, most, 1.0, true, quantity});
    };
    form.object("", [&] {
        number("mesh_per_cm", mesh.threads_per_cm, info_of(Field::mesh_count).most,
               Quantity::mesh_count);
        number("thread_um", mesh.thread, info_of(Field::thread_diameter).most, Quantity::thread);
        number("opening_um", mesh.opening, most_um, Quantity::thread);
        number("open_share", mesh.share, 1.0, Quantity::share);
        number("thickness_um", mesh.thickness, info_of(Field::fabric_thickness).most,
               Quantity::thread);
        number("volume_cm3_per_m2", mesh.volume, most_um, Quantity::ratio);
        mesh.source = SourceKind::user;
    });
}

void describe_room(Form& form, StationRoom& room) {
    form.object("", [&] {
        form.truth("print_head", room.print_head);
        form.truth("flash", room.flash);
    });
}

void describe_check(Form& form, CheckItem& item) {
    form.object("", [&] {
        describe_whole(form, "id", item.id, {1, most_check_id});
        describe_choice(form, "list", item.list, check_list_names);
        describe_choice(form, "step", item.step, check_step_names);
        form.text("text", item.text, any_note);
        describe_optional_choice(form, "caution", item.caution, caution_names);
    });
}

void describe_optional_press_parts(const PressNumbers& numbers) {
    Form& form = numbers.form;
    PressProfile& press = numbers.press;
    describe_part(form, "cylinders", press.cylinders, [&] {
        numbers({Field::squeegee_bore, Field::squeegee_cylinders, Field::flood_bore,
                 Field::flood_cylinders});
    });
    describe_part(form, "edge_heights", press.edge_heights, [&] {
        numbers({Field::squeegee_zero_height, Field::flood_zero_height});
    });
    describe_part(form, "height_points", press.height_points, [&] {
        numbers({Field::height_across, Field::height_operator_y, Field::height_machine_y});
    });
    describe_part(form, "readings", press.readings, [&] { describe_readings(numbers); });
    describe_part(form, "warming", press.warming, [&] {
        numbers({Field::ambient, Field::warming_rate, Field::cooling_time});
    });
    describe_part(form, "meshes", press.meshes, [&] {
        describe_list(form, "rows", press.meshes, {0, most_meshes},
                      [&](MeshRow& mesh) { describe_mesh(form, mesh); });
    });
    describe_part(form, "levelling", press.level_screws, [&] {
        describe_list(form, "screws", press.level_screws, {0, most_adjusters},
                      [&](LevelScrew& screw) { describe_level_screw(form, screw); });
    });
    describe_part(form, "pace", press.pace, [&] {
        numbers({Field::index_time, Field::lower_time, Field::lift_time, Field::jerk});
        form.truth("floods_while_indexing", press.pace.floods_while_indexing);
    });
    describe_list(form, "rooms", press.rooms, {0, std::size_t{most_stations}, false, true},
                  [&](StationRoom& room) { describe_room(form, room); });
    describe_list(form, "checks", press.checks, {0, most_check_items, false, true},
                  [&](CheckItem& item) { describe_check(form, item); });
}

void describe_press_parts(const PressNumbers& numbers) {
    Form& form = numbers.form;
    form.object("ruler", [&] {
        numbers({Field::ruler_zero});
        describe_choice(form, "counts", numbers.press.ruler.counts, directions);
        numbers({Field::ruler_graduation});
        form.truth("inches", numbers.press.ruler.inches);
    });
    form.object("sensors", [&] { describe_sensors(numbers); });
    form.object("carriage", [&] {
        numbers({Field::range_lo, Field::range_hi, Field::acceleration, Field::fastest,
                 Field::drop_time, Field::drop_dwell});
    });
    form.object("squeegee_holder", [&] {
        numbers({Field::squeegee_pivot_offset, Field::squeegee_pivot_height,
                 Field::squeegee_half_depth});
    });
    form.object("flood_holder", [&] {
        numbers({Field::flood_pivot_offset, Field::flood_pivot_height, Field::flood_half_depth});
    });
    form.object("squeegee_gauge", [&] {
        numbers({Field::squeegee_mm_per_mark, Field::squeegee_lowest_mark,
                 Field::squeegee_highest_mark, Field::squeegee_mark_step});
    });
    form.object("flood_gauge", [&] {
        numbers({Field::flood_mm_per_mark, Field::flood_lowest_mark, Field::flood_highest_mark,
                 Field::flood_mark_step});
    });
    form.object("angles", [&] {
        numbers(
            {Field::least_angle, Field::most_angle, Field::wings_flat_angle, Field::wing_length});
    });
    form.object("allowances", [&] { describe_allowances(numbers); });
}

} // namespace

void describe_press(Form& form, PressProfile& press) {
    form.text("name", press.name, any_name);
    describe_whole(form, "stations", press.stations, {2, most_stations});
    describe_choice(form, "turning", press.turning, turnings);
    const PressNumbers numbers{form, press};
    numbers({Field::arm_radius});
    describe_press_parts(numbers);
    describe_optional_press_parts(numbers);
    describe_list(form, "adjusters", press.adjusters, any_number,
                  [&](Adjuster& adjuster) { describe_adjuster(form, adjuster); });
}

} // namespace carriageway
