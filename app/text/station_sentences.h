// Placing colours on stations, in words: costs, wishes, facts of the press, reasons.
#pragma once

#include <string>
#include <vector>

#include "app/text/words.h"
#include "core/job_placement.h"
#include "core/placement_study.h"

namespace carriageway {

/// "no station passed idle, 1 screen moved, no large wet areas side by side".
std::string cost_text(Language language, const PlacementCost& cost);

/// "White prints before Navy". Stations are named by the press's numbers.
std::string wish_text(Language language, const Job& job, const JobPlacement& asked,
                      const PlacementWish& wish);

/// "with 2 more stations".
std::string need_text(Language language, const PressNeed& need);

/// What a wish or a fact of the press costs the best placement.
std::string reason_text(Language language, const Job& job, const JobPlacement& asked,
                        const PlacementReason& reason);

/// What a station does in a placement: the colour's name, the flash, cooling or nothing.
std::string role_text(Language language, const Job& job, const JobPlacement& asked,
                      const Placement& placement, std::size_t place);

/// "White 2 · flash 3 · cool 4 · Navy 5": the stations of a placement that are used, in the way of
/// a garment.
std::string placement_text(Language language, const Job& job, const JobPlacement& asked,
                           const Placement& placement);

} // namespace carriageway
