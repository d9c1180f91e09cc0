// Autosave: what was acknowledged is there, whatever happens next.
#include <algorithm>
#include <atomic>
#include <chrono>
#include <random>
#include <thread>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

#include "app/records/writer.h"
#include "core/edit.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace std::chrono_literals;

namespace {

Job start_job() {
    Job job;
    job.name = "Slipway";
    job.press.name = "Invented press";
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    return job;
}

/// The n-th edit: the job is named after it.
LoggedEdit nth_edit(Job& job, int n) {
    const Edit edit{SetName{0, "Slipway " + std::to_string(n)}};
    const Applied applied = apply(job, edit);
    return {edit, *applied.inverse, 1000 + n};
}

} // namespace

TEST_CASE("an edit is acknowledged within 300 ms and is then in the library", "[writer]") {
    ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    Job job = start_job();
    const JobId id = *library->create(job, 1);
    std::atomic<int> woken{0};
    Writer writer(*library, [&] { ++woken; });
    std::vector<double> waits; // ms
    for (int n = 1; n <= 21; ++n) {
        const LoggedEdit edit = nth_edit(job, n);
        const auto let_go = std::chrono::steady_clock::now();
        const Writer::Ticket ticket = writer.submit(id, edit, job);
        CHECK(writer.submitted() == ticket);
        while (writer.acknowledged() < ticket && std::chrono::steady_clock::now() - let_go < 20s)
            std::this_thread::sleep_for(1ms);
        REQUIRE(writer.acknowledged() == ticket);
        waits.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() -
                                                                  let_go)
                            .count());
        // Another connection sees it: it is in the file, not in the writer.
        CHECK(*library->open(id) == job);
        CHECK(library->history(id)->size() == static_cast<std::size_t>(n));
    }
    CHECK(writer.all_saved());
    CHECK(woken > 0);
    // The median, because the machine that tests does other things as well.
    std::sort(waits.begin(), waits.end());
    INFO("median " << waits[10] << " ms, longest " << waits[20] << " ms");
    CHECK(waits[10] <= 300.0);
}

TEST_CASE("many edits keep their order, and history leads from first to last", "[writer]") {
    ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const Job first = start_job();
    Job job = first;
    const JobId id = *library->create(job, 1);
    {
        Writer writer(*library);
        for (int n = 1; n <= 500; ++n) {
            const LoggedEdit edit = nth_edit(job, n);
            writer.submit(id, edit, job);
        }
        CHECK(writer.flush(20s));
    }
    Job replayed = first;
    const LibraryResult<std::vector<LoggedEdit>> history = library->history(id);
    REQUIRE(history);
    REQUIRE(history->size() == 500);
    for (const LoggedEdit& edit : *history) REQUIRE(apply(replayed, edit.edit));
    CHECK(replayed == *library->open(id));
    for (auto edit = history->rbegin(); edit != history->rend(); ++edit) REQUIRE(apply(replayed, edit->inverse));
    CHECK(replayed == first);
}

TEST_CASE("every acknowledged edit survives a kill", "[writer][kill]") {
    const unsigned seed = Catch::getSeed();
    INFO("seed " << seed);
    std::mt19937 random(seed);
    int acknowledged_in_all = 0;
    for (int round = 0; round < 30; ++round) {
        ScratchFolder folder;
        JobId id = 0;
        {
            LibraryResult<Library> library = Library::open(folder.path());
            REQUIRE(library);
            id = *library->create(start_job(), 1);
        }
        int ends[2];
        REQUIRE(::pipe(ends) == 0);
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            ::close(ends[0]);
            LibraryResult<Library> library = Library::open(folder.path());
            if (!library) ::_exit(1);
            Job job = start_job();
            Writer writer(*library);
            Writer::Ticket told = 0;
            for (int n = 1;; ++n) {
                const LoggedEdit edit = nth_edit(job, n);
                writer.submit(id, edit, job);
                std::this_thread::sleep_for(std::chrono::microseconds(300));
                const Writer::Ticket now = writer.acknowledged();
                if (now == told) continue;
                told = now;
                const std::uint64_t word = told;
                if (::write(ends[1], &word, sizeof word) != sizeof word) ::_exit(2);
            }
        }
        ::close(ends[1]);
        // Most are killed some time after their first acknowledgement, however slow the machine;
        // every fifth at any moment, so that opening and the first write are met too.
        std::uint64_t last = 0, word = 0;
        if (round % 5 != 0) {
            REQUIRE(::read(ends[0], &word, sizeof word) == sizeof word);
            last = word;
        }
        const int wait = std::uniform_int_distribution<int>(0, 150)(random);
        std::this_thread::sleep_for(std::chrono::milliseconds(wait));
        ::kill(child, SIGKILL);
        while (::read(ends[0], &word, sizeof word) == sizeof word) last = word;
        ::close(ends[0]);
        int status = 0;
        ::waitpid(child, &status, 0);
        REQUIRE(WIFSIGNALED(status));
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        CHECK_FALSE(library->check().has_value());
        const LibraryResult<std::vector<LoggedEdit>> history = library->history(id);
        REQUIRE(history);
        INFO("round " << round << ": " << last << " acknowledged, " << history->size() << " there");
        CHECK(history->size() >= last);
        // What is there is a beginning of what was done, and the job as saved is its end.
        Job job = start_job();
        for (const LoggedEdit& edit : *history) REQUIRE(apply(job, edit.edit));
        CHECK(*library->open(id) == job);
        CHECK(job.name == (history->empty() ? "Slipway" : "Slipway " + std::to_string(history->size())));
        acknowledged_in_all += static_cast<int>(last);
    }
    CHECK(acknowledged_in_all >= 24);
}
