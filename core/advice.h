// What to turn: from a registration to whole graduations at each screw, with what they leave.
//
// A screw has play: turned the other way, it moves nothing until the play is taken up. So every
// screw is always brought to its place from the same side: a move against that side goes beyond by
// more than the play and comes back (common practice, no source).
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <variant>
#include <vector>

#include "core/adjusters.h"
#include "core/registration.h"

namespace carriageway {

/// The play of the screws, and from which side they are brought to their place.
struct Play {
    double backlash = 0.0;          ///< turns from one flank to the other, 0 to most_backlash
    bool approach_clockwise = true; ///< the last turn of every screw is clockwise
    /// The last turn before the marks were printed was toward that side too, at every screw. If
    /// not, the first move may fall short by up to the backlash; the next round finds that.
    bool taken_up = false;
};

/// More play than this (turns) is a broken screw or a slip of the keyboard. Ours.
inline constexpr double most_backlash = 1.0;

/// Graduations that an overshoot goes beyond the backlash at least, as play isn't the same all
/// along a screw. Ours.
inline constexpr int overshoot_reserve = 1;

/// A needed turn below this many of its standard deviations can't be told from none.
inline constexpr double noise_deviations = 2.0;

/// A rotation that the marks give badly is made all the same from this many of its standard
/// deviations on. Ours: more than for a single screw, as it moves the far end of a screen most.
inline constexpr double sure_turn_deviations = 3.0;

/// Marks whose spread is at least the farthest screw's distance over this show the turn as well as
/// marks do: what is unsure at that screw is then the reading's fault, not the marks'. Ours.
inline constexpr double most_lever = 3.0;

/// The tolerance where a caller of advise() has none, mm: that of a new job (job.h).
inline constexpr double usual_tolerance = 0.3;

/// What to do at one screw. Turns and graduations are positive clockwise.
struct ScrewAdvice {
    std::size_t adjuster = 0; ///< place in the list of adjusters
    double travel = 0.0;      ///< mm that would be exact, toward +y (or +x for the one across)
    double turns = 0.0;       ///< the same as turns, not rounded
    double deviation = 0.0;   ///< standard deviation of `turns` that the reading error leaves
    /// `turns` is below noise_deviations of its deviation, or below half a graduation: by itself
    /// not worth a turn. It may be given a graduation all the same, for what it does with the
    /// others.
    bool within_noise = false;
    int graduations = 0;        ///< net, to make
    std::array<int, 2> moves{}; ///< in this order, each in graduations; they sum to `graduations`
    int move_count = 0;         ///< 0, 1 or 2
    double shortfall = 0.0;     ///< turns that the move may fall short, as play isn't taken up
    /// mm that would be exact with the fitted rotation, and their standard deviation: like `travel`
    /// and `deviation` unless only the shift is made. What rounds are compared by.
    double whole_travel = 0.0;
    double whole_deviation = 0.0;
};

/// What to turn at a head, and what that does.
struct Advice {
    Reach reach;
    RigidMotion wanted;     ///< the screen's motion that would take out what is known of the fit
    RigidMotion exact;      ///< the part of it that the adjusters reach
    RigidMotion rounded;    ///< what the graduations do
    double turn_left = 0.0; ///< rotation of the print that can't be reached, rad
    Point move_left; ///< error of the marks' middle that no adjuster reaches, mm
    std::vector<ScrewAdvice> screws; ///< in the order of the list of adjusters
    std::vector<Point> predicted;    ///< error of each mark after the move, mm
    double predicted_rms = 0.0;
    double predicted_max = 0.0;
    /// The marks don't give the rotation well enough to turn the screen by it: only their shift is
    /// taken out. Two marks `least_apart` mm from each other would give it.
    bool shift_only = false;
    double least_apart = 0.0;
    /// What the adjusters reach of the error, all of it together, is more than the reading error
    /// makes by chance.
    bool plain = false;
    bool settled = false; ///< no screw is to be turned
};

/// Works out what to turn. The whole graduations are chosen together, up or down at each screw, so
/// that the mark which rounding shifts most is shifted least: needs of less than half a graduation
/// at several screws can add up to more at a mark. No screw is turned while what they reach of the
/// error as a whole, and every single need, can't be told from none: a badly known rotation makes
/// each need uncertain, and must not hide a shift that is plain.
///
/// A rotation is left alone (shift_only) when one mark gives none; or when its reading error moves
/// the screen by more than `tolerance` mm at the farthest screw (noise_deviations), that screw is
/// beyond most_lever spreads of the marks, and the rotation itself is below sure_turn_deviations.
/// A tolerance that isn't above 0 counts as usual_tolerance.
///
/// A list of adjusters with a fault, or play that isn't a number from 0 to most_backlash
/// (not_finite, with the list's length as its place), gives the fault instead. An empty list
/// reaches nothing and says so.
std::variant<Advice, AdjusterFault> advise(const Registration& registration,
                                           std::span<const Adjuster> adjusters, const Play& play,
                                           double tolerance = usual_tolerance);

/// The sequence for a net move: straight when it ends toward the side of approach, otherwise beyond
/// by more than the backlash and back. Without backlash always straight. Fills the moves of
/// `screw`.
void plan_moves(ScrewAdvice& screw, const Adjuster& adjuster, const Play& play);

/// The travel (mm toward +y, or +x) of so many graduations clockwise.
double travel_of(const Adjuster& adjuster, int graduations);

} // namespace carriageway
