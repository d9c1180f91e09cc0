// What can be sent of an exercise that is marked.
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// For whom it was noted; and the exercise and what came of it, as a file or a link.
void exercise_send(const Model& model, Rows& rows);

} // namespace carriageway
