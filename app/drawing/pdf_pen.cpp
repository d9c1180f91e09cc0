#include "app/drawing/pdf_pen.h"

#include <algorithm>

namespace carriageway {

namespace {

/// Control points of a quarter circle, as a share of its radius: 4/3 (√2 − 1).
constexpr double quarter_circle = 0.5522847498307936;

/// Finest line that a printer lays whole, points (0.09 mm: common practice, no source).
constexpr double finest = 0.25;

struct Channels {
    float red, green, blue;
};
Channels channels(std::uint32_t rgb) {
    const auto share = [&](int shift) { return static_cast<float>(rgb >> shift & 0xFFu) / 255.0f; };
    return {share(16), share(8), share(0)};
}

} // namespace

PdfPen::PdfPen(PdfDocument& document, HPDF_Page page, double scale, double height)
    : document_(document), page_(page), scale_(scale), height_(height) {}

void PdfPen::push() {
    kept_.push_back(state_);
    HPDF_Page_GSave(page_);
}

void PdfPen::pop() {
    HPDF_Page_GRestore(page_);
    state_ = kept_.back();
    kept_.pop_back();
}

void PdfPen::set_alpha(std::uint8_t alpha) {
    if (alpha == state_.alpha) return;
    state_.alpha = alpha;
    HPDF_ExtGState opacity = document_.opacity(alpha);
    if (opacity != nullptr) HPDF_Page_SetExtGState(page_, opacity);
}

void PdfPen::fill_with(std::uint32_t rgb, std::uint8_t alpha) {
    set_alpha(alpha);
    if (rgb == state_.fill) return;
    state_.fill = rgb;
    const Channels c = channels(rgb);
    HPDF_Page_SetRGBFill(page_, c.red, c.green, c.blue);
}

void PdfPen::stroke_with(std::uint32_t rgb, std::uint8_t alpha, double width) {
    set_alpha(alpha);
    const double points = std::clamp(width * scale_, finest, 1000.0);
    if (points != state_.width) {
        state_.width = points;
        HPDF_Page_SetLineWidth(page_, static_cast<float>(points));
    }
    if (rgb == state_.stroke) return;
    state_.stroke = rgb;
    const Channels c = channels(rgb);
    HPDF_Page_SetRGBStroke(page_, c.red, c.green, c.blue);
}

void PdfPen::polyline(const PdfPolygon& points) {
    HPDF_Page_MoveTo(page_, x(points[0].x), y(points[0].y));
    for (std::size_t i = 1; i < points.size(); ++i) to(points[i]);
}

void PdfPen::polygon(const PdfPolygon& corners) {
    polyline(corners);
    HPDF_Page_ClosePath(page_);
}

void PdfPen::line(const PdfLine& line) {
    HPDF_Page_MoveTo(page_, x(line.from.x), y(line.from.y));
    to(line.to);
}

void PdfPen::curve(PdfPoint a, PdfPoint b, PdfPoint end) {
    HPDF_Page_CurveTo(page_, x(a.x), y(a.y), x(b.x), y(b.y), x(end.x), y(end.y));
}

void PdfPen::box(const PdfBox& box, double radius) {
    const double x0 = box.x0, y0 = box.y0, x1 = box.x1, y1 = box.y1;
    const double r = std::clamp(radius, 0.0, 0.5 * std::min(x1 - x0, y1 - y0));
    if (!(r > 0.0)) {
        polygon({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}});
        return;
    }
    const double c = r * (1.0 - quarter_circle);
    HPDF_Page_MoveTo(page_, x(x0 + r), y(y0));
    to({x1 - r, y0});
    curve({x1 - c, y0}, {x1, y0 + c}, {x1, y0 + r});
    to({x1, y1 - r});
    curve({x1, y1 - c}, {x1 - c, y1}, {x1 - r, y1});
    to({x0 + r, y1});
    curve({x0 + c, y1}, {x0, y1 - c}, {x0, y1 - r});
    to({x0, y0 + r});
    curve({x0, y0 + c}, {x0 + c, y0}, {x0 + r, y0});
    HPDF_Page_ClosePath(page_);
}

void PdfPen::circle(PdfPoint centre, double radius) {
    box({centre.x - radius, centre.y - radius, centre.x + radius, centre.y + radius}, radius);
}

void PdfPen::clip() {
    HPDF_Page_Clip(page_);
    HPDF_Page_EndPath(page_);
}

void PdfPen::words(PdfPoint base, double em, TypeStyle style, const std::string& bytes) {
    HPDF_Page_BeginText(page_);
    HPDF_Page_SetFontAndSize(page_, document_.font(style), static_cast<float>(em * scale_));
    HPDF_Page_MoveTextPos(page_, x(base.x), y(base.y));
    HPDF_Page_ShowText(page_, bytes.c_str());
    HPDF_Page_EndText(page_);
}

} // namespace carriageway
