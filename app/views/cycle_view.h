// Running a cycle at the Press place: what moves, and the strip that it is run with.
#pragma once

#include "app/drawing/cycle_layer.h"
#include "app/views/views.h"

namespace carriageway {

/// What a cycle shows: one head, or all of a press at its pace.
struct CycleView {
    std::vector<RunningHead> heads;
    double seconds = 0.0;       ///< of the whole
    std::vector<double> events; ///< starts of what happens, ascending, within the whole
};

/// The cycle of what is chosen; empty where the press has no head.
CycleView cycle_view(const Job& job, const Assessment& assessment, HeadId chosen, double time);

/// Whether a cycle is on the screen: it is open, at the press, and nothing lies over it.
bool cycle_on_screen(const Model& model);

/// The strip below the drawing: play, step, speed, and where in the cycle it is.
void cycle_strip(const Model& model, const CycleView& cycle, Box box, Canvas& canvas);

/// Height that the strip needs in a width, whatever it says; where that is more than `most`, that
/// of one without words, which are still read aloud.
float cycle_strip_height(Canvas& canvas, float width, float most);

/// The chosen head from the side as it runs, at the top of its panel.
void cycle_side(const Model& model, const HeadAssessment& head, Rows& rows);

/// The button that opens it, as wide as a panel's column.
void cycle_button(const Model& model, Rows& rows);

/// What happens at a moment, as a sentence: of one head, or of the press. What stands before a
/// colon is short enough to be its name.
std::string cycle_words(Language language, const CycleView& cycle, bool one_head);

} // namespace carriageway
