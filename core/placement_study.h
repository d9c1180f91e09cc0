// A question of placing (placement.h) from beginning to end: the best placements and what they pay
// for, or why there is none.
#pragma once

#include <cstdint>
#include <variant>

#include "core/placement_conflict.h"
#include "core/placement_reasons.h"

namespace carriageway {

/// Dropping it cancels it. Same question, same result, whatever the steps.
class PlacementStudy {
  public:
    explicit PlacementStudy(const PlacementQuestion& question, PlacementSettings settings = {});

    /// Takes up at most `steps` beginnings of placements, some microseconds each.
    PlacementState run(long steps);

    /// running until all below is there; otherwise what the search itself came to (found,
    /// impossible, refused, too_large).
    PlacementState state() const { return state_; }
    PlacementFault fault() const { return search_.fault(); }
    double progress() const; ///< a guess that never goes back; 1 when it isn't running
    std::uint64_t nodes() const;

    /// The best first; there as soon as they are found, before the reasons.
    const std::vector<Placement>& placements() const { return search_.found(); }
    /// Of the best placement; grows while it runs.
    const std::vector<PlacementReason>& reasons() const;
    /// Of an impossible question; complete when it no longer runs.
    const PlacementConflict& conflict() const;
    /// False: some search behind the reasons or the conflict gave up as too large.
    bool complete() const;

  private:
    PlacementQuestion question_;
    PlacementSettings settings_;
    PlacementSearch search_;
    std::variant<std::monostate, PlacementReasons, PlacementConflictSearch> second_;
    PlacementState state_ = PlacementState::running;
};

} // namespace carriageway
