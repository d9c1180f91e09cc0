// One head from above: frame, mesh, platen, the two bands, the image and what of it is missed.
#include <numbers>

#include "app/drawing/cycle_layer.h"

namespace carriageway {

namespace {

constexpr double quarter = 0.25 * std::numbers::pi;

void draw_frame(const HeadView& view, DrawingList& list, int alpha = 255, bool mesh = true) {
    const Screen& screen = view.head->screen;
    const double x = 0.5 * screen.across, y = 0.5 * screen.along, p = screen.profile_width;
    const Rect sides[] = {{-x, x, y - p, y}, {-x, x, -y, -y + p},
                          {-x, -x + p, -y + p, y - p}, {x - p, x, -y + p, y - p}};
    if (mesh) fill_rect(list, view, opening_of(screen), paint(Role::mesh));
    for (const Rect& side : sides) fill_rect(list, view, side, paint(Role::frame, alpha));
}

/// The platen's outline where the screen is: mesh is backed only there.
void draw_platen_under(const DiagramInput& input, const HeadView& view, DrawingList& list) {
    const Rect platen = rect_of(input.job->platen);
    const Rect opening = opening_of(view.head->screen);
    const Rect seen{std::max(platen.left, opening.left), std::min(platen.right, opening.right),
                    std::max(platen.lo, opening.lo), std::min(platen.hi, opening.hi)};
    fill_rect(list, view, seen, paint(Role::platen));
}

void draw_column(DrawingList& list, const HeadView& view, const Column& c, Paint colour) {
    const Vec corners[] = {view.to(c.x0, c.lo0), view.to(c.x1, c.lo1), view.to(c.x1, c.hi1),
                           view.to(c.x0, c.hi0)};
    list.fill(corners, 4, colour);
}

/// Each kind of miss has a pattern of its own: crossed for unprinted, lines across the arm for
/// starved, dense slanting strokes for heavy.
void hatch_miss(DrawingList& list, const HeadView& view, const Column& c, MissKind kind,
                float emphasis) {
    const Vec corners[] = {view.to(c.x0, c.lo0), view.to(c.x1, c.lo1), view.to(c.x1, c.hi1),
                           view.to(c.x0, c.hi0)};
    const Vec across = view.across();
    const double turn = std::atan2(across.y, across.x);
    const Vec origin = view.to(0.0, 0.0);
    const auto lines = [&](double angle, float spacing, float width) {
        const double a = turn + angle;
        const double phase = -std::sin(a) * origin.x + std::cos(a) * origin.y;
        list.hatch(corners, 4, paint(Role::stop), static_cast<float>(a), spacing, width,
                   static_cast<float>(std::remainder(phase, spacing)));
    };
    const bool full = view.projection->camera.scale >= full_detail_scale;
    const float k = full ? 1.0f : 0.7f;
    switch (kind) {
    case MissKind::unprinted:
        lines(quarter, 10.0f * k, (1.4f + emphasis) * k);
        lines(-quarter, 10.0f * k, (1.4f + emphasis) * k);
        break;
    case MissKind::starved: lines(0.0, 6.0f * k, (1.4f + emphasis) * k); break;
    case MissKind::heavy: lines(quarter, 7.0f * k, (2.6f + emphasis) * k); break;
    }
}

void draw_image(const DiagramInput& input, const HeadView& view, DrawingList& list) {
    const HeadAssessment& head = *view.assessed;
    for (const Column& column : head.columns)
        draw_column(list, view, column, paint(head.both_on ? Role::stop_fill : Role::covered));
    for (const MissedPiece& piece : head.coverage.pieces)
        for (std::uint32_t i = 0; i < piece.count; ++i) {
            const Column& tile = head.coverage.tiles[piece.first + i];
            draw_column(list, view, tile, paint(Role::stop_fill));
            hatch_miss(list, view, tile, piece.kind, 1.6f * input.pulse);
        }
    for (const MissedPiece& piece : head.coverage.pieces) {
        if (piece.count != 1) continue;
        const Column& c = head.coverage.tiles[piece.first];
        const Vec corners[] = {view.to(c.x0, c.lo0), view.to(c.x1, c.lo1), view.to(c.x1, c.hi1),
                               view.to(c.x0, c.hi0)};
        list.loop(corners, 4, paint(Role::stop), 1.6f);
    }
    thread_local std::vector<Vec> outline; // kept: drawing a head that was drawn before takes no memory
    outline.clear();
    for (const Point& corner : head.image) outline.push_back(view.to(corner));
    const bool full = view.projection->camera.scale >= full_detail_scale;
    list.loop(outline.data(), static_cast<int>(outline.size()), paint(Role::image),
              full ? 2.5f : 1.6f);
}

void draw_bands(const HeadView& view, DrawingList& list) {
    const HeadAssessment& head = *view.assessed;
    const bool full = view.projection->camera.scale >= full_detail_scale;
    const float spacing = full ? 16.0f : 8.0f, hair = full ? 1.0f : 0.7f;
    const float edge = full ? 2.0f : 1.2f;
    // With both sensors on nothing moves: the bands are only what would be, so outlines.
    if (!head.both_on) {
        hatch_rect(list, view, head.flood, paint(Role::flood, 150), -quarter, spacing, hair);
        hatch_rect(list, view, head.squeegee, paint(Role::squeegee, 150), quarter, spacing, hair);
    }
    outline_rect(list, view, head.flood, paint(Role::flood), edge);
    outline_rect(list, view, head.squeegee, paint(Role::squeegee), edge);
}

void dashed(DrawingList& list, Vec from, Vec to, Paint colour, float width) {
    const float all = length(to - from);
    const Vec way = (to - from) * (1.0f / std::max(all, 1e-6f));
    for (float at = 0.0f; at < all; at += 9.0f) {
        const Vec ends[] = {from + way * at, from + way * std::min(all, at + 5.0f)};
        list.line(ends, 2, colour, width);
    }
}

/// What is wanted round the image and before the frame, as dashed lines: both bands should reach
/// the inner ones, and nothing may go past the outer.
void draw_wishes(const DiagramInput& input, const HeadView& view, DrawingList& list) {
    const Rect& image = view.assessed->image_bounds;
    const double run_past = input.job->wishes.run_past;
    for (const double y : {image.hi + run_past, image.lo - run_past})
        dashed(list, view.to(image.left, y), view.to(image.right, y), paint(Role::image), 1.0f);
    const Rect opening = opening_of(view.head->screen);
    const double clearance = input.job->press.allowances.frame_clearance;
    for (const double y : {opening.hi - clearance, opening.lo + clearance})
        dashed(list, view.to(opening.left, y), view.to(opening.right, y), paint(Role::soft_ink), 1.0f);
}

} // namespace

void draw_faint_head(const HeadView& view, DrawingList& list) { draw_frame(view, list, 90); }

void draw_head(const DiagramInput& input, const HeadView& view, DrawingList& list) {
    const RunningHead* running = running_head(input, view.head->id);
    if (running) draw_lifted(view, running->pose.down, list);
    draw_frame(view, list, 255, !running); // a garment that comes and goes shows through its mesh
    if (running) return draw_running(view, *running, list);
    draw_platen_under(input, view, list);
    draw_bands(view, list);
    draw_image(input, view, list);
    if (view.projection->camera.scale >= full_detail_scale) draw_wishes(input, view, list);
    const double x = 0.5 * view.head->screen.across, y = 0.5 * view.head->screen.along;
    if (view.head->id == input.chosen && view.projection->camera.scale < full_detail_scale)
        outline_rect(list, view, {-x, x, -y, y}, paint(Role::focus), 2.5f);
}

} // namespace carriageway
