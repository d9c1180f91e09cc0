// What went wrong in an exercise, without its numbers: so that it can be counted over many.
#pragma once

#include <vector>

#include "core/exercise.h"

namespace carriageway {

/// A reason for points that were missed or taken away.
struct Mistake {
    MarkReason reason = MarkReason::not_answered;
    std::optional<FindingKind> finding; ///< where the reason is about one
    std::optional<Field> field;         ///< likewise
    bool operator==(const Mistake&) const = default;
};

/// Which of the two a reason is about.
bool is_about_finding(MarkReason reason);
bool is_about_field(MarkReason reason);

/// Whether a reason can be a mistake at all: fault_found and its like can't.
bool is_mistake(MarkReason reason);

/// The mistakes of a marking, each once, in the order of its lines.
std::vector<Mistake> mistakes_of(const Marking& marking);

/// One mistake and in how many exercises it was made.
struct MistakeCount {
    Mistake mistake;
    int times = 0;
    bool operator==(const MistakeCount&) const = default;
};

/// The commonest of several exercises' mistakes, the most frequent first, at most `most`; of
/// equally frequent ones the one that was made first. `all` holds one list an exercise.
std::vector<MistakeCount> commonest(const std::vector<std::vector<Mistake>>& all, std::size_t most);

} // namespace carriageway
