// What the best placement of a question (placement.h) pays for: each wish and each fact of the
// press without which, alone, there is a better one, and how much better.
//
// What can be had only by giving up two wishes at once is not found. Orders that follow from two
// others are not asked about: giving up one of them changes nothing.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

#include "core/placement_search.h"
#include "core/placement_wishes.h"

namespace carriageway {

struct PlacementReason {
    /// For a fact: one more station behind the last, one more flash unit, or as PressFact says.
    std::variant<PlacementWish, PressFact> of;
    PlacementCost cost; ///< of the best placement without the wish, or with the fact otherwise
    bool operator==(const PlacementReason&) const = default;
};

/// Dropping it cancels it.
class PlacementReasons {
  public:
    /// `best`: the cost of the question's best placement.
    PlacementReasons(const PlacementQuestion& question, const PlacementCost& best,
                     PlacementSettings settings = {});

    /// Takes up at most `steps` beginnings of placements. found: all are there, perhaps none.
    PlacementState run(long steps);

    PlacementState state() const { return state_; }
    double progress() const; ///< the share of wishes and facts that have been asked about
    std::uint64_t nodes() const { return nodes_ + search_.nodes(); }

    /// In the order of wishes, then of facts, as far as they have been found.
    const std::vector<PlacementReason>& reasons() const { return reasons_; }
    bool complete() const { return complete_; } ///< false: some search gave up as too large

  private:
    void next();
    PlacementQuestion asked(std::size_t index) const;

    PlacementQuestion question_;
    PlacementSettings settings_;
    PlacementSearch search_;
    PlacementState state_ = PlacementState::running;
    std::vector<std::variant<PlacementWish, PressFact>> subjects_;
    std::size_t at_ = 0; ///< subject that is asked about
    std::vector<PlacementReason> reasons_;
    bool complete_ = true;
    std::uint64_t nodes_ = 0;
};

} // namespace carriageway
