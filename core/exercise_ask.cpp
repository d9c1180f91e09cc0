// Exercises that are answered by choosing: an angle, a gap, a dial.
#include <algorithm>
#include <cmath>

#include "core/exercise_job.h"
#include "core/exercise_kinds.h"
#include "core/head_registration.h"
#include "core/off_contact.h"

namespace carriageway {
namespace {

/// How far a number is from what is wanted; nothing where it can't be at all.
std::optional<double> off_by(const Exercise& exercise, double number) {
    const Job& job = exercise.job;
    const Head* head = find_head(job, exercise.head);
    if (!head) return std::nullopt;
    if (exercise.kind == ExerciseKind::trainee_angle) {
        const Angles& angles = job.press.angles;
        constexpr double slack = 1e-9;
        const bool flood = exercise.field == Field::flood_angle;
        if (number < angles.least - slack || number > angles.most + slack) return std::nullopt;
        if (flood && head->flood.winged && number > angles.wings_flat - slack) return std::nullopt;
        return std::abs(number - trainee_angle);
    }
    const bool over_platen = exercise.field == Field::height_left;
    const double gap = number - (over_platen ? job.garment.compressed : 0.0);
    const OffContactAdvice& advice = advice_for(job.garment.kind);
    if (against(advice, gap) == AgainstAdvice::within) return 0.0;
    return std::nullopt;
}

std::vector<double> every(double least, double most, double step) {
    std::vector<double> all;
    for (int i = 0; least + step * i <= most + 1e-9; ++i) all.push_back(least + step * i);
    return all;
}

/// Some of the numbers, ascending.
std::vector<double> some_of(ExerciseRandom& random, std::vector<double> all, std::size_t count) {
    random.shuffle(all);
    all.resize(std::min(all.size(), count));
    std::sort(all.begin(), all.end());
    return all;
}

void give_adjusters(ExerciseRandom& random, PressProfile& press, int level) {
    const double pitches[] = {1.0, 1.25, 1.5}; // M6, M8, M10, coarse (ISO 261)
    const double pitch = pitches[random.below(3)];
    press.adjusters.clear();
    const auto add = [&](const char* name, AdjusterSide side, double x, double y) {
        Adjuster adjuster;
        adjuster.name = name;
        adjuster.side = side;
        adjuster.x = x;
        adjuster.y = y;
        adjuster.mm_per_turn = pitch;
        adjuster.clockwise_positive = level <= 2 || random.chance(1, 2);
        press.adjusters.push_back(adjuster);
    };
    add("1", AdjusterSide::left, -220.0, -370.0);
    add("2", AdjusterSide::right, 220.0, -370.0);
    add("3", AdjusterSide::across, 270.0, 0.0);
}

/// How many graduations each adjuster is to be turned: some of them none.
std::vector<int> wanted_turns(ExerciseRandom& random, int level) {
    std::vector<int> turns(adjuster_sides, 0);
    const int count = level <= 2 ? 1 : level <= 5 ? random.whole(1, 2) : random.whole(2, 3);
    std::vector<std::size_t> order{0, 1, 2};
    random.shuffle(order);
    for (int i = 0; i < count; ++i)
        turns[order[static_cast<std::size_t>(i)]] =
            random.whole(5, 12) * (random.chance(1, 2) ? 1 : -1);
    return turns;
}

/// What the marks of a print look like that these turns would put right.
MarkRound round_before(const Job& job, const Head& head, const std::vector<int>& turns) {
    BySide travel{};
    for (std::size_t i = 0; i < job.press.adjusters.size(); ++i) {
        const Adjuster& adjuster = job.press.adjusters[i];
        travel[index_of(adjuster.side)] = travel_of(adjuster, turns[i]);
    }
    MarkRound round;
    const std::optional<RigidMotion> cure = pose_of(job.press.adjusters, travel);
    if (!cure) return round;
    const RigidMotion error = inverse_of(*cure);
    const double x = 0.5 * head.image.width, y = 0.5 * head.image.length;
    for (const Point corner : {Point{-x, -y}, Point{x, -y}, Point{x, y}, Point{-x, y}})
        round.marks.push_back({corner, moved(error, corner)});
    round.read = true;
    return round;
}

} // namespace

std::optional<std::size_t> right_number(const Exercise& exercise) {
    std::optional<std::size_t> best;
    double least = 0.0;
    bool tied = false;
    for (std::size_t i = 0; i < exercise.numbers.size(); ++i) {
        const std::optional<double> off = off_by(exercise, exercise.numbers[i]);
        if (!off) continue;
        tied = best && std::abs(*off - least) < 1e-9;
        if (best && *off > least - 1e-9) {
            if (tied) return std::nullopt;
            continue;
        }
        best = i;
        least = *off;
    }
    return best;
}

bool make_trainee_angle(ExerciseRandom& random, Exercise& exercise) {
    exercise.job = fit_job(random, 1);
    Head& head = exercise.job.heads.front();
    exercise.head = head.id;
    Angles& angles = exercise.job.press.angles;
    const int level = exercise.level;
    exercise.field = level >= 4 && random.chance(1, 2) ? Field::flood_angle : Field::squeegee_angle;
    if (level >= 3) {
        angles.least = radians(random.whole(3, 18));
        angles.most = angles.least + radians(random.whole(10, 20));
        angles.wings_flat = radians(random.whole(12, 25));
    }
    const double degree = radians(1.0);
    const double step = level <= 2 ? 5.0 : level <= 5 ? 4.0 : 3.0;
    const double first = level <= 2 ? 5.0 : random.whole(2, 4);
    exercise.numbers = some_of(random, every(first * degree, 32.0 * degree, step * degree),
                               static_cast<std::size_t>(3 + level / 2));
    if (fault_of(exercise.job)) return false;
    const std::optional<std::size_t> right = right_number(exercise);
    if (!right) return false;
    exercise.solution.number = exercise.numbers[*right];
    return true;
}

bool make_judge_gap(ExerciseRandom& random, Exercise& exercise) {
    exercise.job = fit_job(random, 1);
    exercise.head = exercise.job.heads.front().id;
    Garment& garment = exercise.job.garment;
    garment.kind = random.chance(1, 2) ? GarmentKind::t_shirt : GarmentKind::fleece;
    const bool fleece = garment.kind == GarmentKind::fleece;
    garment.compressed = fleece ? random.stepped(1.2, 2.4, 0.1) : random.stepped(0.3, 0.8, 0.1);
    double beyond = 0.0;
    if (exercise.level >= 4) {
        exercise.field = Field::height_left; // over the bare platen
        beyond = garment.compressed;
    }
    exercise.numbers = some_of(random, every(0.5 + beyond, 8.0 + beyond, 0.5),
                               static_cast<std::size_t>(3 + exercise.level / 2));
    if (fault_of(exercise.job)) return false;
    const std::optional<std::size_t> right = right_number(exercise);
    if (!right) return false;
    exercise.solution.number = exercise.numbers[*right];
    return true;
}

bool make_which_dial(ExerciseRandom& random, Exercise& exercise) {
    exercise.job = fit_job(random, 1);
    give_adjusters(random, exercise.job.press, exercise.level);
    Head& head = exercise.job.heads.front();
    exercise.head = head.id;
    const std::vector<int> turns = wanted_turns(random, exercise.level);
    head.rounds = {round_before(exercise.job, head, turns)};
    if (fault_of(exercise.job)) return false;
    // The advice given in earnest must come to the very turns that were meant.
    const HeadRegistration result = register_head(exercise.job.press, head.rounds, 0,
                                                  exercise.job.registration.tolerance);
    if (result.verdict != RegistrationVerdict::turn || !result.advice) return false;
    const Advice* advice = std::get_if<Advice>(&*result.advice);
    if (!advice || advice->screws.size() != turns.size()) return false;
    for (const ScrewAdvice& screw : advice->screws)
        if (screw.graduations != turns[screw.adjuster]) return false;
    for (std::size_t i = 0; i < turns.size(); ++i)
        if (turns[i] != 0) exercise.solution.turns.push_back({i, turns[i] > 0});
    return true;
}

} // namespace carriageway
