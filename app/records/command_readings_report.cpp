// The parts of check --json about what was read: registration, levelling, heat (command_json.h).
#include <algorithm>

#include "app/records/command_check_readings.h"
#include "app/records/command_json.h"
#include "app/records/command_register_report.h"
#include "app/text/registration_sentences.h"
#include "core/job_heat.h"
#include "core/job_levelling.h"

namespace carriageway {
namespace {

using Json = nlohmann::ordered_json;

const char* name_of(LevelTerms known) {
    switch (known) {
    case LevelTerms::none: return "none";
    case LevelTerms::offset: return "offset";
    case LevelTerms::plane: return "plane";
    }
    return "";
}

const char* name_of(HeatWarningKind kind) {
    switch (kind) {
    case HeatWarningKind::sticking: return "sticking";
    case HeatWarningKind::dye_migration: return "dye_migration";
    case HeatWarningKind::poor_adhesion: return "poor_adhesion";
    case HeatWarningKind::not_gelled: return "not_gelled";
    case HeatWarningKind::past_gel: return "past_gel";
    case HeatWarningKind::not_cured: return "not_cured";
    case HeatWarningKind::past_cure: return "past_cure";
    }
    return "";
}

/// The last round of a head.
void add_last_round(Json& out, const HeadRegistration& head, const PressProfile& press) {
    out["verdict"] = head.read ? verdict_name(head.verdict) : "not_read";
    out["error_max_mm"] = nullptr;
    out["within_tolerance"] = nullptr;
    out["adjusters"] = Json::array();
    const Registration* lies = std::get_if<Registration>(&head.lies);
    if (!head.read || lies == nullptr) return;
    out["error_max_mm"] = rounded(lies->error_max);
    out["within_tolerance"] = head.within;
    if (const Advice* advice = head.advice ? std::get_if<Advice>(&*head.advice) : nullptr)
        out["adjusters"] = adjusters_report(*advice, press);
}

/// Prints of several platens: no one print says what to turn.
void add_prints(Json& out, const PlatenPrints& prints, double tolerance) {
    const double error = farthest_error(prints.readings);
    out["verdict"] = nullptr;
    out["error_max_mm"] = rounded(error);
    out["within_tolerance"] = error <= tolerance;
    out["adjusters"] = Json::array();
    out["signs"] = nullptr;
    if (const Scatter* scatter = std::get_if<Scatter>(&prints.scatter))
        out["signs"] = signs_report(*scatter);
}

Json part_report(const PartOff& part, bool head) {
    const bool known = part.known != LevelTerms::none;
    const auto high = [&](double gap) {
        return known ? rounded(height_of(gap, head)) : Json(nullptr);
    };
    Json out;
    out["known"] = name_of(part.known);
    out["operator_left_mm"] = high(part.operator_left);
    out["operator_right_mm"] = high(part.operator_right);
    out["machine_mm"] = high(part.machine_side);
    out["out"] = known ? Json(part.out) : Json(nullptr);
    out["surely_out"] = known ? Json(part.surely_out) : Json(nullptr);
    out["group"] = part.group;
    return out;
}

const char* name_of(LevelRefusal refusal) {
    switch (refusal) {
    case LevelRefusal::none: break;
    case LevelRefusal::no_readings: return "no_readings";
    case LevelRefusal::not_finite: return "not_finite";
    case LevelRefusal::too_many_parts: return "too_many_parts";
    }
    return nullptr;
}

Json strays_report(const Job& job, const Levelling& levelling) {
    Json out = Json::array();
    for (const StrayReading& stray : levelling.strays) {
        const HeightReading& reading = job.height_readings[stray.reading];
        const Head* head = find_head(job, reading.head);
        Json one;
        one["station"] = head ? Json(head->station) : Json(nullptr);
        one["platen"] = reading.platen;
        one["x_mm"] = rounded(reading.x);
        one["y_mm"] = rounded(reading.y);
        one["height_mm"] = rounded(reading.height);
        one["above_others_mm"] = rounded(stray.residual);
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace

RoundsRead rounds_read(const Job& job, const Head& head) {
    const std::size_t last = head.rounds.empty() ? 0 : head.rounds.size() - 1;
    RoundsRead read{register_head(job.press, head.rounds, last, job.registration.tolerance), {}};
    PlatenPrints prints = platen_prints(job.press, head.rounds);
    if (!prints.places.empty() && prints.places.back() == last) read.prints = std::move(prints);
    return read;
}

Json registration_report(const Job& job, const Head& head) {
    if (head.rounds.empty()) return nullptr;
    const double tolerance = job.registration.tolerance;
    const RoundsRead read = rounds_read(job, head);
    Json out;
    out["rounds"] = head.rounds.size();
    out["by_platen"] = read.prints.has_value();
    out["tolerance_mm"] = rounded(tolerance);
    if (read.prints) add_prints(out, *read.prints, tolerance);
    else add_last_round(out, read.last, job.press);
    return out;
}

Json levelling_report(const Job& job) {
    if (job.height_readings.empty()) return nullptr;
    const JobLevelling found = job_levelling(job);
    Json out;
    const char* refused = name_of(found.levelling.refusal);
    out["refused"] = refused ? Json(refused) : Json(nullptr);
    out["tolerance_mm"] = rounded(found.targets.tolerance);
    out["heads"] = Json::array();
    for (const PartOff& part : found.heads) {
        Json one = part_report(part, true);
        const Head* head = find_head(job, part.number);
        one["station"] = head ? Json(head->station) : Json(nullptr);
        out["heads"].push_back(std::move(one));
    }
    out["platens"] = Json::array();
    for (const PartOff& part : found.platens) {
        Json one = part_report(part, false);
        one["platen"] = part.number;
        out["platens"].push_back(std::move(one));
    }
    out["strays"] = strays_report(job, found.levelling);
    const std::vector<LevelGroup>& groups = found.levelling.groups;
    out["settled"] = std::all_of(groups.begin(), groups.end(),
                                 [](const LevelGroup& group) { return group.settled; });
    return out;
}

Json heat_report(const Job& job) {
    const HeatOutlook outlook = heat_outlook(job);
    if (outlook.flashes == 0) return nullptr;
    Json out;
    out["flash_units"] = outlook.flashes;
    out["ambient_c"] = rounded(outlook.heat.ambient);
    out["steady_c"] = rounded(outlook.steady);
    out["steady_turn"] = outlook.steady_turn ? Json(*outlook.steady_turn) : Json(nullptr);
    out["hottest_c"] = rounded(outlook.hottest);
    out["warnings"] = Json::array();
    for (const HeatWarning& warning : outlook.warnings)
        out["warnings"].push_back(
            {{"kind", name_of(warning.kind)}, {"limit_c", rounded(warning.limit)}});
    return out;
}

} // namespace carriageway
