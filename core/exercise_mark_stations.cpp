// Marking where colours were placed: as good as the best placement is as good as the stored one.
#include <algorithm>

#include "core/exercise_kinds.h"
#include "core/job_placement.h"
#include "core/placement_search.h"

namespace carriageway {
namespace {

// Shares of the whole. All ours.
constexpr double wishes_points = 0.6, best_points = 0.4;
constexpr double idle_worth_none = 4.0; ///< stations idle more than the best

/// Whether an edit only moves heads and says what stations are for.
bool only_places(const Edit& edit) {
    if (const Together* all = std::get_if<Together>(&edit.what))
        return std::all_of(all->edits.begin(), all->edits.end(), only_places);
    return std::holds_alternative<MoveHead>(edit.what) ||
           std::holds_alternative<SetUse>(edit.what);
}

std::optional<PlacementCost> cost_now(const Job& job) {
    PlacementSettings settings;
    settings.alternatives = 1;
    const PlacementSearch search = place(as_placed_now(job).question, settings);
    if (search.state() != PlacementState::found) return std::nullopt;
    return search.found().front().cost;
}

/// Flash units and stations to load and unload are the press's: none is put on or taken off.
bool same_units(const Job& a, const Job& b) {
    for (const StationUse use : {StationUse::load, StationUse::unload, StationUse::flash})
        if (std::count(a.uses.begin(), a.uses.end(), use) !=
            std::count(b.uses.begin(), b.uses.end(), use))
            return false;
    return true;
}

} // namespace

void mark_stations(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    Job job = exercise.job, solved = exercise.job;
    bool any = false;
    for (const Edit& edit : answer.edits)
        if (only_places(edit) && apply(job, edit)) any = true;
    for (const Edit& edit : exercise.solution.edits) apply(solved, edit);
    const std::optional<PlacementCost> best = cost_now(solved);
    const std::optional<PlacementCost> cost =
        same_units(job, exercise.job) ? cost_now(job) : std::nullopt;
    MarkLine line{cost ? MarkReason::wishes_met : MarkReason::wishes_broken};
    line.most = wishes_points;
    line.points = any && cost ? wishes_points : 0.0;
    if (!cost) {
        const std::size_t broken = wishes_broken(as_placed_now(job)).size();
        const std::size_t all = wishes_apart(job_placement(job).question).size();
        line.value = static_cast<double>(std::max<std::size_t>(1, broken));
        line.limit = static_cast<double>(all);
        // Half of it for what is met all the same.
        if (any && all > 0 && broken > 0)
            line.points = 0.5 * wishes_points *
                          (1.0 - static_cast<double>(broken) / static_cast<double>(all));
    }
    out.lines.push_back(line);
    line = {MarkReason::placed_worse};
    line.most = best_points;
    line.value = cost ? cost->idle : 0.0;
    line.limit = best ? best->idle : 0.0;
    if (cost && best && *cost <= *best) {
        line.reason = MarkReason::placed_best;
        line.points = any ? best_points : 0.0;
    } else if (any && cost && best) {
        const double more = std::max(1, cost->idle - best->idle);
        line.points = 0.75 * best_points * std::max(0.0, 1.0 - more / idle_worth_none);
    }
    out.lines.push_back(line);
}

} // namespace carriageway
