#include "tests/records/made_png.h"

#include <zlib.h>

#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <vector>

namespace carriageway::tests {
namespace {

void append(png_structp png, png_bytep bytes, png_size_t count) {
    static_cast<std::string*>(png_get_io_ptr(png))
        ->append(reinterpret_cast<const char*>(bytes), count);
}
void flush(png_structp) {}

int channels_of(int colour_type) {
    switch (colour_type) {
        case PNG_COLOR_TYPE_GRAY_ALPHA: return 2;
        case PNG_COLOR_TYPE_RGB: return 3;
        case PNG_COLOR_TYPE_RGB_ALPHA: return 4;
        default: return 1;
    }
}

/// One row as libpng takes it: samples of `depth` bits, packed from the highest bit on.
std::vector<png_byte> packed_row(const MadePng& made, int y) {
    const int channels = channels_of(made.colour_type);
    const bool has_opacity = (made.colour_type & PNG_COLOR_MASK_ALPHA) != 0;
    std::vector<png_byte> row(
        (static_cast<std::size_t>(made.width) * static_cast<std::size_t>(channels * made.depth) + 7) / 8);
    std::size_t bit = 0;
    const int most = (1 << made.depth) - 1;
    for (int x = 0; x < made.width; ++x) {
        for (int channel = 0; channel < channels; ++channel) {
            const bool opacity = has_opacity && channel == channels - 1;
            int value = opacity ? made.opacity(x, y) : made.grey(x, y);
            value = static_cast<int>(std::lround(value * (most / 255.0)));
            // The transparent one, where there is no other opacity, is the darkest.
            if (!has_opacity && made.opacity && made.opacity(x, y) < 128) value = 0;
            for (int place = made.depth - 1; place >= 0; --place, ++bit) {
                if (((value >> place) & 1) != 0) row[bit / 8] |= static_cast<png_byte>(0x80u >> bit % 8);
            }
        }
    }
    return row;
}

void write_palette(png_structp png, png_infop info, const MadePng& made) {
    const int count = 1 << made.depth;
    std::vector<png_color> colours;
    for (int i = 0; i < count; ++i) {
        const auto grey = static_cast<png_byte>(i * 255 / (count - 1));
        colours.push_back({grey, grey, grey});
    }
    png_set_PLTE(png, info, colours.data(), count);
}

void write_transparent_colour(png_structp png, png_infop info, const MadePng& made) {
    png_color_16 darkest{};
    png_byte none = 0;
    if (made.colour_type == PNG_COLOR_TYPE_PALETTE) {
        png_set_tRNS(png, info, &none, 1, nullptr);
    } else {
        png_set_tRNS(png, info, nullptr, 0, &darkest);
    }
}

}  // namespace

std::string made_png(const MadePng& made) {
    std::string bytes;
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    REQUIRE(info != nullptr);
    std::vector<std::vector<png_byte>> rows;
    std::vector<png_bytep> pointers;
    for (int y = 0; y < made.height; ++y) rows.push_back(packed_row(made, y));
    for (auto& row : rows) pointers.push_back(row.data());
    png_set_write_fn(png, &bytes, append, flush);
    png_set_IHDR(png, info, static_cast<png_uint_32>(made.width),
                 static_cast<png_uint_32>(made.height), made.depth, made.colour_type,
                 made.interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE,
                 PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    if (made.dots_per_inch > 0.0) {
        const auto per_metre = static_cast<png_uint_32>(std::lround(made.dots_per_inch / 0.0254));
        png_set_pHYs(png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
    }
    if (made.colour_type == PNG_COLOR_TYPE_PALETTE) write_palette(png, info, made);
    const bool has_opacity = (made.colour_type & PNG_COLOR_MASK_ALPHA) != 0;
    if (!has_opacity && made.opacity) write_transparent_colour(png, info, made);
    png_write_info(png, info);
    png_write_image(png, pointers.data());
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    return bytes;
}

std::string four_bytes(std::uint32_t value) {
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>((value >> shift) & 0xFFu);
    return bytes;
}

std::string png_chunk(const std::string& type, const std::string& content) {
    const std::string body = type + content;
    const auto sum = static_cast<std::uint32_t>(crc32(
        0, reinterpret_cast<const Bytef*>(body.data()), static_cast<uInt>(body.size())));
    return four_bytes(static_cast<std::uint32_t>(content.size())) + body + four_bytes(sum);
}

std::string hollow_png(std::uint32_t width, std::uint32_t height, int depth, int colour_type) {
    std::string header = four_bytes(width) + four_bytes(height);
    header += static_cast<char>(depth);
    header += static_cast<char>(colour_type);
    header += std::string(3, '\0');
    return std::string("\x89PNG\r\n\x1A\n", 8) + png_chunk("IHDR", header) +
           png_chunk("pHYs", four_bytes(10000) + four_bytes(10000) + '\x01') +
           png_chunk("IDAT", "") + png_chunk("IEND", "");
}

}  // namespace carriageway::tests
