#include "core/job_heat.h"

namespace carriageway {

int flash_stations(const Job& job) {
    int count = 0;
    for (std::size_t i = 0; i < job.uses.size(); ++i)
        if (job.uses[i] == StationUse::flash && !head_on(job, static_cast<int>(i) + 1)) ++count;
    return count;
}

PlatenHeat platen_heat(const Job& job) {
    PlatenHeat heat;
    heat.ambient = job.press.warming.ambient;
    heat.flash_rise = job.press.warming.per_second;
    heat.flash_seconds = job.run.flash_dwell * flash_stations(job);
    heat.time_constant = job.press.warming.cooling;
    heat.cycle_time = job.run.cycle;
    heat.stations = job.press.stations;
    return heat;
}

HeatOutlook heat_outlook(const Job& job) {
    HeatOutlook outlook;
    outlook.flashes = flash_stations(job);
    outlook.heat = platen_heat(job);
    outlook.steady = steady_temperature(outlook.heat);
    outlook.hottest = outlook.steady + outlook.heat.flash_rise * outlook.heat.flash_seconds;
    outlook.steady_turn = steady_from(outlook.heat, outlook.heat.ambient, steady_band);
    if (outlook.flashes > 0)
        outlook.dwell =
            flash_dwell({job.run.flash_dwell, outlook.heat.ambient, gel_wanted}, outlook.steady);
    outlook.warnings = platen_warnings(outlook.hottest);
    return outlook;
}

} // namespace carriageway
