// PNG pictures by rows, by libpng. An interlaced one is given pass by pass, as it stands in the
// file, so that it needs no more memory than any other.
#include <png.h>

#include <algorithm>
#include <csetjmp>
#include <vector>

#include "app/records/picture_rows.h"

namespace carriageway {
namespace {

using Kind = PictureFault::Kind;

/// Chunks that say nothing about ink or size and that can be compressed to any length.
constexpr png_byte left_out[] = "iCCP\0iTXt\0tEXt\0zTXt\0sPLT\0hIST\0eXIf";
constexpr int left_out_count = 7;

class PngRows : public PictureRows {
  public:
    explicit PngRows(const PictureBytes& bytes) : bytes_(bytes) {
        png_ = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, fail, warn);
        info_ = png_ != nullptr ? png_create_info_struct(png_) : nullptr;
        if (info_ == nullptr) {
            fault_.kind = Kind::needs_memory;
            return;
        }
        if (guarded(&PngRows::read_header)) {
            row_.resize(row_bytes_);
            darkness_.resize(static_cast<std::size_t>(header_.width));
        }
    }
    ~PngRows() override { png_destroy_read_struct(&png_, &info_, nullptr); }

    const PictureHeader& header() const override { return header_; }
    const PictureFault& fault() const override { return fault_; }

    std::optional<PictureRow> next() override {
        if (fault_.kind != Kind::none || done_) return std::nullopt;
        if (!to_row() && !guarded(&PngRows::read_end)) return std::nullopt;
        if (done_ || !guarded(&PngRows::read_row)) return std::nullopt;
        const int first = interlaced_ ? static_cast<int>(PNG_PASS_START_COL(pass_)) : 0;
        const int step = interlaced_ ? static_cast<int>(PNG_PASS_COL_OFFSET(pass_)) : 1;
        const int y = interlaced_ ? static_cast<int>(PNG_ROW_FROM_PASS_ROW(row_in_pass_, pass_))
                                  : row_in_pass_;
        const auto count = static_cast<std::size_t>(columns());
        to_darkness(row_.data(), channels_, count, darkness_.data());
        ++row_in_pass_;
        ++rows_read_;
        return PictureRow{y, first, step, std::span(darkness_).first(count)};
    }

  private:
    /// Calls into libpng, which leaves by longjmp (or, where it is built without, by an exception)
    /// when something is wrong. Nothing that is called so has anything to destroy.
    bool guarded(void (PngRows::*call)()) {
#ifdef PNG_SETJMP_SUPPORTED
        if (setjmp(png_jmpbuf(png_)) == 0) (this->*call)();
#else
        try {
            (this->*call)();
        } catch (const Failed&) {
        }
#endif
        return fault_.kind == Kind::none;
    }

    struct Failed {};

    static void fail(png_structp png, png_const_charp) {
        auto* self = static_cast<PngRows*>(png_get_error_ptr(png));
        if (self->fault_.kind == Kind::none) {
            self->fault_.kind = self->ended_ ? Kind::cut_short : Kind::damaged;
            const std::int64_t all = self->rows_in_all();
            self->fault_.row = self->row_bytes_ > 0 ? std::min(self->rows_read_ + 1, all) : 0;
            self->fault_.height = all;
        }
#ifdef PNG_SETJMP_SUPPORTED
        png_longjmp(png, 1);
#else
        throw Failed{};
#endif
    }
    /// What libpng only warns of doesn't concern pixels.
    static void warn(png_structp, png_const_charp) {}

    static void read(png_structp png, png_bytep to, png_size_t count) {
        auto* self = static_cast<PngRows*>(png_get_io_ptr(png));
        const std::size_t got = self->bytes_.read(self->at_, reinterpret_cast<char*>(to), count);
        self->at_ += got;
        if (got == count) return;
        self->ended_ = true;
        png_error(png, "end of file");
    }

