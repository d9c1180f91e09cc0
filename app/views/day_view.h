// The parts of the sheet for the run (day_sheet.cpp puts them together), and what they share.
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// Each part fills a column from `rows.y` down. Names of its things begin with the part's name.
void contents_part(const Model& model, Rows& rows);
void stations_part(const Model& model, Rows& rows);
void walk_part(const Model& model, Rows& rows);
void lists_part(const Model& model, Rows& rows);
void recipe_part(const Model& model, Rows& rows);
void paper_part(const Model& model, Rows& rows);
void runs_part(const Model& model, Rows& rows);
void compare_part(const Model& model, Rows& rows);
void merge_part(const Model& model, Rows& rows);

/// One line under a part's name in the contents: how far it is.
std::string stations_status(const Model& model);
std::string walk_status(const Model& model);
std::string lists_status(const Model& model);
std::string recipe_status(const Model& model);
std::string runs_status(const Model& model);

/// A label over a text that a tap opens for typing; the text field while it is being typed in.
/// Empty: `hint` stands there softly.
void text_row(const Model& model, const std::string& name, std::string_view label,
              std::string_view value, std::string_view hint, const EditText& edit, Rows& rows);

/// What a number of the run measures, and what it is called.
Quantity day_quantity(const DayTarget& target);
Word day_number_word(const DayTarget& target);

/// A caution with its sign, in a box of its own.
void caution_row(std::string_view words, Rows& rows);

/// A button as wide as the column.
void wide_button(std::string_view name, std::string_view words, ButtonLook look, Action action,
                 Rows& rows, bool large = false);

/// Date and time as people read them: "2026-11-25 14:07", in the time zone of the machine; 0: empty.
std::string stamp_text(const Stamp& stamp);

} // namespace carriageway
