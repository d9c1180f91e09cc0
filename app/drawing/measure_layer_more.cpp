// Schemes of heights, screws and heat.
#include <numbers>

#include "app/drawing/measure_sketch.h"

namespace carriageway {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

/// A gauge beside a blade over its platen: the pointer at one mark, the edge at one height.
void gauge_at(const Sketch& s, float left, float share, int mark, int height) {
    const float top = 0.12f, low = 0.72f;
    const float platen = 0.86f;
    s.block(s.at(left, top), s.at(left + 0.05f, low), Role::quiet, 2.0f);
    for (int i = 0; i <= 6; ++i) {
        const float y = low + (top - low) * static_cast<float>(i) / 6.0f;
        s.line({s.at(left, y), s.at(left + (i % 3 == 0 ? 0.035f : 0.02f), y)}, Role::soft_ink, 1.2f);
    }
    const float y = low + (top - low) * share;
    s.arrow(s.at(left + 0.13f, y), s.at(left + 0.06f, y), Role::ink);
    const float edge = platen - 0.1f - 0.26f * share;
    s.block(s.at(left + 0.17f, edge - 0.34f), s.at(left + 0.21f, edge), Role::squeegee, 1.0f);
    s.block(s.at(left + 0.155f, edge - 0.44f), s.at(left + 0.225f, edge - 0.16f), Role::frame);
    s.block(s.at(left + 0.08f, platen), s.at(left + 0.4f, platen + 0.06f), Role::rail, 2.0f);
    s.line({s.at(left + 0.17f, edge), s.at(left + 0.29f, edge)}, Role::soft_ink, 1.2f);
    s.dimension(s.at(left + 0.27f, edge), s.at(left + 0.27f, platen), -1);
    s.letter({std::max(s.box.x0 + s.radius(), s.at(left, 0).x - s.radius() - 4.0f), s.at(0, y).y}, mark);
    s.letter({s.at(left + 0.27f, 0).x + s.radius() + 9.0f, s.at(0, 0.5f * (edge + platen)).y}, height);
}

/// A thermometer whose tip touches `tip`.
void thermometer(const Sketch& s, Vec tip, Vec from) {
    s.line({from, tip}, Role::ink, 4.0f);
    s.list.disc(tip, 5.0f, paint(Role::stop));
    s.list.disc(from, 9.0f, paint(Role::frame));
}

} // namespace

void sketch_gauge(const Sketch& s) {
    if (s.input.badges == 3) { // one mark, one height
        gauge_at(s, 0.32f, 0.6f, 0, 2);
        s.letter({s.at(0.32f, 0).x - s.radius() - 4.0f, s.at(0, 0.68f).y}, 1); // what lies between two marks
        return;
    }
    gauge_at(s, 0.1f, 0.12f, 0, 1);
    gauge_at(s, 0.58f, 0.8f, 2, 3);
}

void sketch_drop(const Sketch& s) {
    s.line({s.at(0.1f, 0.8f), s.at(0.9f, 0.8f)}, Role::ink, 2.0f); // the mesh
    for (const float x : {0.1f, 0.86f}) s.block(s.at(x, 0.72f), s.at(x + 0.04f, 0.88f), Role::frame);
    s.list.ring({s.at(0.4f, 0).x, s.at(0, 0.1f).y, s.at(0.47f, 0).x, s.at(0, 0.44f).y}, 3.0f, paint(Role::frame), 1.6f);
    s.block(s.at(0.4f, 0.46f), s.at(0.47f, 0.68f), Role::frame);
    s.block(s.at(0.42f, 0.66f), s.at(0.45f, 0.8f), Role::squeegee, 1.0f);
    s.arrow(s.at(0.55f, 0.2f), s.at(0.55f, 0.7f), Role::squeegee);
    s.letter({s.at(0.55f, 0).x + s.radius() + 10.0f, s.at(0, 0.42f).y}, 0);
}

