#include <algorithm>
#include <cmath>

#include "core/judge.h"
#include "core/motion.h"

namespace carriageway {
namespace {

void judge_separation(const Judged& judged) {
    const HeadAssessment& out = judged.out;
    const double least = out.least_separation;
    const double wanted = out.allowed.least_gap;
    if (out.both_on) {
        judged.add(Severity::stop, FindingKind::both_sensors_on, Part::sensors, Side::both,
                   out.separation, least, stops_remedy(judged));
    } else if (out.separation < wanted - least_difference) {
        judged.add(Severity::mind, FindingKind::separation_thin, Part::sensors, Side::both,
                   out.separation, wanted, stops_remedy(judged));
    }
}

/// Steps in which a speed is advised, mm/s. Ours.
constexpr double speed_step = 10.0;

/// A speed at which the carriage stops while its sensor still sees the bar.
double held_speed(const PressProfile& press, double longest) {
    const double speed =
        speed_for_overtravel(longest, press.sensors.latency, press.carriage.acceleration);
    const double fastest = std::min(speed, press.carriage.fastest);
    const double stepped = std::floor(fastest / speed_step) * speed_step;
    return stepped > 0.0 ? stepped : fastest;
}

void judge_overtravel(const Judged& judged, End end) {
    const PressProfile& press = judged.job.press;
    const StrokeGeometry& geometry = judged.out.geometry;
    const double overtravel =
        end == End::operator_side ? geometry.operator_overtravel : geometry.machine_overtravel;
    if (holds_position(press.sensors, overtravel)) return;
    const double longest = press.sensors.bar_length + 2.0 * press.sensors.reach;
    const bool print_arrives =
        (judged.head.print_stroke == Direction::toward_operator) == (end == End::operator_side);
    judged.add(Severity::stop, FindingKind::position_lost, Part::sensors, side_of(end), overtravel,
               longest,
               number_remedy(print_arrives ? Field::print_speed : Field::flood_speed,
                             held_speed(press, longest)));
}

/// One end of the stroke against what is there, by the lengths left there.
struct AtEnd {
    End end = End::operator_side;
    double platen = 0.0;            ///< from the squeegee's edge out to the platen's
    double frame = 0.0;             ///< from the outermost of edges and holders to the frame
    double range = 0.0;             ///< to the end of the carriage's range
    Part nearest = Part::squeegee;  ///< to the frame
};

AtEnd at_end(const Judged& judged, End end) {
    const HeadAssessment& out = judged.out;
    const Rect platen = rect_of(judged.job.platen);
    const Rect opening = opening_of(judged.head.screen);
    const Carriage& carriage = judged.job.press.carriage;
    const double edge = out.geometry.squeegee_edge;
    const auto& limits =
        end == End::operator_side ? out.allowed.operator_limits : out.allowed.machine_limits;
    const double squeegee = limits[static_cast<std::size_t>(LimitKind::frame_squeegee)].at;
    const double flood = limits[static_cast<std::size_t>(LimitKind::frame_flood)].at;
    if (end == End::operator_side) {
        const double c = out.ends.operator_end;
        return {end, c + edge - platen.lo, c + out.geometry.reach_lo - opening.lo,
                c - carriage.range_lo, squeegee >= flood ? Part::squeegee : Part::flood};
    }
    const double c = out.ends.machine_end;
    return {end, platen.hi - c - edge, opening.hi - c - out.geometry.reach_hi,
            carriage.range_hi - c, squeegee <= flood ? Part::squeegee : Part::flood};
}

void judge_end(const Judged& judged, const AtEnd& at) {
    const Allowances& allowances = judged.job.press.allowances;
    const Side side = side_of(at.end);
    const Remedy remedy = stop_remedy(judged, at.end);
    if (at.platen < -least_difference) {
        judged.add(Severity::stop, FindingKind::off_platen, Part::squeegee, side, -at.platen, 0.0,
                   remedy);
    } else if (at.platen < allowances.platen_inset - least_difference) {
        judged.add(Severity::mind, FindingKind::near_platen_edge, Part::squeegee, side, at.platen,
                   allowances.platen_inset, remedy);
    }
    if (at.frame < allowances.frame_clearance - least_difference) {
        judged.add(Severity::stop, FindingKind::meets_frame, at.nearest, side, at.frame,
                   allowances.frame_clearance, remedy);
    }
    if (at.range < -least_difference) {
        judged.add(Severity::stop, FindingKind::beyond_range, Part::stops, side, -at.range, 0.0,
                   remedy);
    }
}

void judge_length(const Judged& judged) {
    const HeadAssessment& out = judged.out;
    if (!out.shortest) return;
    const bool wrong = std::any_of(out.findings.begin(), out.findings.end(), [](const Finding& f) {
        return f.severity == Severity::stop && f.remedy.kind == Remedy::Kind::stops;
    });
    const double beyond = out.separation - separation(*out.shortest);
    if (!wrong && beyond > stroke_to_mind) {
        judged.add(Severity::mind, FindingKind::stroke_too_long, Part::stops, Side::both, beyond,
                   0.0, stops_remedy(judged));
    }
}

}  // namespace

void judge_stops(const Judged& judged) {
    judge_separation(judged);
    for (const End end : {End::operator_side, End::machine_side}) {
        judge_overtravel(judged, end);
        judge_end(judged, at_end(judged, end));
    }
    if (judged.out.conflict) {
        judged.add(Severity::stop, FindingKind::no_stops_fit, Part::stops,
                   judged.out.conflict->separation ? Side::both : side_of(judged.out.conflict->end),
                   judged.out.conflict->by, 0.0);
    }
    judge_length(judged);
}

}  // namespace carriageway
