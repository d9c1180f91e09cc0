// Random images: simple polygons of many kinds, all simple by the way they are made.
#pragma once

#include "core/geometry.h"
#include "tests/reference/seeded.h"

namespace carriageway::reference {

/// Kinds of outline that random_outline() draws.
enum class OutlineKind {
    rectangle,
    convex,
    star,
    radial,     ///< star-shaped about a point, corners at random distances
    untangled,  ///< random points joined without crossing
    letter_l,
    letter_u,
    letter_c,   ///< a frame with a slit
    comb,       ///< teeth that share their ends
    stairs,
    notched,    ///< rectangle with notches in all four sides
    spiral,
    count,
};

/// A random kind.
OutlineKind random_outline_kind(Seeded& random);

/// An outline of the kind within about ±across/2 by ±along/2, either way round.
Outline random_outline(Seeded& random, OutlineKind kind, double across, double along);

/// The outline with every coordinate on a multiple of 1/8 mm, exactly turned by quarter turns.
/// Not always simple any more: to be checked.
Outline on_grid(const Outline& outline, int quarter_turns);

} // namespace carriageway::reference
