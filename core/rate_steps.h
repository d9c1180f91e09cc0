// The order of work at a print head within one cycle, and how long it takes.
//
// The table turns on (index), the head comes down, and the carriage runs to and fro: each stroke
// one way is a flood or an empty one, each stroke back a print or an empty one. Before a blade
// works, the carriage waits while it comes down; after each stroke it may stand for a dwell. Then
// the head lifts. With print and flood strokes in equal number none is empty:
//
//     index, lower, drop, flood, dwell, drop, print, dwell, (again for each further pair), lift
//
// More prints than floods: the carriage goes back empty before each further print. More floods than
// prints: the first ones are each followed by an empty way back.
//
// A press that floods while its table turns does the first flood stroke over the lifted screen,
// from the moment that the table starts; only what of it outlasts the index counts, and the head
// comes down when it is done (ours: some presses may come down meanwhile).
//
// Distances mm, times s, speeds mm/s. Time 0 is when the table starts to turn.
#pragma once

#include <span>
#include <vector>

#include "core/jerk_motion.h"

namespace carriageway {

/// What a print head's time depends on. An empty stroke runs at the speed of its way.
struct HeadPace {
    double distance = 0.0;    ///< travel of the carriage, not negative; 0: it stands
    double print_speed = 0.0; ///< above 0
    double flood_speed = 0.0; ///< above 0
    double acceleration = 0.0; ///< above 0
    double jerk = 0.0;        ///< 0: not limited
    double drop = 0.0;        ///< s the carriage waits for a blade before each flood and print
    double dwell = 0.0;       ///< s it stands after each stroke
    double lower = 0.0;       ///< s for the head to come down
    double lift = 0.0;        ///< s until the table may turn
    int prints = 1;           ///< strokes a piece
    int floods = 1;
    bool floods_while_indexing = false;
    double shortest = 0.0; ///< the travel that it could be brought down to (rate_worth.h)
    double fastest = 0.0;  ///< highest speed that can be set (likewise); 0: not known
    bool operator==(const HeadPace&) const = default;
};

/// Most print, and most flood, strokes a piece. Ours.
inline constexpr int most_strokes = 20;

/// The limits of a stroke to print (or back empty from a flood), and of one to flood.
StrokeLimits print_limits(const HeadPace& pace);
StrokeLimits flood_limits(const HeadPace& pace);

/// What happens at a station. All but the first and the last are work.
enum class StepKind {
    index, ///< the table turns
    lower, drop, flood, print,
    empty, ///< a stroke with both blades up
    dwell, lift, flash, load, unload, cool,
    stay,  ///< a stay that a station asks for though nothing is done there
    wait,  ///< done, and waiting for the slowest station
};

/// A stretch of a station's cycle.
struct RateStep {
    StepKind kind = StepKind::wait;
    double start = 0.0;
    double length = 0.0; ///< above 0
    int stroke = 0; ///< number of the stroke, or of the one that a drop or dwell goes with, from 1;
                    ///< odd ones go the flood's way, even ones the print's. 0: none
    double end() const { return start + length; }
    bool operator==(const RateStep&) const = default;
};

// A head whose numbers are not within the bounds said beside them is to be refused first (rate.h):
// below, its times mean nothing. Strokes count from 0 to most_strokes. A head without strokes stays
// up: no time, no steps.

/// Time from the table's standing still to the head's being up again.
double head_seconds(const HeadPace& pace, double index);

/// Time that the head is busy from the table's start to turn with a flood done meanwhile; 0 where
/// there is none.
double flood_in_index(const HeadPace& pace);

/// The head's work in the order of its starts, without steps of no length and without the index;
/// written into `out`, whose storage is used again.
void head_steps(const HeadPace& pace, double index, std::vector<RateStep>& out);

/// How much each number adds to head_seconds(): by s, mm or mm/s. Where the flood just fills the
/// index, of a faster head.
struct HeadSlope {
    double distance = 0.0;    ///< s per mm
    double print_speed = 0.0; ///< s per mm/s, not positive
    double flood_speed = 0.0;
    double drop = 0.0;        ///< s per s: how often it happens
    double dwell = 0.0;
    double lower = 0.0;
    double lift = 0.0;
};
HeadSlope head_slope(const HeadPace& pace, double index);

/// Where the carriage is in its cycle.
struct CarriageMoment {
    double place = 0.0; ///< mm from the end where floods start, 0 to `distance`
    double speed = 0.0; ///< toward the end where prints start; negative while it prints
    StepKind doing = StepKind::wait;
};

/// The moment of a head with these steps at `time` from the table's start to turn; between its
/// steps it waits, and before the first of them `doing` is the index. For drawing.
CarriageMoment carriage_moment(const HeadPace& pace, std::span<const RateStep> steps, double time);

} // namespace carriageway
