#include "app/drawing/raster.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

constexpr std::int64_t steps = 256;     ///< of a corner's place within a pixel
constexpr float farthest = 2097152.0f;  ///< px: products of two such distances still fit

struct Texture {
    const unsigned char* alpha = nullptr;
    int width = 0;
    int height = 0;

    float texel(int x, int y) const {
        x = std::clamp(x, 0, width - 1);
        y = std::clamp(y, 0, height - 1);
        return static_cast<float>(alpha[static_cast<std::size_t>(y) * static_cast<unsigned>(width) +
                                        static_cast<unsigned>(x)]);
    }
    /// Linear sample at u, v; 0 to 1.
    float sample(float u, float v) const {
        const float x = u * static_cast<float>(width) - 0.5f;
        const float y = v * static_cast<float>(height) - 0.5f;
        const float x0 = std::floor(x), y0 = std::floor(y);
        const int ix = static_cast<int>(x0), iy = static_cast<int>(y0);
        const float fx = x - x0, fy = y - y0;
        const float top = texel(ix, iy) * (1.0f - fx) + texel(ix + 1, iy) * fx;
        const float low = texel(ix, iy + 1) * (1.0f - fx) + texel(ix + 1, iy + 1) * fx;
        return (top * (1.0f - fy) + low * fy) / 255.0f;
    }
};

/// What changes evenly over a triangle: u, v, red, green, blue, alpha (0 to 255).
constexpr int values = 6;

struct Corner {
    std::int64_t x, y; ///< steps
    float value[values];
};

struct Pixels {
    int x0, y0, x1, y1; ///< from x0 up to, not including, x1
};

/// One side: a·x + b·y + c is 0 or more inside, where x and y are steps.
struct Side {
    std::int64_t a, b, c;
};

Side side_from(const Corner& from, const Corner& to) {
    Side side{from.y - to.y, to.x - from.x, 0};
    side.c = -(side.a * from.x + side.b * from.y);
    // Inside is to the right of a side as the corners run clockwise on screen: a side that rises
    // is at the left, a level one that runs to the right is at the top. Others give up their points.
    const bool left = side.a > 0;
    const bool top = side.a == 0 && side.b > 0;
    if (!left && !top) side.c -= 1;
    return side;
}

std::int64_t floor_div(std::int64_t a, std::int64_t b) {
    const std::int64_t q = a / b;
    return (a % b != 0 && (a < 0) != (b < 0)) ? q - 1 : q;
}

/// Narrows the pixels of row y to those whose centres are inside of a side.
void narrow(const Side& side, int y, int& x0, int& x1) {
    const std::int64_t at = side.b * (y * steps + steps / 2) + side.c + side.a * (steps / 2);
    const std::int64_t step = side.a * steps; // at + step · x >= 0
    if (step > 0)
        x0 = static_cast<int>(std::max<std::int64_t>(x0, -floor_div(at, step)));
    else if (step < 0)
        x1 = static_cast<int>(std::min<std::int64_t>(x1, floor_div(at, -step) + 1));
    else if (at < 0)
        x1 = x0;
}

/// The values of a triangle at any pixel.
struct Slopes {
    double at[values], across[values], down[values];

    Slopes(const Corner& p, const Corner& q, const Corner& r, double area) {
        const double qx = static_cast<double>(q.x - p.x), qy = static_cast<double>(q.y - p.y);
        const double rx = static_cast<double>(r.x - p.x), ry = static_cast<double>(r.y - p.y);
        for (int i = 0; i < values; ++i) {
            const double dq = static_cast<double>(q.value[i]) - static_cast<double>(p.value[i]);
            const double dr = static_cast<double>(r.value[i]) - static_cast<double>(p.value[i]);
            const double by_x = (dq * ry - dr * qy) / area, by_y = (dr * qx - dq * rx) / area;
            at[i] = static_cast<double>(p.value[i]) -
                    by_x * (static_cast<double>(p.x) - 0.5 * steps) -
                    by_y * (static_cast<double>(p.y) - 0.5 * steps);
            across[i] = by_x * steps;
            down[i] = by_y * steps;
        }
    }
    bool even(int first, int last) const {
        for (int i = first; i <= last; ++i)
            if (across[i] != 0.0 || down[i] != 0.0) return false;
        return true;
    }
    float value(int i, int x, int y) const {
        return static_cast<float>(at[i] + across[i] * x + down[i] * y);
    }
};

std::uint8_t mixed(float over, float under, float share) {
    return static_cast<std::uint8_t>(
        std::clamp(over * share + under * (1.0f - share) + 0.5f, 0.0f, 255.0f));
}

void blend(std::uint8_t* pixel, float red, float green, float blue, float share) {
    pixel[0] = mixed(red, pixel[0], share);
    pixel[1] = mixed(green, pixel[1], share);
    pixel[2] = mixed(blue, pixel[2], share);
    pixel[3] = mixed(255.0f, pixel[3], share);
}

class Canvas {
public:
    Canvas(Picture& picture, const Texture& texture) : picture_(picture), texture_(texture) {}

