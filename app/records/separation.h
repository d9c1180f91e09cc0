// A separation, the picture of a one-colour film, as the image of a head: dark pixels print.
//
// The image's origin is the picture's centre and the picture's top lies toward the machine;
// core/ink_shape.h says what the outline is.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "app/records/picture_rows.h"
#include "app/text/words.h"
#include "core/edit.h"
#include "core/ink_shape.h"

namespace carriageway {

enum class LengthUnit;  // app/text

/// How a separation is read.
struct SeparationOptions {
    /// Width of the whole picture, mm; without, the file's own resolution says.
    std::optional<double> width;
    InkRules rules;
};

/// What was read.
struct Separation {
    Image image;  ///< outline about the picture's centre; no offset, no rotation
    double printed_share = 0.0;  ///< of the outline's area, holes counted out, 0 to 1
    double ink_area = 0.0;       ///< mm²
    Rect extent;                 ///< of the ink, in the outline's axes
    int width = 0;               ///< pixels
    int height = 0;
    double across = 0.0;  ///< the whole picture, mm
    double along = 0.0;
    bool typed_width = false;     ///< the size is that of SeparationOptions
    std::uint64_t specks = 0;     ///< patches left out
    double speck = 0.0;           ///< a patch shorter and narrower than this is one, mm
    double slack = 0.0;           ///< how far the outline's sides may lie beyond the ink, mm
};

/// A separation that is being read, a piece at a time: a page has no thread to spare for it.
class SeparationReading {
  public:
    explicit SeparationReading(PictureBytes bytes, const SeparationOptions& options = {});
    ~SeparationReading();
    SeparationReading(const SeparationReading&) = delete;
    SeparationReading& operator=(const SeparationReading&) = delete;

    /// Reads on for about so many pixels (and at least one row). False when there is no more.
    bool step(std::int64_t pixels);
    /// How much of the picture has been read, 0 to 1.
    double progress() const;
    /// What was read; nothing before the end or where there is a fault.
    const std::optional<Separation>& separation() const { return separation_; }
    const PictureFault& fault() const { return fault_; }

  private:
    void start();
    void finish();

    PictureBytes bytes_;
    SeparationOptions options_;
    std::unique_ptr<PictureRows> rows_;
    std::optional<InkShape> shape_;
    PixelGrid grid_;
    std::int64_t pixels_read_ = 0;
    std::optional<Separation> separation_;
    PictureFault fault_;
};

/// What came of reading.
struct ReadSeparation {
    std::optional<Separation> separation;  ///< empty when refused
    PictureFault fault;
    explicit operator bool() const { return separation.has_value(); }
};

/// Is told the share that has been read, 0 to 1, a hundred times at most; false: stop.
using SeparationProgress = std::function<bool(double)>;

/// Reads a file, or bytes in memory, as a whole. `path` is UTF-8.
ReadSeparation read_separation_file(const std::string& path, const SeparationOptions& options = {},
                                    const SeparationProgress& progress = {});
ReadSeparation read_separation(std::string_view bytes, const SeparationOptions& options = {},
                               const SeparationProgress& progress = {});

/// The separation's image where another image lies on the screen: at its offset, turned as it is.
Image image_in_place(const Separation& separation, const Image& place);

/// The edit that makes a separation a head's: its image where the old one lies, and its printed share.
Edit separation_edit(const Head& head, const Separation& separation);

/// One sentence, or a clause without a capital for the system's faults, to stand after the name.
std::string fault_sentence(Language language, LengthUnit unit, const PictureFault& fault);

}  // namespace carriageway
