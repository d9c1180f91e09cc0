// What assess() has to say about a head, as kinds and numbers. Words come from the catalogue.
#pragma once

#include "core/edit.h"
#include "core/limits.h"

namespace carriageway {

enum class Severity {
    stop, ///< it won't run, can damage something, or leaves image missed
    mind, ///< slow, or a thin margin
    note,
};

enum class FindingKind {
    both_sensors_on,     ///< value: separation; limit: least separation
    position_lost,       ///< value: overtravel; limit: what the bar holds
    unprinted,           ///< value: mm missed along the arm (or across, at a side)
    starved,             ///< value: likewise, of what the squeegee passes
    heavy,               ///< value: likewise
    off_platen,          ///< value: mm the squeegee's path runs off the platen; limit: 0
    near_platen_edge,    ///< value: mm left inside the platen; limit: the inset
    meets_frame,         ///< value: clearance left to the frame, mm; limit: the clearance wanted
    beyond_range,        ///< value: mm beyond the carriage's range
    bead_too_narrow,     ///< value: mm between the edges; limit: the least bead; a stop from 0
    wings_dig_in,        ///< value: the flood's angle; limit: the angle at which wings lie flat
    angle_unusual,       ///< value: an angle; limit: the nearer of the profile's limits
    blade_too_narrow,    ///< value: overlap left at the worse side; limit: the wish
    blade_off_platen,    ///< value: blade width; limit: widest that stays on the platen
    flood_narrower,      ///< value: flood width; limit: squeegee width
    side_meets_frame,    ///< value: clearance left across; limit: the clearance
    image_outside_mesh,  ///< value: mm of image beyond the opening
    no_stops_fit,        ///< value: mm missing; see HeadAssessment::conflict and change
    run_past_short,      ///< value: run-past left; limit: the wish
    separation_thin,     ///< value: separation; limit: least separation plus margin
    stroke_too_long,     ///< value: travel beyond the shortest good stroke, mm; limit: 0
    miss_likely,         ///< value: chance that image is missed; limit: chance_to_mind
    speed_beyond_press,  ///< value: a speed; limit: the press's fastest
    squeegee_high,       ///< value: mm that its edge stays above the garment
    flood_high,          ///< value: mm of air between its edge and the mesh
    flood_low,           ///< value: mm that its edge reaches into the garment
    screen_on_garment,   ///< value: the least gap over the garment, mm, not above 0
    heights_uneven,      ///< value: mm that one side is higher, at `side`; limit: what is tolerated
    gap_unusual,         ///< value: the gap in the image's middle, mm; limit: the advice's nearer end
    mesh_not_held,       ///< value: line load; limit: line force needed, both N/cm
    pressure_unusual,    ///< value: kPa; limit: the nearer end of what is usual
    tension_low,         ///< value: the lower of the two tensions, N/cm; limit: what is wanted
    tension_apart,       ///< value: tension less the base head's, N/cm; limit: what is advised
    detail_too_fine,     ///< value: the finest line, mm; limit: what the mesh carries; a mind below
                         ///< what it carries at all
    length_differs,      ///< value: mm longer than the base head's print; limit: the tolerance
};

/// What part of a head a finding is about.
enum class Part { stops, squeegee, flood, image, screen, platen, sensors };

/// Which side of a head: along the arm, or across it.
enum class Side { operator_side, machine_side, left, right, both };

/// A remedy that the program can carry out: no memory of its own, so that assessing allocates
/// nothing.
struct Remedy {
    enum class Kind { none, stops, number } kind = Kind::none;
    Stops stops;                ///< for stops: where both should stand
    Field field = Field::count; ///< for number
    double value = 0.0;         ///< for number: the new value
};

struct Finding {
    Severity severity = Severity::note;
    FindingKind kind = FindingKind::both_sensors_on;
    HeadId head = 0;
    Part part = Part::stops;
    Side side = Side::both;
    double value = 0.0; ///< as said beside the kind
    double limit = 0.0;
    Remedy remedy;
};

/// The edit that a finding's remedy stands for; nothing when it has none.
std::optional<Edit> remedy_edit(const Finding& finding);

/// A chance of missed image from which a finding is raised: one shirt in a thousand. Ours.
inline constexpr double chance_to_mind = 1e-3;

/// Travel beyond the shortest good stroke that is worth a word, mm. Ours: below it a person would
/// not trouble to loosen the bars.
inline constexpr double stroke_to_mind = 20.0;

} // namespace carriageway
