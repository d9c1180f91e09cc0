// What a call has come to so far, as it is kept with the call (call_log.h) in its notes: which job
// it is about, what was asked and answered, and what the caller was told.
//
// A document of JSON, read as strictly as every other. Tests, answers and causes go by their ids,
// so that a later fault book finds them again; what it doesn't have any more is left out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/records/library.h"
#include "core/call_questions.h"

namespace carriageway {

/// Key that opens the document and holds its version.
inline constexpr const char* call_key = "carriageway_call";
inline constexpr int call_format = 1;

struct CallNotes {
    JobId job = 0;   ///< the call's own; 0: none
    HeadId head = 0; ///< that it is about; 0: not sure which
    std::vector<TestAnswer> answers;  ///< in the order in which they were given
    std::vector<std::size_t> skipped; ///< tests that the caller can't make
    std::vector<NumberRead> read;     ///< numbers that were read out or can't be
    std::vector<std::size_t> told;    ///< causes whose fix the caller is told, in that order
    std::string text;                 ///< the person's own
    bool operator==(const CallNotes&) const = default;
};

/// Longest text of a person's own, bytes. Ours: with it, the most that can be answered fits.
inline constexpr std::size_t longest_own_notes = 1000;

/// At most `longest_call_notes` bytes (call_log.h): what doesn't fit is left out, the oldest
/// numbers read first, the person's own text never.
std::string write_call_notes(const FaultBook& book, const CallNotes& notes);

/// What was kept. A text that is no such document, or a damaged one: it alone, as the person's own,
/// cut to its length.
CallNotes read_call_notes(const FaultBook& book, std::string_view text);

} // namespace carriageway
