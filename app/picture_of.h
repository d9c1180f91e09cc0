// A picture of a place of the program, as `carriageway picture` writes it.
#pragma once

#include <string>
#include <vector>

#include "app/records/command_line.h"

namespace carriageway {

/// What can be drawn: the places of the program, and parts of its panels opened and brought up. The
/// whole press first.
std::vector<std::string> picture_places();

/// Draws without a window, from the same drawing list as the screen. A state that can't be drawn
/// is impossible: the command line has checked the request.
DrawnPicture picture_of(const PictureRequest& request);

} // namespace carriageway
