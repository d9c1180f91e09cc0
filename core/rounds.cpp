#include "core/rounds.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

bool finite(const Round& round) {
    const auto all = [](const BySide& numbers) {
        return std::all_of(numbers.begin(), numbers.end(),
                           [](double number) { return std::isfinite(number); });
    };
    return std::isfinite(round.error_rms) && std::isfinite(round.error_max) &&
           std::isfinite(round.reading) && all(round.needed) && all(round.deviation) &&
           all(round.turned) && all(round.shortfall);
}

Progress progress_of(std::span<const Round> rounds, double tolerance) {
    if (rounds.empty()) return Progress::none;
    const Round& last = rounds.back();
    if (last.error_max <= tolerance) return Progress::converged;
    if (rounds.size() < 2) return Progress::none;
    const Round& before = rounds[rounds.size() - 2];
    // An rms is uncertain by less than one coordinate of one mark is.
    const double noise = noise_deviations * std::hypot(before.reading, last.reading);
    if (last.error_rms > before.error_rms + noise) return Progress::diverging;
    if (last.error_rms > (1.0 - stall_share) * before.error_rms) return Progress::stalled;
    return Progress::improving;
}

/// Least squares of (change = mm per turn · turns) over the rounds, weighted by how well each
/// change is known.
ScrewEstimate estimate_of(std::span<const Round> rounds, const Adjuster& adjuster) {
    const std::size_t at = index_of(adjuster.side);
    double products = 0.0, squares = 0.0;
    for (std::size_t i = 0; i + 1 < rounds.size(); ++i) {
        const Round& before = rounds[i];
        const Round& after = rounds[i + 1];
        if (!before.needs_known || !after.needs_known) continue;
        // Play makes a move too short one way and too long the other, by anything up to the
        // shortfall: a rectangle of that half-width (JCGM 100:2008, 4.3.7).
        const double short_by =
            standard_deviation({before.shortfall[at] * adjuster.mm_per_turn, false});
        const double variance = std::pow(before.deviation[at], 2) +
                                std::pow(after.deviation[at], 2) + short_by * short_by;
        if (before.turned[at] == 0.0 || !(variance > 0.0)) continue;
        products += before.turned[at] * (before.needed[at] - after.needed[at]) / variance;
        squares += before.turned[at] * before.turned[at] / variance;
    }
    ScrewEstimate estimate;
    if (!(squares > 0.0)) return estimate;
    estimate.known = true;
    estimate.mm_per_turn = products / squares;
    estimate.deviation = 1.0 / std::sqrt(squares);
    const double sure = sure_deviations * estimate.deviation;
    const double expected =
        adjuster.clockwise_positive ? adjuster.mm_per_turn : -adjuster.mm_per_turn;
    estimate.sign_wrong =
        expected > 0.0 ? estimate.mm_per_turn < -sure : estimate.mm_per_turn > sure;
    estimate.differs = std::abs(estimate.mm_per_turn - expected) > sure;
    return estimate;
}

} // namespace

Round round_of(const Registration& registration, const Advice& advice,
               std::span<const Adjuster> adjusters) {
    Round round;
    round.error_rms = registration.error_rms;
    round.error_max = registration.error_max;
    round.reading = registration.reading;
    round.needs_known = registration.fit.turns || !advice.reach.turning;
    for (const ScrewAdvice& screw : advice.screws) {
        if (screw.adjuster >= adjusters.size()) continue;
        const Adjuster& one = adjusters[screw.adjuster];
        const std::size_t at = index_of(one.side);
        round.needed[at] = screw.whole_travel;
        round.deviation[at] = screw.whole_deviation;
        round.turned[at] = static_cast<double>(screw.graduations) / one.graduations;
        round.shortfall[at] = screw.shortfall;
    }
    return round;
}

Rounds judge_rounds(std::span<const Round> rounds, std::span<const Adjuster> adjusters,
                    double tolerance) {
    Rounds judged;
    if (!std::all_of(rounds.begin(), rounds.end(), finite) || adjuster_fault(adjusters))
        return judged;
    judged.progress = progress_of(rounds, tolerance);
    for (const Adjuster& one : adjusters)
        judged.screws[index_of(one.side)] = estimate_of(rounds, one);
    return judged;
}

} // namespace carriageway
