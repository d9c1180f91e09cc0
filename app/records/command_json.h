// What the command line writes with --json: one object, keys with their units in their names, in
// an order that never changes, UTF-8, a line feed at the end. Numbers are rounded to a millionth.
// Positions are y along the arm from the centre of the frame, growing toward the machine.
//
// check: {
//   format            1
//   job, press        names
//   fit               whether every head is
//   fit_heads         how many are
//   heads: [{
//     station, colour, fit
//     both_sensors_on           the head goes nowhere: the next five are then null
//     travel_mm
//     squeegee_band_mm          [operator end, machine end]
//     flood_band_mm
//     operator_run_past_mm      of both bands beyond the image; negative: image missed
//     machine_run_past_mm
//     side_overlap_mm, covered_share (0 to 1), chance_missed (0 to 1)
//     separation_mm, least_separation_mm
//     stops, advised_stops: {   advised: null when no stops are good
//       operator_mm, machine_mm
//       operator_ruler, machine_ruler    what is read on the ruler, in ...
//       ruler_unit                       "mm" or "in"
//     }
//     print_stroke_s, flood_stroke_s
//     grown_covered_share       of the image grown by the run-past, 0 to 1
//     missed: [{kind, area_mm2, across_mm [left, right], along_mm [lo, hi]}]
//     margins: [{limit, end, left_mm, worst_case_mm, root_sum_square_mm}]   no end: the separation
//     findings: [{
//       severity      "stop", "mind" or "note"
//       kind, part, side          as in core/findings.h
//       value_UNIT, limit_UNIT    UNIT: mm, deg or mm_s; for a chance: value_share, limit_share
//       title, why, remedy, remedy_detail   in the language asked for; remedy may be empty
//       edit          what mends it, as in a job's history; null: a person must
//     }]
//     registration: {           only with rounds: how the last one lies, or the prints by platen
//       rounds          how many
//       by_platen       the last rounds are prints of several platens, and below is of all of them
//       tolerance_mm
//       verdict         as in register below, "no_answer" or "not_read"; by platen: null
//       error_max_mm, within_tolerance    null where the marks aren't read or give no answer
//       adjusters       what to turn, as in register's advice; by platen: none
//       signs           only by platen: as in register; null: too few prints, or unreadable ones
//     }
//   }]
//   levelling: {        only with height readings
//     refused           null, "not_finite" or "too_many_parts"
//     tolerance_mm
//     heads: [{known, operator_left_mm, operator_right_mm, machine_mm, out, surely_out, group,
//       station}]
//       known           "none" (the next five are null), "offset" (tilts aren't known) or
//                       "plane"
//       ..._mm          how high it lies there; negative: low. A head beside the others, each from
//                       its set heights
//       out             by more than the tolerance; surely: more readings would hardly change it
//       group           parts of different groups can't be compared
//       station         null: no longer on the press
//     platens           likewise beside the other platens, with platen for station
//     strays: [{station or null, platen, x_mm, y_mm, height_mm, above_others_mm}]
//     settled           false: readings contradict others, and which is wrong can't be told
//   }
//   heat: {             only with a flash unit
//     flash_units, ambient_c
//     steady_c          of platens as they come to the flash, once they no longer warm
//     steady_turn       from which turn of the table; null: not within a run
//     hottest_c         straight behind the flash then
//     warnings: [{kind "sticking", "dye_migration" or "poor_adhesion", limit_c}]
//   }
// }
// rate: see command_rate_report.h
// set: {format, job, output, fit, fit_heads, moved: [{station, colour, from, to}]}, from and to
//   like stops above.
// picture: {format, job, output, place, station or null, width_px, height_px}
// sheet: {format, job, output, pages (null: a table), replaced: [letters that can't be printed], fit}
// import: {format, imported: [{file, id, name}]}
// export: {format, job, id, output}
// list: {format, jobs: [{id, name, press, colours, heads, created, updated}]}, times in UTC
//   (RFC 3339).
// separation: {format, pictures: [{
//     file, width_px, height_px, width_mm, length_mm     of the whole picture
//     ink_across_mm [left, right], ink_along_mm [lo, hi]  from the picture's centre, its top along +
//     ink_area_mm2, printed_share (0 to 1, of the outline), specks, outline_mm: [[x, y]]
//   }], into: {job, station, output}}, into only where asked for. To a micrometre.
// register: {
//   format, press, station or null
// then of one print:
//   round             its number among the head's rounds, from 1
//   verdict           "within", "turn", "leave", "read_finer" or "no_adjusters"
//   within_tolerance, tolerance_mm
//   rotation_deg, rotation_deviation_deg    null for a single mark
//   x_mm, x_deviation_mm, y_mm, y_deviation_mm    deviation: standard deviation, here and below
//   error_rms_mm, error_max_mm, residual_rms_mm, residual_max_mm
//   growth_along, growth_across, growth_on_line, skew_rad: {value, deviation, stands_out} or null
//   likely_causes     ["drag", "off_contact", "tension", "film"], the likeliest first
//   advice: {
//     settled         nothing is to be turned
//     shift_only      the marks don't show the turn, so that only the shift is taken out ...
//     least_apart_mm  ... and two marks this far apart would show it; null otherwise
//     predicted_rms_mm, predicted_max_mm
//     rotation_not_reached_deg, move_not_reached_mm [x, y]    what no adjuster reaches
//     adjusters: [{name, travel_mm, turns_clockwise, turns_deviation, within_noise,
//       graduations_clockwise, moves_in_graduations [one or two], shortfall_turns}]
//   }
//   progress          "none", "converged", "improving", "stalled" or "diverging"
//   measured_adjusters: [{name, mm_per_turn_clockwise, deviation_mm, sign_wrong, differs}]
// or of prints by platen and turn:
//   within_tolerance, tolerance_mm, error_max_mm
//   head: {x_mm, x_error_mm, y_mm, y_error_mm}    error: standard error
//   platens: [{x_mm, x_error_mm, y_mm, y_error_mm, platen}], drift_a_turn like head
//   scatter_x_mm, scatter_y_mm
//   signs: [{kind "index_or_lock", "heat_or_drift" or "platen_off", platen or null}]
// }
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "app/records/console.h"
#include "app/records/utc_text.h"
#include "core/assess.h"

namespace carriageway {

inline constexpr int report_format = 1;

/// A number as reports have it: to a millionth, no "-0.0", null where it isn't finite.
nlohmann::ordered_json rounded(double value);

/// An object that starts with the format of reports.
nlohmann::ordered_json started_report();

/// What `check` says of an assessed job.
nlohmann::ordered_json check_report(const Console& console, const Job& job,
                                    const Assessment& assessment);

/// Both stops, as positions and as read on the ruler.
nlohmann::ordered_json stops_report(const Ruler& ruler, const Stops& stops);

/// Writes a report to standard output, or elsewhere.
void write_report(std::ostream& out, const nlohmann::ordered_json& report);

}  // namespace carriageway
