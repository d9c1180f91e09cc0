// Finding a fault from what is seen or heard. Nothing here is part of a job.
#pragma once

#include <optional>
#include <vector>

#include "app/records/library.h"
#include "core/fault_finding.h"

namespace carriageway {

struct FaultState {
    std::optional<std::size_t> symptom; ///< its place in the book; nothing: none chosen yet
    HeadId head = 0;                    ///< 0: not sure which
    std::vector<TestAnswer> answers;    ///< in the order in which they were given
    JobId job = 0;                      ///< that was open then; of another they say nothing
    std::vector<std::size_t> closed;    ///< causes among the first that were closed by hand
    std::vector<std::size_t> opened;    ///< causes further down that were opened
};

} // namespace carriageway
