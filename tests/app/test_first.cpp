// The first five minutes: shown on the first start alone, gone through by touch and by keyboard,
// skipped, asked for again; and the head that pulses, three times and no more.
#include "tests/app/first_steps.h"

using namespace carriageway;

TEST_CASE("A head pulses three times on the first start, and then no more frames are drawn",
          "[first]") {
    const ScratchFolder folder;
    Driver driver = start_new(folder);
    REQUIRE(step_of(driver) == FirstStep::drag);
    CHECK(driver.program().state().place == Place::press);
    CHECK(driver.session().job() == demo_job());
    CHECK_FALSE(driver.head(find_head(driver.session().job(),
                                      driver.program().state().first.head)->station).fit);
    // A pulse ends where a ring that grew is small again.
    int pulses = 0, frames = 0;
    float before = widest_ring(driver);
    REQUIRE(before > 0.0f);
    while (due(driver) && frames < 600) {
        one_frame(driver);
        ++frames;
        const float now = widest_ring(driver);
        if (now < before - 8.0f) ++pulses;
        before = now;
    }
    CHECK(pulses == first_pulses);
    CHECK(frames > 100);
    CHECK(widest_ring(driver) > 0.0f); // it rests round the head
    driver.settle();
    // Nothing is due, however long it lies there.
    CHECK_FALSE(due(driver));
    const std::size_t marks = driver.list().marks().size();
    driver.window().pass(30.0);
    CHECK(driver.program().next_frame(driver.window().now()) < 0.0);
    driver.settle();
    CHECK(driver.list().marks().size() == marks);
    CHECK(driver.program().next_frame(driver.window().now()) < 0.0);
}

TEST_CASE("The card covers nothing of the head that it is about", "[first]") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop})
        for (const float scale : {1.0f, 2.0f}) {
            INFO(size.name << " " << scale);
            const ScratchFolder folder;
            Driver driver = start_new(folder, size);
            driver.set_looks(Language::english, scale);
            const Box card = common(driver.find("first/step").box,
                                    driver.list().clip_box(driver.find("first/step").clip));
            CHECK_FALSE(card.empty());
            const Box over = common(card, driver.find(head_thing(driver)).box);
            CHECK((over.width() <= 0.0f || over.height() <= 0.0f));
            driver.tap(head_thing(driver));
            const Box panel = driver.find("panel").box;
            for (const char* stop : {"/operator-stop", "/machine-stop"})
                CHECK_FALSE(panel.contains(driver.find(head_thing(driver) + stop).box.centre()));
        }
}

TEST_CASE("Drag, read, fix: by touch, in both languages", "[first]") {
    for (const Language language : both_languages)
        for (const WindowSize& size : {phone, desktop}) {
            INFO(size.name << (language == Language::spanish ? ", Spanish" : ""));
            const ScratchFolder folder;
            Driver driver = start_new(folder, size, language);
            const auto title = [&](const char* number, Word key) {
                return say(language, Word::first_number, {number}) + ": " + words_of(key, language);
            };
            const std::string suffix = std::string("-") + size.name +
                                       (language == Language::spanish ? "-es" : "");
            CHECK(driver.find("first/step").label == title("1", Word::first_drag));
            driver.picture("first-1" + suffix);
            driver.tap(head_thing(driver));
            CHECK(driver.find("first/step").value == words_of(Word::first_drag_task, language));
            CHECK(step_of(driver) == FirstStep::drag);
            driver.picture("first-1-head" + suffix);
            drag_a_stop(driver);
            REQUIRE(step_of(driver) == FirstStep::read);
            CHECK(driver.find("first/step").label == title("2", Word::first_read));
            driver.picture("first-2" + suffix);
            driver.tap("first/next");
            CHECK(driver.find("first/step").label == title("3", Word::first_fix));
            driver.picture("first-3" + suffix);
            driver.tap("first/set");
            REQUIRE(step_of(driver) == FirstStep::done);
            CHECK(find_head(driver.session().assessment(),
                            driver.program().state().first.head)->fit);
            driver.picture("first-4" + suffix);
            driver.tap("first/close");
            CHECK(step_of(driver) == FirstStep::none);
            CHECK_FALSE(driver.has("first/step"));
            CHECK(driver.find("notice").label == words_of(Word::first_where_again, language));
            CHECK(driver.session().habits().first_steps);
        }
}

