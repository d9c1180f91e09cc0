// What it is worth in pieces an hour to make one thing of a press faster: a mm less stroke at a
// head, a second less under the flash, a quicker index.
//
// Only the slowest station sets the cycle: anywhere else, and where two are equally slow, a change
// is worth nothing, and the stations that keep it so are named. Where it is worth something, it is
// so until another station becomes the slowest, or until the thing can't be made any faster.
//
// All by working the cycle out anew; the worth of the next unit also as a derivative:
// 3600·pieces an index / cycle² · (s that a unit takes off the cycle).
#pragma once

#include "core/rate.h"

namespace carriageway {

/// What can be changed. Speeds are raised, everything else is lessened.
enum class Lever {
    stroke,      ///< travel of a head's carriage, mm
    print_speed, ///< mm/s
    flood_speed,
    drop,        ///< times of a head, s
    dwell,
    lower,
    lift,
    seconds, ///< time of a station without a head, s
    index,   ///< of the table, s
};

/// The changes that are tried. Above 0; others are taken as the defaults, which are ours.
struct WorthSteps {
    double distance = 1.0; ///< mm
    double speed = 10.0;   ///< mm/s
    double time = 1.0;     ///< s
};

/// What a change comes to.
enum class WorthVerdict {
    gains,
    another_slower, ///< `held_by` says which
    at_its_end,     ///< it stands at its shortest (or fastest) already
    no_effect,      ///< the station takes no less time for it: the speed isn't reached on so short
                    ///< a stroke, or the flood is done within the index; for the index, a flood
                    ///< that outlasts it (of the stations in `held_by`) takes as long anyway
};

struct Worth {
    Lever lever = Lever::index;
    std::size_t place = 0; ///< of the station in the plan; of the index: 0
    WorthVerdict verdict = WorthVerdict::another_slower;
    double now = 0.0;  ///< what it is set to
    double end = 0.0;  ///< the shortest it could be; of a speed, the fastest that has any effect
    double step = 0.0; ///< the change tried, with its sign: less than asked for where `end` is
                       ///< nearer, 0 at the end
    double time_saved = 0.0; ///< s that the next mm, mm/s or s takes off the station's own time (of
                             ///< the index: off the cycle), whether or not that is worth anything
    double per_unit = 0.0;   ///< pieces an hour that the next mm, mm/s or s is worth
    double gain = 0.0; ///< pieces an hour that the whole step is worth; infinite, as most_gain may
                       ///< be, where the cycle then took no time
    /// The change, with its sign, from which on more of it is worth nothing; 0 without a gain.
    double until = 0.0;
    double most_gain = 0.0; ///< pieces an hour that a change of `until` is worth
    /// Places of the other stations that keep the worth at nothing, rising; empty where it gains.
    std::vector<std::size_t> held_by;
    /// Places of the stations that are the slowest from `until` on (of the index: whose flood then
    /// outlasts it), rising. Empty where the lever comes to its end first.
    std::vector<std::size_t> next;
};

/// The worth of each lever that the plan's stations have, station by station and then the index.
/// Numbers that are 0 already are left out, and heads without strokes. A plan with a fault, or
/// whose `shortest` or `fastest` is negative or not finite: empty.
std::vector<Worth> rate_worth(const RatePlan& plan, const WorthSteps& steps = {});

/// What it is worth to do all heads' strokes at their shortest at once, which may gain where no
/// single head does.
struct JointWorth {
    double gain = 0.0; ///< pieces an hour
    double cycle = 0.0; ///< s, then
    std::vector<std::size_t> slowest; ///< places of the slowest stations then
};
JointWorth worth_of_shortest_strokes(const RatePlan& plan);

} // namespace carriageway
