#include <algorithm>
#include <cmath>

#include "core/fault_evidence_parts.h"
#include "core/judge.h"

namespace carriageway {
namespace {

/// Angles that differ by less, rad, are the same.
constexpr double least_turn = 1e-9;

/// How much image is missed in one way at the worst side; not known for a head that stays put.
Sighting missed(const LookedAt& at, FindingKind kind) {
    if (at.worked.both_on) return {};
    double most = 0.0;
    for (const Finding& finding : at.worked.findings)
        if (finding.kind == kind) most = std::max(most, finding.value);
    return seen_above(most, 0.0);
}

Sighting overtravel(const LookedAt& at) {
    const Sensors& sensors = at.job.press.sensors;
    const double most = std::max(at.worked.geometry.operator_overtravel,
                                 at.worked.geometry.machine_overtravel);
    return {holds_position(sensors, most) ? Sight::not_seen : Sight::seen, most,
            sensors.bar_length + 2.0 * sensors.reach};
}

Sighting run_past(const LookedAt& at) {
    if (at.worked.both_on) return {};
    return seen_below(std::min(at.worked.operator_run_past, at.worked.machine_run_past),
                      at.job.wishes.run_past);
}

Sighting bead(const LookedAt& at) {
    const StrokeGeometry& geometry = at.worked.geometry;
    return seen_below(
        -sign_of(at.head.print_stroke) * (geometry.squeegee_edge - geometry.flood_edge),
        at.job.press.allowances.least_bead);
}

Sighting over_platen(const LookedAt& at) {
    double most = 0.0;
    for (const Finding& finding : at.worked.findings) {
        if (finding.kind == FindingKind::blade_off_platen)
            most = std::max(most, finding.value - finding.limit);
        if (finding.kind == FindingKind::off_platen) most = std::max(most, finding.value);
    }
    return seen_above(most, 0.0);
}

Sighting wings(const LookedAt& at) {
    const double flat = at.job.press.angles.wings_flat;
    const bool dig = at.head.flood.winged && at.head.flood.angle > flat + least_turn;
    return {dig ? Sight::seen : Sight::not_seen, at.head.flood.angle, flat};
}

Sighting squeegee_angle(const LookedAt& at) {
    const Angles& angles = at.job.press.angles;
    const double angle = at.head.squeegee.angle;
    const bool usual = angle >= angles.least - least_turn && angle <= angles.most + least_turn;
    const double nearer =
        std::abs(angle - angles.least) < std::abs(angle - angles.most) ? angles.least : angles.most;
    return {usual ? Sight::not_seen : Sight::seen, angle, nearer};
}

/// Nothing is known of a blade whose hardness nobody noted.
Sighting hardness(const LookedAt& at, bool soft) {
    const double hardness = at.head.squeegee.hardness;
    if (hardness <= 0.0) return {};
    return soft ? seen_below(hardness, least_hardness) : seen_above(hardness, most_hardness);
}

Sighting edge(const LookedAt& at) {
    const BladeEdge edge = at.head.squeegee.edge;
    return edge == BladeEdge::not_noted ? Sighting{} : seen_if(edge == BladeEdge::rounded);
}

/// On its height stop a blade's air says nothing of what it does to the mesh.
Sighting pressure(const LookedAt& at, bool low) {
    const BladePressure& set = at.head.pressure;
    if (set.on_height_stop) return {};
    return low ? seen_below(set.squeegee, usual_squeegee_pressure.least)
               : seen_above(set.squeegee, usual_squeegee_pressure.most);
}

Sighting held(const LookedAt& at) {
    const HeadContact& contact = at.worked.contact;
    if (contact.hold == HoldDown::not_known || !contact.line_load || !contact.worst) return {};
    return {contact.hold == HoldDown::not_enough ? Sight::seen : Sight::not_seen,
            *contact.line_load, contact.worst->line_force};
}

/// Heights can't be read closer, mm, as in judge_contact.
constexpr double gap_slack = 0.05;

Sighting gap(const LookedAt& at, bool large) {
    const OffContactAdvice& advice = advice_for(at.job.garment.kind);
    const double middle = at.worked.contact.middle_gap;
    const double limit = large ? advice.most : advice.least;
    const bool seen = large ? middle > limit + gap_slack : middle < limit - gap_slack;
    return {seen ? Sight::seen : Sight::not_seen, middle, limit};
}

/// Screens of one job should be this alike, N/cm (published advice), as in judge_contact.
constexpr double tension_alike = 2.0;

Sighting beside_base(const LookedAt& at) {
    const Head* base = base_head(at.job);
    if (base == nullptr || base->id == at.head.id) return {};
    const double beside = at.head.screen.tension_along - base->screen.tension_along;
    return {std::abs(beside) > tension_alike + least_difference ? Sight::seen : Sight::not_seen,
            beside, tension_alike};
}

Sighting length(const LookedAt& at) {
    if (!at.worked.contact.beside_base) return {};
    const double longer = at.worked.contact.beside_base->total();
    const double tolerance = at.job.registration.tolerance;
    return {std::abs(longer) > tolerance ? Sight::seen : Sight::not_seen, longer, tolerance};
}

Sighting detail(const LookedAt& at) {
    if (!at.worked.deposit.detail) return {};
    constexpr double um_per_mm = 1000.0;
    return {*at.worked.deposit.detail == DetailFit::carried ? Sight::not_seen : Sight::seen,
            at.head.deposit.finest_detail, at.worked.deposit.finest.most / um_per_mm};
}

Sighting film(const LookedAt& at) {
    if (!at.worked.deposit.mesh) return {};
    return seen_below(at.worked.deposit.film, thin_film);
}

} // namespace

Sighting stroke_sighting(Evidence evidence, const LookedAt& at) {
    const HeadAssessment& worked = at.worked;
    const double fast = share_fast * at.job.press.carriage.fastest;
    switch (evidence) {
        case Evidence::both_sensors_on:
            return {worked.both_on ? Sight::seen : Sight::not_seen, worked.separation,
                    worked.least_separation};
        case Evidence::separation_thin: {
            Sighting thin = seen_below(worked.separation, worked.allowed.least_gap);
            // Below the least it is more than thin, and said otherwise.
            if (worked.both_on) thin.sight = Sight::not_seen;
            return thin;
        }
        case Evidence::position_lost: return overtravel(at);
        case Evidence::unprinted: return missed(at, FindingKind::unprinted);
        case Evidence::starved: return missed(at, FindingKind::starved);
        case Evidence::heavy: return missed(at, FindingKind::heavy);
        case Evidence::run_past_short: return run_past(at);
        case Evidence::side_overlap_short:
            return seen_below(worked.side_overlap, at.job.wishes.side_overlap);
        case Evidence::bead_narrow: return bead(at);
        case Evidence::blade_off_platen: return over_platen(at);
        case Evidence::flood_fast: return seen_above(at.head.flood_speed, fast);
        case Evidence::print_fast: return seen_above(at.head.print_speed, fast);
        default: return {};
    }
}

Sighting contact_sighting(Evidence evidence, const LookedAt& at) {
    const Head& head = at.head;
    const HeadContact& contact = at.worked.contact;
    switch (evidence) {
        case Evidence::flood_narrower: return seen_below(head.flood.width, head.squeegee.width);
        case Evidence::flood_unwinged: return seen_if(!head.flood.winged);
        case Evidence::wings_dig_in: return wings(at);
        case Evidence::flood_high: return seen_above(contact.flood.over_mesh, 0.0);
        case Evidence::flood_low: return seen_above(-contact.flood.over_garment, 0.0);
        case Evidence::flood_pressure_high:
            return seen_above(head.pressure.flood, usual_flood_pressure.most);
        case Evidence::squeegee_high: return seen_above(contact.squeegee.over_garment, 0.0);
        case Evidence::angle_unusual: return squeegee_angle(at);
        case Evidence::blade_soft: return hardness(at, true);
        case Evidence::blade_hard: return hardness(at, false);
        case Evidence::edge_rounded: return edge(at);
        case Evidence::pressure_low: return pressure(at, true);
        case Evidence::pressure_high: return pressure(at, false);
        case Evidence::mesh_not_held: return held(at);
        case Evidence::gap_large: return gap(at, true);
        case Evidence::gap_small: return gap(at, false);
        case Evidence::heights_uneven:
            return seen_above(std::abs(contact.uneven), left_right_tolerance);
        case Evidence::tension_low:
            return seen_below(std::min(head.screen.tension_along, head.screen.tension_across),
                              slack_tension);
        case Evidence::tension_apart: return beside_base(at);
        case Evidence::length_differs: return length(at);
        case Evidence::film_thin: return film(at);
        case Evidence::detail_fine: return detail(at);
        default: return {};
    }
}

} // namespace carriageway
