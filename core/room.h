// The room that the stops of a head have, apart from the job that it comes from, so that "what
// if" can be worked out for another frame, platen or run-past without copying the job.
#pragma once

#include "core/limits.h"

namespace carriageway {

/// What bounds a head's stroke, mm in the head's axes.
struct Room {
    Rect opening;  ///< inside of the frame
    Rect platen;
    double run_past = 0.0;  ///< wanted beyond the image
};

/// The room that a head has in its job.
Room room_of(const Job& job, const Head& head);

/// The allowed set within a given room; allowed_set() is this within room_of().
AllowedSet allowed_within(const PressProfile& press, const Head& head,
                          const StrokeGeometry& geometry, ImageSpan image, const Room& room);

}  // namespace carriageway
