// Heights read at several points of several platens under several heads: which head and which
// platen is off, and by how much.
//
// A platen keeps its place under every head, so one pair of axes (the head's, geometry.h) serves
// both. Every reading is the gap from the platen's surface up to the head (to the screen, or to
// whatever on the head the gauge touches), and is taken as the sum of a plane of the head and a
// plane of the platen. A higher head and a lower platen both widen the gap: readings alone can't
// tell whether all heads are high or all platens low, so the platens' planes have mean zero in
// each term, and a head's plane is the gap over the mean platen.
//
// Lengths mm, tilts mm per mm.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/press.h"
#include "core/readings.h"

namespace carriageway {

/// offset + tilt_x·x + tilt_y·y.
struct Plane {
    double offset = 0.0;
    double tilt_x = 0.0;
    double tilt_y = 0.0;
    double at(const Point& point) const { return offset + tilt_x * point.x + tilt_y * point.y; }
};

/// How much of a plane the readings give.
enum class LevelTerms {
    none,   ///< nothing
    offset, ///< the height alone; both tilts are 0 in the numbers, which says nothing about them
    plane,
};

/// Why a group has less than planes for all of its parts.
enum class LevelReason {
    none,
    few_points,         ///< too few points, or all in a line: offsets alone
    few_points_of_some, ///< some parts only: these have an offset at best, the others planes
    too_few_readings,   ///< not even offsets
};

/// What is known of one head or one platen.
struct LevelledPart {
    std::uint32_t number = 0; ///< platen's number or head's id
    int group = 0;            ///< index into Levelling::groups
    int readings = 0;         ///< of this part, strays included
    LevelTerms known = LevelTerms::none;
    Plane plane; ///< of a platen: what it adds to the gap; above 0 it lies low
    /// Whether `covariance` says anything: not when no reading was left over to judge the scatter,
    /// nor for a part whose offset alone was hung on to the planes of others.
    bool errors_known = false;
    /// Variances and covariances of the plane's terms: oo, ox, oy, xx, xy, yy.
    std::array<double, 6> covariance{};
};

/// Standard error of a part's plane at a point, mm. Infinite while errors are not known.
double standard_error(const LevelledPart& part, const Point& point);

/// Heads and platens that were read together, directly or through others.
struct LevelGroup {
    LevelTerms terms = LevelTerms::none;
    LevelReason reason = LevelReason::none;
    int heads = 0;
    int platens = 0;
    int readings = 0;
    int strays = 0;
    int freedom = 0;         ///< readings that count, less unknowns
    double deviation = 0.0;  ///< standard deviation of one reading; 0 without freedom
    int rounds = 0;          ///< of the fit
    /// False: readings contradict each other that can't all be left out without leaving something
    /// open, such as two at one point of which one must be wrong. Read there again.
    bool settled = true;
};

/// A reading that fits nowhere: misread, written to the wrong platen, or dirt under the gauge.
struct StrayReading {
    std::size_t reading = 0; ///< index into the readings
    double residual = 0.0;   ///< how far it lies above what the others say, mm
    double score = 0.0;      ///< the same in standard deviations
};

/// Why readings were not accepted at all.
enum class LevelRefusal { none, no_readings, not_finite, too_many_parts };

struct Levelling {
    LevelRefusal refusal = LevelRefusal::none;
    std::size_t refused_reading = 0;  ///< for not_finite: which
    std::vector<LevelledPart> heads;   ///< by id
    std::vector<LevelledPart> platens; ///< by number
    /// More than one: heads and platens of different groups were never read together, and their
    /// numbers can't be compared.
    std::vector<LevelGroup> groups;
    std::vector<double> residuals; ///< of each reading; 0 where a part of it is not known
    std::vector<StrayReading> strays; ///< in the order of the readings
};

struct LevelSettings {
    /// Smallest step of the gauge. Scatter is never taken to be less than its share, step/√12.
    double step = 0.01;
    bool robust = true; ///< false: plain least squares, no strays
    /// Standard deviations from which a reading is a stray. Ours: one good reading in 16 000.
    double stray_from = 4.0;
    int most_rounds = 50; ///< of each of the two robust fits
};

/// Most heads and platens together: as many as the largest accepted press can have (press.h).
inline constexpr std::size_t most_level_parts = 2 * most_stations;

/// Fits the planes. Deterministic; the order of the readings changes the last digits only.
///
/// Plain least squares, then Huber's weights, then Tukey's from there; what lies too far out
/// is then left out, and the rest fitted by plain least squares, which gives the standard errors.
/// Bounded by 2·most_rounds + 43 solutions. One costs 18·readings + (3·parts)³/6 operations:
/// 18 platens by 16 heads by 5 points take about 10 ms, with a third of the readings
/// spoilt some 40 ms; the largest press that is accepted, 64 by 64 by 5, a quarter of a second.
Levelling level(const std::vector<HeightReading>& readings, const LevelSettings& settings = {});

} // namespace carriageway
