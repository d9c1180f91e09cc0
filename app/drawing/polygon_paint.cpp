#include "app/drawing/polygon_paint.h"

#include <imgui.h>

#include <cmath>

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

/// How far a corner moves so that both its sides move by their normals, which are as long as soft
/// edges are wide: 1.
Vec mitre(Vec before, Vec after) {
    const Vec sum = before + after;
    const float square = dot(sum, sum);
    if (square < 1e-6f) return before;
    const float sharpest = 2.0f / longest_mitre;
    return sum * (square < sharpest * sharpest ? longest_mitre / std::sqrt(square) : 2.0f / square);
}

} // namespace

void PolygonPaint::begin(ImDrawList& draw, Vec white) {
    draw_ = &draw;
    white_ = white;
}

void PolygonPaint::take_distinct(const Vec* corners, int count) {
    constexpr float same = 1.0f / 1024.0f;
    const auto apart = [](Vec a, Vec b) { return dot(a - b, a - b) > same * same; };
    corners_.resize(static_cast<std::size_t>(std::max(count, 0)));
    std::size_t taken = 0;
    for (int i = 0; i < count; ++i)
        if (taken == 0 || apart(corners[i], corners_[taken - 1])) corners_[taken++] = corners[i];
    while (taken > 1 && !apart(corners_[0], corners_[taken - 1])) --taken;
    corners_.resize(taken);
}

/// Writes triangles into room that has been made for them; what is counted is told at its end.
class PolygonPaint::Writer {
public:
    Writer(ImDrawList& draw, Vec white, int corners, int indices) : draw_(draw), white_{white.x, white.y} {
        draw.PrimReserve(indices, corners);
        base_ = draw._VtxCurrentIdx;
        corner_ = draw._VtxWritePtr;
        index_ = draw._IdxWritePtr;
    }
    ~Writer() {
        draw_._VtxCurrentIdx += static_cast<unsigned>(corner_ - draw_._VtxWritePtr);
        draw_._VtxWritePtr = corner_;
        draw_._IdxWritePtr = index_;
    }
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    void corner(Vec at, ImU32 colour) { *corner_++ = {{at.x, at.y}, white_, colour}; }
    /// Corners by their number since the writer was made.
    void triangle(unsigned a, unsigned b, unsigned c) {
        *index_++ = static_cast<ImDrawIdx>(base_ + a);
        *index_++ = static_cast<ImDrawIdx>(base_ + b);
        *index_++ = static_cast<ImDrawIdx>(base_ + c);
    }
    /// A convex polygon whose corners follow each other.
    void fan(unsigned first, unsigned count) {
        for (unsigned i = 2; i < count; ++i) triangle(first, first + i - 1, first + i);
    }

private:
    ImDrawList& draw_;
    ImVec2 white_;
    unsigned base_;
    ImDrawVert* corner_;
    ImDrawIdx* index_;
};

void PolygonPaint::fill_hard(const Vec* corners, int count, ImU32 colour) {
    if (count < 3) return;
    Writer writer(*draw_, white_, count, (count - 2) * 3);
    writer.fan(0, static_cast<unsigned>(count));
    for (int i = 0; i < count; ++i) writer.corner(corners[i], colour);
}

void PolygonPaint::fill_soft(const Vec* corners, int count, ImU32 colour) {
    take_distinct(corners, count);
    if (corners_.size() < 3) return;
    const float outward = doubled_area(corners_) >= 0.0f ? edge_softness : -edge_softness;
    const unsigned n = static_cast<unsigned>(corners_.size());
    normals_.resize(n);
    for (unsigned i = 0; i < n; ++i)
        normals_[i] = normal_of(corners_[i], corners_[i + 1 == n ? 0 : i + 1]) * outward;
    Writer writer(*draw_, white_, static_cast<int>(2 * n), static_cast<int>(3 * (n - 2) + 6 * n));
    writer.fan(0, n);
    for (unsigned i = 0; i < n; ++i) {
        const unsigned next = i + 1 == n ? 0 : i + 1;
        writer.triangle(i, next, n + next);
        writer.triangle(i, n + next, n + i);
    }
    for (const Vec& at : corners_) writer.corner(at, colour);
    const ImU32 clear = colour & ~IM_COL32_A_MASK;
    for (unsigned i = 0; i < n; ++i)
        writer.corner(corners_[i] + mitre(normals_[i == 0 ? n - 1 : i - 1], normals_[i]), clear);
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
    profile.colour = colour;
    profile.normal = {-std::sin(hatch.angle), std::cos(hatch.angle)};
    profile.core = std::max(0.0f, 0.5f * (hatch.width - edge_softness));
    profile.outer = profile.core + edge_softness;
    profile.peak = std::min(hatch.width, 1.0f);

    take_sides(profile.normal);
    if (!(one_.corners.front().by < one_.corners.back().by)) return; // no area
    // How far the box that may show reaches along the normal, to each side of its middle.
    const float middle = dot(shown.centre(), profile.normal);
    const float reach = 0.5f * (std::abs(profile.normal.x) * shown.width() +
                                std::abs(profile.normal.y) * shown.height());
    const float lo = std::max(one_.corners.front().by, middle - reach) - profile.outer;
    const float hi = std::min(one_.corners.back().by, middle + reach) + profile.outer;
    if (!(lo <= hi)) return;
    const float phase = std::remainder(hatch.phase, hatch.spacing);
    const int first = static_cast<int>(std::ceil((lo - phase) / hatch.spacing));
    const int last = static_cast<int>(std::floor((hi - phase) / hatch.spacing));
    for (int k = first; k <= last; ++k)
        line(profile, static_cast<float>(k) * hatch.spacing + phase);
}

