// The walk as a whole: begun again, handed out, and what stands around its numbers.
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "tests/app/walk_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::walking;

TEST_CASE("Started again the walk is empty, and one step back brings every tick back") {
    Driver driver(phone);
    open_walk(driver);
    CHECK(tick_the_rest(driver) == 7);
    const Job walked = driver.session().job();
    driver.tap("walk/again");
    CHECK(driver.session().job().walk.empty());
    CHECK(driver.find("notice").label == words_of(Word::walk_again_done));
    CHECK(driver.find("walk/head").label == "Head 2 · Base white");
    driver.tap("notice/close");
    driver.tap("day/undo");
    CHECK(driver.session().job() == walked);
    driver.tap("walk/all");
    driver.tap("day/undo");
    CHECK(driver.has("walk/go/job"));
}

TEST_CASE("A half is handed out as whatever the window can hand out") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_walk(driver);
    driver.tap("walk/all");
    CHECK_FALSE(driver.has("walk/again")); // there is nothing to take away
    driver.tap("walk/share");
    CHECK(says(driver.find("notice"), "exports"));
    driver.tap("notice/close");
    driver.as_in_a_browser();
    driver.tap("walk/share");
    CHECK(driver.has("share-sheet"));
}

TEST_CASE("Cautions stand where they apply; a head is drawn where there is room") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        Driver driver(size);
        open_walk(driver);
        const bool roomy = size.width >= 800;
        CHECK(driver.has("walk/drawing") == roomy);
        CHECK(says(driver.find("walk/caution"), words_of(Word::caution_hands)));
        CHECK(says(driver.find("walk/caution"), words_of(Word::caution_isolated)));
        driver.program().act(WalkTo{0});
        driver.settle();
        CHECK_FALSE(driver.has("walk/drawing"));
        CHECK(driver.find("walk/caution").label == words_of(Word::caution_hot));
        for (const Thing& thing : driver.list().things())
            if (thing.name.starts_with("walk/tick/")) {
                CHECK(thing.target.width() >= 60.0f);
                CHECK(thing.target.height() >= 60.0f);
            }
    }
}
