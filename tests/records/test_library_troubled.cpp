// A disk that fails at each point of the way, and a power cut at any: what was said to be saved is
// there afterwards, whole, and nobody takes a sound library for a damaged one.
#include <filesystem>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "app/records/library.h"
#include "tests/records/stored_samples.h"
#include "tests/records/troubled_disk.h"
#include "tests/samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;
using Journal = LibraryOptions::Journal;
using Trouble = TroubledDisk::Trouble;

namespace {

LibraryOptions on_troubled_disk(Journal journal) {
    TroubledDisk::install();
    TroubledDisk::fail(-1);
    LibraryOptions options;
    options.journal = journal;
    options.vfs = TroubledDisk::name();
    return options;
}

// A job that is worked on: the edits that were said to be saved, in order.
struct Work {
    JobId id = 0;
    Job job = samples::job("Worked on"); ///< after the last of them
    std::vector<LoggedEdit> saved;
    std::vector<LibraryFault> faults;
};

// One edit, as autosave writes it: where it fails, the library is opened anew and it is tried once
// more. False: that failed, too.
bool edit_once(std::optional<Library>& library, const std::string& folder,
               const LibraryOptions& options, Work& work) {
    Job job = work.job;
    const int number = static_cast<int>(work.saved.size()) + 1;
    const LoggedEdit edit = samples::numbered_edit(job, number, 10 + number);
    for (int tries = 0; tries < 2; ++tries) {
        if (!library) {
            LibraryResult<Library> opened = Library::open(folder, options);
            if (opened) library.emplace(std::move(*opened));
            else work.faults.push_back(opened.fault());
        }
        if (!library) continue;
        const std::optional<LibraryFault> fault = library->append_edits(work.id, {edit}, job);
        if (!fault) {
            work.saved.push_back(edit);
            work.job = job;
            return true;
        }
        work.faults.push_back(*fault);
        library.reset();
    }
    return false;
}

// Edits, with the library closed and opened in between; ends where an edit can't be saved.
void edit_all(const std::string& folder, const LibraryOptions& options, Work& work) {
    for (int sitting = 0; sitting < 2; ++sitting) {
        std::optional<Library> library;
        for (int n = 0; n < 3; ++n)
            if (!edit_once(library, folder, options, work)) return;
        if (const LibraryResult<std::vector<JobRow>> rows = library->list("worked", 10); !rows)
            work.faults.push_back(rows.fault());
    }
}

// What is wrong with a library after the trouble; empty: nothing. An edit that was not said to be
// saved may be there as the last one, and once.
std::string wrong_with(const std::string& folder, const LibraryOptions& options, const Work& work) {
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) return "it does not open: " + library.fault().detail;
    if (!library->can_write()) return "it can't be written: " + library->write_fault()->detail;
    if (const std::optional<LibraryFault> found = library->check())
        return "check: " + found->detail;
    const LibraryResult<std::vector<LoggedEdit>> history = library->history(work.id);
    const LibraryResult<Job> job = library->open(work.id);
    if (!history || !job) return "the job is gone";
    if (history->size() < work.saved.size()) return "an edit that was saved is missing";
    if (history->size() > work.saved.size() + 1) return "an edit is there twice";
    for (std::size_t n = 0; n < history->size(); ++n)
        if (samples::number_of_edit((*history)[n].edit) != static_cast<int>(n) + 1)
            return "edits are out of order";
    if (history->size() == work.saved.size() && !(*job == work.job)) return "the job is another";
    if (const std::optional<LibraryFault> fault = library->set_setting("theme", "dark"))
        return "it can't be changed: " + fault->detail;
    return {};
}

// A library with one job, closed.
Work begun(const std::string& folder, const LibraryOptions& options) {
    Work work;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    work.id = *library->create(work.job, 1);
    return work;
}

} // namespace

TEST_CASE("whichever operation of the disk fails, what was saved is there, and faults are told",
          "[library][storage]") {
    const LibraryOptions options =
        on_troubled_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    const Trouble trouble = GENERATE(Trouble::once, Trouble::for_good);
    // The long lane fails each of them; here it is some, and others with another seed.
    const int step = asked_for("CARRIAGEWAY_EVERY_OPERATION", 0) != 0 ? 1 : 7;
    int told = 0;
    long long number = Catch::getSeed() % static_cast<unsigned>(step);
    INFO("seed " << Catch::getSeed());
    for (bool came_to_it = true; came_to_it; number += step) {
        const ScratchFolder folder;
        Work work = begun(folder.path(), options);
        TroubledDisk::fail(number, trouble);
        edit_all(folder.path(), options, work);
        came_to_it = TroubledDisk::failed();
        TroubledDisk::fail(-1);
        INFO("operation " << number << (trouble == Trouble::once ? " once" : " and all after it"));
        for (const LibraryFault& fault : work.faults) {
            INFO(fault.detail);
            // A disk that can't be read is no damaged library: that would be put aside.
            CHECK(fault.kind != Kind::corrupt);
            CHECK(fault.kind != Kind::newer_version);
        }
        told += !work.faults.empty();
        if (trouble == Trouble::once) CHECK(work.saved.size() == 6); // the second try works
        else CHECK((work.saved.size() == 6 || !work.faults.empty()));
        CHECK(wrong_with(folder.path(), options, work) == "");
    }
    INFO(number << " operations");
    CHECK(number > 50);
    CHECK(told > 10);
}

