// A question of placing made ready for searching: kinds of colours instead of colours, masks
// instead of lists. Serves placement_search.h and placement_count.h.
//
// Colours of one kind differ in nothing that matters but pin and screen. Which of them goes where
// needs no search: a station with a screen on it keeps that screen whenever a colour of its kind
// goes there, whatever happens elsewhere, since no two screens are on one station. So a search
// places kinds, and `placement_of` names the colours.
//
// Stations are bits 0 and up of a mask, station 1 being bit 0. Colours are bits of another, those
// of a kind side by side; how many of a kind are placed is what counts, and the lowest bits stand
// for them.
#pragma once

#include <array>
#include <bit>
#include <cstdint>
#include <span>
#include <vector>

#include "core/placement.h"
#include "core/placement_idle.h"

namespace carriageway {

using StationMask = std::uint64_t;
using ColourMask = std::uint64_t;

/// Colours that may be swapped.
struct ColourKind {
    bool flash_after = false;
    bool together = false;
    bool wet_on_wet = true;
    bool large = false;
    int cool_after = 0;
    int count = 0;
    ColourMask members = 0;
    ColourMask before = 0; ///< colours that print before every one of it: whole kinds
    ColourMask after = 0;  ///< colours that print after
    StationMask pins = 0;  ///< where one of it is pinned
    StationMask stays = 0; ///< where the screen of one of it can stay
    int latest = 0;        ///< last station where an unpinned one can stand
};

/// What stands on a station in a search; below these: a kind, as an index.
inline constexpr int flash_content = 64;
inline constexpr int blank_content = 65;

/// The last station on which colours can stand.
struct PlacementDeadline {
    int station = 0;
    int kind = 0;
    bool pin = false; ///< one pinned colour; otherwise all unpinned ones of the kind
};

struct PlacementRules {
    int stations = 0;
    int colours = 0;
    int flash_units = 0;
    StationMask heads = 0;   ///< where a head can stand
    StationMask flashes = 0; ///< where a flash unit can stand
    StationMask cools = 0;   ///< where a garment can cool
    std::vector<ColourKind> kinds;
    std::vector<std::size_t> colour_at; ///< of each bit: place in the question
    ColourMask large = 0;               ///< large wet areas
    ColourMask flash_after = 0;         ///< that want a flash behind them
    ColourMask flash_before = 0;        ///< that may not print wet on wet
    std::vector<int> by_cool;           ///< kinds, the fewest cool stations first
    StationMask pins = 0;               ///< where a colour is pinned
    StationMask screens = 0;            ///< where a screen is
    /// Kind whose screen can stay on each station, -1: none; and the lower stations whose screens
    /// can stay besides. Index 0 is no station.
    std::array<int, most_stations + 1> staying{};
    std::array<StationMask, most_stations + 1> staying_before{};
    std::vector<PlacementDeadline> deadlines; ///< lowest station first
    IdleTable idle;                           ///< with the longest cool wish behind every flash
    IdleTable wanted_idle; ///< with the longest of colours that want a flash behind them
    /// Pins can't be met: two on one station, one where no head can stand, or neighbours that leave
    /// no room for what must come between.
    bool impossible = false;
    /// Any placement will do: all cost nothing.
    bool costless = false;

    ColourMask all() const { return ~ColourMask{0} >> (most_placed_colours - colours); }
    int placed_of(int kind, ColourMask placed) const {
        return std::popcount(kinds[static_cast<std::size_t>(kind)].members & placed);
    }
    int left_of(int kind, ColourMask placed) const {
        return kinds[static_cast<std::size_t>(kind)].count - placed_of(kind, placed);
    }
    /// Whether the screen on a station stays when one of the kind prints there.
    bool stays(int kind, int station) const {
        return staying[static_cast<std::size_t>(station)] == kind;
    }
    /// Placed colours with one more of the kind, which has one left.
    ColourMask with(int kind, ColourMask placed) const;
};

/// Stations of a mask beyond `station`, and from beyond it to `last`.
int stations_after(StationMask mask, int station);
int stations_between(StationMask mask, int station, int last);
constexpr StationMask station_bit(int station) { return StationMask{1} << (station - 1); }
constexpr bool has_station(StationMask mask, int station) {
    return (mask >> (station - 1) & 1) != 0;
}

/// A mask of stations; empty when the last is before the first.
StationMask stations_from_to(int first, int last);

/// For a question without a fault.
PlacementRules placement_rules(const PlacementQuestion& question);

/// Fills what follows from kinds, pins and screens for all of a search: staying, latest, deadlines,
/// clashes of pins, idle tables. Part of placement_rules.
void find_reach(PlacementRules& rules);

/// Names the colours of a search's result: what stands on stations 1 and up, a kind,
/// flash_content or blank_content each. `cost` is taken over.
Placement placement_of(const PlacementRules& rules, const PlacementQuestion& question,
                       std::span<const int> contents, PlacementCost cost);

} // namespace carriageway
