// Repeated readings, and what is sure of a number that they give.
//
// Type A evaluation of JCGM 100:2008 (GUM): mean (4.2.1), experimental standard deviation (4.2.2),
// that of the mean (4.2.3); combined uncertainty (5.1.2, by the finite changes of 5.1.3, note 2)
// and effective degrees of freedom (G.4.1, Welch-Satterthwaite).
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "core/press.h"

namespace carriageway {

/// What repeated readings of one thing say, in the unit of the readings.
struct ReadingStatistics {
    std::size_t count = 0;
    double mean = 0.0;
    double deviation = 0.0; ///< of a single reading; 0 for less than two readings
    double error = 0.0;     ///< standard error of the mean: deviation/√count
    double least = 0.0;
    double most = 0.0;
    /// The reading that stands off from the others so far that it should be taken again. It is
    /// not left out of the numbers above: whether it was misread is for a person to say.
    std::optional<std::size_t> stands_off;
    double range() const { return most - least; }
};

/// Works them out. No readings, or one that is not finite: count 0 and nothing else.
///
/// The reading farthest from the median is held against the mean and deviation of the others, these
/// not being taken as less than the step's share, step/√12. It stands off from three standard
/// deviations on (ours), told by Student's t with the freedom that the others have, so that of
/// three readings hardly any ever does. One wild reading is found; two alike hide each other.
ReadingStatistics statistics_of(const std::vector<double>& readings, double step = 0.0);

/// How well the mean is known; nothing with less than two readings.
std::optional<Spread> spread_of_mean(const ReadingStatistics& statistics);

/// How far a single setting strays, for a number that is set anew each time; likewise.
std::optional<Spread> spread_of_one(const ReadingStatistics& statistics);

/// A number and its standard uncertainty.
struct Estimate {
    double value = 0.0;
    double uncertainty = 0.0; ///< not negative
    double freedom = 0.0;     ///< degrees; infinite for an uncertainty that is taken as exact
};

/// The mean with what its readings scatter and what a reading can be off within half the smallest
/// step, `half_step`, any value being equally likely (4.3.7, infinite freedom; F.2.2.1). Of one
/// reading only the latter is known. Statistics without readings: 0.
Estimate estimate_of(const ReadingStatistics& statistics, double half_step);

/// Effective degrees of freedom of a sum of independent contributions, each given as its standard
/// uncertainty in the sum and its freedom. Contributions that are not positive don't count; none:
/// infinite.
double effective_freedom(const std::vector<Estimate>& contributions);

/// The value of `formula` at the inputs' values, with the uncertainty that the inputs, independent
/// of each other, give it: each is moved by its uncertainty up and down.
Estimate propagate(const std::function<double(const std::vector<double>&)>& formula,
                   const std::vector<Estimate>& inputs);

} // namespace carriageway
