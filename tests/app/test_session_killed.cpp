// The program killed at random moments while a script edits: what the session said is saved is
// there, and the library is whole.
//
// CARRIAGEWAY_KILLS says how often (the long lane: 300 and more).
#include <csignal>
#include <random>
#include <thread>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <sys/wait.h>
#include <unistd.h>

#include "app/session.h"
#include "tests/samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

constexpr double first_stop = -200.0;
constexpr double step = 0.001; // mm, between the stops of two edits

/// What the script was told: so many edits of this job are saved.
struct Told {
    JobId job = 0;
    int edits = 0;
};

int number_of(const LoggedEdit& logged) {
    const SetStops* set = std::get_if<SetStops>(&logged.edit.what);
    return set ? static_cast<int>((first_stop - set->stops.operator_side) / step + 0.5) : -1;
}

/// The script: edits of the first head, one to four at a time; tells once the session shows that
/// they are saved. Ends by being killed.
void edit_for_ever(const std::string& folder, int tell, unsigned seed) {
    std::mt19937 random(seed);
    Session session(folder, [] {}, [] { return Timestamp{1'700'000'000'000}; }, Language::english);
    Told told{session.current(), 0};
    {
        const LibraryResult<Library> library = Library::open(folder);
        if (library)
            if (const auto before = library->history(told.job); before)
                told.edits = static_cast<int>(before->size());
    }
    const HeadId head = session.job().heads.front().id;
    for (;;) {
        const int some = 1 + static_cast<int>(random() % 4);
        for (int n = 0; n < some; ++n) {
            const double stop = first_stop - step * (told.edits + n + 1);
            if (session.commit(Edit{SetStops{head, {stop, 200.0}}})) return;
        }
        while (session.save_state() != SaveState::saved)
            std::this_thread::sleep_for(std::chrono::microseconds(100));
        told.edits += some;
        if (::write(tell, &told, sizeof told) != sizeof told) return;
        if (random() % 16 == 0) session.set_looks(session.looks());
    }
}

/// Lets it work for a while, counted from its start or from the first it tells, and kills it. What
/// it told last.
Told killed_at_work(const std::string& folder, std::mt19937& random) {
    int ends[2];
    REQUIRE(::pipe(ends) == 0);
    const auto seed = static_cast<unsigned>(random());
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        edit_for_ever(folder, ends[1], seed);
        ::raise(SIGKILL);
    }
    ::close(ends[1]);
    Told told;
    Told next;
    if (random() % 4 != 0 && ::read(ends[0], &next, sizeof next) == sizeof next) told = next;
    const auto moment = std::uniform_int_distribution<int>(0, 40'000)(random);
    std::this_thread::sleep_for(std::chrono::microseconds(moment));
    ::kill(child, SIGKILL);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFSIGNALED(status));
    while (::read(ends[0], &next, sizeof next) == sizeof next) told = next;
    ::close(ends[0]);
    return told;
}

} // namespace

TEST_CASE("whenever the program is killed, every edit that it showed as saved is there",
          "[storage][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const long kills = asked_for("CARRIAGEWAY_KILLS", 24);
    int saved = 0;
    std::optional<ScratchFolder> folder;
    for (long round = 0; round < kills; ++round) {
        INFO("round " << round);
        // One library through several kills, then another: a first start is killed as well.
        if (round % 8 == 0) folder.emplace();
        const Told told = killed_at_work(folder->path(), random);
        const LibraryResult<Library> library = Library::open(folder->path());
        if (!library) FAIL(library.fault().detail);
        REQUIRE(library->can_write());
        const std::optional<LibraryFault> wrong = library->check(); // integrity_check and all texts
        if (wrong) FAIL(wrong->detail);
        if (told.job == 0) continue;
        const LibraryResult<std::vector<LoggedEdit>> history = library->history(told.job);
        REQUIRE(history);
        REQUIRE(static_cast<int>(history->size()) >= told.edits);
        for (std::size_t n = 0; n < history->size(); ++n)
            REQUIRE(number_of((*history)[n]) == static_cast<int>(n) + 1);
        const LibraryResult<Job> job = library->open(told.job);
        REQUIRE(job);
        CHECK(job->heads.front().stops.operator_side ==
              first_stop - step * static_cast<double>(history->size()));
        saved += told.edits;
    }
    CHECK(saved > 0);
}
