// One head worked out a second time, straight from the formulas of the model, to compare the core
// with. Nothing here calls the core: only its plain values are read.
//
//   e_s = s_0 - d_s L_s sin(alpha_s)    e_f = f_0 - d_f L_f sin(alpha_f)    d_f = -d_s
//   s_0 = -d_s * squeegee pivot offset  f_0 = +d_s * flood pivot offset
//   c_o = p_o + r - a_o - o_o           c_m = p_m - r - a_m + o_m
//   o = v t + v^2 / (2 a), v being the speed of the stroke that arrives at that end
#pragma once

#include <utility>

#include "core/job.h"

namespace carriageway::reference {

/// A strip along the arm as it depends on the stops: from p_o + lo to p_m + hi.
struct Strip {
    double lo = 0.0;
    double hi = 0.0;
};

/// The constants of one head, mm. Lengths that depend on the stops are given without them.
struct ReferenceHead {
    double squeegee_edge = 0.0;
    double flood_edge = 0.0;
    double print_loss = 0.0;
    double flood_loss = 0.0;
    double operator_overtravel = 0.0;
    double machine_overtravel = 0.0;
    Strip rest;     ///< of the carriage reference
    Strip squeegee; ///< band
    Strip flood;    ///< band
    Strip squeegee_reach; ///< of the squeegee's edge and holder, at rest
    Strip flood_reach;    ///< of the flood bar's edge and holder, at rest
    double latest_band_lo = 0.0;   ///< where both bands have begun, less p_o
    double earliest_band_hi = 0.0; ///< where one of them ends, less p_m
    double least_separation = 0.0;
};

/// Works a head out.
ReferenceHead reference_head(const Job& job, const Head& head);

/// Corners of the image as it lies on the screen: turned, then moved.
Outline placed_outline(const Image& image);

/// Lowest and highest y of the placed image.
std::pair<double, double> placed_span(const Image& image);

/// What the wishes of a job ask of the two stops, every limit by itself:
/// p_o <= each of `operator_at_most`, p_o >= each of `operator_at_least`, and so on. The platen
/// counts for the whole path of the squeegee's edge, also where the blade is still dropping, as
/// the core has it (limits.cpp says why).
struct StopLimits {
    double operator_at_most[2];  ///< squeegee, flood: past the image by the run-past
    double operator_at_least[4]; ///< platen, frame (squeegee), frame (flood), range
    double machine_at_least[2];
    double machine_at_most[4];
    double gap_at_least = 0.0; ///< p_m - p_o
};
StopLimits stop_limits(const Job& job, const Head& head);

/// How far two limits are from leaving room: the largest amount by which a lower limit lies above
/// an upper one, mm. Not positive: there is room.
double lack_of_room(const StopLimits& limits);

} // namespace carriageway::reference
