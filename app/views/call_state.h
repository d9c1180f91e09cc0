// Helping from afar: the call that is open, the log, and a reply that came by link. What the caller
// says of the press is in the call's own job, nothing of it in any other.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "app/records/call_log.h"
#include "app/records/call_notes.h"
#include "app/records/reply_link.h"
#include "core/assess.h"

namespace carriageway {

/// A reply as it is shown: both jobs, each with what it comes to.
struct ShownReply {
    Reply reply;
    Assessment before, after;
};

struct CallState {
    CallId id = 0;     ///< 0: none is open, the log is shown
    CallRecord record; ///< its notes are as they were kept last: what counts is `notes`
    CallNotes notes;
    std::optional<std::size_t> symptom; ///< its place in the fault book
    bool picture_after = false;         ///< the drawing shows the press with what is told
    JobId before = 0;                   ///< the job that was open before
    std::vector<CallRow> log;           ///< the last begun first
    std::optional<CallId> erasing;      ///< whose erasing is to be confirmed
    std::shared_ptr<const ShownReply> reply; ///< of the visit that is open, or was kept
    JobId reply_kept = 0;                    ///< the job that it was kept as; 0: still a visit
    std::shared_ptr<const ShownReply> left_reply; ///< of the visit that was left last
};

} // namespace carriageway
