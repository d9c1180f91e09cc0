#include "core/rate_chart.h"

#include <algorithm>

namespace carriageway {

namespace {

ChartRow row_of(const Rate& rate, const StationPace& pace) {
    ChartRow row{pace.station, pace.kind, pace.slowest, {}};
    if (rate.index > 0.0) row.bars.push_back({StepKind::index, 0.0, rate.index, 0, false});
    for (const RateStep& step : pace.steps)
        row.bars.push_back({step.kind, step.start, std::min(step.end(), rate.cycle), step.stroke,
                            step.start < rate.index});
    // From the table's standing still at the earliest, also where a flood was done before.
    const double done = rate.index + pace.seconds;
    if (rate.cycle - done >= tie_slack)
        row.bars.push_back({StepKind::wait, done, rate.cycle, 0, false});
    return row;
}

} // namespace

RateChart rate_chart(const Rate& rate) {
    RateChart chart;
    if (rate.fault) return chart;
    chart.cycle = rate.cycle;
    chart.index = rate.index;
    chart.rows.reserve(rate.stations.size());
    for (const StationPace& pace : rate.stations) chart.rows.push_back(row_of(rate, pace));
    return chart;
}

} // namespace carriageway
