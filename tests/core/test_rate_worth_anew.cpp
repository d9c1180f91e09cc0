// What a change of a plan is worth, against plans that are changed and worked out anew.
#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <iostream>
#include <map>
#include <random>

#include "core/rate_worth.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;

namespace {

constexpr int cases = 4'000;

/// Of the rate: the same numbers summed in another order.
constexpr double gain_tolerance = 1e-10;

/// Of a derivative, as a share of the rate for a share of the number: a step of 1e-4 leaves its
/// square.
constexpr double slope_step = 1e-4;
constexpr double slope_tolerance = 1e-6;

/// The plan with one number changed.
RatePlan changed(RatePlan plan, Lever lever, std::size_t place, double by) {
    StationWork& work = plan.stations[place];
    switch (lever) {
        case Lever::stroke: work.head.distance += by; break;
        case Lever::print_speed: work.head.print_speed += by; break;
        case Lever::flood_speed: work.head.flood_speed += by; break;
        case Lever::drop: work.head.drop += by; break;
        case Lever::dwell: work.head.dwell += by; break;
        case Lever::lower: work.head.lower += by; break;
        case Lever::lift: work.head.lift += by; break;
        case Lever::seconds: work.seconds += by; break;
        case Lever::index: plan.index += by; break;
    }
    return plan;
}

/// +1 for what is raised, -1 for what is lessened.
double way_of(Lever lever) {
    return lever == Lever::print_speed || lever == Lever::flood_speed ? 1.0 : -1.0;
}

/// A plan, and what was seen of the worth of its levers.
struct Anew {
    RatePlan plan;
    Rate rate;
    std::map<WorthVerdict, int> verdicts;
    int broke_even = 0;
    int slopes = 0; ///< looked at
    int bent = 0;   ///< where two forms of a stroke meet within the step of a derivative
    double worst_slope = 0.0;

    /// Pieces an hour more when the number of the lever changes so.
    double gain_of(const Worth& worth, double by) const {
        const Rate then = rate_of(changed(plan, worth.lever, worth.place, by));
        return then.pieces_an_hour - rate.pieces_an_hour;
    }
    void check_gain(const Worth& worth);
    void check_slope(const Worth& worth);
    void check_next(const Worth& worth);
    void check_none(const Worth& worth);
};

/// The whole step, and the change from which on no more is won.
void Anew::check_gain(const Worth& worth) {
    const double scale = rate.pieces_an_hour, sign = way_of(worth.lever);
    CHECK(worth.step * sign > 0.0);
    CHECK_THAT(worth.gain, WithinAbs(gain_of(worth, worth.step), gain_tolerance * scale));
    CHECK(worth.gain >= 0.0);
    CHECK(worth.held_by.empty());
    CHECK(worth.until * sign > 0.0);
    CHECK(std::abs(worth.until) <= std::abs(worth.end - worth.now) * (1 + 1e-12));
    CHECK_THAT(worth.most_gain, WithinAbs(gain_of(worth, worth.until), gain_tolerance * scale));
    CHECK(worth.most_gain >= worth.gain - gain_tolerance * scale);
    CHECK(gain_of(worth, 0.99 * worth.until) < worth.most_gain);
    const double beyond = worth.end - worth.now - worth.until;
    for (const double share : {0.5, 1.0})
        CHECK(gain_of(worth, worth.until + share * beyond) <=
              worth.most_gain + gain_tolerance * scale);
}

/// The next unit, from the side of the change and with the bend taken out.
void Anew::check_slope(const Worth& worth) {
    const double usual = std::max(1e-3, worth.now), little = slope_step * usual;
    if (little >= std::abs(worth.until)) return;
    const double half = gain_of(worth, 0.5 * way_of(worth.lever) * little);
    const double all = gain_of(worth, way_of(worth.lever) * little);
    const double off =
        std::abs(4.0 * half - all - worth.per_unit * little) / slope_step / rate.pieces_an_hour;
    CHECK(std::isfinite(off));
    ++slopes;
    if (!(off <= slope_tolerance))
        ++bent;
    else
        worst_slope = std::max(worst_slope, off);
}

/// Those that are the slowest from there on.
void Anew::check_next(const Worth& worth) {
    if (worth.next.empty()) return;
    ++broke_even;
    const RatePlan then = changed(plan, worth.lever, worth.place, worth.until);
    for (const std::size_t place : worth.next)
        CHECK_THAT(station_seconds(then.stations[place], then.index) + then.index,
                   WithinAbs(cycle_time(then), 2 * tie_slack));
}

/// Not even the whole way to its end is worth anything, if there is any.
void Anew::check_none(const Worth& worth) {
    CHECK(worth.per_unit == 0.0);
    CHECK(worth.gain == 0.0);
    CHECK(worth.until == 0.0);
    CHECK(worth.most_gain == 0.0);
    const double way = worth.end - worth.now;
    if (worth.verdict == WorthVerdict::at_its_end) {
        CHECK(way * way_of(worth.lever) <= 0.0);
        CHECK(gain_of(worth, 1e-3 * way_of(worth.lever) * worth.now) > 0.0); // if it could
        return;
    }
    // Others that tie may hold it by less than ties are told apart.
    if (way * way_of(worth.lever) > 0.0)
        CHECK(gain_of(worth, way) <= tie_slack * rate.pieces_an_hour / rate.cycle);
    if (worth.verdict != WorthVerdict::another_slower) return;
    REQUIRE_FALSE(worth.held_by.empty());
    for (const std::size_t place : worth.held_by) {
        CHECK(rate.stations[place].slowest);
        CHECK(place != worth.place);
    }
}

} // namespace

TEST_CASE("Worth agrees with working plans out anew", "[rate_worth]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    Anew anew;
    int levers = 0;
    for (int i = 0; i < cases; ++i) {
        anew.plan = random_plan(random);
        anew.rate = rate_of(anew.plan);
        if (anew.rate.fault) continue;
        for (const Worth& worth : rate_worth(anew.plan)) {
            CAPTURE(i, static_cast<int>(worth.lever), worth.place, worth.until, worth.step);
            ++levers;
            ++anew.verdicts[worth.verdict];
            if (worth.verdict != WorthVerdict::gains) {
                anew.check_none(worth);
                continue;
            }
            anew.check_gain(worth);
            anew.check_slope(worth);
            anew.check_next(worth);
        }
    }
    using V = WorthVerdict;
    std::cout << "worth: " << levers << " levers, " << anew.verdicts[V::gains] << " gain, "
              << anew.verdicts[V::another_slower] << " held by another station, "
              << anew.verdicts[V::at_its_end] << " at their end, " << anew.verdicts[V::no_effect]
              << " without effect, " << anew.broke_even
              << " until another is the slowest; " << anew.slopes << " derivatives off by "
              << anew.worst_slope << " at most, but for " << anew.bent << " where forms meet\n";
    for (const auto& [verdict, count] : anew.verdicts) CHECK(count >= cases / 50);
    CHECK(anew.verdicts.size() == 4);
    CHECK(anew.broke_even >= cases / 20);
    // Of so many levers that gain, a step of 1e-4 meets a joint for one or two.
    CHECK(anew.bent <= 10);
}
