// A clock that is set back, or stands anywhere: nothing is lost or refused.
#include <limits>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "app/records/library.h"
#include "app/records/trainees.h"
#include "tests/records/run_samples.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

constexpr Timestamp year = 31'557'600'000;
constexpr Timestamp now = 55 * year;

} // namespace

TEST_CASE("with the clock set back edits stay in order and none is lost", "[library][storage]") {
    const ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    Job job = samples::job("Ahead");
    const JobId id = *library->create(job, now);
    const std::vector<Timestamp> times = {now + 1,  now - 10 * year, 0, -year,
                                          now + 50 * year, now,
                                          std::numeric_limits<Timestamp>::min(),
                                          std::numeric_limits<Timestamp>::max()};
    int number = 0;
    for (const Timestamp time : times) {
        const LoggedEdit edit = samples::numbered_edit(job, ++number, time);
        REQUIRE_FALSE(library->append_edits(id, {edit}, job));
        REQUIRE(library->add_run(id, samples::finished(job, number), time));
    }
    const LibraryResult<std::vector<LoggedEdit>> history = library->history(id);
    REQUIRE(history);
    REQUIRE(history->size() == times.size());
    for (std::size_t n = 0; n < times.size(); ++n) {
        CHECK(samples::number_of_edit((*history)[n].edit) == static_cast<int>(n) + 1);
        CHECK((*history)[n].time == times[n]);
    }
    CHECK(*library->open(id) == job);
    CHECK(library->runs(id)->size() == times.size());
    CHECK(library->list("", 10)->size() == 1);
    CHECK_FALSE(library->check());
}

TEST_CASE("a job is not purged before its time because the clock went back",
          "[library][storage]") {
    const ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const JobId id = *library->create(samples::job("Removed"), now);
    REQUIRE_FALSE(library->remove(id, now));
    CHECK(*library->purge(now - 10 * year) == 0);
    CHECK_FALSE(library->restore(id));
    CHECK(library->open(id));
}

TEST_CASE("attempts and people of a clock that went back are all there", "[library][storage]") {
    const ScratchFolder folder;
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    const TraineeId who = *add_trainee(*library, "Robin", now);
    for (const Timestamp time : {now, now - year, Timestamp{0}, -year}) {
        Attempt attempt;
        attempt.time = time;
        REQUIRE(add_attempt(*library, who, attempt));
    }
    CHECK(attempts(*library, who)->size() == 4);
    CHECK(trainee_summary(*library, who));
    CHECK_FALSE(library->check());
}
