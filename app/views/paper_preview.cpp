#include "app/views/paper_preview.h"

#include <vector>

namespace carriageway {

namespace {

constexpr std::uint32_t white = 0xFFFFFF, black = 0x000000, grey = 0x8C8C8C;
constexpr float finest = 0.5f; ///< dp: a finer line is drawn as fine as this

/// From a page to its small copy.
struct Shrunk {
    Vec from, to;
    float k = 1.0f;
    Vec at(Vec point) const { return to + (point - from) * k; }
    Box at(Vec a, Vec b) const {
        const Vec p = at(a), q = at(b);
        return {p.x, p.y, q.x, q.y};
    }
    float size(float width) const { return width * k; }
    float line(float width) const { return std::max(finest, width * k); }
};

/// On the page ink is black, whatever the theme.
Paint ink_of(const Paint& from) {
    if (from.own) return from;
    return own_colour(from.role == Role::paper || from.role == Role::panel ? white : black);
}

void put_text(const DrawingList& page, const Mark& mark, const Shrunk& shrunk, DrawingList& list) {
    const Vec at = page.points(mark)[0];
    // About where the small letters are: from the middle of the line down to its base.
    const float top = at.y + 0.38f * mark.extent.y, bottom = at.y + 0.76f * mark.extent.y;
    const Box bar = shrunk.at({at.x, top}, {at.x + mark.extent.x, bottom});
    list.round(bar, 0.0f, own_colour(mark.style.bold ? 0x404040 : grey));
}

void put_mark(const DrawingList& page, const Mark& mark, const Shrunk& shrunk, DrawingList& list) {
    std::vector<Vec> points;
    for (std::uint32_t i = 0; i < mark.count; ++i)
        points.push_back(shrunk.at(page.points(mark)[i]));
    const int count = static_cast<int>(points.size());
    const Paint ink = ink_of(mark.colour);
    const Box box = count == 2 ? Box{points[0].x, points[0].y, points[1].x, points[1].y} : Box{};
    switch (mark.kind) {
    case MarkKind::fill: return list.fill(points.data(), count, ink);
    case MarkKind::line: return list.line(points.data(), count, ink, shrunk.line(mark.width));
    case MarkKind::loop: return list.loop(points.data(), count, ink, shrunk.line(mark.width));
    case MarkKind::hatch: {
        // Lines so close would only flicker.
        Paint tint = ink;
        tint.alpha = 60;
        return list.fill(points.data(), count, tint);
    }
    case MarkKind::round: return list.round(box, shrunk.size(mark.radius), ink);
    case MarkKind::ring:
        return list.ring(box, shrunk.size(mark.radius), ink, shrunk.line(mark.width));
    case MarkKind::disc: return list.disc(points[0], shrunk.size(mark.radius), ink);
    case MarkKind::circle:
        return list.circle(points[0], shrunk.size(mark.radius), ink, shrunk.line(mark.width));
    case MarkKind::text: return put_text(page, mark, shrunk, list);
    }
}

} // namespace

void draw_paper_preview(const DrawingList& page, Box box, DrawingList& list) {
    const Box paper = page.window();
    const Shrunk shrunk{{paper.x0, paper.y0}, {box.x0, box.y0}, box.width() / paper.width()};
    list.round(box, 2.0f, own_colour(white));
    list.push_clip(box);
    int clip = -1;
    for (const Mark& mark : page.marks()) {
        if (mark.clip != clip) {
            if (clip >= 0) list.pop_clip();
            clip = mark.clip;
            const Box within = page.clip_box(clip);
            list.push_clip(shrunk.at({within.x0, within.y0}, {within.x1, within.y1}));
        }
        put_mark(page, mark, shrunk, list);
    }
    if (clip >= 0) list.pop_clip();
    list.pop_clip();
    list.ring(box, 2.0f, paint(Role::edge), 1.2f);
}

} // namespace carriageway
