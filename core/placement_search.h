// The best placements of a question (placement.h), found exactly and a few steps at a time.
//
// Best first: of all placements begun, the one whose cost so far and least cost of the rest
// (placement_node.h) come to least is taken up next and gets its next station, ties going to the
// one that is ahead in placement.h's order from station 1 on. Nothing that is still begun can then
// come out better than a placement that is complete when its turn comes, so placements are found
// in their order. Two beginnings that leave the same colours for the same stations have the same
// rests: of those only as many are kept as alternatives are asked for.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/placement_node.h"

namespace carriageway {

struct PlacementSettings {
    int alternatives = 5; ///< how many placements are wanted, 1 to most_alternatives
    bool any = false;     ///< any placement will do: costs count as none, and come out as none
    std::optional<PlacementCost> below; ///< only placements that cost less than this
    /// Beginnings that are kept at once, some 50 bytes each: with more the search gives up. Ours.
    std::size_t most_kept = 2'000'000;
};
inline constexpr int most_alternatives = 100; ///< ours

enum class PlacementState {
    running,
    found,      ///< all that were wanted, or all that there are
    impossible, ///< no placement, or none below the cost that was given
    refused,    ///< the question has a fault
    too_large,  ///< gave up: see PlacementSettings::most_kept. What was found holds
};

/// Dropping it cancels it; it owns all it needs. Same question, same result, whatever the steps.
class PlacementSearch {
  public:
    explicit PlacementSearch(const PlacementQuestion& question, PlacementSettings settings = {});

    /// Takes up at most `steps` beginnings. Below 1: none. Once it isn't running nothing changes.
    PlacementState run(long steps);

    PlacementState state() const { return state_; }
    PlacementFault fault() const { return fault_; }

    /// A guess from 0 to 1 that never goes back; 1 when it isn't running.
    double progress() const;

    std::uint64_t nodes() const { return nodes_; } ///< beginnings taken up so far
    std::size_t kept() const { return begun_.size(); }

    /// The best first. They differ in the kinds on their stations (placement_kinds): swapping
    /// colours of one kind makes no further one. Complete when found; no less right before.
    const std::vector<Placement>& found() const { return found_; }

  private:
    struct Begun {
        PlacementNode node;
        std::uint32_t parent = 0;
        std::uint32_t next = 0; ///< next best of the same node, 0: none
        PackedCost cost = 0;    ///< so far
        PackedCost bound = 0;   ///< of all that comes of it, at least
        std::uint8_t content = 0;
        bool beaten = false; ///< enough better ones of the same node are kept
    };

    void begin();
    void take_up();
    void extend(std::uint32_t from, int content);
    bool keep(std::uint32_t index);
    std::uint32_t& slot_of(const PlacementNode& node);
    void grow_table();
    bool ahead(std::uint32_t a, std::uint32_t b) const;
    bool later(std::uint32_t a, std::uint32_t b) const;
    bool cheaper(std::uint32_t a, std::uint32_t b) const;
    Placement placement_at(std::uint32_t index) const;

    PlacementQuestion question_;
    PlacementSettings settings_;
    PlacementRules rules_;
    PlacementState state_ = PlacementState::running;
    PlacementFault fault_;
    std::vector<Begun> begun_;         ///< the first one stands for none
    std::vector<std::uint32_t> queue_; ///< a heap
    std::vector<std::uint32_t> table_; ///< best of each node by its hash, 0: none
    std::size_t distinct_ = 0;         ///< entries of the table in use
    std::vector<Placement> found_;
    std::uint64_t nodes_ = 0;
    double progress_ = 0.0;
};

/// The whole search at once.
PlacementSearch place(const PlacementQuestion& question, const PlacementSettings& settings = {});

} // namespace carriageway
