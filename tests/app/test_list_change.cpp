// The lists of a press made one's own: steps put in and taken out, the usual ones brought back.
#include <catch2/catch_test_macros.hpp>

#include "core/list_edits.h"
#include "tests/app/list_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::listing;

TEST_CASE("A list is made one's own: steps put in, ticked and taken out, the usual ones back") {
    for (const WindowSize& size : {small_phone, desktop}) {
        INFO(size.name);
        const ScratchFolder folder;
        Driver driver(size, folder.path());
        const Job before = driver.session().job();
        open_part(driver, "lists");
        driver.tap("lists/change");
        CHECK(driver.has(step_name(1) + "/remove"));
        type_into(driver, "lists/add-step", "  Spare squeegee laid out ");
        type_into(driver, "lists/add-step", "   "); // nothing
        const std::vector<std::uint32_t> steps = steps_of(driver, CheckList::before_run);
        REQUIRE(steps.size() == 13);
        const std::uint32_t own = steps.back();
        CHECK(driver.find(step_name(own)).label == "Spare squeegee laid out");
        driver.picture(std::string("lists changed ") + size.name);
        driver.tap("lists/change");
        CHECK_FALSE(driver.has(step_name(1) + "/remove"));
        driver.tap(step_name(own));
        CHECK(driver.find("lists/progress").value == progress(1, 13));
        driver.tap("lists/change");
        CHECK_FALSE(driver.has("lists/usual"));
        driver.tap(step_name(own) + "/remove");
        driver.tap(step_name(4) + "/remove");
        CHECK_FALSE(driver.has(step_name(own)));
        CHECK_FALSE(driver.has(step_name(4)));
        CHECK(record_of(driver).ticks.empty());
        CHECK(driver.find("lists/progress").value == progress(0, 11));
        driver.tap("lists/usual");
        CHECK(steps_of(driver, CheckList::before_run).size() == 12);
        CHECK(driver.session().job() == before);
        for (int edits = 0; edits < 3; ++edits) undo(driver); // both steps back, with the tick
        CHECK(record_of(driver).ticks.size() == 1);
        CHECK(driver.has(step_name(own)));
        for (int edits = 0; edits < 2; ++edits) undo(driver);
        CHECK(driver.session().job() == before);
    }
}

TEST_CASE("A text too long for a step stays where it is typed, with the reason") {
    Driver driver(phone);
    open_part(driver, "lists");
    const Job before = driver.session().job();
    driver.program().act(ShowList{CheckList::before_run, false, true});
    driver.settle();
    driver.tap("lists/add-step");
    driver.type(std::string(201, 'a'));
    driver.tap("typing/done");
    CHECK(driver.session().job() == before);
    REQUIRE(driver.program().state().typing);
    CHECK(driver.program().state().typing->text == std::string(201, 'a'));
    REQUIRE(driver.program().state().notice);
    CHECK(driver.program().state().notice->text == words_of(Word::refusal_name_too_long));
}

TEST_CASE("A list without steps says so, and lists are changed only while they are looked at") {
    Driver driver(phone);
    for (const std::uint32_t id : steps_of(driver, CheckList::before_unloading)) {
        const std::optional<Edit> edit = remove_step(driver.session().job(), id);
        REQUIRE(edit);
        driver.program().act(DoEdit{*edit});
    }
    driver.settle();
    open_part(driver, "lists");
    driver.tap("lists/before-unloading");
    CHECK(driver.find("lists/progress").value == progress(0, 0));
    driver.tap("lists/change");
    CHECK(driver.has("lists/add-step"));
    driver.tap("day/back");
    driver.tap("day/lists");
    CHECK_FALSE(driver.has("lists/add-step"));
}
