// Exercises that find faults: a job that is right, broken one, two or three times.
#include <algorithm>

#include "core/exercise_break.h"
#include "core/exercise_choices.h"
#include "core/exercise_job.h"
#include "core/exercise_kinds.h"

namespace carriageway {
namespace {

int heads_for(int level) { return level <= 2 ? 1 : level <= 4 ? 2 : level <= 6 ? 4 : 6; }
int faults_for(int level) { return level <= 4 ? 1 : level <= 6 ? 2 : 3; }

} // namespace

bool make_find_fault(ExerciseRandom& random, Exercise& exercise) {
    const int heads = heads_for(exercise.level), wanted = faults_for(exercise.level);
    exercise.job = fit_job(random, heads);
    exercise.head = heads == 1 ? exercise.job.heads.front().id : 0;
    for (int i = 0; i < wanted; ++i) {
        const Head& head = random.one_of(exercise.job.heads);
        const auto kind =
            static_cast<BreakingKind>(random.below(static_cast<std::size_t>(BreakingKind::count)));
        const std::optional<Edit> edit =
            breaking_edit(exercise.job, head.id, kind, random.stepped(0.0, 1.0, 0.1));
        if (!edit) return false;
        Applied applied = apply(exercise.job, *edit);
        if (!applied) return false;
        exercise.solution.edits.insert(exercise.solution.edits.begin(), *applied.inverse);
    }
    // Each breaking one fault, and no accidental others: one may hide another, or bring a second.
    exercise.solution.faults = faults_of(exercise.job);
    if (exercise.solution.faults.size() != static_cast<std::size_t>(wanted)) return false;
    exercise.choices =
        choices_for(random, exercise.job, exercise.solution.faults, 3 + exercise.level);
    return true;
}

} // namespace carriageway
