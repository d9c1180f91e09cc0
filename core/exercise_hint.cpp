// Hints: where to look, then what to look at.
#include <algorithm>
#include <cmath>

#include "core/assess.h"
#include "core/exercise_kinds.h"

namespace carriageway {
namespace {

Hint hint_of(HintKind kind, HeadId head = 0) {
    Hint hint;
    hint.kind = kind;
    hint.head = head;
    return hint;
}

Hint how_many(std::size_t count) {
    Hint hint = hint_of(HintKind::how_many);
    hint.value = static_cast<double>(count);
    return hint;
}

void find_hints(const Exercise& exercise, std::vector<Hint>& out) {
    out.push_back(how_many(exercise.solution.faults.size()));
    std::vector<HeadId> heads;
    for (const FaultClaim& claim : exercise.solution.faults)
        if (std::find(heads.begin(), heads.end(), claim.head) == heads.end())
            heads.push_back(claim.head);
    if (exercise.job.heads.size() > 1)
        for (const HeadId head : heads) out.push_back(hint_of(HintKind::where, head));
    Assessment assessment;
    assess(exercise.job, assessment);
    for (const FaultClaim& claim : exercise.solution.faults) {
        Hint hint = hint_of(HintKind::which_part, claim.head);
        for (const Finding& finding : find_head(assessment, claim.head)->findings)
            if (finding.kind == claim.kind) hint.part = finding.part;
        out.push_back(hint);
    }
}

void stroke_hints(const Exercise& exercise, std::vector<Hint>& out) {
    Job solved = exercise.job;
    for (const Edit& edit : exercise.solution.edits) apply(solved, edit);
    const Stops from = find_head(exercise.job, exercise.head)->stops;
    const Stops to = find_head(solved, exercise.head)->stops;
    for (const End end : {End::operator_side, End::machine_side}) {
        const double by = stop_of(to, end) - stop_of(from, end);
        if (by == 0.0) continue;
        Hint hint = hint_of(HintKind::which_end, exercise.head);
        hint.side = end == End::operator_side ? Side::operator_side : Side::machine_side;
        out.push_back(hint);
        hint.kind = HintKind::which_way;
        hint.value = by > 0.0 ? 1.0 : -1.0;
        out.push_back(hint);
    }
    Assessment assessment;
    assess(solved, assessment);
    Hint last = hint_of(HintKind::limit_value, exercise.head);
    last.value = find_head(assessment, exercise.head)->ends.travel();
    out.push_back(last);
}

void number_hints(const Exercise& exercise, std::vector<Hint>& out) {
    const std::optional<std::size_t> right = right_number(exercise);
    if (!right) return;
    std::vector<double> wrong = exercise.numbers;
    wrong.erase(wrong.begin() + static_cast<std::ptrdiff_t>(*right));
    const double value = exercise.numbers[*right];
    // Of two that are as far off, the same one first on every machine.
    std::stable_sort(wrong.begin(), wrong.end(), [&](double a, double b) {
        return std::abs(a - value) > std::abs(b - value);
    });
    for (const double number : wrong) {
        Hint hint = hint_of(HintKind::not_this, exercise.head);
        hint.field = exercise.field;
        hint.value = number;
        out.push_back(hint);
    }
}

void dial_hints(const Exercise& exercise, std::vector<Hint>& out) {
    out.push_back(how_many(exercise.solution.turns.size()));
    for (const DialTurn& turn : exercise.solution.turns) {
        Hint hint = hint_of(HintKind::which_dial, exercise.head);
        hint.adjuster = turn.adjuster;
        out.push_back(hint);
    }
}

void sheet_hints(const Exercise& exercise, std::vector<Hint>& out) {
    out.push_back(how_many(exercise.solution.edits.size()));
    for (const Edit& edit : exercise.solution.edits) {
        const SetNumber& number = std::get<SetNumber>(edit.what);
        Hint hint = hint_of(HintKind::which_line, number.head);
        hint.field = number.field;
        out.push_back(hint);
    }
}

void station_hints(const Exercise& exercise, std::vector<Hint>& out) {
    Job solved = exercise.job;
    for (const Edit& edit : exercise.solution.edits) apply(solved, edit);
    for (const Head& head : solved.heads) {
        if (find_head(exercise.job, head.id)->station == head.station) continue;
        Hint hint = hint_of(HintKind::first_place, head.id);
        hint.value = head.station;
        out.push_back(hint);
    }
    if (out.empty()) out.push_back(how_many(0)); // only flash units move
}

} // namespace

std::vector<Hint> hints_of(const Exercise& exercise) {
    std::vector<Hint> hints;
    switch (exercise.kind) {
        case ExerciseKind::find_fault: find_hints(exercise, hints); break;
        case ExerciseKind::shortest_stroke: stroke_hints(exercise, hints); break;
        case ExerciseKind::trainee_angle:
        case ExerciseKind::judge_gap: number_hints(exercise, hints); break;
        case ExerciseKind::which_dial: dial_hints(exercise, hints); break;
        case ExerciseKind::read_sheet: sheet_hints(exercise, hints); break;
        case ExerciseKind::place_stations: station_hints(exercise, hints); break;
        case ExerciseKind::count: break;
    }
    return hints;
}

} // namespace carriageway
