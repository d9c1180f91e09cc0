// TIFF pictures by rows, by libtiff: those in strips, in black and white, grey, colour or with a
// palette. Whatever libtiff calls an error ends the reading, even where it would go on.
#include <tiffio.h>

#include <algorithm>
#include <array>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "app/records/picture_rows.h"

namespace carriageway {
namespace {

using Kind = PictureFault::Kind;

constexpr int most_samples = 5;  ///< a pixel: colour, opacity and one that is left out

class TiffRows : public PictureRows {
  public:
    explicit TiffRows(const PictureBytes& bytes) : bytes_(bytes) {
        TIFFOpenOptions* options = TIFFOpenOptionsAlloc();
        if (options != nullptr) {
            TIFFOpenOptionsSetMaxSingleMemAlloc(options, most_picture_piece);
            TIFFOpenOptionsSetErrorHandlerExtR(options, fail, this);
            TIFFOpenOptionsSetWarningHandlerExtR(options, warn, this);
            // m: not mapped into memory.
            tiff_ = TIFFClientOpenExt("", "rm", this, read, write, seek, close, size, nullptr,
                                      nullptr, options);
            TIFFOpenOptionsFree(options);
        }
        if (tiff_ == nullptr) refuse(ended_ ? Kind::cut_short : Kind::damaged);
        if (fault_.kind == Kind::none) read_header();
    }
    ~TiffRows() override {
        if (tiff_ != nullptr) TIFFClose(tiff_);
    }

    const PictureHeader& header() const override { return header_; }
    const PictureFault& fault() const override { return fault_; }

    std::optional<PictureRow> next() override {
        if (fault_.kind != Kind::none || y_ >= header_.height) return std::nullopt;
        const int done = TIFFReadScanline(tiff_, row_.data(), static_cast<std::uint32_t>(y_), 0);
        if (done != 1) refuse(ended_ ? Kind::cut_short : Kind::damaged);
        if (fault_.kind != Kind::none) return std::nullopt;
        for (int x = 0; x < header_.width; ++x) {
            darkness_[static_cast<std::size_t>(x)] = darkness_at(x);
        }
        return PictureRow{y_++, 0, 1, darkness_};
    }

  private:
    // ---- what libtiff calls ----

    static int fail(TIFF*, void* user, const char*, const char* format, va_list arguments) {
        auto* self = static_cast<TiffRows*>(user);
        char text[200];
        std::vsnprintf(text, sizeof text, format, arguments);
        if (std::strstr(text, "limit defined in open options") != nullptr) {
            const char* number = std::strpbrk(text, "0123456789");
            self->refuse(Kind::needs_memory);
            if (number != nullptr) self->fault_.wanted = std::strtoull(number, nullptr, 10);
        } else {
            self->refuse(self->ended_ ? Kind::cut_short : Kind::damaged);
        }
        return 1;
    }
    /// Tags that it doesn't know, mostly.
    static int warn(TIFF*, void*, const char*, const char*, va_list) { return 1; }
    static tmsize_t read(thandle_t handle, void* to, tmsize_t count) {
        auto* self = static_cast<TiffRows*>(handle);
        if (count <= 0) return 0;
        const std::size_t wanted = static_cast<std::size_t>(count);
        const std::size_t got = self->bytes_.read(self->at_, static_cast<char*>(to), wanted);
        self->at_ += got;
        self->ended_ = self->ended_ || got < wanted;
        return static_cast<tmsize_t>(got);
    }
    static tmsize_t write(thandle_t, void*, tmsize_t) { return 0; }
    static toff_t seek(thandle_t handle, toff_t offset, int whence) {
        auto* self = static_cast<TiffRows*>(handle);
        const std::uint64_t from = whence == SEEK_CUR   ? self->at_
                                   : whence == SEEK_END ? self->bytes_.size
                                                        : 0;
        self->at_ = from + offset;
        return self->at_;
    }
    static int close(thandle_t) { return 0; }
    static toff_t size(thandle_t handle) { return static_cast<TiffRows*>(handle)->bytes_.size; }

    // ---- the beginning ----

    /// The first fault is the one that counts.
    void refuse(Kind kind, const std::string& found = {}) {
        if (fault_.kind != Kind::none) return;
        fault_.kind = kind;
        fault_.found = found;
        fault_.row = header_.height > 0 ? y_ + 1 : 0;
        fault_.height = header_.height;
    }

