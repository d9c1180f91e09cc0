#include "core/exercise_choices.h"

#include <algorithm>

namespace carriageway {
namespace {

/// Findings that a person can tell from a drawing with its numbers.
constexpr FindingKind claimable[] = {
    FindingKind::both_sensors_on, FindingKind::unprinted,      FindingKind::starved,
    FindingKind::heavy,           FindingKind::off_platen,     FindingKind::meets_frame,
    FindingKind::wings_dig_in,    FindingKind::angle_unusual,  FindingKind::blade_too_narrow,
    FindingKind::flood_narrower,  FindingKind::stroke_too_long, FindingKind::speed_beyond_press,
    FindingKind::squeegee_high,   FindingKind::screen_on_garment, FindingKind::heights_uneven,
    FindingKind::gap_unusual,     FindingKind::pressure_unusual, FindingKind::tension_low,
};

bool holds(const std::vector<FaultClaim>& all, const FaultClaim& claim) {
    return std::find(all.begin(), all.end(), claim) != all.end();
}

bool holds_head(const std::vector<FaultClaim>& all, HeadId head) {
    return std::any_of(all.begin(), all.end(),
                       [&](const FaultClaim& claim) { return claim.head == head; });
}

} // namespace

std::vector<FaultClaim> choices_for(ExerciseRandom& random, const Job& job,
                                    const std::vector<FaultClaim>& truth, int others) {
    std::vector<FaultClaim> near, far; // of heads with a fault, of others
    for (const Head& head : job.heads)
        for (const FindingKind kind : claimable) {
            const FaultClaim claim{head.id, kind};
            if (!holds(truth, claim)) (holds_head(truth, head.id) ? near : far).push_back(claim);
        }
    random.shuffle(near);
    random.shuffle(far);
    std::vector<FaultClaim> choices = truth;
    for (int i = 0; i < others && !(near.empty() && far.empty()); ++i) {
        std::vector<FaultClaim>& from = far.empty() || (i % 2 == 0 && !near.empty()) ? near : far;
        choices.push_back(from.back());
        from.pop_back();
    }
    random.shuffle(choices);
    return choices;
}

} // namespace carriageway
