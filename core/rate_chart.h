// One cycle as a chart of stations against time, for whoever draws it.
//
// Every row covers the whole cycle: the index, then what the station does, then its wait for the
// slowest one. Only a flood done while the table turns lies beside the index bar, and may outlast
// it. Times s from the table's start to turn.
#pragma once

#include "core/rate.h"

namespace carriageway {

struct ChartBar {
    StepKind kind = StepKind::wait;
    double start = 0.0;
    double end = 0.0;
    int stroke = 0;           ///< as in RateStep
    bool over_index = false;  ///< starts while the table turns: to be drawn beside the index bar
};

struct ChartRow {
    int station = 0;
    StationKind kind = StationKind::idle;
    bool slowest = false;
    std::vector<ChartBar> bars; ///< the index first, then by their start; none of no length
};

struct RateChart {
    double cycle = 0.0; ///< where the time axis ends
    double index = 0.0; ///< where the table stands
    std::vector<ChartRow> rows; ///< in the plan's order
};

/// The chart of a rate. One with a fault: no rows, and a cycle of 0.
RateChart rate_chart(const Rate& rate);

} // namespace carriageway
