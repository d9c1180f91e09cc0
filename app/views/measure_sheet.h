// The parts of the sheet for measuring (measure_sheet.cpp puts them together).
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// Everything that can be measured, as rows that lead to it.
void measure_list(const Model& model, Rows& rows);

/// How one number is measured: drawing, steps, cautions.
void measure_guide(const Model& model, const Taking& taking, Rows& rows);

/// What was read for it, and what follows. `only` a list: that one and the result, while its number
/// is typed.
void measure_entry(const Model& model, const Taking& taking, std::optional<std::size_t> only, Rows& rows);

} // namespace carriageway
