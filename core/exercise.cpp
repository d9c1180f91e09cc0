#include "core/exercise.h"

#include <algorithm>

#include "core/assess.h"
#include "core/exercise_kinds.h"

namespace carriageway {
namespace {

using Maker = bool (*)(ExerciseRandom&, Exercise&);
constexpr Maker makers[] = {make_find_fault, make_shortest_stroke, make_trainee_angle,
                            make_which_dial, make_read_sheet,      make_place_stations,
                            make_judge_gap};
static_assert(std::size(makers) == static_cast<std::size_t>(ExerciseKind::count));

/// Another stream for each kind, seed, level and try.
std::uint64_t stream_of(ExerciseKind kind, std::uint64_t seed, int level, int tried) {
    ExerciseRandom mix(seed);
    const std::uint64_t first = mix.next();
    return first ^ (static_cast<std::uint64_t>(kind) << 48) ^
           (static_cast<std::uint64_t>(level) << 40) ^ static_cast<std::uint64_t>(tried);
}

} // namespace

Exercise make_exercise(ExerciseKind kind, std::uint64_t seed, int level) {
    const int clamped = std::clamp(level, lowest_level, highest_level);
    // A try comes to nothing where its numbers happen not to do what they are meant to. Each has an
    // even chance at least, so that the limit is never met; the test counts.
    constexpr int most_tries = 1000;
    Exercise exercise;
    for (int tried = 0; tried < most_tries; ++tried) {
        exercise = {};
        exercise.kind = kind;
        exercise.seed = seed;
        exercise.level = clamped;
        ExerciseRandom random(stream_of(kind, seed, clamped, tried));
        if (makers[static_cast<std::size_t>(kind)](random, exercise)) break;
    }
    return exercise;
}

std::vector<FaultClaim> faults_of(const Job& job) {
    Assessment assessment;
    assess(job, assessment);
    std::vector<FaultClaim> faults;
    for (const HeadAssessment& head : assessment.heads)
        for (const Finding& finding : head.findings) {
            const FaultClaim claim{head.head, finding.kind};
            const bool told = std::find(faults.begin(), faults.end(), claim) != faults.end();
            if (finding.severity != Severity::note && !told) faults.push_back(claim);
        }
    return faults;
}

double after_hints(double score, int used) {
    return std::max(0.0, score - hint_share * std::max(0, used));
}

} // namespace carriageway
