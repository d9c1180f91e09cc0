#include "tests/core/rate_samples.h"

namespace carriageway::tests {

namespace {

double between(std::mt19937_64& random, double lo, double hi) {
    return std::uniform_real_distribution<double>(lo, hi)(random);
}

int whole(std::mt19937_64& random, int lo, int hi) {
    return std::uniform_int_distribution<int>(lo, hi)(random);
}

bool chance(std::mt19937_64& random, double of_one) { return between(random, 0.0, 1.0) < of_one; }

} // namespace

HeadPace sample_head() {
    HeadPace head;
    head.distance = 514.0;
    head.print_speed = 600.0;
    head.flood_speed = 700.0;
    head.acceleration = 8000.0;
    head.drop = 0.2;
    head.lower = 0.25;
    head.lift = 0.3;
    return head;
}

RatePlan sample_plan() {
    using K = StationKind;
    RatePlan plan;
    const HeadPace head = sample_head();
    plan.stations = {{1, K::load, 3.0, 0.0, {}},    {2, K::print, 0.0, 0.0, head},
                     {3, K::flash, 4.0, 0.0, {}},   {4, K::cool, 0.0, 0.0, {}},
                     {5, K::print, 0.0, 0.0, head}, {6, K::unload, 2.5, 0.0, {}}};
    return plan;
}

HeadPace random_head(std::mt19937_64& random) {
    HeadPace head;
    head.distance = chance(random, 0.1) ? 0.0 : between(random, 20.0, 760.0);
    head.print_speed = between(random, 100.0, 1200.0);
    head.flood_speed = between(random, 100.0, 1200.0);
    head.acceleration = between(random, 1000.0, 12000.0);
    head.jerk = chance(random, 0.5) ? 0.0 : between(random, 5e3, 3e5);
    head.drop = between(random, 0.0, 0.4);
    head.dwell = chance(random, 0.5) ? 0.0 : between(random, 0.0, 0.3);
    head.lower = between(random, 0.0, 0.6);
    head.lift = between(random, 0.0, 0.6);
    head.prints = whole(random, chance(random, 0.1) ? 0 : 1, 3);
    head.floods = chance(random, 0.6) ? head.prints : whole(random, 0, 3);
    head.floods_while_indexing = chance(random, 0.4);
    head.shortest = head.distance * between(random, 0.0, 1.1);
    head.fastest = chance(random, 0.5) ? 0.0 : between(random, 500.0, 1500.0);
    return head;
}

RatePlan random_plan(std::mt19937_64& random) {
    constexpr StationKind kinds[] = {StationKind::print,  StationKind::flash, StationKind::load,
                                     StationKind::unload, StationKind::cool,  StationKind::idle};
    RatePlan plan;
    plan.index = between(random, 0.3, 3.0);
    plan.shortest_index = plan.index * between(random, 0.0, 1.05);
    plan.pieces_an_index = chance(random, 0.8) ? 1 : whole(random, 2, 4);
    const int count = whole(random, 2, 9);
    for (int i = 0; i < count; ++i) {
        StationWork work;
        work.station = i + 1;
        work.kind = chance(random, 0.4) ? StationKind::print : kinds[whole(random, 0, 5)];
        if (work.kind == StationKind::print)
            work.head = random_head(random);
        else if (work.kind != StationKind::idle)
            work.seconds = between(random, 0.0, 7.0);
        work.shortest = work.seconds * between(random, 0.0, 1.1);
        // Two heads alike tie now and then.
        if (i > 0 && chance(random, 0.15)) {
            work = plan.stations.front();
            work.station = i + 1;
        }
        plan.stations.push_back(work);
    }
    return plan;
}

} // namespace carriageway::tests
