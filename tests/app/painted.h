// For tests of painting: a drawing list with real type, and its picture.
#pragma once

#include <imgui.h>

#include <random>

#include "app/drawing/drawing_list.h"
#include "app/drawing/fonts.h"
#include "app/drawing/picture.h"

namespace carriageway::test {

class Sheet {
  public:
    Sheet(float width, float height, float ratio = 1.0f, float text = 1.0f)
        : width_(width), height_(height), ratio_(ratio), fonts(atlas_) {
        fonts.rebuild(text, ratio);
        list.begin({0.0f, 0.0f, width, height}, fonts);
    }
    Picture picture(Theme theme = Theme::light) const {
        return paint_picture(list, theme, fonts, static_cast<int>(width_ * ratio_),
                             static_cast<int>(height_ * ratio_));
    }

  private:
    float width_, height_, ratio_;
    ImFontAtlas atlas_;

  public:
    Fonts fonts;
    DrawingList list;
};

/// What part of a picture is not of one colour.
struct Marked {
    int x0 = 1 << 20, y0 = 1 << 20, x1 = -1, y1 = -1;  ///< first and last pixel
    int pixels = 0;
};

inline Marked marked(const Picture& picture, std::uint32_t ground) {
    Marked found;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            if (picture.at(x, y) == ground) continue;
            found.x0 = std::min(found.x0, x);
            found.y0 = std::min(found.y0, y);
            found.x1 = std::max(found.x1, x);
            found.y1 = std::max(found.y1, y);
            ++found.pixels;
        }
    }
    return found;
}

/// The largest difference of a channel between two colours.
inline int apart(std::uint32_t a, std::uint32_t b) {
    int most = 0;
    for (const int shift : {0, 8, 16})
        most = std::max(most, std::abs(static_cast<int>((a >> shift) & 0xFFu) -
                                       static_cast<int>((b >> shift) & 0xFFu)));
    return most;
}

/// One colour over another.
inline std::uint32_t over(std::uint32_t above, std::uint32_t below, double share) {
    std::uint32_t mixed = 0;
    for (const int shift : {16, 8, 0}) {
        const double a = (above >> shift) & 0xFFu, b = (below >> shift) & 0xFFu;
        mixed = mixed << 8 | static_cast<std::uint32_t>(a * share + b * (1.0 - share) + 0.5);
    }
    return mixed;
}

/// Distance of a point from the inside of a convex polygon: 0 or less inside.
inline double outside_by(const std::vector<Vec>& polygon, double x, double y) {
    double area = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec a = polygon[i], b = polygon[(i + 1) % polygon.size()];
        area += double(a.x) * double(b.y) - double(b.x) * double(a.y);
    }
    double most = -1e9;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec a = polygon[i], b = polygon[(i + 1) % polygon.size()];
        const double dx = double(b.x - a.x), dy = double(b.y - a.y);
        const double away = (dy * (x - double(a.x)) - dx * (y - double(a.y))) / std::hypot(dx, dy);
        most = std::max(most, area > 0.0 ? away : -away);
    }
    return most;
}

inline constexpr std::uint32_t red = 0xD02010, blue = 0x1030C0;

}  // namespace carriageway::test
