// Autosave killed at random moments, with room on the disk and while it fills up.
//
// CARRIAGEWAY_KILLS says how often (the long lane: 300 and more).
#include <csignal>
#include <random>
#include <string>
#include <thread>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <sys/wait.h>
#include <unistd.h>

#include "app/records/writer.h"
#include "tests/records/full_disk.h"
#include "tests/records/stored_samples.h"
#include "tests/samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;

namespace {

/// Edits until it is killed, and tells how many are saved; from some moment on there is room for so
/// many bytes only. Ends with the disk full, and waits there.
void edit_until_full(const std::string& folder, const LibraryOptions& options, JobId id, Job job,
                     long long room, int tell) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) return;
    FullDisk::leave(room);
    Writer writer(*library);
    for (int n = 1;; ++n) {
        const LoggedEdit edit = samples::numbered_edit(job, n, n);
        writer.submit(id, edit, job);
        while (!writer.all_saved()) {
            if (const std::optional<LibraryFault> fault = writer.fault()) {
                // The disk is full and says so; anything else ends the test.
                const int kind = fault->kind == Kind::disk_full ? -1 : -2;
                if (::write(tell, &kind, sizeof kind) != sizeof kind) return;
                for (;;) ::pause();
            }
            std::this_thread::sleep_for(std::chrono::microseconds(100));
        }
        if (::write(tell, &n, sizeof n) != sizeof n) return;
    }
}

} // namespace

TEST_CASE("autosave killed while the disk fills up keeps all that it said is saved",
          "[writer][storage][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    FullDisk::install();
    const long kills = asked_for("CARRIAGEWAY_KILLS", 18);
    int full = 0;
    for (long round = 0; round < kills; ++round) {
        LibraryOptions options;
        options.vfs = FullDisk::name();
        if (round % 2 == 1) options.journal = LibraryOptions::Journal::rollback;
        const ScratchFolder folder;
        FullDisk::leave(-1);
        const Job job = samples::job("Edited");
        JobId id = 0;
        {
            LibraryResult<Library> library = Library::open(folder.path(), options);
            REQUIRE(library);
            id = *library->create(job, 1);
        }
        const long long room = std::uniform_int_distribution<long long>(0, 120'000)(random);
        INFO("round " << round << ", room for " << room << " bytes");
        int ends[2];
        REQUIRE(::pipe(ends) == 0);
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            ::close(ends[0]);
            edit_until_full(folder.path(), options, id, job, room, ends[1]);
            ::raise(SIGKILL);
        }
        ::close(ends[1]);
        const int moment = std::uniform_int_distribution<int>(1'000, 120'000)(random);
        int saved = 0;
        const auto listen = [&] { // false: it has ended, or says that the disk is full
            int told = 0;
            if (::read(ends[0], &told, sizeof told) != sizeof told) return false;
            CHECK(told != -2);
            full += told == -1;
            if (told > 0) saved = told;
            return told > 0;
        };
        // Some of them not before the disk is full.
        if (round % 3 == 0)
            while (listen()) {}
        std::this_thread::sleep_for(std::chrono::microseconds(moment / (round % 3 == 0 ? 10 : 1)));
        ::kill(child, SIGKILL);
        REQUIRE(::waitpid(child, nullptr, 0) == child);
        while (listen()) {}
        ::close(ends[0]);
        const LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        REQUIRE(library->can_write());
        const std::optional<LibraryFault> wrong = library->check();
        if (wrong) FAIL(wrong->detail);
        const LibraryResult<std::vector<LoggedEdit>> history = library->history(id);
        REQUIRE(history);
        REQUIRE(static_cast<int>(history->size()) >= saved);
        for (std::size_t n = 0; n < history->size(); ++n)
            REQUIRE(samples::number_of_edit((*history)[n].edit) == static_cast<int>(n) + 1);
    }
    CHECK(full > 0);
}
