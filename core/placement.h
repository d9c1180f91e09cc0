// Which colour goes on which station of the press.
//
// Garments go from station 1 to station 2 and on to the last: whoever asks numbers the stations
// the way the table turns. A placement gives every colour a station that can hold a print head,
// and a station that can hold a flash unit to every flash that is asked for. Any other station is
// passed blank. The rules:
//
// - a colour of lower order prints before one of higher order, unless that pair is waived;
// - between two colours that print one after the other stands one flash unit if the first wants a
//   flash after it or the second may not print wet on wet, and none otherwise; behind the last
//   colour stands one if that colour wants it. No more units are used than there are;
// - a colour that is followed by a flash and by another colour wants its number of cool stations
//   between that flash and the next colour: blank ones, where nobody loads or unloads;
// - together: a flash behind this colour stands directly behind it, and its cool stations directly
//   behind the flash;
// - a pinned colour stands where the person wants it.
//
// A placement is the better one that, in this order (ours),
//
// 1. passes fewer stations idle. Counted from the first print to the last print or flash: stations
//    with neither, wanted cool ones excepted. They cost a run the most, in every piece of it;
//    blank stations before and behind cost nothing;
// 2. moves fewer screens that are on the press already: work that is done once for the run;
// 3. has fewer pairs of large wet areas side by side: printed one after the other without a flash
//    between them, whether or not a blank station lies between, for ink doesn't dry there. Advice
//    that good ink and mesh can make up for, so it comes last;
// 4. has, from station 1 on, at the first station where two differ: a colour rather than a flash
//    rather than nothing, and the colour listed first. Colours of one kind (placement_kinds) count
//    as the first of them here. Within a kind, pinned colours stand on their pins, as many as can
//    stay where their screens are, and the rest in the listed order from the lowest station.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/press.h"

namespace carriageway {

/// What a station is kept for.
enum class StationKept {
    free,   ///< for whatever it can hold
    load,   ///< loading: nothing stands there, and it cools nothing
    unload, ///< the same for unloading
    closed, ///< nothing may stand there, but a garment can cool there
};

struct PlacementStation {
    StationKept kept = StationKept::free;
    bool head = true;       ///< can hold a print head
    bool flash = true;      ///< can hold a flash unit
    bool flash_now = false; ///< a flash unit stands there, so it can hold one
};

struct PlacementColour {
    std::uint32_t id = 0;
    int order = 0;               ///< any number; equal: free among themselves
    bool flash_after = false;    ///< wants a flash behind it
    int cool_after = 0;          ///< cool stations it wants behind such a flash
    bool wet_on_wet = true;      ///< false: wants a flash between the colour before and itself
    bool flash_together = false; ///< wants that flash and its cool stations directly behind it
    double area = 0.0;           ///< share of the image that it covers wet, 0 to 1
    int screen_on = 0;           ///< station that its screen is on, 0: none
    int pinned = 0;              ///< station that it must stand on, 0: any
};

/// Two colours that are free among themselves whatever their order.
struct OrderWaiver {
    std::uint32_t first = 0;
    std::uint32_t second = 0;
};

struct PlacementQuestion {
    std::vector<PlacementStation> stations; ///< station 1 first
    std::vector<PlacementColour> colours;
    std::vector<OrderWaiver> waived;
    int flash_units = 1; ///< that may be used; counts only where flashes don't stay
    /// Flash units stay where they stand (flash_now): no head goes there; one that isn't needed is
    /// switched off, and the station counts as blank.
    bool flashes_stay = false;
    double large_area = 0.3; ///< share from which a wet area is large. Ours
};

/// Most colours that a question may have. Ours: a bit each.
inline constexpr int most_placed_colours = 64;

/// Why a question can't be taken.
enum class PlacementRefusal {
    none,
    no_stations,
    too_many_stations, ///< more than most_stations
    no_colours,
    too_many_colours,     ///< more than most_placed_colours
    same_id,              ///< colour: the second of two with one id
    station_out_of_range, ///< colour: its pin or screen is on no station
    same_screen_station,  ///< colour: its screen is where another one's is
    bad_cool_count,       ///< colour: below 0 or more than most_stations
    bad_area,             ///< colour: its area isn't a number from 0 to 1
    bad_large_area,       ///< the threshold isn't a number from 0 up
    bad_flash_count,      ///< below 0 or more than most_stations
    unknown_colour,       ///< a waiver names no colour of the question
};

struct PlacementFault {
    PlacementRefusal refusal = PlacementRefusal::none;
    std::size_t colour = 0; ///< place in the list, for what is said to be of a colour
};

/// What is wrong with a question, the first thing found; all checks are made before any search. A
/// pin on a station that can hold no head is no fault: it is a wish that conflicts.
PlacementFault placement_fault(const PlacementQuestion& question);

/// What a placement costs; less is better, compared in this order.
struct PlacementCost {
    int idle = 0;      ///< stations
    int moved = 0;     ///< screens, of those on the press
    int wet_pairs = 0; ///< large wet areas side by side
    auto operator<=>(const PlacementCost&) const = default;
};

struct Placement {
    std::vector<int> stations; ///< of each colour, in the order of the question
    std::vector<int> flashes;  ///< stations of the flash units in use, lowest first
    PlacementCost cost;
    bool operator==(const Placement&) const = default;
};

/// What a station does in a placement.
enum class StationRole {
    outside, ///< before the first print, or behind the last print or flash
    colour,
    flash,
    cool, ///< wanted to cool
    idle, ///< passed for nothing
};

/// The role of each station, station 1 first, for a placement of this question (one of another
/// gives an empty list).
std::vector<StationRole> roles_of(const PlacementQuestion& question, const Placement& placement);

/// For each colour the place in the list of the first colour of its kind: colours of one kind print
/// before and after the same others and wish for the same, apart from pins and from what can't
/// matter (cool stations behind a colour that never gets a flash, one large area alone). They may
/// be swapped in any placement, which changes no cost but that of moved screens. Empty for a
/// question that is refused.
std::vector<std::size_t> placement_kinds(const PlacementQuestion& question);

} // namespace carriageway
