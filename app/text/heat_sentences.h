// Sentences about the heat of a run. Used by the panel and by the command line alike.
#pragma once

#include <string>

#include "app/text/words.h"
#include "core/job_heat.h"

namespace carriageway {

/// "45 °C": a temperature in °C to a whole degree.
std::string temperature_text(Language language, double celsius);

/// Where platens become steady, from which turn, and how hot they are behind the flash.
std::string steady_text(Language language, const HeatOutlook& outlook);

/// What a platen's temperature does to garments and inks; empty for a warning that is of ink alone.
std::string heat_warning_text(Language language, const HeatWarning& warning);

} // namespace carriageway
