// Two people take two halves of the walk round one press, each on a copy of the same job, and put
// their copies together again.
//
// There is no third copy to tell who changed what. So whatever only one side noted is taken over,
// what both noted alike stays, and where the two are at odds somebody has to choose. Until then,
// and where nobody chooses, mine stays:
//
// - a number of the walk that both noted, ticked on one side and taken back on the other, or set to
//   different values (the real value; of a ticked one without, what its own side plans, or the
//   other's where its own has taken the head off);
// - what is planned. Numbers that can't be mixed freely are chosen whole: both stops of a head, its
//   image, what its colour wants of its place, the press's profile. A number, text or list that one
//   side hasn't noted isn't at odds with one that the other has;
// - a head that only one side has;
// - counts of pieces, and stoppages, that begin at the same noted moment and hold something else.
//
// No mark of either side gets lost: one that says "as planned" keeps its value when it meets
// another plan. Marks and ticks that agree keep the earlier stamp that is noted. Readings of
// heights, counts and stoppages are joined, each once, in the order of their time.
#pragma once

#include <optional>
#include <vector>

#include "core/edit.h"
#include "core/job.h"
#include "core/job_parts.h"

namespace carriageway {

/// Why two jobs can't be put together; see WalkMerge for which head and station.
enum class MergeRefusal {
    none,
    not_a_job,       ///< one that fault_of() doesn't accept
    other_press,     ///< with another number of stations
    no_common_heads, ///< not one id
    other_station,   ///< a head stands elsewhere
    other_colour,    ///< a head has a colour of another name
    station_taken,   ///< only one side has this head; the other's station isn't free for it
    too_much,        ///< the marks or lists of both are more than a job keeps
};

/// What two sides are at odds about.
enum class MergeKind {
    mark,     ///< what was noted of a number on the walk
    number,   ///< as planned
    part,     ///< something else that is planned or noted (job_parts.h)
    head,     ///< only one side has it
    count,    ///< of pieces
    stoppage,
};

/// One thing to choose.
struct MergeConflict {
    MergeKind kind = MergeKind::mark;
    HeadId head = 0;               ///< 0: of the job
    Field field = Field::count;    ///< of a mark or number
    JobPart part = JobPart::count; ///< of a part
    /// Mark: the value it is set to, nothing where it isn't set; number: what is planned; count:
    /// pieces printed; stoppage: its minutes. In the core's unit.
    std::optional<double> mine;
    std::optional<double> theirs;
    bool mine_done = false; ///< mark: ticked; head: it is there
    bool theirs_done = false;
    Stamp mine_stamp; ///< of marks, counts and stoppages
    Stamp theirs_stamp;
    bool operator==(const MergeConflict&) const = default;
};

/// Two jobs put together.
struct WalkMerge {
    MergeRefusal refusal = MergeRefusal::none; ///< unless none, there are no conflicts and no edit
    HeadId head = 0;  ///< at fault, where one head is
    int station = 0;  ///< and where it stands (other_station: in mine)
    Job mine;
    Job theirs;
    /// The job's before the heads' in the order of stations, what is planned before what was noted.
    std::vector<MergeConflict> conflicts;
    /// Brings to `mine` everything of `theirs` that isn't at odds; nothing: there is nothing.
    std::optional<Edit> edit;
};

/// Puts them together. Of jobs that are alike there is nothing to do.
WalkMerge merge_walks(const Job& mine, const Job& theirs);

/// One edit for `merge.mine` that takes over everything that isn't at odds, and of what is, theirs
/// wherever `take_theirs` (one a conflict; missing ones: false) says so. apply() does it for every
/// choice. A refused merge, or nothing to do: nothing. When the job has changed since, merge again.
std::optional<Edit> resolve(const WalkMerge& merge, const std::vector<bool>& take_theirs);

} // namespace carriageway
