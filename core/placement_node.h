// A placement begun: what stands on stations 1 to `station`, as far as it matters for the rest.
// Serves placement_search.h and placement_count.h.
#pragma once

#include <cstdint>
#include <optional>

#include "core/placement_rules.h"

namespace carriageway {

/// What has come since the last print.
enum class GapPhase : std::uint8_t {
    open,    ///< no flash yet; one may come. Before the first print too, where none may
    bare,    ///< a blank station behind a colour that wants its flash directly behind it: none may
    flashed, ///< a flash
};

/// PlacementCost in one number: idle, moved and wet pairs, a byte each (none passes 64), so that
/// adding adds each of them and comparing compares in their order.
using PackedCost = std::uint32_t;
inline constexpr PackedCost idle_station = 1u << 16;
inline constexpr PackedCost moved_screen = 1u << 8;
inline constexpr PackedCost wet_pair = 1u;
constexpr PlacementCost unpacked(PackedCost cost) {
    return {static_cast<int>(cost >> 16), static_cast<int>(cost >> 8 & 255),
            static_cast<int>(cost & 255)};
}
constexpr PackedCost packed(const PlacementCost& cost) {
    return static_cast<PackedCost>(cost.idle) * idle_station +
           static_cast<PackedCost>(cost.moved) * moved_screen +
           static_cast<PackedCost>(cost.wet_pairs) * wet_pair;
}

struct PlacementNode {
    ColourMask placed = 0;
    std::int16_t last = -1; ///< kind printed last, -1: none yet
    std::uint8_t station = 0;
    GapPhase phase = GapPhase::open;
    std::uint8_t cool_left = 0; ///< stations still wanted to cool behind the flash
    std::uint8_t flashes = 0;   ///< units used, or never wanted (settle_flashes)
    bool operator==(const PlacementNode&) const = default;
};

std::uint64_t placement_hash(const PlacementNode& node);

/// Everything is printed and flashed.
bool finished(const PlacementRules& rules, const PlacementNode& node);

/// One more station, with a kind, flash_content or blank_content on it.
struct PlacementStep {
    PlacementNode node;
    PackedCost cost = 0; ///< of this station; of a finished placement also of what lies behind it
};

/// Nothing where a rule forbids it. Node: not finished, its station not the last.
std::optional<PlacementStep> place_next(const PlacementRules& rules, const PlacementNode& node,
                                        int content);

/// Takes more units for used than can ever be wanted by what is left, so that beginnings which
/// differ in such units alone are the same.
void settle_flashes(const PlacementRules& rules, PlacementNode& node);

/// At least what the rest of the node's placements costs; nothing when it surely has none. Of a
/// finished one: 0. Costs of rules that are costless are 0.
///
/// No rest has a lower cost than this: each part is what counting alone forces, with kinds,
/// stations and order looser than they are.
/// - Flashes: as many as the colours that want one behind them, and no fewer than those that want
///   one before them; one unit between two colours can serve both. Cool stations: those of the
///   former but for the longest (the colour may print last) and the shortest of what else needs a
///   flash. With the colours themselves they must find stations.
/// - Idle: up to the first station by which enough heads are passed, or the last pin, all that
///   isn't colour, flash or cool, taking the most that these can be; and what holes among the heads
///   force (placement_idle.h).
/// - Moved: screens whose colours have been placed elsewhere, or which a colour can't reach: too
///   few stations before for what must print before, too few behind, or beyond the last station
///   that can be in use without more idle ones than that; and those that can't stay with one
///   another, for their order or the flash and cool stations between.
/// - Wet pairs: large areas that outnumber, by more than one, what can stand between them.
std::optional<PackedCost> rest_at_least(const PlacementRules& rules, const PlacementNode& node);

} // namespace carriageway
