// The real program in a real window: how long until its first frame, and what it does untouched.
#include <sys/wait.h>

#include <cstdlib>

#include "tests/bench/bench.h"
#include "tests/bench/child.h"
#include "tests/bench/made_library.h"
#include "tests/bench/scratch.h"

namespace carriageway::bench {

namespace {

constexpr int jobs = 10'000;
constexpr int starts = 11; ///< of each program
constexpr double patience = 60.0; ///< s until a first frame
constexpr double quiet = 3.0;     ///< s without a frame: everything has come to rest
constexpr double watched = 30.0;  ///< s untouched

void need_display() {
    must(std::getenv("DISPLAY") != nullptr, "there is no display: run platform/linux/bench, which makes one");
}

/// A folder of data with a library of many jobs, one of which was open last.
void fill(const std::string& home) {
    Library library = made_library(home + "/carriageway", jobs);
    const LibraryResult<std::vector<JobRow>> newest = library.list("", 1);
    must(bool(newest) && !newest->empty(), "the library is empty");
    must(!library.set_setting(setting_key::last_job, std::to_string(newest->front().id)),
         "a setting can't be stored");
}

double first_frame(const char* program, const std::string& home) {
    Child child(program, home, 1);
    const double time = child.next_frame(patience);
    must(time > 0.0, std::string(program) + " showed no frame");
    return time;
}

} // namespace

std::vector<Ratio> first_frame_vs_bare() {
    need_display();
    const Scratch home("first-frame");
    fill(home.path());
    first_frame(BENCH_PROGRAM, home.path()); // files are in memory from here on
    first_frame(BENCH_BARE, home.path());
    Pair pair;
    for (int i = 0; i < starts; ++i) {
        if (i % 2 == 0) pair.ours.push_back(first_frame(BENCH_PROGRAM, home.path()));
        pair.theirs.push_back(first_frame(BENCH_BARE, home.path()));
        if (i % 2 == 1) pair.ours.push_back(first_frame(BENCH_PROGRAM, home.path()));
    }
    return {{"first_frame_vs_bare", pair.ratio(), 1.5,
             sides("the program", median(pair.ours), "the bare window", median(pair.theirs))}};
}

std::vector<Ratio> idle() {
    need_display();
    const Scratch home("idle");
    fill(home.path());
    Child child(BENCH_PROGRAM, home.path(), 0);
    must(child.next_frame(patience) > 0.0, "the program showed no frame");
    const double began = clock_time();
    while (child.next_frame(quiet) > 0.0)
        must(clock_time() - began < patience, "the program doesn't come to rest");
    const double from = clock_time(), used = child.processor_time();
    must(used > 0.0, "the program's processor time can't be read");
    int frames = 0;
    for (double left = watched; left > 0.0; left = watched - (clock_time() - from))
        if (child.next_frame(left) > 0.0) ++frames;
    const double share = (child.processor_time() - used) / (clock_time() - from);
    return {{"idle_cpu", share, 0.001,
             time_words(child.processor_time() - used) + " of processor time in " + time_words(clock_time() - from)},
            {"idle_frames", static_cast<double>(frames), 0.0, ""}};
}

} // namespace carriageway::bench
