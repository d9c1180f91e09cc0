#include "core/tolerance.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <span>
#include <tuple>

namespace carriageway {

namespace {

constexpr std::size_t most_spreads = std::tuple_size_v<decltype(Stack::spreads)>;

/// The deviations that a stack holds.
std::span<const Spread> used(const Stack& stack) {
    return {stack.spreads.data(), static_cast<std::size_t>(stack.count)};
}

/// A stack as the sum of uniform deviations, widest first, and one normal deviation.
struct Sum {
    std::array<double, most_spreads> half_widths{};
    std::size_t uniforms = 0;
    double variance = 0.0; ///< of the normal part
};

/// How much larger the terms of the exact sum may be than the chance itself. The terms cancel, so
/// rounding grows by this factor: with 1e6 a chance is still right to about 1e-9. Beyond it, the
/// narrowest uniform deviation goes into the normal part with the same variance: beside others that
/// are so much wider its shape hardly shows.
constexpr double most_cancellation = 1e6;

/// Largest term of the exact sum for a chance below one half, about.
double cancellation(const Sum& sum) {
    double extent = 2.0 * std::sqrt(sum.variance);
    for (std::size_t i = 0; i < sum.uniforms; ++i) extent += sum.half_widths[i];
    double largest = 1.0;
    for (std::size_t i = 0; i < sum.uniforms; ++i)
        largest *= extent / (2.0 * static_cast<double>(i + 1) * sum.half_widths[i]);
    return largest;
}

/// Puts a uniform deviation in its place among those already there.
void add_uniform(Sum& sum, double half_width) {
    std::size_t place = sum.uniforms++;
    for (; place > 0 && sum.half_widths[place - 1] < half_width; --place)
        sum.half_widths[place] = sum.half_widths[place - 1];
    sum.half_widths[place] = half_width;
}

Sum sum_of(const Stack& stack) {
    Sum sum;
    for (const Spread& spread : used(stack)) {
        if (!(spread.value > 0.0)) continue;
        if (spread.measured)
            sum.variance += spread.value * spread.value;
        else
            add_uniform(sum, spread.value);
    }
    while (sum.uniforms > 0 && cancellation(sum) > most_cancellation) {
        const double narrowest = sum.half_widths[--sum.uniforms];
        sum.variance += narrowest * narrowest / 3.0;
    }
    return sum;
}

/// E[(z + σN)₊^n] with N standard normal: n! times the normal distribution integrated n times.
double ramp_power(double z, double sigma, std::size_t n) {
    if (!(sigma > 0.0)) {
        const double ramp = std::max(0.0, z);
        double power = z > 0.0 ? 1.0 : 0.0;
        for (std::size_t i = 0; i < n; ++i) power *= ramp;
        return power;
    }
    const double u = z / sigma;
    double before = 0.5 * std::erfc(-u / std::numbers::sqrt2);
    if (n == 0) return before;
    const double density =
        std::exp(-0.5 * u * u) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
    double now = z * before + sigma * density;
    for (std::size_t k = 2; k <= n; ++k) {
        const double next = z * now + static_cast<double>(k - 1) * sigma * sigma * before;
        before = now;
        now = next;
    }
    return std::max(0.0, now);
}

/// Chance that the sum is at most x, for x not positive. By inclusion and exclusion over the
/// corners of the box that the uniform deviations fill:
/// P = Σ over signs of (product of signs)·E[(x + Σ ±w + σN)₊^n] / (n!·Π 2w).
double chance_below(const Sum& sum, double x) {
    const std::size_t n = sum.uniforms;
    const double sigma = std::sqrt(sum.variance);
    double scale = 1.0;
    for (std::size_t i = 0; i < n; ++i)
        scale *= 2.0 * static_cast<double>(i + 1) * sum.half_widths[i];
    double total = 0.0;
    for (unsigned signs = 0; signs < (1U << n); ++signs) {
        double z = x;
        bool negative = false;
        for (std::size_t i = 0; i < n; ++i) {
            const bool minus = ((signs >> i) & 1U) != 0;
            z += minus ? -sum.half_widths[i] : sum.half_widths[i];
            negative = negative != minus;
        }
        const double term = ramp_power(z, sigma, n);
        total += negative ? -term : term;
    }
    return std::clamp(total / scale, 0.0, 1.0);
}

} // namespace

void Stack::add(const Spread& spread) {
    assert(count >= 0 && static_cast<std::size_t>(count) < most_spreads);
    if (static_cast<std::size_t>(count) < most_spreads)
        spreads[static_cast<std::size_t>(count++)] = spread;
}

double worst_case(const Stack& stack) {
    double sum = 0.0;
    for (const Spread& spread : used(stack)) sum += worst_deviation(spread);
    return sum;
}

double root_sum_square(const Stack& stack) {
    double sum = 0.0;
    for (const Spread& spread : used(stack)) {
        const double worst = worst_deviation(spread);
        sum += worst * worst;
    }
    return std::sqrt(sum);
}

double chance_beyond(const Stack& stack, double margin) {
    const Sum sum = sum_of(stack);
    if (sum.uniforms == 0 && !(sum.variance > 0.0)) return margin < 0.0 ? 1.0 : 0.0;
    // Every deviation is as likely up as down, so the upper tail is the lower one: taken directly,
    // not as 1 less something near 1, it keeps its digits when it is small.
    if (margin >= 0.0) return chance_below(sum, -margin);
    return 1.0 - chance_below(sum, margin);
}

} // namespace carriageway
