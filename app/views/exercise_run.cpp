#include "app/views/exercise_run.h"

namespace carriageway {

std::string_view exercise_kind_name(ExerciseKind kind) {
    switch (kind) {
    case ExerciseKind::find_fault: return "find-fault";
    case ExerciseKind::shortest_stroke: return "shortest-stroke";
    case ExerciseKind::trainee_angle: return "trainee-angle";
    case ExerciseKind::which_dial: return "which-dial";
    case ExerciseKind::read_sheet: return "read-sheet";
    case ExerciseKind::place_stations: return "place-stations";
    case ExerciseKind::judge_gap: return "judge-gap";
    case ExerciseKind::count: break;
    }
    return {};
}

} // namespace carriageway
