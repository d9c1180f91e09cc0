// The library as a person uses it: jobs, their history, search, press profiles, settings.
#include <algorithm>
#include <filesystem>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "app/records/library.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

Library opened(const std::string& folder, const LibraryOptions& options = {}) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

JobId stored(Library& library, const Job& job, Timestamp time) {
    const LibraryResult<JobId> id = library.create(job, time);
    if (!id) FAIL(id.fault().detail);
    return *id;
}

std::vector<std::string> names(const LibraryResult<std::vector<JobRow>>& rows) {
    if (!rows) FAIL(rows.fault().detail);
    std::vector<std::string> found;
    for (const JobRow& row : *rows)
        found.push_back(row.name);
    return found;
}

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("a job is there after the library was closed", "[library]") {
    const ScratchFolder folder;
    const Job job = samples::job("Summer shirt");
    JobId id = 0;
    {
        Library library = opened(folder.path() + "/new/folder");
        CHECK(library.kept());
        CHECK(library.can_write());
        CHECK(std::filesystem::path(library.path()) == std::filesystem::path(folder.file("new/folder/library.db")));
        id = stored(library, job, 1000);
        CHECK(id > 0);
        CHECK(id < (JobId{1} << job_id_bits));
    }
    const Library again = opened(folder.path() + "/new/folder");
    const LibraryResult<Job> read = again.open(id);
    REQUIRE(read);
    CHECK(*read == job);
    const LibraryResult<std::vector<JobRow>> rows = again.list("", 10);
    REQUIRE(rows);
    REQUIRE(rows->size() == 1);
    const JobRow expected{id, "Summer shirt", "Press one", "Black, Red, White", 3, 1000, 1000, {}};
    CHECK(rows->front() == expected);
    CHECK_FALSE(again.check());
}

