// What is open outlasts an exercise, and a trainer makes one out of it.
#include "app/records/job_link.h"
#include "app/views/exercise_veil.h"
#include "tests/app/exercise_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

TEST_CASE("Places that work out the answer wait until the exercise is over", "[exercises]") {
    Driver driver(desktop);
    start(driver, ExerciseKind::read_sheet);
    driver.picture("sheet-desktop");
    for (const char* const place : {"place/rate", "place/register"}) {
        driver.tap(place);
        CHECK(driver.has("exercise/waits"));
        CHECK_FALSE(driver.has("rate"));
        driver.tap("exercise/return");
        CHECK(driver.program().state().place == Place::press);
    }
    driver.tap("place/practice");
    CHECK(driver.has("exercise/return"));
    driver.tap("exercise/leave");
    CHECK(state_of(driver).stage == ExerciseStage::kinds);
    CHECK(driver.session().job() == demo_job());
    driver.tap("place/rate");
    CHECK_FALSE(driver.has("exercise/waits"));
}

TEST_CASE("A visit and what was left of another outlast an exercise", "[exercises]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    Job first = demo_job(), second = demo_job();
    first.name = "First";
    second.name = "Second";
    driver.open_link("#" + job_link_fragment(first));
    driver.open_link("#" + job_link_fragment(second));
    driver.program().act(CloseNotice{});
    driver.tap("set-every-stop");
    const Job worked_on = driver.session().job();
    start(driver, ExerciseKind::shortest_stroke);
    CHECK_FALSE(driver.has("visit"));
    answer_rightly(driver);
    driver.tap("exercise/leave");
    CHECK(driver.session().visiting());
    CHECK(driver.session().job() == worked_on);
    REQUIRE(driver.session().left_visit());
    CHECK(*driver.session().left_visit() == "First");
    driver.tap("place/press");
    CHECK(driver.has("visit/keep"));
    driver.tap("undo");
    CHECK(driver.session().job() == second);
}

TEST_CASE("Opening another job ends an exercise; deleting the own one harms nothing",
          "[exercises]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    const JobId own = driver.session().current();
    start(driver, ExerciseKind::shortest_stroke);
    answer_rightly(driver);
    Job sent = demo_job();
    sent.name = "Sent meanwhile";
    driver.open_link("#" + job_link_fragment(sent));
    CHECK_FALSE(driver.session().practising());
    CHECK(state_of(driver).stage == ExerciseStage::kinds);
    CHECK(driver.session().job() == sent);
    driver.program().act(LeaveVisit{});
    driver.settle();
    CHECK(driver.session().current() == own);
    CHECK(driver.session().job() == demo_job());
    start(driver, ExerciseKind::find_fault);
    driver.program().act(RemoveJob{own});
    driver.settle();
    CHECK_FALSE(driver.session().practising());
    CHECK(state_of(driver).stage == ExerciseStage::kinds);
    CHECK(driver.session().current() != own);
    driver.program().act(RestoreJob{own});
    driver.program().act(OpenJob{own});
    driver.settle();
    CHECK(driver.session().job() == demo_job());
}

TEST_CASE("A trainer makes an exercise of a job that is right", "[exercises]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.tap("place/practice");
    driver.tap("exercise/own");
    CHECK(driver.has("exercise/own/not-right")); // the demonstration has faults of its own
    REQUIRE(driver.session().open_new(right_job()));
    const Job own = driver.session().job();
    driver.program().act(ShowExercises{});
    driver.settle();
    driver.tap("exercise/own");
    driver.tap("exercise/own/head/" + std::to_string(own.heads.front().station));
    REQUIRE(driver.has("exercise/own/break/1"));
    driver.picture("own-phone");
    driver.tap("exercise/own/break/1");
    REQUIRE(run_of(driver).exercise.from_job);
    CHECK_FALSE(driver.session().job() == own);
    check_nothing_given_away(driver, driver.session().job());
    answer_rightly(driver);
    driver.tap("exercise/mark");
    CHECK(run_of(driver).score == 1.0);
    CHECK_FALSE(driver.has("exercise/level"));
    CHECK(driver.session().job() == own);
    CHECK_FALSE(driver.session().can_undo());
}

TEST_CASE("A marked exercise is looked at with everything shown, as a visit", "[exercises]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    start(driver, ExerciseKind::find_fault);
    driver.tap("exercise/mark"); // nothing answered
    CHECK(run_of(driver).score == 0.0);
    driver.tap("exercise/look");
    CHECK(driver.session().visiting());
    bool findings = false;
    for (const Thing& thing : driver.list().things())
        findings = findings || thing.name.starts_with("finding/");
    CHECK(findings);
    driver.tap("visit/leave");
    CHECK(driver.session().job() == demo_job());
    CHECK(driver.session().rows().size() == 1);
}

TEST_CASE("What is kept back is not in what views see", "[exercises]") {
    Assessment full, kept;
    assess(demo_job(), full);
    keep_answers_back(full, kept);
    REQUIRE(kept.heads.size() == full.heads.size());
    bool something = false;
    for (std::size_t i = 0; i < full.heads.size(); ++i) {
        something = something || !full.heads[i].findings.empty();
        CHECK(kept.heads[i].head == full.heads[i].head);
        CHECK(kept.heads[i].findings.empty());
        CHECK(kept.heads[i].coverage.pieces.empty());
        CHECK_FALSE(kept.heads[i].advised);
        CHECK_FALSE(kept.heads[i].both_on);
        CHECK(kept.heads[i].squeegee.lo == full.heads[i].squeegee.lo);
    }
    CHECK(something);
    CHECK_FALSE(set_every_stop(demo_job(), kept));
}
