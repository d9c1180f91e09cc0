// Pieces of the part "walk" (day_walk.cpp puts them together).
#pragma once

#include "app/views/day_view.h"
#include "core/walk.h"

namespace carriageway {

/// Every number of a place as a card: its name, the value large, its tick, what was really set and
/// what the last run had. 0: the job's own numbers.
void walk_cards(const Model& model, HeadId head, Rows& rows);

/// The verdict of a head as it was really set: what is worst, read aloud when it changes, and marks
/// that can't be judged.
void walk_verdict(const Model& model, HeadId head, Rows& rows);

/// What else there is to say of it.
void walk_findings(const Model& model, HeadId head, Rows& rows);

/// A small drawing of the head from above, to scale, as it was really set; stops that are planned
/// elsewhere as outlines.
void walk_drawing(const Model& model, HeadId head, Box box, Canvas& canvas);

/// All places with how far each is, what was set other than planned, and what can be done with the
/// walk as a whole.
void walk_all(const Model& model, Rows& rows);

/// The job that is judged on the walk, and what it comes to.
const Job& judged_job(const Model& model);
const HeadAssessment* judged_head(const Model& model, HeadId head);

} // namespace carriageway
