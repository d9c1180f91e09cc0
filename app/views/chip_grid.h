// A choice among more things than stand side by side: equal boxes in as many columns as their words
// allow.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/views/canvas.h"

namespace carriageway {

/// One box of the grid.
struct Chip {
    std::string name;   ///< stable, in English
    std::string words;
    std::string detail; ///< below the words in small type; may be empty
    bool chosen = false;
    Action action;
};

/// How many columns the chips' words allow in a width: at most `most`, at least 1.
int chip_columns(const std::vector<Chip>& chips, int most, float width, const Canvas& canvas);

/// Draws the grid in so many columns. `label` is read aloud of the whole.
void chip_grid(std::string_view name, std::string_view label, const std::vector<Chip>& chips,
               int columns, Rows& rows);

} // namespace carriageway
