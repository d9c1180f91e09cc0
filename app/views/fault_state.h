// Finding a fault from what is seen or heard, and helping from afar. Nothing here is part of a job.
#pragma once

namespace carriageway {

struct FaultState {};
struct CallState {};

} // namespace carriageway
