// What a call comes to now: causes in their order, what to ask, and the press as it will stand once
// the caller has set what was told.
#pragma once

#include "app/records/fault_book.h"
#include "app/views/call_state.h"

namespace carriageway {

struct CallPlan {
    Ranking ranking;                    ///< of the symptom; without one no causes
    std::vector<CallQuestion> questions; ///< the best first
    std::vector<Edit> edits;            ///< that make the job what was told; may be none
    Job after;
    Assessment after_worked;            ///< of `after`
};

/// `job` is the call's own, `assessment` of it. Fixes are worked out one after the other, in the
/// order in which they were told, each on the job that the one before leaves.
CallPlan call_plan(const FaultLore& lore, const CallState& call, const Job& job,
                   const Assessment& assessment);

/// Whether the call that is open has its own job before it.
inline bool call_is_at_hand(const CallState& call, JobId current) {
    return call.id != 0 && call.notes.job != 0 && call.notes.job == current;
}

/// The reply whose job is open; nullptr: none.
const ShownReply* reply_at_hand(const CallState& call, JobId current, bool visiting);

} // namespace carriageway
