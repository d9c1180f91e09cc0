#include "core/rate_range.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

constexpr double pieces_a_dozen = 12.0;

bool usable(const Spread& spread) {
    return spread.value >= 0.0 && std::isfinite(worst_deviation(spread));
}

RateFigures figures_of(double cycle, int pieces_an_index) {
    const double pieces = pieces_an_hour(cycle, pieces_an_index);
    return {cycle, pieces, pieces / pieces_a_dozen};
}

/// The index, and how far it may be off either way.
struct IndexRange {
    double planned = 0.0;
    double longest = 0.0;
    double shortest = 0.0;
};

/// When a station is done, counted from the start of the index.
struct Done {
    double earliest = 0.0;
    double likely_early = 0.0;
    double likely_late = 0.0;
    double latest = 0.0;
    double earliest_seconds = 0.0; ///< from the table's standing still, at the planned index
    double latest_seconds = 0.0;
};

Done done_of(const StationWork& work, const IndexRange& index, double deviation) {
    const auto done_at = [&](double turning) { return turning + station_seconds(work, turning); };
    // A head whose flood outlasts the index doesn't mind how long the index takes.
    const double planned = done_at(index.planned);
    const double late = done_at(index.longest), early = done_at(index.shortest);
    const double own = station_seconds(work, index.planned);
    const double less = std::min(deviation, own); // no time is negative
    Done done;
    done.latest = late + deviation;
    done.likely_late = planned + std::hypot(late - planned, deviation);
    done.likely_early = planned - std::hypot(planned - early, less);
    done.earliest = early - deviation;
    done.earliest_seconds = own - less;
    done.latest_seconds = own + deviation;
    return done;
}

} // namespace

std::optional<RateRange> rate_range(const RatePlan& plan, const Spread& index,
                                    std::span<const Spread> stations) {
    if (rate_fault(plan) || !usable(index)) return std::nullopt;
    for (const Spread& spread : stations)
        if (!usable(spread)) return std::nullopt;
    const double turning = worst_deviation(index);
    const IndexRange range{plan.index, plan.index + turning, std::max(0.0, plan.index - turning)};
    std::vector<Done> all;
    // A station can't be done before the table stands.
    Done cycle{range.shortest, range.shortest, range.longest, range.longest};
    double surely = 0.0; // some station takes at least this long
    for (std::size_t i = 0; i < plan.stations.size(); ++i) {
        const double deviation = i < stations.size() ? worst_deviation(stations[i]) : 0.0;
        const Done done = done_of(plan.stations[i], range, deviation);
        cycle.earliest = std::max(cycle.earliest, done.earliest);
        cycle.likely_early = std::max(cycle.likely_early, done.likely_early);
        cycle.likely_late = std::max(cycle.likely_late, done.likely_late);
        cycle.latest = std::max(cycle.latest, done.latest);
        surely = std::max(surely, done.earliest_seconds);
        all.push_back(done);
    }
    if (!(cycle.earliest > 0.0) || !std::isfinite(cycle.latest)) return std::nullopt;
    RateRange out;
    const auto figures = [&](double time) { return figures_of(time, plan.pieces_an_index); };
    out.fastest = figures(cycle.earliest);
    out.likely_fastest = figures(cycle.likely_early);
    out.planned = figures(cycle_time(plan));
    out.likely_slowest = figures(cycle.likely_late);
    out.slowest = figures(cycle.latest);
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].latest_seconds > 0.0 && all[i].latest_seconds >= surely - tie_slack)
            out.may_be_slowest.push_back(i);
    return out;
}

} // namespace carriageway