    void read_header() {
        std::uint32_t width = 0, height = 0;
        TIFFGetField(tiff_, TIFFTAG_IMAGEWIDTH, &width);
        TIFFGetField(tiff_, TIFFTAG_IMAGELENGTH, &height);
        const PictureFault fault = size_fault(width, height);
        if (fault.kind != Kind::none && fault_.kind == Kind::none) fault_ = fault;
        if (fault_.kind != Kind::none) return;
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_BITSPERSAMPLE, &bits_);
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_SAMPLESPERPIXEL, &samples_);
        TIFFGetField(tiff_, TIFFTAG_PHOTOMETRIC, &photometric_);
        if (const std::string found = not_supported(); !found.empty()) {
            refuse(Kind::not_supported, found);
            return;
        }
        read_opacity();
        if (photometric_ == PHOTOMETRIC_PALETTE && !read_palette()) {
            refuse(Kind::damaged);
            return;
        }
        const auto row_bytes = static_cast<std::size_t>(std::max<tmsize_t>(
            TIFFScanlineSize(tiff_), 0));
        const std::size_t needed = (width * std::size_t{samples_} * bits_ + 7) / 8;
        if (row_bytes < needed || row_bytes > most_picture_piece) {
            refuse(Kind::damaged);
            return;
        }
        row_.resize(row_bytes);
        darkness_.resize(width);
        header_.width = static_cast<int>(width);
        header_.height = static_cast<int>(height);
        read_resolution();
    }

