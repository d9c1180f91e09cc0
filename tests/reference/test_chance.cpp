// The chance that deviations go beyond a margin, worked out in two other ways: from the
// characteristic function (Gil-Pelaez, 1951) and, where every deviation is rectangular, from the
// volume of a box cut by a plane with fifty digits. And by drawing deviations.
#include <algorithm>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <numbers>

#include "core/tolerance.h"
#include "tests/reference/seeded.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

using Fifty = boost::multiprecision::cpp_bin_float_50;

constexpr int cases = 4'000;

/// The header promises "exact for any mix": to this, absolutely.
constexpr double tolerance = 1e-9;

Stack random_stack(Seeded& random, bool with_normal) {
    Stack stack;
    const int count = random.whole(with_normal ? 2 : 1, 6);
    // Now and then of very different sizes, as a press well measured in one thing only has.
    const double decades = random.chance(0.5) ? 0.5 : 2.0;
    for (int i = 0; i < count; ++i) {
        const bool normal = with_normal && (i == 0 || random.chance(0.3));
        stack.add({std::pow(10.0, random.between(-decades, 0.5)), normal});
    }
    if (random.chance(0.2) && stack.count < 6) stack.add({0.0, random.chance(0.5)});
    return stack;
}

/// Characteristic function of the sum at t; real, because every deviation is symmetric.
double characteristic(const Stack& stack, double t) {
    double product = 1.0;
    for (int i = 0; i < stack.count; ++i) {
        const Spread& spread = stack.spreads[static_cast<std::size_t>(i)];
        const double at = spread.value * t;
        if (spread.measured)
            product *= std::exp(-0.5 * at * at);
        else if (at != 0.0)
            product *= std::sin(at) / at;
    }
    return product;
}

/// P(sum > m) = 1/2 - (1/pi) ∫ sin(m t)/t · phi(t) dt from 0, by Gauss-Legendre on short panels. The
/// normal part ends the integral at 9 standard deviations.
double chance_by_characteristic(const Stack& stack, double margin) {
    constexpr double nodes[] = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                0.9602898564975363};
    constexpr double weights[] = {0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                  0.1012285362903763};
    double extent = std::abs(margin), variance = 0.0;
    for (int i = 0; i < stack.count; ++i) {
        const Spread& spread = stack.spreads[static_cast<std::size_t>(i)];
        extent += spread.value;
        if (spread.measured) variance += spread.value * spread.value;
    }
    const double end = 9.0 / std::sqrt(variance);
    const int panels = static_cast<int>(std::ceil(end * extent / 1.5)) + 4;
    const double half = 0.5 * end / panels;
    double integral = 0.0;
    for (int panel = 0; panel < panels; ++panel)
        for (int i = 0; i < 8; ++i) {
            const std::size_t node = static_cast<std::size_t>(i / 2);
            const double offset = i % 2 == 0 ? nodes[node] : -nodes[node];
            const double t = half * (2 * panel + 1 + offset);
            integral += half * weights[node] * std::sin(margin * t) / t * characteristic(stack, t);
        }
    return 0.5 - integral / std::numbers::pi;
}

/// P(sum > m) for rectangular deviations alone: the share of the box beyond a plane, from the
/// corners of the box (inclusion and exclusion), with fifty digits because the terms cancel.
double chance_by_volume(const Stack& stack, double margin) {
    std::vector<Fifty> widths;
    for (int i = 0; i < stack.count; ++i) {
        const Spread& spread = stack.spreads[static_cast<std::size_t>(i)];
        if (spread.value > 0.0) widths.emplace_back(spread.value);
    }
    Fifty scale = 1, total = 0;
    for (std::size_t i = 0; i < widths.size(); ++i) scale *= 2 * static_cast<int>(i + 1) * widths[i];
    for (unsigned corner = 0; corner < (1u << widths.size()); ++corner) {
        Fifty beyond = -Fifty(margin), term = 1;
        int sign = 1;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const bool low = ((corner >> i) & 1u) != 0;
            beyond += low ? Fifty(-widths[i]) : widths[i];
            if (low) sign = -sign;
        }
        if (beyond <= 0) continue;
        for (std::size_t i = 0; i < widths.size(); ++i) term *= beyond;
        total += sign * term;
    }
    return static_cast<double>(Fifty(total / scale));
}

