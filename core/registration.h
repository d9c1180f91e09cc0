// Registration of one head: how its print lies against where it should, from marks read on it.
//
// The rigid part (turn and move) is what the adjusters take out (adjusters.h, advice.h); growth and
// skew are reported apart (distortion.h). Readings are checked first, so that a slip of the pen
// doesn't become turns of a screw.
#pragma once

#include <cstddef>
#include <span>
#include <variant>
#include <vector>

#include "core/distortion.h"
#include "core/press.h"
#include "core/rigid_motion.h"

namespace carriageway {

/// Why readings give no registration. What value, limit and marks mean stands beside each.
enum class RegistrationFaultKind {
    no_marks,         ///< limit: 1
    too_many_marks,   ///< value: marks; limit: most_marks
    reading_error,    ///< value: the reading error, which must be above 0 and finite
    not_finite,       ///< mark: the one that isn't a number
    too_far,          ///< mark; value: its distance from the origin, mm; limit: farthest_mark
    duplicate,        ///< mark and other: two that should be in one place
    too_close,        ///< value: spread of the marks, mm; limit: what the reading error asks for
    no_rotation,      ///< C = S = 0: no rotation is better than another (a mirrored square)
    mirrored,         ///< the print shows the marks in mirror order
    turned_too_far,   ///< value: rotation; limit: most_rotation. Marks exchanged, perhaps
    size_implausible, ///< value: growth or skew; limit: most_distortion. Marks exchanged, perhaps
    marks_disagree,   ///< mark: the farthest off; value: deviation left, mm; limit: what is allowed
};

struct RegistrationFault {
    RegistrationFaultKind kind = RegistrationFaultKind::no_marks;
    std::size_t mark = 0;  ///< place in the list, from 0
    std::size_t other = 0; ///< likewise
    double value = 0.0;
    double limit = 0.0;
};

/// Most marks of one print. Ours: more than anyone reads.
inline constexpr std::size_t most_marks = 64;

/// A mark farther from the frame's centre than this (mm) is a slip of the keyboard. Ours.
inline constexpr double farthest_mark = 10'000.0;

/// The spread of two or more marks (√Σr² from their centre) must be at least this many standard
/// deviations of a reading: the rotation is then known to 1/100 rad, 0.6°. Ours: with less, the
/// rotation is made of reading errors.
inline constexpr double least_spread = 100.0;

/// Rotation beyond which marks were exchanged rather than a screen set askew. Ours.
inline constexpr double most_rotation = 20.0 * rad_per_degree;

/// Growth or skew beyond which a mark was misread rather than a print stretched. Ours: 20 mm per m,
/// many times what drag, off-contact and tension do.
inline constexpr double most_distortion = 0.02;

/// Standard deviations that stand for "far beyond the reading error". Ours: with normal errors and
/// two freedoms (four marks) chance does it about once in ten million (e^-16).
inline constexpr double far_deviations = 4.0;

/// Standard deviations of a fitted motion that the reading error leaves, linearised about it.
struct MotionDeviation {
    double rotation = 0.0; ///< rad; 0 where no rotation is known
    double x = 0.0;        ///< mm, of RigidMotion::x
    double y = 0.0;
};

/// How a print lies.
struct Registration {
    std::vector<MarkReading> marks;
    double reading = 0.0; ///< standard deviation of one coordinate of a reading, mm
    RigidFit fit;         ///< from where the marks should be to where they printed
    MotionDeviation deviation;
    std::vector<Point> residuals; ///< one a mark: measured less fitted, mm
    double error_rms = 0.0; ///< root mean square of the marks' distances from where they should be
    double error_max = 0.0; ///< the largest of them
    double residual_rms = 0.0; ///< the same of the residuals: what no turn and move takes out
    double residual_max = 0.0;
    Distortion distortion;
};

/// Works out the registration from the marks of one print. `reading_error` is how well one
/// coordinate is read (a half-width or a standard deviation, press.h). One mark gives a move
/// without a turn; two give both, and growth along their line; three or more that aren't on one
/// line give growth along, across and skew. Readings that can't be right give a fault instead.
std::variant<Registration, RegistrationFault> register_marks(std::span<const MarkReading> marks,
                                                             const Spread& reading_error);

/// Standard deviation (mm) of the y to which the fitted motion takes what stands at `x`.
double deviation_along(const Registration& registration, double x);

/// Likewise of the x to which it takes what stands at `y`.
double deviation_across(const Registration& registration, double y);

/// Standard deviation (mm) of either coordinate of the marks' middle.
double deviation_of_centre(const Registration& registration);

/// What a sum of squares of normal errors, each over its standard deviation, exceeds by chance in
/// one case of 22: as often as one such error exceeds two standard deviations. `freedoms` are the
/// errors summed; below 1: 0. Chi-square by the cube of Wilson and Hilferty (1931, PNAS
/// 17(12):684-688, from memory), which for this share is within 3 % of the exact one.
double chance_limit(int freedoms);

/// Whether the marks' errors, all together, are more than the reading error makes by chance.
bool errors_stand_out(const Registration& registration);

/// Root mean square and maximum of the lengths of some errors, mm. None: 0.
struct ErrorSize {
    double rms = 0.0;
    double max = 0.0;
};
ErrorSize size_of(std::span<const Point> errors);

} // namespace carriageway
