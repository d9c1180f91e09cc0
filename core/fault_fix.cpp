#include "core/fault_fix.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/fault_evidence.h"
#include "core/job_heat.h"

namespace carriageway {
namespace {

constexpr std::array names{
    "by_hand",        "stops_advised",  "wings_flat",     "angle_usual",
    "heights_level",  "gap_advised",    "flood_reaches",
    "pressure_usual", "pressure_holds", "flood_pressure_usual", "print_slower",
    "speed_holds",    "blade_on_platen", "flood_wider",   "dwell_usual",
    "dwell_for_heat", "cure_usual",
};
static_assert(names.size() == static_cast<std::size_t>(Fix::count));

/// Steps in which numbers are advised, so that they can be set by hand. Ours.
constexpr double pressure_step = 5.0; // kPa
constexpr double height_step = 0.1;   // mm
constexpr double dwell_step = 0.1;    // s

double up_to_step(double value, double step) { return std::ceil(value / step - 1e-9) * step; }

double into(double value, double least, double most) { return std::clamp(value, least, most); }

/// What an edit is made of.
struct Mending {
    const Job& job;
    const Head* head;              ///< nullptr: none, or not there
    const HeadAssessment* worked;  ///< of it
};

/// Of the head's numbers or the job's, whichever the field is.
std::optional<Edit> number(const Mending& with, Field field, double value) {
    const bool of_head = info_of(field).owner == FieldOwner::head;
    if (of_head && with.head == nullptr) return std::nullopt;
    if (!accepts(field, value)) return std::nullopt;
    if (std::abs(number_of(with.job, with.head, field) - value) < 1e-9) return std::nullopt;
    return Edit{SetNumber{of_head ? with.head->id : 0, field, value}};
}

std::optional<Edit> stops(const Mending& with) {
    if (with.worked == nullptr || !with.worked->advised) return std::nullopt;
    if (*with.worked->advised == with.head->stops) return std::nullopt;
    return Edit{SetStops{with.head->id, *with.worked->advised}};
}

/// Several numbers at once; those that stand so already are left out.
std::optional<Edit> together(const std::vector<std::optional<Edit>>& edits) {
    Together all;
    for (const std::optional<Edit>& edit : edits)
        if (edit) all.edits.push_back(*edit);
    if (all.edits.empty()) return std::nullopt;
    if (all.edits.size() == 1) return all.edits.front();
    return Edit{all};
}

std::optional<Edit> heights(const Mending& with, double left, double right, double machine) {
    return together({number(with, Field::height_left, left),
                     number(with, Field::height_right, right),
                     number(with, Field::height_machine, machine)});
}

std::optional<Edit> level(const Mending& with) {
    const ScreenHeights& set = with.head->heights;
    const double mean = 0.5 * (set.left + set.right);
    return heights(with, mean, mean, set.machine);
}

/// All heights by as much as the middle is off, rounded away from what is off.
std::optional<Edit> gap(const Mending& with) {
    const OffContactAdvice& advice = advice_for(with.job.garment.kind);
    const double middle = with.worked->contact.middle_gap;
    const double missing = into(middle, advice.least, advice.most) - middle;
    const double by = missing < 0.0 ? -up_to_step(-missing, height_step)
                                    : up_to_step(missing, height_step);
    const ScreenHeights& set = with.head->heights;
    return heights(with, set.left + by, set.right + by, set.machine + by);
}

/// A gauge down by so many mm, to a mark that can be set.
std::optional<Edit> gauge_down(const Mending& with, Field field, const Gauge& gauge, double at,
                               double down) {
    if (!(gauge.mm_per_mark > 0.0) || !(gauge.graduation > 0.0) || !(down > 0.0))
        return std::nullopt;
    const double marks = at - up_to_step(down / gauge.mm_per_mark, gauge.graduation);
    if (marks < gauge.lowest - 1e-9) return std::nullopt;
    return number(with, field, marks);
}

std::optional<Edit> holding_pressure(const Mending& with) {
    const HeadContact& contact = with.worked->contact;
    const double set = with.head->pressure.squeegee;
    double wanted = std::max(set, usual_squeegee_pressure.least);
    constexpr double spare = 1.1; // ours: a tenth over what only just holds
    if (contact.hold == HoldDown::not_enough && *contact.line_load > 0.0)
        wanted = std::max(wanted, set * spare * contact.worst->line_force / *contact.line_load);
    const Gauge& gauge = with.job.press.squeegee_gauge;
    return together({number(with, Field::squeegee_pressure, up_to_step(wanted, pressure_step)),
                     gauge_down(with, Field::squeegee_gauge, gauge, with.head->squeegee.gauge,
                                contact.squeegee.over_garment)});
}

std::optional<Edit> held_speeds(const Mending& with) {
    std::vector<std::optional<Edit>> edits;
    for (const Finding& finding : with.worked->findings)
        if (finding.kind == FindingKind::position_lost) edits.push_back(remedy_edit(finding));
    return together(edits);
}

std::optional<Edit> on_platen(const Mending& with) {
    std::optional<Edit> width;
    std::optional<Edit> path;
    for (const Finding& finding : with.worked->findings) {
        if (finding.kind == FindingKind::blade_off_platen)
            width = number(with, Field::squeegee_width, std::floor(finding.limit));
        if (finding.kind == FindingKind::off_platen) path = stops(with);
    }
    return together({width, path});
}

std::optional<Edit> of_head(Fix fix, const Mending& with) {
    const Head& head = *with.head;
    const PressProfile& press = with.job.press;
    const HeadContact& contact = with.worked->contact;
    const PressureRange& squeegee = usual_squeegee_pressure;
    const PressureRange& flood = usual_flood_pressure;
    switch (fix) {
        case Fix::stops_advised: return stops(with);
        case Fix::wings_flat:
            if (!head.flood.winged || head.flood.angle <= press.angles.wings_flat) break;
            return number(with, Field::flood_angle, press.angles.wings_flat);
        case Fix::angle_usual:
            if (press.angles.least > press.angles.most) break;
            return number(with, Field::squeegee_angle,
                          into(head.squeegee.angle, press.angles.least, press.angles.most));
        case Fix::heights_level: return level(with);
        case Fix::gap_advised: return gap(with);
        case Fix::flood_reaches:
            return gauge_down(with, Field::flood_gauge, press.flood_gauge, head.flood.gauge,
                              contact.flood.over_mesh);
        case Fix::pressure_usual:
            return number(with, Field::squeegee_pressure,
                          into(head.pressure.squeegee, squeegee.least, squeegee.most));
        case Fix::pressure_holds: return holding_pressure(with);
        case Fix::flood_pressure_usual:
            return number(with, Field::flood_pressure,
                          into(head.pressure.flood, flood.least, flood.most));
        case Fix::print_slower:
            return number(with, Field::print_speed,
                          std::min(head.print_speed, share_fast * press.carriage.fastest));
        case Fix::speed_holds: return held_speeds(with);
        case Fix::blade_on_platen: return on_platen(with);
        case Fix::flood_wider:
            return number(with, Field::flood_width,
                          std::max(head.flood.width, head.squeegee.width));
        default: break;
    }
    return std::nullopt;
}

std::optional<Edit> of_run(Fix fix, const Mending& with) {
    const RunPlan& run = with.job.run;
    if (fix == Fix::cure_usual) {
        if (run.dryer_temperature <= 0.0) return std::nullopt;
        return number(with, Field::dryer_temperature,
                      into(run.dryer_temperature, cure_from, cure_to));
    }
    if (flash_stations(with.job) == 0) return std::nullopt;
    if (fix == Fix::dwell_usual)
        return number(with, Field::flash_dwell,
                      into(run.flash_dwell, least_flash_dwell, most_flash_dwell));
    const HeatOutlook outlook = heat_outlook(with.job);
    if (!outlook.dwell) return std::nullopt;
    const double dwell = std::round(outlook.dwell->dwell / dwell_step) * dwell_step;
    // Warm platens want less; a longer dwell would heat them more.
    return dwell < run.flash_dwell ? number(with, Field::flash_dwell, dwell) : std::nullopt;
}

} // namespace

const char* name_of(Fix fix) {
    const auto index = static_cast<std::size_t>(fix);
    return index < names.size() ? names[index] : "";
}

std::optional<Fix> fix_named(std::string_view name) {
    for (std::size_t i = 0; i < names.size(); ++i)
        if (names[i] == name) return static_cast<Fix>(i);
    return std::nullopt;
}

std::optional<Edit> fix_edit(Fix fix, const Job& job, const Assessment& assessment, HeadId head) {
    const Mending with{job, find_head(job, head), find_head(assessment, head)};
    switch (fix) {
        case Fix::by_hand:
        case Fix::count: return std::nullopt;
        case Fix::dwell_usual:
        case Fix::dwell_for_heat:
        case Fix::cure_usual: return of_run(fix, with);
        default: break;
    }
    if (with.head == nullptr || with.worked == nullptr) return std::nullopt;
    return of_head(fix, with);
}

} // namespace carriageway