    void read_header() {
        png_set_read_fn(png_, this, read);
        png_set_user_limits(png_, PNG_UINT_31_MAX, PNG_UINT_31_MAX);  // judged below
        png_set_chunk_malloc_max(png_, 1u << 20);
        png_set_chunk_cache_max(png_, 16);
        png_set_crc_action(png_, PNG_CRC_ERROR_QUIT, PNG_CRC_ERROR_QUIT);
#ifdef PNG_HANDLE_AS_UNKNOWN_SUPPORTED
        png_set_keep_unknown_chunks(png_, PNG_HANDLE_CHUNK_NEVER, left_out, left_out_count);
#endif
        png_read_info(png_, info_);
        fault_ = size_fault(png_get_image_width(png_, info_), png_get_image_height(png_, info_));
        if (fault_.kind != Kind::none) return;
        header_.width = static_cast<int>(png_get_image_width(png_, info_));
        header_.height = static_cast<int>(png_get_image_height(png_, info_));
        read_resolution();
        png_set_scale_16(png_);
        png_set_expand(png_);  // palettes, fewer than 8 bits, a transparent colour
        interlaced_ = png_get_interlace_type(png_, info_) != PNG_INTERLACE_NONE;
        png_read_update_info(png_, info_);
        channels_ = png_get_channels(png_, info_);
        row_bytes_ = png_get_rowbytes(png_, info_);
    }

    void read_resolution() {
        png_uint_32 across = 0, along = 0;
        int unit = PNG_RESOLUTION_UNKNOWN;
        if (png_get_pHYs(png_, info_, &across, &along, &unit) == 0) return;
        if (across == 0 || along == 0) return;
        header_.aspect = static_cast<double>(across) / along;
        if (unit != PNG_RESOLUTION_METER) return;
        header_.across = 1000.0 / across;
        header_.along = 1000.0 / along;
    }

    int columns() const {
        return interlaced_ ? static_cast<int>(PNG_PASS_COLS(header_.width, pass_)) : header_.width;
    }
    int rows_in_pass() const {
        if (!interlaced_) return header_.height;
        return static_cast<int>(PNG_PASS_ROWS(header_.height, pass_));
    }
    /// Rows of all passes: what a fault counts.
    std::int64_t rows_in_all() const {
        if (!interlaced_) return header_.height;
        std::int64_t all = 0;
        for (int pass = 0; pass < 7; ++pass) {
            if (PNG_PASS_COLS(header_.width, pass) > 0) {
                all += static_cast<std::int64_t>(PNG_PASS_ROWS(header_.height, pass));
            }
        }
        return all;
    }

    /// Goes on to a pass that has pixels left; false at the end.
    bool to_row() {
        const int passes = interlaced_ ? 7 : 1;
        while (pass_ < passes && (columns() == 0 || row_in_pass_ >= rows_in_pass())) {
            ++pass_;
            row_in_pass_ = 0;
        }
        return pass_ < passes;
    }
    void read_row() { png_read_row(png_, row_.data(), nullptr); }
    /// What follows the pixels, its checks included.
    void read_end() {
        done_ = true;
        png_read_end(png_, nullptr);
    }

    const PictureBytes& bytes_;
    std::uint64_t at_ = 0;
    bool ended_ = false;
    png_structp png_ = nullptr;
    png_infop info_ = nullptr;
    PictureHeader header_;
    PictureFault fault_;
    int channels_ = 0;
    bool interlaced_ = false;
    bool done_ = false;
    std::size_t row_bytes_ = 0;
    int pass_ = 0;
    int row_in_pass_ = 0;
    std::int64_t rows_read_ = 0;
    std::vector<std::uint8_t> row_;
    std::vector<std::uint8_t> darkness_;
};

}  // namespace

bool looks_like_png(std::string_view start) {
    return start.substr(0, 8) == std::string_view("\x89PNG\r\n\x1A\n", 8);
}

std::unique_ptr<PictureRows> png_rows(const PictureBytes& bytes) {
    return std::make_unique<PngRows>(bytes);
}

}  // namespace carriageway
