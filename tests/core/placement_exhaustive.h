// Every placement of a question, tried one by one, and the rules of placing once more, written from
// their words in placement.h alone and without any of the core's code for them.
#pragma once

#include <cstdint>
#include <vector>

#include "core/placement.h"

namespace carriageway::tests {

/// Whether a placement keeps to all rules and wishes. Its cost is not looked at.
bool obeys(const PlacementQuestion& question, const Placement& placement);

/// What it costs; it must obey.
PlacementCost cost_of(const PlacementQuestion& question, const Placement& placement);

struct AllPlacements {
    std::uint64_t count = 0;
    std::vector<Placement> best; ///< in order, no two alike up to swaps within a kind
};

/// Colours in turn on every station, then flashes on every set of the others. Keeps the `wanted`
/// best.
AllPlacements all_placements(const PlacementQuestion& question, std::size_t wanted);

} // namespace carriageway::tests
