// Pieces of the part "lists" (day_lists.cpp puts them together).
#pragma once

#include "app/views/day_view.h"

namespace carriageway {

/// The steps of the list shown, with the cautions that go with them above; while the list is being
/// changed, each with a button that takes it out instead of its tick.
void list_cautions(const Model& model, Rows& rows);
void list_steps(const Model& model, Rows& rows);

/// Putting steps in, while the list is being changed.
void list_change(const Model& model, Rows& rows);

/// Who approved the first piece, and against what.
void first_piece_approval(const Model& model, Rows& rows);

/// During the run: pieces counted, and stoppages.
void in_run_part(const Model& model, Rows& rows);

/// Names of lists as things have them: "before-run".
const char* list_name(CheckList list);

/// A small heading with room above it.
void list_heading(std::string_view words, Rows& rows);

/// Words in a quiet box, a softer line below them, and a button that takes the entry out.
struct ListEntry {
    std::string name;   ///< of the thing to read; the button's is this with "/remove"
    std::string words;
    std::string detail; ///< may be empty
    std::string remove; ///< what the button is called
    Action action;
};
void entry_row(const ListEntry& entry, Rows& rows);

} // namespace carriageway