/// Travel and turns: the first letter is the travel; a screw alone has only turns.
void sketch_screw(const Sketch& s) {
    const bool travel = s.input.badges > 1;
    const Vec dial = s.at(travel ? 0.26f : 0.5f, 0.54f);
    const float radius = 0.28f * s.box.height();
    s.list.disc(dial, radius, paint(Role::quiet));
    s.list.circle(dial, radius, paint(Role::frame), 3.0f);
    const int marks = s.input.press->adjusters.empty() ? 12 : s.input.press->adjusters.front().graduations;
    const int shown = std::clamp(marks, 4, 40);
    for (int i = 0; i < shown; ++i) {
        const float a = 2.0f * pi * static_cast<float>(i) / static_cast<float>(shown) - 0.5f * pi;
        const Vec way{std::cos(a), std::sin(a)};
        s.line({dial + way * (radius - (i == 0 ? 12.0f : 7.0f)), dial + way * radius}, Role::ink, i == 0 ? 3.0f : 1.4f);
    }
    s.list.disc(dial, 5.0f, paint(Role::ink));
    s.arc(dial, radius + 10.0f, -0.9f * pi, 0.05f * pi, Role::squeegee, 2.4f);
    const Vec tip = dial + Vec{(radius + 10.0f) * std::cos(0.05f * pi), (radius + 10.0f) * std::sin(0.05f * pi)};
    s.line({tip + Vec{-7.0f, -6.0f}, tip + Vec{0.0f, 3.0f}, tip + Vec{7.0f, -6.0f}}, Role::squeegee, 2.4f);
    s.letter({dial.x - radius - s.radius() - 12.0f, dial.y - 0.3f * radius}, travel ? 1 : 0);
    if (!travel) return;
    // What it moves: where it was, and where it is.
    const float y0 = s.at(0, 0.2f).y, y1 = s.at(0, 0.66f).y;
    s.line({dial + Vec{radius + 4.0f, 0.0f}, s.at(0.62f, 0.54f)}, Role::frame, 3.0f);
    s.list.ring({s.at(0.6f, 0).x, y0, s.at(0.68f, 0).x, y1}, 3.0f, paint(Role::frame), 1.6f);
    s.block({s.at(0.74f, 0).x, y0}, {s.at(0.82f, 0).x, y1}, Role::frame);
    s.line({s.at(0.6f, 0.66f), s.at(0.6f, 0.82f)}, Role::soft_ink, 1.2f);
    s.line({s.at(0.74f, 0.66f), s.at(0.74f, 0.82f)}, Role::soft_ink, 1.2f);
    s.dimension(s.at(0.6f, 0.79f), s.at(0.74f, 0.79f), -1);
    s.letter({s.at(0.74f, 0).x + s.radius() + 10.0f, s.at(0, 0.79f).y}, 0);
}

void sketch_scatter(const Sketch& s) {
    const float y = s.at(0, 0.62f).y;
    s.block({s.at(0.06f, 0).x, y}, {s.at(0.94f, 0).x, s.at(0, 0.84f).y}, Role::quiet);
    s.ruler(y, s.at(0.1f, 0).x, s.at(0.9f, 0).x, 0.04f * s.box.width());
    // Invented readings: most near the middle, few far out.
    constexpr float places[] = {0.36f, 0.43f, 0.46f, 0.49f, 0.5f, 0.53f, 0.57f, 0.65f};
    for (const float x : places) s.line({s.at(x, 0.44f), {s.at(x, 0).x, y}}, Role::squeegee, 2.0f);
    s.dimension(s.at(places[0], 0.36f), s.at(places[7], 0.36f), -1);
    s.letter({s.at(0.505f, 0).x, s.at(0, 0.36f).y - s.radius() - 8.0f}, 0);
}

void sketch_heat(const Sketch& s) {
    if (s.input.badges == 1) { // the air of the room
        thermometer(s, s.at(0.5f, 0.3f), s.at(0.5f, 0.72f));
        for (const float x : {0.3f, 0.7f}) s.arc(s.at(x, 0.5f), 0.12f * s.box.height(), 0.7f, 2.4f, Role::edge);
        s.letter({s.at(0.5f, 0).x + s.radius() + 16.0f, s.at(0, 0.4f).y}, 0);
        return;
    }
    const float platen = 0.7f;
    for (const float x : {0.04f, 0.38f, 0.72f}) s.block(s.at(x, platen), s.at(x + 0.24f, platen + 0.08f), Role::rail);
    s.block(s.at(0.36f, 0.16f), s.at(0.64f, 0.3f), Role::frame);
    for (int i = 0; i < 4; ++i) {
        const float x = 0.41f + 0.06f * static_cast<float>(i);
        s.line({s.at(x, 0.36f), s.at(x + 0.015f, 0.43f), s.at(x - 0.015f, 0.5f), s.at(x, 0.57f)}, Role::stop, 2.2f);
    }
    thermometer(s, s.at(0.14f, platen), s.at(0.2f, 0.4f));
    thermometer(s, s.at(0.86f, platen), s.at(0.8f, 0.4f));
    s.arrow(s.at(0.29f, 0.92f), s.at(0.71f, 0.92f), Role::soft_ink, 1.6f);
    s.letter(s.at(0.1f, 0.4f), 0);
    s.letter(s.at(0.9f, 0.4f), 1);
    s.letter({s.at(0.64f, 0).x + s.radius() + 6.0f, s.at(0, 0.2f).y}, 2);
}

