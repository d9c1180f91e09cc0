// Lists that two people noted, joined: marks of a walk, the record of a run, readings. Serves
// walk_merge.h, which says by which rules.
#pragma once

#include <functional>

#include "core/walk_merge.h"

namespace carriageway {

/// Asked about each conflict in turn: whether theirs is taken.
using AskWhose = std::function<bool(const MergeConflict&)>;

/// All marks of both. `merged` is mine with everything that is planned decided: marks that say "as
/// planned" keep their values beside it.
std::vector<WalkMark> merged_walk(const Job& mine, const Job& theirs, const Job& merged,
                                  const AskWhose& whose);

/// The record of both.
RunRecord merged_record(const Job& mine, const Job& theirs, const AskWhose& whose);

/// Heights of both: equal lists as they are, otherwise each reading once, by head and platen.
std::vector<HeightReading> merged_readings(const std::vector<HeightReading>& mine,
                                           const std::vector<HeightReading>& theirs);

/// Whether all of that is no more than a job keeps, whoever is chosen.
bool fits_one_job(const Job& mine, const Job& theirs);

/// Whether one list of readings begins with all of the other.
bool goes_on(const std::vector<MarkRound>& longer, const std::vector<MarkRound>& shorter);

} // namespace carriageway
