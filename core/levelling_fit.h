// The fit of one group of heads and platens that were read together. Serves levelling.h.
#pragma once

#include <cstddef>
#include <vector>

#include "core/levelling.h"

namespace carriageway {

/// A reading with its head and platen as indices from 0.
struct LevelRow {
    std::size_t head = 0;
    std::size_t platen = 0;
    double x = 0.0;
    double y = 0.0;
    double height = 0.0;
};

struct LevelTask {
    std::size_t heads = 0;
    std::size_t platens = 0;
    std::vector<LevelRow> rows;
    bool planes = true; ///< false: offsets alone
};

struct LevelFit {
    /// False: the rows leave something open beside what all heads share with all platens. The
    /// rest is then not filled.
    bool solved = false;
    std::vector<Plane> planes; ///< of the heads, then of the platens
    /// Of each plane, as in LevelledPart; all 0 without freedom.
    std::vector<std::array<double, 6>> covariances;
    std::vector<double> residuals;
    std::vector<double> scores; ///< residuals in standard deviations, 0 where nothing checks them
    std::vector<bool> kept;     ///< false: a stray
    int freedom = 0;
    double deviation = 0.0;
    int rounds = 0;
    bool settled = true;
};

/// Fits a task whose heads and platens all have rows and hang together.
LevelFit fit_levels(const LevelTask& task, const LevelSettings& settings);

} // namespace carriageway
