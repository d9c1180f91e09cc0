#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <algorithm>

#include "core/assess.h"
#include "core/walk.h"
#include "tests/core/walk_samples.h"

using namespace carriageway;
using sample::one_head;
using sample::Random;

namespace {

const Stamp by_an{1'700'000'000'000, "an"};

/// Heads 1 and 2, on stations 4 and 2.
Job heads_to_walk() {
    Job job = one_head();
    Head second = job.heads.front();
    second.id = 2;
    second.station = 2;
    job.heads.front().station = 4;
    job.heads.insert(job.heads.begin(), second);
    return job;
}

void note_real(Job& job, HeadId head, Field field, double value) {
    REQUIRE(apply(job, {really_set(job, head, field, value, by_an)}));
}

} // namespace

TEST_CASE("The walk goes from station to station and ends with the job's own numbers", "[walk]") {
    CHECK(walk_order(heads_to_walk()) == std::vector<HeadId>{2, 1, 0});
    CHECK(walk_order(Job{}) == std::vector<HeadId>{0});
}

TEST_CASE("At a head everything that the press shows is set once", "[walk]") {
    const std::vector<Field> fields = walk_fields(heads_to_walk(), 1);
    CHECK(fields == std::vector<Field>{
                        Field::squeegee_width, Field::flood_width, Field::squeegee_angle,
                        Field::flood_angle, Field::squeegee_gauge, Field::flood_gauge,
                        Field::operator_stop, Field::machine_stop, Field::height_left,
                        Field::height_right, Field::height_machine, Field::squeegee_pressure,
                        Field::flood_pressure, Field::print_speed, Field::flood_speed,
                        Field::print_strokes});
    CHECK(walk_fields(heads_to_walk(), 9).empty());
}

TEST_CASE("The flash is on the walk where there is one, its temperature where noted", "[walk]") {
    Job job = one_head();
    CHECK(walk_fields(job, 0) == std::vector<Field>{Field::cycle});
    job.run.flash_temperature = 400.0; // no unit: nothing to set
    CHECK(walk_fields(job, 0) == std::vector<Field>{Field::cycle});
    job.uses[4] = StationUse::flash;
    CHECK(walk_fields(job, 0) == std::vector<Field>{Field::flash_dwell, Field::flash_temperature,
                                                    Field::cycle});
    job.run.flash_temperature = 0.0;
    CHECK(walk_fields(job, 0) == std::vector<Field>{Field::flash_dwell, Field::cycle});
}

TEST_CASE("A tick keeps the real value, and goes back with its edit's inverse", "[walk]") {
    Job job = one_head();
    CHECK(mark_of(job, 1, Field::squeegee_gauge) == nullptr);
    note_real(job, 1, Field::squeegee_gauge, 1.3);
    const Job noted = job;
    const Stamp by_bo{5, "bo"};
    const Applied applied = apply(job, {tick(job, 1, Field::squeegee_gauge, by_bo, false)});
    REQUIRE(applied);
    const WalkMark* mark = mark_of(job, 1, Field::squeegee_gauge);
    REQUIRE(mark != nullptr);
    CHECK_FALSE(mark->done);
    CHECK(mark->real == 1.3);
    CHECK(mark->stamp == by_bo);
    REQUIRE(apply(job, *applied.inverse));
    CHECK(job == noted);
    REQUIRE(apply(job, {forget(1, Field::squeegee_gauge)}));
    CHECK(job == one_head());
}

TEST_CASE("Really set to what is planned is set as planned", "[walk]") {
    const Job job = one_head();
    CHECK_FALSE(really_set(job, 1, Field::squeegee_gauge, 1.0, by_an).mark.real);
    CHECK(really_set(job, 1, Field::squeegee_gauge, 1.1, by_an).mark.real == 1.1);
    CHECK(really_set(job, 1, Field::squeegee_gauge, 1.0, by_an).mark.done);
}

TEST_CASE("Edits of the walk are refused where the number isn't one of it", "[walk]") {
    Job job = one_head();
    CHECK_FALSE(apply(job, {tick(job, 1, Field::run_past, by_an)}));
    CHECK_FALSE(apply(job, {tick(job, 0, Field::squeegee_gauge, by_an)}));
    CHECK_FALSE(apply(job, {tick(job, 1, Field::arm_radius, by_an)}));
    CHECK_FALSE(apply(job, {really_set(job, 1, Field::print_speed, -1.0, by_an)}));
    CHECK(job == one_head());
    CHECK_FALSE(planned_value(job, 1, Field::run_past));
    CHECK_FALSE(planned_value(job, 0, Field::print_speed));
    CHECK_FALSE(planned_value(job, 9, Field::print_speed));
    CHECK_FALSE(planned_value(job, 1, Field::count));
    CHECK(planned_value(job, 0, Field::run_past) == 25.0);
    CHECK(planned_value(job, 1, Field::print_speed) == 600.0);
}

TEST_CASE("A whole head is ticked in one edit, and undone in one", "[walk]") {
    Job job = heads_to_walk();
    REQUIRE(apply(job, {tick(job, 1, Field::flood_angle, Stamp{3, "bo"})}));
    const Job before = job;
    const auto edit = tick_all(job, 1, by_an);
    REQUIRE(edit);
    REQUIRE(std::get<Together>(edit->what).edits.size() == 15);
    const Applied applied = apply(job, *edit);
    REQUIRE(applied);
    CHECK(progress_at(job, 1) == WalkProgress{16, 16});
    CHECK(mark_of(job, 1, Field::flood_angle)->stamp == Stamp{3, "bo"});
    CHECK_FALSE(tick_all(job, 1, by_an));
    CHECK_FALSE(tick_all(job, 9, by_an));
    REQUIRE(apply(job, *applied.inverse));
    CHECK(job == before);
}

