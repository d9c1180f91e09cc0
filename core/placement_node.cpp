#include "core/placement_node.h"

namespace carriageway {
namespace {

const ColourKind& kind_at(const PlacementRules& rules, int kind) {
    return rules.kinds[static_cast<std::size_t>(kind)];
}

/// Whether the kind may print at the node's next station as far as order, head and pins go.
bool may_print(const PlacementRules& rules, const PlacementNode& node, int kind) {
    const int station = node.station + 1;
    if (!has_station(rules.heads, station)) return false;
    const int left = rules.left_of(kind, node.placed);
    if (left == 0 || (kind_at(rules, kind).before & ~node.placed) != 0) return false;
    const StationMask pins = kind_at(rules, kind).pins;
    if (has_station(rules.pins, station)) return has_station(pins, station);
    return left > stations_after(pins, station); // those are spoken for
}

std::optional<PlacementStep> print(const PlacementRules& rules, const PlacementNode& node,
                                   int kind) {
    if (!may_print(rules, node, kind)) return std::nullopt;
    const ColourKind& colour = kind_at(rules, kind);
    PlacementStep step{node, 0};
    if (node.last >= 0) {
        const ColourKind& before = kind_at(rules, node.last);
        const bool wanted = before.flash_after || !colour.wet_on_wet;
        if (wanted != (node.phase == GapPhase::flashed) || node.cool_left > 0) return std::nullopt;
        if (!wanted && before.large && colour.large) step.cost += wet_pair;
    }
    step.node.placed = rules.with(kind, node.placed);
    step.node.last = static_cast<std::int16_t>(kind);
    step.node.phase = GapPhase::open;
    return step;
}

std::optional<PlacementStep> flash(const PlacementRules& rules, const PlacementNode& node) {
    const int station = node.station + 1;
    if (node.last < 0 || node.phase != GapPhase::open || node.flashes >= rules.flash_units ||
        !has_station(rules.flashes, station) || has_station(rules.pins, station))
        return std::nullopt;
    PlacementStep step{node, 0};
    step.node.phase = GapPhase::flashed;
    ++step.node.flashes;
    step.node.cool_left = static_cast<std::uint8_t>(kind_at(rules, node.last).cool_after);
    return step;
}

std::optional<PlacementStep> blank(const PlacementRules& rules, const PlacementNode& node) {
    const int station = node.station + 1;
    if (has_station(rules.pins, station)) return std::nullopt;
    PlacementStep step{node, 0};
    if (node.last < 0) return step;
    const ColourKind& before = kind_at(rules, node.last);
    if (node.cool_left > 0 && has_station(rules.cools, station)) {
        --step.node.cool_left;
        return step;
    }
    step.cost = idle_station;
    if (before.together && node.cool_left > 0) return std::nullopt;
    if (before.together && node.phase == GapPhase::open) {
        if (before.flash_after) return std::nullopt;
        step.node.phase = GapPhase::bare;
    }
    return step;
}

} // namespace

bool finished(const PlacementRules& rules, const PlacementNode& node) {
    return node.placed == rules.all() &&
           (!kind_at(rules, node.last).flash_after || node.phase == GapPhase::flashed);
}

std::uint64_t placement_hash(const PlacementNode& node) {
    const auto byte = [](auto value) { return static_cast<std::uint64_t>(value) & 255; };
    const std::uint64_t rest = byte(node.station) | byte(node.last) << 8 | byte(node.phase) << 16 |
                               byte(node.cool_left) << 24 | byte(node.flashes) << 32;
    // Multiplies and folds, as splitmix64 ends.
    std::uint64_t hash = node.placed * 0x9e3779b97f4a7c15u ^ rest * 0xbf58476d1ce4e5b9u;
    hash = (hash ^ hash >> 30) * 0xbf58476d1ce4e5b9u;
    hash = (hash ^ hash >> 27) * 0x94d049bb133111ebu;
    return hash ^ hash >> 31;
}

std::optional<PlacementStep> place_next(const PlacementRules& rules, const PlacementNode& node,
                                        int content) {
    std::optional<PlacementStep> step = content == flash_content   ? flash(rules, node)
                                        : content == blank_content ? blank(rules, node)
                                                                   : print(rules, node, content);
    if (!step) return step;
    const int station = ++step->node.station;
    const bool stays = content < flash_content && rules.stays(content, station);
    const int behind = stations_after(rules.screens, station);
    if (has_station(rules.screens, station) && !stays) step->cost += moved_screen;
    if (finished(rules, step->node)) step->cost += moved_screen * static_cast<PackedCost>(behind);
    if (rules.costless) step->cost = 0;
    return step;
}

} // namespace carriageway
