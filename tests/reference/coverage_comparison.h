// Compares the core's coverage with GEOS': areas, and count and kind of the pieces.
#pragma once

#include "tests/reference/region.h"
#include "tests/reference/tally.h"

namespace carriageway::reference {

/// Areas may differ by this share of the image's area.
inline constexpr double area_tolerance = 1e-6;

/// Compares, and counts into which classes the case falls. A case whose pieces hang together by,
/// or are as small as, what rounding makes is counted as "decided by rounding" when the two
/// disagree on its pieces, and then its areas alone are compared.
void compare_coverage(Tally& tally, std::uint64_t number, const Region& image, const Bands& bands,
                      const Coverage& ours);

} // namespace carriageway::reference
