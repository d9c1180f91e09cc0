// How sure a margin is: worst case, root sum square, and the chance that image is missed.
//
// A margin shrinks by a sum of independent deviations. A number typed as "plus or minus" is a
// rectangular distribution of that half-width; a measured one is normal (JCGM 100:2008, 4.3.7 and
// 4.2). Worst case adds them; root sum square adds their squares (common practice of tolerance
// stacks).
#pragma once

#include <array>

#include "core/press.h"

namespace carriageway {

/// Deviations that act on one margin, each with weight 1. More than six must not be added
/// (asserted); one that is not positive deviates by nothing.
struct Stack {
    std::array<Spread, 6> spreads;
    int count = 0;
    void add(const Spread& spread);
};

/// Sum of the largest deviations, mm.
double worst_case(const Stack& stack);

/// Square root of the sum of the squares of the largest deviations, mm.
double root_sum_square(const Stack& stack);

/// Chance (0 to 1) that the deviations together exceed `margin` (mm): for any mix of rectangular
/// and normal deviations exact to about 1e-9, as long as none is narrower than a hundredth of the
/// widest. Where several are, the narrowest count as normal ones, which changes the chance by less
/// than two thousandths of their width over the widest. Without any deviation: 0 or 1.
double chance_beyond(const Stack& stack, double margin);

} // namespace carriageway
