#include "app/drawing/cycle_layer.h"

#include <numbers>

namespace carriageway {

namespace {

Vec unit(Point step) {
    const double size = std::max(std::sqrt(step.x * step.x + step.y * step.y), 1e-9);
    return {static_cast<float>(step.x / size), static_cast<float>(step.y / size)};
}

} // namespace

void HeadView::aim(const Projection& through, const HeadPlace& at) {
    projection = &through;
    place = at;
    origin = through.on_screen(at.origin);
    x_step = through.step_on_screen(at.across);
    y_step = through.step_on_screen(at.along);
    across_unit = unit(x_step);
    along_unit = unit(y_step);
}

Role verdict_role(const HeadAssessment& head) {
    Role role = Role::fit;
    for (const Finding& finding : head.findings) {
        if (finding.severity == Severity::stop) return Role::stop;
        if (finding.severity == Severity::mind) role = Role::mind;
    }
    return role;
}

void draw_verdict(DrawingList& list, Vec centre, float size, Role role) {
    const float h = 0.5f * size;
    if (role == Role::stop) {
        const Vec corners[] = {{centre.x, centre.y - h}, {centre.x + 1.1f * h, centre.y + 0.85f * h},
                               {centre.x - 1.1f * h, centre.y + 0.85f * h}};
        list.fill(corners, 3, paint(role));
    } else if (role == Role::mind) {
        const Vec corners[] = {{centre.x, centre.y - h}, {centre.x + h, centre.y},
                               {centre.x, centre.y + h}, {centre.x - h, centre.y}};
        list.fill(corners, 4, paint(role));
    } else {
        list.disc(centre, 0.72f * h, paint(role));
    }
}

namespace {

void corners_of(const HeadView& view, const Rect& rect, Vec (&corners)[4]) {
    corners[0] = view.to(rect.left, rect.lo);
    corners[1] = view.to(rect.right, rect.lo);
    corners[2] = view.to(rect.right, rect.hi);
    corners[3] = view.to(rect.left, rect.hi);
}

/// Whether a head's frame is anywhere in sight.
bool in_sight(const HeadView& view) {
    const double reach = 0.5 * std::hypot(view.head->screen.across, view.head->screen.along) + 80.0;
    const Vec centre = view.to(0.0, 0.0);
    const float radius = view.size(reach) + rail_room;
    const Box box = around(centre, 2.0f * radius, 2.0f * radius);
    return overlap(box, view.projection->view);
}

HeadView view_of(const DiagramInput& input, std::size_t index) {
    HeadView view;
    view.head = &input.job->heads[index];
    view.assessed = &input.assessment->heads[index];
    view.aim(input.projection, place_of_station(input.job->press, view.head->station));
    return view;
}

} // namespace

void fill_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour) {
    if (rect.empty()) return;
    Vec corners[4];
    corners_of(view, rect, corners);
    list.fill(corners, 4, colour);
}

void outline_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour,
                  float width) {
    if (rect.empty()) return;
    Vec corners[4];
    corners_of(view, rect, corners);
    list.loop(corners, 4, colour, width);
}

void hatch_rect(DrawingList& list, const HeadView& view, const Rect& rect, Paint colour,
                double angle, float spacing, float width) {
    if (rect.empty()) return;
    Vec corners[4];
    corners_of(view, rect, corners);
    // Lines keep their angle to the head and run through its origin, so that hatching turns and
    // travels with the head instead of swimming over it.
    const Vec across = view.across();
    const double turned = std::atan2(across.y, across.x) + angle;
    const Vec origin = view.to(0.0, 0.0);
    const double phase = -std::sin(turned) * origin.x + std::cos(turned) * origin.y;
    list.hatch(corners, 4, colour, static_cast<float>(turned), spacing, width,
               static_cast<float>(std::remainder(phase, spacing)));
}

