// An outline with few corners around bands that lie one beyond the other along y.
//
// Each side of it is a chain of straight edges over y. With r_k the outermost x of the two bands
// that meet at y_k, a chain through all (y_k, r_k) already covers every band. Fewer corners: any
// chain with corners at some of the y_k that stays between r_k and r_k + slack at all of them
// covers the bands as well. It is found by going from a corner as far as one straight edge can.
// No chain goes beyond the outermost band, so the outline's extent is exactly that of the bands.
#pragma once

#include <vector>

#include "core/geometry.h"

namespace carriageway {

/// A rectangle of ink: `lo` < `hi` along y, `left` < `right`, mm.
struct Band {
    double lo = 0.0;
    double hi = 0.0;
    double left = 0.0;
    double right = 0.0;
};

/// A simple polygon around all bands, counter-clockwise, with at most `most_corners` corners (at
/// least 4). Bands are in the order of y and don't overlap; those that are apart are bridged
/// straight. `slack`, mm, is how far a side may lie beyond the bands' corners; it is made twice as
/// large (from nothing, a thousandth of the length) until the corners are few enough, and left at
/// what was needed. No bands: no outline.
Outline silhouette(const std::vector<Band>& bands, int most_corners, double& slack);

}  // namespace carriageway
