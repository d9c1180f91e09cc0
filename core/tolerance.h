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

/// Deviations that act on one margin, each with weight 1.
struct Stack {
    std::array<Spread, 6> spreads;
    int count = 0;
    void add(const Spread& spread);
};

/// Sum of the largest deviations, mm.
double worst_case(const Stack& stack);

/// Square root of the sum of the squares of the largest deviations, mm.
double root_sum_square(const Stack& stack);

/// Chance (0 to 1) that the deviations together exceed `margin` (mm): exact for any mix of
/// rectangular and normal deviations. Without any deviation: 0 or 1.
double chance_beyond(const Stack& stack, double margin);

} // namespace carriageway
