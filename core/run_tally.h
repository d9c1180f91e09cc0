// What the counts and stoppages of a run come to (run_record.h).
#pragma once

#include <cstddef>
#include <optional>

#include "core/run_record.h"

namespace carriageway {

/// Counts closer than this, ms, tell no rate: a person types them to the minute at best. Ours.
inline constexpr std::int64_t least_between_counts = 60'000;

/// Pieces an hour from the count before to this one, stoppages included: pieces between them over
/// the time between them. Nothing for the first count, for an index that isn't there, where a time
/// isn't noted or too near the one before, and where fewer pieces are counted than before.
inline std::optional<double> pieces_an_hour(const RunRecord& record, std::size_t count) {
    if (count == 0 || count >= record.counts.size()) return std::nullopt;
    const PieceCount& before = record.counts[count - 1];
    const PieceCount& here = record.counts[count];
    if (before.stamp.time <= 0 || here.stamp.time <= before.stamp.time) return std::nullopt;
    const std::int64_t between = here.stamp.time - before.stamp.time;
    const double pieces = here.printed - before.printed;
    if (between < least_between_counts || !(pieces >= 0.0)) return std::nullopt;
    return pieces * 3'600'000.0 / static_cast<double>(between);
}

/// Minutes that the press stood still altogether.
inline double minutes_stood(const RunRecord& record) {
    double minutes = 0.0;
    for (const Stoppage& stoppage : record.stoppages) minutes += stoppage.minutes;
    return minutes;
}

} // namespace carriageway
