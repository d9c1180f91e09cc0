#include "app/records/picture_rows.h"

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "app/records/file_bytes.h"

namespace carriageway {
namespace {

using Kind = PictureFault::Kind;

/// A picture that is none.
class NoRows : public PictureRows {
  public:
    const PictureHeader& header() const override { return header_; }
    std::optional<PictureRow> next() override { return std::nullopt; }
    const PictureFault& fault() const override { return fault_; }

  private:
    PictureHeader header_;
    PictureFault fault_{Kind::not_a_picture};
};

PictureFault system_fault(std::error_code error) {
    PictureFault fault{Kind::system};
    fault.error = error;
    return fault;
}

/// What can be read but once: all of it at once, as far as it may go.
PictureFault read_pipe(const std::string& path, PictureBytes& bytes) {
    const auto whole = std::make_shared<std::string>();
    if (const std::optional<FileFault> fault = read_file(path, most_picture_memory, *whole)) {
        return system_fault(fault->error);
    }
    bytes = picture_in(*whole);
    bytes.read = [whole, read = bytes.read](std::uint64_t offset, char* to, std::size_t count) {
        return read(offset, to, count);
    };
    return {};
}

}  // namespace

PictureBytes picture_in(std::string_view bytes) {
    const auto read = [bytes](std::uint64_t offset, char* to, std::size_t count) {
        if (offset >= bytes.size()) return std::size_t{0};
        const std::size_t length = std::min(count, bytes.size() - static_cast<std::size_t>(offset));
        std::memcpy(to, bytes.data() + offset, length);
        return length;
    };
    return {read, bytes.size()};
}

PictureFault open_picture(const std::string& path, PictureBytes& bytes) {
    namespace fs = std::filesystem;
    const fs::path file_path = path_of(path);
    std::error_code error;
    const fs::file_status status = fs::status(file_path, error);
    if (status.type() == fs::file_type::not_found) {
        return system_fault(std::make_error_code(std::errc::no_such_file_or_directory));
    }
    if (fs::is_directory(status)) return {Kind::is_folder};
    if (fs::exists(status) && !fs::is_regular_file(status)) return read_pipe(path, bytes);
    errno = 0;
    const std::shared_ptr<std::FILE> file = open_bytes(file_path);
    if (!file) return system_fault({errno != 0 ? errno : EIO, std::generic_category()});
    bytes.size = fs::file_size(file_path, error);
    if (error) return system_fault(error);
    bytes.read = [file, at = std::uint64_t{0}](std::uint64_t offset, char* to,
                                               std::size_t count) mutable {
        std::clearerr(file.get());
        // Going to where it is already would throw away what has been read ahead.
        if (offset != at && !go_to(file.get(), offset)) return std::size_t{0};
        const std::size_t length = std::fread(to, 1, count, file.get());
        at = offset + length;
        return length;
    };
    return {};
}

std::unique_ptr<PictureRows> rows_of(const PictureBytes& bytes) {
    char start[8] = {};
    const std::string_view read(start, bytes.read ? bytes.read(0, start, sizeof start) : 0);
    if (looks_like_png(read)) return png_rows(bytes);
#ifdef CARRIAGEWAY_TIFF
    if (looks_like_tiff(read)) return tiff_rows(bytes);
#endif
    return std::make_unique<NoRows>();
}

PictureFault size_fault(std::int64_t width, std::int64_t height) {
    const bool small = width >= 1 && height >= 1 && width <= largest_picture_side &&
                       height <= largest_picture_side && width * height <= most_picture_pixels;
    if (small) return {};
    PictureFault fault{Kind::too_many_pixels};
    fault.width = width;
    fault.height = height;
    return fault;
}

void to_darkness(const std::uint8_t* pixels, int channels, std::size_t count, std::uint8_t* out) {
    const bool colour = channels >= 3;
    const bool opacity = channels == 2 || channels == 4;
    for (std::size_t i = 0; i < count; ++i, pixels += channels) {
        unsigned white = pixels[0];
        if (colour) {
            // ITU-R BT.709-6, item 3.2: 0.2126, 0.7152 and 0.0722, as parts of 65536.
            white = (13933u * pixels[0] + 46871u * pixels[1] + 4732u * pixels[2] + 32768u) >> 16;
        }
        unsigned darkness = 255u - white;
        if (opacity) darkness = (darkness * pixels[channels - 1] + 127u) / 255u;
        out[i] = static_cast<std::uint8_t>(darkness);
    }
}

}  // namespace carriageway
