// What a job says for or against a cause of a fault: named conditions, each seen, not seen, or not
// known, with the value and the limit that it was held against.
//
// Only what the job holds, what assess() worked out of it, and what was read on the press speaks.
// Where nobody noted or read a thing it is not known, and says nothing either way.
#pragma once

#include <optional>
#include <string_view>

#include "core/assess.h"

namespace carriageway {

/// Conditions of a head, in the job's own numbers. What value and limit mean stands beside each;
/// their quantity is that of quantity_of().
enum class Evidence {
    both_sensors_on,    ///< separation of the bars; the least that runs
    separation_thin,    ///< separation; the least and its margin
    position_lost,      ///< overtravel; what the bar holds
    unprinted,          ///< mm of image that the squeegee misses; 0
    starved,            ///< mm that it passes without fresh ink; 0
    heavy,              ///< mm past the flood's end; 0
    run_past_short,     ///< the lesser run-past of both bands; the wish
    side_overlap_short, ///< the lesser overlap across; the wish
    bead_narrow,        ///< between the edges; the least bead
    flood_narrower,     ///< flood bar's width; squeegee's width
    flood_unwinged,     ///< no number: the flood bar has no wings
    wings_dig_in,       ///< flood's angle; the one at which wings lie flat
    flood_high,         ///< mm of air under its edge; 0
    flood_low,          ///< mm that its edge reaches into the garment; 0
    flood_fast,         ///< flood speed; `share_fast` of the press's fastest
    flood_pressure_high, ///< kPa; most that is usual
    squeegee_high,      ///< mm that its edge stays above the garment; 0
    blade_off_platen,   ///< mm that blade or path are beyond what stays on the platen; 0
    angle_unusual,      ///< squeegee's angle; the nearer of the profile's limits
    blade_soft,         ///< Shore A; least_hardness. Not known where not noted
    blade_hard,         ///< Shore A; most_hardness
    edge_rounded,       ///< no number: the blade isn't cut square. Not known where not noted
    print_fast,         ///< print speed; `share_fast` of the press's fastest
    pressure_low,       ///< squeegee's, kPa; least that is usual. Not on a height stop
    pressure_high,      ///< squeegee's, kPa; most that is usual. Not on a height stop
    mesh_not_held,      ///< line load; what holds the mesh down, N/cm. Not known on a height stop
    gap_large,          ///< in the image's middle; most that is advised
    gap_small,          ///< likewise; least that is advised
    heights_uneven,     ///< mm that one side is higher; what is tolerated
    level_out,          ///< mm that head or platen lies off, of what was read; what is tolerated
    tension_low,        ///< lower tension, N/cm; what is wanted
    tension_apart,      ///< tension less the base head's; what is advised
    length_differs,     ///< mm longer than the base head's print; tolerance
    film_thin,          ///< wet film of one stroke, µm; `thin_film`
    detail_fine,        ///< finest line; what the mesh carries. Not known where not noted
    head_off,           ///< largest error of the marks read last; tolerance
    screw_answers_otherwise, ///< mm a turn as read; as the profile has it
    play_large,         ///< mm of play in a screw; half the tolerance
    index_scatters,     ///< scatter across, mm; along. Needs marks of several platens and turns
    prints_drift,       ///< mm a turn, x or y; what chance makes of it. Likewise
    platen_off,         ///< mm that one platen stands off; 0. Likewise
    platen_hot,         ///< °C straight behind the flash; from where garments stick
    dwell_short,        ///< s under the flash; least that is usual. Not known without a flash unit
    dwell_long,         ///< s; most that is usual
    prints_on_wet,      ///< heads printed before it since the last flash; 0
    flash_missing,      ///< no number: it wants a flash after it, and the next head comes first
    cure_low,           ///< dryer, °C; from where ink cures. Not known where not noted
    cure_high,          ///< dryer, °C; most for curing
    air_noted,          ///< minutes stood still for air; 0. Never speaks against: not known instead
    set_otherwise,      ///< numbers noted as set otherwise than planned; 0. Known where any is noted
    left_unsecured,     ///< no number: ticks were given, none for holding the screens by the night
    count,              ///< how many there are; not a condition
};
inline constexpr int evidence_kinds = static_cast<int>(Evidence::count);

/// Share of the press's fastest above which a stroke counts as fast. Ours.
inline constexpr double share_fast = 0.75;

/// Hardness that blades are sold in as soft to hard, Shore A (makers' data sheets).
inline constexpr double least_hardness = 60.0;
inline constexpr double most_hardness = 85.0;

/// Wet film of one stroke, stencil included, below which an opaque print is hard to get, µm. Ours.
inline constexpr double thin_film = 30.0;

/// Tension below which a screen is slack enough to speak, N/cm: judge_contact's note. Ours.
inline constexpr double slack_tension = 20.0;

enum class Sight { not_known, not_seen, seen };

/// One condition looked up in a job.
struct Sighting {
    Sight sight = Sight::not_known;
    double value = 0.0; ///< as said beside the condition; 0 where not known
    double limit = 0.0;
    HeadId head = 0;    ///< where it was seen, or was nearest; 0: not of one head
    int platen = 0;     ///< of platen_off, and of level_out where it is a platen
};

/// What value and limit measure; nothing for conditions without a number.
std::optional<Quantity> quantity_of(Evidence evidence);

/// The name of a condition in data: that of the enum. `Evidence::count` and beyond: empty.
const char* name_of(Evidence evidence);

/// The condition with this name.
std::optional<Evidence> evidence_named(std::string_view name);

/// Looks one condition up under one head; `head` 0 under any: the one where it is worst. A head
/// that isn't there: not known. `assessment` must be of the job. Total on any job that fault_of()
/// accepts.
Sighting sighting_of(Evidence evidence, const Job& job, const Assessment& assessment, HeadId head);

} // namespace carriageway
