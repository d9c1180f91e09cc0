// The first steps as they are shown: a card at the top of the press's panel, where it covers
// nothing of the drawing, and a ring round the head that it is about.
#pragma once

#include "app/views/views.h"

namespace carriageway {

/// A head that is set wrong in the way that is easiest to see: both sensors on at once where there
/// is one, otherwise the first that isn't fit. 0: none.
HeadId head_to_learn_on(const Assessment& assessment);

/// Whether the card is shown.
bool first_steps_on_screen(const Model& model);

/// Whether the ring is: while its first step is under way at the press and nothing lies over it.
bool first_ring_on_screen(const Model& model);

/// The card: which step of three, what to do and why, and the buttons that go on or skip the rest.
void first_card(const Model& model, Rows& rows);

/// Round the head, or round the handles of its stops once it is looked at alone: the boxes of
/// these as drawn.
void first_ring(const Model& model, const std::vector<Box>& boxes, Canvas& canvas);

/// The button that shows them again.
void first_again_row(const Model& model, Rows& rows);

} // namespace carriageway
