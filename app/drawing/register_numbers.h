// What the parts of the registration's drawing share, and the numbers of its marks.
#pragma once

#include "app/drawing/register_layer.h"

namespace carriageway {

inline constexpr float words_air = 4.0f; ///< beside words, both sides together, dp

/// The outside of a screen's frame, in the head's axes.
inline Rect frame_of(const Screen& screen) {
    return {-0.5 * screen.across, 0.5 * screen.across, -0.5 * screen.along, 0.5 * screen.along};
}

/// Where an error's arrow ends, so many times as long as it is.
inline Vec tip_of(const RegisterDrawing& drawing, const MarkReading& mark, const Point& error,
                  double factor) {
    return drawing.scale.to({mark.nominal.x + factor * error.x, mark.nominal.y + factor * error.y});
}

/// Writes the marks' numbers beside them: away from the other marks, so that no two read as one,
/// and clear of the image's outline and of the arrows, else on a ground of their own. `factor` as
/// errors are drawn.
void number_marks(const RegisterDrawing& drawing, double factor, LabelPlacer& labels,
                  DrawingList& list);

} // namespace carriageway
