// How many placements a question (placement.h) has, counted a few steps at a time.
//
// Station by station: what has been begun in ways that leave the same for the rest (placement_node)
// is counted together. Each way to set kinds on stations stands for as many placements as its
// unpinned colours of one kind can be swapped. Placements that differ in the station of a flash
// unit alone are two.
#pragma once

#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/placement_search.h"

namespace carriageway {

/// Dropping it cancels it.
class PlacementCount {
  public:
    /// Gives up (too_large) when more than `most_kept` beginnings, some 50 bytes each, have to be
    /// told apart on one station.
    explicit PlacementCount(const PlacementQuestion& question, std::size_t most_kept = 1'000'000);

    /// Goes on with at most `steps` beginnings. Below 1: none.
    PlacementState run(long steps);

    /// found: counted, at least one; impossible: there is none.
    PlacementState state() const { return state_; }
    PlacementFault fault() const { return fault_; }
    double progress() const; ///< the share of stations done; 1 when it isn't running

    /// Meaningful when found. The largest number that fits stands for itself and all above.
    std::uint64_t placements() const { return placements_; }
    std::uint64_t nodes() const { return nodes_; }

  private:
    struct Hash {
        std::size_t operator()(const PlacementNode& node) const {
            return static_cast<std::size_t>(placement_hash(node));
        }
    };

    void take_up();
    void next_station();
    void add(const PlacementNode& node, int content, std::uint64_t ways);

    PlacementRules rules_;
    PlacementState state_ = PlacementState::running;
    PlacementFault fault_;
    std::size_t most_kept_;
    std::vector<std::pair<PlacementNode, std::uint64_t>> begun_; ///< up to one station
    std::size_t done_ = 0;                                       ///< of them
    std::unordered_map<PlacementNode, std::uint64_t, Hash> next_;
    std::uint64_t swaps_ = 1;
    std::uint64_t placements_ = 0;
    std::uint64_t nodes_ = 0;
};

} // namespace carriageway
