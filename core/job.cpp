#include "core/job.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

/// Below this the sine or cosine of a rotation is rounding of a quarter turn: a rectangle typed as
/// turned by 90° shall have upright sides, not sides that lean by a millionth of a nanometre.
constexpr double quarter_turn_rounding = 1e-15;

double without_rounding(double component) {
    return std::abs(component) < quarter_turn_rounding ? 0.0 : component;
}

} // namespace

const Head* find_head(const Job& job, HeadId id) {
    for (const Head& head : job.heads)
        if (head.id == id) return &head;
    return nullptr;
}

Head* find_head(Job& job, HeadId id) {
    for (Head& head : job.heads)
        if (head.id == id) return &head;
    return nullptr;
}

const Head* head_on(const Job& job, int station) {
    for (const Head& head : job.heads)
        if (head.station == station) return &head;
    return nullptr;
}

void place_image(const Image& image, Outline& out) {
    if (image.outline.empty()) {
        const double x = 0.5 * image.width;
        const double y = 0.5 * image.length;
        out.assign({{-x, -y}, {x, -y}, {x, y}, {-x, y}});
    } else {
        out.assign(image.outline.begin(), image.outline.end());
    }
    if (signed_area(out) < 0.0) std::reverse(out.begin(), out.end());
    const double cosine = without_rounding(std::cos(image.rotation));
    const double sine = without_rounding(std::sin(image.rotation));
    for (Point& corner : out) {
        const Point own = corner;
        corner.x = image.offset_x + own.x * cosine - own.y * sine;
        corner.y = image.offset_y + own.x * sine + own.y * cosine;
    }
}

Rect opening_of(const Screen& screen) {
    const double x = 0.5 * screen.across - screen.profile_width;
    const double y = 0.5 * screen.along - screen.profile_width;
    if (!(x > 0.0) || !(y > 0.0)) return {};
    return {-x, x, -y, y};
}

Rect rect_of(const Platen& platen) {
    return {platen.offset_x - 0.5 * platen.width, platen.offset_x + 0.5 * platen.width,
            platen.offset_y - 0.5 * platen.length, platen.offset_y + 0.5 * platen.length};
}

} // namespace carriageway
