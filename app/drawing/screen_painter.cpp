#include "app/drawing/screen_painter.h"

#include <imgui.h>

#include <numbers>

#include "app/drawing/fonts.h"

namespace carriageway {

namespace {

float snapped(float px) { return std::floor(px + 0.5f); }
Box snapped(const Box& box) {
    return {snapped(box.x0), snapped(box.y0), snapped(box.x1), snapped(box.y1)};
}
Box times(const Box& box, float ratio) {
    return {box.x0 * ratio, box.y0 * ratio, box.x1 * ratio, box.y1 * ratio};
}
ImVec2 position(Vec v) { return {v.x, v.y}; }

/// Width of a line that runs along the pixel grid.
float whole_width(float px) { return std::max(1.0f, snapped(px)); }

constexpr float upright_within = 1.0f / 32.0f; ///< px by which an upright side may lean

bool level(Vec a, Vec b) { return std::abs(a.y - b.y) <= upright_within; }
bool plumb(Vec a, Vec b) { return std::abs(a.x - b.x) <= upright_within; }

bool upright_rectangle(const std::vector<Vec>& p) {
    if (p.size() != 4) return false;
    return (level(p[0], p[1]) && plumb(p[1], p[2]) && level(p[2], p[3]) && plumb(p[3], p[0])) ||
           (plumb(p[0], p[1]) && level(p[1], p[2]) && plumb(p[2], p[3]) && level(p[3], p[0]));
}

/// An upright rectangle on the pixel grid: what is thinner than a pixel gets one.
Box crisp(const Box& box) {
    Box on_grid = snapped(box);
    if (on_grid.x1 <= on_grid.x0) {
        on_grid.x0 = std::floor(box.x0);
        on_grid.x1 = on_grid.x0 + 1.0f;
    }
    if (on_grid.y1 <= on_grid.y0) {
        on_grid.y0 = std::floor(box.y0);
        on_grid.y1 = on_grid.y0 + 1.0f;
    }
    return on_grid;
}

void fill_box(ImDrawList& draw, const Box& box, ImU32 colour) {
    if (box.empty()) return;
    draw.PrimReserve(6, 4);
    draw.PrimRect({box.x0, box.y0}, {box.x1, box.y1}, colour);
}

/// Four bars between two boxes, one within the other, that don't overlap.
void fill_between(ImDrawList& draw, const Box& outer, const Box& inner, ImU32 colour) {
    if (inner.empty()) {
        fill_box(draw, outer, colour);
        return;
    }
    fill_box(draw, {outer.x0, outer.y0, outer.x1, inner.y0}, colour);
    fill_box(draw, {outer.x0, inner.y1, outer.x1, outer.y1}, colour);
    fill_box(draw, {outer.x0, inner.y0, inner.x0, inner.y1}, colour);
    fill_box(draw, {inner.x1, inner.y0, outer.x1, inner.y1}, colour);
}

bool together(const Mark& a, const Mark& b) {
    return a.layer == b.layer && a.clip == b.clip && a.part == b.part;
}

/// A circle's outline of which the middle has a radius. (Dear ImGui's own takes half a pixel off.)
void stroke_circle(ImDrawList& draw, Vec centre, float radius, ImU32 colour, float width) {
    const int corners = draw._CalcCircleAutoSegmentCount(radius);
    const float turn = 2.0f * std::numbers::pi_v<float>;
    draw.PathClear();
    draw.PathArcTo(position(centre), radius, 0.0f, turn - turn / static_cast<float>(corners),
                   corners - 1);
    draw.PathStroke(colour, ImDrawFlags_Closed, width);
}

} // namespace

void ScreenPainter::paint(const DrawingList& list, Theme theme, const Fonts& fonts,
                          ImDrawList& draw, int first, int last) {
    draw_ = &draw;
    fonts_ = &fonts;
    theme_ = theme;
    ratio_ = fonts.pixels_per_dp();
    const ImVec2 white = fonts.atlas().TexUvWhitePixel;
    polygons_.begin(draw, {white.x, white.y});
    kept_.begin({&fonts, static_cast<const void*>(fonts.atlas().TexID), {white.x, white.y}, fonts.scale(),
                 ratio_, static_cast<std::uint32_t>(theme)});
    const ImDrawListFlags flags = draw.Flags;
    draw.Flags &= ~ImDrawListFlags_AntiAliasedLinesUseTex;
    for (int layer = first; layer <= last; ++layer)
        if (list.has_layer(layer)) paint_layer(list, layer);
    draw.Flags = flags;
}

void ScreenPainter::paint_layer(const DrawingList& list, int layer) {
    const std::vector<Mark>& marks = list.marks();
    int clip = -1;
    for (std::size_t at = 0; at < marks.size();) {
        const Mark& mark = marks[at];
        if (mark.layer != layer) {
            ++at;
            continue;
        }
        if (mark.clip != clip) {
            if (clip >= 0) draw_->PopClipRect();
            clip = mark.clip;
            clip_ = snapped(times(list.clip_box(clip), ratio_));
            draw_->PushClipRect({clip_.x0, clip_.y0}, {clip_.x1, clip_.y1}, true);
        }
        MarkRun run{&list, at, at, clip_};
        while (at < marks.size() && together(marks[at], mark)) ++at;
        run.last = at;
        if (!clip_.empty()) paint_run(run);
    }
    if (clip >= 0) draw_->PopClipRect();
}

void ScreenPainter::paint_run(const MarkRun& run) {
    if (kept_.repeat(run, *draw_)) return;
    for (std::size_t i = run.first; i < run.last; ++i) paint_mark(*run.list, run.list->marks()[i]);
    kept_.keep(run, *draw_);
}

/// Scales the mark's points; false where one is not a number that can be drawn.
bool ScreenPainter::take_points(const DrawingList& list, const Mark& mark) {
    constexpr float farthest = 1e6f; // px: beyond this a float no longer holds parts of a pixel
    const Vec* points = list.points(mark);
    points_.resize(mark.count);
    Box reach{farthest, farthest, -farthest, -farthest};
    float odd = 0.0f; // turns into no number where a point is none
    for (std::uint32_t i = 0; i < mark.count; ++i) {
        const Vec p = points[i] * ratio_;
        odd += (p.x - p.x) + (p.y - p.y);
        reach = {std::min(reach.x0, p.x), std::min(reach.y0, p.y), std::max(reach.x1, p.x),
                 std::max(reach.y1, p.y)};
        points_[i] = p;
    }
    reach_ = reach;
    return mark.count > 0 && odd == 0.0f && reach.x0 > -farthest && reach.y0 > -farthest &&
           reach.x1 < farthest && reach.y1 < farthest && std::isfinite(mark.width) &&
           std::isfinite(mark.radius);
}

/// Whether what the points reach, and how far it is painted beyond them, meets the clip.
bool ScreenPainter::shows(const Mark& mark) const {
    Box reach = reach_;
    float beyond = 2.0f;
    if (mark.kind == MarkKind::line || mark.kind == MarkKind::loop)
        beyond += 8.0f * std::abs(mark.width) * ratio_; // sharp corners reach out
    if (mark.kind == MarkKind::disc || mark.kind == MarkKind::circle)
        beyond += std::abs(mark.radius) * ratio_;
    if (mark.kind == MarkKind::text) {
        reach.x1 += mark.extent.x * ratio_;
        reach.y1 += mark.extent.y * ratio_;
    }
    return overlap(reach.inset(-beyond), clip_);
}

std::uint32_t ScreenPainter::packed(const Paint& paint) const {
    const std::uint32_t rgb = paint.own ? paint.rgb : colour_of(theme_, paint.role);
    return IM_COL32((rgb >> 16) & 0xFFu, (rgb >> 8) & 0xFFu, rgb & 0xFFu, paint.alpha);
}

void ScreenPainter::paint_mark(const DrawingList& list, const Mark& mark) {
    if (mark.colour.alpha == 0 || !take_points(list, mark) || !shows(mark)) return;
    const ImU32 colour = packed(mark.colour);
    switch (mark.kind) {
        case MarkKind::fill: paint_fill(mark, colour); break;
        case MarkKind::line:
        case MarkKind::loop: paint_stroke(mark, colour); break;
        case MarkKind::hatch:
            polygons_.hatch(points_.data(), static_cast<int>(points_.size()), colour,
                            {mark.angle, mark.spacing * ratio_, mark.width * ratio_,
                             mark.phase * ratio_},
                            clip_);
            break;
        case MarkKind::round:
        case MarkKind::ring: paint_box(mark, colour); break;
        case MarkKind::disc:
        case MarkKind::circle: paint_disc(mark, colour); break;
        case MarkKind::text: paint_text(list, mark, colour); break;
    }
}

void ScreenPainter::paint_fill(const Mark& mark, ImU32 colour) {
    const int count = static_cast<int>(points_.size());
    if (upright_rectangle(points_))
        fill_box(*draw_, crisp(reach_), colour);
    else if (mark.colour.alpha == 255)
        polygons_.fill_soft(points_.data(), count, colour);
    else
        polygons_.fill_hard(points_.data(), count, colour);
}

void ScreenPainter::paint_stroke(const Mark& mark, ImU32 colour) {
    const float width = mark.width * ratio_;
    const float whole = whole_width(width);
    const bool closed = mark.kind == MarkKind::loop;
    if (closed && upright_rectangle(points_)) {
        const Box outer = snapped(reach_.inset(-0.5f * whole));
        fill_between(*draw_, outer, outer.inset(whole), colour);
        return;
    }
    if (!closed && points_.size() == 2 &&
        (level(points_[0], points_[1]) || plumb(points_[0], points_[1]))) {
        const bool across = level(points_[0], points_[1]);
        Box bar = snapped(reach_);
        const Vec middle = reach_.centre();
        if (across) {
            bar.y0 = snapped(middle.y - 0.5f * whole);
            bar.y1 = bar.y0 + whole;
        } else {
            bar.x0 = snapped(middle.x - 0.5f * whole);
            bar.x1 = bar.x0 + whole;
        }
        fill_box(*draw_, bar, colour);
        return;
    }
    draw_->PathClear();
    for (const Vec& p : points_) draw_->PathLineToMergeDuplicate(position(p));
    draw_->PathStroke(colour, closed ? ImDrawFlags_Closed : ImDrawFlags_None,
                      std::max(1.0f, width));
}

void ScreenPainter::paint_box(const Mark& mark, ImU32 colour) {
    const Box box = crisp(reach_);
    const float radius =
        std::clamp(mark.radius * ratio_, 0.0f, 0.5f * std::min(box.width(), box.height()));
    if (mark.kind == MarkKind::round) {
        if (radius < 0.5f)
            fill_box(*draw_, box, colour);
        else
            draw_->AddRectFilled({box.x0, box.y0}, {box.x1, box.y1}, colour, radius);
        return;
    }
    const float width = whole_width(mark.width * ratio_);
    if (radius < 0.5f) {
        fill_between(*draw_, box, box.inset(width), colour);
        return;
    }
    const Box middle = box.inset(0.5f * width);
    draw_->PathClear();
    draw_->PathRect({middle.x0, middle.y0}, {middle.x1, middle.y1},
                    std::max(0.0f, radius - 0.5f * width));
    draw_->PathStroke(colour, ImDrawFlags_Closed, width);
}

void ScreenPainter::paint_disc(const Mark& mark, ImU32 colour) {
    const float radius = mark.radius * ratio_;
    if (!(radius > 0.0f)) return;
    if (mark.kind == MarkKind::disc) {
        draw_->AddCircleFilled(position(points_[0]), radius, colour);
        return;
    }
    const float width = std::max(1.0f, mark.width * ratio_);
    if (2.0f * width >= 2.0f * radius)
        draw_->AddCircleFilled(position(points_[0]), radius, colour);
    else
        stroke_circle(*draw_, points_[0], radius - 0.5f * width, colour, width);
}

void ScreenPainter::paint_text(const DrawingList& list, const Mark& mark, ImU32 colour) {
    const std::string_view words = list.words(mark);
    const ImVec2 at{snapped(points_[0].x), snapped(points_[0].y)};
    draw_->AddText(fonts_->font(mark.style), fonts_->pixel_size(mark.style), at, colour,
                   words.data(), words.data() + words.size());
}

} // namespace carriageway
