// Files of assets as they were at build time: the demo job, demo/demo-job.json, and what is known of
// faults, faults/faults.json. JSON in UTF-8, not terminated by a zero byte. Sizes are in bytes.
#pragma once

namespace carriageway::embedded {

extern const unsigned char demo_job[];
extern const unsigned demo_job_size;
extern const unsigned char fault_data[];
extern const unsigned fault_data_size;

}  // namespace carriageway::embedded
