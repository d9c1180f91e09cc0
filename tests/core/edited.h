// Edits tried out on a job, with what must hold of each.
#pragma once

#include <catch2/catch_test_macros.hpp>

#include "core/edit.h"
#include "tests/core/sample_job.h"

namespace carriageway::sample {

/// Applies an edit that must be accepted, checks that its inverse leads back, and leaves it done.
inline void accept(Job& job, const Edit& edit) {
    const Job before = job;
    const Applied applied = apply(job, edit);
    REQUIRE(applied);
    CHECK_FALSE(applied.refusal);
    Job back = job;
    const Applied undone = apply(back, *applied.inverse);
    REQUIRE(undone);
    CHECK(back == before);
    const Applied redone = apply(back, *undone.inverse);
    REQUIRE(redone);
    CHECK(back == job);
}

/// Applies an edit that must be refused for one reason and change nothing.
inline void refuse(Job& job, const Edit& edit, Refusal refusal, Field field = Field::count) {
    const Job before = job;
    const Applied applied = apply(job, edit);
    CHECK_FALSE(applied);
    REQUIRE(applied.refusal);
    CHECK(*applied.refusal == refusal);
    CHECK(applied.field == field);
    CHECK(job == before);
}

/// Two heads, on stations 1 and 4, with station 7 for loading.
inline Job two_heads() {
    Job job = one_head();
    Head second = job.heads.front();
    second.id = 2;
    second.station = 4;
    job.heads.push_back(second);
    job.uses[6] = StationUse::load;
    return job;
}

}  // namespace carriageway::sample
