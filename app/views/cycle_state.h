// A press that runs on the screen. Nothing here is part of a job.
#pragma once

namespace carriageway {

struct CycleState {
    bool open = false;
    bool playing = false;
    double time = 0.0;  ///< s from the table's start to turn
    double pace = 1.0;  ///< of real time
    double last = 0.0;  ///< s on the window's clock when `time` was moved on
};

} // namespace carriageway
