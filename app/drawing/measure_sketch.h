// A pen for the schemes of measuring: a box in shares of its width and height.
#pragma once

#include <initializer_list>
#include <vector>

#include "app/drawing/measure_layer.h"

namespace carriageway {

struct Sketch {
    DrawingList& list;
    Box box;
    const SchemeInput& input;

    /// From 0 to 1 across and down.
    Vec at(float x, float y) const { return {box.x0 + x * box.width(), box.y0 + y * box.height()}; }
    void line(std::initializer_list<Vec> points, Role role, float width = 2.0f) const {
        const std::vector<Vec> all(points);
        list.line(all.data(), static_cast<int>(all.size()), paint(role), width);
    }
    void dashed(Vec from, Vec to, Role role) const {
        const float all = length(to - from);
        const Vec way = (to - from) * (1.0f / std::max(1e-3f, all));
        for (float s = 0.0f; s < all; s += 9.0f) line({from + way * s, from + way * std::min(all, s + 5.0f)}, role, 1.4f);
    }
    void block(Vec from, Vec to, Role role, float radius = 3.0f) const {
        list.round({from.x, from.y, to.x, to.y}, radius, paint(role));
    }
    /// A dimension line with its two ends, and a letter at its middle, off the line by `off`.
    void dimension(Vec from, Vec to, int letter, Vec off = {}) const;
    /// An arrow whose head is at `to`.
    void arrow(Vec from, Vec to, Role role, float width = 2.2f) const;
    /// A letter, kept within the drawing; only those that the procedure has.
    void letter(Vec centre, int index) const {
        if (index < input.badges) draw_badge(list, within(centre), index);
    }
    Vec within(Vec centre) const {
        const float room = radius();
        return {std::max(box.x0 + room, std::min(centre.x, box.x1 - room)),
                std::max(box.y0 + room, std::min(centre.y, box.y1 - room))};
    }
    /// A line from a letter to what it stands for, then the letter.
    void pointer(Vec letter_at, Vec to, int index) const {
        if (index >= input.badges) return;
        line({letter_at, to}, Role::ink, 1.4f);
        list.disc(to, 3.0f, paint(Role::ink));
        letter(letter_at, index);
    }
    void arc(Vec centre, float radius, float from, float to, Role role, float width = 2.0f) const;
    void lamp(Vec centre, bool on) const;
    /// Marks along a line at a height, each long one after four short ones.
    void ruler(float y, float x0, float x1, float step, bool below = true) const;
    float radius() const { return badge_radius(list.type()); }
};

// Schemes of heights, screws and heat (measure_layer_more.cpp).
void sketch_gauge(const Sketch& s);
void sketch_drop(const Sketch& s);
void sketch_screw(const Sketch& s);
void sketch_scatter(const Sketch& s);
void sketch_heat(const Sketch& s);
void sketch_cooling(const Sketch& s);
void sketch_heights(const Sketch& s);
void sketch_cylinder(const Sketch& s);

} // namespace carriageway
