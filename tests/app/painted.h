// For tests of painting: a drawing list with real type, and its picture.
#pragma once

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <numbers>
#include <random>
#include <utility>
#include <vector>

#include "app/drawing/drawing_list.h"
#include "app/drawing/fonts.h"
#include "app/drawing/picture.h"

namespace carriageway::test {

/// Fonts for a text size and a display: made once, as that takes longer than a test's painting.
inline Fonts& fonts_for(float ratio, float text) {
    struct Made {
        ImFontAtlas atlas;
        Fonts fonts{atlas};
    };
    static std::map<std::pair<float, float>, Made> made;
    Fonts& fonts = made[{ratio, text}].fonts;
    fonts.rebuild(text, ratio);
    return fonts;
}

class Sheet {
  public:
    Sheet(float width, float height, float ratio = 1.0f, float text = 1.0f)
        : width_(width), height_(height), fonts(fonts_for(ratio, text)) {
        list.begin({0.0f, 0.0f, width, height}, fonts);
    }
    Picture picture(Theme theme = Theme::light) const {
        const float ratio = fonts.pixels_per_dp();
        return paint_picture(list, theme, fonts, static_cast<int>(width_ * ratio),
                             static_cast<int>(height_ * ratio));
    }

  private:
    float width_, height_;

  public:
    Fonts& fonts;
    DrawingList list;
};

/// The largest difference of a channel between two colours.
inline int apart(std::uint32_t a, std::uint32_t b) {
    int most = 0;
    for (const int shift : {0, 8, 16})
        most = std::max(most, std::abs(static_cast<int>((a >> shift) & 0xFFu) -
                                       static_cast<int>((b >> shift) & 0xFFu)));
    return most;
}

/// What part of a picture is not of one colour: by more than `by` in a channel.
struct Marked {
    int x0 = 1 << 20, y0 = 1 << 20, x1 = -1, y1 = -1;  ///< first and last pixel
    int pixels = 0;
};

inline Marked marked(const Picture& picture, std::uint32_t ground, int by = 0) {
    Marked found;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            if (apart(picture.at(x, y), ground) <= by) continue;
            found.x0 = std::min(found.x0, x);
            found.y0 = std::min(found.y0, y);
            found.x1 = std::max(found.x1, x);
            found.y1 = std::max(found.y1, y);
            ++found.pixels;
        }
    }
    return found;
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

/// A convex polygon with its corners on an ellipse.
inline std::vector<Vec> random_polygon(std::mt19937& source, int corners) {
    std::uniform_real_distribution<float> share(0.1f, 0.9f);
    std::vector<Vec> polygon;
    for (int i = 0; i < corners; ++i) {
        const float angle = 2.0f * std::numbers::pi_v<float> *
                            (static_cast<float>(i) + share(source)) / static_cast<float>(corners);
        polygon.push_back({60.0f + 50.0f * std::cos(angle), 50.0f + 38.0f * std::sin(angle)});
    }
    return polygon;
}

inline constexpr std::uint32_t red = 0xD02010, blue = 0x1030C0;

}  // namespace carriageway::test