TEST_CASE("ids follow the time that jobs are made at, and differ within a minute", "[library]") {
    Library library = Library::in_memory();
    constexpr Timestamp minute = 60'000, day = 24 * 60 * minute;
    JobId last = 0;
    for (const Timestamp time : {Timestamp{0}, minute, day, 20'000 * day, 45'000 * day}) {
        const JobId one = stored(library, samples::job("one"), time);
        const JobId other = stored(library, samples::job("other"), time + minute - 1);
        CHECK(one != other);
        CHECK(std::min(one, other) > last);
        CHECK(one >> job_id_drawn_bits == other >> job_id_drawn_bits);
        last = std::max(one, other);
    }
    // Clocks that are far off still give ids that are in bounds and unlike others.
    for (const Timestamp time : {-day, 1'000'000'000 * day, std::numeric_limits<Timestamp>::min()}) {
        const JobId id = stored(library, samples::job("off"), time);
        CHECK(id > 0);
        CHECK(id < (JobId{1} << job_id_bits));
        CHECK(stored(library, samples::job("off"), time) != id);
    }
}

TEST_CASE("jobs are listed with the last changed first, by pages", "[library]") {
    Library library = Library::in_memory();
    CHECK_FALSE(library.kept());
    for (int i = 0; i < 25; ++i)
        stored(library, samples::job("Job " + std::to_string(i)), i);
    CHECK(names(library.list("", 3)) == Names{"Job 24", "Job 23", "Job 22"});
    CHECK(names(library.list("", 3, 3)) == Names{"Job 21", "Job 20", "Job 19"});
    CHECK(names(library.list("", 10, 23)) == Names{"Job 1", "Job 0"});
    CHECK(names(library.list("", 10, 25)).empty());
    CHECK(names(library.list("", -1, -5)).empty());
    CHECK(names(library.list("", 1, -5)) == Names{"Job 24"});
    CHECK(*library.count("") == 25);

    const JobId first = library.named("Job 0")->front().id;
    Job job = *library.open(first);
    const LoggedEdit edit = samples::numbered_edit(job, 1, 100);
    REQUIRE_FALSE(library.append_edits(first, {edit}, job));
    CHECK(names(library.list("", 1)) == Names{"Job 0"});
    CHECK(library.row(first)->created == 0);
    CHECK(library.row(first)->updated == 100);
}

TEST_CASE("jobs of one name are found whatever else is there", "[library]") {
    Library library = Library::in_memory();
    const JobId older = stored(library, samples::job("Twice"), 1);
    const JobId newer = stored(library, samples::job("Twice"), 2);
    stored(library, samples::job("Twice as many"), 3);
    const LibraryResult<std::vector<JobRow>> rows = library.named("Twice");
    REQUIRE(rows);
    REQUIRE(rows->size() == 2);
    CHECK((*rows)[0].id == newer);
    CHECK((*rows)[1].id == older);
    CHECK(names(library.named("twice")).empty());
}

TEST_CASE("a removed job can be brought back until it is purged", "[library]") {
    Library library = Library::in_memory();
    Job job = samples::job("Gone");
    const JobId id = stored(library, job, 1);
    const LoggedEdit edit = samples::numbered_edit(job, 1, 2);
    REQUIRE_FALSE(library.append_edits(id, {edit}, job));
    const JobId other = stored(library, samples::job("Stays"), 3);

    REQUIRE_FALSE(library.remove(id, 10));
    CHECK_FALSE(library.remove(id, 11)); // the first time counts
    CHECK(names(library.list("", 10)) == Names{"Stays"});
    CHECK(*library.count("gone") == 0);
    CHECK(names(library.named("Gone")).empty());
    CHECK(library.open(id).fault().kind == LibraryFault::Kind::no_such_job);
    CHECK(library.rename(id, "x", 12)->kind == LibraryFault::Kind::no_such_job);
    CHECK(names(library.list_removed(10)) == Names{"Gone"});
    CHECK(library.row(id)->removed == Timestamp{10});

    REQUIRE_FALSE(library.restore(id));
    CHECK_FALSE(library.restore(id));
    CHECK(*library.open(id) == job);
    CHECK(library.history(id)->size() == 1);
    CHECK(names(library.list("gone", 10)) == Names{"Gone"});

    REQUIRE_FALSE(library.remove(id, 20));
    CHECK(*library.purge(19) == 0);
    CHECK(*library.purge(20) == 1);
    CHECK(library.restore(id)->kind == LibraryFault::Kind::no_such_job);
    CHECK(library.remove(id, 21)->kind == LibraryFault::Kind::no_such_job);
    CHECK(library.history(id).fault().kind == LibraryFault::Kind::no_such_job);
    CHECK(library.row(id).fault().kind == LibraryFault::Kind::no_such_job);
    CHECK(library.append_edits(id, {edit}, job)->kind == LibraryFault::Kind::no_such_job);
    CHECK(library.open(other));
    CHECK_FALSE(library.check());
}

TEST_CASE("a copy is a job of its own", "[library]") {
    Library library = Library::in_memory();
    const Job job = samples::job("Design");
    const JobId id = stored(library, job, 1);
    const LibraryResult<JobId> copy = library.duplicate(id, "Design copy", 2);
    REQUIRE(copy);
    CHECK(*copy != id);
    Job expected = job;
    expected.name = "Design copy";
    CHECK(*library.open(*copy) == expected);
    CHECK(*library.open(id) == job);
    CHECK(library.history(*copy)->empty());
    CHECK(library.duplicate(12345, "x", 3).fault().kind == LibraryFault::Kind::no_such_job);
    CHECK(library.duplicate(id, "", 3).fault().kind == LibraryFault::Kind::bad_name);
    CHECK(*library.count("") == 2);
}

TEST_CASE("renaming is an edit, and bad names are refused", "[library]") {
    Library library = Library::in_memory();
    Job job = samples::job("Before");
    const JobId id = stored(library, job, 1);
    REQUIRE_FALSE(library.rename(id, "After", 2));
    CHECK(library.open(id)->name == "After");
    CHECK(names(library.list("after", 10)) == Names{"After"});
    CHECK(*library.count("before") == 0);
    const LibraryResult<std::vector<LoggedEdit>> history = library.history(id);
    REQUIRE(history);
    REQUIRE(history->size() == 1);
    CHECK(history->front() == LoggedEdit{{SetName{0, "After"}}, {SetName{0, "Before"}}, 2});

    for (const std::string& bad : {std::string(), std::string("  "), std::string("\xff"),
                                   std::string(longest_name + 1, 'a')}) {
        const std::optional<LibraryFault> fault = library.rename(id, bad, 3);
        REQUIRE(fault);
        CHECK(fault->kind == LibraryFault::Kind::bad_name);
    }
    CHECK(library.open(id)->name == "After");
    CHECK(library.history(id)->size() == 1);
}

TEST_CASE("a job that could not be read again is not stored", "[library]") {
    Library library = Library::in_memory();
    Job job = samples::job("Twice one station");
    job.heads[1].station = job.heads[0].station;
    CHECK(library.create(job, 1).fault().kind == LibraryFault::Kind::unreadable_job);
    CHECK(*library.count("") == 0);
}

TEST_CASE("press profiles are kept by themselves", "[library]") {
    const ScratchFolder folder;
    PressProfile press;
    press.name = "Ten stations";
    press.adjusters.push_back({"left front", AdjusterSide::left, -200.0, 0.1, 1.27, 10, false});
    PressId id = 0;
    {
        Library library = opened(folder.path());
        id = *library.add_press(press, 1);
        PressProfile other = press;
        other.name = "another";
        other.stations = 14;
        REQUIRE(library.add_press(other, 2));
    }
    Library library = opened(folder.path());
    CHECK(*library.open_press(id) == press);
    LibraryResult<std::vector<PressRow>> rows = library.presses();
    REQUIRE(rows);
    REQUIRE(rows->size() == 2);
    CHECK((*rows)[0].name == "another");
    CHECK((*rows)[1] == PressRow{id, "Ten stations", 10, 1});

    press.stations = 12;
    REQUIRE_FALSE(library.change_press(id, press, 5));
    CHECK(library.open_press(id)->stations == 12);
    PressProfile bad = press;
    bad.stations = 1;
    CHECK(library.change_press(id, bad, 6)->kind == LibraryFault::Kind::unreadable_job);
    CHECK(library.add_press(bad, 6).fault().kind == LibraryFault::Kind::unreadable_job);

    REQUIRE_FALSE(library.remove_press(id));
    CHECK(library.remove_press(id)->kind == LibraryFault::Kind::no_such_press);
    CHECK(library.change_press(id, press, 7)->kind == LibraryFault::Kind::no_such_press);
    CHECK(library.open_press(id).fault().kind == LibraryFault::Kind::no_such_press);
    CHECK(library.presses()->size() == 1);
}

TEST_CASE("settings keep the last value", "[library]") {
    Library library = Library::in_memory();
    CHECK_FALSE(*library.setting(setting_key::theme));
    REQUIRE_FALSE(library.set_setting(setting_key::theme, "dark"));
    REQUIRE_FALSE(library.set_setting(setting_key::language, ""));
    REQUIRE_FALSE(library.set_setting(setting_key::theme, "light"));
    CHECK(*library.setting(setting_key::theme) == std::string("light"));
    CHECK(*library.setting(setting_key::language) == std::string());
}

TEST_CASE("libraries in memory are apart, and one lives while anything has it open", "[library]") {
    std::optional<Library> first = Library::in_memory();
    Library second = Library::in_memory();
    stored(*first, samples::job("Only in the first"), 1);
    CHECK(*second.count("") == 0);
    LibraryResult<Library> again = Library::open(first->place());
    REQUIRE(again);
    first.reset();
    CHECK(names(again->list("", 10)) == Names{"Only in the first"});
    CHECK(again->path().empty());
}
