#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "app/records/job_table.h"
#include "app/text/sentences.h"
#include "core/assess.h"
#include "core/job_pace.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/refusals.h"

namespace carriageway::fuzz {
namespace {

/// All that is said of a job, in every language.
void tell(const Job& job, const Assessment& assessment) {
    for (const Language language : {Language::english, Language::spanish, Language::pseudo}) {
        for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
            for (const HeadAssessment& head : assessment.heads)
                for (const Finding& finding : head.findings)
                    demand(!finding_text(language, unit, job, head, finding).why.empty(),
                           "a finding without a reason");
            demand(!job_table(job, assessment, language, unit).empty(), "a job without a table");
        }
    }
}

void use(const Job& job) {
    demand(!fault_of(job), "core refuses a job that was read");
    const ReadJob again = read_job(write_job(job));
    demand(again && *again.job == job, "a job file is read as another job");
    const ReadJob compact = read_job(write_job_compact(job));
    demand(compact && *compact.job == job, "a compact job file is read as another job");
    if (const std::string fragment = job_link_fragment(job); !fragment.empty()) {
        const ReadJob linked = read_job_link(fragment);
        demand(linked && *linked.job == job, "a link is read as another job");
    }

    Assessment assessment;
    assess(job, assessment);
    demand(assessment.heads.size() == job.heads.size(), "a head that is not assessed");
    tell(job, assessment);
    (void)job_pace(job, assessment);
    if (const std::optional<Edit> set = set_every_stop(job, assessment)) {
        Job changed = job;
        demand(bool(apply(changed, *set)), "advised stops are refused");
        demand(!fault_of(changed), "advised stops make a job that core refuses");
    }
}

} // namespace

void job_file(std::string_view bytes) {
    const ReadJob read = read_job(bytes);
    if (read) use(*read.job);
    else told(read.fault);

    const ReadPress press = read_press(bytes);
    if (!press) return told(press.fault);
    const ReadPress again = read_press(write_press(*press.press));
    demand(again && *again.press == *press.press, "a press file is read as another press");
}

} // namespace carriageway::fuzz
