#include "app/records/exchange.h"
#include "core/assess.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/refusals.h"
#include "tests/fuzz/sound_job.h"

namespace carriageway::fuzz {

void edit_file(std::string_view bytes) {
    const ReadEdit read = read_edit(bytes);
    if (!read) return told(read.fault);
    const ReadEdit again = read_edit(write_edit(*read.edit));
    demand(again && *again.edit == *read.edit, "an edit is read as another edit");

    const Job& before = sound_job();
    Job job = before;
    const Applied applied = apply(job, *read.edit);
    if (!applied) {
        demand(job == before, "a refused edit changes the job");
        return;
    }
    demand(!fault_of(job), "an edit makes a job that core refuses");
    Assessment assessment;
    assess(job, assessment);
    // A history is kept as text.
    const ReadEdit stored = read_edit(write_edit(*applied.inverse));
    demand(stored && *stored.edit == *applied.inverse, "an inverse is read as another edit");
    demand(bool(apply(job, *stored.edit)), "an inverse is refused");
    demand(job == before, "an inverse doesn't take the edit back");
}

} // namespace carriageway::fuzz
