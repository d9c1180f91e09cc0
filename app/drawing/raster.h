// Draw data of Dear ImGui as a picture, worked out on the processor: needs no display and no
// graphics driver, and gives what a graphics driver gives.
//
// A pixel belongs to a triangle when its centre does; a centre on a side belongs to the triangle
// that has that side at its top or left. Corners are rounded to 1/256 px. Texture is sampled
// linearly, colours are mixed in 8-bit channels as stored. (The rules of OpenGL 4.6, 14.6.1 and
// 8.14, which leave the rule for shared sides and the rounding of corners to the driver: those here
// are the usual ones.)
#pragma once

#include <cstdint>
#include <vector>

struct ImDrawData;
struct ImFontAtlas;

namespace carriageway {

/// Pixels in rows from the top left: red, green, blue, alpha, a byte each.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;
    bool operator==(const Picture&) const = default;

    /// 0xRRGGBB of a pixel; outside the picture 0.
    std::uint32_t at(int x, int y) const;
};

/// An opaque picture of one colour 0xRRGGBB. Sizes below 1 give an empty one.
Picture blank_picture(int width, int height, std::uint32_t colour);

/// Draws over a picture. All textures are taken to be the atlas's; callbacks are passed over.
void rasterise(const ImDrawData& data, ImFontAtlas& atlas, Picture& picture);

} // namespace carriageway
