#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <random>

#include "core/rate_chart.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;

TEST_CASE("A chart by hand", "[rate_chart]") {
    const RateChart chart = rate_chart(rate_of(sample_plan()));
    CHECK(chart.cycle == 6.0);
    CHECK(chart.index == 2.0);
    REQUIRE(chart.rows.size() == 6);
    const ChartRow& load = chart.rows[0];
    CHECK(load.kind == StationKind::load);
    REQUIRE(load.bars.size() == 3);
    CHECK(load.bars[0].kind == StepKind::index);
    CHECK(load.bars[0].end == 2.0);
    CHECK(load.bars[1].kind == StepKind::load);
    CHECK(load.bars[1].end == 5.0);
    CHECK(load.bars[2].kind == StepKind::wait);
    CHECK(load.bars[2].end == 6.0);
    CHECK(chart.rows[2].slowest);
    CHECK(chart.rows[2].bars.size() == 2); // no wait
    CHECK(chart.rows[3].bars.size() == 2); // nothing but the index and the wait
    CHECK(chart.rows[1].bars.size() == 8);
    CHECK(rate_chart(rate_of(RatePlan{})).rows.empty());
}

TEST_CASE("A flood within the index lies beside it", "[rate_chart]") {
    RatePlan plan = sample_plan();
    plan.stations[1].head.floods_while_indexing = true;
    const RateChart chart = rate_chart(rate_of(plan));
    const auto& bars = chart.rows[1].bars;
    REQUIRE(bars.size() == 8);
    CHECK(bars[0].kind == StepKind::index);
    CHECK(bars[1].kind == StepKind::drop);
    CHECK(bars[1].start == 0.0);
    CHECK(bars[2].kind == StepKind::flood);
    CHECK(bars[2].over_index);
    CHECK(bars[2].stroke == 1);
    CHECK(bars[3].kind == StepKind::lower);
    CHECK(bars[3].start == 2.0);
    CHECK_FALSE(bars[3].over_index);
}

TEST_CASE("Every row covers the cycle without a gap", "[rate_chart]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    int outlasting = 0;
    for (int i = 0; i < 2'000; ++i) {
        CAPTURE(i);
        const RatePlan plan = random_plan(random);
        const Rate rate = rate_of(plan);
        if (rate.fault) continue;
        const RateChart chart = rate_chart(rate);
        REQUIRE(chart.rows.size() == plan.stations.size());
        for (const ChartRow& row : chart.rows) {
            double covered = 0.0, own = 0.0;
            for (const ChartBar& bar : row.bars) {
                CHECK(bar.end > bar.start);
                CHECK((bar.start <= covered + 1e-9));                   // no gap
                CHECK((bar.over_index || bar.start >= covered - 1e-9)); // no overlap but there
                if (bar.over_index) {
                    CHECK(bar.start >= own - 1e-9);
                    own = bar.end;
                    outlasting += bar.end > chart.index ? 1 : 0;
                }
                covered = std::max(covered, bar.end);
            }
            CHECK_THAT(covered, WithinAbs(chart.cycle, 1e-9));
        }
    }
    CHECK(outlasting >= 20);
}
