// The people who practise on this device, as they are shown. Nothing here is part of a job.
#pragma once

namespace carriageway {

struct TraineeState {};

} // namespace carriageway
