#include "app/drawing/polygon_paint.h"

#include <imgui.h>

#include <cmath>
#include <limits>

namespace carriageway {

namespace {

constexpr float edge_softness = 1.0f; ///< width of a soft edge, px
constexpr float longest_mitre = 2.0f; ///< how far a soft edge reaches beyond a sharp corner, px

float dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }

ImU32 with_opacity(ImU32 colour, float opacity) {
    const float alpha = static_cast<float>((colour >> IM_COL32_A_SHIFT) & 0xFFu);
    const ImU32 scaled = static_cast<ImU32>(alpha * std::clamp(opacity, 0.0f, 1.0f) + 0.5f);
    return (colour & ~IM_COL32_A_MASK) | scaled << IM_COL32_A_SHIFT;
}

/// Twice the area, above 0 where the corners run clockwise on screen.
float doubled_area(const std::vector<Vec>& corners) {
    float sum = 0.0f;
    for (std::size_t i = 2; i < corners.size(); ++i) {
        const Vec a = corners[i - 1] - corners[0], b = corners[i] - corners[0];
        sum += a.x * b.y - a.y * b.x;
    }
    return sum;
}

/// The unit normal of the side from a to b: outward where the corners run clockwise on screen.
Vec normal_of(Vec a, Vec b) {
    const Vec along = b - a;
    return Vec{along.y, -along.x} * (1.0f / length(along));
}

/// How far a corner moves so that both its sides move by 1.
Vec mitre(Vec before, Vec after) {
    const Vec sum = before + after;
    const float size = length(sum);
    if (size < 1e-3f) return before;
    return sum * (std::min(2.0f / size, longest_mitre) / size);
}

/// The part of a convex polygon where sign·(distance along `normal` − level) is 0 or more.
void cut_at(const std::vector<Vec>& from, Vec normal, float level, float sign,
            std::vector<Vec>& out) {
    out.clear();
    if (from.empty()) return;
    Vec before = from.back();
    float before_by = sign * (dot(before, normal) - level);
    for (const Vec& at : from) {
        const float by = sign * (dot(at, normal) - level);
        if ((by >= 0.0f) != (before_by >= 0.0f))
            out.push_back(before + (at - before) * (before_by / (before_by - by)));
        if (by >= 0.0f) out.push_back(at);
        before = at;
        before_by = by;
    }
}

/// From where to where something reaches along a normal.
struct RowReach {
    float lo = std::numeric_limits<float>::max();
    float hi = std::numeric_limits<float>::lowest();
    void take(float value) {
        lo = std::min(lo, value);
        hi = std::max(hi, value);
    }
};

} // namespace

void PolygonPaint::begin(ImDrawList& draw, Vec white) {
    draw_ = &draw;
    white_ = white;
}

void PolygonPaint::take_distinct(const Vec* corners, int count) {
    constexpr float same = 1.0f / 1024.0f;
    corners_.clear();
    for (int i = 0; i < count; ++i)
        if (corners_.empty() || length(corners[i] - corners_.back()) > same)
            corners_.push_back(corners[i]);
    while (corners_.size() > 1 && length(corners_.front() - corners_.back()) <= same)
        corners_.pop_back();
}

void PolygonPaint::corner(Vec at, ImU32 colour) {
    draw_->PrimWriteVtx({at.x, at.y}, {white_.x, white_.y}, colour);
}

/// Makes room for a convex polygon and what else is announced, and writes the polygon's triangles.
void PolygonPaint::fan(int count, int more_corners, int more_indices) {
    draw_->PrimReserve((count - 2) * 3 + more_indices, count + more_corners);
    const unsigned base = draw_->_VtxCurrentIdx;
    for (unsigned i = 2; i < static_cast<unsigned>(count); ++i) {
        draw_->PrimWriteIdx(static_cast<ImDrawIdx>(base));
        draw_->PrimWriteIdx(static_cast<ImDrawIdx>(base + i - 1));
        draw_->PrimWriteIdx(static_cast<ImDrawIdx>(base + i));
    }
}

void PolygonPaint::fill_hard(const Vec* corners, int count, ImU32 colour) {
    if (count < 3) return;
    fan(count, 0, 0);
    for (int i = 0; i < count; ++i) corner(corners[i], colour);
}