TEST_CASE("Drag, read, fix: by keyboard alone", "[first]") {
    for (const Language language : both_languages) {
        const ScratchFolder folder;
        Driver driver = start_new(folder, desktop, language);
        const std::string head = head_thing(driver);
        by_keys(driver, head);
        CHECK(driver.program().state().head == driver.program().state().first.head);
        go_to_by_keys(driver, head + "/machine-stop");
        driver.key(Key::up);
        REQUIRE(step_of(driver) == FirstStep::read);
        by_keys(driver, "first/next");
        REQUIRE(step_of(driver) == FirstStep::fix);
        by_keys(driver, "first/set");
        REQUIRE(step_of(driver) == FirstStep::done);
        by_keys(driver, "first/close");
        CHECK(step_of(driver) == FirstStep::none);
        CHECK(driver.has(driver.program().state().focus)); // the keyboard isn't left nowhere
        CHECK(driver.session().habits().first_steps);
    }
}

TEST_CASE("A stop counts as moved by a button or typed, too; an unfolded part as read", "[first]") {
    for (const bool typed_in : {false, true}) {
        const ScratchFolder folder;
        Driver driver = start_new(folder);
        driver.tap(head_thing(driver));
        if (typed_in) {
            driver.tap("stop/number");
            CHECK(step_of(driver) == FirstStep::drag);
            driver.pad("700");
            driver.tap("pad/accept");
        } else {
            driver.tap("stop/more");
        }
        REQUIRE(step_of(driver) == FirstStep::read);
        driver.tap("section/margins");
        CHECK(step_of(driver) == FirstStep::fix);
        // Set right by hand, in the head's own controls.
        driver.tap(driver.has("set-this-head") ? "set-this-head" : head_thing(driver) == "head/6"
                       ? "finding/6/0/fix" : "first/set");
        CHECK(step_of(driver) == FirstStep::done);
    }
}

TEST_CASE("Next and Skip are there in every step, and skipping is for good", "[first]") {
    for (int skipped_in = 0; skipped_in < 3; ++skipped_in) {
        const ScratchFolder folder;
        {
            Driver driver = start_new(folder);
            for (int steps = 0; steps < skipped_in; ++steps) driver.tap("first/next");
            CHECK(driver.has("first/next"));
            CHECK(driver.find("first/skip").action >= 0);
            driver.tap("first/skip");
            CHECK(step_of(driver) == FirstStep::none);
            CHECK(driver.session().job() == demo_job());
            rest(driver);
            REQUIRE(driver.session().flush());
        }
        Driver again = start_new(folder);
        CHECK(again.session().habits().first_steps);
        CHECK(step_of(again) == FirstStep::none);
        CHECK_FALSE(again.has("first/step"));
    }
    // With Next alone one comes to the end as well.
    const ScratchFolder folder;
    Driver driver = start_new(folder);
    for (int steps = 0; steps < 3; ++steps) driver.tap("first/next");
    CHECK(step_of(driver) == FirstStep::done);
}

TEST_CASE("Closed in the middle, they don't come again by themselves", "[first]") {
    const ScratchFolder folder;
    {
        Driver driver = start_new(folder);
        driver.tap("first/next");
        REQUIRE(step_of(driver) == FirstStep::read);
        REQUIRE(driver.session().flush());
    }
    {
        Driver driver = start_new(folder);
        CHECK(step_of(driver) == FirstStep::none);
    }
    // Nor on a job alone, as for pictures.
    Driver alone(phone, {}, Language::english, 1.0f, FirstSteps::shown);
    CHECK_FALSE(alone.has("first/step"));
}

TEST_CASE("Another job in the demonstration's place ends them", "[first]") {
    const ScratchFolder folder;
    Driver driver = start_new(folder);
    driver.program().act(NewJob{});
    driver.settle();
    CHECK(step_of(driver) == FirstStep::none);
    CHECK(driver.session().job().heads.empty());
}

TEST_CASE("The head to learn on has both sensors on where there is one", "[first]") {
    Assessment assessment;
    CHECK(head_to_learn_on(assessment) == 0);
    const Job job = demo_job();
    assess(job, assessment);
    const HeadId chosen = head_to_learn_on(assessment);
    const HeadAssessment* head = find_head(assessment, chosen);
    REQUIRE(head != nullptr);
    CHECK(std::any_of(head->findings.begin(), head->findings.end(), [](const Finding& finding) {
        return finding.kind == FindingKind::both_sensors_on;
    }));
    for (HeadAssessment& each : assessment.heads) each.fit = each.head != job.heads.back().id;
    CHECK(head_to_learn_on(assessment) == job.heads.back().id);
}
