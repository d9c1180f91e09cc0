// A program that is killed while the library is made or changed.
#include <chrono>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/library.h"
#include "tests/records/other_process.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

TEST_CASE("a program killed while it makes the library leaves one that opens",
          "[library][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    // As long as making one takes here, so that the moments fall within it.
    const auto begin = std::chrono::steady_clock::now();
    {
        const ScratchFolder folder;
        REQUIRE(Library::open(folder.path()));
    }
    const auto took = std::chrono::duration_cast<std::chrono::microseconds>(
        std::chrono::steady_clock::now() - begin);
    for (int round = 0; round < 30; ++round) {
        const ScratchFolder folder;
        const int moment =
            std::uniform_int_distribution<int>(0, static_cast<int>(took.count() * 3 / 2))(random);
        INFO("round " << round << ": killed after " << moment << " us");
        killed_after(moment, [&] { (void)Library::open(folder.path()); });
        LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        CHECK(library->can_write());
        CHECK(library->create(samples::job("After"), 1));
        CHECK_FALSE(library->check());
    }
}

TEST_CASE("a program killed among changes leaves each of them whole or undone",
          "[library][kill]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    for (int round = 0; round < 30; ++round) {
        const ScratchFolder folder;
        REQUIRE(Library::open(folder.path()));
        const int moment = std::uniform_int_distribution<int>(0, 100'000)(random);
        INFO("round " << round << ": killed after " << moment << " us");
        killed_at_work(moment, [&](const std::function<void()>& begun) {
            LibraryResult<Library> library = Library::open(folder.path());
            for (Timestamp time = 1; library && time < 100'000; time += 10) {
                const JobId id = *library->create(samples::job("Made"), time);
                if (library->rename(id, "Made and renamed", time + 1)) return;
                const JobId copy = *library->duplicate(id, "Copied", time + 2);
                if (library->remove(id, time + 3)) return;
                if (library->purge(time + 3).operator bool() && !library->open(copy)) return;
                if (time == 1) begun();
            }
        });
        const LibraryResult<Library> library = Library::open(folder.path());
        REQUIRE(library);
        CHECK_FALSE(library->check());
        const LibraryResult<std::vector<JobRow>> rows = library->list("", 100'000);
        REQUIRE(rows);
        // At most the last round of changes is unfinished.
        int copies = 0;
        for (const JobRow& row : *rows) {
            const bool last = row.created / 10 == rows->front().created / 10;
            copies += row.name == "Copied" ? 1 : 0;
            CHECK((last || row.name == "Copied"));
        }
        CHECK(copies > 0); // the first round of changes is whole
    }
}
