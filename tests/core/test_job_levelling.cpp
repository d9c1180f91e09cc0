// Levelling of a job: readings against what its heads are set to.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/job_levelling.h"
#include "tests/core/height_samples.h"

using namespace carriageway;
using carriageway::tests::readings_of;
using Catch::Matchers::WithinAbs;

namespace {

/// Heads with ids from 1, each set to three heights.
Job job_set_to(const std::vector<ScreenHeights>& set) {
    Job job;
    for (std::size_t i = 0; i < set.size(); ++i) {
        Head head;
        head.id = static_cast<HeadId>(i + 1);
        head.station = static_cast<int>(i + 1);
        head.heights = set[i];
        job.heads.push_back(head);
    }
    return job;
}

} // namespace

TEST_CASE("A head's set heights are no fault of its level", "[levelling]") {
    // By hand: the planes through the heights at (-250, -350), (250, -350) and (0, 350): 3; 4; and
    // 3.5 on the operator's left, 4.5 on the right, 3.3 at the machine: 0.5 rise in 250, and from
    // 4.0 to 3.3 over 700. The fourth is set to 3 and stands 0.5 higher.
    Job job = job_set_to({{}, {4.0, 4.0, 4.0}, {3.5, 4.5, 3.3}, {}, {}});
    const std::vector<Plane> heads{{3.0, 0.0, 0.0}, {4.0, 0.0, 0.0}, {3.65, 0.002, -0.001},
                                   {3.5, 0.0, 0.0}, {3.0, 0.0, 0.0}};
    const std::vector<Point> points{
        {-200.0, -250.0}, {200.0, -250.0}, {0.0, 0.0}, {-200.0, 250.0}, {200.0, 250.0}};
    const std::vector<Plane> platens{{}, {}, {0.9, 0.0, 0.0}, {}};
    job.height_readings = readings_of(heads, platens, points);
    const JobLevelling found = job_levelling(job);
    REQUIRE(found.heads.size() == 5);
    for (const std::size_t right : {0u, 1u, 2u, 4u}) {
        CHECK_THAT(found.heads[right].worst, WithinAbs(0.0, 1e-9));
        CHECK_FALSE(found.heads[right].out);
    }
    CHECK_THAT(found.heads[3].worst, WithinAbs(0.5, 1e-9));
    CHECK(found.out == 2);
    REQUIRE(found.worst);
    CHECK_FALSE(found.worst->head);
    CHECK(found.worst->off.number == 3);
    CHECK_THAT(found.worst->off.worst, WithinAbs(0.9, 1e-9));
    // The gaps alone would call the head that is set to 4 mm too high.
    CHECK(heads_off(level(job.height_readings), found.targets)[1].out);
}

TEST_CASE("Set heights count at the place that was read", "[levelling]") {
    // One place each, the operator's left height point: nothing but offsets.
    Job job = job_set_to({{}, {3.6, 3.0, 3.0}});
    const std::vector<Plane> heads{{3.0, 0.0, 0.0}, {3.6, 0.0, 0.0}};
    const std::vector<Plane> platens(3);
    job.height_readings = readings_of(heads, platens, {{-250.0, -350.0}});
    JobLevelling found = job_levelling(job);
    REQUIRE(found.heads.size() == 2);
    CHECK(found.heads[1].known == LevelTerms::offset);
    for (const PartOff& head : found.heads) CHECK_THAT(head.worst, WithinAbs(0.0, 1e-9));
    // A head that was taken off the press: its readings still tell platens apart.
    job.heads.pop_back();
    found = job_levelling(job);
    REQUIRE(found.heads.size() == 2);
    CHECK(found.heads[1].known == LevelTerms::none);
    CHECK_FALSE(found.heads[1].out);
    CHECK_THAT(found.heads[0].worst, WithinAbs(0.0, 1e-9));
    REQUIRE(found.platens.size() == 3);
    for (const PartOff& platen : found.platens) CHECK(platen.known == LevelTerms::offset);
    CHECK(job_levelling(Job{}).levelling.refusal == LevelRefusal::no_readings);
}
