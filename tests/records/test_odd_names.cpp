// Odd names and values at the limits of every field: through edits, the library, files, links and
// assess().
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "app/records/call_log.h"
#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "app/records/job_table.h"
#include "app/records/library.h"
#include "app/records/trainees.h"
#include "core/assess.h"
#include "core/fields.h"
#include "core/job_check.h"
#include "tests/records/odd_names.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Kind = LibraryFault::Kind;

namespace {

Job named(const std::string& name) {
    Job job = samples::job("Any", {"Any", "Red"});
    job.name = name;
    job.press.name = name;
    job.heads.front().colour = name;
    job.heads.front().notes.ink = name;
    job.garment.name = name;
    return job;
}

Library opened(const ScratchFolder& folder, bool word_index) {
    LibraryOptions options;
    options.word_index = word_index;
    LibraryResult<Library> library = Library::open(folder.path(), options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

} // namespace

TEST_CASE("odd names are stored, found, written to files and read again", "[storage][names]") {
    for (const bool word_index : {true, false}) {
        const ScratchFolder folder;
        std::vector<JobId> ids;
        {
            Library library = opened(folder, word_index);
            for (const std::string& name : odd_names()) {
                INFO("name " << name);
                const Job job = named(name);
                REQUIRE_FALSE(fault_of(job));
                const LibraryResult<JobId> id = library.create(job, 1);
                REQUIRE(id);
                ids.push_back(*id);
                REQUIRE(library.add_press(job.press, 1));
                REQUIRE(library.add_run(*id, job, 2));
                CHECK_FALSE(library.rename(*id, name, 3));
            }
        }
        Library library = opened(folder, word_index);
        CHECK_FALSE(library.check());
        for (std::size_t n = 0; n < ids.size(); ++n) {
            const std::string name = odd_names()[n];
            INFO("name " << name);
            const Job job = named(name);
            const LibraryResult<Job> stored = library.open(ids[n]);
            REQUIRE(stored);
            CHECK(*stored == job);
            CHECK(library.row(ids[n])->name == name);
            CHECK(library.named(name)->size() == 1);
            CHECK(library.list(name, 100)); // whatever it finds
            CHECK(library.count(name));
            CHECK(library.runs(ids[n])->front().press == name);

            const ReadJob from_file = read_job(write_job(job));
            REQUIRE(from_file);
            CHECK(*from_file.job == job);
            const ReadJob from_link = read_job_link(job_link_fragment(job));
            REQUIRE(from_link);
            CHECK(*from_link.job == job);
            Assessment assessment;
            assess(job, assessment);
            CHECK(is_utf8(job_table(job, assessment, Language::spanish, LengthUnit::inch)));
        }
        // All but what stands behind a NUL, where SQLite's comparing ends.
        CHECK(*library.count("red") >= static_cast<std::int64_t>(ids.size()) - 2);
    }
}

TEST_CASE("people and calls bear odd names", "[storage][names]") {
    const ScratchFolder folder;
    Library library = opened(folder, true);
    for (const std::string& name : odd_names()) {
        INFO("name " << name);
        const std::optional<std::string> kept = trainee_name(name);
        REQUIRE(kept);
        const LibraryResult<TraineeId> id = add_trainee(library, name, 1);
        REQUIRE(id);
        bool there = false;
        const std::vector<TraineeRow> people = *trainees(library);
        for (const TraineeRow& row : people) there |= row.id == *id && row.name == *kept;
        CHECK(there);
        CHECK(is_utf8(*export_trainee(library, *id)));
        const LibraryResult<CallId> call = add_call(library, {1, name, "", name, name, {}});
        REQUIRE(call);
        CHECK(open_call(library, *call)->notes == name);
    }
    CHECK(is_utf8(group_table(*group_summary(library), Language::english)));
    CHECK_FALSE(library.check());
}

TEST_CASE("what is no name is refused everywhere and leaves no trace", "[storage][names]") {
    const ScratchFolder folder;
    Library library = opened(folder, true);
    Job good = samples::job("Good");
    const JobId id = *library.create(good, 1);
    for (const std::string& name : bad_names()) {
        INFO("bytes " << name.size());
        CHECK_FALSE(is_name(name));
        CHECK(fault_of(named(name)));
        CHECK_FALSE(library.create(named(name), 2));
        CHECK(library.rename(id, name, 2)->kind == Kind::bad_name);
        CHECK_FALSE(library.duplicate(id, name, 2));
        Job job = good;
        CHECK_FALSE(apply(job, Edit{SetName{0, name}}));
        CHECK_FALSE(apply(job, Edit{SetName{job.heads.front().id, name}}));
        CHECK(job == good);
        CHECK_FALSE(add_trainee(library, name, 2));
        // Such bytes may be searched for, and nothing has them.
        CHECK(library.list(name, 10));
        CHECK(library.named(name)->empty());
        // In a file, too.
        std::string text = write_job(good);
        text.replace(text.find("\"Good\"") + 1, 4, name);
        CHECK_FALSE(read_job(text));
    }
    CHECK(library.list("", 100)->size() == 1);
    CHECK(*library.open(id) == good);
    CHECK_FALSE(library.check());
}

namespace {

// Through the library, a file and a link unchanged, and assessed.
void check_kept(Library& library, const Job& job) {
    const LibraryResult<JobId> id = library.create(job, 1);
    REQUIRE(id);
    CHECK(*library.open(*id) == job);
    const ReadJob from_file = read_job(write_job(job));
    REQUIRE(from_file);
    CHECK(*from_file.job == job);
    const ReadJob from_link = read_job_link(job_link_fragment(job));
    REQUIRE(from_link);
    CHECK(*from_link.job == job);
    Assessment assessment;
    assess(job, assessment);
    CHECK(assessment.heads.size() == job.heads.size());
}

} // namespace

TEST_CASE("every field takes its limits and nothing beyond, through edit, library, file and link",
          "[storage][limits]") {
    const ScratchFolder folder;
    Library library = opened(folder, true);
    const Job start = samples::job("Limits");
    const HeadId head = start.heads.front().id;
    constexpr double far = std::numeric_limits<double>::infinity();
    int kept = 0;
    for (int n = 0; n < static_cast<int>(Field::count); ++n) {
        const auto field = static_cast<Field>(n);
        const FieldInfo& info = info_of(field);
        INFO(info.key);
        const HeadId whose = info.owner == FieldOwner::head ? head : 0;
        for (const double value : {info.least, info.most}) {
            INFO(value);
            CHECK(accepts(field, value));
            Job job = start;
            const Applied applied = apply(job, Edit{SetNumber{whose, field, value}});
            // Refused where it contradicts another number, as a range's lower end above its upper.
            if (!applied) {
                CHECK(job == start);
                continue;
            }
            ++kept;
            CHECK(number_of(job, find_head(job, head), field) == value);
            check_kept(library, job);
            REQUIRE(apply(job, *applied.inverse));
            CHECK(job == start);
        }
        for (const double value :
             {std::nextafter(info.least, -far), std::nextafter(info.most, far), far, -far,
              std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::max()}) {
            INFO(value);
            CHECK_FALSE(accepts(field, value));
            Job job = start;
            CHECK_FALSE(apply(job, Edit{SetNumber{whose, field, value}}));
            CHECK(job == start);
            // As if a damaged memory or another program had put it there.
            number_of(job, &job.heads.front(), field) = value;
            CHECK(fault_of(job));
            CHECK_FALSE(library.create(job, 1));
            if (std::isfinite(value)) CHECK_FALSE(read_job(write_job(job)));
        }
    }
    CHECK(kept > static_cast<int>(Field::count)); // more than half of the limits stand alone
    CHECK_FALSE(library.check());
}
