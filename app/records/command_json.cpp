#include "app/records/command_json.h"

#include <cmath>
#include <ostream>

#include "app/records/command_check_readings.h"
#include "app/records/exchange.h"
#include "app/records/finding_key.h"
#include "app/text/sentences.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

const char* name_of(Part part) {
    switch (part) {
        case Part::stops:
            return "stops";
        case Part::squeegee:
            return "squeegee";
        case Part::flood:
            return "flood";
        case Part::image:
            return "image";
        case Part::screen:
            return "screen";
        case Part::platen:
            return "platen";
        case Part::sensors:
            return "sensors";
    }
    return "";
}

const char* name_of(Side side) {
    switch (side) {
        case Side::operator_side:
            return "operator";
        case Side::machine_side:
            return "machine";
        case Side::left:
            return "left";
        case Side::right:
            return "right";
        case Side::both:
            return "both";
    }
    return "";
}

const char* name_of(Severity severity) {
    switch (severity) {
        case Severity::stop:
            return "stop";
        case Severity::mind:
            return "mind";
        case Severity::note:
            return "note";
    }
    return "";
}

/// The unit of a finding's numbers in the report, and its factor.
struct ReportUnit {
    const char* name = "mm";
    double factor = 1.0;
};

ReportUnit unit_of(FindingKind kind) {
    switch (kind) {
        case FindingKind::wings_dig_in:
        case FindingKind::angle_unusual:
            return {"deg", degrees(1.0)};
        case FindingKind::speed_beyond_press:
            return {"mm_s", 1.0};
        case FindingKind::miss_likely:
            return {"share", 1.0};
        case FindingKind::mesh_not_held:
        case FindingKind::tension_low:
        case FindingKind::tension_apart:
            return {"n_per_cm", 1.0};
        case FindingKind::pressure_unusual:
            return {"kpa", 1.0};
        default:
            return {};
    }
}

Json finding_report(const Console& console, const Job& job, const HeadAssessment& head,
                    const Finding& finding) {
    const FindingText text = finding_text(console.language, console.unit, job, head, finding);
    const ReportUnit unit = unit_of(finding.kind);
    Json out;
    out["severity"] = name_of(finding.severity);
    out["kind"] = finding_key(finding.kind);
    out["part"] = name_of(finding.part);
    out["side"] = name_of(finding.side);
    out[std::string("value_") + unit.name] = rounded(finding.value * unit.factor);
    out[std::string("limit_") + unit.name] = rounded(finding.limit * unit.factor);
    out["title"] = text.title;
    out["why"] = text.why;
    out["remedy"] = text.remedy.main;
    out["remedy_detail"] = text.remedy.detail;
    const std::optional<Edit> edit = remedy_edit(finding);
    out["edit"] = edit ? Json::parse(write_edit(*edit)) : Json(nullptr);
    return out;
}

Json band(const Rect& swept) {
    return Json::array({rounded(swept.lo), rounded(swept.hi)});
}

const char* key_of(MissKind kind) {
    return kind == MissKind::unprinted ? "unprinted" : kind == MissKind::starved ? "starved" : "heavy";
}

const char* key_of(LimitKind kind) {
    switch (kind) {
        case LimitKind::squeegee_run_past: return "squeegee_run_past";
        case LimitKind::flood_run_past: return "flood_run_past";
        case LimitKind::platen: return "platen";
        case LimitKind::frame_squeegee: return "frame_squeegee";
        case LimitKind::frame_flood: return "frame_flood";
        case LimitKind::carriage_range: return "carriage_range";
        case LimitKind::separation: break;
    }
    return "separation";
}

Json missed_report(const Coverage& coverage) {
    Json out = Json::array();
    for (const MissedPiece& piece : coverage.pieces) {
        Json one;
        one["kind"] = key_of(piece.kind);
        one["area_mm2"] = rounded(piece.area);
        one["across_mm"] = {rounded(piece.bounds.left), rounded(piece.bounds.right)};
        one["along_mm"] = {rounded(piece.bounds.lo), rounded(piece.bounds.hi)};
        out.push_back(std::move(one));
    }
    return out;
}

Json margins_report(const HeadAssessment& worked) {
    Json out = Json::array();
    for (const Margin& margin : worked.margins) {
        Json one;
        one["limit"] = key_of(margin.kind);
        if (margin.kind != LimitKind::separation)
            one["end"] = margin.end == End::machine_side ? "machine" : "operator";
        one["left_mm"] = rounded(margin.left);
        one["worst_case_mm"] = rounded(margin.worst);
        one["root_sum_square_mm"] = rounded(margin.root_sum_square);
        out.push_back(std::move(one));
    }
    return out;
}


Json number_or_null(const std::optional<double>& value) {
    return value ? Json(rounded(*value)) : Json(nullptr);
}

Json shift_report(const std::optional<MeshShift>& shift) {
    if (!shift) return nullptr;
    Json out;
    out["height_mm"] = rounded(shift->height);
    out["drag_mm"] = rounded(shift->drag);
    out["total_mm"] = rounded(shift->total());
    return out;
}

const char* name_of(HoldDown hold) {
    switch (hold) {
        case HoldDown::not_known: return "not_known";
        case HoldDown::not_enough: return "not_enough";
        case HoldDown::holds_mesh: break;
    }
    return "holds_mesh";
}

