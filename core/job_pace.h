// How fast a job runs: its own numbers put into the rate of rate.h.
//
// Stations count from 1 in the way that a platen passes them, so the place of station n in the plan
// is n − 1. A station with a head prints; any other does what it is set to:
//
// - A head runs its real travel, between the ends that its stops and overtravels give, with one
//   flood and one print for each print stroke of a piece. Before each of them the carriage stands
//   for the profile's drop dwell; its strokes have no dwell after them.
// - A flash takes the job's flash dwell, a station to load or unload the time of the people there.
//   Where only one of the two is set, both are done there. Where neither is, both are counted at
//   the open station with the lowest number (ours), and it is said; without one, nowhere.
// - A station to cool, and an open one, takes no time.
//
// A head with both sensors on, or without travel, moves nothing: then there is no rate.
//
// Lengths mm, times s.
#pragma once

#include <optional>
#include <vector>

#include "core/assess.h"
#include "core/rate.h"
#include "core/rate_range.h"
#include "core/rate_worth.h"

namespace carriageway {

/// The changes whose worth is told. Ours.
inline constexpr WorthSteps pace_steps{10.0, 100.0, 1.0};

/// How far times may be off, as a share of them either way, where nobody measures. Ours.
inline constexpr double handling_share = 0.2; ///< of loading and unloading: people
inline constexpr double machine_share = 0.05; ///< of the index, lowering and lifting

/// A head that moves nothing.
struct StillHead {
    HeadId head = 0;
    int station = 0;
    bool both_on = true; ///< both sensors; false: its stops leave no travel
};

/// Where garments are laid on and taken off.
enum class HandlingAt {
    own_stations, ///< that are set to load or unload
    open_station, ///< none is: the lowest open one is taken
    nowhere,      ///< and there is no open one: it isn't counted
};

/// A job's rate.
struct JobPace {
    std::vector<StillHead> still; ///< with any, there is no rate: what follows `plan` is empty
    HandlingAt handling = HandlingAt::own_stations;
    int handling_station = 0; ///< the open one that is taken; else 0
    RatePlan plan;
    std::vector<Spread> spreads; ///< s, one a station: see spreads_of()
    Rate rate;
    std::optional<RateRange> range;
    std::vector<Worth> worth;    ///< with pace_steps
    JointWorth joint;            ///< of all strokes at their shortest
    std::optional<RunTime> run;  ///< of the run's pieces
    bool runs() const { return still.empty() && !rate.fault && rate.cycle > 0.0; }
};

/// The stations of a job; `assessment` must be of it. Heads that are still have no travel.
RatePlan rate_plan(const Job& job, const Assessment& assessment);

/// How far each station's time may be off, s either way: people by handling_share, a head's lowering
/// and lifting by machine_share and its travel by the press's spreads of two stops and two
/// overtravels, all at their worst at once; a flash keeps its dwell.
std::vector<Spread> spreads_of(const Job& job, const RatePlan& plan);

/// Whether a garment is taken off where the next one is laid on: nowhere else.
bool handled_together(const RatePlan& plan);

/// A job worked out. A job that fault_of() refuses: a rate with a fault, or none.
JobPace job_pace(const Job& job, const Assessment& assessment);

/// The worth of one lever of the station at `place`; of the index, any place. Nothing where the
/// station doesn't have it: nullptr.
const Worth* worth_of(const JobPace& pace, std::size_t place, Lever lever);

/// Cycles that differ by less than this are written alike, s.
inline constexpr double cycle_shown = 0.05;

/// Whether the cycle that the job's heat goes by differs from the rate's as it is written.
bool cycle_differs(const Job& job, const JobPace& pace);

/// The edit that puts the rate's cycle, to a hundredth of a second, where the job's heat goes by
/// it. Nothing where they don't differ, or where the field doesn't take it.
std::optional<Edit> take_cycle(const Job& job, const JobPace& pace);

} // namespace carriageway
