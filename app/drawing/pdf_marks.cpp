#include "app/drawing/pdf_marks.h"

#include <algorithm>
#include <cmath>

#include "app/drawing/embedded_fonts.h"
#include "app/drawing/fonts.h"

namespace carriageway {

namespace {

/// Farthest from the page that a path is written, points: numbers of a PDF end at 32767.
constexpr double farthest = 12000.0;

/// Hatching closer than this becomes an even tint, points.
constexpr double closest_lines = 0.75;
constexpr int most_lines = 40000; ///< across the largest page there are fewer

/// Longest text that one operator shows, bytes.
constexpr std::size_t longest_text = 32000;

const FaceMetrics& face_of(TypeStyle style) {
    static const FaceMetrics regular =
        metrics_of(embedded::b612_regular, embedded::b612_regular_size);
    static const FaceMetrics bold = metrics_of(embedded::b612_bold, embedded::b612_bold_size);
    return style.bold ? bold : regular;
}

PdfBox common(const PdfBox& a, const PdfBox& b) {
    return {std::max(a.x0, b.x0), std::max(a.y0, b.y0), std::min(a.x1, b.x1), std::min(a.y1, b.y1)};
}
PdfBox inset(const PdfBox& box, double by) {
    return {box.x0 + by, box.y0 + by, box.x1 - by, box.y1 - by};
}
bool empty(const PdfBox& box) { return !(box.x1 > box.x0) || !(box.y1 > box.y0); }
double least_side(const PdfBox& box) { return std::min(box.x1 - box.x0, box.y1 - box.y0); }

} // namespace

PdfMarks::PdfMarks(const DrawingList& list, const PdfLetters& letters, PaperLook look,
                   PdfPaper paper, double mm_per_dp, PdfPen& pen)
    : list_(list), letters_(letters), look_(look),
      pen_(pen), page_{0.0, 0.0, paper.width / mm_per_dp, paper.height / mm_per_dp} {
    const double reach = pen.dp(farthest);
    far_ = {-reach, -reach, reach, reach};
}

void PdfMarks::paint(const PdfDocument& document) {
    for (int layer = 0; layer <= 3; ++layer) {
        int clip = -1;
        for (const Mark& mark : list_.marks()) {
            if (mark.layer != layer) continue;
            if (!document.sound()) return;
            if (mark.clip != clip) {
                paint_area();
                if (clip >= 0) pen_.pop();
                clip = mark.clip;
                clip_ = common(pdf_box(list_.clip_box(clip)), page_);
                pen_.push();
                if (!empty(clip_)) {
                    pen_.box(clip_, 0.0);
                    pen_.clip();
                }
            }
            paint_mark(mark);
        }
        paint_area();
        if (clip >= 0) pen_.pop();
    }
}

/// The mark's points; false where one is no number.
bool PdfMarks::take_points(const Mark& mark) {
    const Vec* points = list_.points(mark);
    points_.clear();
    for (std::uint32_t i = 0; i < mark.count; ++i) {
        if (!std::isfinite(points[i].x) || !std::isfinite(points[i].y)) return false;
        points_.push_back({static_cast<double>(points[i].x), static_cast<double>(points[i].y)});
    }
    for (const float number : {mark.width, mark.radius, mark.angle, mark.spacing, mark.phase,
                               mark.extent.x, mark.extent.y})
        if (!std::isfinite(number)) return false;
    return !points_.empty();
}

bool PdfMarks::shows(const Mark& mark) const {
    if (empty(clip_)) return false;
    PdfBox reach = around_all(points_);
    double beyond = 1.0;
    if (mark.kind == MarkKind::line || mark.kind == MarkKind::loop)
        beyond += 8.0 * std::abs(static_cast<double>(mark.width)); // sharp corners reach out
    if (mark.kind == MarkKind::disc || mark.kind == MarkKind::circle)
        beyond += std::abs(static_cast<double>(mark.radius));
    if (mark.kind == MarkKind::text) {
        reach.x1 += static_cast<double>(mark.extent.x);
        reach.y1 += static_cast<double>(mark.extent.y);
    }
    return overlap(inset(reach, -beyond), clip_);
}

void PdfMarks::paint_mark(const Mark& mark) {
    if (!take_points(mark)) {
        ++left_out_;
        return;
    }
    if (mark.colour.alpha == 0 || !shows(mark)) return;
    if (mark.kind == MarkKind::fill || mark.kind == MarkKind::hatch) {
        add_area(mark);
        return;
    }
    paint_area();
    switch (mark.kind) {
        case MarkKind::line:
        case MarkKind::loop: paint_stroke(mark); break;
        case MarkKind::round:
        case MarkKind::ring: paint_box(mark); break;
        case MarkKind::disc:
        case MarkKind::circle: paint_disc(mark); break;
        default: paint_text(mark); break;
    }
}

/// Adds a polygon to the areas that are waiting, if it is painted as they are and, where it can be
/// seen through, covers none of them; else paints those first.
void PdfMarks::add_area(const Mark& mark) {
    Area area;
    area.kind = mark.kind;
    area.rgb = paper_colour(look_, mark.colour);
    area.alpha = mark.colour.alpha;
    if (mark.kind == MarkKind::hatch) {
        area.hatch = {static_cast<double>(mark.angle), static_cast<double>(mark.spacing),
                      static_cast<double>(mark.width), static_cast<double>(mark.phase)};
        if (!(area.hatch.spacing > 0.0) || !(area.hatch.width > 0.0)) return;
        if (area.hatch.spacing < pen_.dp(closest_lines) || area.hatch.width >= area.hatch.spacing) {
            const double share = std::min(1.0, area.hatch.width / area.hatch.spacing);
            area.kind = MarkKind::fill;
            area.alpha = static_cast<std::uint8_t>(std::lround(area.alpha * share));
            area.hatch = {};
        }
    }
    const PdfBox around = around_all(points_);
    if (!far_.contains({around.x0, around.y0}) || !far_.contains({around.x1, around.y1}))
        cut_to(points_, far_);
    if (points_.size() < 3 || area.alpha == 0) return;
    make_clockwise(points_);

    bool joins = !area_.polygons.empty() && area.kind == area_.kind && area.rgb == area_.rgb &&
                 area.alpha == area_.alpha && area.hatch == area_.hatch;
    if (joins && area.alpha != 255) {
        constexpr std::size_t compared = 200;
        joins = area_.polygons.size() < compared;
        for (const PdfPolygon& waiting : area_.polygons)
            joins = joins && !overlap(waiting, points_);
    }
    if (!joins) {
        paint_area();
        area_ = std::move(area);
    }
    area_.polygons.push_back(points_);
}

void PdfMarks::paint_area() {
    if (area_.polygons.empty()) return;
    if (area_.kind == MarkKind::hatch) {
        paint_hatch(area_);
    } else {
        pen_.fill_with(area_.rgb, area_.alpha);
        for (const PdfPolygon& polygon : area_.polygons) pen_.polygon(polygon);
        pen_.fill();
    }
    area_.polygons.clear();
}

/// Whole lines, clipped to the polygons: they end exactly at the sides.
void PdfMarks::paint_hatch(const Area& area) {
    std::vector<PdfPolygon> seen = area.polygons;
    const PdfBox around_clip = inset(clip_, -area.hatch.width);
    for (PdfPolygon& polygon : seen) cut_to(polygon, around_clip);
    std::erase_if(seen, [](const PdfPolygon& polygon) { return polygon.size() < 3; });
    const std::vector<PdfLine> lines = hatch_lines(seen, area.hatch, most_lines);
    if (lines.empty()) return;
    pen_.push();
    for (const PdfPolygon& polygon : area.polygons) pen_.polygon(polygon);
    pen_.clip();
    pen_.stroke_with(area.rgb, area.alpha, area.hatch.width);
    for (const PdfLine& line : lines) pen_.line(line);
    pen_.stroke();
    pen_.pop();
}

void PdfMarks::paint_stroke(const Mark& mark) {
    const bool closed = mark.kind == MarkKind::loop;
    const PdfBox around = around_all(points_);
    pen_.stroke_with(paper_colour(look_, mark.colour), mark.colour.alpha,
                     static_cast<double>(mark.width));
    if (far_.contains({around.x0, around.y0}) && far_.contains({around.x1, around.y1})) {
        if (closed)
            pen_.polygon(points_);
        else
            pen_.polyline(points_);
        pen_.stroke();
        return;
    }
    // Side by side, each as far as it can be written: it can't be seen that the corners are apart.
    bool any = false;
    const std::size_t sides = closed ? points_.size() : points_.size() - 1;
    for (std::size_t i = 0; i < sides; ++i) {
        PdfLine side{points_[i], points_[(i + 1) % points_.size()]};
        if (!cut_to(side, far_)) continue;
        pen_.line(side);
        any = true;
    }
    if (any) pen_.stroke();
}

void PdfMarks::paint_box(const Mark& mark) {
    PdfBox box = common(around_all(points_), far_);
    const double radius = std::max(0.0, static_cast<double>(mark.radius));
    const double width = std::max(0.0, static_cast<double>(mark.width));
    const std::uint32_t rgb = paper_colour(look_, mark.colour);
    if (mark.kind == MarkKind::round || 2.0 * width >= least_side(box)) {
        if (empty(box)) return;
        pen_.fill_with(rgb, mark.colour.alpha);
        pen_.box(box, radius);
        pen_.fill();
        return;
    }
    pen_.stroke_with(rgb, mark.colour.alpha, width);
    pen_.box(inset(box, 0.5 * width),
             std::max(0.0, std::min(radius, 0.5 * least_side(box)) - 0.5 * width));
    pen_.stroke();
}

void PdfMarks::paint_disc(const Mark& mark) {
    const double radius = static_cast<double>(mark.radius);
    if (!(radius > 0.0)) return;
    const PdfPoint centre = points_[0];
    if (!far_.contains({centre.x - radius, centre.y - radius}) ||
        !far_.contains({centre.x + radius, centre.y + radius})) {
        ++left_out_;
        return;
    }
    const double width = std::max(0.0, static_cast<double>(mark.width));
    const std::uint32_t rgb = paper_colour(look_, mark.colour);
    if (mark.kind == MarkKind::disc || width >= radius) {
        pen_.fill_with(rgb, mark.colour.alpha);
        pen_.circle(centre, radius);
        pen_.fill();
        return;
    }
    pen_.stroke_with(rgb, mark.colour.alpha, width);
    pen_.circle(centre, radius - 0.5 * width);
    pen_.stroke();
}

/// A text's box is a line high, ascent to descent, whatever size it was measured in.
void PdfMarks::paint_text(const Mark& mark) {
    const FaceMetrics& face = face_of(mark.style);
    const double em = static_cast<double>(mark.extent.y) / face.line();
    const std::string bytes = letters_.written(list_.words(mark));
    if (!(em > 0.0) || em > far_.x1 || bytes.size() > longest_text || !far_.contains(points_[0])) {
        ++left_out_;
        return;
    }
    pen_.fill_with(paper_colour(look_, mark.colour), mark.colour.alpha);
    pen_.words({points_[0].x, points_[0].y + face.ascent * em}, em, mark.style, bytes);
}

} // namespace carriageway
