#include "app/drawing/camera.h"

#include <numbers>

namespace carriageway {

namespace {

double nearest_turn(double from, double to) {
    return std::remainder(to - from, 2.0 * std::numbers::pi);
}

} // namespace

HeadPlace place_of_station(const PressProfile& press, int station) {
    const double step = 2.0 * std::numbers::pi / std::max(press.stations, 1);
    const double sense = press.turning == Turning::clockwise ? -1.0 : 1.0;
    const double angle = 0.5 * std::numbers::pi + sense * step * (station - 1);
    const Point outward{std::cos(angle), std::sin(angle)};
    HeadPlace place;
    place.origin = {press.arm_radius * outward.x, press.arm_radius * outward.y};
    place.along = {-outward.x, -outward.y};
    place.across = {place.along.y, -place.along.x};
    return place;
}

Point Projection::step_on_screen(Point step) const {
    const double c = camera.scale * std::cos(camera.turn), s = camera.scale * std::sin(camera.turn);
    return {step.x * c - step.y * s, -(step.x * s + step.y * c)};
}

Point Projection::on_screen(Point p) const {
    const Vec middle = view.centre();
    const Point from_middle = step_on_screen({p.x - camera.centre.x, p.y - camera.centre.y});
    return {middle.x + from_middle.x, middle.y + from_middle.y};
}

Vec Projection::to_screen(Point p) const {
    const Point at = on_screen(p);
    return {static_cast<float>(at.x), static_cast<float>(at.y)};
}

Point Projection::to_press(Vec s) const {
    const Vec middle = view.centre();
    const Point v{(s.x - middle.x) / camera.scale, -(s.y - middle.y) / camera.scale};
    const double c = std::cos(-camera.turn), n = std::sin(-camera.turn);
    return {camera.centre.x + v.x * c - v.y * n, camera.centre.y + v.x * n + v.y * c};
}

Camera camera_for_press(const PressProfile& press, Box view, float room) {
    // The outermost frames reach half a usual frame beyond the arm radius.
    const double radius = press.arm_radius + 420.0;
    const double across = std::max(60.0f, view.width() - 2.0f * room);
    const double along = std::max(60.0f, view.height() - 2.0f * room);
    Camera camera;
    camera.scale = std::min(across, along) / (2.0 * radius);
    return camera;
}

Camera camera_for_head(const Job& job, const Head& head, Box view, float rail_room) {
    const HeadPlace place = place_of_station(job.press, head.station);
    const double half_along = 0.5 * head.screen.along + 14.0;
    const double across = std::max(60.0f, view.width() - rail_room - 16.0f);
    Camera camera;
    camera.scale = std::min((view.height() - 8.0) / (2.0 * half_along),
                            across / (head.screen.across + 20.0));
    camera.scale = std::clamp(camera.scale, least_scale, most_scale);
    camera.centre = place.to_press({0.5 * rail_room / camera.scale, 0.0});
    camera.turn = nearest_turn(0.0, 0.5 * std::numbers::pi - std::atan2(place.along.y, place.along.x));
    return camera;
}

Camera between(const Camera& from, const Camera& to, double share) {
    Camera camera;
    const double s = std::clamp(share, 0.0, 1.0);
    camera.scale = from.scale * std::pow(to.scale / from.scale, s);
    camera.centre = {from.centre.x + (to.centre.x - from.centre.x) * s,
                     from.centre.y + (to.centre.y - from.centre.y) * s};
    camera.turn = from.turn + nearest_turn(from.turn, to.turn) * s;
    if (s >= 1.0) camera = to;
    return camera;
}

Camera zoomed(const Projection& projection, double factor, Vec anchor) {
    const Point held = projection.to_press(anchor);
    Projection next = projection;
    next.camera.scale = std::clamp(projection.camera.scale * factor, least_scale, most_scale);
    const Point now = next.to_press(anchor);
    next.camera.centre.x += held.x - now.x;
    next.camera.centre.y += held.y - now.y;
    return next.camera;
}

Camera panned(const Projection& projection, Vec by) {
    const Vec middle = projection.view.centre();
    Camera camera = projection.camera;
    camera.centre = projection.to_press(middle - by);
    return camera;
}

} // namespace carriageway
