#include <algorithm>
#include <cmath>
#include <vector>

#include "core/fault_evidence_parts.h"
#include "core/head_registration.h"
#include "core/job_check.h"
#include "core/job_heat.h"
#include "core/job_levelling.h"
#include "core/run_tally.h"

namespace carriageway {
namespace {

// ---- prints ----

/// Of the rounds that were read together, without those of single platens, up to the last.
std::optional<HeadRegistration> last_registration(const LookedAt& at) {
    const std::vector<MarkRound>& rounds = at.head.rounds;
    for (std::size_t i = rounds.size(); i-- > 0;) {
        if (is_of_platen(rounds[i]) || !is_read(rounds[i])) continue;
        return register_head(at.job.press, rounds, i, at.job.registration.tolerance);
    }
    return std::nullopt;
}

Sighting head_off(const LookedAt& at) {
    const std::optional<HeadRegistration> registered = last_registration(at);
    if (!registered) return {};
    const auto* lies = std::get_if<Registration>(&registered->lies);
    if (lies == nullptr) return {};
    return seen_above(lies->error_max, at.job.registration.tolerance);
}

/// mm that a clockwise turn moves the screen toward +y (or +x), as the profile has it.
double clockwise_travel(const Adjuster& adjuster) {
    return adjuster.clockwise_positive ? adjuster.mm_per_turn : -adjuster.mm_per_turn;
}

Sighting screw_sighting(const LookedAt& at) {
    const std::optional<HeadRegistration> registered = last_registration(at);
    if (!registered) return {};
    std::vector<Sighting> sightings;
    for (const Adjuster& adjuster : at.job.press.adjusters) {
        const ScrewEstimate& screw = registered->judged.screws[index_of(adjuster.side)];
        if (!screw.known) continue;
        sightings.push_back({screw.differs || screw.sign_wrong ? Sight::seen : Sight::not_seen,
                             screw.mm_per_turn, clockwise_travel(adjuster)});
    }
    return loudest(sightings);
}

/// The factor of chance for what a scatter says, as signs_of() takes it.
double chance_of(const Scatter& scatter) {
    return student_factor(sign_deviations, scatter.freedoms);
}

Sighting drift_sighting(const Scatter& scatter) {
    const double chance = chance_of(scatter);
    std::vector<Sighting> both;
    for (const ScatterPart* part : {&scatter.x, &scatter.y})
        if (part->known)
            both.push_back(seen_above(std::abs(part->drift.value), chance * part->drift.error));
    return loudest(both);
}

Sighting platen_sighting(const Scatter& scatter) {
    Sighting worst{Sight::not_seen};
    for (const std::size_t p : scatter.off) {
        const double off = std::hypot(scatter.x.platens[p].value, scatter.y.platens[p].value);
        if (worst.sight == Sight::seen && off <= worst.value) continue;
        worst = {Sight::seen, off, 0.0, 0, scatter.platens[p]};
    }
    return worst;
}

Sighting scatter_sighting(Evidence evidence, const LookedAt& at) {
    const PlatenPrints prints = platen_prints(at.job.press, at.head.rounds);
    const auto* scatter = std::get_if<Scatter>(&prints.scatter);
    if (scatter == nullptr || scatter->freedoms < 1) return {};
    if (evidence == Evidence::prints_drift) return drift_sighting(*scatter);
    if (evidence == Evidence::platen_off) return platen_sighting(*scatter);
    const std::vector<ScatterSign> signs = signs_of(*scatter);
    const bool scatters = std::any_of(signs.begin(), signs.end(), [](const ScatterSign& sign) {
        return sign.cause == ScatterCause::index_or_lock;
    });
    return {scatters ? Sight::seen : Sight::not_seen, scatter->x.deviation, scatter->y.deviation};
}

// ---- order ----

/// Stations in the order of a garment's way, as job_placement.h has it.
std::vector<int> way_of(const Job& job) {
    const int count = job.press.stations;
    int first = 1;
    for (const StationUse use : {StationUse::load, StationUse::unload}) {
        int station = 1;
        while (station <= count && !(has_station(job, station) && use_of(job, station) == use))
            ++station;
        if (station > count) continue;
        first = station;
        break;
    }
    std::vector<int> way;
    for (int i = 0; i < count; ++i)
        way.push_back((first - 1 + i) % count + 1);
    return way;
}

bool is_flash(const Job& job, int station) {
    return head_on(job, station) == nullptr && has_station(job, station) &&
           use_of(job, station) == StationUse::flash;
}

/// How many heads print before this one since the last flash.
Sighting on_wet(const LookedAt& at) {
    int wet = 0;
    for (const int station : way_of(at.job)) {
        if (station == at.head.station) break;
        if (is_flash(at.job, station)) wet = 0;
        if (head_on(at.job, station) != nullptr) ++wet;
    }
    return seen_above(wet, 0.0);
}

/// Whether the next head comes before the flash that this one wants behind it.
bool misses_flash(const LookedAt& at) {
    bool behind = false;
    for (const int station : way_of(at.job)) {
        if (behind && is_flash(at.job, station)) return false;
        if (behind && head_on(at.job, station) != nullptr) return true;
        behind = behind || station == at.head.station;
    }
    return false;
}

// ---- run ----

Sighting level_sighting(const Job& job, HeadId head) {
    if (job.height_readings.empty()) return {};
    const JobLevelling levelling = job_levelling(job);
    if (levelling.levelling.refusal != LevelRefusal::none) return {};
    std::vector<Sighting> parts;
    const auto take = [&](const PartOff& part, bool of_head) {
        if (part.known == LevelTerms::none) return;
        parts.push_back({part.out ? Sight::seen : Sight::not_seen, std::abs(part.worst),
                         levelling.targets.tolerance, of_head ? part.number : 0,
                         of_head ? 0 : static_cast<int>(part.number)});
    };
    for (const PartOff& part : levelling.heads)
        if (head == 0 || part.number == head) take(part, true);
    for (const PartOff& part : levelling.platens) take(part, false);
    return loudest(parts);
}

Sighting play_sighting(const Job& job) {
    double coarsest = 0.0;
    for (const Adjuster& adjuster : job.press.adjusters)
        coarsest = std::max(coarsest, adjuster.mm_per_turn);
    if (coarsest <= 0.0) return {};
    return seen_above(job.press.readings.backlash * coarsest, 0.5 * job.registration.tolerance);
}

Sighting dwell_sighting(const Job& job, bool too_short) {
    if (flash_stations(job) == 0) return {};
    return too_short ? seen_below(job.run.flash_dwell, least_flash_dwell)
                     : seen_above(job.run.flash_dwell, most_flash_dwell);
}

Sighting cure_sighting(const Job& job, bool low) {
    const double dryer = job.run.dryer_temperature;
    if (dryer <= 0.0) return {};
    return low ? seen_below(dryer, cure_from) : seen_above(dryer, cure_to);
}

/// That nobody noted air says nothing: stoppages are written down or not.
Sighting air_sighting(const Job& job) {
    double minutes = 0.0;
    bool noted = false;
    for (const Stoppage& stoppage : job.record.stoppages) {
        if (stoppage.reason != StopReason::air) continue;
        minutes += stoppage.minutes;
        noted = true;
    }
    return noted ? Sighting{Sight::seen, minutes, 0.0} : Sighting{};
}

Sighting walk_sighting(const Job& job, HeadId head) {
    int known = 0;
    int otherwise = 0;
    for (const WalkMark& mark : job.walk) {
        const Head* of = mark.head == 0 ? nullptr : find_head(job, mark.head);
        if ((mark.head != 0 && of == nullptr) || (head != 0 && mark.head != head)) continue;
        if (info_of(mark.field).owner == FieldOwner::head && of == nullptr) continue;
        ++known;
        if (mark.real && *mark.real != number_of(job, of, mark.field)) ++otherwise;
    }
    return known == 0 ? Sighting{} : seen_above(otherwise, 0.0);
}

/// Known only where lists are ticked at all and hold the step.
Sighting secured_sighting(const Job& job) {
    if (job.record.ticks.empty()) return {};
    bool asked = false;
    for (const CheckItem& item : checks_of(job.press)) {
        if (item.step != CheckStep::screens_held_mechanically) continue;
        asked = true;
        for (const CheckTick& tick : job.record.ticks)
            if (tick.item == item.id) return seen_if(false);
    }
    return asked ? seen_if(true) : Sighting{};
}

} // namespace

Sighting print_sighting(Evidence evidence, const LookedAt& at) {
    switch (evidence) {
        case Evidence::head_off: return head_off(at);
        case Evidence::screw_answers_otherwise: return screw_sighting(at);
        case Evidence::index_scatters:
        case Evidence::prints_drift:
        case Evidence::platen_off: return scatter_sighting(evidence, at);
        default: return {};
    }
}

Sighting order_sighting(Evidence evidence, const LookedAt& at) {
    if (evidence == Evidence::prints_on_wet) return on_wet(at);
    if (evidence == Evidence::flash_missing)
        return seen_if(at.head.wish.flash_after && misses_flash(at));
    return {};
}

Sighting run_sighting(Evidence evidence, const Job& job, HeadId head) {
    switch (evidence) {
        case Evidence::level_out: return level_sighting(job, head);
        case Evidence::play_large: return play_sighting(job);
        case Evidence::platen_hot:
            return seen_above(heat_outlook(job).hottest, PlatenLimits{}.sticking);
        case Evidence::dwell_short: return dwell_sighting(job, true);
        case Evidence::dwell_long: return dwell_sighting(job, false);
        case Evidence::cure_low: return cure_sighting(job, true);
        case Evidence::cure_high: return cure_sighting(job, false);
        case Evidence::air_noted: return air_sighting(job);
        case Evidence::set_otherwise: return walk_sighting(job, head);
        case Evidence::left_unsecured: return secured_sighting(job);
        default: return {};
    }
}

} // namespace carriageway
