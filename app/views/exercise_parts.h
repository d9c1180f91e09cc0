// Rows that the views of an exercise share.
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// A card that does something: a bold title, lines in small type below it, and at the right a chip
/// of words.
struct ExerciseCard {
    std::string name;   ///< stable, in English
    std::string title;
    std::string about;
    std::string status; ///< below it, softly; may be empty
    std::string chip;   ///< may be empty
    Action action;
};
void exercise_card(const ExerciseCard& card, Rows& rows);

/// Something that a person says is so, with a box to tick.
void exercise_tick(const std::string& name, std::string_view title, std::string_view detail,
                   bool ticked, Action action, Rows& rows);

/// An answer to choose: a large box, ringed and with a check where it is chosen.
void exercise_option(const std::string& name, std::string_view words, std::string_view detail,
                     bool chosen, Action action, Rows& rows);

/// A paragraph that is a thing to read.
void exercise_text(std::string_view name, std::string_view words, TypeStyle style, Role role,
                   float gap, Rows& rows);

/// What is asked, in a box of its own.
void exercise_asked(const std::string& title, const std::string& asked, Rows& rows);

/// A hint that was shown.
void exercise_hint_row(const std::string& name, const std::string& words, Rows& rows);

/// A button as wide as the column.
void exercise_button(std::string_view name, std::string_view words, std::string_view detail,
                     ButtonLook look, Action action, Rows& rows, bool large = false);

} // namespace carriageway
