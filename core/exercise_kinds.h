// The makers of exercises, one a kind (exercise.cpp calls them).
#pragma once

#include "core/exercise.h"
#include "core/exercise_random.h"

namespace carriageway {

/// Each fills what the kind needs; kind, seed and level are set. False: these numbers don't come to
/// an exercise, try with others. `level` lies within the two ends.
bool make_find_fault(ExerciseRandom& random, Exercise& exercise);
bool make_shortest_stroke(ExerciseRandom& random, Exercise& exercise);
bool make_trainee_angle(ExerciseRandom& random, Exercise& exercise);
bool make_which_dial(ExerciseRandom& random, Exercise& exercise);
bool make_read_sheet(ExerciseRandom& random, Exercise& exercise);
bool make_place_stations(ExerciseRandom& random, Exercise& exercise);
bool make_judge_gap(ExerciseRandom& random, Exercise& exercise);

/// Adds the lines of a marking of place_stations (exercise_mark.cpp calls it).
void mark_stations(const Exercise& exercise, const ExerciseAnswer& answer, Marking& out);

/// What trainees are told to begin with (common practice, no source): 15° from the vertical.
inline constexpr double trainee_angle = radians(15.0);

/// Which of the offered numbers is right for an exercise that asks for one: its place; nothing
/// where none or several are.
std::optional<std::size_t> right_number(const Exercise& exercise);

/// How far a number that was set may be from what a sheet says: what a scale or the smallest
/// mark in inches lets one set. Ours.
double sheet_slack(Field field);

} // namespace carriageway
