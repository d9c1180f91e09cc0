// What to turn on heads and platens that are off, from the planes that level() found.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/levelling.h"
#include "core/press.h"

namespace carriageway {

/// Where a head's height is set and read.
struct LevelPoints {
    Point operator_left{-200.0, -250.0};
    Point operator_right{200.0, -250.0};
    Point machine_side{0.0, 250.0};
};

struct LevelTargets {
    LevelPoints points;
    double tolerance = 0.2; ///< mm by which a part may be off; ours, a setting
    /// The gap that every head should have over the usual platen. Without: the median of the heads
    /// of its group that have a height, so that it says only which head differs from the others.
    std::optional<double> wanted_gap;
};

/// The plane that most platens of a group share: through the median of their heights at each of the
/// three points, so that one platen that lies off doesn't make the others seem off. Of platens
/// with a plane, or the median offset where none has one. Points in a line: the offset alone.
Plane usual_platen(const Levelling& levelling, int group, const LevelPoints& points);

/// How far a part is off at the three points, mm: above 0 the gap is too wide there, so the
/// head wants to come down by as much, or the platen to go up.
struct PartOff {
    std::uint32_t number = 0; ///< head's id or platen's number
    int group = 0;
    LevelTerms known = LevelTerms::none; ///< with offset alone, all three are alike
    double operator_left = 0.0;
    double operator_right = 0.0;
    double machine_side = 0.0;
    double worst = 0.0; ///< that of the three that is farthest from 0
    bool out = false;   ///< the worst is beyond the tolerance
    /// It is out by two standard errors more (ours), so that more readings would hardly change it.
    bool surely_out = false;
};

/// Heads in the order of levelling.heads. A head should be parallel to the usual platen.
std::vector<PartOff> heads_off(const Levelling& levelling, const LevelTargets& targets = {});

/// Platens in the order of levelling.platens, against the usual platen of their group.
std::vector<PartOff> platens_off(const Levelling& levelling, const LevelTargets& targets = {});

/// One screw of a platen that is to be levelled.
struct ScrewTurn {
    double raise = 0.0; ///< mm to lift the platen at the screw; below 0: to lower it
    double turns = 0.0; ///< clockwise; below 0: counter-clockwise. Not rounded
};

struct PlatenTurns {
    std::vector<ScrewTurn> screws; ///< in the order of the screws
    /// The screws can take out every tilt: at least three, not all in a line. Otherwise the turns
    /// set the platen right at the screws only.
    bool takes_tilt = false;
};

/// What brings a platen to the usual plane. A screw that moves nothing in a turn gets 0 turns; a
/// platen of which nothing is known gets none at all.
PlatenTurns turns_of(const LevelledPart& platen, const Plane& usual,
                     const std::vector<LevelScrew>& screws);

} // namespace carriageway
