// The pixels of a picture file one row at a time, so that a film of any size needs no memory to
// speak of.
//
// What is untrusted here is everything: sizes are judged before anything is made as large as they
// say, and a picture that ends early, fails a check or wants too much is refused.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <system_error>

namespace carriageway {

// Largest pictures that are read. Ours: a film of 600 by 800 mm at 600 dots per inch has 14,200 by
// 18,900 pixels.
inline constexpr int largest_picture_side = 60'000;
inline constexpr std::int64_t most_picture_pixels = 400'000'000;

/// Most memory that reading a picture takes beside the bytes of its file. Ours; the shape of the
/// ink takes 20 MB of it at most, rows less than 4.
inline constexpr std::size_t most_picture_memory = 64u * 1024u * 1024u;
/// Of which the library that reads the format may take this at once for one part of the file.
inline constexpr std::size_t most_picture_piece = 32u * 1024u * 1024u;

/// Why a picture was refused. fault_sentence() (separation.h) puts it into words.
struct PictureFault {
    enum class Kind {
        none,
        system,           ///< `error`: what the system says
        is_folder,
        not_a_picture,    ///< no format that is read
        damaged,          ///< `row` of `height` could not be read; 0: the beginning
        cut_short,        ///< the same, because the file ends there
        too_many_pixels,  ///< `width` by `height`
        needs_memory,     ///< `wanted` bytes at once, more than most_picture_piece
        not_supported,    ///< `found`: what of the format isn't read, as the format calls it
        no_size,          ///< neither a resolution in the file nor a width typed; `width`, `height`
        bad_size,         ///< `across` by `along` mm is no size for a picture
        no_ink,           ///< `specks` left out; 0: nothing dark at all
        too_little_ink,   ///< an outline below least_image_area
        cancelled,
    };
    Kind kind = Kind::none;
    std::error_code error{};
    std::int64_t width = 0;  ///< pixels
    std::int64_t height = 0;
    std::int64_t row = 0;  ///< 1 for the first
    std::uint64_t wanted = 0;
    std::uint64_t specks = 0;
    double across = 0.0;  ///< mm
    double along = 0.0;
    std::string found{};
};

/// The bytes of a picture: of a file, or in memory.
struct PictureBytes {
    /// Copies up to `count` bytes from `offset` on; how many, 0 at the end.
    std::function<std::size_t(std::uint64_t offset, char* to, std::size_t count)> read;
    std::uint64_t size = 0;
};

/// Bytes in memory, which must outlive what is made.
PictureBytes picture_in(std::string_view bytes);

/// A file's bytes, read when they are asked for. `path` is UTF-8. What is no plain file (a pipe) is
/// read at once. Fault: system or is_folder.
PictureFault open_picture(const std::string& path, PictureBytes& bytes);

/// What a picture's beginning says.
struct PictureHeader {
    int width = 0;  ///< pixels
    int height = 0;
    /// mm a pixel, where the file says so; otherwise 0.
    double across = 0.0;
    double along = 0.0;
    /// How much longer than wide a pixel is; 1 where the file doesn't say.
    double aspect = 1.0;
};

/// Pixels of one row. An interlaced picture gives a row several times, other pixels each time.
struct PictureRow {
    int y = 0;      ///< 0 at the top
    int first = 0;  ///< column of the first pixel
    int step = 1;   ///< columns from each to the next
    /// 0 white to 255 black: what is missing to white of the luminance (weights of ITU-R BT.709, on
    /// the values as they are coded), times the opacity. Valid until the next row.
    std::span<const std::uint8_t> darkness;
};

/// A picture that is being read. One that meets a fault gives no more rows.
class PictureRows {
  public:
    virtual ~PictureRows() = default;
    PictureRows() = default;
    PictureRows(const PictureRows&) = delete;
    PictureRows& operator=(const PictureRows&) = delete;

    /// Of a picture without fault its size is within the limits above.
    virtual const PictureHeader& header() const = 0;
    /// The next row; nothing at the end, which has been checked, or after a fault.
    virtual std::optional<PictureRow> next() = 0;
    virtual const PictureFault& fault() const = 0;
};

/// Starts to read; the fault may be there already. The bytes must outlive what is returned.
std::unique_ptr<PictureRows> rows_of(const PictureBytes& bytes);

// The formats. Each takes only what starts like one of its own.
bool looks_like_png(std::string_view start);
std::unique_ptr<PictureRows> png_rows(const PictureBytes& bytes);
bool looks_like_tiff(std::string_view start);
std::unique_ptr<PictureRows> tiff_rows(const PictureBytes& bytes);

/// The fault of a size, if it has one; sides and number of pixels.
PictureFault size_fault(std::int64_t width, std::int64_t height);

/// Darkness of `count` pixels of `channels` bytes each: 1 grey, 2 grey and opacity, 3 red, green
/// and blue, 4 with opacity.
void to_darkness(const std::uint8_t* pixels, int channels, std::size_t count, std::uint8_t* out);

}  // namespace carriageway