    /// What of the file isn't read here, in the format's own terms; empty: nothing.
    std::string not_supported() const {
        std::uint16_t planes = PLANARCONFIG_CONTIG, orientation = ORIENTATION_TOPLEFT;
        std::uint16_t format = SAMPLEFORMAT_UINT, compression = COMPRESSION_NONE;
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_PLANARCONFIG, &planes);
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_ORIENTATION, &orientation);
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_SAMPLEFORMAT, &format);
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_COMPRESSION, &compression);
        const auto tag = [](const char* name, unsigned value) {
            return std::string(name) + " " + std::to_string(value);
        };
        if (TIFFIsTiled(tiff_) != 0) return "TileWidth";
        if (TIFFIsCODECConfigured(compression) == 0) return tag("Compression", compression);
        if (bits_ != 1 && bits_ != 2 && bits_ != 4 && bits_ != 8 && bits_ != 16) {
            return tag("BitsPerSample", bits_);
        }
        if (samples_ < 1 || samples_ > most_samples) return tag("SamplesPerPixel", samples_);
        if (planes != PLANARCONFIG_CONTIG && samples_ > 1) {
            return tag("PlanarConfiguration", planes);
        }
        if (orientation != ORIENTATION_TOPLEFT) return tag("Orientation", orientation);
        if (format != SAMPLEFORMAT_UINT && format != SAMPLEFORMAT_VOID) {
            return tag("SampleFormat", format);
        }
        const bool colour = photometric_ == PHOTOMETRIC_RGB && samples_ >= 3;
        const bool one = photometric_ == PHOTOMETRIC_MINISBLACK ||
                         photometric_ == PHOTOMETRIC_MINISWHITE ||
                         (photometric_ == PHOTOMETRIC_PALETTE && bits_ <= 8);
        if (!colour && !one) return tag("PhotometricInterpretation", photometric_);
        return {};
    }

    void read_opacity() {
        std::uint16_t count = 0;
        std::uint16_t* kinds = nullptr;
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_EXTRASAMPLES, &count, &kinds);
        const int colours = photometric_ == PHOTOMETRIC_RGB ? 3 : 1;
        if (count == 0 || kinds == nullptr || samples_ <= colours) return;
        opacity_ = kinds[0] == EXTRASAMPLE_ASSOCALPHA || kinds[0] == EXTRASAMPLE_UNASSALPHA;
        multiplied_ = kinds[0] == EXTRASAMPLE_ASSOCALPHA;
    }

    bool read_palette() {
        std::uint16_t *red = nullptr, *green = nullptr, *blue = nullptr;
        if (TIFFGetField(tiff_, TIFFTAG_COLORMAP, &red, &green, &blue) != 1) return false;
        for (std::size_t i = 0; i < (std::size_t{1} << bits_); ++i) {
            const std::array<std::uint8_t, 3> colour{static_cast<std::uint8_t>(red[i] >> 8),
                                                     static_cast<std::uint8_t>(green[i] >> 8),
                                                     static_cast<std::uint8_t>(blue[i] >> 8)};
            to_darkness(colour.data(), 3, 1, &palette_[i]);
        }
        return true;
    }

    void read_resolution() {
        float across = 0.0f, along = 0.0f;
        std::uint16_t unit = RESUNIT_INCH;
        TIFFGetFieldDefaulted(tiff_, TIFFTAG_RESOLUTIONUNIT, &unit);
        const bool both = TIFFGetField(tiff_, TIFFTAG_XRESOLUTION, &across) == 1 &&
                          TIFFGetField(tiff_, TIFFTAG_YRESOLUTION, &along) == 1;
        if (!both || !(across > 0.0f) || !(along > 0.0f)) return;
        header_.aspect = static_cast<double>(across) / static_cast<double>(along);
        if (unit != RESUNIT_INCH && unit != RESUNIT_CENTIMETER) return;
        const double mm = unit == RESUNIT_INCH ? 25.4 : 10.0;
        header_.across = mm / static_cast<double>(across);
        header_.along = mm / static_cast<double>(along);
    }

    // ---- pixels ----

    /// A sample of the row as 0 to 255; of a palette, the entry's number.
    std::uint8_t sample(int x, int which) const {
        const std::size_t at = static_cast<std::size_t>(x) * samples_ +
                               static_cast<std::size_t>(which);
        if (bits_ == 8) return row_[at];
        if (bits_ == 16) {
            std::uint16_t value = 0;  // in this machine's own order
            std::memcpy(&value, row_.data() + 2 * at, 2);
            return static_cast<std::uint8_t>((value * 255u + 32767u) / 65535u);
        }
        const std::size_t bit = at * bits_;
        const unsigned most = (1u << bits_) - 1u;
        const unsigned value = (row_[bit / 8] >> (8u - bits_ - bit % 8)) & most;
        return static_cast<std::uint8_t>(photometric_ == PHOTOMETRIC_PALETTE ? value
                                                                             : value * 255u / most);
    }

    std::uint8_t darkness_at(int x) const {
        const bool colour = photometric_ == PHOTOMETRIC_RGB;
        std::uint8_t darkness = 0;
        if (photometric_ == PHOTOMETRIC_PALETTE) {
            darkness = palette_[sample(x, 0)];
        } else if (photometric_ == PHOTOMETRIC_MINISWHITE) {
            darkness = sample(x, 0);
        } else {
            std::array<std::uint8_t, 3> values{sample(x, 0)};
            if (colour) values = {sample(x, 0), sample(x, 1), sample(x, 2)};
            to_darkness(values.data(), colour ? 3 : 1, 1, &darkness);
        }
        if (!opacity_) return darkness;
        const unsigned opacity = sample(x, colour ? 3 : 1);
        // Where colours are stored times their opacity, black and transparent are both 0.
        const bool dark_is_one = photometric_ == PHOTOMETRIC_MINISWHITE;
        if (multiplied_ && !dark_is_one) {
            const unsigned white = 255u - darkness;
            return static_cast<std::uint8_t>(opacity > white ? opacity - white : 0u);
        }
        return multiplied_ ? darkness
                           : static_cast<std::uint8_t>((darkness * opacity + 127u) / 255u);
    }

    const PictureBytes& bytes_;
    std::uint64_t at_ = 0;
    bool ended_ = false;
    TIFF* tiff_ = nullptr;
    PictureHeader header_;
    PictureFault fault_;
    std::uint16_t bits_ = 1, samples_ = 1, photometric_ = PHOTOMETRIC_MINISWHITE;
    bool opacity_ = false, multiplied_ = false;
    std::array<std::uint8_t, 256> palette_{};
    std::vector<std::uint8_t> row_;
    std::vector<std::uint8_t> darkness_;
    int y_ = 0;
};

}  // namespace

bool looks_like_tiff(std::string_view start) {
    const std::string_view four = start.substr(0, 4);
    return four == std::string_view("II*\0", 4) || four == std::string_view("MM\0*", 4) ||
           four == std::string_view("II+\0", 4) || four == std::string_view("MM\0+", 4);
}

std::unique_ptr<PictureRows> tiff_rows(const PictureBytes& bytes) {
    return std::make_unique<TiffRows>(bytes);
}

}  // namespace carriageway
