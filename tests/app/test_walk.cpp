// The walk round the press as a person does it: by touch with an interruption, by keys alone, and
// with numbers that were really set otherwise.
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "app/text/walk_sentences.h"
#include "tests/app/walk_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::walking;

namespace {

constexpr Timestamp moment = 1'700'000'000'000; // of a driver with a library

/// Goes on by the key of the tabulator until a thing has the focus.
void focus_on(Driver& driver, const std::string& name) {
    for (int i = 0; i < 400 && driver.program().state().focus != name; ++i) driver.key(Key::tab);
    INFO(name);
    REQUIRE(driver.program().state().focus == name);
}

} // namespace

TEST_CASE("A walk by touch is gone on with where it was broken off, at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        const ScratchFolder folder;
        WalkProgress broken_off;
        {
            Driver driver(size, folder.path());
            driver.tap("day");
            CHECK(driver.find("day/walk").value == words_of(Word::walk_none));
            driver.tap("day/initials");
            driver.type("AB");
            driver.tap("typing/done");
            driver.tap("day/walk");
            CHECK(driver.find("walk/progress").label == of(Word::walk_position, 1, 7));
            CHECK(driver.find("walk/head").label == "Head 2 · Base white");
            CHECK_FALSE(driver.find("walk/previous").enabled);
            driver.picture(std::string("walk head ") + size.name);
            const HeadId first = on(driver, 2);
            const std::vector<Field> fields = walk_fields(driver.session().job(), first);
            for (const Field field : fields) {
                CHECK_FALSE(driver.find(tick_name(field)).chosen);
                driver.tap(tick_name(field));
                CHECK(driver.find(tick_name(field)).chosen);
                const WalkMark* mark = mark_of(driver.session().job(), first, field);
                REQUIRE(mark != nullptr);
                CHECK(*mark == WalkMark{first, field, true, std::nullopt, {moment, "AB"}});
            }
            const int count = static_cast<int>(fields.size());
            CHECK(driver.find("walk/head").value == of(Word::walk_place_progress, count, count));
            CHECK_FALSE(driver.has("walk/tick-all"));
            driver.tap("walk/go-on");
            CHECK(driver.find("walk/head").label == "Head 5 · Sail yellow");
            driver.tap("walk/tick-all");
            driver.tap("walk/go-on");
            // One head is left out on the way.
            CHECK(driver.find("walk/head").label == "Head 6 · Crest red");
            driver.tap("walk/next");
            CHECK(driver.find("walk/head").label == "Head 7 · Lake blue");
            driver.tap(tick_name(Field::squeegee_angle));
            driver.tap(tick_name(Field::squeegee_gauge));
            driver.tap(tick_name(Field::squeegee_gauge)); // a slip, taken back
            broken_off = progress_of(driver.session().job());
            CHECK(broken_off.done == 2 * count + 1);
        }
        Driver driver(size, folder.path());
        CHECK(progress_of(driver.session().job()) == broken_off);
        driver.tap("day");
        CHECK(says(driver.find("day/walk"), "Head 6 · Crest red"));
        driver.tap("day/walk");
        CHECK(driver.find("walk/head").label == "Head 6 · Crest red");
        CHECK(driver.find("walk/progress").value ==
              of(Word::walk_progress, broken_off.done, broken_off.of));
        driver.tap("walk/next");
        CHECK(driver.find(tick_name(Field::squeegee_angle)).chosen);
        CHECK_FALSE(driver.find(tick_name(Field::squeegee_gauge)).chosen);
        // From here on round the press, past the job's own numbers to the head that was left out.
        CHECK(tick_the_rest(driver) == 5);
        CHECK(progress_of(driver.session().job()).finished());
        CHECK(driver.find("walk/status").label ==
              say(Language::english, Word::walk_finished, {std::to_string(broken_off.of)}));
        driver.picture(std::string("walk all ") + size.name);
        // Opened again there is nothing left to go on with: all heads are shown.
        driver.tap("day/back");
        driver.tap("day/walk");
        CHECK(driver.has("walk/status"));
        driver.tap("walk/go/7");
        CHECK(driver.find("walk/head").label == "Head 7 · Lake blue");
        driver.tap("walk/untick-all");
        CHECK(progress_at(driver.session().job(), on(driver, 7)).done == 0);
        driver.tap("day/undo");
        CHECK(progress_of(driver.session().job()).finished());
    }
}

TEST_CASE("The whole walk by keys alone") {
    for (const WindowSize& size : {phone, desktop}) {
        INFO(size.name);
        Driver driver(size);
        const Job before = driver.session().job();
        focus_on(driver, "day");
        driver.key(Key::enter);
        focus_on(driver, "day/walk");
        driver.key(Key::enter);
        REQUIRE(driver.has("walk/head"));
        // One number by itself, ticked and taken back.
        focus_on(driver, tick_name(Field::squeegee_angle));
        driver.key(Key::space);
        CHECK(is_done(driver.session().job(), on(driver, 2), Field::squeegee_angle));
        driver.key(Key::enter);
        CHECK_FALSE(is_done(driver.session().job(), on(driver, 2), Field::squeegee_angle));
        // What was really set.
        focus_on(driver, number(Field::squeegee_gauge));
        driver.key(Key::enter);
        REQUIRE(driver.has("pad/display"));
        driver.type("1.2");
        focus_on(driver, "pad/accept");
        driver.key(Key::enter);
        CHECK(value_as_set(driver.session().job(), on(driver, 2), Field::squeegee_gauge) == 1.2);
        for (int place = 0; place < 7; ++place) {
            focus_on(driver, "walk/tick-all");
            driver.key(Key::enter);
            focus_on(driver, "walk/go-on");
            driver.key(Key::enter);
        }
        CHECK(progress_of(driver.session().job()).finished());
        REQUIRE(driver.has("walk/status"));
        CHECK(driver.has("walk/other/1"));
        focus_on(driver, "walk/previous");
        driver.key(Key::enter);
        CHECK(driver.find("walk/head").label == words_of(Word::walk_job));
        driver.key(Key::escape);
        CHECK(driver.has("day/walk"));
        driver.key(Key::escape);
        CHECK_FALSE(driver.has("day-sheet"));
        for (int i = 0; i < 30 && driver.session().can_undo(); ++i) driver.key(Key::z, true);
        CHECK(driver.session().job() == before);
    }
}

