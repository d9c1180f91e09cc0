// A film (a separation's picture) that is being read as a head's image, a piece in each frame, so
// that the window stays alive, shows progress and can cancel.
#pragma once

#include <memory>
#include <string>

#include "app/records/separation.h"
#include "core/edit.h"

namespace carriageway {

/// Largest file of a film that is read, bytes: it is held in memory. Ours: the largest picture that
/// is read (most_picture_pixels), in grey and not compressed, has 400 MB.
inline constexpr std::size_t largest_film = 512u * 1024u * 1024u;

/// Whether a file's first bytes are those of a picture that may be a film (PNG, TIFF, and TIFF with
/// long offsets).
bool looks_like_film(std::string_view beginning);

/// One film on its way into a head's image.
class Film {
public:
    /// `width` (mm) is taken where the file has no resolution of its own.
    Film(HeadId head, std::string name, std::string bytes, double width);

    HeadId head() const { return head_; }
    const std::string& name() const { return name_; }
    /// Reads on for about a frame's time. False when there is no more to read.
    bool step();
    double progress() const { return reading_->progress(); }
    /// What was read; empty before the end or where there is a fault.
    const std::optional<Separation>& separation() const { return reading_->separation(); }
    const PictureFault& fault() const { return reading_->fault(); }
    /// The file has no resolution: the size is `width`'s.
    bool assumed_width() const { return assumed_; }

private:
    HeadId head_;
    std::string name_;
    std::string bytes_;
    double width_;
    bool assumed_ = false;
    std::unique_ptr<SeparationReading> reading_;
};

/// An outline as wide (mm, `across` true) or as long as wanted, the other way in proportion. An
/// image without an outline, or without any width, stays as it is.
Image resized(const Image& image, bool across, double wanted);

/// The edit that puts the rectangle around a head's outline in its place: it lies where the outline
/// lay, and its printed share means the same ink. For a head with an outline.
Edit rectangle_edit(const Head& head);

} // namespace carriageway
