// Marking: what an answer is worth, line by line.
#include <algorithm>
#include <cmath>

#include "core/assess.h"
#include "core/exercise_kinds.h"

namespace carriageway {
namespace {

// Shares of the whole. All ours.
constexpr double fit_points = 0.5, stroke_points = 0.3, moves_points = 0.2;
constexpr double move_costs = 0.05;       ///< each move more than needed
constexpr double stroke_worth_none = 100.0; ///< mm beyond the shortest at which nothing is left
constexpr double near_points = 0.4;       ///< for the number next to the right one
constexpr double disturbed_costs = 0.1;

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
    const double worth = line.reason == MarkReason::stroke_short
                             ? 1.0
                             : std::max(0.0, 1.0 - beyond / stroke_worth_none);
    line.points = stop || made == 0 ? 0.0 : stroke_points * worth;
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

/// What the sheet doesn't name and is otherwise now. Whole jobs are compared, so it doesn't matter
/// by which edit it came, and what was put back doesn't count.
void mark_disturbed(const Exercise& exercise, const Job& job, HeadId id, Marking& out) {
    const Head* before = find_head(exercise.job, id);
    const Head* now = find_head(job, id);
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        const bool of_head = info_of(field).owner == FieldOwner::head;
        if (of_head != (id != 0) || (of_head && !now)) continue;
        const bool named = std::any_of(
            exercise.sheet.begin(), exercise.sheet.end(),
            [&](const SheetLine& line) { return line.head == id && line.field == field; });
        if (named) continue;
        MarkLine line{MarkReason::head_disturbed, id};
        line.field = field;
        line.value = number_of(job, now, field);
        line.limit = number_of(exercise.job, before, field);
        if (std::abs(line.value - line.limit) <= sheet_slack(field)) continue;
        line.points = -disturbed_costs;
        out.lines.push_back(line);
    }
}

void mark_sheet(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out) {
    Job job = exercise.job;
    for (const Edit& edit : answer.edits) apply(job, edit);
    // A head that was taken off has nothing set.
    const auto is_right = [&](const Job& of, const SheetLine& line) {
        const Head* head = find_head(of, line.head);
        return head &&
               std::abs(number_of(of, head, line.field) - line.value) <= sheet_slack(line.field);
    };
    // What was right already gives nothing: else leaving everything as it is would pay.
    std::size_t to_set = 0;
    for (const SheetLine& line : exercise.sheet) to_set += is_right(exercise.job, line) ? 0 : 1;
    const double each = to_set > 0 ? 1.0 / static_cast<double>(to_set) : 0.0;
    for (const SheetLine& wanted : exercise.sheet) {
        const bool was = is_right(exercise.job, wanted), now = is_right(job, wanted);
        const Head* head = find_head(job, wanted.head);
        MarkLine line{now ? MarkReason::line_set : MarkReason::line_not_set, wanted.head};
        line.field = wanted.field;
        line.value = head ? number_of(job, head, wanted.field) : 0.0;
        line.limit = wanted.value;
        line.most = was ? 0.0 : each;
        line.points = was ? (now ? 0.0 : -disturbed_costs) : (now ? each : 0.0);
        out.lines.push_back(line);
    }
    mark_disturbed(exercise, job, 0, out); // the job's and the press's
    for (const Head& head : exercise.job.heads) mark_disturbed(exercise, job, head.id, out);
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
