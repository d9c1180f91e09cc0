// What the views of an exercise share: the list, one that is under way, its result, and what of it
// stands at the press meanwhile.
#pragma once

#include <optional>

#include "app/views/exercise_run.h"
#include "app/views/views.h"

namespace carriageway {

/// The level of a kind that is reached, and the last score in it, 0 to 1; nothing: not tried yet.
int exercise_level(const ExerciseState& state, ExerciseKind kind);
std::optional<double> last_score(const ExerciseState& state, ExerciseKind kind);

// -- in the Practice place, one for each stage ------------------------------------------------
void exercise_kinds(const Model& model, Rows& rows);
void exercise_own(const Model& model, Rows& rows);
void exercise_under_way(const Model& model, Rows& rows);
void exercise_result(const Model& model, Rows& rows);

// -- at the press while an exercise is answered there -----------------------------------------
/// The panel: what is asked, what is answered by ticking, and the settings without any advice.
void exercise_panel(const Model& model, Rows& rows);

/// The settings of a head without any advice.
void exercise_settings(const Model& model, const Head& head, Rows& rows);

/// What is asked, the hints that were shown, and the button for another.
void exercise_task(const Model& model, Rows& rows);

/// Mark it, and give it up.
void exercise_end_buttons(Rows& rows);

/// Whether what stands at the press is only looked at: nothing there can be changed.
bool looked_at_only(const Model& model);

/// Why a page is not shown while an exercise is answered at the press, and the way back to it.
void exercise_waits(Rows& rows);

/// In place of the places that work out what is asked.
void exercise_cover(const Model& model, const Layout& layout, Canvas& canvas);

/// What the banner says: which exercise this is and how many moves have been made.
std::string exercise_banner_words(const Model& model);

} // namespace carriageway
