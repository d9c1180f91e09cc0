// What can be practised and signed for: the kinds of exercises, finding a fault by tests, and
// helping over the phone.
#pragma once

#include "core/exercise.h"

namespace carriageway {

/// The kinds of exercises in their own order, then what is practised otherwise.
enum class PracticeTopic {
    find_fault,
    shortest_stroke,
    trainee_angle,
    which_dial,
    read_sheet,
    place_stations,
    judge_gap,
    fault_tests, ///< from what is seen to its cause
    call,        ///< helping from afar
    count,       ///< how many there are; not a topic
};

inline constexpr std::size_t topic_count = static_cast<std::size_t>(PracticeTopic::count);
static_assert(static_cast<int>(PracticeTopic::judge_gap) ==
              static_cast<int>(ExerciseKind::judge_gap));
static_assert(static_cast<int>(PracticeTopic::fault_tests) ==
              static_cast<int>(ExerciseKind::count));

constexpr PracticeTopic topic_of(ExerciseKind kind) { return static_cast<PracticeTopic>(kind); }

/// Whether it is practised by exercises that the program makes and marks.
constexpr bool has_exercises(PracticeTopic topic) { return topic < PracticeTopic::fault_tests; }
constexpr ExerciseKind kind_of(PracticeTopic topic) { return static_cast<ExerciseKind>(topic); }

/// The order in which they are taught: one's own stops first. A judgement.
inline constexpr PracticeTopic topics_in_order[] = {
    PracticeTopic::shortest_stroke, PracticeTopic::find_fault,     PracticeTopic::read_sheet,
    PracticeTopic::trainee_angle,   PracticeTopic::which_dial,     PracticeTopic::judge_gap,
    PracticeTopic::place_stations,  PracticeTopic::fault_tests,    PracticeTopic::call,
};
static_assert(sizeof topics_in_order / sizeof topics_in_order[0] == topic_count);

} // namespace carriageway