TEST_CASE("a library that can't be made because the disk fails is made once it doesn't",
          "[library][storage]") {
    const LibraryOptions options =
        on_troubled_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    long long number = Catch::getSeed() % 3; // every third
    for (bool came_to_it = true; came_to_it; number += 3) {
        const ScratchFolder folder;
        TroubledDisk::fail(number, Trouble::for_good);
        {
            const LibraryResult<Library> library = Library::open(folder.path(), options);
            INFO("operation " << number);
            if (!library) CHECK(library.fault().kind != Kind::corrupt);
        }
        came_to_it = TroubledDisk::failed();
        TroubledDisk::fail(-1);
        CHECK(wrong_with(folder.path(), options, begun(folder.path(), options)) == "");
    }
}

// That the test above would find a loss: a disk that says it has written what it hasn't.
TEST_CASE("a disk that loses a write and says nothing is found out by the same test",
          "[library][storage]") {
    const LibraryOptions options = on_troubled_disk(Journal::write_ahead);
    int found = 0;
    for (long long number = 0; number < 200; number += 20) {
        const ScratchFolder folder;
        Work work = begun(folder.path(), options);
        TroubledDisk::fail(number, Trouble::unsaid);
        edit_all(folder.path(), options, work);
        TroubledDisk::fail(-1);
        found += !wrong_with(folder.path(), options, work).empty() || work.saved.size() < 6;
    }
    CHECK(found > 0);
}

namespace {

// Cuts the power while edits are made; what is then wrong.
std::string cut_off_work(const LibraryOptions& options, long long operations, bool lies,
                         TroubledDisk::Left left, std::mt19937& random) {
    const ScratchFolder folder;
    Work work = begun(folder.path(), options);
    TroubledDisk::remember(lies);
    const long long moment = static_cast<long long>(random() % static_cast<unsigned>(operations));
    TroubledDisk::fail(moment, Trouble::for_good); // the machine is off from here on
    edit_all(folder.path(), options, work);
    TroubledDisk::fail(-1);
    const ScratchFolder after;
    TroubledDisk::cut(after.path(), left, random);
    // Power may have gone before anything was opened.
    if (!std::filesystem::exists(after.file("library.db"))) return work.saved.empty() ? "" : "gone";
    const std::string wrong = wrong_with(after.path(), options, work);
    return wrong.empty() ? wrong
                         : wrong + " (off at operation " + std::to_string(moment) + ", " +
                               std::to_string(work.saved.size()) + " edits saved)";
}

long long operations_of_work(const LibraryOptions& options) {
    const ScratchFolder folder;
    Work work = begun(folder.path(), options);
    TroubledDisk::fail(-1);
    edit_all(folder.path(), options, work);
    REQUIRE(work.saved.size() == 6);
    return TroubledDisk::operations();
}

} // namespace

TEST_CASE("a power cut at any moment loses no edit that was saved", "[library][storage]") {
    if (open_files_are_locked) SKIP("nobody can do here to a file that is open what is tried");
    const LibraryOptions options =
        on_troubled_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const long long operations = operations_of_work(options);
    const long rounds = asked_for("CARRIAGEWAY_CUTS", 40);
    for (long round = 0; round < rounds; ++round) {
        INFO("round " << round);
        const auto left =
            round % 4 == 0 ? TroubledDisk::Left::synced : TroubledDisk::Left::some;
        CHECK(cut_off_work(options, operations, false, left, random) == "");
    }
}

TEST_CASE("a disk that says synced and isn't loses edits at a power cut", "[library][storage]") {
    if (open_files_are_locked) SKIP("nobody can do here to a file that is open what is tried");
    const LibraryOptions options =
        on_troubled_disk(GENERATE(Journal::write_ahead, Journal::rollback));
    std::mt19937 random(Catch::getSeed());
    const long long operations = operations_of_work(options);
    int lost = 0;
    for (int round = 0; round < 20; ++round)
        lost += cut_off_work(options, operations, true, TroubledDisk::Left::synced, random) != "";
    CHECK(lost > 0);
}
