// What the heat of a run does to its platens: the job's own numbers put into the model of heat.h.
#pragma once

#include "core/heat.h"
#include "core/job.h"

namespace carriageway {

/// °C from the steady temperature within which a platen counts as steady. Ours.
inline constexpr double steady_band = 1.0;

/// The temperature that ink is to reach under the flash, °C: about the middle of the gel range. Ours.
inline constexpr double gel_wanted = 100.0;

/// Stations that are flash units and hold no head.
int flash_stations(const Job& job);

/// The job's flash dwell counts once for each flash unit that a platen passes in a turn. A press
/// without a flash unit gives 0 s of flash.
PlatenHeat platen_heat(const Job& job);

/// How a run warms its platens. Temperatures °C.
struct HeatOutlook {
    int flashes = 0;
    PlatenHeat heat;
    double steady = 0.0;  ///< as the platen comes to the flash, once it no longer warms
    double hottest = 0.0; ///< straight behind the flash then; with several, at most this
    std::optional<int> steady_turn; ///< from which it stays within steady_band, from the room's
    std::optional<DwellAdvice> dwell; ///< at the steady temperature, the job's dwell suiting a
                                      ///< platen at the room's; nothing without a flash unit
    std::vector<HeatWarning> warnings; ///< at the hottest
};
HeatOutlook heat_outlook(const Job& job);

} // namespace carriageway
