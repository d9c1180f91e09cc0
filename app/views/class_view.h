// What shows itself to a class before a projector.
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// The switch for the view for a class, and, while it is on, the one for the camera.
void class_rows(const Model& model, Rows& rows);

/// The pointer's trail over everything else: thinner and fainter the longer ago.
void class_trail(const ClassState& state, DrawingList& list);

} // namespace carriageway
