#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <algorithm>

#include "core/job_changes.h"
#include "core/walk.h"
#include "tests/core/walk_samples.h"

using namespace carriageway;
using sample::one_head;
using sample::Random;

namespace {

constexpr CompareBy as_planned{false, false};

/// Heads with these ids and colours on stations 1, 2, ...
Job job_of(const std::vector<std::pair<HeadId, std::string>>& heads) {
    Job job = one_head();
    const Head pattern = job.heads.front();
    job.heads.clear();
    for (const auto& [id, colour] : heads) {
        Head head = pattern;
        head.id = id;
        head.colour = colour;
        head.station = static_cast<int>(job.heads.size()) + 1;
        job.heads.push_back(head);
    }
    return job;
}

JobDifference number_of_head(HeadId head, int station, Field field, double a, double b) {
    JobDifference one;
    one.head_a = one.head_b = head;
    one.station = station;
    one.field = field;
    one.a = a;
    one.b = b;
    return one;
}

} // namespace

TEST_CASE("Copies go together by id, what is left over by colour", "[job_changes]") {
    // Three of five have id and colour alike.
    const Job a = job_of({{1, "black"}, {2, "red"}, {3, "blue"}, {4, "green"}, {5, "grey"}});
    const Job b = job_of(
        {{3, "blue"}, {1, "black"}, {5, "grey"}, {2, "scarlet"}, {9, "green"}, {10, "white"}});
    CHECK(match_heads(a, b) == std::vector<HeadPair>{{1, 1, MatchedBy::id},
                                                     {2, 2, MatchedBy::id},
                                                     {3, 3, MatchedBy::id},
                                                     {4, 9, MatchedBy::colour},
                                                     {5, 5, MatchedBy::id},
                                                     {0, 10, MatchedBy::nothing}});
}

TEST_CASE("Other jobs go together by colour, then by order", "[job_changes]") {
    // Ids that happen to be alike say nothing: of three heads only one has its colour too.
    const Job a = job_of({{1, "black"}, {2, "red"}, {3, "blue"}});
    const Job b = job_of({{1, "black"}, {2, "blue"}, {3, "pink"}, {4, "grey"}});
    CHECK(match_heads(a, b) == std::vector<HeadPair>{{1, 1, MatchedBy::colour},
                                                     {2, 3, MatchedBy::order},
                                                     {3, 2, MatchedBy::colour},
                                                     {0, 4, MatchedBy::nothing}});
    // Names of their own only: the same name twice, first with first; no name is no name.
    const Job c = job_of({{11, "red"}, {12, ""}, {13, "red"}});
    const Job d = job_of({{21, ""}, {22, "red"}, {23, "red"}});
    CHECK(match_heads(c, d) == std::vector<HeadPair>{{11, 22, MatchedBy::colour},
                                                     {12, 21, MatchedBy::order},
                                                     {13, 23, MatchedBy::colour}});
    CHECK(match_heads(Job{}, Job{}).empty());
    CHECK(match_heads(Job{}, d).size() == 3);
}

TEST_CASE("Half of the ids is not most of them", "[job_changes]") {
    const Job a = job_of({{1, "black"}, {2, "red"}});
    const Job b = job_of({{2, "black"}, {1, "black"}});
    CHECK(match_heads(a, b)[0] == HeadPair{1, 2, MatchedBy::colour});
}

TEST_CASE("What was really set is compared, or what was planned", "[job_changes]") {
    const Job a = job_of({{1, "black"}, {2, "red"}});
    Job b = a;
    REQUIRE(apply(b, {really_set(b, 2, Field::print_speed, 500.0, {})}));
    REQUIRE(apply(b, {tick(b, 1, Field::print_speed, {})}));
    CHECK(job_changes(a, b, as_planned).empty());
    CHECK(job_changes(a, b) == std::vector<JobDifference>{
                                   number_of_head(2, 2, Field::print_speed, 600.0, 500.0)});
}

