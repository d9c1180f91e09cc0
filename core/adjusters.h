// The registration screws of one head: where they put the screen, and what they can't do.
//
// How a screw holds the screen (our model; presses differ, and a round more makes up for it): its
// tip presses against a straight edge of the frame. The left and the right one press along the arm:
// the tip stands at (x, y + travel) on the edge that passes through (x, y), parallel to x, while
// the screen is at home. The one across stands at (x + travel, y) on an edge parallel to y. The
// frame slides along its edges past the tips. So the pose of the screen is the only one near home
// at which all three tips touch: with the left and right one at the same y, D apart, the screen
// turns by atan((right − left)/D). "Home" is where the screen is when the marks are read, travel
// counts from there: where the screws stood before changes it by no more than their travel times
// the angle.
//
// What is missing is held still: without a screw across, a guide touches at the origin; with one
// screw along the arm alone, the screen is guided without turning.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

#include "core/press.h"
#include "core/rigid_motion.h"

namespace carriageway {

inline constexpr std::size_t adjuster_sides = 3;

/// One number for each AdjusterSide: at index_of(side).
using BySide = std::array<double, adjuster_sides>;

constexpr std::size_t index_of(AdjusterSide side) { return static_cast<std::size_t>(side); }

/// What makes a list of adjusters useless.
enum class AdjusterFaultKind {
    repeated_side, ///< two on one side
    no_travel,     ///< a graduation moves less than least_step, or its dial has none or too many
    no_lever,      ///< left and right less than least_lever apart across the arm
    not_finite,    ///< a place or a travel isn't a number, or a place is beyond farthest_adjuster
};

struct AdjusterFault {
    AdjusterFaultKind kind = AdjusterFaultKind::no_travel;
    std::size_t adjuster = 0; ///< place in the list, from 0; for no_lever the second of the two
};

/// Left and right closer than this (mm) turn the screen by chance rather than by intent. Ours.
inline constexpr double least_lever = 20.0;

/// What a graduation must move at least (mm), the most graduations of a dial, and how far from the
/// frame's centre a screw may be (mm). Ours: they keep slips of the keyboard out.
inline constexpr double least_step = 1e-4;
inline constexpr int most_dial_marks = 1000;
inline constexpr double farthest_adjuster = 10'000.0;

/// The first thing wrong with a list of adjusters. An empty list is right: it reaches nothing.
std::optional<AdjusterFault> adjuster_fault(std::span<const Adjuster> adjusters);

/// What the adjusters can do to a screen.
struct Reach {
    bool along = false;   ///< move it along the arm: any of left and right
    bool across = false;  ///< move it across
    bool turning = false; ///< turn it: both left and right
    bool operator==(const Reach&) const = default;
};
Reach reach_of(std::span<const Adjuster> adjusters);

/// The adjuster of one side, or nullptr.
const Adjuster* find_adjuster(std::span<const Adjuster> adjusters, AdjusterSide side);

/// The screen's motion from home when each screw has travelled so far (mm toward +y, or +x for the
/// one across; ignored where there is no such screw). Solved exactly. Nothing when no pose touches
/// all tips (travel beyond all reason), or the list has a fault.
std::optional<RigidMotion> pose_of(std::span<const Adjuster> adjusters, const BySide& travel);

/// The travel of each screw that puts the screen into a pose; 0 where there is no such screw. The
/// inverse of pose_of() for every pose that the screws reach (see reachable()). A rotation of π/2
/// or beyond, or a list with a fault: all 0.
BySide travel_for(std::span<const Adjuster> adjusters, const RigidMotion& pose);

/// The motion that the adjusters can make which serves instead of `wanted`: the same rotation if
/// they turn the screen, none otherwise; and a move that brings `centre` (the middle of the marks
/// as printed) to where `wanted` would, in as many of the two directions as they reach. A rotation
/// that can't be had is not traded for a move of single marks, nor a move for a rotation.
RigidMotion reachable(std::span<const Adjuster> adjusters, const RigidMotion& wanted,
                      const Point& centre);

} // namespace carriageway
