// An exercise that was begun: what it is, what has been answered so far and what came of it.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "app/records/trainees.h"
#include "core/exercise.h"
#include "core/practice_level.h"

namespace carriageway {

inline constexpr std::array exercise_kinds_in_order{
    ExerciseKind::shortest_stroke, ExerciseKind::find_fault,     ExerciseKind::read_sheet,
    ExerciseKind::trainee_angle,   ExerciseKind::which_dial,     ExerciseKind::judge_gap,
    ExerciseKind::place_stations,
};
inline constexpr std::size_t exercise_kind_count = exercise_kinds_in_order.size();
static_assert(exercise_kind_count == static_cast<std::size_t>(ExerciseKind::count));

struct ExerciseRun {
    Exercise exercise;
    ExerciseAnswer answer; ///< so far; edits are the session's until it is marked
    std::vector<Hint> hints; ///< all there are
    std::size_t hints_shown = 0;
    Timestamp began = 0;
    bool again = false; ///< the same once more: it counts for no level
    // Once it is marked:
    double seconds = 0.0;
    Marking marking;
    double score = 0.0; ///< 0 to 1, after hints
    int level_after = 0;
    TraineeId noted_for = 0; ///< whom the library has noted it for; 0: nobody who was chosen
};

/// What has been done since the program began, by whoever sits there.
struct ExerciseRecord {
    std::array<std::vector<LevelResult>, exercise_kind_count> done; ///< the oldest first
    std::vector<LevelResult>& of(ExerciseKind kind) { return done[static_cast<std::size_t>(kind)]; }
    const std::vector<LevelResult>& of(ExerciseKind kind) const {
        return done[static_cast<std::size_t>(kind)];
    }
};

/// Whether an exercise of this kind is answered at the press, by setting or by looking at it.
constexpr bool is_at_press(ExerciseKind kind) {
    return kind == ExerciseKind::find_fault || kind == ExerciseKind::shortest_stroke ||
           kind == ExerciseKind::read_sheet || kind == ExerciseKind::place_stations;
}

/// Whether it begins with all of the press in sight.
constexpr bool shows_whole_press(ExerciseKind kind) {
    return kind == ExerciseKind::find_fault || kind == ExerciseKind::place_stations;
}

/// A stable name of a kind, in English, for things and files.
std::string_view exercise_kind_name(ExerciseKind kind);

} // namespace carriageway
