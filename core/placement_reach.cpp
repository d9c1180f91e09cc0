#include <algorithm>

#include "core/placement_rules.h"

namespace carriageway {
namespace {

/// Whether colours of two kinds can print on stations as far apart, the second behind the first,
/// perhaps with others between.
bool can_follow(const ColourKind& first, const ColourKind& second, int apart) {
    if ((second.after & first.members) != 0) return false;
    int least = 1;
    // Behind a flash the first one's cool stations, or another colour and its flash.
    if (!second.wet_on_wet) least = 2 + std::min(1, first.cool_after);
    if (first.flash_after) least = 2 + first.cool_after;
    return apart >= least;
}

void find_staying(PlacementRules& rules) {
    rules.staying.fill(-1);
    for (int k = 0; k < static_cast<int>(rules.kinds.size()); ++k)
        for (int station = 1; station <= rules.stations; ++station)
            if (has_station(rules.kinds[static_cast<std::size_t>(k)].stays, station))
                rules.staying[static_cast<std::size_t>(station)] = k;
    const auto kind_on = [&](int station) -> const ColourKind* {
        const int kind = rules.staying[static_cast<std::size_t>(station)];
        return kind < 0 ? nullptr : &rules.kinds[static_cast<std::size_t>(kind)];
    };
    for (int second = 1; second <= rules.stations; ++second)
        for (int first = 1; first < second && kind_on(second); ++first)
            if (kind_on(first) && can_follow(*kind_on(first), *kind_on(second), second - first))
                rules.staying_before[static_cast<std::size_t>(second)] |= station_bit(first);
}

/// Pins that can't be met beside one another.
void find_clashes(PlacementRules& rules) {
    const auto kind_pinned = [&](int station) -> const ColourKind& {
        return *std::find_if(rules.kinds.begin(), rules.kinds.end(), [&](const ColourKind& kind) {
            return has_station(kind.pins, station);
        });
    };
    int before = 0;
    for (int station = 1; station <= rules.stations && !rules.impossible; ++station) {
        if (!has_station(rules.pins, station)) continue;
        const ColourKind& kind = kind_pinned(station);
        if (before != 0 && !can_follow(kind_pinned(before), kind, station - before))
            rules.impossible = true;
        if (kind.flash_after && stations_after(rules.flashes & ~rules.pins, station) == 0)
            rules.impossible = true;
        before = station;
    }
}

/// The lowest pin of colours that print after a kind, stations + 1 without one.
int lowest_pin_after(const PlacementRules& rules, const ColourKind& kind) {
    int lowest = rules.stations + 1;
    for (const ColourKind& other : rules.kinds)
        if (other.pins != 0 && (other.members & kind.after) != 0)
            lowest = std::min(lowest, std::countr_zero(other.pins) + 1);
    return lowest;
}

void find_deadlines(PlacementRules& rules) {
    for (int k = 0; k < static_cast<int>(rules.kinds.size()); ++k) {
        ColourKind& kind = rules.kinds[static_cast<std::size_t>(k)];
        // As many heads must stand behind it as colours print after it.
        int latest = rules.stations;
        const int behind = std::popcount(kind.after);
        while (latest > 0 && stations_after(rules.heads, latest) < behind) --latest;
        kind.latest = std::min(latest, lowest_pin_after(rules, kind) - 1);
        if (kind.flash_after) // a flash behind it
            kind.latest =
                std::min(kind.latest, most_stations - 1 - std::countl_zero(rules.flashes));
        rules.deadlines.push_back({kind.latest, k, false});
        for (int station = 1; station <= rules.stations; ++station)
            if (has_station(kind.pins, station)) rules.deadlines.push_back({station, k, true});
        rules.by_cool.push_back(k);
    }
    std::stable_sort(rules.deadlines.begin(), rules.deadlines.end(),
                     [](const auto& a, const auto& b) { return a.station < b.station; });
    const auto cool = [&](int k) { return rules.kinds[static_cast<std::size_t>(k)].cool_after; };
    std::stable_sort(rules.by_cool.begin(), rules.by_cool.end(),
                     [&](int a, int b) { return cool(a) < cool(b); });
}

void find_idle(PlacementRules& rules) {
    int longest = 0;
    int wanted = 0;
    for (const ColourKind& kind : rules.kinds) {
        longest = std::max(longest, kind.cool_after);
        if (kind.flash_after) wanted = std::max(wanted, kind.cool_after);
    }
    rules.idle = IdleTable(rules, longest);
    rules.wanted_idle = IdleTable(rules, wanted);
}

} // namespace

void find_reach(PlacementRules& rules) {
    find_staying(rules);
    find_deadlines(rules);
    find_clashes(rules);
    find_idle(rules);
}

} // namespace carriageway
