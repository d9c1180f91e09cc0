// An assessment that keeps back what an exercise asks for.
#pragma once

#include "core/assess.h"

namespace carriageway {

/// The assessment with only what can be seen at the press itself: where the bands, the image and
/// the carriage lie, and how long strokes take. No findings, no verdict, nothing missed, no room
/// left and no advice: what isn't there can't be shown anywhere.
void keep_answers_back(const Assessment& full, Assessment& kept);

} // namespace carriageway
