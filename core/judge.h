// Turns what was worked out about a head into findings. Each function adds its own; none allocates
// while `findings` holds room for most_findings.
#pragma once

#include "core/assess.h"

namespace carriageway {

/// Lengths that differ by less, mm, are the same: rounding of sums. Ours; the ruler's slack.
inline constexpr double least_difference = graduation_slack;

/// More than a head can be said at once: every kind on every side or end where it can be.
inline constexpr std::size_t most_findings = 64;

/// A head being judged; `out` is complete but for `findings` and `fit`.
struct Judged {
    const Job& job;
    const Head& head;
    HeadAssessment& out;

    /// Adds a finding about this head.
    void add(Severity severity, FindingKind kind, Part part, Side side, double value, double limit,
             Remedy remedy = {}) const;
};

/// Fills `findings`, worst first, and `fit` of a head that is worked out otherwise.
void judge(const Job& job, const Head& head, HeadAssessment& out);

/// The image: unprinted, starved, heavy, short of the run-past, likely to be missed.
void judge_image(const Judged& judged);

/// Heights, air, tension, mesh and the length of the print. Advice is a note; what spoils the print
/// a mind; nothing here keeps a head from running.
void judge_contact(const Judged& judged);

/// The stops: sensors, carriage, platen, frame, no room, a stroke too long. Comes last, because
/// a long stroke is worth a word only where the stops are right otherwise.
void judge_stops(const Judged& judged);

/// What no stop can mend: angles, widths, the screen, speeds.
void judge_parts(const Judged& judged);

/// Moves the stop at one end to the advised place, or both where that one alone won't do; nothing
/// where nothing is advised or it already stands there.
Remedy stop_remedy(const Judged& judged, End end);

/// Moves both stops to the advised places.
Remedy stops_remedy(const Judged& judged);

/// Sets a number of the head; nothing where the field doesn't accept it.
Remedy number_remedy(Field field, double value);

constexpr Side side_of(End end) {
    return end == End::operator_side ? Side::operator_side : Side::machine_side;
}

}  // namespace carriageway
