// What a question of placing wishes for, one thing at a time, and the same question without some
// of it; and what the press itself gives. Wishes can be given up, facts of the press are there.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/placement.h"

namespace carriageway {

enum class PlacementWishKind {
    order,       ///< `colour` prints before `other`
    wet_on_wet,  ///< `colour` doesn't print on a wet one: a flash before it
    flash_after, ///< a flash behind `colour`
    cool_after,  ///< cool stations behind that flash
    together,    ///< flash and cool stations directly behind `colour`
    pin,         ///< `colour` on its station
};

struct PlacementWish {
    PlacementWishKind kind = PlacementWishKind::order;
    std::uint32_t colour = 0; ///< id
    std::uint32_t other = 0;  ///< for order
    bool operator==(const PlacementWish&) const = default;
};

/// All wishes, in the order in which they are given up when several ways are open: by kind as
/// above, so that what is left to name is what a person changes most easily; orders of neighbours
/// first, so that two colours far apart are named rather than all between. Empty for a question
/// with a fault.
std::vector<PlacementWish> wishes_of(const PlacementQuestion& question);

/// Those that say something of their own: without an order that follows from two others.
std::vector<PlacementWish> wishes_apart(const PlacementQuestion& question);

/// The same question without a wish. One that it doesn't have changes nothing.
void give_up(PlacementQuestion& question, const PlacementWish& wish);
PlacementQuestion without(PlacementQuestion question, std::span<const PlacementWish> wishes);

enum class PressFact {
    stations,        ///< too few: with `needed` more free ones behind the last
    flash_units,     ///< too few: with `needed` in all
    head_places,     ///< with a head on any free station
    flash_places,    ///< with a flash unit on any free station
    closed_stations, ///< with the closed ones open
    flashes_stay,    ///< with the flash units free to move
};
inline constexpr int press_facts = 6;

/// Whether `needed` is a number that counts for the fact.
constexpr bool is_counted(PressFact fact) {
    return fact == PressFact::stations || fact == PressFact::flash_units;
}

/// The question on a press on which a fact is otherwise, `more` stations or flash units more;
/// nothing where that changes nothing or goes beyond what a question may have.
std::optional<PlacementQuestion> with_fact(const PlacementQuestion& question, PressFact fact,
                                           int more = 1);

/// More stations or flash units than these can't help. 0 for facts that aren't counted.
int most_more(const PlacementQuestion& question, PressFact fact);

} // namespace carriageway
