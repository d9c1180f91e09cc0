#include <algorithm>

#include "core/placement_node.h"

namespace carriageway {
namespace {

/// What the colours that are left ask for, stations aside.
struct Rest {
    ColourMask left = 0;
    int colours = 0;
    int large = 0;
    int flash_after = 0;  ///< want a flash behind, that printed last included while it waits
    int flash_before = 0; ///< may not print wet on wet
    int cool_after = 0;   ///< cool stations of those that want a flash behind
    int least_flashes = 0;
    int most_flashes = 0;
    int flashes_spare = 0; ///< of the most, for colours that don't want one behind them
    int least_used = 0;    ///< stations, for colours, flashes and cool ones
    int most_cool = 0;
};

const ColourKind& kind_at(const PlacementRules& rules, int kind) {
    return rules.kinds[static_cast<std::size_t>(kind)];
}

/// Whether the colour printed last may still get a flash.
bool waits(const PlacementNode& node) { return node.last >= 0 && node.phase == GapPhase::open; }

/// Cool stations of `count` colours that don't want a flash behind them, of those that are left or
/// wait: the fewest, or the most.
int other_cool(const PlacementRules& rules, const PlacementNode& node, int count, bool most) {
    int sum = 0;
    const int kinds = static_cast<int>(rules.kinds.size());
    for (int i = 0; i < kinds && count > 0; ++i) {
        const int k = rules.by_cool[static_cast<std::size_t>(most ? kinds - 1 - i : i)];
        const ColourKind& kind = kind_at(rules, k);
        if (kind.flash_after) continue;
        const int left = rules.left_of(k, node.placed) + (waits(node) && node.last == k ? 1 : 0);
        const int taken = std::min(left, count);
        sum += taken * kind.cool_after;
        count -= taken;
    }
    return sum;
}

/// Whether the next print may be one that wants a flash before it.
bool wanting_next(const PlacementRules& rules, const PlacementNode& node) {
    for (const ColourKind& kind : rules.kinds)
        if (!kind.wet_on_wet && (kind.members & ~node.placed) != 0 &&
            (kind.before & ~node.placed) == 0)
            return true;
    return false;
}

/// The fewest flashes and stations, for the colour that prints last wanting a flash behind it
/// (without cool stations then, but serving no colour behind), and for another one.
void find_least(const PlacementRules& rules, const PlacementNode& node, Rest& rest) {
    int longest = -1; // cool stations of one that wants a flash and may print last
    bool other = false;
    for (const ColourKind& kind : rules.kinds) {
        if ((kind.members & rest.left) == 0 || (kind.after & rest.left) != 0) continue;
        if (kind.flash_after)
            longest = std::max(longest, kind.cool_after);
        else
            other = true;
    }
    // The first print needs no flash before it, nor does one behind a flash that stands already.
    const bool met =
        (node.last < 0 || node.phase == GapPhase::flashed) && wanting_next(rules, node);
    const int before = rest.flash_before - (met ? 1 : 0);
    const int cool = node.cool_left + rest.cool_after;
    const int units = rules.flash_units - node.flashes;
    rest.least_flashes = rest.least_used = 2 * most_stations; // none can print last
    const auto may_take = [&](int flashes, int used) {
        if (flashes > units) return;
        rest.least_flashes = std::min(rest.least_flashes, flashes);
        rest.least_used = std::min(rest.least_used, rest.colours + flashes + used);
    };
    if (other)
        may_take(std::max(rest.flash_after, before),
                 cool + other_cool(rules, node, before - rest.flash_after, false));
    if (longest >= 0)
        may_take(1 + std::max(rest.flash_after - 1, before),
                 cool - longest + other_cool(rules, node, before - rest.flash_after + 1, false));
}

Rest rest_of(const PlacementRules& rules, const PlacementNode& node) {
    Rest rest;
    rest.left = rules.all() & ~node.placed;
    rest.colours = std::popcount(rest.left);
    rest.large = std::popcount(rest.left & rules.large);
    rest.flash_after = std::popcount(rest.left & rules.flash_after);
    rest.flash_before = std::popcount(rest.left & rules.flash_before);
    for (const ColourKind& kind : rules.kinds)
        if (kind.flash_after)
            rest.cool_after += std::popcount(kind.members & rest.left) * kind.cool_after;
    if (waits(node) && kind_at(rules, node.last).flash_after) {
        ++rest.flash_after;
        rest.cool_after += kind_at(rules, node.last).cool_after;
    }
    rest.most_flashes =
        std::min(rules.flash_units - node.flashes, rest.flash_after + rest.flash_before);
    rest.flashes_spare = std::max(0, rest.most_flashes - rest.flash_after);
    rest.most_cool =
        node.cool_left + rest.cool_after + other_cool(rules, node, rest.flashes_spare, true);
    if (rest.colours == 0)
        rest.least_flashes = rest.least_used = 1; // the one that waits
    else
        find_least(rules, node, rest);
    return rest;
}

/// Whether the stations that are left can hold it all, by count.
bool fits(const PlacementRules& rules, const PlacementNode& node, const Rest& rest) {
    const int station = node.station;
    // A flash that the colour before it didn't want must serve the next.
    if (node.phase == GapPhase::flashed && !kind_at(rules, node.last).flash_after &&
        !wanting_next(rules, node))
        return false;
    if (rest.least_flashes > rules.flash_units - node.flashes) return false;
    if (rest.least_flashes > stations_after(rules.flashes, station)) return false;
    if (rest.colours + rest.least_flashes > stations_after(rules.heads | rules.flashes, station))
        return false;
    const int last_useful = 64 - std::countl_zero(rules.heads | rules.flashes);
    if (rest.least_used > stations_between(rules.cools, station, last_useful)) return false;
    // By each colour's last station there must be heads for all that have no later one.
    int due = 0;
    for (const PlacementDeadline& deadline : rules.deadlines) {
        if (deadline.pin) {
            if (deadline.station > station) ++due;
        } else {
            due += rules.left_of(deadline.kind, node.placed) -
                   stations_after(kind_at(rules, deadline.kind).pins, station);
        }
        if (due > 0 && due > stations_between(rules.heads, station, deadline.station)) return false;
    }
    return due <= stations_after(rules.heads, station);
}

/// The first station by which as many heads are passed beyond `station` as colours are left;
/// beyond the last one when there aren't so many.
int enough_heads(const PlacementRules& rules, int station, int colours) {
    int end = station;
    while (end <= rules.stations && stations_between(rules.heads, station, end) < colours) ++end;
    return end;
}

/// The station that is in use at the farthest for sure.
int least_end(const PlacementRules& rules, const PlacementNode& node, const Rest& rest) {
    int end = enough_heads(rules, node.station, rest.colours);
    for (const ColourKind& kind : rules.kinds) {
        if (stations_after(kind.pins, node.station) == 0) continue;
        const int pin = 64 - std::countl_zero(kind.pins);
        end = std::max(end, pin + std::popcount(kind.after & rest.left));
    }
    return end;
}

/// Idle stations that holes among the heads force; IdleTable::none: the colours find no heads.
int idle_by_holes(const PlacementRules& rules, const PlacementNode& node, const Rest& rest) {
    if (rest.colours == 0) return 0;
    const IdleTable& table = rest.flashes_spare > 0 ? rules.idle : rules.wanted_idle;
    if (node.last < 0) return table.least_from_start(node.station, rest.colours, rest.most_flashes);
    int cool = -1;
    if (node.phase == GapPhase::flashed) cool = node.cool_left;
    if (node.phase == GapPhase::bare) cool = 0; // no flash may come, as behind one
    return table.least(node.station, rest.colours, rest.most_flashes, cool);
}

/// The first station where a colour can print next.
int next_print(const PlacementRules& rules, const PlacementNode& node) {
    int next = node.station + 1 + node.cool_left;
    if (waits(node) && kind_at(rules, node.last).flash_after)
        next += 1 + kind_at(rules, node.last).cool_after;
    return next;
}

/// The most of some screens that can stay together, by pairs: each must be able to stay with the
/// one before it that stays.
int most_staying(const PlacementRules& rules, StationMask stations) {
    std::array<int, most_stations + 1> chain{}; // the longest that ends on a station
    const auto lowest = [](StationMask mask) {
        return static_cast<std::size_t>(std::countr_zero(mask)) + 1;
    };
    int longest = 0;
    for (StationMask rest = stations; rest != 0; rest &= rest - 1) {
        const std::size_t station = lowest(rest);
        int before = 0;
        for (StationMask m = stations & rules.staying_before[station]; m != 0; m &= m - 1)
            before = std::max(before, chain[lowest(m)]);
        chain[station] = before + 1;
        longest = std::max(longest, chain[station]);
    }
    return longest;
}

/// Screens that have to move, none of them beyond `end` being reached.
int least_moved(const PlacementRules& rules, const PlacementNode& node, int end) {
    const int next = next_print(rules, node);
    int stay = 0;
    StationMask stations = 0;
    for (int k = 0; k < static_cast<int>(rules.kinds.size()); ++k) {
        const ColourKind& kind = kind_at(rules, k);
        const int left = rules.left_of(k, node.placed);
        if (kind.stays == 0 || left == 0) continue;
        const int from = next - 1 + std::popcount(kind.before & ~node.placed);
        const int reach = std::min(end, std::max(kind.latest, 64 - std::countl_zero(kind.pins)));
        const StationMask reached = kind.stays & stations_from_to(from + 1, reach);
        const int pinned_away = stations_after(kind.pins & ~kind.stays, node.station);
        stay += std::clamp(std::popcount(reached), 0, left - pinned_away);
        stations |= reached;
    }
    return stations_after(rules.screens, node.station) -
           std::min(stay, most_staying(rules, stations));
}

} // namespace

void settle_flashes(const PlacementRules& rules, PlacementNode& node) {
    int most = std::popcount(rules.flash_after & ~node.placed) +
               std::popcount(rules.flash_before & ~node.placed);
    if (waits(node) && kind_at(rules, node.last).flash_after) ++most;
    const int units = rules.flash_units - node.flashes;
    node.flashes = static_cast<std::uint8_t>(rules.flash_units - std::min(units, most));
}

std::optional<PackedCost> rest_at_least(const PlacementRules& rules, const PlacementNode& node) {
    if (rules.impossible) return std::nullopt;
    if (finished(rules, node)) return 0;
    const Rest rest = rest_of(rules, node);
    if (!fits(rules, node, rest)) return std::nullopt;
    const int end = least_end(rules, node, rest);
    const int by_holes = idle_by_holes(rules, node, rest);
    if (end > rules.stations || by_holes == IdleTable::none) return std::nullopt;
    if (rules.costless) return 0;
    const int used = rest.colours + rest.most_flashes + rest.most_cool;
    const int idle = std::max(by_holes, node.last < 0 ? 0 : end - node.station - used);
    const int most_end =
        node.last < 0 ? rules.stations : std::min(rules.stations, node.station + used + idle);
    const bool wet =
        node.last >= 0 && kind_at(rules, node.last).large && node.phase != GapPhase::flashed;
    const int large = rest.large + (wet ? 1 : 0);
    const int between = rest.colours - rest.large + rest.most_flashes;
    return packed({idle, least_moved(rules, node, most_end), std::max(0, large - 1 - between)});
}

} // namespace carriageway
