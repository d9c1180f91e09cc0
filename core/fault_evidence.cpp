#include "core/fault_evidence.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/fault_evidence_parts.h"
#include "core/judge.h"

namespace carriageway {
namespace {

using Q = Quantity;
using E = Evidence;

/// Which part looks a condition up.
enum class Of { stroke, contact, prints, order, run };

struct Row {
    Evidence evidence;
    const char* name;
    Of of;
    std::optional<Quantity> quantity;
};

constexpr std::array<Row, static_cast<std::size_t>(evidence_kinds)> rows{{
    {E::both_sensors_on, "both_sensors_on", Of::stroke, Q::length},
    {E::separation_thin, "separation_thin", Of::stroke, Q::length},
    {E::position_lost, "position_lost", Of::stroke, Q::length},
    {E::unprinted, "unprinted", Of::stroke, Q::length},
    {E::starved, "starved", Of::stroke, Q::length},
    {E::heavy, "heavy", Of::stroke, Q::length},
    {E::run_past_short, "run_past_short", Of::stroke, Q::length},
    {E::side_overlap_short, "side_overlap_short", Of::stroke, Q::length},
    {E::bead_narrow, "bead_narrow", Of::stroke, Q::length},
    {E::flood_narrower, "flood_narrower", Of::contact, Q::length},
    {E::flood_unwinged, "flood_unwinged", Of::contact, std::nullopt},
    {E::wings_dig_in, "wings_dig_in", Of::contact, Q::angle},
    {E::flood_high, "flood_high", Of::contact, Q::length},
    {E::flood_low, "flood_low", Of::contact, Q::length},
    {E::flood_fast, "flood_fast", Of::stroke, Q::speed},
    {E::flood_pressure_high, "flood_pressure_high", Of::contact, Q::pressure},
    {E::squeegee_high, "squeegee_high", Of::contact, Q::length},
    {E::blade_off_platen, "blade_off_platen", Of::stroke, Q::length},
    {E::angle_unusual, "angle_unusual", Of::contact, Q::angle},
    {E::blade_soft, "blade_soft", Of::contact, Q::hardness},
    {E::blade_hard, "blade_hard", Of::contact, Q::hardness},
    {E::edge_rounded, "edge_rounded", Of::contact, std::nullopt},
    {E::print_fast, "print_fast", Of::stroke, Q::speed},
    {E::pressure_low, "pressure_low", Of::contact, Q::pressure},
    {E::pressure_high, "pressure_high", Of::contact, Q::pressure},
    {E::mesh_not_held, "mesh_not_held", Of::contact, Q::tension},
    {E::gap_large, "gap_large", Of::contact, Q::length},
    {E::gap_small, "gap_small", Of::contact, Q::length},
    {E::heights_uneven, "heights_uneven", Of::contact, Q::length},
    {E::level_out, "level_out", Of::run, Q::length},
    {E::tension_low, "tension_low", Of::contact, Q::tension},
    {E::tension_apart, "tension_apart", Of::contact, Q::tension},
    {E::length_differs, "length_differs", Of::contact, Q::length},
    {E::film_thin, "film_thin", Of::contact, Q::thread},
    {E::detail_fine, "detail_fine", Of::contact, Q::length},
    {E::head_off, "head_off", Of::prints, Q::length},
    {E::screw_answers_otherwise, "screw_answers_otherwise", Of::prints, Q::length},
    {E::play_large, "play_large", Of::run, Q::length},
    {E::index_scatters, "index_scatters", Of::prints, Q::length},
    {E::prints_drift, "prints_drift", Of::prints, Q::length},
    {E::platen_off, "platen_off", Of::prints, Q::length},
    {E::platen_hot, "platen_hot", Of::run, Q::temperature},
    {E::dwell_short, "dwell_short", Of::run, Q::time},
    {E::dwell_long, "dwell_long", Of::run, Q::time},
    {E::prints_on_wet, "prints_on_wet", Of::order, Q::count},
    {E::flash_missing, "flash_missing", Of::order, std::nullopt},
    {E::cure_low, "cure_low", Of::run, Q::temperature},
    {E::cure_high, "cure_high", Of::run, Q::temperature},
    {E::air_noted, "air_noted", Of::run, Q::ratio},
    {E::set_otherwise, "set_otherwise", Of::run, Q::count},
    {E::left_unsecured, "left_unsecured", Of::run, std::nullopt},
}};

constexpr bool in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (static_cast<std::size_t>(rows[i].evidence) != i) return false;
    return true;
}
static_assert(in_order(), "the rows stand in the order of Evidence");

const Row* row_of(Evidence evidence) {
    const auto index = static_cast<std::size_t>(evidence);
    return index < rows.size() ? &rows[index] : nullptr;
}

Sighting of_head(const Row& row, const LookedAt& at) {
    Sighting sighting;
    switch (row.of) {
        case Of::stroke: sighting = stroke_sighting(row.evidence, at); break;
        case Of::contact: sighting = contact_sighting(row.evidence, at); break;
        case Of::prints: sighting = print_sighting(row.evidence, at); break;
        case Of::order: sighting = order_sighting(row.evidence, at); break;
        case Of::run: break;
    }
    if (sighting.sight != Sight::not_known) sighting.head = at.head.id;
    return sighting;
}

/// How far beyond its limit, either way; a value that is no number is nowhere.
double beyond(const Sighting& sighting) {
    const double by = std::abs(sighting.value - sighting.limit);
    return std::isfinite(by) ? by : 0.0;
}

bool louder(const Sighting& one, const Sighting& other) {
    const auto rank = [](Sight sight) {
        return sight == Sight::seen ? 2 : sight == Sight::not_known ? 1 : 0;
    };
    if (one.sight != other.sight) return rank(one.sight) > rank(other.sight);
    if (one.sight == Sight::seen) return beyond(one) > beyond(other);
    return one.sight == Sight::not_seen && beyond(one) < beyond(other);
}

} // namespace

Sighting seen_above(double value, double limit) {
    return {value > limit + least_difference ? Sight::seen : Sight::not_seen, value, limit};
}

Sighting seen_below(double value, double limit) {
    return {value < limit - least_difference ? Sight::seen : Sight::not_seen, value, limit};
}

Sighting loudest(std::span<const Sighting> sightings) {
    Sighting best;
    for (std::size_t i = 0; i < sightings.size(); ++i)
        if (i == 0 || louder(sightings[i], best)) best = sightings[i];
    return best;
}

std::optional<Quantity> quantity_of(Evidence evidence) {
    const Row* row = row_of(evidence);
    return row == nullptr ? std::nullopt : row->quantity;
}

const char* name_of(Evidence evidence) {
    const Row* row = row_of(evidence);
    return row == nullptr ? "" : row->name;
}

std::optional<Evidence> evidence_named(std::string_view name) {
    for (const Row& row : rows)
        if (row.name == name) return row.evidence;
    return std::nullopt;
}

Sighting sighting_of(Evidence evidence, const Job& job, const Assessment& assessment, HeadId head) {
    const Row* row = row_of(evidence);
    if (row == nullptr) return {};
    if (row->of == Of::run) {
        // A head that isn't there has no run either.
        return head != 0 && find_head(job, head) == nullptr ? Sighting{}
                                                            : run_sighting(evidence, job, head);
    }
    std::vector<Sighting> sightings;
    for (const Head& each : job.heads) {
        if (head != 0 && each.id != head) continue;
        const HeadAssessment* worked = find_head(assessment, each.id);
        sightings.push_back(worked == nullptr ? Sighting{} : of_head(*row, {job, each, *worked}));
    }
    return loudest(sightings);
}

} // namespace carriageway