double random_margin(Seeded& random, const Stack& stack) {
    double sum = 0.0;
    bool normal = false;
    for (int i = 0; i < stack.count; ++i) {
        sum += stack.spreads[static_cast<std::size_t>(i)].value;
        normal = normal || stack.spreads[static_cast<std::size_t>(i)].measured;
    }
    // A normal deviation has a tail beyond the sum; a fifth of the margins lie there.
    if (normal && random.chance(0.2)) return random.between(1.0, 2.2) * sum;
    return random.chance(0.02) ? 0.0 : random.between(-1.1, 1.1) * sum;
}

void count_chance(Tally& tally, double chance) {
    tally.count("chance below 1e-3, but some", chance > 1e-12 && chance < 1e-3);
    tally.count("chance in the middle", chance > 0.1 && chance < 0.9);
    tally.count("never", chance <= 1e-12);
    tally.count("always", chance >= 1.0 - 1e-12);
}

} // namespace

TEST_CASE("chance beyond a margin agrees with the characteristic function", "[property]") {
    Tally tally("chance, rectangular and normal", 6);
    for (int i = 0; i < cases; ++i) {
        Seeded random(run_seed(), 6, static_cast<std::uint64_t>(i));
        const Stack stack = random_stack(random, true);
        const double margin = random_margin(random, stack);
        const double expected = chance_by_characteristic(stack, margin);
        tally.close(static_cast<std::uint64_t>(i), "chance", chance_beyond(stack, margin), expected,
                    tolerance);
        count_chance(tally, expected);
    }
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(tally.of("chance below 1e-3, but some") >= cases / 50);
    CHECK(tally.of("chance in the middle") >= cases / 10);
}

TEST_CASE("chance beyond a margin agrees with the volume of a cut box", "[property]") {
    Tally tally("chance, rectangular", 7);
    for (int i = 0; i < cases; ++i) {
        Seeded random(run_seed(), 7, static_cast<std::uint64_t>(i));
        const Stack stack = random_stack(random, false);
        const double margin = random_margin(random, stack);
        const double expected = chance_by_volume(stack, margin);
        tally.close(static_cast<std::uint64_t>(i), "chance", chance_beyond(stack, margin), expected,
                    tolerance);
        count_chance(tally, expected);
    }
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(tally.of("chance below 1e-3, but some") >= cases / 50);
    CHECK(tally.of("chance in the middle") >= cases / 10);
    CHECK(tally.of("never") >= cases / 50);
    CHECK(tally.of("always") >= cases / 50);
}

TEST_CASE("chance beyond a margin agrees with drawn deviations", "[property]") {
    // Stop, screen and image typed as plus or minus 1 mm, overtravel measured: 0.8 mm.
    Stack stack;
    stack.add({1.0, false});
    stack.add({1.0, false});
    stack.add({1.0, false});
    stack.add({0.8, true});
    constexpr int draws = 2'000'000;
    constexpr double margins[] = {0.0, 0.5, 1.0, 2.0, 3.0};
    int beyond[5] = {};
    Seeded random(run_seed(), 8, 0);
    for (int i = 0; i < draws; ++i) {
        // Box and Muller: two uniform numbers make a normal one.
        const double radius = std::sqrt(-2.0 * std::log(1.0 - random.between(0.0, 1.0)));
        double sum = 0.8 * radius * std::cos(2.0 * std::numbers::pi * random.between(0.0, 1.0));
        for (int k = 0; k < 3; ++k) sum += random.between(-1.0, 1.0);
        for (std::size_t k = 0; k < 5; ++k) beyond[k] += sum > margins[k] ? 1 : 0;
    }
    for (std::size_t k = 0; k < 5; ++k) {
        INFO("CARRIAGEWAY_SEED=" << run_seed() << " margin " << margins[k]);
        const double expected = chance_beyond(stack, margins[k]);
        const double drawn = static_cast<double>(beyond[k]) / draws;
        // Five standard deviations of a drawn share: one run in a million fails by chance.
        CHECK(std::abs(drawn - expected) <= 5.0 * std::sqrt(expected * (1.0 - expected) / draws));
    }
}