    void triangle(Corner p, Corner q, Corner r, const Pixels& clip) {
        std::int64_t area = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
        if (area == 0) return;
        if (area < 0) {
            std::swap(q, r);
            area = -area;
        }
        const Side sides[] = {side_from(p, q), side_from(q, r), side_from(r, p)};
        const Slopes slopes(p, q, r, static_cast<double>(area));
        const bool even = slopes.even(0, values - 1);
        const int top = static_cast<int>(std::min({p.y, q.y, r.y}) / steps) - 1;
        const int end = static_cast<int>(std::max({p.y, q.y, r.y}) / steps) + 1;
        for (int y = std::max(clip.y0, top); y < std::min(clip.y1, end); ++y) {
            int x0 = clip.x0, x1 = clip.x1;
            for (const Side& side : sides) narrow(side, y, x0, x1);
            if (x0 >= x1) continue;
            if (even)
                even_row(slopes, x0, x1, y);
            else
                row(slopes, x0, x1, y);
        }
    }

private:
    std::uint8_t* pixel(int x, int y) {
        return picture_.rgba.data() + 4 * (static_cast<std::size_t>(y) *
                                               static_cast<std::size_t>(picture_.width) +
                                           static_cast<std::size_t>(x));
    }

    void even_row(const Slopes& slopes, int x0, int x1, int y) {
        const float red = slopes.value(2, 0, 0), green = slopes.value(3, 0, 0);
        const float blue = slopes.value(4, 0, 0);
        const float share = slopes.value(5, 0, 0) / 255.0f *
                            texture_.sample(slopes.value(0, 0, 0), slopes.value(1, 0, 0));
        std::uint8_t* at = pixel(x0, y);
        for (int x = x0; x < x1; ++x, at += 4) blend(at, red, green, blue, share);
    }

    void row(const Slopes& slopes, int x0, int x1, int y) {
        const bool one_texel = slopes.even(0, 1);
        const float whole = one_texel ? texture_.sample(slopes.value(0, 0, 0), slopes.value(1, 0, 0))
                                      : 1.0f;
        std::uint8_t* at = pixel(x0, y);
        for (int x = x0; x < x1; ++x, at += 4) {
            const float cover =
                one_texel ? whole
                          : texture_.sample(slopes.value(0, x, y), slopes.value(1, x, y));
            const float alpha = std::clamp(slopes.value(5, x, y), 0.0f, 255.0f) / 255.0f;
            if (cover * alpha > 0.0f)
                blend(at, slopes.value(2, x, y), slopes.value(3, x, y), slopes.value(4, x, y),
                      cover * alpha);
        }
    }

    Picture& picture_;
    const Texture& texture_;
};

std::int64_t stepped(float px) {
    return std::llround(static_cast<double>(std::clamp(px, -farthest, farthest)) *
                        static_cast<double>(steps));
}

Corner corner_of(const ImDrawVert& vertex, ImVec2 origin, ImVec2 scale) {
    const auto channel = [&vertex](int shift) {
        return static_cast<float>((vertex.col >> shift) & 0xFFu);
    };
    return {stepped((vertex.pos.x - origin.x) * scale.x),
            stepped((vertex.pos.y - origin.y) * scale.y),
            {vertex.uv.x, vertex.uv.y, channel(IM_COL32_R_SHIFT), channel(IM_COL32_G_SHIFT),
             channel(IM_COL32_B_SHIFT), channel(IM_COL32_A_SHIFT)}};
}

Pixels clip_of(const ImDrawCmd& command, ImVec2 origin, ImVec2 scale, const Picture& picture) {
    const auto whole = [](float px, int most) {
        return static_cast<int>(std::clamp(px, 0.0f, static_cast<float>(most)));
    };
    return {whole((command.ClipRect.x - origin.x) * scale.x, picture.width),
            whole((command.ClipRect.y - origin.y) * scale.y, picture.height),
            whole((command.ClipRect.z - origin.x) * scale.x, picture.width),
            whole((command.ClipRect.w - origin.y) * scale.y, picture.height)};
}

} // namespace

std::uint32_t Picture::at(int x, int y) const {
    if (x < 0 || y < 0 || x >= width || y >= height) return 0;
    const std::size_t i =
        4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<unsigned>(x));
    return static_cast<std::uint32_t>(rgba[i] << 16 | rgba[i + 1] << 8 | rgba[i + 2]);
}

Picture blank_picture(int width, int height, std::uint32_t colour) {
    Picture picture;
    if (width < 1 || height < 1) return picture;
    picture.width = width;
    picture.height = height;
    picture.rgba.resize(4 * static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
        picture.rgba[i] = static_cast<std::uint8_t>(colour >> 16);
        picture.rgba[i + 1] = static_cast<std::uint8_t>(colour >> 8);
        picture.rgba[i + 2] = static_cast<std::uint8_t>(colour);
        picture.rgba[i + 3] = 255;
    }
    return picture;
}

void rasterise(const ImDrawData& data, ImFontAtlas& atlas, Picture& picture) {
    if (picture.rgba.empty()) return;
    unsigned char* alpha = nullptr;
    Texture texture;
    atlas.GetTexDataAsAlpha8(&alpha, &texture.width, &texture.height);
    texture.alpha = alpha;
    Canvas canvas(picture, texture);
    for (const ImDrawList* list : data.CmdLists) {
        for (const ImDrawCmd& command : list->CmdBuffer) {
            if (command.UserCallback != nullptr) continue;
            const Pixels clip = clip_of(command, data.DisplayPos, data.FramebufferScale, picture);
            const ImDrawIdx* index = list->IdxBuffer.Data + command.IdxOffset;
            const ImDrawVert* vertices = list->VtxBuffer.Data + command.VtxOffset;
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
                Corner corners[3];
                for (unsigned k = 0; k < 3; ++k)
                    corners[k] = corner_of(vertices[index[i + k]], data.DisplayPos,
                                           data.FramebufferScale);
                canvas.triangle(corners[0], corners[1], corners[2], clip);
            }
        }
    }
}

} // namespace carriageway
