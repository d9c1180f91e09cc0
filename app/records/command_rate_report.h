// What `rate` writes with --json (command_json.h): kinds and numbers, no sentences.
//
// rate: {
//   format, job, press
//   runs              whether there is a rate; false: what follows `handling` is left out
//   still_heads: [{station, colour, both_sensors_on}]    heads that move nothing; both_sensors_on
//                     false: their stops leave no travel
//   handling          "own_stations", "open_station" (none is set to load or unload: the lowest
//                     open one is taken) or "nowhere"
//   cycle_s, index_s, pieces_an_index, pieces_an_hour, dozens_an_hour
//   slowest_stations  more than one where they take the same time
//   stations: [{
//     station
//     kind            "print", "flash", "load", "load_and_unload", "unload", "cool" or "idle"
//     colour          of a head; else null
//     seconds         from the table's standing still until it is done
//     waits_s         for the slowest one
//     slowest
//     steps: [{kind, start_s, length_s, stroke}]    start: from the table's start to turn; kind as
//                     in core/rate_steps.h; stroke: 0 where none
//   }]
//   worth: [{
//     station         null: of the index
//     lever           "stroke_mm", "print_speed_mm_per_s", "flood_speed_mm_per_s", "drop_s",
//                     "dwell_s", "lower_s", "lift_s", "seconds" or "index_s": the unit of what
//                     follows
//     verdict         "gains", "another_slower", "at_its_end" or "no_effect"
//     now, end, step, until                as in core/rate_worth.h
//     per_unit                             pieces an hour
//     time_saved_s_per_unit
//     gain_pieces_an_hour                  of the step
//     most_gain_pieces_an_hour             of `until`
//     held_by_stations, next_stations
//   }]
//   shortest_strokes: {gain_pieces_an_hour, cycle_s, slowest_stations}
//   range: {fastest, likely_fastest, likely_slowest, slowest: {cycle_s, pieces_an_hour,
//     dozens_an_hour}, may_be_slowest_stations, handling_share, machine_share}, or null
//   run: {pieces, indexes, pieces_only_s, with_filling_s, first_piece_s}, or null
//   heat_cycle_s      that the job's heat goes by
//   heat_cycle_edit   what puts the rate's cycle there; null where they agree
// }
#pragma once

#include <nlohmann/json.hpp>

#include "core/job_pace.h"

namespace carriageway {

/// The report on a job's rate.
nlohmann::ordered_json rate_report(const Job& job, const JobPace& pace);

} // namespace carriageway
