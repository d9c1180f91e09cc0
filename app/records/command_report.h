// Parts of what the commands print for a person.
#pragma once

#include <string>

#include "app/records/console.h"
#include "core/assess.h"

namespace carriageway {

/// A table of every head's gap, line load, lengths of print and ink.
std::string contact_table(const Console& console, const Job& job, const Assessment& assessment);

/// Every finding of a job with its reason and remedy, under the head's title; empty when there are
/// none. Starts with an empty line.
std::string findings_text(const Console& console, const Job& job, const Assessment& assessment);

/// "4 of 6 heads fit to run", or that there are no heads.
std::string verdict_text(const Console& console, const Job& job, const Assessment& assessment);

}  // namespace carriageway
