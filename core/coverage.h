// What of the image is printed, and what is missed.
//
// covered = image ∩ squeegee band ∩ flood band. What is missed comes in three kinds that look
// different on a shirt:
//   unprinted  the squeegee doesn't pass;
//   starved    it passes, the flood doesn't, where the flood begins or beside it: no fresh ink;
//   heavy      it passes, the flood doesn't, past the end where the flood finishes: the bead lies
//              there and prints blotchy.
//
// The image is cut once into columns, trapezoids whose two parallel sides run along the arm. Bands
// are rectangles, so each column is cut by them into trapezoids again, and pieces are the tiles
// that touch: there is no general polygon clipping to go wrong, and holes need no special case.
#pragma once

#include <cstdint>
#include <vector>

#include "core/geometry.h"
#include "core/press.h"

namespace carriageway {

/// A trapezoid with its parallel sides along y: from x0 to x1, bottom from lo0 to lo1, top from
/// hi0 to hi1. mm.
struct Column {
    double x0 = 0.0, x1 = 0.0;
    double lo0 = 0.0, lo1 = 0.0;
    double hi0 = 0.0, hi1 = 0.0;
    bool operator==(const Column&) const = default;

    double area() const { return 0.5 * (x1 - x0) * ((hi0 - lo0) + (hi1 - lo1)); }
};

/// The part of a column from x0 to x1, both within it. Its own sides come back without rounding.
Column part_of(const Column& column, double x0, double x1);

/// Storage that cutting uses again and again.
struct ColumnScratch {
    struct Span { double x0, y0, x1, y1; };
    struct Crossing { std::uint32_t edge; double y0, y1; }; ///< of an edge with a slab's two sides
    std::vector<Span> edges;
    std::vector<Crossing> active;
    std::vector<double> cuts;
    std::vector<Column> slab;
};

/// Cuts a simple polygon into columns from left to right, bottom to top; `out` is overwritten.
/// The columns are disjoint but for their sides and make up the polygon. They come in slabs: those
/// between two neighbouring x of corners share x0 and x1 exactly. An outline that isn't simple,
/// as long as it is finite, gives some columns or other, never a fault.
void cut_into_columns(const Outline& outline, ColumnScratch& scratch, std::vector<Column>& out);

/// Columns of the image grown along the arm by `run_past` at both ends: every point of the image
/// moved by up to ±run_past along y. `columns` must come in slabs, as cut_into_columns() gives them;
/// so does `out`. Columns that come to overlap are merged, so areas add up. A run-past that is not
/// positive gives the columns as they are.
void grow_columns(const std::vector<Column>& columns, double run_past, ColumnScratch& scratch,
                  std::vector<Column>& out);

enum class MissKind : std::uint8_t { unprinted, starved, heavy };

/// A connected piece of missed image, made of `tiles` [first, first + count).
struct MissedPiece {
    MissKind kind = MissKind::unprinted;
    double area = 0.0; ///< mm²
    Rect bounds;
    std::uint32_t first = 0;
    std::uint32_t count = 0;
};

/// How much of an image (or of a grown one) the bands cover.
struct CoveredArea {
    double image_area = 0.0;   ///< mm²
    double covered_area = 0.0; ///< mm²
    double share() const { return image_area > 0.0 ? covered_area / image_area : 0.0; }
};

/// What the bands cover of an image (or of a grown one).
struct Coverage {
    double image_area = 0.0;   ///< mm²
    double covered_area = 0.0; ///< mm²
    std::vector<MissedPiece> pieces;
    std::vector<Column> tiles; ///< of all pieces, those of one piece together
    double share() const { return image_area > 0.0 ? covered_area / image_area : 0.0; }
};

/// Pieces smaller than this share of the image are rounding, not missed image.
inline constexpr double least_piece_share = 1e-9;

/// Tiles that share less of a side than this (mm) only touch: a neck so thin is rounding.
inline constexpr double least_neck = 1e-9;

/// Storage that covering uses again and again.
struct CoverScratch {
    std::vector<Column> tiles;
    std::vector<MissKind> kinds;
    std::vector<std::uint32_t> root;
    std::vector<std::uint32_t> piece;
    std::vector<std::uint32_t> before; ///< tiles at the right side of the slab before
    std::vector<std::uint32_t> left;   ///< tiles at the left side of this slab, bottom to top
    std::vector<std::uint32_t> right;  ///< tiles at its right side
};

/// The two bands, and the end at which the flood finishes.
struct Bands {
    Rect squeegee;
    Rect flood;
    End flood_finish = End::machine_side;
    bool moves = true; ///< false: the carriage stays, so both bands count as empty
};

/// Works out coverage of an image given as columns in slabs (see cut_into_columns); `out` is
/// overwritten. Pieces come in the order of their kinds, then of their bounds' lo, then left. An
/// empty squeegee band leaves all of the image unprinted, an empty flood band starves all that the
/// squeegee passes.
void cover(const std::vector<Column>& columns, const Bands& bands, CoverScratch& scratch,
           Coverage& out);

} // namespace carriageway
