// How sure a rate is: the slowest and the fastest cycle when index and stations take a little more
// or less than planned.
//
// Worst case: all that is uncertain goes the same way at once. Root sum square: each station's own
// deviation and that of the index are independent, so they add as squares; the cycle is the longest
// of the stations with these, each by itself. (Ours: a stack in which only one station counts.)
//
// A Spread (press.h) is of seconds here.
#pragma once

#include <optional>
#include <span>

#include "core/press.h"
#include "core/rate.h"

namespace carriageway {

struct RateFigures {
    double cycle = 0.0; ///< s
    double pieces_an_hour = 0.0;
    double dozens_an_hour = 0.0;
};

struct RateRange {
    RateFigures fastest;        ///< worst case
    RateFigures likely_fastest; ///< root sum square
    RateFigures planned;
    RateFigures likely_slowest;
    RateFigures slowest;
    /// Places of the stations that may turn out the slowest: with some deviations of the stations,
    /// the index as planned, none takes longer. Rising.
    std::vector<std::size_t> may_be_slowest;
};

/// `stations` holds a spread for each station of the plan; those beyond its end are taken as exact.
/// A deviation can't make a time negative. A plan with a fault, a spread that is negative or not
/// finite, or one so wide that a cycle might take no time: nothing.
std::optional<RateRange> rate_range(const RatePlan& plan, const Spread& index,
                                    std::span<const Spread> stations);

} // namespace carriageway
