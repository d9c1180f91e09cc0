// How fast a press runs: the cycle from piece to piece, the station that sets it, and what a run
// takes.
//
//     cycle = index + time of the longest station
//     pieces an hour = 3600 / cycle · pieces an index;  dozens an hour = a twelfth of it
//
// Every station starts when the table stands, and the table turns on when the last of them is done.
// A head that floods while the table turns counts only with what outlasts the index (rate_steps.h).
//
// Times s.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/rate_steps.h"

namespace carriageway {

/// What is done at a station.
enum class StationKind {
    print,
    flash,
    load,   ///< with no station to unload: taken off and laid on here
    unload,
    cool,
    idle,
};

/// One station of a press, and what its time comes from.
struct StationWork {
    int station = 0; ///< the number on it; only handed through
    StationKind kind = StationKind::idle;
    double seconds = 0.0;  ///< without a print head, not negative
    double shortest = 0.0; ///< s that it could be brought down to (rate_worth.h)
    HeadPace head;         ///< of a print station
    bool operator==(const StationWork&) const = default;
};

/// All stations, in the order in which a platen passes them.
struct RatePlan {
    double index = 2.0;          ///< s the table turns, from standing to standing; not negative
    double shortest_index = 0.0; ///< s that it could be brought down to (rate_worth.h)
    int pieces_an_index = 1;     ///< finished with each index, at least 1
    std::vector<StationWork> stations;
    bool operator==(const RatePlan&) const = default;
};

/// Most stations of a plan, and most pieces an index. Ours.
inline constexpr std::size_t most_rate_stations = 64;
inline constexpr int most_pieces_an_index = 100;

/// Why a plan has no rate.
enum class RateFaultKind {
    no_station,
    too_many_stations, ///< value: how many
    index,             ///< negative or not finite; so below
    pieces_an_index,   ///< not 1 to most_pieces_an_index
    seconds,
    distance,
    speed,        ///< of print or flood: not positive or not finite
    acceleration, ///< likewise
    jerk,
    step_time,    ///< drop, dwell, lower or lift
    strokes,      ///< prints or floods not 0 to most_strokes
    stroke_time,  ///< a stroke with these numbers takes no finite time
    no_time,      ///< index and longest station take no time together, or none that is finite
};

struct RateFault {
    RateFaultKind kind = RateFaultKind::no_station;
    std::size_t place = 0; ///< of the station in the plan, for what is a station's
    double value = 0.0;    ///< the number that can't be
};

/// What is wrong with a plan, the first of it.
std::optional<RateFault> rate_fault(const RatePlan& plan);

/// Time of a station from the table's standing still. Wants a plan without a fault; so below.
double station_seconds(const StationWork& work, double index);

/// index + time of the longest station.
double cycle_time(const RatePlan& plan);

/// 3600 / cycle · pieces an index. A cycle that is not above 0: 0.
double pieces_an_hour(double cycle, int pieces_an_index);

/// A station within the cycle.
struct StationPace {
    int station = 0;
    StationKind kind = StationKind::idle;
    double seconds = 0.0; ///< from the table's standing still until it is done
    double idle = 0.0;    ///< waiting for the slowest one
    bool slowest = false;
    std::vector<RateStep> steps; ///< without the index and without the wait
};

/// Times that differ by less than this count as equal: rounding of sums, s.
inline constexpr double tie_slack = 1e-9;

/// A plan worked out.
struct Rate {
    std::optional<RateFault> fault; ///< then all numbers are 0 and all lists empty
    double index = 0.0;
    double longest = 0.0; ///< time of the longest station
    double cycle = 0.0;
    int pieces_an_index = 1;
    double pieces_an_hour = 0.0;
    double dozens_an_hour = 0.0;
    std::vector<StationPace> stations; ///< in the plan's order
    std::vector<std::size_t> slowest;  ///< places of the slowest station, or of all that tie; none
                                       ///< where no station takes any time
    std::size_t under_way = 0; ///< indexes from a piece's loading to its unloading
};
Rate rate_of(const RatePlan& plan);

/// The same into `reuse`, whose storage is used again.
void work_out_rate(const RatePlan& plan, Rate& reuse);

/// Indexes from loading to unloading: the longest way from a station that loads to the next that
/// unloads. A plan that lacks either: a whole turn, as many as there are stations.
std::size_t indexes_under_way(const RatePlan& plan);

/// What a run takes.
struct RunTime {
    double indexes = 0.0; ///< with a piece put on in each: pieces / pieces an index, rounded up
    /// indexes · cycle: the press is full already and stays full.
    double pieces_only = 0.0;
    /// (indexes + under_way) · cycle: the table starts empty and ends empty. From the start of the
    /// index that brings the first platen to the loader to the end of the cycle in which the last
    /// piece is taken off; every cycle is a full one, though some stations then have nothing to do.
    double with_filling = 0.0;
    double first_piece = 0.0; ///< to the end of the cycle in which the first piece is taken off
};

/// Time of a run of `pieces`. A rate with a fault, or pieces not above 0 or not finite: nothing.
std::optional<RunTime> run_time(const Rate& rate, double pieces);

} // namespace carriageway
