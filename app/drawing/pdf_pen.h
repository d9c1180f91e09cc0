// What draws on a page of a PDF: paths and words in dp from the page's top left, colours and widths
// that are written only where they change.
#pragma once

#include <hpdf.h>

#include <string>
#include <vector>

#include "app/drawing/pdf_polygon.h"
#include "app/drawing/pdf_document.h"

namespace carriageway {

class PdfPen {
public:
    /// `scale`: points per dp; `height`: of the page, points.
    PdfPen(PdfDocument& document, HPDF_Page page, double scale, double height);

    // -- state; push() keeps it and pop() brings it back ---------------------------------------
    void push();
    void pop();
    void fill_with(std::uint32_t rgb, std::uint8_t alpha);
    void stroke_with(std::uint32_t rgb, std::uint8_t alpha, double width);

    // -- paths --------------------------------------------------------------------------------
    void polygon(const PdfPolygon& corners); ///< closed
    void polyline(const PdfPolygon& points);
    void line(const PdfLine& line);
    /// A box, its corners rounded where the radius isn't 0.
    void box(const PdfBox& box, double radius);
    void circle(PdfPoint centre, double radius);

    // -- what becomes of the path -------------------------------------------------------------
    void fill() { HPDF_Page_Fill(page_); }
    void stroke() { HPDF_Page_Stroke(page_); }
    void clip(); ///< until the next pop()

    /// One line of words, as bytes of the document's fonts; `base` is where the base line begins
    /// and `em` the size of the type, dp.
    void words(PdfPoint base, double em, TypeStyle style, const std::string& bytes);

    double dp(double points) const { return points / scale_; }

private:
    struct State {
        std::uint32_t fill = 0x000000, stroke = 0x000000;
        std::uint8_t alpha = 255;
        double width = 1.0; ///< points
    };
    float x(double dp) const { return static_cast<float>(dp * scale_); }
    float y(double dp) const { return static_cast<float>(height_ - dp * scale_); }
    void set_alpha(std::uint8_t alpha);
    void to(PdfPoint p) { HPDF_Page_LineTo(page_, x(p.x), y(p.y)); }
    void curve(PdfPoint a, PdfPoint b, PdfPoint end);

    PdfDocument& document_;
    HPDF_Page page_;
    double scale_;
    double height_;
    State state_;
    std::vector<State> kept_;
};

} // namespace carriageway
