// A library as version 3 left it opens with the people, attempts, signatures and calls in it.
#include <string>

#include <catch2/catch_test_macros.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/call_log.h"
#include "app/records/library.h"
#include "app/records/trainees.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

TEST_CASE("all that version 3 stored is there", "[library][schema][storage]") {
    const ScratchFolder folder;
    {
        SQLite::Database database(folder.file("library.db"),
                                  SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(bytes_of(CARRIAGEWAY_SOURCE_DIR "/tests/records/library_version_3.sql"));
    }
    LibraryResult<Library> library = Library::open(folder.path());
    REQUIRE(library);
    REQUIRE(library->can_write());
    CHECK_FALSE(library->check());
    CHECK(library->list("since", 10)->size() == 1);
    CHECK(library->runs(library->list("", 10)->front().id)->size() == 1);

    const std::vector<TraineeRow> people = *trainees(*library);
    REQUIRE(people.size() == 2);
    CHECK(people[0] == TraineeRow{2, "Robin", 5000});
    CHECK(people[1] == TraineeRow{3, "Álex", 5100});
    const std::vector<Attempt> done = *attempts(*library, 2);
    REQUIRE(done.size() == 1);
    CHECK(done[0].level == 3);
    CHECK(done[0].seed == 11400714819323198485u);
    CHECK(done[0].score == 0.75);
    CHECK(done[0].seconds == 41.5);
    CHECK(done[0].hints == 1);
    CHECK(done[0].time == 5200);
    CHECK(done[0].counts);
    CHECK(attempts(*library, 0)->size() == 1);
    const LibraryResult<TraineeSummary> summary = trainee_summary(*library, 2);
    REQUIRE(summary);
    CHECK(summary->of(PracticeTopic::find_fault).state() == SignState::alone);
    const std::vector<CallRow> taken = *calls(*library, 10);
    REQUIRE(taken.size() == 1);
    CHECK(taken[0] == CallRow{1, {5500, "Press two", "clicks", "clicks and stays", "sensors",
                                  CallOutcome::solved}});

    // An id is never used again: the next person is none of those who were there.
    CHECK(*add_trainee(*library, "Sam", 6000) == 4);
}
