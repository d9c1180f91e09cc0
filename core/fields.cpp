#include "core/fields.h"

#include <array>
#include <cassert>
#include <cmath>

#include "core/advice.h"

namespace carriageway {
namespace {

using InHead = double& (*)(Head&);
using InJob = double& (*)(Job&);
using InPress = double& (*)(PressProfile&);

/// A row and the way to its number; one of the three is set.
struct Row {
    FieldInfo info;
    InHead in_head = nullptr;
    InJob in_job = nullptr;
    InPress in_press = nullptr;
};

constexpr Row head_row(Field field, const char* key, Quantity quantity, double least, double most,
                       InHead in_head) {
    return {{field, key, FieldOwner::head, quantity, least, most}, in_head, nullptr, nullptr};
}
constexpr Row job_row(Field field, const char* key, Quantity quantity, double least, double most,
                      InJob in_job) {
    return {{field, key, FieldOwner::job, quantity, least, most}, nullptr, in_job, nullptr};
}
constexpr Row press_row(Field field, const char* key, Quantity quantity, double least, double most,
                        InPress in_press) {
    return {{field, key, FieldOwner::press, quantity, least, most}, nullptr, nullptr, in_press};
}

// Limits of the program, ours: far wider than any press, narrow enough that no sum of accepted
// numbers loses its last micrometre.
constexpr double least_size = 1.0;
constexpr double most_size = 5000.0;
constexpr double most_place = 5000.0;     // positions and offsets, both ways
constexpr double most_distance = 1000.0;  // allowances and wishes
constexpr double least_speed = 1.0;
constexpr double most_speed = 5000.0;
constexpr double most_marks = 1000.0;  // both ways
constexpr double least_step = 0.001;
constexpr double most_spread = 100.0;
constexpr double steepest = radians(45.0);
constexpr double half_turn = radians(180.0);

using F = Field;
using Q = Quantity;

constexpr std::array<Row, static_cast<std::size_t>(Field::count)> rows{{
    head_row(F::screen_across, "screen.across_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.screen.across; }),
    head_row(F::screen_along, "screen.along_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.screen.along; }),
    head_row(F::screen_profile, "screen.profile_width_mm", Q::length, 0.0, 500.0,
             [](Head& h) -> double& { return h.screen.profile_width; }),
    head_row(F::mesh_count, "screen.mesh_per_cm", Q::mesh_count, 1.0, 500.0,
             [](Head& h) -> double& { return h.screen.mesh_count; }),
    head_row(F::thread_diameter, "screen.thread_um", Q::thread, 1.0, 1000.0,
             [](Head& h) -> double& { return h.screen.thread_diameter; }),
    head_row(F::tension_along, "screen.tension_along_n_per_cm", Q::tension, 0.0, 200.0,
             [](Head& h) -> double& { return h.screen.tension_along; }),
    head_row(F::tension_across, "screen.tension_across_n_per_cm", Q::tension, 0.0, 200.0,
             [](Head& h) -> double& { return h.screen.tension_across; }),
    head_row(F::image_width, "image.width_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.image.width; }),
    head_row(F::image_length, "image.length_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.image.length; }),
    head_row(F::image_offset_x, "image.offset_x_mm", Q::length, -most_place, most_place,
             [](Head& h) -> double& { return h.image.offset_x; }),
    head_row(F::image_offset_y, "image.offset_y_mm", Q::length, -most_place, most_place,
             [](Head& h) -> double& { return h.image.offset_y; }),
    head_row(F::image_rotation, "image.rotation_deg", Q::angle, -half_turn, half_turn,
             [](Head& h) -> double& { return h.image.rotation; }),
    head_row(F::squeegee_width, "squeegee.width_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.squeegee.width; }),
    head_row(F::squeegee_angle, "squeegee.angle_deg", Q::angle, 0.0, steepest,
             [](Head& h) -> double& { return h.squeegee.angle; }),
    head_row(F::squeegee_gauge, "squeegee.gauge_marks", Q::marks, -most_marks, most_marks,
             [](Head& h) -> double& { return h.squeegee.gauge; }),
    head_row(F::flood_width, "flood.width_mm", Q::length, least_size, most_size,
             [](Head& h) -> double& { return h.flood.width; }),
    head_row(F::flood_angle, "flood.angle_deg", Q::angle, 0.0, steepest,
             [](Head& h) -> double& { return h.flood.angle; }),
    head_row(F::flood_gauge, "flood.gauge_marks", Q::marks, -most_marks, most_marks,
             [](Head& h) -> double& { return h.flood.gauge; }),
    head_row(F::print_speed, "print_speed_mm_per_s", Q::speed, least_speed, most_speed,
             [](Head& h) -> double& { return h.print_speed; }),
    head_row(F::flood_speed, "flood_speed_mm_per_s", Q::speed, least_speed, most_speed,
             [](Head& h) -> double& { return h.flood_speed; }),
    head_row(F::operator_stop, "stops.operator_mm", Q::length, -most_place, most_place,
             [](Head& h) -> double& { return h.stops.operator_side; }),
    head_row(F::machine_stop, "stops.machine_mm", Q::length, -most_place, most_place,
             [](Head& h) -> double& { return h.stops.machine_side; }),
    head_row(F::height_left, "off_contact.left_mm", Q::length, 0.0, 50.0,
             [](Head& h) -> double& { return h.heights.left; }),
    head_row(F::height_right, "off_contact.right_mm", Q::length, 0.0, 50.0,
             [](Head& h) -> double& { return h.heights.right; }),
    head_row(F::height_machine, "off_contact.machine_mm", Q::length, 0.0, 50.0,
             [](Head& h) -> double& { return h.heights.machine; }),
    head_row(F::squeegee_pressure, "pressure.squeegee_kpa", Q::pressure, 0.0, 1600.0,
             [](Head& h) -> double& { return h.pressure.squeegee; }),
    head_row(F::flood_pressure, "pressure.flood_kpa", Q::pressure, 0.0, 1600.0,
             [](Head& h) -> double& { return h.pressure.flood; }),
    head_row(F::fabric_thickness, "deposit.fabric_um", Q::thread, 0.0, 2000.0,
             [](Head& h) -> double& { return h.deposit.fabric_thickness; }),
    head_row(F::stencil, "deposit.stencil_um", Q::thread, 0.0, 2000.0,
             [](Head& h) -> double& { return h.deposit.stencil; }),
    head_row(F::printed_share, "deposit.printed_share", Q::share, 0.0, 1.0,
             [](Head& h) -> double& { return h.deposit.printed_share; }),
    head_row(F::finest_detail, "deposit.finest_detail_mm", Q::length, 0.0, 100.0,
             [](Head& h) -> double& { return h.deposit.finest_detail; }),
    head_row(F::print_strokes, "deposit.print_strokes", Q::count, 1.0, 9.0,
             [](Head& h) -> double& { return h.deposit.strokes; }),
    head_row(F::squeegee_hardness, "squeegee.hardness_shore_a", Q::hardness, 0.0, 100.0,
             [](Head& h) -> double& { return h.squeegee.hardness; }),
    head_row(F::print_order, "wish.order", Q::count, 0.0, most_stations,
             [](Head& h) -> double& { return h.wish.order; }),
    head_row(F::cool_after, "wish.cool_after", Q::count, 0.0, 8.0,
             [](Head& h) -> double& { return h.wish.cool_after; }),
    head_row(F::screen_on, "wish.screen_on", Q::count, 0.0, most_stations,
             [](Head& h) -> double& { return h.wish.screen_on; }),

    job_row(F::platen_width, "platen.width_mm", Q::length, least_size, most_size,
            [](Job& j) -> double& { return j.platen.width; }),
    job_row(F::platen_length, "platen.length_mm", Q::length, least_size, most_size,
            [](Job& j) -> double& { return j.platen.length; }),
    job_row(F::platen_offset_x, "platen.offset_x_mm", Q::length, -most_place, most_place,
            [](Job& j) -> double& { return j.platen.offset_x; }),
    job_row(F::platen_offset_y, "platen.offset_y_mm", Q::length, -most_place, most_place,
            [](Job& j) -> double& { return j.platen.offset_y; }),
    job_row(F::run_past, "wishes.run_past_mm", Q::length, 0.0, most_distance,
            [](Job& j) -> double& { return j.wishes.run_past; }),
    job_row(F::side_overlap, "wishes.side_overlap_mm", Q::length, 0.0, most_distance,
            [](Job& j) -> double& { return j.wishes.side_overlap; }),
    job_row(F::garment_compressed, "garment.compressed_mm", Q::length, 0.0, 50.0,
            [](Job& j) -> double& { return j.garment.compressed; }),
    job_row(F::registration_tolerance, "registration.tolerance_mm", Q::length, 0.01, 50.0,
            [](Job& j) -> double& { return j.registration.tolerance; }),
    job_row(F::pieces, "run.pieces", Q::count, 1.0, 1000000.0,
            [](Job& j) -> double& { return j.run.pieces; }),
    job_row(F::flash_dwell, "run.flash_dwell_s", Q::time, 0.0, 120.0,
            [](Job& j) -> double& { return j.run.flash_dwell; }),
    job_row(F::cycle, "run.cycle_s", Q::time, 0.5, 600.0,
            [](Job& j) -> double& { return j.run.cycle; }),
    job_row(F::flash_temperature, "run.flash_temperature_c", Q::temperature, 0.0, 1000.0,
            [](Job& j) -> double& { return j.run.flash_temperature; }),
    job_row(F::dryer_temperature, "run.dryer_temperature_c", Q::temperature, 0.0, 1000.0,
            [](Job& j) -> double& { return j.run.dryer_temperature; }),
    job_row(F::dryer_time, "run.dryer_s", Q::time, 0.0, 3600.0,
            [](Job& j) -> double& { return j.run.dryer_time; }),
    job_row(F::load_time, "handling.load_s", Q::time, 0.0, 600.0,
            [](Job& j) -> double& { return j.handling.load; }),
    job_row(F::unload_time, "handling.unload_s", Q::time, 0.0, 600.0,
            [](Job& j) -> double& { return j.handling.unload; }),
    job_row(F::friction, "assumed.friction", Q::ratio, 0.0, 2.0,
            [](Job& j) -> double& { return j.assumed.friction; }),
    job_row(F::mesh_stiffness, "assumed.mesh_stiffness_n_per_cm", Q::tension, 10.0, 100000.0,
            [](Job& j) -> double& { return j.assumed.mesh_stiffness; }),
    job_row(F::transfer_share, "assumed.transfer_share", Q::share, 0.0, 1.0,
            [](Job& j) -> double& { return j.assumed.transfer_share; }),
    job_row(F::second_stroke_share, "assumed.second_stroke_share", Q::share, 0.0, 1.0,
            [](Job& j) -> double& { return j.assumed.second_stroke_share; }),
    job_row(F::ink_in_screen, "assumed.ink_in_screen_cm3", Q::volume, 0.0, 10000.0,
            [](Job& j) -> double& { return j.assumed.ink_in_screen; }),
    job_row(F::waste_share, "assumed.waste_share", Q::share, 0.0, 1.0,
            [](Job& j) -> double& { return j.assumed.waste_share; }),

    press_row(F::arm_radius, "arm_radius_mm", Q::length, 100.0, 20000.0,
              [](PressProfile& p) -> double& { return p.arm_radius; }),
    press_row(F::ruler_zero, "ruler.zero_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.ruler.zero; }),
    press_row(F::ruler_graduation, "ruler.graduation_mm", Q::length, 0.01, 50.0,
              [](PressProfile& p) -> double& { return p.ruler.graduation; }),
    press_row(F::operator_sensor, "sensors.operator_offset_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.sensors.operator_offset; }),
    press_row(F::machine_sensor, "sensors.machine_offset_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.sensors.machine_offset; }),
    press_row(F::bar_length, "sensors.bar_length_mm", Q::length, least_size, most_size,
              [](PressProfile& p) -> double& { return p.sensors.bar_length; }),
    press_row(F::sensor_reach, "sensors.reach_mm", Q::length, 0.0, 100.0,
              [](PressProfile& p) -> double& { return p.sensors.reach; }),
    press_row(F::sensor_hysteresis, "sensors.hysteresis_mm", Q::length, 0.0, 100.0,
              [](PressProfile& p) -> double& { return p.sensors.hysteresis; }),
    press_row(F::sensor_latency, "sensors.latency_s", Q::time, 0.0, 2.0,
              [](PressProfile& p) -> double& { return p.sensors.latency; }),
    // Above 0, because at the least separation itself both sensors are still on.
    press_row(F::separation_margin, "sensors.separation_margin_mm", Q::length, 0.1, most_distance,
              [](PressProfile& p) -> double& { return p.sensors.separation_margin; }),
    press_row(F::measured_separation, "sensors.measured_separation_mm", Q::length, 0.0, most_size,
              [](PressProfile& p) -> double& { return p.sensors.measured_separation; }),
    press_row(F::separation_spread, "sensors.separation_spread.value_mm", Q::length, 0.0,
              most_spread,
              [](PressProfile& p) -> double& { return p.sensors.separation_spread.value; }),
    press_row(F::range_lo, "carriage.range_lo_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.carriage.range_lo; }),
    press_row(F::range_hi, "carriage.range_hi_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.carriage.range_hi; }),
    press_row(F::acceleration, "carriage.acceleration_mm_per_s2", Q::acceleration, 100.0, 100000.0,
              [](PressProfile& p) -> double& { return p.carriage.acceleration; }),
    press_row(F::fastest, "carriage.fastest_mm_per_s", Q::speed, least_speed, most_speed,
              [](PressProfile& p) -> double& { return p.carriage.fastest; }),
    press_row(F::drop_time, "carriage.drop_time_s", Q::time, 0.0, 10.0,
              [](PressProfile& p) -> double& { return p.carriage.drop_time; }),
    press_row(F::drop_dwell, "carriage.drop_dwell_s", Q::time, 0.0, 10.0,
              [](PressProfile& p) -> double& { return p.carriage.drop_dwell; }),
    press_row(F::squeegee_pivot_offset, "squeegee_holder.pivot_offset_mm", Q::length,
              -most_distance, most_distance,
              [](PressProfile& p) -> double& { return p.squeegee_holder.pivot_offset; }),
    press_row(F::squeegee_pivot_height, "squeegee_holder.pivot_height_mm", Q::length, least_size,
              most_distance,
              [](PressProfile& p) -> double& { return p.squeegee_holder.pivot_height; }),
    press_row(F::squeegee_half_depth, "squeegee_holder.half_depth_mm", Q::length, 0.0,
              most_distance,
              [](PressProfile& p) -> double& { return p.squeegee_holder.half_depth; }),
    press_row(F::flood_pivot_offset, "flood_holder.pivot_offset_mm", Q::length, -most_distance,
              most_distance,
              [](PressProfile& p) -> double& { return p.flood_holder.pivot_offset; }),
    press_row(F::flood_pivot_height, "flood_holder.pivot_height_mm", Q::length, least_size,
              most_distance,
              [](PressProfile& p) -> double& { return p.flood_holder.pivot_height; }),
    press_row(F::flood_half_depth, "flood_holder.half_depth_mm", Q::length, 0.0, most_distance,
              [](PressProfile& p) -> double& { return p.flood_holder.half_depth; }),
    press_row(F::squeegee_mm_per_mark, "squeegee_gauge.mm_per_mark", Q::length, least_step, 1000.0,
              [](PressProfile& p) -> double& { return p.squeegee_gauge.mm_per_mark; }),
    press_row(F::squeegee_lowest_mark, "squeegee_gauge.lowest_marks", Q::marks, -most_marks,
              most_marks, [](PressProfile& p) -> double& { return p.squeegee_gauge.lowest; }),
    press_row(F::squeegee_highest_mark, "squeegee_gauge.highest_marks", Q::marks, -most_marks,
              most_marks, [](PressProfile& p) -> double& { return p.squeegee_gauge.highest; }),
    press_row(F::squeegee_mark_step, "squeegee_gauge.graduation_marks", Q::marks, least_step,
              most_marks, [](PressProfile& p) -> double& { return p.squeegee_gauge.graduation; }),
    press_row(F::flood_mm_per_mark, "flood_gauge.mm_per_mark", Q::length, least_step, 1000.0,
              [](PressProfile& p) -> double& { return p.flood_gauge.mm_per_mark; }),
    press_row(F::flood_lowest_mark, "flood_gauge.lowest_marks", Q::marks, -most_marks, most_marks,
              [](PressProfile& p) -> double& { return p.flood_gauge.lowest; }),
    press_row(F::flood_highest_mark, "flood_gauge.highest_marks", Q::marks, -most_marks, most_marks,
              [](PressProfile& p) -> double& { return p.flood_gauge.highest; }),
    press_row(F::flood_mark_step, "flood_gauge.graduation_marks", Q::marks, least_step, most_marks,
              [](PressProfile& p) -> double& { return p.flood_gauge.graduation; }),
    press_row(F::least_angle, "angles.least_deg", Q::angle, 0.0, steepest,
              [](PressProfile& p) -> double& { return p.angles.least; }),
    press_row(F::most_angle, "angles.most_deg", Q::angle, 0.0, steepest,
              [](PressProfile& p) -> double& { return p.angles.most; }),
    press_row(F::wings_flat_angle, "angles.wings_flat_deg", Q::angle, 0.0, steepest,
              [](PressProfile& p) -> double& { return p.angles.wings_flat; }),
    press_row(F::wing_length, "angles.wing_length_mm", Q::length, 0.0, most_distance,
              [](PressProfile& p) -> double& { return p.angles.wing_length; }),
    press_row(F::frame_clearance, "allowances.frame_clearance_mm", Q::length, 0.0, most_distance,
              [](PressProfile& p) -> double& { return p.allowances.frame_clearance; }),
    press_row(F::platen_inset, "allowances.platen_inset_mm", Q::length, 0.0, most_distance,
              [](PressProfile& p) -> double& { return p.allowances.platen_inset; }),
    press_row(F::least_bead, "allowances.least_bead_mm", Q::length, 0.0, most_distance,
              [](PressProfile& p) -> double& { return p.allowances.least_bead; }),
    press_row(F::stop_spread, "allowances.stop_spread.value_mm", Q::length, 0.0, most_spread,
              [](PressProfile& p) -> double& { return p.allowances.stop.value; }),
    press_row(F::screen_spread, "allowances.screen_spread.value_mm", Q::length, 0.0, most_spread,
              [](PressProfile& p) -> double& { return p.allowances.screen.value; }),
    press_row(F::image_spread, "allowances.image_spread.value_mm", Q::length, 0.0, most_spread,
              [](PressProfile& p) -> double& { return p.allowances.image.value; }),
    press_row(F::overtravel_spread, "allowances.overtravel_spread.value_mm", Q::length, 0.0,
              most_spread,
              [](PressProfile& p) -> double& { return p.allowances.overtravel.value; }),
    press_row(F::squeegee_bore, "cylinders.squeegee_bore_mm", Q::length, 0.0, 400.0,
              [](PressProfile& p) -> double& { return p.cylinders.squeegee_bore; }),
    press_row(F::squeegee_cylinders, "cylinders.squeegee_count", Q::count, 1.0, 8.0,
              [](PressProfile& p) -> double& { return p.cylinders.squeegee_count; }),
    press_row(F::flood_bore, "cylinders.flood_bore_mm", Q::length, 0.0, 400.0,
              [](PressProfile& p) -> double& { return p.cylinders.flood_bore; }),
    press_row(F::flood_cylinders, "cylinders.flood_count", Q::count, 1.0, 8.0,
              [](PressProfile& p) -> double& { return p.cylinders.flood_count; }),
    press_row(F::squeegee_zero_height, "edge_heights.squeegee_mm", Q::length, -most_distance,
              most_distance,
              [](PressProfile& p) -> double& { return p.edge_heights.squeegee; }),
    press_row(F::flood_zero_height, "edge_heights.flood_mm", Q::length, -most_distance,
              most_distance, [](PressProfile& p) -> double& { return p.edge_heights.flood; }),
    press_row(F::height_across, "height_points.across_mm", Q::length, 1.0, most_place,
              [](PressProfile& p) -> double& { return p.height_points.across; }),
    press_row(F::height_operator_y, "height_points.operator_y_mm", Q::length,
              -most_place, most_place,
              [](PressProfile& p) -> double& { return p.height_points.operator_y; }),
    press_row(F::height_machine_y, "height_points.machine_y_mm", Q::length, -most_place, most_place,
              [](PressProfile& p) -> double& { return p.height_points.machine_y; }),
    press_row(F::adjuster_backlash, "readings.backlash_turns", Q::turns, 0.0, most_backlash,
              [](PressProfile& p) -> double& { return p.readings.backlash; }),
    press_row(F::mark_spread, "readings.mark_spread.value_mm", Q::length, 0.0, most_spread,
              [](PressProfile& p) -> double& { return p.readings.mark.value; }),
    press_row(F::height_spread, "readings.height_spread.value_mm", Q::length, 0.0, most_spread,
              [](PressProfile& p) -> double& { return p.readings.height.value; }),
    press_row(F::ambient, "warming.ambient_c", Q::temperature, -40.0, 80.0,
              [](PressProfile& p) -> double& { return p.warming.ambient; }),
    press_row(F::warming_rate, "warming.per_second_c_per_s", Q::warming, 0.0, 50.0,
              [](PressProfile& p) -> double& { return p.warming.per_second; }),
    press_row(F::cooling_time, "warming.cooling_s", Q::time, 1.0, 100000.0,
              [](PressProfile& p) -> double& { return p.warming.cooling; }),
    press_row(F::index_time, "pace.index_s", Q::time, 0.1, 60.0,
              [](PressProfile& p) -> double& { return p.pace.index; }),
    press_row(F::lower_time, "pace.lower_s", Q::time, 0.0, 60.0,
              [](PressProfile& p) -> double& { return p.pace.lower; }),
    press_row(F::lift_time, "pace.lift_s", Q::time, 0.0, 60.0,
              [](PressProfile& p) -> double& { return p.pace.lift; }),
    press_row(F::jerk, "pace.jerk_mm_per_s3", Q::jerk, 0.0, 1e7,
              [](PressProfile& p) -> double& { return p.pace.jerk; }),
}};

constexpr bool in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (static_cast<std::size_t>(rows[i].info.field) != i) return false;
    }
    return true;
}
static_assert(in_order(), "the rows stand in the order of Field");

const Row& row_of(Field field) {
    const auto index = static_cast<std::size_t>(field);
    assert(index < rows.size());
    return rows[index];
}

}  // namespace

const FieldInfo& info_of(Field field) {
    return row_of(field).info;
}

double& number_of(Job& job, Head* head, Field field) {
    const Row& row = row_of(field);
    if (row.in_head != nullptr) {
        assert(head != nullptr);
        return row.in_head(*head);
    }
    return row.in_job != nullptr ? row.in_job(job) : row.in_press(job.press);
}

double number_of(const Job& job, const Head* head, Field field) {
    // Only read: one set of accessors serves both.
    return number_of(const_cast<Job&>(job), const_cast<Head*>(head), field);
}

double& number_of(PressProfile& press, Field field) {
    const Row& row = row_of(field);
    assert(row.in_press != nullptr);
    return row.in_press(press);
}

double file_factor(Quantity quantity) {
    return quantity == Quantity::angle ? rad_per_degree : 1.0;
}

bool accepts(Field field, double value) {
    const FieldInfo& info = info_of(field);
    if (info.quantity == Quantity::count && value != std::round(value)) return false;
    return std::isfinite(value) && value >= info.least && value <= info.most;
}

}  // namespace carriageway
