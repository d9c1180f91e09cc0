#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <initializer_list>
#include <random>

#include "core/tolerance.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Stack stack_of(std::initializer_list<Spread> spreads) {
    Stack stack;
    for (const Spread& spread : spreads) stack.add(spread);
    return stack;
}

Spread within(double half_width) { return {half_width, false}; }
Spread measured(double deviation) { return {deviation, true}; }

double normal_tail(double deviations) { return 0.5 * std::erfc(deviations / std::sqrt(2.0)); }

/// The mean of a function over [−half_width, half_width], by Simpson's rule.
template <class Function>
double mean_over(double half_width, Function function) {
    constexpr int steps = 2000;
    double sum = 0.0;
    for (int i = 0; i <= steps; ++i) {
        const double weight = i == 0 || i == steps ? 1.0 : (i % 2 == 1 ? 4.0 : 2.0);
        sum += weight * function(half_width * (2.0 * i / steps - 1.0));
    }
    return sum / (3.0 * steps);
}

/// The chance by throwing dice.
double thrown_chance(const Stack& stack, double margin, int throws, std::mt19937_64& random) {
    std::uniform_real_distribution<double> share(-1.0, 1.0);
    std::normal_distribution<double> normal;
    int beyond = 0;
    for (int i = 0; i < throws; ++i) {
        double sum = 0.0;
        for (int k = 0; k < stack.count; ++k) {
            const Spread& spread = stack.spreads[static_cast<std::size_t>(k)];
            sum += spread.value * (spread.measured ? normal(random) : share(random));
        }
        beyond += sum > margin ? 1 : 0;
    }
    return static_cast<double>(beyond) / throws;
}

} // namespace

TEST_CASE("Worst case and root sum square of a published stack", "[tolerance]") {
    // Tolerance-stack text: ±0.005, 0.003, 0.002, 0.005 add up to 0.0150, and by squares to
    // 0.0079373.
    const Stack stack = stack_of({within(0.005), within(0.003), within(0.002), within(0.005)});
    CHECK_THAT(worst_case(stack), WithinAbs(0.0150, 1e-15));
    CHECK_THAT(root_sum_square(stack), WithinAbs(0.0079373, 5e-8));
    // Ten of ±0.1 give 1.000 and 0.31623. A stack holds six, so two of five.
    const Stack five =
        stack_of({within(0.1), within(0.1), within(0.1), within(0.1), within(0.1)});
    CHECK_THAT(2.0 * worst_case(five), WithinAbs(1.0, 1e-15));
    CHECK_THAT(std::hypot(root_sum_square(five), root_sum_square(five)), WithinAbs(0.31623, 5e-6));
}

TEST_CASE("Measured deviations count three times in the worst case", "[tolerance]") {
    const Stack stack = stack_of({within(1.0), measured(0.5)});
    CHECK_THAT(worst_case(stack), WithinAbs(2.5, 1e-15));
    CHECK_THAT(root_sum_square(stack), WithinAbs(std::sqrt(1.0 + 2.25), 1e-15));
}

TEST_CASE("Without any deviation a margin holds or doesn't", "[tolerance]") {
    CHECK(chance_beyond({}, 0.1) == 0.0);
    CHECK(chance_beyond({}, 0.0) == 0.0);
    CHECK(chance_beyond({}, -0.1) == 1.0);
    CHECK(chance_beyond(stack_of({within(0.0), measured(0.0)}), -0.1) == 1.0);
    CHECK(worst_case({}) == 0.0);
    CHECK(root_sum_square({}) == 0.0);
}

TEST_CASE("One rectangular deviation", "[tolerance]") {
    const Stack stack = stack_of({within(2.0)});
    CHECK_THAT(chance_beyond(stack, 0.0), WithinAbs(0.5, 1e-15));
    CHECK_THAT(chance_beyond(stack, 1.0), WithinAbs(0.25, 1e-15));
    CHECK_THAT(chance_beyond(stack, -1.0), WithinAbs(0.75, 1e-15));
    CHECK(chance_beyond(stack, 2.0) == 0.0);
    CHECK(chance_beyond(stack, -2.0) == 1.0);
    CHECK(chance_beyond(stack, 50.0) == 0.0);
}

TEST_CASE("Two rectangular deviations make a trapezoid", "[tolerance]") {
    // Equal ones: the triangle's tail, (2 − m)²/8.
    CHECK_THAT(chance_beyond(stack_of({within(1.0), within(1.0)}), 1.0), WithinAbs(0.125, 1e-15));
    // 1 and 2: (3 − m)²/16 on the slope from 1 to 3, and straight inside.
    const Stack stack = stack_of({within(1.0), within(2.0)});
    CHECK_THAT(chance_beyond(stack, 2.0), WithinAbs(1.0 / 16.0, 1e-15));
    CHECK_THAT(chance_beyond(stack, 1.0), WithinAbs(0.25, 1e-15));
    CHECK_THAT(chance_beyond(stack, 0.5), WithinAbs(0.375, 1e-15));
}

TEST_CASE("Six rectangular deviations keep the digits of their tail", "[tolerance]") {
    const Stack stack = stack_of(
        {within(1.0), within(1.0), within(1.0), within(1.0), within(1.0), within(1.0)});
    // Only one corner of the box sticks out: (6 − m)⁶/(6!·2⁶).
    CHECK_THAT(chance_beyond(stack, 5.0), WithinRel(1.0 / 46080.0, 1e-12));
    CHECK_THAT(chance_beyond(stack, 5.9), WithinRel(1e-6 / 46080.0, 1e-9));
    CHECK(chance_beyond(stack, 6.0) == 0.0);
    CHECK_THAT(chance_beyond(stack, 0.0), WithinAbs(0.5, 1e-13));
}

