#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/job_parts.h"
#include "tests/core/walk_samples.h"

using namespace carriageway;
using sample::one_head;
using sample::Random;

TEST_CASE("What says nothing isn't noted", "[job_parts]") {
    Job job = one_head();
    job.name.clear();
    job.heads[0].colour.clear();
    const Head* head = &job.heads[0];
    for (const JobPart part :
         {JobPart::colour, JobPart::blade_edge, JobPart::ink_note, JobPart::stencil_note,
          JobPart::rounds, JobPart::name, JobPart::garment_name, JobPart::height_readings,
          JobPart::approval, JobPart::run_notes}) {
        CAPTURE(static_cast<int>(part));
        CHECK_FALSE(is_noted(job, head, part));
    }
    CHECK(is_noted(job, head, JobPart::stops));
    CHECK(is_noted(job, nullptr, JobPart::press));
    CHECK_FALSE(is_noted(job, nullptr, JobPart::stops));
}

TEST_CASE("Parts without an edit of their own have none", "[job_parts]") {
    const Job job = one_head();
    for (const JobPart part : {JobPart::outline, JobPart::flash_after, JobPart::flash_together,
                               JobPart::wet_on_wet, JobPart::pinned, JobPart::count}) {
        CHECK_FALSE(edit_of_part(job, job, 1, part));
    }
    CHECK_FALSE(edit_of_part(job, job, 9, JobPart::stops));
}

TEST_CASE("A part's edit makes the two alike in it, and all parts make two jobs alike",
          "[job_parts]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int differed = 0;
    for (int i = 0; i < 500; ++i) {
        CAPTURE(i);
        Job from = sample::likely_job(random, 3);
        Job to = from;
        sample::change_plan(random, from, 25);
        sample::note_in_run(random, from);
        sample::note_in_run(random, to);
        from.uses[11] = random.chance(0.5) ? StationUse::flash : StationUse::open;
        for (int p = 0; p < static_cast<int>(JobPart::count); ++p) {
            const auto part = static_cast<JobPart>(p);
            CAPTURE(p);
            for (std::size_t h = 0; h < (is_of_head(part) ? from.heads.size() : 1); ++h) {
                const HeadId id = is_of_head(part) ? from.heads[h].id : 0;
                differed += same_part(from, &from.heads[h], to, &to.heads[h], part) ? 0 : 1;
                const auto edit = edit_of_part(from, to, id, part);
                if (!edit) continue;
                REQUIRE(apply(to, *edit));
                REQUIRE(same_part(from, &from.heads[h], to, &to.heads[h], part));
            }
        }
        // What is left are numbers, and lists that are joined.
        for (int f = 0; f < static_cast<int>(Field::count); ++f) {
            const auto field = static_cast<Field>(f);
            for (std::size_t h = 0; h < to.heads.size(); ++h)
                number_of(to, &to.heads[h], field) = number_of(from, &from.heads[h], field);
        }
        to.walk = from.walk;
        to.record = from.record;
        REQUIRE(to == from);
    }
    CHECK(differed > 500);
}
