#include "tests/fuzz/sound_job.h"

#include <string_view>

#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"

namespace carriageway::fuzz {

const Job& sound_job() {
    static const Job job =
        *read_job({reinterpret_cast<const char*>(embedded::demo_job), embedded::demo_job_size}).job;
    return job;
}

} // namespace carriageway::fuzz
