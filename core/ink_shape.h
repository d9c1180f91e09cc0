// The shape of the ink in a separation: its extent, an outline around it and the share of that
// outline which prints, from a picture that is seen one row at a time and never as a whole.
//
// Pixels count from the picture's top left corner. In mm the origin is the picture's centre, x to
// the right and y toward the picture's top, so that films of one design, drawn to one size, share
// their origin whatever is on them.
//
// A pixel is ink where its darkness is at least `least_ink`. Pixels are gathered in a grid of
// square-ish cells, each of which remembers exactly how many of its pixels are ink and how far they
// reach. Cells with ink that touch, at a side or a corner, are one patch: ink closer together than a
// cell always is, so the dots of a halftone hang together. A patch smaller than a speck both ways
// is dust or a pinhole and is left out.
//
// The outline is monotone along y: on each band of cells it runs from the leftmost to the rightmost
// ink, and between bands without ink straight on. So it fills holes and notches that open to a side
// and bridges parts that lie apart; it never cuts the ink that it is made from, and exceeds the
// leftmost and rightmost ink of a band by no more than its slack, apart from the bands next to it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry.h"

namespace carriageway {

/// Darkness from which a pixel prints, of 255: a luminance below half over white. Ours.
inline constexpr std::uint8_t least_ink = 128;

/// How large a picture is.
struct PixelGrid {
    int width = 0;        ///< pixels
    int height = 0;
    double across = 0.0;  ///< mm a pixel, along its rows
    double along = 0.0;   ///< mm a pixel, from row to row
};

/// How an outline is made. Ours, where nothing else is said.
struct InkRules {
    /// Cells are at least this long and wide, mm: the dots of a halftone of 35 lines per inch, the
    /// coarsest in use (common practice, no source), are 0.73 apart.
    double cell = 0.75;
    /// A patch shorter and narrower than this is left out, mm; 0 keeps everything.
    double speck = 0.5;
    /// The outline's slack at first, mm; doubled until it has few enough corners.
    double slack = 0.5;
    int most_corners = 200;  ///< at least 4, at most most_outline_corners
    int most_cells = 1000;   ///< along either side; cells grow with the picture
};

/// What was found.
struct InkFound {
    Outline outline;     ///< counter-clockwise; empty where there is no ink
    Rect extent;         ///< of the ink, exact
    double ink_area = 0.0;       ///< mm², exact
    double printed_share = 0.0;  ///< of the outline's area, 0 to 1
    std::uint64_t ink_pixels = 0;
    std::uint64_t specks = 0;  ///< patches left out
    std::uint64_t speck_pixels = 0;
    double slack = 0.0;  ///< that the outline was made with, mm
};

/// Gathers a picture's pixels and says what shape their ink has. Takes some 16 bytes a cell, at
/// most 20 MB with the usual rules, whatever the picture's size.
class InkShape {
  public:
    /// A grid without pixels, or whose pixels have no size, finds nothing. Sides above
    /// `largest_side` are cut off there.
    explicit InkShape(const PixelGrid& grid, const InkRules& rules = {});

    /// Adds pixels of row `y` (0 at the top): the first stands in column `first`, each next one
    /// `step` columns further, so that interlaced pictures can be added as they come. `darkness`:
    /// 0 white to 255 black. Every pixel may be added once, in any order; those that are never
    /// added are white, those outside the grid are left out.
    void add(int y, int first, int step, std::span<const std::uint8_t> darkness);

    InkFound found() const;

    static constexpr int largest_side = 1 << 20;  ///< pixels

  private:
    /// The ink of one cell, in pixels from the cell's corner.
    struct Cell {
        std::uint16_t left = 0, right = 0, top = 0, bottom = 0;  ///< of the outermost pixels
        std::uint32_t count = 0;
    };
    /// The ink of a patch or a band, in pixels of the picture; hi and right lie beyond it.
    struct Reach {
        int left = largest_side, right = 0, top = largest_side, bottom = 0;
        std::uint64_t count = 0;
    };

    void add_run(int y, int from, int to);
    Reach reach_of(std::size_t cell) const;
    static void join(Reach& whole, const Reach& part);
    Reach patch_from(std::size_t start, std::vector<bool>& seen,
                     std::vector<std::size_t>& cells) const;
    bool is_speck(const Reach& patch) const;
    std::vector<Reach> bands_of(const std::vector<bool>& left_out) const;
    void outline_around(const std::vector<Reach>& bands, InkFound& found) const;
    double x_of(int column) const;
    double y_of(int row) const;

    PixelGrid grid_;
    InkRules rules_;
    int cell_width_ = 1, cell_height_ = 1;  ///< pixels
    int columns_ = 0, rows_ = 0;            ///< cells
    std::vector<Cell> cells_;
};

}  // namespace carriageway
