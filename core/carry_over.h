// An old job set up once more: on another press, or for a new run.
//
// What the print is stays: colours, screens, images, blades, inks, wishes, notes, garment, run
// plan, and the platen. What the press decides is worked out for it, so that at the print
// everything is as it was:
//
// - the heads keep their order. Each keeps its station if that is open and can hold a head;
//   otherwise it goes to the next that can. Heads behind it make room, and where the stations run
//   out at the end, it goes back as far as it must;
// - speeds stay up to the press's fastest, angles within its holders';
// - a gauge is set so that the edge stands as high over the platen as before, at its angle, to the
//   nearest graduation: marks = (height − height at zero − lift by the angle) / mm per mark;
// - the three heights of a screen are moved to where the press has its points, in the same plane;
// - the air is set so that the line load stays: the same thrust from other cylinders;
// - the stops are solved anew (assess.h), last, because all of that moves the bands.
//
// What was noted goes: the walk, the record, rounds of registration, heights read for levelling,
// and where screens are clamped. The old job as it was really set: give as_set() of it (walk.h).
#pragma once

#include <vector>

#include "core/job.h"

namespace carriageway {

/// Why a job can't be carried over.
enum class CarryRefusal {
    none,
    not_a_job,   ///< one that fault_of() doesn't accept
    not_a_press, ///< likewise
    too_few_stations,
};

/// What became of a number.
enum class CarriedHow {
    kept,
    moved,     ///< a head, to another station
    clamped,   ///< the press goes no farther
    converted, ///< another number for the same thing
    solved,    ///< a stop, anew
    cleared,   ///< meant the old press alone
    cannot,    ///< left as it was: no bore or plane is known, or the stops have no room
};

/// One number of one head.
struct Carried {
    HeadId head = 0;
    Field field{};        ///< Field::count: the head's station
    double before = 0.0;  ///< in the core's unit
    double after = 0.0;
    CarriedHow how = CarriedHow::kept;
    bool operator==(const Carried&) const = default;
};

struct CarryOver {
    CarryRefusal refusal = CarryRefusal::none; ///< unless none, the job is empty
    int missing = 0; ///< stations for heads that the press has too few of
    Job job;
    /// Head by head in the order of stations: its station, the speeds, angles, gauges, heights and
    /// air, and the stops; where its screen was clamped, if it was.
    std::vector<Carried> numbers;
};

/// Sets up an old job on a press. `uses` says what its stations are for, station 1 first; where it
/// is too short, the rest is open. fault_of() accepts the job.
CarryOver carry_over(const Job& old, const PressProfile& press,
                     const std::vector<StationUse>& uses);

struct StartAgain {
    bool as_really_set = false; ///< plan what was really set last time; false: what was planned
    bool keep_rounds = false;   ///< screens are clamped where they were; false: anew, so that
                              ///< their rounds of registration and their stations are gone
};

/// The same job for a new run on the same press: its walk and record are empty. fault_of() accepts
/// it if it accepts the old one.
Job start_again(const Job& old, const StartAgain& how = {});

} // namespace carriageway
