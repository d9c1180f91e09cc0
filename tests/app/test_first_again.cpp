// The first steps asked for again: on a copy, so that the own job stays as it is.
#include "tests/app/first_steps.h"

using namespace carriageway;

TEST_CASE("Asked for again they run on a copy, and the own job is as it was", "[first]") {
    for (const Language language : both_languages) {
        const ScratchFolder folder;
        Driver driver(phone, folder.path(), language);
        driver.tap("head/6");
        driver.tap("finding/6/0/fix");
        const Job own = driver.session().job();
        const JobId current = driver.session().current();
        const HeadId looked_at = driver.program().state().head;
        driver.tap("place/jobs");
        driver.tap("first/again");
        REQUIRE(step_of(driver) == FirstStep::drag);
        CHECK(driver.session().practising());
        CHECK(driver.session().job() == demo_job());
        CHECK(driver.program().state().place == Place::press);
        rest(driver);
        driver.picture(language == Language::spanish ? "first-copy-es" : "first-copy");
        driver.tap(head_thing(driver));
        drag_a_stop(driver);
        CHECK_FALSE(driver.session().job() == demo_job());
        driver.tap("first/next");
        driver.tap("first/set");
        CHECK(driver.find("first/step").value == words_of(Word::first_done_copy, language));
        driver.tap("first/close");
        CHECK_FALSE(driver.session().practising());
        CHECK(driver.session().job() == own);
        CHECK(driver.session().current() == current);
        CHECK(driver.program().state().head == looked_at);
        CHECK(driver.session().rows().size() == 1);
        REQUIRE(driver.session().flush());
        CHECK(driver.session().read(current) == own);
        driver.tap("undo");
        CHECK(driver.session().job() == demo_job());
        driver.tap("redo");
        CHECK(driver.session().job() == own);
    }
}

TEST_CASE("On the untouched demonstration they are asked for without a copy", "[first]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("place/jobs");
    driver.tap("first/again");
    REQUIRE(step_of(driver) == FirstStep::drag);
    CHECK_FALSE(driver.session().practising());
    CHECK(due(driver)); // it pulses again
    driver.tap("first/skip");
    CHECK(driver.session().job() == demo_job());
}

TEST_CASE("An exercise begun on the copy puts it away and ends at the own job", "[first]") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.tap("head/6");
    driver.tap("finding/6/0/fix");
    const Job own = driver.session().job();
    driver.program().act(BeginFirstSteps{});
    driver.settle();
    REQUIRE(driver.session().practising());
    start(driver, ExerciseKind::shortest_stroke);
    CHECK(step_of(driver) == FirstStep::none);
    CHECK(driver.session().job() == run_of(driver).exercise.job);
    // And the other way round: asked for during an exercise.
    driver.program().act(BeginFirstSteps{});
    driver.settle();
    CHECK(state_of(driver).stage == ExerciseStage::kinds);
    CHECK(driver.session().job() == demo_job());
    driver.tap("first/skip");
    CHECK_FALSE(driver.session().practising());
    CHECK(driver.session().job() == own);
}