TEST_CASE("Each kind of difference, by station and by field", "[job_changes]") {
    Job a = job_of({{1, "black"}, {2, "red"}, {3, "blue"}, {4, "grey"}, {5, "white"}});
    a.uses[8] = StationUse::flash;
    Job b = a;
    b.heads.erase(b.heads.begin() + 4);
    REQUIRE(apply(b, {MoveHead{2, 7}}));
    REQUIRE(apply(b, {SetNote{1, Note::ink, "soft"}}));
    REQUIRE(apply(b, {SetWinged{1, false}}));
    REQUIRE(apply(b, {SetNumber{1, Field::flood_gauge, 1.5}}));
    REQUIRE(apply(b, {SetNumber{1, Field::squeegee_gauge, 0.5}}));
    Image image;
    image.outline = {{-50.0, -50.0}, {50.0, -50.0}, {0.0, 60.0}};
    REQUIRE(apply(b, {SetImage{3, image}}));
    REQUIRE(apply(b, {SetUse{9, StationUse::cool}}));
    REQUIRE(apply(b, {SetNumber{0, Field::flash_dwell, 5.0}}));
    REQUIRE(apply(b, {SetBaseHead{3}}));
    Head more = b.heads.front();
    more.id = 6;
    more.colour = "more";
    more.station = 8;
    REQUIRE(apply(b, {AddHead{more}}));

    const std::vector<JobDifference> found = job_changes(a, b);
    REQUIRE(found.size() == 11);
    CHECK(found[0].kind == DifferenceKind::text);
    CHECK(found[0].part == JobPart::ink_note);
    CHECK(found[0].text_a.empty());
    CHECK(found[0].text_b == "soft");
    CHECK(found[1].kind == DifferenceKind::choice);
    CHECK(found[1].part == JobPart::winged);
    CHECK(found[1].a == 1.0);
    CHECK(found[1].b == 0.0);
    CHECK(found[2] == number_of_head(1, 1, Field::squeegee_gauge, 1.0, 0.5));
    CHECK(found[3] == number_of_head(1, 1, Field::flood_gauge, 1.0, 1.5));
    CHECK(found[4].kind == DifferenceKind::station);
    CHECK(found[4].station == 2);
    CHECK(found[4].a == 2.0);
    CHECK(found[4].b == 7.0);
    CHECK(found[5].kind == DifferenceKind::outline);
    CHECK(found[5].head_a == 3);
    CHECK(found[6].kind == DifferenceKind::head_only_in_a);
    CHECK(found[6].head_a == 5);
    CHECK(found[6].head_b == 0);
    CHECK(found[6].station == 5);
    CHECK(found[7].kind == DifferenceKind::head_only_in_b);
    CHECK(found[7].head_b == 6);
    CHECK(found[7].station == 8);
    CHECK(found[8].kind == DifferenceKind::use);
    CHECK(found[8].station == 9);
    CHECK(found[8].a == static_cast<double>(StationUse::flash));
    CHECK(found[8].b == static_cast<double>(StationUse::cool));
    CHECK(found[9].part == JobPart::base_head);
    CHECK(found[9].a == 1.0);
    CHECK(found[9].b == 3.0);
    CHECK(found[10].field == Field::flash_dwell);

    const std::vector<JobDifference> mattering = job_changes(a, b, {true, true});
    CHECK(mattering.size() == 9); // without the note and the head that the others are set by
}

TEST_CASE("A head of the second job alone comes where its station comes", "[job_changes]") {
    const Job b = job_of({{1, "white"}, {2, "black"}, {3, "red"}, {4, "blue"}});
    Job a = b;
    a.heads.erase(a.heads.begin());
    a.heads[0].print_speed = 500.0;
    a.registration.base = 3;
    Job other = b;
    other.registration.base = 3;
    const std::vector<JobDifference> found = job_changes(a, other);
    REQUIRE(found.size() == 2);
    CHECK(found[0].kind == DifferenceKind::head_only_in_b);
    CHECK(found[0].station == 1);
    CHECK(found[1].field == Field::print_speed);
}

