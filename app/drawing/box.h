// Points and boxes on the screen.
//
// Unit: dp, one 160th of an inch at a text size of 100 %; a painter multiplies by the display's
// pixels per dp. x to the right, y down, origin at the top left of the window.
#pragma once

#include <algorithm>
#include <cmath>

namespace carriageway {

struct Vec {
    float x = 0.0f;
    float y = 0.0f;
    bool operator==(const Vec&) const = default;
};
inline Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
inline Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
inline Vec operator*(Vec a, float k) { return {a.x * k, a.y * k}; }
/// Not std::hypot(): nothing on a screen is long enough for its square to overflow.
inline float length(Vec a) { return std::sqrt(a.x * a.x + a.y * a.y); }

struct Box {
    float x0 = 0.0f, y0 = 0.0f, x1 = 0.0f, y1 = 0.0f;
    bool operator==(const Box&) const = default;

    float width() const { return x1 - x0; }
    float height() const { return y1 - y0; }
    Vec centre() const { return {0.5f * (x0 + x1), 0.5f * (y0 + y1)}; }
    bool contains(Vec p) const { return p.x >= x0 && p.x < x1 && p.y >= y0 && p.y < y1; }
    bool empty() const { return !(x1 > x0) || !(y1 > y0); }
    Box inset(float by) const { return {x0 + by, y0 + by, x1 - by, y1 - by}; }
};
inline Box around(Vec centre, float width, float height) {
    return {centre.x - 0.5f * width, centre.y - 0.5f * height, centre.x + 0.5f * width,
            centre.y + 0.5f * height};
}
inline Box common(const Box& a, const Box& b) {
    return {std::max(a.x0, b.x0), std::max(a.y0, b.y0), std::min(a.x1, b.x1), std::min(a.y1, b.y1)};
}
inline bool overlap(const Box& a, const Box& b) { return !common(a, b).empty(); }

} // namespace carriageway