namespace {

/// The box on screen round a head's frame.
Box box_of(const HeadView& view) {
    const double x = 0.5 * view.head->screen.across, y = 0.5 * view.head->screen.along;
    Box box{1e9f, 1e9f, -1e9f, -1e9f};
    for (const Vec corner : {view.to(-x, -y), view.to(x, -y), view.to(x, y), view.to(-x, y)})
        box = {std::min(box.x0, corner.x), std::min(box.y0, corner.y), std::max(box.x1, corner.x),
               std::max(box.y1, corner.y)};
    return box;
}

/// Whether a head is drawn with rail, carriage and words: the chosen one, or, while none is
/// chosen, those that lie mostly in view.
bool in_full(const DiagramInput& input, const HeadView& view) {
    const double scale = input.projection.camera.scale;
    if (input.chosen != 0) return view.head->id == input.chosen && scale >= handles_scale;
    if (scale < full_detail_scale) return false;
    return input.projection.view.contains(view.to(0.0, 0.0));
}

/// Keeps words off the frames: boxes along the frame's middle stand for a frame that is turned.
void take_frames(const DiagramInput& input, LabelPlacer& labels) {
    for (std::size_t i = 0; i < input.job->heads.size(); ++i) {
        const HeadView view = view_of(input, i);
        const Screen& screen = view.head->screen;
        const double side = 0.6 * std::min(screen.across, screen.along);
        for (const double x : {-0.5, 0.5})
            for (const double y : {-0.5, 0.0, 0.5})
                labels.take(around(view.to(x * (screen.across - side), y * (screen.along - side)),
                                   view.size(side), view.size(side)));
    }
    const Platen& platen = input.job->platen;
    const float side = input.projection.size(0.8 * std::min(platen.width, platen.length));
    for (int station = 1; station <= input.job->press.stations; ++station) {
        const HeadPlace place = place_of_station(input.job->press, station);
        for (const double share : {-0.2, 0.2})
            labels.take(around(input.projection.to_screen(place.to_press(
                                   {platen.offset_x, platen.offset_y + share * platen.length})),
                               side, side));
    }
}

} // namespace

void draw_diagram(const DiagramInput& input, DrawingList& list, DiagramThings& things) {
    things.clear();
    list.push_clip(input.projection.view);
    thread_local LabelPlacer labels({}); // kept: a frame like the last takes no memory
    labels.begin(input.projection.view.inset(2.0f));
    for (const Box& box : input.reserved) labels.take(box);
    const bool full = input.projection.camera.scale >= full_detail_scale;
    const bool beside_chosen = input.chosen != 0 && input.projection.camera.scale >= handles_scale;
    if (!full && !beside_chosen) take_frames(input, labels);
    draw_stations(input, list, labels);
    for (std::size_t i = 0; i < input.job->heads.size(); ++i) {
        const HeadView view = view_of(input, i);
        if (!in_sight(view)) continue;
        list.begin_part();
        // Beside a head that is being set, its neighbours are only frames.
        if (beside_chosen && view.head->id != input.chosen) draw_faint_head(view, list);
        else draw_head(input, view, list);
    }
    for (std::size_t i = 0; i < input.job->heads.size(); ++i) {
        const HeadView view = view_of(input, i);
        if (!in_sight(view)) continue;
        list.begin_part();
        if (in_full(input, view)) {
            if (!running_head(input, view.head->id)) draw_carriage(input, view, list);
            draw_rail(input, view, list, labels, things);
        }
        if ((!full && !beside_chosen) || in_full(input, view)) draw_head_labels(input, view, list, labels);
        const std::string name = "head/" + std::to_string(view.head->station);
        const Box seen = common(box_of(view), input.projection.view);
        // A sliver of a neighbour at the edge is no target.
        const float least = view.head->id == input.chosen || (!full && !beside_chosen) ? 0.0f : 60.0f;
        if (seen.width() <= least || seen.height() <= least) continue;
        list.thing(name, ThingRole::button, seen);
        things.heads.push_back({view.head->id, list.things().size() - 1});
    }
    list.begin_part();
    list.pop_clip();
}

} // namespace carriageway
