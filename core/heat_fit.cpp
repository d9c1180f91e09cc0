// The warm-up curve through readings.
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/heat.h"
#include "core/least_squares.h"

namespace carriageway {

namespace {

constexpr std::size_t least_times = 4;
/// A longer time constant, in shares of the time that was read, shows no bend. Ours: over a fifth
/// of it the curve leaves a straight line by less than a hundredth of its whole rise.
constexpr double most_constant = 5.0;
/// The shortest that is searched for, in the same shares: everything is over before the second
/// reading.
constexpr double least_constant = 1e-3;
constexpr int grid = 200;
constexpr int sections = 60; ///< golden sections: the step of the grid less twelve digits
/// How many times the variance of a reading each of the curve's two constants beyond the mean must
/// explain for it to be a rise. Ours.
constexpr double least_ratio = 10.0;

/// For one time constant: the line temperature = steady + rise·exp(−time/constant), and the sum of
/// squares that it leaves.
struct Line {
    double steady = 0.0;
    double rise = 0.0;
    double squares = 0.0;
    double explained = 0.0; ///< squares about the mean, less those left
};

Line line_for(const std::vector<TemperatureReading>& readings, double constant) {
    const auto count = static_cast<double>(readings.size());
    double mean_x = 0.0, mean_y = 0.0;
    for (const TemperatureReading& reading : readings) {
        mean_x += std::exp(-reading.time / constant) / count;
        mean_y += reading.temperature / count;
    }
    double xx = 0.0, xy = 0.0;
    for (const TemperatureReading& reading : readings) {
        const double x = std::exp(-reading.time / constant) - mean_x;
        xx += x * x;
        xy += x * (reading.temperature - mean_y);
    }
    Line line;
    line.rise = xx > 0.0 ? xy / xx : 0.0;
    line.steady = mean_y - line.rise * mean_x;
    line.explained = line.rise * xy;
    for (const TemperatureReading& reading : readings) {
        const double left = reading.temperature - line.steady -
                            line.rise * std::exp(-reading.time / constant);
        line.squares += left * left;
    }
    return line;
}

/// The logarithm of the best time constant; at an end of the grid when that is the best.
double best_logarithm(const std::vector<TemperatureReading>& readings, double lo, double hi) {
    const auto squares = [&](double logarithm) {
        return line_for(readings, std::exp(logarithm)).squares;
    };
    const double step = (hi - lo) / grid;
    int best = 0;
    double least = squares(lo);
    for (int i = 1; i <= grid; ++i) {
        const double here = squares(lo + step * i);
        if (here < least) {
            least = here;
            best = i;
        }
    }
    if (best == 0) return lo;
    if (best == grid) return hi;
    const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
    double left = lo + step * (best - 1), right = lo + step * (best + 1);
    double a = right - golden * (right - left), b = left + golden * (right - left);
    double at_a = squares(a), at_b = squares(b);
    for (int i = 0; i < sections; ++i) {
        if (at_a <= at_b) {
            right = b;
            b = a;
            at_b = at_a;
            a = right - golden * (right - left);
            at_a = squares(a);
        } else {
            left = a;
            a = b;
            at_a = at_b;
            b = left + golden * (right - left);
            at_b = squares(b);
        }
    }
    return 0.5 * (left + right);
}

/// Standard errors from the curve's slopes at its constants (linearised least squares). False when
/// the readings leave a constant open.
bool fill_errors(const std::vector<TemperatureReading>& readings, double span, WarmUp& fit) {
    NormalEquations equations(3);
    for (const TemperatureReading& reading : readings) {
        const double share = reading.time / fit.time_constant, left = std::exp(-share);
        // The constant counted in spans of time, so that the columns are of one size.
        const double slope =
            (fit.start - fit.steady) * left * share * span / fit.time_constant;
        equations.add({{0, 1.0 - left}, {1, left}, {2, slope}}, 1.0);
    }
    if (!equations.factor()) return false;
    const std::vector<double> inverse = equations.inverse();
    fit.steady_error = fit.deviation * std::sqrt(inverse[0]);
    fit.start_error = fit.deviation * std::sqrt(inverse[4]);
    fit.time_constant_error = fit.deviation * std::sqrt(inverse[8]) * span;
    return true;
}

WarmUp refused(WarmUpRefusal refusal) {
    WarmUp result;
    result.refusal = refusal;
    return result;
}

} // namespace

WarmUp fit_warm_up(std::vector<TemperatureReading> readings) {
    for (const TemperatureReading& reading : readings)
        if (!std::isfinite(reading.time) || !std::isfinite(reading.temperature))
            return refused(WarmUpRefusal::not_finite);
    std::sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) {
        return a.time != b.time ? a.time < b.time : a.temperature < b.temperature;
    });
    std::size_t times = readings.empty() ? 0 : 1;
    for (std::size_t i = 1; i < readings.size(); ++i)
        if (readings[i].time > readings[i - 1].time) ++times;
    if (times < least_times) return refused(WarmUpRefusal::too_few);
    const double first = readings.front().time;
    for (TemperatureReading& reading : readings) reading.time -= first;
    const double span = readings.back().time;

    const double lo = std::log(least_constant * span), hi = std::log(most_constant * span);
    const double logarithm = best_logarithm(readings, lo, hi);
    const Line line = line_for(readings, std::exp(logarithm));
    WarmUp fit;
    fit.time_constant = std::exp(logarithm);
    fit.steady = line.steady;
    fit.start = line.steady + line.rise;
    fit.deviation = std::sqrt(line.squares / static_cast<double>(readings.size() - 3));
    const double variance = fit.deviation * fit.deviation;
    if (logarithm <= lo || !(0.5 * line.explained > least_ratio * variance))
        return refused(WarmUpRefusal::already_steady);
    if (logarithm >= hi || !fill_errors(readings, span, fit))
        return refused(WarmUpRefusal::still_straight);
    return fit;
}

} // namespace carriageway
