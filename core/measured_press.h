// A press profile with what was measured on it.
#pragma once

#include <optional>

#include "core/procedures.h"

namespace carriageway {

/// A screw of a profile: one that moves a screen, or one that levels a platen.
struct ScrewPlace {
    bool levels = false; ///< of PressProfile::level_screws; otherwise of its adjusters
    std::size_t index = 0;
    bool operator==(const ScrewPlace&) const = default;
};

/// The screw's mm per turn; nothing where the profile has no such screw.
std::optional<double> mm_per_turn(const PressProfile& press, const ScrewPlace& screw);

/// The profile with the values put in their places. Where it keeps how well a number is known, that
/// becomes a measured standard deviation, and a least separation that was measured is used instead
/// of the formula. Nothing for a refused result, and for an adjuster's value without its screw.
std::optional<PressProfile> with_measured(PressProfile press, const Measured& measured,
                                          const std::optional<ScrewPlace>& screw = std::nullopt);

/// The spread of the profile whose value is this field; nullptr for every other field.
Spread* spread_of(PressProfile& press, Field field);

} // namespace carriageway