TEST_CASE("A stop that is really set too near is judged at once, in both languages") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(phone, {}, language);
        open_walk(driver);
        driver.tap("walk/next");
        const HeadId head = on(driver, 5);
        const Stops planned = driver.stops(5);
        const std::string both_on = words_of(Word::title_both_sensors_on, language);
        const std::string as_planned = driver.find("walk/verdict").label;
        REQUIRE(as_planned.find(both_on) == std::string::npos);
        // The operator's stop reads 315: 35 mm are less than the least separation of 70.
        type_real(driver, Field::machine_stop, "350");
        CHECK(driver.find("walk/verdict").label.find(both_on) != std::string::npos);
        CHECK(driver.find("walk/verdict").live);
        CHECK(driver.stops(5) == planned);
        CHECK(driver.head(5).both_on == false); // the plan's own assessment
        const std::string really = say(language, Word::walk_really_set, {"350 mm", "679 mm"});
        CHECK(says(driver.find(number(Field::machine_stop)), really));
        CHECK(driver.find(tick_name(Field::machine_stop)).chosen);
        driver.picture(language == Language::english ? "walk both on" : "walk both on es");
        driver.tap("walk/all");
        CHECK(driver.find("walk/other/1").value == really);
        CHECK(says(driver.find("walk/go/5"), both_on));
        driver.tap("walk/go/5");
        driver.tap(std::string("walk/as-planned/") + info_of(Field::machine_stop).key);
        CHECK(driver.find("walk/verdict").label == as_planned);
        CHECK_FALSE(says(driver.find(number(Field::machine_stop)), "350"));
        const WalkMark* mark = mark_of(driver.session().job(), head, Field::machine_stop);
        REQUIRE(mark != nullptr);
        CHECK(mark->done);
        CHECK_FALSE(mark->real);
        driver.tap("day/undo");
        CHECK(driver.find("walk/verdict").label.find(both_on) != std::string::npos);
    }
}

TEST_CASE("Stops that would cross are told and judged as planned") {
    Driver driver(phone);
    open_walk(driver);
    driver.tap("walk/next");
    const Thing as_planned = driver.find("walk/verdict");
    CHECK_FALSE(driver.has("walk/unusable/1"));
    type_real(driver, Field::machine_stop, "300"); // the operator's reads 315
    REQUIRE(driver.has("walk/unusable/1"));
    CHECK(says(driver.find("walk/unusable/1"), "300 mm"));
    CHECK(driver.find("walk/verdict").label == as_planned.label);
    CHECK(driver.find("walk/verdict").value == as_planned.value);
    driver.tap("walk/all");
    CHECK(driver.has("walk/unusable/1"));
    driver.tap("day/undo");
    CHECK_FALSE(driver.has("walk/unusable/1"));
}

TEST_CASE("What can't be typed as really set is refused with a reason and changes nothing") {
    Driver driver(phone);
    open_walk(driver);
    driver.tap(number(Field::squeegee_angle));
    driver.pad("1-2");
    driver.tap("pad/accept");
    CHECK(driver.has("pad"));
    CHECK(driver.program().state().pad->trouble ==
          say(Language::english, Word::number_not_read_plain, {"1-2"}));
    driver.tap("pad/cancel");
    CHECK(driver.session().job() == demo_job());
}

TEST_CASE("What the last run had stands beside what is planned, where it differs") {
    Driver driver(phone);
    open_walk(driver);
    driver.tap("walk/next");
    type_real(driver, Field::machine_stop, "670");
    type_real(driver, Field::squeegee_gauge, "1"); // as planned: nothing to tell next time
    REQUIRE(driver.session().finish_run());
    driver.settle();
    CHECK(progress_of(driver.session().job()).done == 0);
    const std::string last = say(Language::english, Word::walk_last_run, {"670 mm"});
    CHECK(says(driver.find(number(Field::machine_stop)), last));
    CHECK_FALSE(says(driver.find(number(Field::machine_stop)), "Really"));
    for (const Field field : {Field::operator_stop, Field::squeegee_gauge, Field::print_speed})
        CHECK_FALSE(says(driver.find(number(field)), "Last run"));
    driver.picture("walk last run");
    // Planned as it was then, there is nothing to say any more.
    driver.program().act(DoEdit{Edit{SetNumber{on(driver, 5), Field::machine_stop, 170.0}}});
    driver.settle();
    CHECK_FALSE(says(driver.find(number(Field::machine_stop)), "Last run"));
}
