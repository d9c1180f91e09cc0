#include "core/measuring.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/robust.h"

namespace carriageway {

namespace {

constexpr std::size_t least_to_judge = 3;
constexpr double stands_off_from = 3.0;

struct Moments {
    double mean = 0.0;
    double deviation = 0.0;
};

/// Mean and standard deviation of all readings but one.
Moments moments_without(const std::vector<double>& readings, std::size_t left_out) {
    double count = 0.0, sum = 0.0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (i == left_out) continue;
        sum += readings[i];
        count += 1.0;
    }
    Moments moments;
    moments.mean = sum / count;
    double squares = 0.0;
    for (std::size_t i = 0; i < readings.size(); ++i)
        if (i != left_out)
            squares += (readings[i] - moments.mean) * (readings[i] - moments.mean);
    if (count > 1.0) moments.deviation = std::sqrt(squares / (count - 1.0));
    return moments;
}

std::optional<std::size_t> standing_off(const std::vector<double>& readings, double step) {
    if (readings.size() < least_to_judge) return std::nullopt;
    if (std::all_of(readings.begin(), readings.end(),
                    [&](double reading) { return reading == readings.front(); }))
        return std::nullopt;
    const double middle = median(readings);
    std::size_t farthest = 0;
    for (std::size_t i = 1; i < readings.size(); ++i)
        if (std::abs(readings[i] - middle) > std::abs(readings[farthest] - middle)) farthest = i;
    const Moments others = moments_without(readings, farthest);
    const auto count = static_cast<double>(readings.size() - 1);
    const double deviation = std::max(others.deviation, step / std::sqrt(12.0));
    const double away = std::abs(readings[farthest] - others.mean);
    const double scale = deviation * std::sqrt(1.0 + 1.0 / count);
    // Without any scatter or step whatever differs stands off.
    if (scale > 0.0 && normal_score(away / scale, count - 1.0) < stands_off_from)
        return std::nullopt;
    return farthest;
}

} // namespace

ReadingStatistics statistics_of(const std::vector<double>& readings, double step) {
    ReadingStatistics result;
    for (double reading : readings)
        if (!std::isfinite(reading)) return result;
    if (readings.empty()) return result;
    result.count = readings.size();
    const Moments moments = moments_without(readings, readings.size());
    result.mean = moments.mean;
    result.deviation = moments.deviation;
    result.error = moments.deviation / std::sqrt(static_cast<double>(readings.size()));
    const auto [least, most] = std::minmax_element(readings.begin(), readings.end());
    result.least = *least;
    result.most = *most;
    result.stands_off = standing_off(readings, step);
    return result;
}

std::optional<Spread> spread_of_mean(const ReadingStatistics& statistics) {
    if (statistics.count < 2) return std::nullopt;
    return Spread{statistics.error, true};
}

std::optional<Spread> spread_of_one(const ReadingStatistics& statistics) {
    if (statistics.count < 2) return std::nullopt;
    return Spread{statistics.deviation, true};
}

Estimate estimate_of(const ReadingStatistics& statistics, double half_step) {
    const double endless = std::numeric_limits<double>::infinity();
    const double step = standard_deviation({std::max(0.0, half_step), false});
    if (statistics.count == 0) return {0.0, 0.0, endless};
    if (statistics.count == 1) return {statistics.mean, step, endless};
    const auto freedom = static_cast<double>(statistics.count - 1);
    return {statistics.mean, std::hypot(statistics.error, step),
            effective_freedom({{0.0, statistics.error, freedom}, {0.0, step, endless}})};
}

double effective_freedom(const std::vector<Estimate>& contributions) {
    double variance = 0.0, fourth = 0.0;
    for (const Estimate& one : contributions) {
        if (!(one.uncertainty > 0.0)) continue;
        const double square = one.uncertainty * one.uncertainty;
        variance += square;
        fourth += square * square / one.freedom;
    }
    if (!(fourth > 0.0)) return std::numeric_limits<double>::infinity();
    return variance * variance / fourth;
}

Estimate propagate(const std::function<double(const std::vector<double>&)>& formula,
                   const std::vector<Estimate>& inputs) {
    std::vector<double> values;
    for (const Estimate& input : inputs) values.push_back(input.value);
    Estimate result;
    result.value = formula(values);
    std::vector<Estimate> contributions;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (!(inputs[i].uncertainty > 0.0)) continue;
        values[i] = inputs[i].value + inputs[i].uncertainty;
        const double up = formula(values);
        values[i] = inputs[i].value - inputs[i].uncertainty;
        const double down = formula(values);
        values[i] = inputs[i].value;
        contributions.push_back({0.0, 0.5 * std::abs(up - down), inputs[i].freedom});
        result.uncertainty = std::hypot(result.uncertainty, contributions.back().uncertainty);
    }
    result.freedom = effective_freedom(contributions);
    return result;
}

} // namespace carriageway
