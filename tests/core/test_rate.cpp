#include <algorithm>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>
#include <deque>
#include <limits>
#include <random>

#include "core/rate.h"
#include "tests/core/allocation_count.h"
#include "tests/core/rate_samples.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using Places = std::vector<std::size_t>;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

/// A table turned index by index: pieces are laid on at the first station that loads and taken off
/// at the first that unloads (or at the same one, before the next is laid on).
struct Turned {
    double indexes = 0.0;       ///< until the last piece is off
    double first_indexes = 0.0; ///< until the first is off
};

Turned turn_table(const RatePlan& plan, int pieces) {
    const auto place_of = [&](StationKind kind) {
        std::size_t place = 0;
        while (place < plan.stations.size() && plan.stations[place].kind != kind) ++place;
        return place % plan.stations.size(); // none: at the first station
    };
    const std::size_t load = place_of(StationKind::load);
    std::size_t unload = place_of(StationKind::unload);
    if (plan.stations[unload].kind != StationKind::unload) unload = load;
    std::deque<int> platens(plan.stations.size(), 0); // pieces on the platen at each station
    int laid = 0, off = 0;
    Turned turned;
    while (off < pieces) {
        platens.push_front(platens.back());
        platens.pop_back();
        turned.indexes += 1.0;
        if (platens[unload] > 0 && off == 0) turned.first_indexes = turned.indexes;
        off += platens[unload];
        platens[unload] = 0;
        if (laid < pieces) {
            platens[load] = std::min(plan.pieces_an_index, pieces - laid);
            laid += platens[load];
        }
    }
    return turned;
}

/// The fault of the sample plan with a change.
template <class Change>
RateFault fault_of(const Change& change) {
    RatePlan plan = sample_plan();
    change(plan);
    const Rate rate = rate_of(plan);
    REQUIRE(rate.fault);
    CHECK(rate.cycle == 0.0);
    CHECK(rate.stations.empty());
    CHECK_FALSE(run_time(rate, 10.0));
    return *rate.fault;
}

} // namespace

TEST_CASE("The slowest station sets the cycle", "[rate]") {
    const Rate rate = rate_of(sample_plan());
    REQUIRE_FALSE(rate.fault);
    // 2 s index and 4 s flash.
    CHECK(rate.cycle == 6.0);
    CHECK(rate.longest == 4.0);
    CHECK_THAT(rate.pieces_an_hour, WithinRel(600.0, 1e-14));
    CHECK_THAT(rate.dozens_an_hour, WithinRel(50.0, 1e-14));
    CHECK(rate.slowest == Places{2});
    REQUIRE(rate.stations.size() == 6);
    CHECK(rate.stations[2].slowest);
    CHECK(rate.stations[2].idle == 0.0);
    CHECK(rate.stations[0].idle == 1.0);
    CHECK(rate.stations[3].idle == 4.0);
    CHECK(rate.stations[4].station == 5);
    CHECK_THAT(rate.stations[1].seconds, WithinAbs(2.703452, 5e-7));
    CHECK_THAT(rate.stations[1].idle, WithinAbs(4.0 - 2.703452, 5e-7));
    REQUIRE(rate.stations[2].steps.size() == 1);
    CHECK(rate.stations[2].steps[0] == RateStep{StepKind::flash, 2.0, 4.0, 0});
    CHECK(rate.stations[3].steps.empty());
    CHECK(rate.stations[1].steps.size() == 6);
}

TEST_CASE("Stations that tie are all named", "[rate]") {
    RatePlan plan = sample_plan();
    plan.stations[2].seconds = 1.0;
    plan.stations[0].seconds = 2.0;
    CHECK(rate_of(plan).slowest == Places{1, 4});
    // The same time as a sum and as typed differ by rounding.
    plan.stations[0].seconds =
        0.25 + 0.2 + 514.0 / 700.0 + 700.0 / 8000.0 + 0.2 + 514.0 / 600.0 + 600.0 / 8000.0 + 0.3;
    CHECK(rate_of(plan).slowest == Places{0, 1, 4});
    // Where nothing takes any time, nothing is the slowest.
    plan.stations = {{1, StationKind::load, 0.0, 0.0, {}}, {2, StationKind::idle, 0.0, 0.0, {}}};
    CHECK(rate_of(plan).slowest.empty());
    CHECK(rate_of(plan).cycle == 2.0);
}

