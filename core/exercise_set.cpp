// Exercises that are answered by setting: stops, a sheet, stations.
#include <algorithm>
#include <cmath>

#include "core/assess.h"
#include "core/exercise_job.h"
#include "core/exercise_kinds.h"
#include "core/job_placement.h"
#include "core/placement_search.h"
#include "core/sensor.h"

namespace carriageway {
namespace {

/// The edits that bring stops to others, one stop each; the one first that doesn't cross the other.
std::vector<Edit> moves_to(HeadId head, const Stops& from, const Stops& to) {
    Stops half = from;
    const bool machine_first = to.operator_side >= from.machine_side;
    if (machine_first) half.machine_side = to.machine_side;
    else half.operator_side = to.operator_side;
    std::vector<Edit> edits;
    if (!(half == from)) edits.push_back({SetStops{head, half}});
    if (!(to == half)) edits.push_back({SetStops{head, to}});
    return edits;
}

Stops wrong_stops(ExerciseRandom& random, const Job& job, const Stops& right, int level) {
    Stops wrong = right;
    const double far = random.stepped(40.0, 100.0, 5.0), other = random.stepped(40.0, 100.0, 5.0);
    const bool machine = random.chance(1, 2);
    double& one = machine ? wrong.machine_side : wrong.operator_side;
    const double outward = machine ? 1.0 : -1.0;
    if (level <= 2) {
        one += outward * far;
    } else if (level <= 4) {
        one -= outward * far;
    } else if (level <= 6) {
        wrong.operator_side += random.chance(1, 2) ? -far : far;
        wrong.machine_side += random.chance(1, 2) ? -other : other;
    } else {
        const double middle = std::round(random.stepped(-80.0, 80.0, 10.0));
        const double half = std::floor(0.4 * least_separation(job.press.sensors));
        wrong = {right.operator_side + std::round(0.5 * separation(right)) + middle - half,
                 right.operator_side + std::round(0.5 * separation(right)) + middle + half};
    }
    return wrong;
}

/// A field of a sheet, and what a person would set it to instead.
struct SheetField {
    Field field;
    double step;  ///< in the core's unit
    int least, most; ///< steps that it is off
};
constexpr SheetField sheet_fields[] = {
    {Field::operator_stop, 1.0, 8, 40},        {Field::machine_stop, 1.0, 8, 40},
    {Field::squeegee_angle, radians(1.0), 2, 5}, {Field::flood_angle, radians(1.0), 2, 5},
    {Field::squeegee_gauge, 0.1, 2, 5},        {Field::flood_gauge, 0.1, 2, 5},
    {Field::print_speed, 10.0, 5, 15},         {Field::flood_speed, 10.0, 5, 15},
    {Field::height_left, 0.1, 4, 12},          {Field::height_right, 0.1, 4, 12},
    {Field::height_machine, 0.1, 4, 12},       {Field::squeegee_pressure, 10.0, 2, 8},
    {Field::flood_pressure, 10.0, 2, 6},
};

/// Sets a field off what it is; false where the job doesn't take that.
bool set_off(ExerciseRandom& random, Job& job, HeadId head, const SheetField& field) {
    const double now = number_of(job, find_head(job, head), field.field);
    const double by = field.step * random.whole(field.least, field.most);
    return static_cast<bool>(
        apply(job, {SetNumber{head, field.field, random.chance(1, 2) ? now + by : now - by}}));
}

void give_wishes(ExerciseRandom& random, Job& job, int level) {
    for (std::size_t i = 0; i < job.heads.size(); ++i) {
        ColourWish& wish = job.heads[i].wish;
        wish = {};
        wish.order = i == 0 ? 0.0 : random.whole(1, 2);
        wish.flash_after = i == 0;
        wish.cool_after = i == 0 ? 1.0 : 0.0;
        wish.flash_together = i == 0;
        if (i > 0 && level >= 5) wish.wet_on_wet = random.chance(4, 5);
    }
}

/// Heads and flash units on stations by chance; load and unload stay.
void scatter_over(ExerciseRandom& random, Job& job, int flashes) {
    std::vector<int> stations;
    for (int station = 2; station < job.press.stations; ++station) stations.push_back(station);
    random.shuffle(stations);
    std::fill(job.uses.begin() + 1, job.uses.end() - 1, StationUse::open);
    for (Head& head : job.heads) {
        head.station = stations.back();
        stations.pop_back();
    }
    for (int i = 0; i < flashes; ++i) {
        job.uses[static_cast<std::size_t>(stations.back() - 1)] = StationUse::flash;
        stations.pop_back();
    }
    std::sort(job.heads.begin(), job.heads.end(),
              [](const Head& a, const Head& b) { return a.station < b.station; });
}

} // namespace

bool make_shortest_stroke(ExerciseRandom& random, Exercise& exercise) {
    exercise.job = fit_job(random, 1);
    Head& head = exercise.job.heads.front();
    exercise.head = head.id;
    const Stops right = head.stops;
    head.stops = wrong_stops(random, exercise.job, right, exercise.level);
    if (fault_of(exercise.job)) return false;
    // A short way past the shortest is no fault; it must be plain that something is to be done.
    if (faults_of(exercise.job).empty()) return false;
    exercise.solution.edits = moves_to(head.id, head.stops, right);
    Job solved = exercise.job;
    for (const Edit& edit : exercise.solution.edits)
        if (!apply(solved, edit)) return false;
    return faults_of(solved).empty();
}

double sheet_slack(Field field) {
    switch (info_of(field).quantity) {
        case Quantity::angle: return radians(0.25);
        case Quantity::speed: return 3.0;
        case Quantity::pressure: return 4.0;
        case Quantity::marks: return 0.03;
        // A height is set to a tenth of a millimetre, a stop to the ruler's marks.
        case Quantity::length: return is_stop(field) ? 0.5 : 0.06;
        default: return 1e-6;
    }
}

bool make_read_sheet(ExerciseRandom& random, Exercise& exercise) {
    const int heads = exercise.level <= 4 ? 1 : 2;
    exercise.job = fit_job(random, heads);
    const Head right = random.one_of(exercise.job.heads);
    exercise.head = right.id;
    std::vector<SheetField> fields(std::begin(sheet_fields), std::end(sheet_fields));
    random.shuffle(fields);
    fields.resize(static_cast<std::size_t>(2 + exercise.level));
    // In the order of the fields, as a sheet has them.
    std::sort(fields.begin(), fields.end(),
              [](const SheetField& a, const SheetField& b) { return a.field < b.field; });
    for (const SheetField& field : fields) {
        const double value = number_of(exercise.job, &right, field.field);
        exercise.sheet.push_back({right.id, field.field, value});
        if (exercise.level >= 3 && random.chance(1, 4)) continue; // right already
        if (!set_off(random, exercise.job, right.id, field)) return false;
        exercise.solution.edits.push_back({SetNumber{right.id, field.field, value}});
    }
    // Set in any order, nothing may stand in the way; and something must be left to do.
    if (exercise.solution.edits.size() < 2) return false;
    Job solved = exercise.job;
    for (const Edit& edit : exercise.solution.edits)
        if (!apply(solved, edit)) return false;
    return faults_of(solved).empty();
}

bool make_place_stations(ExerciseRandom& random, Exercise& exercise) {
    const int colours = 3 + (exercise.level - 1) / 2;
    const int flashes = exercise.level <= 5 ? 1 : 2;
    exercise.job = fit_job(random, colours);
    if (exercise.job.press.stations < colours + flashes + 3) return false;
    give_wishes(random, exercise.job, exercise.level);
    scatter_over(random, exercise.job, flashes);
    if (fault_of(exercise.job)) return false;
    const JobPlacement asked = job_placement(exercise.job);
    PlacementSettings settings;
    settings.alternatives = 1;
    // What comes to an exercise keeps fewer than 100 beginnings; what can't be placed keeps many
    // before that is known, and another question is sooner found.
    settings.most_kept = 2'000;
    const PlacementSearch search = place(asked.question, settings);
    if (search.state() != PlacementState::found) return false;
    const std::optional<Edit> edit =
        placement_edit(exercise.job, asked, search.found().front());
    if (!edit) return false;
    exercise.solution.edits = {*edit};
    // As it stands it must be worse, or break a wish; and the edit must really bring it about.
    Job solved = exercise.job;
    if (!apply(solved, *edit)) return false;
    const PlacementSearch after = place(as_placed_now(solved).question, settings);
    if (after.state() != PlacementState::found) return false;
    const PlacementSearch before = place(as_placed_now(exercise.job).question, settings);
    return before.state() != PlacementState::found ||
           after.found().front().cost < before.found().front().cost;
}

} // namespace carriageway
