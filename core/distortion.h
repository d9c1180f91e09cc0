// What a print has that no adjuster takes out: growth along the arm, growth across it, and skew.
//
// Besides turning and moving, marks can be carried to where they printed by a stretch. It is taken
// from the best linear map (least squares): what is left of that map when its rotation is divided
// out (polar decomposition) is symmetric, so it doesn't depend on how the marks lie.
#pragma once

#include <array>
#include <span>

#include "core/rigid_motion.h"

namespace carriageway {

/// One number of a distortion, and how well the marks give it. No unit: mm per mm; of a skew rad.
struct DistortionPart {
    bool known = false; ///< false: the marks don't tell, the numbers are 0
    double value = 0.0;
    double deviation = 0.0; ///< standard deviation that the reading error leaves
};

/// Stretch of a print against where its marks should be.
struct Distortion {
    DistortionPart along;    ///< growth along the arm (y)
    DistortionPart across;   ///< growth across it (x)
    DistortionPart skew;     ///< what a right angle between +x and +y has closed by
    DistortionPart line;     ///< marks on one line only: growth along that line
    double line_angle = 0.0; ///< of that line from +x, -π/2 to π/2
    /// Standard deviation of one coordinate of a mark about turn, move and stretch, mm; 0 without
    /// freedoms. A reading error explains as much as itself and no more.
    double unexplained = 0.0;
    int freedoms = 0;      ///< coordinates read less numbers fitted
    bool mirrored = false; ///< the best linear map turns the marks' order round
};

/// A line within this of an axis counts as lying along it: then its growth is the growth along or
/// across, too. Ours.
inline constexpr double line_slack = 10.0 * 3.14159265358979323846 / 180.0;

/// Works out the distortion from a fit of at least two marks with rotation; a fit without gives
/// nothing known. `reading` is the standard deviation of one coordinate, mm. Marks whose narrower
/// spread (√Σ of squares from their centre) is below `least_width` (mm) lie on one line.
Distortion distortion_of(std::span<const MarkReading> marks, const RigidFit& fit, double reading,
                         double least_width);

/// Why a print is stretched. Common practice, no source, for all of them.
enum class LikelyCause {
    drag,        ///< the blade drags mesh along its stroke: load, speed, hardness, friction
    off_contact, ///< this head's off-contact isn't that of the head it is compared with
    tension,     ///< the mesh is slacker than when exposed, or not the same both ways
    film,        ///< the film (or its exposure) has another size
};

/// Causes, the likeliest first.
struct Causes {
    std::array<LikelyCause, 4> kinds{};
    int count = 0;
    void add(LikelyCause cause); ///< one that is there already stays where it is
};

/// How many standard deviations a distortion must be worth before a cause is named: three numbers
/// are looked at together, so more than the two of a single one. Ours.
inline constexpr double distortion_deviations = 3.0;

/// Whether a distortion stands out of the reading error.
bool stands_out(const DistortionPart& part);

/// What to look at (common practice, no source). Growth that is alike both ways comes from what
/// acts both ways: the film, then a mesh that has lost tension since exposure. Growth along alone
/// comes from what acts along the stroke: drag, then off-contact, then tension. Growth across alone
/// isn't the blade's: tension, then film. Skew likewise. What doesn't stand out of the reading
/// error has no cause.
Causes causes_of(const Distortion& distortion);

} // namespace carriageway
