// Icons as strokes: no font is needed, and they scale with everything else.
#include <initializer_list>
#include <numbers>

#include "app/views/canvas.h"

namespace carriageway {

namespace {

/// Draws on a 24 × 24 grid whose middle is (12, 12).
struct Pen {
    DrawingList& list;
    Vec centre;
    float unit;
    Paint colour;
    float width;

    Vec at(float x, float y) const {
        return {centre.x + (x - 12.0f) * unit, centre.y + (y - 12.0f) * unit};
    }
    void line(std::initializer_list<Vec> points) const {
        Vec out[8];
        int count = 0;
        for (const Vec p : points)
            if (count < static_cast<int>(std::size(out))) out[count++] = at(p.x, p.y);
        list.line(out, count, colour, width);
    }
    void ring(float x, float y, float radius) const {
        list.circle(at(x, y), radius * unit, colour, width);
    }
    void arc(float x, float y, float radius, float from, float to) const {
        Vec points[17];
        for (int i = 0; i <= 16; ++i) {
            const float a = from + (to - from) * static_cast<float>(i) / 16.0f;
            points[i] = at(x + radius * std::cos(a), y + radius * std::sin(a));
        }
        list.line(points, 17, colour, width);
    }
    void turn_back(bool mirrored) const {
        const float s = mirrored ? -1.0f : 1.0f;
        const auto x = [&](float v) { return 12.0f + s * (v - 12.0f); };
        line({{x(9), 5}, {x(4), 10}, {x(9), 15}});
        line({{x(4), 10}, {x(14), 10}});
        Vec points[13];
        for (int i = 0; i <= 12; ++i) {
            const float a = -0.5f * std::numbers::pi_v<float> +
                            std::numbers::pi_v<float> * static_cast<float>(i) / 12.0f;
            points[i] = at(x(14 + 5 * std::cos(a)), 15 + 5 * std::sin(a));
        }
        list.line(points, 13, colour, width);
        line({{x(14), 20}, {x(9), 20}});
    }
};

void draw_press(const Pen& pen) {
    pen.ring(12, 12, 3);
    for (int i = 0; i < 6; ++i) {
        const float a = std::numbers::pi_v<float> / 3.0f * static_cast<float>(i);
        const float c = std::cos(a), s = std::sin(a);
        pen.line({{12 + 6 * c, 12 + 6 * s}, {12 + 10.5f * c, 12 + 10.5f * s}});
    }
}

void draw_gear(const Pen& pen) {
    for (const float y : {6.0f, 12.0f, 18.0f}) pen.line({{3, y}, {21, y}});
    pen.ring(15, 6, 2);
    pen.ring(8, 12, 2);
    pen.ring(16, 18, 2);
}

void draw_trash(const Pen& pen) {
    pen.line({{4, 7}, {20, 7}});
    pen.line({{9, 7}, {9, 4}, {15, 4}, {15, 7}});
    pen.line({{6, 7}, {7, 20}, {17, 20}, {18, 7}});
}

/// A rule with its marks.
void draw_rule(const Pen& pen) {
    pen.line({{2, 8}, {22, 8}, {22, 17}, {2, 17}, {2, 7.2f}});
    for (const float x : {6.0f, 10.0f, 14.0f, 18.0f}) pen.line({{x, 8}, {x, 12}});
}

} // namespace

void Canvas::icon(Icon shape, Vec centre, float size, Role role) {
    const Pen pen{list(), centre, size / 24.0f, paint(role), 2.0f};
    switch (shape) {
    case Icon::none: break;
    case Icon::back: pen.line({{14, 5}, {7, 12}, {14, 19}}); break;
    case Icon::undo: pen.turn_back(false); break;
    case Icon::redo: pen.turn_back(true); break;
    case Icon::plus: pen.line({{12, 4}, {12, 20}}); [[fallthrough]];
    case Icon::minus: pen.line({{4, 12}, {20, 12}}); break;
    case Icon::whole:
        pen.line({{4, 9}, {4, 4}, {9, 4}});
        pen.line({{15, 4}, {20, 4}, {20, 9}});
        pen.line({{20, 15}, {20, 20}, {15, 20}});
        pen.line({{9, 20}, {4, 20}, {4, 15}});
        break;
    case Icon::press: draw_press(pen); break;
    case Icon::jobs:
        pen.line({{5, 4}, {19, 4}, {19, 20}, {5, 20}, {5, 3.5f}});
        pen.line({{9, 9}, {15, 9}});
        pen.line({{9, 14}, {15, 14}});
        break;
    case Icon::next: pen.line({{10, 5}, {17, 12}, {10, 19}}); break;
    case Icon::registration:
        pen.ring(12, 12, 5.5f);
        pen.line({{12, 2.5f}, {12, 21.5f}});
        pen.line({{2.5f, 12}, {21.5f, 12}});
        break;
    case Icon::clock:
        pen.ring(12, 12, 9);
        pen.line({{12, 6.5f}, {12, 12}, {16, 14.5f}});
        break;
    case Icon::play: pen.line({{8, 5}, {18, 12}, {8, 19}, {8, 5}}); break;
    case Icon::pause:
        pen.line({{9, 5}, {9, 19}});
        pen.line({{15, 5}, {15, 19}});
        break;
    case Icon::practice: // a board on its stand
        pen.line({{3, 4}, {21, 4}, {21, 16}, {3, 16}, {3, 4}});
        pen.line({{7, 12}, {10.5f, 8.5f}, {13, 11}, {17, 7}});
        pen.line({{9, 16}, {7, 21}});
        pen.line({{15, 16}, {17, 21}});
        break;
    case Icon::gear: draw_gear(pen); break;
    case Icon::close: pen.line({{5, 5}, {19, 19}}); pen.line({{19, 5}, {5, 19}}); break;
    case Icon::down: pen.line({{5, 9}, {12, 16}, {19, 9}}); break;
    case Icon::up: pen.line({{5, 15}, {12, 8}, {19, 15}}); break;
    case Icon::backspace:
        pen.line({{8, 5}, {21, 5}, {21, 19}, {8, 19}, {2, 12}, {8, 5}});
        pen.line({{11, 9}, {17, 15}});
        pen.line({{17, 9}, {11, 15}});
        break;
    case Icon::search: pen.ring(10.5f, 10.5f, 6.5f); pen.line({{15.5f, 15.5f}, {21, 21}}); break;
    case Icon::trash: draw_trash(pen); break;
    case Icon::measure: draw_rule(pen); break;
    case Icon::check: pen.line({{4, 13}, {10, 19}, {20, 6}}); break;
    case Icon::space: pen.line({{4, 13}, {4, 17}, {20, 17}, {20, 13}}); break;
    case Icon::more:
        for (const float x : {5.0f, 12.0f, 19.0f}) list().disc(pen.at(x, 12), 2.0f * pen.unit, pen.colour);
        break;
    }
}

} // namespace carriageway