TEST_CASE("Two pieces an index, and a flood within the index", "[rate]") {
    RatePlan plan = sample_plan();
    plan.pieces_an_index = 2;
    CHECK_THAT(rate_of(plan).pieces_an_hour, WithinRel(1200.0, 1e-14));
    // With a flash of 1 s the heads are slowest; flooding within the index saves a drop and a
    // flood.
    plan = sample_plan();
    plan.stations[2].seconds = plan.stations[0].seconds = plan.stations[5].seconds = 1.0;
    const double before = rate_of(plan).cycle;
    for (StationWork& work : plan.stations) work.head.floods_while_indexing = true;
    CHECK_THAT(before - rate_of(plan).cycle,
               WithinAbs(0.2 + 514.0 / 700.0 + 700.0 / 8000.0, 1e-12));
}

TEST_CASE("The cycle of random plans is index and longest station", "[rate]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937_64 random(Catch::getSeed());
    int ties = 0;
    for (int i = 0; i < 2'000; ++i) {
        CAPTURE(i);
        const RatePlan plan = random_plan(random);
        const Rate rate = rate_of(plan);
        if (rate.fault) {
            CHECK(rate.cycle == 0.0);
            continue;
        }
        CHECK(rate.cycle == cycle_time(plan));
        bool reached = false;
        for (std::size_t k = 0; k < plan.stations.size(); ++k) {
            const StationPace& station = rate.stations[k];
            CHECK(station.seconds <= rate.longest);
            CHECK(station.seconds + station.idle <= rate.longest + 1e-12);
            CHECK(station.seconds + station.idle >= rate.longest - 1e-12);
            reached = reached || plan.index + station.seconds == rate.cycle;
            for (const RateStep& step : station.steps) CHECK(step.end() <= rate.cycle + 1e-9);
        }
        CHECK(reached);
        CHECK_THAT(rate.pieces_an_hour * rate.cycle,
                   WithinRel(3600.0 * plan.pieces_an_index, 1e-14));
        CHECK_THAT(rate.dozens_an_hour * 12.0, WithinRel(rate.pieces_an_hour, 1e-14));
        ties += rate.slowest.size() > 1 ? 1 : 0;
    }
    CHECK(ties >= 20);
}

TEST_CASE("A run fills and empties the table", "[rate]") {
    const RatePlan plan = sample_plan();
    const Rate rate = rate_of(plan);
    CHECK(rate.under_way == 5);
    // 500 pieces at 6 s: 50 min; with five stations' way 30 s more.
    const auto run = run_time(rate, 500.0);
    REQUIRE(run);
    CHECK_THAT(run->pieces_only, WithinRel(3000.0, 1e-14));
    CHECK_THAT(run->with_filling, WithinRel(3030.0, 1e-14));
    CHECK_THAT(run->first_piece, WithinRel(36.0, 1e-14));
    // Half a piece more is a whole index more.
    CHECK(run_time(rate, 500.5)->indexes == 501.0);
    for (const double bad : {0.0, -1.0, nan_value, infinite}) CHECK_FALSE(run_time(rate, bad));
    CHECK_FALSE(run_time(Rate{}, 10.0));
}

TEST_CASE("A run agrees with a table turned index by index", "[rate]") {
    using K = StationKind;
    for (const auto& kinds :
         {std::vector{K::load, K::print, K::flash, K::unload},
          std::vector{K::unload, K::load, K::print},
          std::vector{K::print, K::load, K::idle, K::print, K::cool},
          std::vector{K::load, K::unload},
          std::vector{K::print, K::print, K::unload, K::idle, K::load, K::print}})
        for (const int pieces : {1, 2, 7, 24})
            for (const int together : {1, 2, 3}) {
                CAPTURE(kinds.size(), pieces, together);
                RatePlan plan;
                plan.pieces_an_index = together;
                for (const K kind : kinds)
                    plan.stations.push_back({0, kind, 1.5, 0.0, sample_head()});
                const Rate rate = rate_of(plan);
                const auto run = run_time(rate, pieces);
                REQUIRE(run);
                const Turned turned = turn_table(plan, pieces);
                CHECK_THAT(run->with_filling, WithinRel(turned.indexes * rate.cycle, 1e-13));
                CHECK_THAT(run->first_piece, WithinRel(turned.first_indexes * rate.cycle, 1e-13));
            }
}

