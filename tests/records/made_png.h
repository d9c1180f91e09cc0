// PNG files written by libpng for tests: any colour type, depth and interlacing, a resolution.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include <png.h>

namespace carriageway::tests {

/// What a file is to have. `grey(x, y)` is 0 black to 255 white.
struct MadePng {
    int width = 64;
    int height = 48;
    int colour_type = PNG_COLOR_TYPE_GRAY;
    int depth = 8;
    bool interlaced = false;
    double dots_per_inch = 254.0;  ///< 0: none is written
    std::function<int(int x, int y)> grey;
    /// 0 transparent to 255; where there is no opacity, pixels below 128 get the transparent colour.
    std::function<int(int x, int y)> opacity;
};

/// The file's bytes. Grey goes into all colours alike; a palette has 2^depth (at most 256) greys.
std::string made_png(const MadePng& made);

/// A chunk with its right check sum, to be put into a file.
std::string png_chunk(const std::string& type, const std::string& content);

/// Four bytes, the highest first.
std::string four_bytes(std::uint32_t value);

/// Only a header of this size, an empty IDAT and an end: nothing stands behind its promise.
std::string hollow_png(std::uint32_t width, std::uint32_t height, int depth, int colour_type);

}  // namespace carriageway::tests
