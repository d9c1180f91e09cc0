// Rounds of reading and turning at one head: is it getting there, and does each screw do what the
// profile says?
//
// As each screw holds the screen at one place (adjusters.h), what a screw was turned can be
// compared with how far the travel needed at that same screw changed, whatever the others did.
#pragma once

#include <array>
#include <cstddef>
#include <span>

#include "core/advice.h"

namespace carriageway {

/// One round: what was read, and what was turned after it. Numbers by side are at
/// index_of(side).
struct Round {
    double error_rms = 0.0; ///< of the marks before the turn, mm (Registration)
    double error_max = 0.0;
    double reading = 0.0; ///< standard deviation of one coordinate of a reading, mm
    BySide needed{};      ///< travel that was needed at each screw, mm toward +y or +x
    BySide deviation{};   ///< its standard deviation, mm
    BySide turned{};      ///< turns that were made after the reading, net, positive clockwise
    BySide shortfall{};   ///< turns by which each may have fallen short, as play wasn't taken up
    /// The needs are known at the screws. A single mark under screws that turn the screen doesn't
    /// give them: its round counts for the progress, but says nothing of any screw.
    bool needs_known = true;
};

/// The round that a registration and its advice stand for, with the advised turns as those made; a
/// person who turned something else puts that into `turned`.
Round round_of(const Registration& registration, const Advice& advice,
               std::span<const Adjuster> adjusters);

/// How the rounds go.
enum class Progress {
    none,      ///< no round yet, or only one, which is not good enough
    converged, ///< the last reading is good enough
    improving, ///< the last turn made it better
    stalled,   ///< the last turn took away less than stall_share of the error
    diverging, ///< the last turn made it worse by more than the reading error explains
};

/// A round that takes away less than this share of the error is stalled. Ours.
inline constexpr double stall_share = 0.2;

/// What a screw really does.
struct ScrewEstimate {
    bool known = false; ///< it was turned, with a reading before and after
    /// mm toward +y (or +x) per clockwise turn: negative means clockwise moves it the other way.
    double mm_per_turn = 0.0;
    double deviation = 0.0; ///< standard deviation
    /// Opposite to the profile by more than sure_deviations: the profile's sign is wrong (or the
    /// screw was turned the wrong way).
    bool sign_wrong = false;
    /// Off the profile's value by more than sure_deviations: its travel per turn is wrong, the
    /// screw slips, or the screen is clamped fast.
    bool differs = false;
};

/// Standard deviations from which a profile's value is doubted. Ours.
inline constexpr double sure_deviations = 3.0;

/// What the rounds so far say.
struct Rounds {
    Progress progress = Progress::none;
    std::array<ScrewEstimate, adjuster_sides> screws{}; ///< at index_of(side)
};

/// Judges the rounds, the oldest first; the last one's turns haven't been read yet. Good enough is
/// a largest error of at most `tolerance` mm. Readings that aren't finite, or a list of adjusters
/// with a fault, say nothing (none, nothing known).
Rounds judge_rounds(std::span<const Round> rounds, std::span<const Adjuster> adjusters,
                    double tolerance);

} // namespace carriageway
