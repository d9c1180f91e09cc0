// Calls that were taken: what was asked from afar, what was found, and how it ended. They stay in
// the library of the device.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/records/library.h"

namespace carriageway {

using CallId = std::int64_t; ///< above 0; never used again in its library

/// How a call ended.
enum class CallOutcome {
    open,      ///< still to be heard of
    solved,
    not_solved,
    passed_on, ///< to somebody else, or to whoever services the press
    count,     ///< how many there are; not an outcome
};

struct CallRecord {
    Timestamp time = 0;  ///< when it began
    std::string press;   ///< name of the press as the caller says; may be empty
    std::string symptom; ///< id of the symptom in the fault book; empty: none chosen
    std::string notes;
    std::string found;   ///< what it was, in words or a cause's id; empty: not found
    CallOutcome outcome = CallOutcome::open;
    bool operator==(const CallRecord&) const = default;
};

struct CallRow {
    CallId id = 0;
    CallRecord call;
    bool operator==(const CallRow&) const = default;
};

/// Longest texts, bytes: notes, and each of the others. Ours.
inline constexpr std::size_t longest_call_notes = 8000;
inline constexpr std::size_t longest_call_text = 400;

/// Stores a call. `bad_name`: a text is too long or not UTF-8, and nothing is stored.
LibraryResult<CallId> add_call(Library& library, const CallRecord& call);
/// The same for one that is there; `no_such_call` where it isn't.
std::optional<LibraryFault> change_call(Library& library, CallId id, const CallRecord& call);
/// Deletes it for good, bytes and all, as erase_trainee() does (trainees.h). Deleting one that
/// isn't there is no fault.
std::optional<LibraryFault> erase_call(Library& library, CallId id);
/// The last begun first; `limit` and `offset` count calls, negative: 0.
LibraryResult<std::vector<CallRow>> calls(const Library& library, int limit, int offset = 0);
LibraryResult<CallRecord> open_call(const Library& library, CallId id);

/// "open", "solved", "not_solved", "passed_on".
const char* outcome_key(CallOutcome outcome);

} // namespace carriageway
