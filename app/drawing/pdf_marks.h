// The marks of a drawing list on a page of a PDF, one by one or, where neighbours belong together,
// as one area: readers blend the edges of every area with what is behind it, so that two with a
// common side would show it as a fine line.
#pragma once

#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/drawing/pdf_letters.h"
#include "app/drawing/pdf_pen.h"

namespace carriageway {

class PdfMarks {
public:
    PdfMarks(const DrawingList& list, const PdfLetters& letters, PaperLook look, PdfPaper paper,
             double mm_per_dp, PdfPen& pen);

    /// Paints everything, layer by layer; stops early when `document` isn't sound any more.
    void paint(const PdfDocument& document);
    int left_out() const { return left_out_; }

private:
    /// Areas that are painted at once: filled or hatched alike.
    struct Area {
        MarkKind kind = MarkKind::fill;
        std::uint32_t rgb = 0;
        std::uint8_t alpha = 255;
        PdfHatch hatch;
        std::vector<PdfPolygon> polygons;
    };

    void paint_mark(const Mark& mark);
    bool take_points(const Mark& mark);
    bool shows(const Mark& mark) const;
    void add_area(const Mark& mark);
    void paint_area();
    void paint_hatch(const Area& area);
    void paint_stroke(const Mark& mark);
    void paint_box(const Mark& mark);
    void paint_disc(const Mark& mark);
    void paint_text(const Mark& mark);

    const DrawingList& list_;
    const PdfLetters& letters_;
    PaperLook look_;
    PdfPen& pen_;
    PdfBox page_; ///< dp
    PdfBox clip_; ///< of the present mark, within the page
    PdfBox far_;  ///< beyond this nothing can be written down
    PdfPolygon points_;
    Area area_;
    int left_out_ = 0;
};

} // namespace carriageway
