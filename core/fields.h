// Every number of a job that a person may set: its key, what it measures and between which limits.
//
// One table serves edits, files, the number pad and the tests, so that a limit is written once.
// Limits are what the program accepts at all, not what is good: assess() judges that.
#pragma once

#include "core/job.h"

namespace carriageway {

/// What a number measures; decides its unit on screen and in files.
enum class Quantity {
    length,       ///< mm
    thread,       ///< thread diameter, µm
    angle,        ///< rad (files and screen: degrees)
    speed,        ///< mm/s
    acceleration, ///< mm/s²
    time,         ///< s
    tension,      ///< N/cm
    mesh_count,   ///< threads per cm
    marks,        ///< marks of a gauge
    pressure,     ///< kPa
    share,        ///< of a whole, 0 to 1
    ratio,        ///< a plain number
    count,        ///< a whole number
    temperature,  ///< °C
    warming,      ///< °C per s
    volume,       ///< cm³
    turns,        ///< turns of a screw
    jerk,         ///< mm/s³
    hardness,     ///< Shore A
};

/// The numbers of a head, then those of the job, then those of its press.
enum class Field {
    // head
    screen_across,
    screen_along,
    screen_profile,
    mesh_count,
    thread_diameter,
    tension_along,
    tension_across,
    image_width,
    image_length,
    image_offset_x,
    image_offset_y,
    image_rotation,
    squeegee_width,
    squeegee_angle,
    squeegee_gauge,
    flood_width,
    flood_angle,
    flood_gauge,
    print_speed,
    flood_speed,
    operator_stop,
    machine_stop,
    height_left,
    height_right,
    height_machine,
    squeegee_pressure,
    flood_pressure,
    fabric_thickness,
    stencil,
    printed_share,
    finest_detail,
    print_strokes,
    squeegee_hardness,
    print_order,
    cool_after,
    screen_on,
    // job
    platen_width,
    platen_length,
    platen_offset_x,
    platen_offset_y,
    run_past,
    side_overlap,
    garment_compressed,
    registration_tolerance,
    pieces,
    flash_dwell,
    cycle,
    flash_temperature,
    dryer_temperature,
    dryer_time,
    load_time,
    unload_time,
    friction,
    mesh_stiffness,
    transfer_share,
    second_stroke_share,
    ink_in_screen,
    waste_share,
    // press
    arm_radius,
    ruler_zero,
    ruler_graduation,
    operator_sensor,
    machine_sensor,
    bar_length,
    sensor_reach,
    sensor_hysteresis,
    sensor_latency,
    separation_margin,
    measured_separation,
    separation_spread,
    range_lo,
    range_hi,
    acceleration,
    fastest,
    drop_time,
    drop_dwell,
    squeegee_pivot_offset,
    squeegee_pivot_height,
    squeegee_half_depth,
    flood_pivot_offset,
    flood_pivot_height,
    flood_half_depth,
    squeegee_mm_per_mark,
    squeegee_lowest_mark,
    squeegee_highest_mark,
    squeegee_mark_step,
    flood_mm_per_mark,
    flood_lowest_mark,
    flood_highest_mark,
    flood_mark_step,
    least_angle,
    most_angle,
    wings_flat_angle,
    wing_length,
    frame_clearance,
    platen_inset,
    least_bead,
    stop_spread,
    screen_spread,
    image_spread,
    overtravel_spread,
    squeegee_bore,
    squeegee_cylinders,
    flood_bore,
    flood_cylinders,
    squeegee_zero_height,
    flood_zero_height,
    height_across,
    height_operator_y,
    height_machine_y,
    adjuster_backlash,
    mark_spread,
    height_spread,
    ambient,
    warming_rate,
    cooling_time,
    index_time,
    lower_time,
    lift_time,
    jerk,
    count, ///< how many there are; not a field
};

/// Whether a field is a stop: read and typed as the arm's ruler shows it.
inline bool is_stop(Field field) {
    return field == Field::operator_stop || field == Field::machine_stop;
}

/// Whose number it is.
enum class FieldOwner { head, job, press };

/// One row of the table.
struct FieldInfo {
    Field field;
    const char* key;   ///< dotted path inside its owner in a job file, unit at its end
    FieldOwner owner;
    Quantity quantity;
    double least;      ///< smallest accepted value, in the core's unit
    double most;       ///< largest accepted value
};

/// The row of a field. `Field::count` and values outside the enum are not accepted (asserted).
const FieldInfo& info_of(Field field);

/// The number itself. `head` must be given for fields of a head and is ignored for others.
double& number_of(Job& job, Head* head, Field field);
double number_of(const Job& job, const Head* head, Field field);

/// The number of a press field alone.
double& number_of(PressProfile& press, Field field);

/// How far a stored number is from the one written in files and shown: degrees for angles; 1
/// otherwise. Value in file = value in core / factor.
double file_factor(Quantity quantity);

/// Whether a value may be stored in a field: finite, within the row's limits, whole for a count.
bool accepts(Field field, double value);

} // namespace carriageway
