// Statistics that one bad reading can't pull far, and the weights of a robust fit.
//
// Medians and the weights of Huber and of Tukey: any text on robust statistics (P. J. Huber, Robust
// Statistics, 1981; from memory).
#pragma once

#include <cstddef>
#include <vector>

namespace carriageway {

/// The middle one in order, or the mean of the two middle ones. No value: 0.
double median(std::vector<double> values);

/// A median absolute deviation times this estimates the standard deviation of normal scatter:
/// 1 over the normal quantile of 3/4, 0.674490.
inline constexpr double normal_per_median_deviation = 1.482602;

/// Standard deviation of the residuals of a fit, from the median of their sizes. A fit of
/// `unknowns` numbers can make as many residuals vanish, so that many of the smallest don't count.
/// With no more residuals than unknowns: 0.
double robust_deviation(const std::vector<double>& residuals, std::size_t unknowns);

/// Weight of a residual, given in standard deviations: 1 near zero, falling with its inverse
/// beyond 1.345 (95 % efficient for normal scatter).
double huber_weight(double residual);

/// Likewise, but 0 beyond 4.685: what is far out doesn't count at all.
double tukey_weight(double residual);

/// What a Student's t value with `freedom` degrees is worth in standard deviations of a normal
/// distribution: about the same chance lies beyond (D. L. Wallace, 1959; from memory). Up to four
/// deviations it is within 3 % from three degrees on, and from two deviations on too low rather
/// than too high. Keeps the sign. Freedom not positive: 0.
double normal_score(double t, double freedom);

} // namespace carriageway