TEST_CASE("The way from loading to unloading", "[rate]") {
    RatePlan plan = sample_plan();
    CHECK(indexes_under_way(plan) == 5);
    plan.stations[5].kind = StationKind::idle; // taken off where it is laid on
    CHECK(indexes_under_way(plan) == 6);
    plan.stations[0].kind = StationKind::unload;
    CHECK(indexes_under_way(plan) == 6);
    plan.stations[5].kind = StationKind::load; // round the end of the list
    CHECK(indexes_under_way(plan) == 1);
}

TEST_CASE("A plan that can't be is refused by the number that can't be", "[rate]") {
    using K = RateFaultKind;
    CHECK(fault_of([](RatePlan& p) { p.stations.clear(); }).kind == K::no_station);
    CHECK(fault_of([](RatePlan& p) { p.stations.resize(65); }).kind == K::too_many_stations);
    for (const int bad : {-1, 0, most_pieces_an_index + 1})
        CHECK(fault_of([&](RatePlan& p) { p.pieces_an_index = bad; }).kind == K::pieces_an_index);
    for (const double bad : {-1.0, nan_value, infinite}) {
        CHECK(fault_of([&](RatePlan& p) { p.index = bad; }).kind == K::index);
        CHECK(fault_of([&](RatePlan& p) { p.stations[2].seconds = bad; }).kind == K::seconds);
        CHECK(fault_of([&](RatePlan& p) { p.stations[2].seconds = bad; }).place == 2);
    }
    CHECK(fault_of([](RatePlan& p) {
              p.index = 0.0;
              p.stations = {{1, StationKind::idle, 0.0, 0.0, {}}};
          }).kind == K::no_time);
    CHECK(fault_of([](RatePlan& p) { p.index = p.stations[0].seconds = 1e308; }).kind ==
          K::no_time);
}

TEST_CASE("A head that can't be is refused by the number that can't be", "[rate]") {
    using K = RateFaultKind;
    struct Row {
        double HeadPace::*number;
        K kind;
    };
    constexpr Row rows[] = {
        {&HeadPace::distance, K::distance}, {&HeadPace::print_speed, K::speed},
        {&HeadPace::flood_speed, K::speed}, {&HeadPace::acceleration, K::acceleration},
        {&HeadPace::jerk, K::jerk},         {&HeadPace::drop, K::step_time},
        {&HeadPace::dwell, K::step_time},   {&HeadPace::lower, K::step_time},
        {&HeadPace::lift, K::step_time}};
    for (const double bad : {-1.0, nan_value, infinite})
        for (const Row& row : rows) {
            const RateFault fault =
                fault_of([&](RatePlan& p) { p.stations[4].head.*row.number = bad; });
            CHECK(fault.kind == row.kind);
            CHECK(fault.place == 4);
            CHECK((fault.value == bad || (std::isnan(bad) && std::isnan(fault.value))));
        }
    CHECK(fault_of([](RatePlan& p) { p.stations[1].head.print_speed = 0.0; }).kind == K::speed);
    for (const int bad : {-1, most_strokes + 1}) {
        CHECK(fault_of([&](RatePlan& p) { p.stations[1].head.prints = bad; }).kind == K::strokes);
        CHECK(fault_of([&](RatePlan& p) { p.stations[1].head.floods = bad; }).value == bad);
    }
    CHECK(fault_of([](RatePlan& p) {
              p.stations[1].head.distance = 1e300;
              p.stations[1].head.print_speed = 1e-300;
          }).kind == K::stroke_time);
    // A carriage that stands is no fault.
    RatePlan standing = sample_plan();
    standing.stations[1].head.distance = 0.0;
    CHECK_FALSE(rate_of(standing).fault);
    CHECK_THAT(rate_of(standing).stations[1].seconds, WithinAbs(0.25 + 0.2 + 0.2 + 0.3, 1e-12));
}

TEST_CASE("A warm rate takes no memory", "[rate]") {
    const RatePlan plan = sample_plan();
    Rate rate;
    work_out_rate(plan, rate);
    const std::size_t before = allocation_count();
    for (int i = 0; i < 10; ++i) work_out_rate(plan, rate);
    CHECK(allocation_count() == before);
    CHECK(rate.cycle == 6.0);
}
