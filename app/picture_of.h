// A picture of a place of the program, as `carriageway picture` writes it.
#pragma once

#include "app/records/command_line.h"

namespace carriageway {

/// Draws without a window, from the same drawing list as the screen. A state that can't be drawn
/// is impossible: the command line has checked the request.
DrawnPicture picture_of(const PictureRequest& request);

} // namespace carriageway
