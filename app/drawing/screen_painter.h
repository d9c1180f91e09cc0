// From the drawing list to pixels, through a draw list of Dear ImGui.
//
// Lengths in dp are multiplied by the fonts' pixels per dp. What runs along the pixel grid is moved
// onto it, so that boxes, hairlines and letters are crisp: sides of boxes and of upright rectangles,
// lines that run straight across or down (at least one pixel wide), and the start of text.
// Outlines of boxes and circles lie within them; lines and loops lie half to each side.
#pragma once

#include "app/drawing/drawing_list.h"
#include "app/drawing/kept_paint.h"
#include "app/drawing/polygon_paint.h"

struct ImDrawList;

namespace carriageway {

class Fonts;

/// Paints drawing lists; keeps its working storage from frame to frame, and the triangles of what stays
/// as it was.
class ScreenPainter {
public:
    /// Appends the layers from `first` to `last` of `list`, in their order, to `draw`, whose texture
    /// has to be that of the fonts' atlas. Marks with a point that is not finite, and marks outside
    /// their clip, are left out.
    void paint(const DrawingList& list, Theme theme, const Fonts& fonts, ImDrawList& draw,
               int first = 0, int last = 3);

    /// How many runs of marks were as in the frame before, and were copied.
    std::size_t repeated() const { return kept_.repeated(); }

private:
    void paint_layer(const DrawingList& list, int layer);
    void paint_run(const MarkRun& run);
    void paint_mark(const DrawingList& list, const Mark& mark);
    void paint_fill(const Mark& mark, std::uint32_t colour);
    void paint_stroke(const Mark& mark, std::uint32_t colour);
    void paint_box(const Mark& mark, std::uint32_t colour);
    void paint_disc(const Mark& mark, std::uint32_t colour);
    void paint_text(const DrawingList& list, const Mark& mark, std::uint32_t colour);

    bool take_points(const DrawingList& list, const Mark& mark);
    bool shows(const Mark& mark) const;
    std::uint32_t packed(const Paint& paint) const;

    ImDrawList* draw_ = nullptr;
    const Fonts* fonts_ = nullptr;
    Theme theme_ = Theme::light;
    float ratio_ = 1.0f;      ///< pixels per dp
    Box clip_;                ///< px, whole
    std::vector<Vec> points_; ///< of the mark being painted, px
    Box reach_;               ///< around them
    PolygonPaint polygons_;
    KeptPaint kept_;
};

} // namespace carriageway
