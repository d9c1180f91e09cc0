// The program used at random for long: it neither stops, nor loses its way, nor fills the memory.
//
// CARRIAGEWAY_SOAK says for how many rounds (the long lane: tens of thousands), CARRIAGEWAY_SOAK_SECONDS
// for how long; without either a few, to see that it runs.
#include <chrono>
#include <cstdio>
#include <fstream>
#include <optional>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <malloc.h>
#include <unistd.h>

#include "core/edit.h"
#include "tests/app/driven_at_random.h"
#include "tests/samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

constexpr double megabyte = 1024.0 * 1024.0;

/// The first part of a soak is not looked at: caches fill up, and 500 steps of undo.
constexpr double warm_up = 0.25;

/// What may be added to the memory from then on. Ours: a leak of a hundred bytes a frame would pass it
/// within an hour, and what allocators scatter stays below.
constexpr double most_growth = 12.0;

/// Below so many rounds there is no telling growth from warming up.
constexpr long rounds_to_judge = 4000;

/// Memory of this process that is in use, MB: what the allocator has given out, and what the
/// system has given to the process. Freed memory is handed back first.
struct Memory {
    double given_out = 0.0;
    double resident = 0.0;
};
Memory memory() {
    malloc_trim(0);
    Memory now;
    now.given_out = static_cast<double>(mallinfo2().uordblks) / megabyte;
    long all = 0, resident = 0;
    std::ifstream("/proc/self/statm") >> all >> resident;
    now.resident = static_cast<double>(resident) * static_cast<double>(sysconf(_SC_PAGESIZE)) / megabyte;
    return now;
}

/// Whether memory is counted by a sanitizer, which keeps what is freed: there, leaks are found instead.
constexpr bool counted_by_sanitizer() {
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
    return true;
#elif defined(__has_feature)
    return __has_feature(address_sanitizer) || __has_feature(thread_sanitizer) ||
           __has_feature(memory_sanitizer);
#else
    return false;
#endif
}

/// How far a soak has come: by rounds, or by time where that is asked for.
class Span {
  public:
    Span() : began_(std::chrono::steady_clock::now()) {}
    double share() const {
        const std::chrono::duration<double> since = std::chrono::steady_clock::now() - began_;
        return seconds_ > 0 ? since.count() / static_cast<double>(seconds_)
                            : static_cast<double>(done_) / static_cast<double>(rounds_);
    }
    void count() { ++done_; }
    long done() const { return done_; }

  private:
    long seconds_ = asked_for("CARRIAGEWAY_SOAK_SECONDS", 0);
    long rounds_ = asked_for("CARRIAGEWAY_SOAK", 400);
    long done_ = 0;
    std::chrono::steady_clock::time_point began_;
};

} // namespace

TEST_CASE("used at random for long, the program goes on and its memory stays flat", "[soak]") {
    INFO("seed " << Catch::getSeed());
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    DrivenAtRandom hand(driver, folder.path(), Catch::getSeed());
    std::vector<std::string> last;
    Span span;
    std::optional<Memory> warm;
    Memory most;
    while (span.share() < 1.0) {
        last.push_back(hand.once());
        if (last.size() > 8) last.erase(last.begin());
        span.count();
        INFO("round " << span.done() << ": " << last.back());
        REQUIRE_FALSE(fault_of(driver.session().job()));
        REQUIRE(driver.session().assessment().heads.size() == driver.session().shown().heads.size());
        REQUIRE_FALSE(driver.list().things().empty());
        if (span.done() % 100 != 0) continue;
        const Memory now = memory();
        if (!warm && span.share() >= warm_up) warm = most = now;
        most.given_out = std::max(most.given_out, now.given_out);
        most.resident = std::max(most.resident, now.resident);
    }
    REQUIRE(driver.session().flush());
    CHECK_FALSE(Library::open(folder.path())->check());
    if (!warm || span.done() < rounds_to_judge || counted_by_sanitizer()) return;
    const Memory end = memory();
    std::printf("soak, seed %u: %ld rounds; from warm to the end given out %.1f to %.1f MB, resident "
                "%.1f to %.1f MB (at most %.1f)\n",
                Catch::getSeed(), span.done(), warm->given_out, end.given_out, warm->resident,
                end.resident, most.resident);
    CHECK(end.given_out - warm->given_out < most_growth);
    CHECK(end.resident - warm->resident < most_growth);
}