void PolygonPaint::fill_soft(const Vec* corners, int count, ImU32 colour) {
    take_distinct(corners, count);
    if (corners_.size() < 3) return;
    const float outward = doubled_area(corners_) >= 0.0f ? edge_softness : -edge_softness;
    const unsigned n = static_cast<unsigned>(corners_.size());
    fan(static_cast<int>(n), static_cast<int>(n), static_cast<int>(6 * n));
    const unsigned base = draw_->_VtxCurrentIdx;
    for (unsigned i = 0; i < n; ++i) {
        const unsigned next = (i + 1) % n;
        for (const unsigned index : {i, next, n + next, i, n + next, n + i})
            draw_->PrimWriteIdx(static_cast<ImDrawIdx>(base + index));
    }
    for (const Vec& at : corners_) corner(at, colour);
    const ImU32 clear = colour & ~IM_COL32_A_MASK;
    for (unsigned i = 0; i < n; ++i) {
        const Vec at = corners_[i];
        const Vec before = normal_of(corners_[(i + n - 1) % n], at);
        const Vec after = normal_of(at, corners_[(i + 1) % n]);
        corner(at + mitre(before, after) * outward, clear);
    }
}

void PolygonPaint::hatch(const Vec* corners, int count, ImU32 colour, const Hatch& hatch,
                         const Box& shown) {
    if (!(hatch.spacing > 0.0f) || !(hatch.width > 0.0f) || !std::isfinite(hatch.spacing) ||
        !std::isfinite(hatch.width) || !std::isfinite(hatch.angle) || !std::isfinite(hatch.phase))
        return;
    take_distinct(corners, count);
    if (corners_.size() < 3) return;
    if (hatch.spacing < 2.0f || hatch.width >= hatch.spacing) {
        fill_hard(corners, count, with_opacity(colour, hatch.width / hatch.spacing));
        return;
    }
    Profile profile;
    profile.normal = {-std::sin(hatch.angle), std::cos(hatch.angle)};
    profile.core = std::max(0.0f, 0.5f * (hatch.width - edge_softness));
    profile.outer = profile.core + edge_softness;
    profile.peak = std::min(hatch.width, 1.0f);

    RowReach polygon, screen;
    for (const Vec& at : corners_) polygon.take(dot(at, profile.normal));
    for (const Vec at : {Vec{shown.x0, shown.y0}, Vec{shown.x1, shown.y0},
                         Vec{shown.x1, shown.y1}, Vec{shown.x0, shown.y1}})
        screen.take(dot(at, profile.normal));
    const float lo = std::max(polygon.lo, screen.lo) - profile.outer;
    const float hi = std::min(polygon.hi, screen.hi) + profile.outer;
    if (!(lo <= hi)) return;
    const float phase = std::remainder(hatch.phase, hatch.spacing);
    const int first = static_cast<int>(std::ceil((lo - phase) / hatch.spacing));
    const int last = static_cast<int>(std::floor((hi - phase) / hatch.spacing));
    for (int k = first; k <= last; ++k)
        line(colour, profile, static_cast<float>(k) * hatch.spacing + phase);
}

/// One hatch line: its opacity rises from 0 to the peak over a pixel, stays and falls again.
void PolygonPaint::line(ImU32 colour, const Profile& profile, float level) {
    cut_at(corners_, profile.normal, level - profile.outer, 1.0f, spare_);
    cut_at(spare_, profile.normal, level + profile.outer, -1.0f, strip_);
    if (strip_.size() < 3) return;
    band(colour, profile, level, -profile.outer, -profile.core);
    if (profile.core > 0.0f) band(colour, profile, level, -profile.core, profile.core);
    band(colour, profile, level, profile.core, profile.outer);
}

/// The part of the strip between two distances from the line's middle.
void PolygonPaint::band(ImU32 colour, const Profile& profile, float level, float from, float to) {
    cut_at(strip_, profile.normal, level + from, 1.0f, spare_);
    cut_at(spare_, profile.normal, level + to, -1.0f, cut_);
    if (cut_.size() < 3) return;
    fan(static_cast<int>(cut_.size()), 0, 0);
    for (const Vec& at : cut_) {
        const float away = std::abs(dot(at, profile.normal) - level);
        corner(at, with_opacity(colour, profile.peak * (profile.outer - away) / edge_softness));
    }
}

} // namespace carriageway
