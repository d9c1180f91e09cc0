// Triangles kept from frame to frame: what is drawn as it was is copied, not made anew.
//
// While one stop is dragged, or a list scrolled, most of a frame is as it was in the frame before. The
// marks themselves are compared, not what they were made from, so nothing kept can be out of date.
#pragma once

#include <cstdint>
#include <vector>

#include "app/drawing/drawing_list.h"

struct ImDrawList;

namespace carriageway {

/// All that triangles depend on beside the marks and their clip.
struct PaintedWith {
    const void* fonts = nullptr;
    const void* texture = nullptr;
    Vec white; ///< where the texture is white
    float type_scale = 0.0f;
    float pixels_per_dp = 0.0f;
    std::uint32_t theme = 0;
    bool operator==(const PaintedWith&) const = default;
};

/// The marks of a list from `first` up to, without, `last`: neighbours with the same clip and part.
struct MarkRun {
    const DrawingList* list = nullptr;
    std::size_t first = 0, last = 0;
    Box clip; ///< px
};

/// Keeps, for each run of a frame in its order, its marks and what was painted of them.
class KeptPaint {
public:
    KeptPaint();
    ~KeptPaint();
    KeptPaint(const KeptPaint&) = delete;
    KeptPaint& operator=(const KeptPaint&) = delete;

    /// Begins a frame; what was painted with something else is forgotten.
    void begin(const PaintedWith& with);

    /// Goes to the frame's next run. Where the frame before had the same at this place, and its
    /// triangles were kept, appends them to `draw` and returns true; else it has to be painted.
    bool repeat(const MarkRun& run, ImDrawList& draw);

    /// How many runs of this frame have been repeated.
    std::size_t repeated() const { return repeated_; }

    /// Keeps what has been painted since repeat() returned false.
    void keep(const MarkRun& run, const ImDrawList& draw);

private:
    struct Kept;
    std::vector<Kept> kept_;
    PaintedWith with_;
    std::size_t next_ = 0; ///< the run that comes next
    std::size_t repeated_ = 0;
    /// Where `draw` stood before the run that is being painted.
    struct Stand {
        int corners = 0, indices = 0, commands = 0;
        unsigned base = 0, offset = 0;
    } before_;
};

} // namespace carriageway
