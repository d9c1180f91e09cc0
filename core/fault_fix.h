// What the program itself can do about a cause: an edit of the job, worked out of the job.
#pragma once

#include <optional>
#include <string_view>

#include "core/assess.h"

namespace carriageway {

/// Kinds of mending. Each but `by_hand` sets numbers to what is advised.
enum class Fix {
    by_hand,         ///< nothing in the job mends it: the text says what to do
    stops_advised,   ///< both stops to the advised places
    wings_flat,      ///< flood's angle to where its wings lie flat
    angle_usual,     ///< squeegee's angle to the nearer of the profile's limits
    heights_level,   ///< left and right height to their mean
    gap_advised,     ///< all heights alike, to the nearer end of what is advised
    flood_reaches,   ///< flood's gauge until its edge just touches the mesh
    pressure_usual,  ///< squeegee's air to the nearer end of what is usual
    pressure_holds,  ///< squeegee's air up to what is usual and a tenth over what holds the mesh,
                     ///< and its gauge down until its edge reaches the garment
    flood_pressure_usual, ///< flood's air likewise to the nearer end
    print_slower,    ///< print speed to `share_fast` of the press's fastest
    speed_holds,     ///< the speed at which the carriage stops while its sensor sees the bar
    blade_on_platen, ///< blade's width to the widest that stays there, stops to the advised ones
    flood_wider,     ///< flood bar's width to the squeegee's
    dwell_usual,     ///< flash dwell to the nearer end of what is usual
    dwell_for_heat,  ///< flash dwell to what suits a warm platen
    cure_usual,      ///< dryer's temperature to the nearer end of where ink cures
    count,           ///< how many there are; not a fix
};

/// The name of a fix in data: that of the enum. `Fix::count` and beyond: empty.
const char* name_of(Fix fix);

/// The fix with this name.
std::optional<Fix> fix_named(std::string_view name);

/// The edit, ready for apply(): nothing where there is none, where the job stands so already, or
/// where a number would not be accepted. `head` must be one of the job's but for those of the run.
/// `assessment` must be of the job.
std::optional<Edit> fix_edit(Fix fix, const Job& job, const Assessment& assessment, HeadId head);

} // namespace carriageway
