#include "tests/records/run_samples.h"

#include <string>

#include <catch2/catch_test_macros.hpp>

#include "core/edit.h"

namespace samples {

using namespace carriageway;

Job finished(Job job, int number) {
    const HeadId head = job.heads.front().id;
    job.walk = {{head, Field::squeegee_pressure, true, 210.0 + number, {5000, "AB"}},
                {head, Field::flood_pressure, true, {}, {5100, "AB"}}};
    job.record.ticks = {{1, {4000 + number, "AB"}}, {7, {0, ""}}};
    job.record.counts = {{50.0, 1.0, {6000, "AB"}}, {100.0 + number, 2.0, {7000, "CD"}}};
    job.record.stoppages = {{12.5, StopReason::ink, "the white ran out", {6500, "CD"}}};
    job.record.approval = {"shift lead", "the customer's print", 5500};
    job.record.notes = "run " + std::to_string(number);
    REQUIRE_FALSE(fault_of(job));
    return job;
}

} // namespace samples