/// Heights, forces and shifts; shifts rest on the job's assumed friction and stiffness.
Json contact_report(const HeadContact& contact) {
    Json out;
    out["least_gap_mm"] = rounded(contact.gap.least);
    out["most_gap_mm"] = rounded(contact.gap.most);
    out["middle_gap_mm"] = rounded(contact.middle_gap);
    out["right_less_left_mm"] = rounded(contact.uneven);
    out["tilt_deg"] = rounded(degrees(tilt_of(contact.plane)));
    out["squeegee_over_garment_mm"] = rounded(contact.squeegee.over_garment);
    out["flood_over_mesh_mm"] = rounded(contact.flood.over_mesh);
    out["wing_clearance_mm"] = rounded(contact.wing_clearance);
    out["thrust_n"] = number_or_null(contact.thrust);
    out["line_load_n_per_cm"] = number_or_null(contact.line_load);
    out["needed_n_per_cm"] =
        contact.worst ? Json(rounded(contact.worst->line_force)) : Json(nullptr);
    out["hold"] = name_of(contact.hold);
    out["shift_at_operator_end"] = shift_report(contact.operator_shift);
    out["shift_at_machine_end"] = shift_report(contact.machine_shift);
    out["growth"] = shift_report(contact.growth);
    out["longer_than_base"] = shift_report(contact.beside_base);
    return out;
}

Json deposit_report(const HeadDeposit& deposit) {
    Json out;
    if (deposit.mesh) {
        out["opening_um"] = rounded(deposit.mesh->row.opening);
        out["open_share"] = rounded(deposit.mesh->row.share);
        out["mesh_thickness_um"] = rounded(deposit.mesh->row.thickness);
        out["thickness_assumed"] = deposit.mesh->thickness_assumed;
        out["ink_volume_cm3_per_m2"] = rounded(deposit.mesh->row.volume);
    }
    out["film_um"] = rounded(deposit.film);
    out["image_area_mm2"] = rounded(deposit.image_area);
    out["finest_line_um"] = {rounded(deposit.finest.least), rounded(deposit.finest.most)};
    if (deposit.ink) {
        out["ink_a_piece_cm3"] = rounded(deposit.ink->per_piece);
        out["ink_for_the_run_cm3"] = rounded(deposit.ink->total());
    }
    return out;
}

void add_if_any(Json& out, const char* key, Json part) {
    if (!part.is_null()) out[key] = std::move(part);
}

Json head_report(const Console& console, const Job& job, const Head& head,
                 const HeadAssessment& worked) {
    const bool moves = !worked.both_on;
    const auto unless_still = [&](Json value) { return moves ? std::move(value) : Json(nullptr); };
    Json out;
    out["station"] = head.station;
    out["colour"] = head.colour;
    out["fit"] = worked.fit;
    out["both_sensors_on"] = worked.both_on;
    out["travel_mm"] = unless_still(rounded(worked.ends.travel()));
    out["squeegee_band_mm"] = unless_still(band(worked.squeegee));
    out["flood_band_mm"] = unless_still(band(worked.flood));
    out["operator_run_past_mm"] = unless_still(rounded(worked.operator_run_past));
    out["machine_run_past_mm"] = unless_still(rounded(worked.machine_run_past));
    out["side_overlap_mm"] = rounded(worked.side_overlap);
    out["covered_share"] = rounded(worked.coverage.share());
    out["chance_missed"] = rounded(worked.chance_missed);
    out["separation_mm"] = rounded(worked.separation);
    out["least_separation_mm"] = rounded(worked.least_separation);
    out["stops"] = stops_report(job.press.ruler, head.stops);
    out["advised_stops"] =
        worked.advised ? stops_report(job.press.ruler, *worked.advised) : Json(nullptr);
    out["print_stroke_s"] = rounded(worked.print_time);
    out["flood_stroke_s"] = rounded(worked.flood_time);
    out["grown_covered_share"] = rounded(worked.grown_coverage.share());
    out["missed"] = missed_report(worked.coverage);
    out["margins"] = margins_report(worked);
    out["contact"] = contact_report(worked.contact);
    out["deposit"] = deposit_report(worked.deposit);
    Json findings = Json::array();
    for (const Finding& finding : worked.findings) {
        findings.push_back(finding_report(console, job, worked, finding));
    }
    out["findings"] = std::move(findings);
    add_if_any(out, "registration", registration_report(job, head));
    return out;
}

}  // namespace

nlohmann::ordered_json rounded(double value) {
    if (!std::isfinite(value)) return nullptr;
    const double millionths = std::round(value * 1e6);
    return millionths == 0.0 ? 0.0 : millionths / 1e6;
}

nlohmann::ordered_json started_report() {
    Json report;
    report["format"] = report_format;
    return report;
}

nlohmann::ordered_json stops_report(const Ruler& ruler, const Stops& stops) {
    Json out;
    out["operator_mm"] = rounded(stops.operator_side);
    out["machine_mm"] = rounded(stops.machine_side);
    out["operator_ruler"] = rounded(ruler_reading(ruler, stops.operator_side));
    out["machine_ruler"] = rounded(ruler_reading(ruler, stops.machine_side));
    out["ruler_unit"] = length_unit_name(unit_of(ruler));
    return out;
}

nlohmann::ordered_json check_report(const Console& console, const Job& job,
                                    const Assessment& assessment) {
    Json out = started_report();
    out["job"] = job.name;
    out["press"] = job.press.name;
    out["fit"] = assessment.fit;
    out["fit_heads"] = assessment.fit_heads;
    Json heads = Json::array();
    for (std::size_t at = 0; at < job.heads.size(); ++at) {
        heads.push_back(head_report(console, job, job.heads[at], assessment.heads[at]));
    }
    out["heads"] = std::move(heads);
    add_if_any(out, "levelling", levelling_report(job));
    add_if_any(out, "heat", heat_report(job));
    return out;
}

void write_report(std::ostream& out, const nlohmann::ordered_json& report) {
    out << report.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

}  // namespace carriageway
