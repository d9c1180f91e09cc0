#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <limits>
#include <random>
#include <set>

#include "core/rate_range.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using Places = std::vector<std::size_t>;

namespace {

/// What all stations at one end or the other of their spreads come to, with the index at `turning`.
struct Corners {
    double slowest = 0.0; ///< cycle
    double fastest = std::numeric_limits<double>::infinity();
    std::set<std::size_t> longest; ///< places of those that are the longest in some corner
};

Corners corners_at(const RatePlan& plan, double turning, const std::vector<Spread>& spreads) {
    Corners found;
    const std::size_t count = plan.stations.size();
    for (unsigned corner = 0; corner < (1U << count); ++corner) {
        std::vector<double> seconds;
        for (std::size_t k = 0; k < count; ++k) {
            const double off = ((corner >> k) & 1U) != 0 ? spreads[k].value : -spreads[k].value;
            seconds.push_back(std::max(0.0, station_seconds(plan.stations[k], turning) + off));
        }
        const double last = *std::max_element(seconds.begin(), seconds.end());
        found.slowest = std::max(found.slowest, turning + last);
        found.fastest = std::min(found.fastest, turning + last);
        for (std::size_t k = 0; k < count; ++k)
            if (seconds[k] > 0.0 && seconds[k] > last - tie_slack) found.longest.insert(k);
    }
    return found;
}

} // namespace

TEST_CASE("Slowest and fastest cycle by hand", "[rate_range]") {
    // Flash 4 s ± 0.3 is the slowest, loading 3 s ± 0.9 may be; index 2 s ± 0.4.
    const RatePlan plan = sample_plan();
    const std::vector<Spread> spreads{{0.9, false}, {}, {0.3, false}};
    const auto range = rate_range(plan, {0.4, false}, spreads);
    REQUIRE(range);
    CHECK_THAT(range->slowest.cycle, WithinAbs(2.4 + 4.3, 1e-12));
    CHECK_THAT(range->fastest.cycle, WithinAbs(1.6 + 3.7, 1e-12));
    CHECK(range->planned.cycle == 6.0);
    // √(0.4² + 0.3²) = 0.5; loading comes to 3 + √(0.4² + 0.9²) = 3.98 at most.
    CHECK_THAT(range->likely_slowest.cycle, WithinAbs(6.5, 1e-12));
    CHECK_THAT(range->likely_fastest.cycle, WithinAbs(5.5, 1e-12));
    CHECK_THAT(range->slowest.pieces_an_hour, WithinRel(3600.0 / 6.7, 1e-13));
    CHECK_THAT(range->fastest.dozens_an_hour, WithinRel(300.0 / 5.3, 1e-13));
    CHECK(range->may_be_slowest == Places{0, 2});
    // A measured spread counts with three standard deviations.
    const std::vector<Spread> measured{{0.3, true}, {}, {0.1, true}};
    CHECK_THAT(rate_range(plan, {0.4, false}, measured)->slowest.cycle, WithinAbs(6.7, 1e-12));
    // Nothing uncertain: all the same.
    const auto exact = rate_range(plan, {}, {});
    REQUIRE(exact);
    CHECK(exact->fastest.cycle == 6.0);
    CHECK(exact->slowest.cycle == 6.0);
    CHECK(exact->may_be_slowest == Places{2});
}

TEST_CASE("A flood that outlasts the index takes up what the index is off", "[rate_range]") {
    RatePlan plan = sample_plan();
    plan.stations = {plan.stations[1]};
    plan.stations[0].head.floods_while_indexing = true;
    plan.index = 0.5; // the flood takes 1.02 s
    const auto range = rate_range(plan, {0.2, false}, {});
    REQUIRE(range);
    CHECK_THAT(range->slowest.cycle, WithinRel(range->planned.cycle, 1e-14));
    CHECK_THAT(range->fastest.cycle, WithinRel(range->planned.cycle, 1e-14));
    // An index that may outlast it again: 1.4 s against 1.0218.
    const auto wider = rate_range(plan, {0.9, false}, {});
    CHECK_THAT(wider->slowest.cycle - wider->planned.cycle,
               WithinAbs(1.4 - (0.2 + 514.0 / 700.0 + 700.0 / 8000.0), 1e-12));
}

TEST_CASE("The worst cases are those of all corners", "[rate_range]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    std::uniform_real_distribution<double> wide(0.0, 0.5);
    int compared = 0, several = 0;
    for (int i = 0; i < 400; ++i) {
        CAPTURE(i);
        RatePlan plan = random_plan(random);
        if (plan.stations.size() > 6) plan.stations.resize(6);
        if (rate_fault(plan)) continue;
        const double index = wide(random);
        std::vector<Spread> spreads;
        for (std::size_t k = 0; k < plan.stations.size(); ++k)
            spreads.push_back({wide(random), false});
        const auto range = rate_range(plan, {index, false}, spreads);
        if (!range) continue;
        const Corners late = corners_at(plan, plan.index + index, spreads);
        const Corners early = corners_at(plan, std::max(0.0, plan.index - index), spreads);
        CHECK_THAT(range->slowest.cycle, WithinRel(std::max(late.slowest, early.slowest), 1e-13));
        CHECK_THAT(range->fastest.cycle, WithinRel(std::min(late.fastest, early.fastest), 1e-13));
        const auto longest = corners_at(plan, plan.index, spreads).longest;
        CHECK(range->may_be_slowest == Places(longest.begin(), longest.end()));
        CHECK(range->fastest.cycle <= range->likely_fastest.cycle + 1e-12);
        CHECK(range->likely_fastest.cycle <= range->planned.cycle + 1e-12);
        CHECK(range->planned.cycle <= range->likely_slowest.cycle + 1e-12);
        CHECK(range->likely_slowest.cycle <= range->slowest.cycle + 1e-12);
        ++compared;
        several += longest.size() > 1 ? 1 : 0;
    }
    CHECK(compared >= 350);
    CHECK(several >= 40);
}

TEST_CASE("Spreads that can't be", "[rate_range]") {
    const RatePlan plan = sample_plan();
    for (const double bad : {-0.1, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
        CHECK_FALSE(rate_range(plan, {bad, false}, {}));
        const std::vector<Spread> spreads{{0.1, false}, {bad, true}};
        CHECK_FALSE(rate_range(plan, {}, spreads));
    }
    CHECK_FALSE(rate_range(RatePlan{}, {}, {}));
    // So wide that a cycle might take no time.
    const std::vector<Spread> wide(6, Spread{9.0, false});
    CHECK_FALSE(rate_range(plan, {3.0, false}, wide));
    CHECK(rate_range(plan, {1.0, false}, wide));
}
