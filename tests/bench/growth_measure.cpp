// What grows with the job: assessing a press by its heads, placing colours by colours and stations.
#include <algorithm>

#include "core/assess.h"
#include "core/placement_search.h"
#include "tests/bench/bench.h"
#include "tests/core/sample_job.h"
#include "tests/reference/seeded.h"

namespace carriageway::bench {

namespace {

constexpr std::size_t few = 10, many = 200; ///< heads

/// So many heads: those of one likely job again and again, so that each head is as much work.
Job press_of(const Job& base, std::size_t heads) {
    Job job = base;
    job.heads.clear();
    for (std::size_t i = 0; i < heads; ++i) {
        job.heads.push_back(base.heads[i % base.heads.size()]);
        job.heads.back().id = static_cast<HeadId>(i + 1);
        job.heads.back().station = static_cast<int>(i + 1);
    }
    job.press.stations = std::max(base.press.stations, static_cast<int>(heads));
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    return job;
}

/// A design as shops print them: a white below everything, flashed; then colours in up to three
/// layers, some of them free among themselves; some screens still on the press.
PlacementQuestion question(reference::Seeded& random, int colours, int stations) {
    PlacementQuestion asked;
    asked.stations.resize(static_cast<std::size_t>(stations));
    asked.stations.front().kept = StationKept::load;
    asked.stations.back().kept = StationKept::unload;
    asked.flash_units = 2;
    std::vector<int> free;
    for (int i = 2; i < stations; ++i) free.push_back(i);
    for (int i = 1; i <= colours; ++i) {
        PlacementColour colour;
        colour.id = static_cast<std::uint32_t>(i);
        colour.order = i == 1 ? 0 : random.whole(1, 3);
        colour.flash_after = i == 1;
        colour.area = random.chance(0.3) ? 0.5 : 0.1;
        if (random.chance(0.4)) {
            const int pick = random.whole(0, static_cast<int>(free.size()) - 1);
            colour.screen_on = free[static_cast<std::size_t>(pick)];
            free.erase(free.begin() + pick);
        }
        asked.colours.push_back(colour);
    }
    return asked;
}

} // namespace

std::vector<Ratio> press_assess_growth() {
    sample::Random random(seed);
    const Job base = sample::likely_job(random, static_cast<int>(few));
    const Job small = press_of(base, few), large = press_of(base, many);
    Assessment of_small, of_large;
    const Pair pair = in_turn(
        101, [&] { assess(large, of_large); },
        [&] {
            // As often as makes up the same number of heads.
            for (std::size_t i = 0; i < many / few; ++i) assess(small, of_small);
        });
    must(of_large.heads.size() == many && of_small.heads.size() == few, "heads are missing");
    return {{"press_assess_growth", pair.ratio(), 1.2,
             "a head: " + sides("of 200", median(pair.ours) / many, "of 10", median(pair.theirs) / many)}};
}

std::vector<Ratio> placement_growth() {
    constexpr int questions = 60;
    constexpr int small_colours = 5, small_stations = 9, large_colours = 10, large_stations = 18;
    // Twice the colours on twice the stations: a search over all sets of colours would take 32 times
    // as long a colour and station, one that bounds its way stays near 1.
    constexpr double limit = 2.0;
    std::vector<double> of_small, of_large;
    const auto time = [](const PlacementQuestion& asked) {
        const double began = thread_time();
        const PlacementSearch search = place(asked);
        const double took = thread_time() - began;
        must(search.state() == PlacementState::found, "a question has no placement");
        return took;
    };
    for (std::uint64_t number = 0; number < questions; ++number) {
        reference::Seeded random(seed, 9, number);
        const PlacementQuestion small = question(random, small_colours, small_stations);
        const PlacementQuestion large = question(random, large_colours, large_stations);
        // The least of a few: what a search takes depends on its question alone.
        double least_small = 1e9, least_large = 1e9;
        for (int again = 0; again < 3; ++again) {
            least_small = std::min(least_small, time(small));
            least_large = std::min(least_large, time(large));
        }
        of_small.push_back(least_small / (small_colours * small_stations));
        of_large.push_back(least_large / (large_colours * large_stations));
    }
    const double ratio = median(of_large) / median(of_small);
    return {{"placement_growth", ratio, limit,
             "a colour and station: " + sides("10 on 18", median(of_large), "5 on 9", median(of_small)) +
                 "; the slowest " + time_words(percentile(of_large, 1.0) * large_colours * large_stations)}};
}

} // namespace carriageway::bench
