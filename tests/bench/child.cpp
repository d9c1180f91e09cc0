#include "tests/bench/child.h"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>
#include <ctime>

#include "tests/bench/bench.h"

namespace carriageway::bench {

Child::Child(const std::string& program, const std::string& home, int last_frame) {
    int ends[2];
    must(pipe(ends) == 0, "no pipe");
    fcntl(ends[0], F_SETFD, FD_CLOEXEC);
    frames_ = ends[0];
    const std::string to = std::to_string(ends[1]), last = std::to_string(last_frame);
    began_ = clock_time();
    id_ = fork();
    if (id_ == 0) {
        setenv("LD_PRELOAD", BENCH_FRAMES, 1);
        setenv("BENCH_FRAMES_FD", to.c_str(), 1);
        setenv("BENCH_LAST_FRAME", last.c_str(), 1);
        setenv("XDG_DATA_HOME", home.c_str(), 1);
        unsetenv("WAYLAND_DISPLAY");
        unsetenv("SDL_VIDEODRIVER");
        execl(program.c_str(), program.c_str(), static_cast<char*>(nullptr));
        _exit(127);
    }
    close(ends[1]);
    must(id_ > 0, "no other program can be started");
}

Child::~Child() {
    close(frames_);
    kill(id_, SIGTERM);
    waitpid(id_, nullptr, 0);
}

double Child::next_frame(double patience) {
    pollfd ready{frames_, POLLIN, 0};
    if (poll(&ready, 1, static_cast<int>(1000.0 * patience)) <= 0) return -1.0;
    std::int64_t time = 0;
    // A pipe gives all eight bytes at once; none when the program has ended.
    if (read(frames_, &time, sizeof time) != sizeof time) return -1.0;
    return 1e-9 * static_cast<double>(time) - began_;
}

double Child::processor_time() const {
    clockid_t clock{};
    timespec time{};
    must(clock_getcpuclockid(id_, &clock) == 0 && clock_gettime(clock, &time) == 0,
         "the program has ended");
    return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

} // namespace carriageway::bench
