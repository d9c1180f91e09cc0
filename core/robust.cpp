#include "core/robust.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

constexpr double huber_bend = 1.345;
constexpr double tukey_end = 4.685;

/// The middle of a range of values; the order of the range is lost.
double middle_of(std::vector<double>::iterator first, std::vector<double>::iterator last) {
    const auto count = last - first;
    if (count == 0) return 0.0;
    const auto upper = first + count / 2;
    std::nth_element(first, upper, last);
    if (count % 2 == 1) return *upper;
    return 0.5 * (*upper + *std::max_element(first, upper));
}

} // namespace

double median(std::vector<double> values) { return middle_of(values.begin(), values.end()); }

double robust_deviation(const std::vector<double>& residuals, std::size_t unknowns) {
    if (residuals.size() <= unknowns) return 0.0;
    std::vector<double> sizes(residuals.size());
    std::transform(residuals.begin(), residuals.end(), sizes.begin(),
                   [](double residual) { return std::abs(residual); });
    const auto first = sizes.begin() + static_cast<std::ptrdiff_t>(unknowns);
    std::nth_element(sizes.begin(), first, sizes.end());
    return normal_per_median_deviation * middle_of(first, sizes.end());
}

double huber_weight(double residual) {
    const double size = std::abs(residual);
    return size <= huber_bend ? 1.0 : huber_bend / size;
}

double tukey_weight(double residual) {
    const double share = residual / tukey_end;
    const double left = 1.0 - share * share;
    return left > 0.0 ? left * left : 0.0;
}

double normal_score(double t, double freedom) {
    if (!(freedom > 0.0)) return 0.0;
    const double size =
        (8.0 * freedom + 1.0) / (8.0 * freedom + 3.0) *
        std::sqrt(freedom * std::log1p(t * t / freedom));
    return std::copysign(size, t);
}

} // namespace carriageway
