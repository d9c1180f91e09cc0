#include "app/records/command_register_report.h"

#include <algorithm>
#include <cmath>

#include "app/records/command_json.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

const char* name_of(LikelyCause cause) {
    switch (cause) {
    case LikelyCause::drag: return "drag";
    case LikelyCause::off_contact: return "off_contact";
    case LikelyCause::tension: return "tension";
    case LikelyCause::film: return "film";
    }
    return "";
}

const char* name_of(Progress progress) {
    switch (progress) {
    case Progress::none: return "none";
    case Progress::converged: return "converged";
    case Progress::improving: return "improving";
    case Progress::stalled: return "stalled";
    case Progress::diverging: return "diverging";
    }
    return "";
}

const char* name_of(ScatterCause cause) {
    switch (cause) {
    case ScatterCause::index_or_lock: return "index_or_lock";
    case ScatterCause::heat_or_drift: return "heat_or_drift";
    case ScatterCause::platen_off: return "platen_off";
    }
    return "";
}

Json screw_report(const ScrewAdvice& screw, const std::string& name) {
    Json one;
    one["name"] = name;
    one["travel_mm"] = rounded(screw.travel);
    one["turns_clockwise"] = rounded(screw.turns);
    one["turns_deviation"] = rounded(screw.deviation);
    one["within_noise"] = screw.within_noise;
    one["graduations_clockwise"] = screw.graduations;
    Json moves = Json::array();
    for (int i = 0; i < screw.move_count; ++i)
        moves.push_back(screw.moves[static_cast<std::size_t>(i)]);
    one["moves_in_graduations"] = std::move(moves);
    one["shortfall_turns"] = rounded(screw.shortfall);
    return one;
}

Json advice_report(const Advice& advice, const PressProfile& press) {
    Json out;
    out["settled"] = advice.settled;
    out["shift_only"] = advice.shift_only;
    out["least_apart_mm"] = nullptr;
    if (advice.shift_only) out["least_apart_mm"] = rounded(advice.least_apart);
    out["predicted_rms_mm"] = rounded(advice.predicted_rms);
    out["predicted_max_mm"] = rounded(advice.predicted_max);
    out["rotation_not_reached_deg"] = rounded(degrees(advice.turn_left));
    out["move_not_reached_mm"] = {rounded(advice.move_left.x), rounded(advice.move_left.y)};
    out["adjusters"] = adjusters_report(advice, press);
    return out;
}

Json part_report(const DistortionPart& part) {
    if (!part.known) return nullptr;
    Json out;
    out["value"] = rounded(part.value);
    out["deviation"] = rounded(part.deviation);
    out["stands_out"] = stands_out(part);
    return out;
}

void add_distortion(Json& report, const Distortion& distortion) {
    report["growth_along"] = part_report(distortion.along);
    report["growth_across"] = part_report(distortion.across);
    report["growth_on_line"] = part_report(distortion.line);
    report["skew_rad"] = part_report(distortion.skew);
    Json causes = Json::array();
    const Causes found = causes_of(distortion);
    for (int i = 0; i < found.count; ++i)
        causes.push_back(name_of(found.kinds[static_cast<std::size_t>(i)]));
    report["likely_causes"] = std::move(causes);
}

/// What each adjuster really does, by the rounds so far; those not known yet are left out.
Json measured_report(const Rounds& rounds, const PressProfile& press) {
    Json out = Json::array();
    for (const Adjuster& adjuster : press.adjusters) {
        const ScrewEstimate& screw = rounds.screws[index_of(adjuster.side)];
        if (!screw.known) continue;
        Json one;
        one["name"] = adjuster.name;
        one["mm_per_turn_clockwise"] = rounded(screw.mm_per_turn);
        one["deviation_mm"] = rounded(screw.deviation);
        one["sign_wrong"] = screw.sign_wrong;
        one["differs"] = screw.differs;
        out.push_back(std::move(one));
    }
    return out;
}

