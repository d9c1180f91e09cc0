#include "core/exercise_break.h"

#include <algorithm>
#include <cmath>

#include "core/exercise_choices.h"
#include "core/sensor.h"

namespace carriageway {
namespace {

Edit set(HeadId head, Field field, double value) { return {SetNumber{head, field, value}}; }

/// On the ruler's graduations: what a person would have set.
Edit stops_edit(const Job& job, const Head& head, double operator_by, double machine_by) {
    const double step = job.press.ruler.graduation;
    const auto by = [&](double mm) { return std::round(mm / step) * step; };
    Stops stops = head.stops;
    stops.operator_side += by(operator_by);
    stops.machine_side += by(machine_by);
    return {SetStops{head.id, stops}};
}

Edit together(const Job& job, const Head& head, double much) {
    const double least = least_separation(job.press.sensors);
    const double wanted = least * (0.9 - 0.5 * much);
    return stops_edit(job, head, 0.0, wanted - separation(head.stops));
}

Edit heights(const Head& head, double left, double others) {
    return {Together{{set(head.id, Field::height_left, left),
                      set(head.id, Field::height_right, others),
                      set(head.id, Field::height_machine, others)}}};
}

Edit tensions(const Head& head, double tension) {
    return {Together{{set(head.id, Field::tension_along, tension),
                      set(head.id, Field::tension_across, tension)}}};
}

/// To whole millimetres, as a sheet would have it.
double whole(double mm) { return std::round(mm); }

Edit edit_of(const Job& job, const Head& head, BreakingKind kind, double much) {
    const PressProfile& press = job.press;
    const double some = 40.0 + 60.0 * much, degree = radians(1.0);
    const HeadId id = head.id;
    switch (kind) {
        case BreakingKind::stops_together: return together(job, head, much);
        case BreakingKind::operator_stop_in: return stops_edit(job, head, some, 0.0);
        case BreakingKind::machine_stop_in: return stops_edit(job, head, 0.0, -some);
        case BreakingKind::operator_stop_out: return stops_edit(job, head, -some, 0.0);
        case BreakingKind::machine_stop_out: return stops_edit(job, head, 0.0, some);
        case BreakingKind::flood_too_flat:
            return set(id, Field::flood_angle, press.angles.wings_flat);
        case BreakingKind::squeegee_too_steep:
            return set(id, Field::squeegee_angle,
                       std::max(0.0, press.angles.least - degree * (2.0 + whole(2.0 * much))));
        case BreakingKind::squeegee_narrow:
            return set(id, Field::squeegee_width, whole(head.image.width - 6.0 - 30.0 * much));
        case BreakingKind::flood_narrow:
            return set(id, Field::flood_width, whole(head.squeegee.width - 10.0 - 40.0 * much));
        case BreakingKind::too_fast:
            return set(id, Field::print_speed, whole(press.carriage.fastest * (1.1 + 0.2 * much)));
        case BreakingKind::squeegee_lifted:
            return set(id, Field::squeegee_gauge, press.squeegee_gauge.highest);
        case BreakingKind::one_side_high:
            return heights(head, head.heights.left + 0.5 + 0.1 * whole(10.0 * much),
                           head.heights.right);
        case BreakingKind::screen_low: return heights(head, 0.4, 0.4);
        case BreakingKind::mesh_slack: return tensions(head, 14.0 - whole(4.0 * much));
        case BreakingKind::image_aside:
            return set(id, Field::image_offset_x, whole(60.0 + 60.0 * much));
        case BreakingKind::count: break;
    }
    return {Together{}};
}

} // namespace

std::optional<Edit> breaking_edit(const Job& job, HeadId head, BreakingKind kind, double much) {
    const Head* found = find_head(job, head);
    if (!found || kind == BreakingKind::count) return std::nullopt;
    Edit edit = edit_of(job, *found, kind, std::clamp(much, 0.0, 1.0));
    Job broken = job;
    if (!apply(broken, edit) || broken == job) return std::nullopt;
    return edit;
}

std::vector<Breaking> breakings_of(const Job& job, HeadId head) {
    const std::vector<FaultClaim> before = faults_of(job);
    std::vector<Breaking> all;
    for (int i = 0; i < static_cast<int>(BreakingKind::count); ++i) {
        const auto kind = static_cast<BreakingKind>(i);
        const std::optional<Edit> edit = breaking_edit(job, head, kind, 0.5);
        if (!edit) continue;
        Job broken = job;
        apply(broken, *edit);
        std::vector<FaultClaim> faults = faults_of(broken);
        std::erase_if(faults, [&](const FaultClaim& claim) {
            return std::find(before.begin(), before.end(), claim) != before.end();
        });
        if (!faults.empty()) all.push_back({kind, *edit, std::move(faults)});
    }
    return all;
}

std::optional<Exercise> exercise_of_broken(const Job& broken) {
    if (fault_of(broken)) return std::nullopt;
    Exercise exercise;
    exercise.kind = ExerciseKind::find_fault;
    exercise.level = 0;
    exercise.from_job = true;
    exercise.job = broken;
    exercise.solution.faults = faults_of(broken);
    if (exercise.solution.faults.empty()) return std::nullopt;
    ExerciseRandom random(0);
    exercise.choices = choices_for(random, broken, exercise.solution.faults, 6);
    return exercise;
}

std::optional<Exercise> exercise_from(const Job& real, const std::vector<Edit>& edits) {
    if (fault_of(real) || !faults_of(real).empty()) return std::nullopt;
    Job broken = real;
    std::vector<Edit> back;
    for (const Edit& edit : edits) {
        Applied applied = apply(broken, edit);
        if (!applied) return std::nullopt;
        back.insert(back.begin(), std::move(*applied.inverse));
    }
    std::optional<Exercise> exercise = exercise_of_broken(broken);
    if (exercise) exercise->solution.edits = std::move(back);
    return exercise;
}

} // namespace carriageway
