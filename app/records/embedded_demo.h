// The demo job, assets/demo/demo-job.json, as it was at build time: JSON in
// UTF-8, not terminated by a zero byte. The size is in bytes.
#pragma once

namespace carriageway::embedded {

extern const unsigned char demo_job[];
extern const unsigned demo_job_size;

}  // namespace carriageway::embedded