TEST_CASE("Measured deviations alone are normal", "[tolerance]") {
    // 3 and 4 make 5. The points of the normal distribution that go with 2.5 % and 0.1 % (tables).
    const Stack stack = stack_of({measured(3.0), measured(4.0)});
    CHECK_THAT(chance_beyond(stack, 5.0 * 1.959963985), WithinRel(0.025, 1e-8));
    CHECK_THAT(chance_beyond(stack, 5.0 * 3.090232306), WithinRel(0.001, 1e-8));
    CHECK_THAT(chance_beyond(stack, -5.0), WithinRel(1.0 - normal_tail(1.0), 1e-14));
    CHECK_THAT(chance_beyond(stack, 50.0), WithinRel(normal_tail(10.0), 1e-12));
}

TEST_CASE("A rectangular and a measured deviation agree with quadrature", "[tolerance]") {
    for (const double deviation : {0.05, 0.5, 5.0})
        for (const double margin : {-1.0, 0.0, 0.7, 1.0, 2.0}) {
            CAPTURE(deviation, margin);
            const double expected = mean_over(1.0, [&](double u) {
                return normal_tail((margin - u) / deviation);
            });
            CHECK_THAT(chance_beyond(stack_of({within(1.0), measured(deviation)}), margin),
                       WithinAbs(expected, 1e-9));
        }
}

TEST_CASE("Narrow deviations beside a wide one", "[tolerance]") {
    // With U the sum of the narrow ones, P(W + U > m) = ½·∫ P(U > t) dt from m − 1 on for W within
    // ±1: straight, (1 − m)/2, wherever U can't reach the end of W.
    for (const double narrow : {0.1, 0.01, 1e-3, 1e-6}) {
        // Below a hundredth some of the narrow ones count as normal: see core/tolerance.h.
        const double allowed = 2e-9 + (narrow < 0.01 ? 2e-3 * narrow : 0.0);
        const Stack five = stack_of(
            {within(narrow), within(narrow), within(narrow), within(narrow), within(narrow)});
        Stack stack = five;
        stack.add(within(1.0));
        for (const double margin : {-0.3, 0.0, 0.4, 1.0 - 5.0 * narrow}) {
            CAPTURE(narrow, margin);
            CHECK_THAT(chance_beyond(stack, margin), WithinAbs(0.5 * (1.0 - margin), allowed));
        }
        for (const double beyond : {-2.0, -0.5, 0.0, 1.0, 3.0}) {
            CAPTURE(narrow, beyond);
            const double half = 0.5 * narrow * (5.0 - beyond);
            const double tail = mean_over(
                half, [&](double t) { return chance_beyond(five, narrow * beyond + half + t); });
            CHECK_THAT(chance_beyond(stack, 1.0 + narrow * beyond),
                       WithinAbs(half * tail, allowed));
        }
    }
}

TEST_CASE("Narrow deviations beside a normal one", "[tolerance]") {
    // Together nearly normal with the sum of the variances; what differs is of the fourth order.
    for (const double narrow : {0.1, 0.01, 1e-3, 1e-6})
        for (const double margin : {-0.3, 0.0, 0.4, 1.0, 3.0}) {
            CAPTURE(narrow, margin);
            const Stack stack = stack_of({within(narrow), within(narrow), within(narrow),
                                          within(narrow), within(narrow), measured(1.0)});
            const double deviation = std::sqrt(1.0 + 5.0 * narrow * narrow / 3.0);
            CHECK_THAT(chance_beyond(stack, margin),
                       WithinAbs(normal_tail(margin / deviation),
                                 2e-9 + 0.02 * std::pow(narrow, 4.0)));
        }
}

TEST_CASE("Any mix agrees with thrown dice", "[tolerance]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> share(0.0, 1.0);
    constexpr int throws = 200000;
    for (int i = 0; i < 12; ++i) {
        Stack stack;
        const int count = 1 + i % 6;
        for (int k = 0; k < count; ++k)
            stack.add({std::pow(10.0, 2.0 * share(random) - 1.0), share(random) < 0.3});
        const double margin = root_sum_square(stack) * (1.5 * share(random) - 0.5);
        const double chance = chance_beyond(stack, margin);
        CAPTURE(i, margin, chance);
        const double six_deviations = 6.0 * std::sqrt(chance * (1.0 - chance) / throws) + 1e-4;
        CHECK_THAT(thrown_chance(stack, margin, throws, random), WithinAbs(chance, six_deviations));
    }
}

TEST_CASE("The chance falls as the margin grows, and is symmetric", "[tolerance]") {
    CAPTURE(Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> share(0.0, 1.0);
    for (int i = 0; i < 200; ++i) {
        Stack stack;
        for (int k = 0; k <= i % 6; ++k)
            stack.add({std::pow(10.0, 6.0 * share(random) - 4.0), share(random) < 0.3});
        const double reach = worst_case(stack);
        double before = 1.0;
        for (int step = -12; step <= 12; ++step) {
            const double margin = reach * step / 10.0;
            const double chance = chance_beyond(stack, margin);
            CHECK(chance >= 0.0);
            CHECK(chance <= before + 1e-8);
            CHECK_THAT(chance + chance_beyond(stack, -margin), WithinAbs(1.0, 1e-8));
            before = chance;
        }
    }
}
