// The recipe in words: for the screen and the printed sheet alike.
#pragma once

#include <string>

#include "app/text/measure.h"
#include "core/recipe.h"

namespace carriageway {

/// An entry's short name, in the midst of a sentence. Values outside the enum: Word::count, which
/// has no text; so below.
Word recipe_word(RecipeItem item);

/// How a blade is cut, at the start of a line.
Word edge_word(BladeEdge edge);

/// A number of the recipe with its unit, or that nobody has noted it. Value in the core's unit.
std::string recipe_value(Language language, LengthUnit unit, Field field, double value);

} // namespace carriageway
