// Marking: what an answer is worth, line by line.
#include <algorithm>
#include <cmath>
#include <set>

#include "core/assess.h"
#include "core/exercise_kinds.h"
#include "core/job_placement.h"
#include "core/placement_search.h"

namespace carriageway {
namespace {

// Shares of the whole. All ours.
constexpr double fit_points = 0.5, stroke_points = 0.3, moves_points = 0.2;
constexpr double move_costs = 0.05;       ///< each move more than needed
constexpr double stroke_worth_none = 100.0; ///< mm beyond the shortest at which nothing is left
constexpr double near_points = 0.4;       ///< for the number next to the right one
constexpr double disturbed_costs = 0.1;
constexpr double wishes_points = 0.6, best_points = 0.4;
constexpr double idle_worth_none = 4.0;   ///< stations idle more than the best

bool holds(const std::vector<FaultClaim>& all, const FaultClaim& claim) {
    return std::find(all.begin(), all.end(), claim) != all.end();
}

void mark_faults(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    const std::vector<FaultClaim>& truth = exercise.solution.faults;
    const double each = truth.empty() ? 0.0 : 1.0 / static_cast<double>(truth.size());
    for (const FaultClaim& claim : truth) {
        const bool found = holds(answer.faults, claim);
        MarkLine line{found ? MarkReason::fault_found : MarkReason::fault_missed, claim.head,
                      claim.kind};
        line.points = found ? each : 0.0;
        line.most = each;
        out.lines.push_back(line);
    }
    std::vector<FaultClaim> told;
    for (const FaultClaim& claim : answer.faults) {
        if (holds(truth, claim) || holds(told, claim)) continue;
        told.push_back(claim);
        MarkLine line{MarkReason::not_a_fault, claim.head, claim.kind};
        line.points = -wrong_share * each;
        out.lines.push_back(line);
    }
}

/// Whether an edit sets a stop of the head.
bool sets_stop(const Edit& edit, HeadId head) {
    if (const SetStops* stops = std::get_if<SetStops>(&edit.what)) return stops->head == head;
    const SetNumber* number = std::get_if<SetNumber>(&edit.what);
    return number && number->head == head && is_stop(number->field);
}

const Finding* first_stop(const HeadAssessment& head) {
    for (const Finding& finding : head.findings)
        if (finding.severity == Severity::stop) return &finding;
    return nullptr;
}

double travel_after(const Job& job, const std::vector<Edit>& edits, HeadId id) {
    Job done = job;
    for (const Edit& edit : edits) apply(done, edit);
    Assessment assessment;
    assess(done, assessment);
    const HeadAssessment* head = find_head(assessment, id);
    return head ? head->ends.travel() : 0.0;
}

void mark_stroke(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    Job job = exercise.job;
    std::size_t made = 0; // stops that were moved
    for (const Edit& edit : answer.edits) {
        const Stops before = find_head(job, exercise.head)->stops;
        if (!sets_stop(edit, exercise.head) || !apply(job, edit)) continue;
        const Stops now = find_head(job, exercise.head)->stops;
        made += now.operator_side != before.operator_side ? 1 : 0;
        made += now.machine_side != before.machine_side ? 1 : 0;
    }
    Assessment assessment;
    assess(job, assessment);
    const HeadAssessment& head = *find_head(assessment, exercise.head);
    const Finding* stop = first_stop(head);
    MarkLine line{stop ? MarkReason::head_not_fit : MarkReason::head_fit, exercise.head};
    if (stop) line.finding = stop->kind;
    line.most = fit_points;
    line.points = stop || made == 0 ? 0.0 : fit_points;
    out.lines.push_back(line);
    const double best = travel_after(exercise.job, exercise.solution.edits, exercise.head);
    const double beyond = std::max(0.0, head.ends.travel() - best);
    constexpr double slack = 1e-6; // of sums
    line = {stop || beyond > slack ? MarkReason::stroke_long : MarkReason::stroke_short,
            exercise.head};
    line.value = head.ends.travel();
    line.limit = best;
    line.most = stroke_points;
    line.points = line.reason == MarkReason::stroke_short ? stroke_points
                  : stop || made == 0                     ? 0.0
                      : stroke_points * std::max(0.0, 1.0 - beyond / stroke_worth_none);
    if (stop) line.points = 0.0;
    out.lines.push_back(line);
    const std::size_t fewest = exercise.solution.edits.size();
    line = {made > fewest ? MarkReason::moves_more : MarkReason::moves_fewest, exercise.head};
    line.value = static_cast<double>(made);
    line.limit = static_cast<double>(fewest);
    line.most = moves_points;
    const double more = made > fewest ? static_cast<double>(made - fewest) : 0.0;
    line.points = stop || made == 0 ? 0.0 : std::max(0.0, moves_points - move_costs * more);
    out.lines.push_back(line);
}

void mark_number(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    const std::optional<std::size_t> right = right_number(exercise);
    if (!right) return;
    const auto chosen = std::find(exercise.numbers.begin(), exercise.numbers.end(), *answer.number);
    MarkLine line{MarkReason::number_wrong, exercise.head};
    line.field = exercise.field;
    line.value = *answer.number;
    line.limit = exercise.numbers[*right];
    line.most = 1.0;
    if (chosen != exercise.numbers.end()) {
        const auto place = static_cast<std::size_t>(chosen - exercise.numbers.begin());
        const std::size_t apart = place > *right ? place - *right : *right - place;
        if (apart == 0) line.reason = MarkReason::number_right;
        if (apart == 1) line.reason = MarkReason::number_near;
        line.points = apart == 0 ? 1.0 : apart == 1 ? near_points : 0.0;
    }
    out.lines.push_back(line);
}

void mark_dials(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    const std::vector<DialTurn>& wanted = exercise.solution.turns;
    const double each = wanted.empty() ? 0.0 : 1.0 / static_cast<double>(wanted.size());
    // Of an adjuster that is answered both ways the first counts.
    const auto answered = [&](std::size_t adjuster) {
        return std::find_if(answer.turns.begin(), answer.turns.end(),
                            [&](const DialTurn& turn) { return turn.adjuster == adjuster; });
    };
    for (std::size_t i = 0; i < exercise.job.press.adjusters.size(); ++i) {
        const auto want = std::find_if(wanted.begin(), wanted.end(), [&](const DialTurn& turn) {
            return turn.adjuster == i;
        });
        const auto turn = answered(i);
        const bool needed = want != wanted.end(), turned = turn != answer.turns.end();
        if (!needed && !turned) continue;
        MarkLine line{MarkReason::dial_missed, exercise.head};
        line.adjuster = i;
        line.value = turned ? (turn->clockwise ? 1.0 : -1.0) : 0.0;
        line.limit = needed ? (want->clockwise ? 1.0 : -1.0) : 0.0;
        line.most = needed ? each : 0.0;
        if (!needed) {
            line.reason = MarkReason::dial_not_needed;
            line.points = -wrong_share * each;
        } else if (turned) {
            const bool right = turn->clockwise == want->clockwise;
            line.reason = right ? MarkReason::dial_right : MarkReason::dial_other_way;
            line.points = right ? each : 0.0;
        }
        out.lines.push_back(line);
    }
}

void mark_sheet(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    Job job = exercise.job;
    std::set<std::pair<HeadId, Field>> others;
    for (const Edit& edit : answer.edits) {
        if (!apply(job, edit)) continue;
        const SetNumber* number = std::get_if<SetNumber>(&edit.what);
        if (number) others.insert({number->head, number->field});
    }
    // What was right already gives nothing: else leaving everything as it is would pay.
    std::size_t to_set = 0;
    const auto is_right = [&](const Job& of, const SheetLine& line) {
        const double value = number_of(of, find_head(of, line.head), line.field);
        return std::abs(value - line.value) <= sheet_slack(line.field);
    };
    for (const SheetLine& line : exercise.sheet) to_set += is_right(exercise.job, line) ? 0 : 1;
    const double each = to_set > 0 ? 1.0 / static_cast<double>(to_set) : 0.0;
    for (const SheetLine& wanted : exercise.sheet) {
        others.erase({wanted.head, wanted.field});
        const bool was = is_right(exercise.job, wanted), now = is_right(job, wanted);
        MarkLine line{now ? MarkReason::line_set : MarkReason::line_not_set, wanted.head};
        line.field = wanted.field;
        line.value = number_of(job, find_head(job, wanted.head), wanted.field);
        line.limit = wanted.value;
        line.most = was ? 0.0 : each;
        line.points = was ? (now ? 0.0 : -disturbed_costs) : (now ? each : 0.0);
        out.lines.push_back(line);
    }
    for (const auto& [head, field] : others) {
        const Head* there = find_head(job, head);
        const Head* before = find_head(exercise.job, head);
        if (info_of(field).owner == FieldOwner::head && (!there || !before)) continue;
        MarkLine line{MarkReason::head_disturbed, head};
        line.field = field;
        line.value = number_of(job, there, field);
        line.limit = number_of(exercise.job, before, field);
        if (std::abs(line.value - line.limit) <= sheet_slack(field)) continue;
        line.points = -disturbed_costs;
        out.lines.push_back(line);
    }
}

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

bool is_answered(const Exercise& exercise, const ExerciseAnswer& answer) {
    switch (exercise.kind) {
        case ExerciseKind::find_fault: return !answer.faults.empty();
        case ExerciseKind::which_dial: return !answer.turns.empty();
        case ExerciseKind::trainee_angle:
        case ExerciseKind::judge_gap: return answer.number.has_value();
        default: return !answer.edits.empty();
    }
}

} // namespace

Marking mark(const Exercise& exercise, const ExerciseAnswer& answer) {
    Marking marking;
    if (!is_answered(exercise, answer)) {
        MarkLine line;
        line.most = 1.0;
        marking.lines.push_back(line);
        return marking;
    }
    switch (exercise.kind) {
        case ExerciseKind::find_fault: mark_faults(exercise, answer, marking); break;
        case ExerciseKind::shortest_stroke: mark_stroke(exercise, answer, marking); break;
        case ExerciseKind::trainee_angle:
        case ExerciseKind::judge_gap: mark_number(exercise, answer, marking); break;
        case ExerciseKind::which_dial: mark_dials(exercise, answer, marking); break;
        case ExerciseKind::read_sheet: mark_sheet(exercise, answer, marking); break;
        case ExerciseKind::place_stations: mark_stations(exercise, answer, marking); break;
        case ExerciseKind::count: break;
    }
    double sum = 0.0;
    for (const MarkLine& line : marking.lines) sum += line.points;
    // Shares that are thirds don't sum to 1 exactly.
    marking.score = std::clamp(std::round(sum * 1e9) / 1e9, 0.0, 1.0);
    return marking;
}

} // namespace carriageway
