#include <algorithm>
#include <cmath>

#include "core/judge.h"

namespace carriageway {
namespace {

/// Tension below which a screen is worth a note, and then a thought, N/cm. Ours; published advice
/// runs from 15 to 35, and sources conflict.
constexpr double tension_to_note = 20.0;
constexpr double tension_to_mind = 15.0;

/// Screens of one job should be this alike, N/cm (published advice).
constexpr double tension_apart = 2.0;

/// Heights that differ by less than this from advice are as advised, mm: they can't be read closer.
constexpr double gap_slack = 0.05;

void judge_edges(const Judged& judged) {
    const HeadContact& contact = judged.out.contact;
    // A blade on its height stop is held off on purpose, but not off the garment.
    if (contact.squeegee.over_garment > least_difference) {
        judged.add(Severity::mind, FindingKind::squeegee_high, Part::squeegee, Side::both,
                   contact.squeegee.over_garment, 0.0);
    }
    if (contact.flood.over_mesh > least_difference) {
        judged.add(Severity::note, FindingKind::flood_high, Part::flood, Side::both,
                   contact.flood.over_mesh, 0.0);
    }
    if (contact.flood.reaches_garment()) {
        judged.add(Severity::mind, FindingKind::flood_low, Part::flood, Side::both,
                   -contact.flood.over_garment, 0.0);
    }
}

void judge_gap(const Judged& judged) {
    const HeadContact& contact = judged.out.contact;
    if (std::abs(contact.uneven) > left_right_tolerance + least_difference) {
        judged.add(Severity::mind, FindingKind::heights_uneven, Part::screen,
                   contact.uneven > 0.0 ? Side::right : Side::left, std::abs(contact.uneven),
                   left_right_tolerance);
    }
    if (contact.gap.least <= 0.0) {
        judged.add(Severity::mind, FindingKind::screen_on_garment, Part::screen, Side::both,
                   contact.gap.least, 0.0);
        return;
    }
    const OffContactAdvice& advice = advice_for(judged.job.garment.kind);
    if (contact.middle_gap < advice.least - gap_slack) {
        judged.add(Severity::note, FindingKind::gap_unusual, Part::screen, Side::both,
                   contact.middle_gap, advice.least);
    } else if (contact.middle_gap > advice.most + gap_slack) {
        judged.add(Severity::note, FindingKind::gap_unusual, Part::screen, Side::both,
                   contact.middle_gap, advice.most);
    }
}

void judge_pressure(const Judged& judged) {
    const HeadContact& contact = judged.out.contact;
    const BladePressure& set = judged.head.pressure;
    if (contact.hold == HoldDown::not_enough) {
        judged.add(Severity::mind, FindingKind::mesh_not_held, Part::squeegee, Side::both,
                   *contact.line_load, contact.worst->line_force);
    }
    const auto unusual = [&](Part part, double pressure, const PressureRange& range) {
        if (range.contains(pressure)) return;
        judged.add(Severity::note, FindingKind::pressure_unusual, part, Side::both, pressure,
                   pressure < range.least ? range.least : range.most);
    };
    unusual(Part::squeegee, set.squeegee, usual_squeegee_pressure);
    unusual(Part::flood, set.flood, usual_flood_pressure);
}

void judge_tension(const Judged& judged) {
    const Screen& screen = judged.head.screen;
    const double tension = std::min(screen.tension_along, screen.tension_across);
    if (tension < tension_to_note) {
        judged.add(tension < tension_to_mind ? Severity::mind : Severity::note,
                   FindingKind::tension_low, Part::screen, Side::both, tension,
                   tension < tension_to_mind ? tension_to_mind : tension_to_note);
    }
    const Head* base = base_head(judged.job);
    const double beside = base == nullptr ? 0.0 : screen.tension_along - base->screen.tension_along;
    if (std::abs(beside) > tension_apart + least_difference) {
        judged.add(Severity::note, FindingKind::tension_apart, Part::screen, Side::both, beside,
                   tension_apart);
    }
}

void judge_print(const Judged& judged) {
    const HeadAssessment& out = judged.out;
    if (out.deposit.detail && *out.deposit.detail != DetailFit::carried) {
        constexpr double um_per_mm = 1000.0;
        const bool lost = *out.deposit.detail == DetailFit::too_fine;
        judged.add(lost ? Severity::mind : Severity::note, FindingKind::detail_too_fine, Part::image,
                   Side::both, judged.head.deposit.finest_detail,
                   (lost ? out.deposit.finest.least : out.deposit.finest.most) / um_per_mm);
    }
    if (!out.contact.beside_base) return;
    const double difference = out.contact.beside_base->total();
    const double tolerance = judged.job.registration.tolerance;
    if (std::abs(difference) > tolerance) {
        judged.add(Severity::mind, FindingKind::length_differs, Part::image, Side::both, difference,
                   tolerance);
    }
}

} // namespace

void judge_contact(const Judged& judged) {
    judge_edges(judged);
    judge_gap(judged);
    judge_pressure(judged);
    judge_tension(judged);
    judge_print(judged);
}

} // namespace carriageway