void PolygonPaint::Side::pass(float level) {
    while (at + 2 < corners.size() && corners[at + 1].by <= level) ++at;
    while (at > 0 && corners[at].by > level) --at;
}

Vec PolygonPaint::Side::point(float level) const {
    const Reached &from = corners[at], &to = corners[at + 1];
    const float way = to.by - from.by;
    const float share = way > 0.0f ? std::clamp((level - from.by) / way, 0.0f, 1.0f) : 0.0f;
    return from.at + (to.at - from.at) * share;
}

void PolygonPaint::Side::take(float lo, float hi, std::vector<Reached>& out) {
    out.clear();
    pass(lo);
    out.push_back({point(lo), lo});
    for (std::size_t i = at + 1; i < corners.size() && corners[i].by < hi; ++i)
        out.push_back(corners[i]);
    pass(hi);
    out.push_back({point(hi), hi});
}

/// Parts the polygon's corners at its lowest and its highest, which belong to both sides.
void PolygonPaint::take_sides(Vec normal) {
    const std::size_t n = corners_.size();
    reached_.resize(n);
    std::size_t lowest = 0, highest = 0;
    for (std::size_t i = 0; i < n; ++i) {
        reached_[i] = {corners_[i], dot(corners_[i], normal)};
        if (reached_[i].by < reached_[lowest].by) lowest = i;
        if (reached_[i].by > reached_[highest].by) highest = i;
    }
    const auto take = [&](Side& side, bool forward) {
        const std::size_t others = forward ? highest + n - lowest : lowest + n - highest;
        side.corners.resize((others >= n ? others - n : others) + 1);
        side.at = 0;
        std::size_t i = lowest;
        for (Reached& corner : side.corners) {
            corner = reached_[i];
            i = forward ? (i + 1 == n ? 0 : i + 1) : (i == 0 ? n : i) - 1;
        }
    };
    take(one_, true);
    take(other_, false);
}

/// One hatch line: its opacity rises from 0 to the peak over a pixel, stays and falls again.
void PolygonPaint::line(const Profile& profile, float level) {
    if (plain_line(profile, level)) return;
    band(profile, level, -profile.outer, -profile.core);
    if (profile.core > 0.0f) band(profile, level, -profile.core, profile.core);
    band(profile, level, profile.core, profile.outer);
}

/// A line that meets no corner, as most do; false: it does meet one, and nothing is painted.
bool PolygonPaint::plain_line(const Profile& profile, float level) {
    const float lo = level - profile.outer, hi = level + profile.outer;
    for (Side* side : {&one_, &other_}) {
        if (!(lo > side->corners.front().by)) return false;
        side->pass(lo);
        if (!(side->corners[side->at + 1].by > hi)) return false;
    }
    const bool cored = profile.core > 0.0f;
    const float levels[] = {lo, level - profile.core, level + profile.core, hi};
    const ImU32 full = with_opacity(profile.colour, profile.peak), clear = profile.colour & ~IM_COL32_A_MASK;
    Writer writer(*draw_, white_, cored ? 12 : 8, cored ? 18 : 12);
    unsigned first = 0;
    for (int i = 0; i < 3; ++i) {
        if (i == 1 && !cored) continue;
        const ImU32 below = i == 0 ? clear : full, above = i == 2 ? clear : full;
        writer.fan(first, 4);
        first += 4;
        writer.corner(one_.point(levels[i]), below);
        writer.corner(one_.point(levels[i + 1]), above);
        writer.corner(other_.point(levels[i + 1]), above);
        writer.corner(other_.point(levels[i]), below);
    }
    return true;
}

/// The part of the polygon between two distances from the line's middle.
void PolygonPaint::band(const Profile& profile, float level, float from, float to) {
    const float lo = std::max(level + from, one_.corners.front().by);
    const float hi = std::min(level + to, one_.corners.back().by);
    if (!(lo < hi)) return;
    one_.take(lo, hi, up_);
    other_.take(lo, hi, down_);
    const std::size_t count = up_.size() + down_.size();
    Writer writer(*draw_, white_, static_cast<int>(count), static_cast<int>(3 * (count - 2)));
    writer.fan(0, static_cast<unsigned>(count));
    const auto put = [&](const Reached& at) {
        const float away = std::abs(at.by - level);
        writer.corner(at.at, with_opacity(profile.colour, profile.peak * (profile.outer - away) / edge_softness));
    };
    for (const Reached& at : up_) put(at);
    for (auto at = down_.rbegin(); at != down_.rend(); ++at) put(*at);
}

} // namespace carriageway
