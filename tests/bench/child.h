// Another program that draws, with the time of every frame that it shows (frames/frame_clock.cpp).
#pragma once

#include <sys/types.h>

#include <string>
#include <vector>

namespace carriageway::bench {

class Child {
public:
    /// Starts it; `home` becomes where programs keep their data. After `last_frame` frames it ends by
    /// itself; 0: it goes on.
    Child(const std::string& program, const std::string& home, int last_frame);
    ~Child(); ///< ends it, unless it has ended
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;

    /// Seconds from just before the start to the next frame shown, not told of yet; waits for at most
    /// so many seconds. Below 0: none came.
    double next_frame(double patience);

    /// Seconds of processor time so far of all its threads, in user and kernel mode: what
    /// /proc/PID/stat counts in hundredths, finer.
    double processor_time() const;

private:
    pid_t id_ = -1;
    int frames_ = -1; ///< what it tells of frames is read from here
    double began_ = 0.0;
};

} // namespace carriageway::bench