Json estimate_report(const ScatterEstimate& x, const ScatterEstimate& y) {
    return {{"x_mm", rounded(x.value)},
            {"x_error_mm", rounded(x.error)},
            {"y_mm", rounded(y.value)},
            {"y_error_mm", rounded(y.error)}};
}

} // namespace

const char* verdict_name(RegistrationVerdict verdict) {
    switch (verdict) {
    case RegistrationVerdict::no_answer: return "no_answer";
    case RegistrationVerdict::within: return "within";
    case RegistrationVerdict::no_adjusters: return "no_adjusters";
    case RegistrationVerdict::turn: return "turn";
    case RegistrationVerdict::leave: return "leave";
    case RegistrationVerdict::read_finer: return "read_finer";
    }
    return "";
}

Json adjusters_report(const Advice& advice, const PressProfile& press) {
    Json screws = Json::array();
    for (const ScrewAdvice& screw : advice.screws)
        screws.push_back(screw_report(screw, press.adjusters[screw.adjuster].name));
    return screws;
}

Json signs_report(const Scatter& scatter) {
    Json signs = Json::array();
    for (const ScatterSign& sign : signs_of(scatter)) {
        Json one;
        one["kind"] = name_of(sign.cause);
        one["platen"] = nullptr;
        if (sign.cause == ScatterCause::platen_off) one["platen"] = sign.platen;
        signs.push_back(std::move(one));
    }
    return signs;
}

double farthest_error(const std::vector<PlatenReading>& prints) {
    double farthest = 0.0;
    for (const PlatenReading& print : prints)
        for (const MarkReading& mark : print.marks)
            farthest = std::max(farthest, std::hypot(error_of(mark).x, error_of(mark).y));
    return farthest;
}

void add_print(Json& report, const HeadRegistration& head, const PressProfile& press,
               double tolerance, std::size_t round) {
    const Registration& lies = std::get<Registration>(head.lies);
    report["round"] = round;
    report["verdict"] = verdict_name(head.verdict);
    report["within_tolerance"] = head.within;
    report["tolerance_mm"] = rounded(tolerance);
    report["rotation_deg"] = nullptr;
    report["rotation_deviation_deg"] = nullptr;
    if (lies.fit.turns) {
        report["rotation_deg"] = rounded(degrees(lies.fit.motion.rotation));
        report["rotation_deviation_deg"] = rounded(degrees(lies.deviation.rotation));
    }
    report["x_mm"] = rounded(lies.fit.motion.x);
    report["x_deviation_mm"] = rounded(lies.deviation.x);
    report["y_mm"] = rounded(lies.fit.motion.y);
    report["y_deviation_mm"] = rounded(lies.deviation.y);
    report["error_rms_mm"] = rounded(lies.error_rms);
    report["error_max_mm"] = rounded(lies.error_max);
    report["residual_rms_mm"] = rounded(lies.residual_rms);
    report["residual_max_mm"] = rounded(lies.residual_max);
    add_distortion(report, lies.distortion);
    report["advice"] = advice_report(std::get<Advice>(*head.advice), press);
    report["progress"] = name_of(head.judged.progress);
    report["measured_adjusters"] = measured_report(head.judged, press);
}

void add_scatter(Json& report, const Scatter& scatter, double error_max, double tolerance) {
    report["within_tolerance"] = error_max <= tolerance;
    report["tolerance_mm"] = rounded(tolerance);
    report["error_max_mm"] = rounded(error_max);
    report["head"] = estimate_report(scatter.x.head, scatter.y.head);
    Json platens = Json::array();
    for (std::size_t i = 0; i < scatter.platens.size(); ++i) {
        Json one = estimate_report(scatter.x.platens[i], scatter.y.platens[i]);
        one["platen"] = scatter.platens[i];
        platens.push_back(std::move(one));
    }
    report["platens"] = std::move(platens);
    report["drift_a_turn"] = estimate_report(scatter.x.drift, scatter.y.drift);
    report["scatter_x_mm"] = rounded(scatter.x.deviation);
    report["scatter_y_mm"] = rounded(scatter.y.deviation);
    report["signs"] = signs_report(scatter);
}

} // namespace carriageway
