// What sheets that lie over everything have in common.
#pragma once

#include "app/views/canvas.h"

namespace carriageway {

/// From here on nothing that was drawn before can be touched, scrolled, reached by keys or read aloud.
void cover(Frame& frame);

/// Whether a sheet takes the whole of a window of this size, in dp.
bool fills_window(Box window);

/// The ground of a sheet, and the thing that takes what is tapped beside it. `full`: it takes the
/// whole window; else the rest of the window is shaded.
void sheet_ground(Canvas& canvas, std::string_view name, std::string_view label, Box box, bool full);

} // namespace carriageway
