// A job of which two people take copies, and what comes of putting them together.
#pragma once

#include <catch2/catch_test_macros.hpp>
#include <vector>

#include "core/walk_merge.h"
#include "tests/core/sample_job.h"

namespace carriageway::tests {

inline const Stamp early{1000, "an"};
inline const Stamp late{2000, "bo"};

/// Heads 1 (black, station 1) and 2 (red, station 4).
inline Job two_walked_heads() {
    Job job = sample::one_head();
    Head second = job.heads.front();
    second.id = 2;
    second.station = 4;
    second.colour = "red";
    job.heads.push_back(second);
    return job;
}

/// Mine with everything that isn't at odds.
inline Job merged(const Job& mine, const Job& theirs,
                  const std::vector<bool>& take_theirs = {}) {
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.refusal == MergeRefusal::none);
    Job job = mine;
    const auto edit = resolve(merge, take_theirs);
    if (!edit) return job;
    const Applied applied = apply(job, *edit);
    REQUIRE(applied);
    Job back = job;
    REQUIRE(apply(back, *applied.inverse));
    REQUIRE(back == mine);
    return job;
}

} // namespace carriageway::tests
