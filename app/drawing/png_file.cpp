#include "app/drawing/png_file.h"

#include <png.h>

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <ios>

namespace carriageway {

namespace {

std::error_code last_error() {
    const int number = errno;
    return number != 0 ? std::error_code(number, std::generic_category())
                       : std::make_error_code(std::errc::io_error);
}

} // namespace

std::error_code encode_png(const Picture& picture, std::vector<std::uint8_t>& bytes) {
    bytes.clear();
    const std::size_t wanted =
        4 * static_cast<std::size_t>(std::max(picture.width, 0)) *
        static_cast<std::size_t>(std::max(picture.height, 0));
    if (wanted == 0 || picture.rgba.size() != wanted)
        return std::make_error_code(std::errc::invalid_argument);

    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(picture.width);
    image.height = static_cast<png_uint_32>(picture.height);
    image.format = PNG_FORMAT_RGBA;
    png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(image);
    bytes.resize(size);
    const int done = png_image_write_to_memory(&image, bytes.data(), &size, 0,
                                               picture.rgba.data(), 0, nullptr);
    png_image_free(&image);
    bytes.resize(done != 0 ? size : 0);
    // Size and memory are all that can be wrong with pixels that are there.
    return done != 0 ? std::error_code() : std::make_error_code(std::errc::not_enough_memory);
}

std::error_code write_png(const Picture& picture, const std::filesystem::path& path) {
    std::vector<std::uint8_t> bytes;
    if (const std::error_code wrong = encode_png(picture, bytes)) return wrong;
    errno = 0;
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    if (!file) return last_error();
    file.write(reinterpret_cast<const char*>(bytes.data()),
               static_cast<std::streamsize>(bytes.size()));
    file.close();
    if (file) return {};
    const std::error_code wrong = last_error();
    std::error_code ignored;
    if (std::filesystem::is_regular_file(path, ignored)) std::filesystem::remove(path, ignored);
    return wrong;
}

} // namespace carriageway
