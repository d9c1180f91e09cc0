// Which colour of a job goes on which station: the job's own wishes put into the question of
// placement.h, and a placement put back into the job.
//
// A garment's way begins where it is loaded and goes round in the order of the stations' numbers;
// the question's first station is that one. Without one it begins where it is taken off, and
// without that at station 1. Behind the first station where it is taken off no head can be. What a
// station can hold is the profile's, its use for loading and unloading the job's.
#pragma once

#include <optional>
#include <vector>

#include "core/edit.h"
#include "core/placement.h"
#include "core/placement_wishes.h"

namespace carriageway {

/// A job's question, and where its stations are on the press.
struct JobPlacement {
    PlacementQuestion question;
    std::vector<int> way; ///< the press's number of each station of the question
};

/// Heads are the colours, with their ids. A colour's wet area is what its film prints: the image's
/// area, as a share of the largest image of the job, times the share of it that prints. There are as
/// many flash units as stations that are set to flash; `flashes_stay`: they aren't moved.
JobPlacement job_placement(const Job& job, bool flashes_stay = false);

/// The same question with every colour and flash unit held where it is now: its placement has the
/// cost of today's arrangement.
JobPlacement as_placed_now(const Job& job);

/// Which wishes today's arrangement breaks, of a question from as_placed_now(): each that can't be
/// met beside the pins alone. Where only several together can't, one set of such. Pins aren't among
/// them: everything is where it is. Empty where the arrangement meets all, or where a head stands at a
/// station that none can be at.
std::vector<PlacementWish> wishes_broken(const JobPlacement& now);

/// The press's number for a place of the question, from 1; 0 for a place that it doesn't have.
int station_of(const JobPlacement& placed, int place);

/// The edit that puts heads, flash units and cool stations where a placement of this question has
/// them; stations to load and unload stay. Nothing where all stands so already.
std::optional<Edit> placement_edit(const Job& job, const JobPlacement& placed,
                                   const Placement& placement);

} // namespace carriageway
