// A head from the side: both blades at their angles over the mesh, the garment and the platen.
//
// Along the arm everything is to scale, and so are blades and holders. Heights of mesh, garment and
// edges over the platen are exaggerated by a factor that is said in the drawing, because a gap of
// two millimetres would be a hairline beside a holder. The operator is at the left.
#pragma once

#include "app/drawing/drawing_list.h"
#include "app/text/measure.h"
#include "core/assess.h"

namespace carriageway {

struct RunningHead; // app/drawing/cycle_layer.h

struct SideInput {
    const Job* job = nullptr;
    const Head* head = nullptr;
    const HeadAssessment* assessed = nullptr;
    Box box;
    Language language{};
    LengthUnit units = LengthUnit::mm;
    /// The head as it runs, seen by one who goes along with the carriage; nullptr: at rest.
    const RunningHead* running = nullptr;
};

/// Where one blade can be taken hold of.
struct SideBlade {
    Field angle = Field::squeegee_angle;
    Field gauge = Field::squeegee_gauge;
    Vec pivot;
    float lean = 1.0f; ///< +1: its upper end leans to the right of the pivot as the angle grows
    Box angle_handle;
    Box gauge_handle;
    double dp_per_mark = 1.0; ///< as drawn, exaggerated
};

struct SideThings {
    SideBlade squeegee;
    SideBlade flood;
    int exaggeration = 1;
};

/// Height that the drawing wants in a width.
float side_view_height(float width);

/// The same of a running one, which has no handles.
float running_side_height(float width);

/// Draws it within its box and says where the blades are.
void draw_side_view(const SideInput& input, DrawingList& list, SideThings& things);

} // namespace carriageway
