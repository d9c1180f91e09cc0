// History: every edit of a job, forwards and backwards.
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/library.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

// Takes a job back through its history to where it began, then forwards again.
void check_replay(const Job& first, const Job& last, const std::vector<LoggedEdit>& history) {
    Job job = last;
    for (auto logged = history.rbegin(); logged != history.rend(); ++logged)
        REQUIRE(apply(job, logged->inverse));
    CHECK(job == first);
    for (const LoggedEdit& logged : history)
        REQUIRE(apply(job, logged.edit));
    CHECK(job == last);
}

} // namespace

TEST_CASE("history leads from the job as created to the job as saved, and back",
          "[library][history]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const ScratchFolder folder;
    for (int round = 0; round < 20; ++round) {
        const Job first = samples::job("Round " + std::to_string(round));
        Job job = first;
        std::vector<LoggedEdit> made;
        JobId id = 0;
        {
            LibraryResult<Library> library = Library::open(folder.path());
            REQUIRE(library);
            const LibraryResult<JobId> created = library->create(first, 0);
            REQUIRE(created);
            id = *created;
            for (Timestamp time = 1; time <= 15; ++time) {
                std::vector<LoggedEdit> edits;
                for (unsigned i = random() % 4; i > 0; --i)
                    edits.push_back(samples::random_edit(job, random, time));
                REQUIRE_FALSE(library->append_edits(id, edits, job));
                made.insert(made.end(), edits.begin(), edits.end());
            }
        }
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        const LibraryResult<Job> read = library->open(id);
        REQUIRE(read);
        CHECK(*read == job);
        const LibraryResult<std::vector<LoggedEdit>> history = library->history(id);
        REQUIRE(history);
        CHECK(*history == made);
        check_replay(first, *read, *history);
    }
}

TEST_CASE("edits of several jobs are stored together", "[library][history]") {
    Library library = Library::in_memory();
    Job first = samples::job("First");
    Job second = samples::job("Second");
    const JobId first_id = *library.create(first, 0);
    const JobId second_id = *library.create(second, 0);
    std::vector<JobEdits> batch(2);
    batch[0] = {first_id, {samples::numbered_edit(first, 1, 1)}, {}};
    batch[0].snapshot = first;
    batch[1] = {second_id,
                {samples::numbered_edit(second, 1, 2), samples::numbered_edit(second, 2, 3)},
                {}};
    batch[1].snapshot = second;
    REQUIRE_FALSE(library.append_all(batch));
    CHECK(*library.open(first_id) == first);
    CHECK(*library.open(second_id) == second);
    CHECK(library.history(first_id)->size() == 1);
    CHECK(*library.history(second_id) == batch[1].edits);
    CHECK(library.row(second_id)->updated == 3);
}

TEST_CASE("an edit of a job that was purged brings it back", "[library][history]") {
    Library library = Library::in_memory();
    const Job first = samples::job("Still open in a window");
    Job job = first;
    const JobId id = *library.create(job, 0);
    const LoggedEdit before = samples::numbered_edit(job, 1, 1);
    REQUIRE_FALSE(library.append_edits(id, {before}, job));
    REQUIRE_FALSE(library.remove(id, 2));
    REQUIRE(*library.purge(2) == 1);

    const LoggedEdit after = samples::numbered_edit(job, 2, 5);
    REQUIRE_FALSE(library.append_all({{id, {after}, job}}));
    CHECK(*library.open(id) == job);
    CHECK(*library.history(id) == std::vector<LoggedEdit>{after});
    CHECK(library.list("window", 10)->size() == 1);
    CHECK(library.row(id)->created == 5);
}