void sketch_cooling(const Sketch& s) {
    s.line({s.at(0.1f, 0.08f), s.at(0.1f, 0.88f), s.at(0.96f, 0.88f)}, Role::edge, 1.6f);
    s.dashed(s.at(0.1f, 0.76f), s.at(0.96f, 0.76f), Role::soft_ink);
    const auto curve = [](float x) { return 0.76f - 0.6f * std::exp(-2.2f * (x - 0.14f)); };
    Vec points[33];
    for (int i = 0; i <= 32; ++i) {
        const float x = 0.14f + 0.8f * static_cast<float>(i) / 32.0f;
        points[i] = s.at(x, curve(x));
    }
    s.list.line(points, 33, paint(Role::stop), 2.6f);
    const Vec warm = s.at(0.22f, curve(0.22f)), later = s.at(0.66f, curve(0.66f));
    for (const Vec p : {warm, later}) s.list.disc(p, 5.0f, paint(Role::stop));
    s.letter({s.at(0.9f, 0).x, s.at(0, 0.76f).y}, 0);
    s.letter(warm + Vec{s.radius() + 6.0f, -s.radius()}, 1);
    s.letter(later + Vec{s.radius() + 2.0f, -s.radius() - 6.0f}, 2);
    s.dimension({warm.x, s.at(0, 0.88f).y}, {later.x, s.at(0, 0.88f).y}, 3);
}

void sketch_heights(const Sketch& s) {
    const float h = 0.84f * s.box.height(), w = 0.74f * h;
    const Box frame = around(s.box.centre(), w, h);
    s.list.round(frame, 5.0f, paint(Role::frame));
    s.list.round(frame.inset(0.07f * w), 2.0f, paint(Role::mesh));
    const Vec left{frame.x0 + 0.14f * w, frame.y1 - 0.1f * h}, right{frame.x1 - 0.14f * w, left.y};
    const Vec machine{frame.centre().x, frame.y0 + 0.1f * h};
    for (const Vec p : {left, right, machine}) {
        s.list.disc(p, 8.0f, paint(Role::paper));
        s.list.circle(p, 8.0f, paint(Role::ink), 2.0f);
        s.line({p + Vec{-5.0f, 0.0f}, p + Vec{5.0f, 0.0f}}, Role::ink, 1.8f);
    }
    if (s.input.places) {
        const Vec read = s.input.machine ? machine : left;
        s.pointer({s.at(0.16f, 0).x, read.y}, read, 0);
        if (!s.input.machine) s.dashed(left, right, Role::soft_ink);
        return;
    }
    s.dimension(left + Vec{0.0f, -0.14f * h}, right + Vec{0.0f, -0.14f * h}, 0);
    s.dashed(left, left + Vec{0.0f, -0.14f * h}, Role::soft_ink);
    s.dashed(right, right + Vec{0.0f, -0.14f * h}, Role::soft_ink);
}

void sketch_cylinder(const Sketch& s) {
    const float y0 = s.at(0, 0.28f).y, y1 = s.at(0, 0.72f).y;
    s.block({s.at(0.2f, 0).x, y0}, {s.at(0.62f, 0).x, y1}, Role::quiet, 5.0f);
    s.list.ring({s.at(0.2f, 0).x, y0, s.at(0.62f, 0).x, y1}, 5.0f, paint(Role::frame), 3.0f);
    s.block({s.at(0.42f, 0).x, y0 + 3.0f}, {s.at(0.48f, 0).x, y1 - 3.0f}, Role::squeegee, 1.0f);
    s.block(s.at(0.48f, 0.46f), s.at(0.84f, 0.54f), Role::frame, 2.0f);
    s.arrow(s.at(0.06f, 0.5f), s.at(0.17f, 0.5f), Role::soft_ink);
    s.dimension({s.at(0.32f, 0).x, y0 + 3.0f}, {s.at(0.32f, 0).x, y1 - 3.0f}, 0);
}

} // namespace carriageway