TEST_CASE("Progress counts what is on the walk, and the walk is taken up where it was left",
          "[walk]") {
    Job job = heads_to_walk();
    CHECK(progress_of(job) == WalkProgress{0, 33});
    CHECK(next_unfinished(job) == 2);
    CHECK(next_unfinished(job, 2) == 1);
    CHECK(next_unfinished(job, 0) == 2);
    CHECK(next_unfinished(job, 77) == 2);
    REQUIRE(apply(job, {tick(job, 2, Field::mesh_count, by_an)})); // not on the walk
    CHECK(progress_of(job) == WalkProgress{0, 33});
    REQUIRE(apply(job, *tick_all(job, 2, by_an)));
    CHECK(next_unfinished(job) == 1);
    CHECK(next_field(job, 1) == Field::squeegee_width);
    REQUIRE(apply(job, {tick(job, 1, Field::squeegee_width, by_an)}));
    CHECK(next_field(job, 1) == Field::flood_width);
    CHECK(next_unfinished(job, 0) == 1);
    REQUIRE(apply(job, *tick_all(job, 0, by_an)));
    CHECK(progress_of(job) == WalkProgress{18, 33});
    CHECK(next_unfinished(job, 1) == 1); // all the way round
    REQUIRE(apply(job, *tick_all(job, 1, by_an)));
    CHECK(progress_of(job).finished());
    CHECK_FALSE(next_unfinished(job, 1));
    CHECK_FALSE(next_field(job, 1));
}

TEST_CASE("The job as set has the real values, ticked or not", "[walk]") {
    Job job = one_head();
    note_real(job, 1, Field::print_speed, 500.0);
    REQUIRE(apply(job, {tick(job, 1, Field::print_speed, by_an, false)}));
    note_real(job, 0, Field::flash_dwell, 6.0);
    REQUIRE(apply(job, {tick(job, 1, Field::flood_speed, by_an)}));
    Job expected = job;
    expected.heads[0].print_speed = 500.0;
    expected.run.flash_dwell = 6.0;
    CHECK(as_set(job) == expected);
    CHECK(unusable_marks(job).empty());
    CHECK(value_as_set(job, 1, Field::print_speed) == 500.0);
    CHECK(value_as_set(job, 1, Field::flood_speed) == 700.0);
}

TEST_CASE("Stops are put in together, or not at all", "[walk]") {
    Job job = one_head(); // stops at -260 and 260
    note_real(job, 1, Field::operator_stop, 280.0);
    const std::vector<UnusableMark> crossed{{1, Field::operator_stop, MarkTrouble::stops_crossed}};
    CHECK(as_set(job).heads[0].stops == Stops{-260.0, 260.0});
    CHECK(unusable_marks(job) == crossed);
    note_real(job, 1, Field::machine_stop, 300.0); // each alone would cross the other's plan
    CHECK(as_set(job).heads[0].stops == Stops{280.0, 300.0});
    CHECK(unusable_marks(job).empty());
    note_real(job, 1, Field::machine_stop, 280.0);
    CHECK(as_set(job).heads[0].stops == Stops{-260.0, 260.0});
    CHECK(unusable_marks(job).size() == 2);
}

TEST_CASE("Real values that mean nothing are left out and told", "[walk]") {
    Job job = one_head();
    job.heads[0].image.outline = {{-50.0, -50.0}, {50.0, -50.0}, {0.0, 60.0}};
    note_real(job, 1, Field::image_width, 200.0);
    note_real(job, 8, Field::print_speed, 200.0);
    CHECK(as_set(job).heads == job.heads);
    CHECK(unusable_marks(job) ==
          std::vector<UnusableMark>{{1, Field::image_width, MarkTrouble::image_has_outline},
                                    {8, Field::print_speed, MarkTrouble::no_such_head}});
    job.walk[0] = {1, Field::print_speed, true, -5.0, {}}; // as no edit would leave it
    CHECK(as_set(job).heads == job.heads);
    CHECK(unusable_marks(job)[0].trouble == MarkTrouble::out_of_range);
}

TEST_CASE("Random walks give jobs that can be worked with", "[walk]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int unusable = 0;
    Assessment assessment;
    for (int i = 0; i < 2000; ++i) {
        CAPTURE(i);
        Job job = sample::likely_job(random, random.whole(1, 5));
        sample::note_on_walk(random, job, 60);
        REQUIRE_FALSE(fault_of(job));
        const Job set = as_set(job);
        REQUIRE_FALSE(fault_of(set));
        REQUIRE(as_set(set) == set);
        REQUIRE(set.walk == job.walk);
        const std::vector<UnusableMark> left_out = unusable_marks(job);
        unusable += static_cast<int>(left_out.size());
        for (const WalkMark& mark : job.walk) {
            const auto is_this = [&](const UnusableMark& one) {
                return one.head == mark.head && one.field == mark.field;
            };
            const bool out = std::any_of(left_out.begin(), left_out.end(), is_this);
            const Head* head = find_head(set, mark.head);
            if (mark.head != 0 && head == nullptr) {
                REQUIRE(out == mark.real.has_value());
            } else {
                const auto planned = planned_value(job, mark.head, mark.field);
                REQUIRE(number_of(set, head, mark.field) ==
                        (out ? planned : value_as_set(job, mark.head, mark.field)));
            }
        }
        if (i % 50 == 0) {
            assess(set, assessment);
            REQUIRE(assessment.heads.size() == set.heads.size());
        }
    }
    CHECK(unusable > 0);
}
