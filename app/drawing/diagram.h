// The diagram: a press from above, to scale, in one drawing from the whole table to one head.
//
// draw_diagram() writes the layers and says which things it made; views attach what a tap or a
// drag does. Detail comes with scale, not with a mode.
#pragma once

#include <span>
#include <vector>

#include "app/drawing/camera.h"
#include "app/drawing/drawing_list.h"
#include "app/drawing/label_placer.h"
#include "app/text/measure.h"
#include "app/text/words.h"
#include "core/assess.h"

namespace carriageway {

struct RunningHead; // app/drawing/cycle_layer.h

/// How a diagram is to be drawn.
struct DiagramInput {
    const Job* job = nullptr;
    const Assessment* assessment = nullptr; ///< of this job
    Projection projection;
    HeadId chosen = 0;              ///< drawn with its rail and handles; 0: none
    End chosen_stop = End::machine_side;
    bool held = false;              ///< the chosen stop is being dragged: show where it may stand
    bool with_handles = true;       ///< false on paper
    bool verdicts = true;           ///< false while a person is to find them out
    Language language = Language::english;
    LengthUnit units = LengthUnit::mm;
    float pulse = 0.0f;             ///< 0 to 1: draws attention to missed image
    const std::vector<RunningHead>* running = nullptr; ///< heads as they move; nullptr: at rest
    std::span<const Box> reserved;  ///< where controls lie over the drawing: no words go there
};

/// Which things of the list stand for what.
struct DiagramThings {
    struct Handle {
        HeadId head;
        End end;
        std::size_t thing;
    };
    struct HeadThing {
        HeadId head;
        std::size_t thing;
    };
    std::vector<Handle> handles;
    std::vector<HeadThing> heads;
    void clear() {
        handles.clear();
        heads.clear();
    }
};

/// Draws everything into `list` within the projection's view.
void draw_diagram(const DiagramInput& input, DrawingList& list, DiagramThings& things);

/// The worst severity among a head's findings as a role of the theme: stop, mind or fit.
Role verdict_role(const HeadAssessment& head);

/// Draws the mark of a verdict, told apart by shape as well as colour: a triangle for stop, a
/// diamond for mind, a disc for fit. `size` is its height.
void draw_verdict(DrawingList& list, Vec centre, float size, Role role);

// -- shared by the layers -------------------------------------------------------------------------

/// One head on the screen: from its own axes to dp.
struct HeadView {
    const Head* head = nullptr;
    const HeadAssessment* assessed = nullptr;
    const Projection* projection = nullptr;
    HeadPlace place;
    /// Says where the head lies and how it is looked at: before any of what follows, and again
    /// where the projection has changed.
    void aim(const Projection& through, const HeadPlace& at);
    Vec to(double x, double y) const {
        return {static_cast<float>(origin.x + x_step.x * x + y_step.x * y),
                static_cast<float>(origin.y + x_step.y * x + y_step.y * y)};
    }
    Vec to(Point p) const { return to(p.x, p.y); }
    float size(double mm) const { return projection->size(mm); }
    Vec along() const { return along_unit; }   ///< unit vector on screen of the head's +y
    Vec across() const { return across_unit; } ///< unit vector on screen of the head's +x

    // Kept by aim(): a head has many points, and each would take the camera's sine and cosine.
    Point origin;         ///< of the head's axes, dp
    Point x_step, y_step; ///< dp on screen for each mm along the head's +x and +y
    Vec along_unit, across_unit;
};

/// From this scale (dp per mm) on, a head is drawn in full.
inline constexpr double full_detail_scale = 0.3;

/// From this scale on the chosen head has its rail and handles: large text leaves small diagrams,
/// and a stop must be within reach in them as well.
inline constexpr double handles_scale = 0.12;

/// Room beside a frame for the rail and its handles, dp.
inline constexpr float rail_room = 102.0f;

void draw_stations(const DiagramInput& input, DrawingList& list, LabelPlacer& labels);
void draw_head(const DiagramInput& input, const HeadView& view, DrawingList& list);
/// A head that is not being set, beside one that is.
void draw_faint_head(const HeadView& view, DrawingList& list);
void draw_head_labels(const DiagramInput& input, const HeadView& view, DrawingList& list,
                      LabelPlacer& labels);
void draw_carriage(const DiagramInput& input, const HeadView& view, DrawingList& list);
void draw_rail(const DiagramInput& input, const HeadView& view, DrawingList& list,
               LabelPlacer& labels, DiagramThings& things);
void draw_legend(const DiagramInput& input, DrawingList& list);

/// Where draw_legend() draws within a view.
Box legend_box(Box view, const TypeMeasure& type, Language language);

/// Fills a head-axes rectangle.
void fill_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour);
void outline_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour,
                  float width);
void hatch_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour,
                double angle, float spacing, float width);

} // namespace carriageway
