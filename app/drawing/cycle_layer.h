// A press that runs: each head at a moment of its cycle (core/cycle.h), drawn in place of the still
// one. The garment comes in under the screen, ink is laid over the mesh by the flood and taken
// through it by the squeegee, and what the blades miss stays bare or blotchy.
#pragma once

#include "app/drawing/diagram.h"
#include "core/cycle.h"

namespace carriageway {

struct RunningHead {
    HeadCycle cycle;
    CyclePose pose;
};

/// The moment of a head in a drawing; nullptr: the drawing is of a press at rest.
const RunningHead* running_head(const DiagramInput& input, HeadId head);

/// The garment that is at a station, or comes to it while the table turns, with what is printed on
/// it. Of a whole press it has all colours that it has passed, of one head only that one's.
void draw_shirt(const DiagramInput& input, int station, DrawingList& list);

/// Ink over the mesh and blades of a running head; garment and frame are drawn already.
void draw_running(const HeadView& view, const RunningHead& running, DrawingList& list);

/// What shows below a frame whose head isn't down, before the frame itself is drawn.
void draw_lifted(const HeadView& view, double down, DrawingList& list);

/// The place of a station's platen after `share` of the way to the next station.
HeadPlace turned_place(const PressProfile& press, int station, double share);

} // namespace carriageway