TEST_CASE("A base that goes together with the other's is no difference", "[job_changes]") {
    Job a = job_of({{1, "black"}, {2, "red"}});
    Job b = job_of({{7, "red"}, {8, "black"}});
    a.registration.base = 2;
    b.registration.base = 7;
    const std::vector<JobDifference> found = job_changes(a, b);
    REQUIRE(found.size() == 2); // both heads stand elsewhere
    CHECK(found[0].kind == DifferenceKind::station);
    CHECK(found[1].kind == DifferenceKind::station);
    b.registration.base = 8;
    CHECK(job_changes(a, b).size() == 3);
}

TEST_CASE("Only what decides the print, without what is assumed or wanted", "[job_changes]") {
    CHECK(decides_the_print(Field::print_speed));
    CHECK(decides_the_print(Field::dryer_time));
    CHECK_FALSE(decides_the_print(Field::friction));
    CHECK_FALSE(decides_the_print(Field::print_order));
    CHECK_FALSE(decides_the_print(Field::arm_radius));
    CHECK_FALSE(decides_the_print(Field::count));
}

TEST_CASE("Every number of head and job that differs is found, alone", "[job_changes]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int changed = 0;
    for (int i = 0; i < 30; ++i) {
        const Job a = sample::likely_job(random, random.whole(1, 4));
        REQUIRE(job_changes(a, a).empty());
        for (int f = 0; f < static_cast<int>(Field::count); ++f) {
            const auto field = static_cast<Field>(f);
            const FieldOwner owner = info_of(field).owner;
            if (owner == FieldOwner::press) continue;
            CAPTURE(i, info_of(field).key);
            const HeadId head = owner == FieldOwner::head ? a.heads.back().id : 0;
            Job b = a;
            const double before = number_of(a, &a.heads.back(), field);
            const double after = sample::wild_number(random, field);
            if (before == after || !apply(b, {SetNumber{head, field, after}})) continue;
            ++changed;
            const std::vector<JobDifference> found = job_changes(a, b, as_planned);
            REQUIRE(found.size() == 1);
            REQUIRE(found[0].head_a == head);
            REQUIRE(found[0].field == field);
            REQUIRE(found[0].a == before);
            REQUIRE(found[0].b == after);
            REQUIRE(job_changes(a, b, {false, true}).size() ==
                    (decides_the_print(field) ? 1U : 0U));
        }
    }
    CHECK(changed > 500);
}

TEST_CASE("Compared the other way round the same differs, in a fixed order", "[job_changes]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < 1000; ++i) {
        CAPTURE(i);
        Job a = sample::likely_job(random, random.whole(2, 5));
        for (std::size_t h = 0; h < a.heads.size(); ++h)
            a.heads[h].colour = "colour " + std::to_string(h);
        Job b = a;
        sample::change_plan(random, b, 12);
        sample::change_heads(random, b);
        sample::note_on_walk(random, b, 20);
        const std::vector<JobDifference> forth = job_changes(a, b);
        std::vector<JobDifference> back = job_changes(b, a);
        REQUIRE(job_changes(a, b) == forth);
        REQUIRE(back.size() == forth.size());
        for (JobDifference& one : back) {
            std::swap(one.head_a, one.head_b);
            std::swap(one.a, one.b);
            std::swap(one.text_a, one.text_b);
            if (one.kind == DifferenceKind::head_only_in_a) {
                one.kind = DifferenceKind::head_only_in_b;
            } else if (one.kind == DifferenceKind::head_only_in_b) {
                one.kind = DifferenceKind::head_only_in_a;
            }
            REQUIRE(std::find(forth.begin(), forth.end(), one) != forth.end());
        }
        // Heads by station, then the job's own.
        for (std::size_t d = 1; d < forth.size(); ++d) {
            const auto is_job = [](const JobDifference& one) {
                return one.head_a == 0 && one.head_b == 0;
            };
            REQUIRE((is_job(forth[d]) || !is_job(forth[d - 1])));
            if (!is_job(forth[d])) REQUIRE(forth[d - 1].station <= forth[d].station);
        }
    }
}
