// Convex polygons and lines on paper: cut off far from the sheet, told apart, and their hatching.
//
// Unit: dp (box.h), in double, so that what lies far outside keeps its direction.
#pragma once

#include <vector>

#include "app/drawing/box.h"

namespace carriageway {

struct PdfPoint {
    double x = 0.0;
    double y = 0.0;
    bool operator==(const PdfPoint&) const = default;
};
using PdfPolygon = std::vector<PdfPoint>;

struct PdfBox {
    double x0 = 0.0, y0 = 0.0, x1 = 0.0, y1 = 0.0;
    bool contains(PdfPoint p) const { return p.x >= x0 && p.x <= x1 && p.y >= y0 && p.y <= y1; }
};
PdfBox pdf_box(const Box& box);
PdfBox around_all(const PdfPolygon& points); ///< of no points: one that nothing is in
bool overlap(const PdfBox& a, const PdfBox& b);

/// Two ends of a line.
struct PdfLine {
    PdfPoint from, to;
};

/// Cuts a convex polygon off at a box; one that doesn't reach into it loses all corners.
void cut_to(PdfPolygon& polygon, const PdfBox& box);

/// Cuts a line off at a box; false: nothing of it is inside.
bool cut_to(PdfLine& line, const PdfBox& box);

/// Lets corners run clockwise on screen (y down).
void make_clockwise(PdfPolygon& polygon);

/// Whether convex polygons have more in common than a side.
bool overlap(const PdfPolygon& a, const PdfPolygon& b);

/// Lines of a hatch, as polygon_paint.h places them.
struct PdfHatch {
    double angle = 0.0; ///< rad
    double spacing = 8.0;
    double width = 1.0;
    double phase = 0.0;
    bool operator==(const PdfHatch&) const = default;
};

/// Every line that comes within its width of a polygon or of any of several, as long as those
/// reach; to be clipped to them. Spacing above 0; no more than `most` lines.
std::vector<PdfLine> hatch_lines(const std::vector<PdfPolygon>& polygons,
                                   const PdfHatch& hatch, int most);

} // namespace carriageway
