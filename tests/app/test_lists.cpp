// The lists of a run as a person works them: ticks by touch and by keys alone, and a first piece
// that is approved, in every language.
#include <set>

#include <catch2/catch_test_macros.hpp>

#include "app/text/list_sentences.h"
#include "app/views/day_view.h"
#include "app/views/measure_words.h"
#include "tests/app/list_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::listing;

namespace {

constexpr const char* lists[] = {"before-run", "first-piece", "before-night", "before-unloading",
                                 "tear-down"};

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::set<Caution> cautions_of(Driver& driver, CheckList list) {
    std::set<Caution> cautions;
    for (const CheckItem& item : checks_of(driver.session().job().press))
        if (item.list == list) cautions.insert(caution_of(item));
    cautions.erase(Caution::none);
    return cautions;
}

} // namespace

TEST_CASE("A step is ticked by a tap, with who and when, and the tick taken back, at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        const ScratchFolder folder;
        {
            Driver driver(size, folder.path());
            driver.tap("day");
            CHECK(driver.find("day/lists").value ==
                  say(Language::english, Word::list_all_progress, {"0", "31"}));
            driver.tap("day/lists");
            type_into(driver, "lists/initials", "AB");
            CHECK_FALSE(driver.has("lists/initials")); // once they are known
            CHECK(driver.find("lists/progress").value == progress(0, 12));
            driver.picture(std::string("lists ") + size.name);
            driver.tap(step_name(3));
            driver.tap(step_name(1));
            CHECK(record_of(driver).ticks ==
                  std::vector<CheckTick>{{3, {moment, "AB"}}, {1, {moment, "AB"}}});
            CHECK(driver.find("lists/progress").value == progress(2, 12));
            const Thing& ticked = driver.find(step_name(3));
            CHECK(ticked.chosen);
            CHECK(holds(ticked.value, words_of(Word::list_ticked)));
            CHECK(holds(ticked.value, stamp_text({moment, "AB"})));
            CHECK_FALSE(driver.find(step_name(2)).chosen);
            CHECK(holds(driver.find(step_name(2)).value, words_of(Word::list_not_ticked)));
            driver.tap(step_name(3));
            CHECK(record_of(driver).ticks == std::vector<CheckTick>{{1, {moment, "AB"}}});
            undo(driver);
            CHECK(driver.find(step_name(3)).chosen);
            CHECK(record_of(driver).ticks.size() == 2);
            undo(driver);
            undo(driver);
            CHECK(record_of(driver) == RunRecord{});
            driver.tap(step_name(2));
            driver.key(Key::escape);
            CHECK(driver.find("day/lists").value ==
                  say(Language::english, Word::list_all_progress, {"1", "31"}));
        }
        // Tick and initials are there the next time.
        Driver driver(size, folder.path());
        open_part(driver, "lists");
        CHECK(record_of(driver).ticks == std::vector<CheckTick>{{2, {moment, "AB"}}});
        CHECK(driver.program().state().habits.initials == "AB");
    }
}

TEST_CASE("A whole list is worked by keys alone") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    enter_on(driver, "day");
    enter_on(driver, "day/lists");
    enter_on(driver, "lists/first-piece");
    enter_on(driver, "lists/initials");
    driver.type("CD");
    driver.key(Key::enter);
    const std::vector<std::uint32_t> steps = steps_of(driver, CheckList::first_piece);
    REQUIRE(steps.size() == 5);
    for (const std::uint32_t step : steps) enter_on(driver, step_name(step));
    CHECK(driver.find("lists/progress").value == progress(5, 5));
    CHECK(driver.find("lists/first-piece").value == progress(5, 5));
    for (const CheckTick& tick : record_of(driver).ticks)
        CHECK(tick.stamp == Stamp{moment, "CD"});
    // The same key takes the last one back; the focus stays where it is.
    driver.key(Key::enter);
    CHECK(driver.find("lists/progress").value == progress(4, 5));
    enter_on(driver, "lists/approve");
    CHECK(record_of(driver).approval == Approval{"CD", "", moment});
    driver.key(Key::escape);
    CHECK(driver.has("day/lists"));
    driver.key(Key::escape);
    CHECK_FALSE(driver.has("day-sheet"));
    CHECK(driver.program().state().focus == "day");
}

TEST_CASE("Every list has its steps and cautions in words, in both languages") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(phone, {}, language);
        open_part(driver, "lists");
        for (int i = 0; i < check_lists; ++i) {
            const auto list = static_cast<CheckList>(i);
            INFO(lists[i]);
            driver.tap(std::string("lists/") + lists[i]);
            CHECK(driver.find(std::string("lists/") + lists[i]).chosen);
            CHECK(driver.find("lists/progress").label == word(language, list_word(list)));
            for (const std::uint32_t id : steps_of(driver, list)) {
                const CheckItem& item = usual_checks()[id - 1];
                const Thing& step = driver.find(step_name(id));
                CHECK(step.label == word(language, step_word(item.step)));
                const Caution caution = caution_of(item);
                if (caution != Caution::none)
                    CHECK(holds(step.value, words_of(sign_word(caution), language)));
            }
            std::set<Caution> expected = cautions_of(driver, list);
            // Where hands go in, air and power are isolated first.
            if (expected.count(Caution::hands_in_carriage))
                expected.insert(Caution::isolated_and_bled);
            int said = 0;
            for (const Caution caution : expected) {
                const Thing& words =
                    driver.find("lists/caution/" + std::to_string(static_cast<int>(caution)));
                CHECK(holds(words.label, words_of(sign_word(caution), language)));
                CHECK(holds(words.label, words_of(caution_word(caution), language)));
            }
            for (const Thing& thing : driver.list().things())
                if (thing.name.starts_with("lists/caution/")) ++said;
            CHECK(said == static_cast<int>(expected.size()));
            CHECK(driver.find("lists/decides").label == word(language, Word::list_decides));
        }
        driver.tap("lists/in-run");
        CHECK(driver.find("lists/decides").label == word(language, Word::list_decides));
    }
}

TEST_CASE("No word of the lists is missing in either language, and each step has its own") {
    for (const Language language : {Language::english, Language::spanish, Language::pseudo}) {
        std::set<std::string> steps, names, reasons;
        for (const CheckItem& item : usual_checks()) steps.insert(step_text(language, item));
        for (int i = 0; i < check_lists; ++i)
            names.insert(words_of(list_word(static_cast<CheckList>(i)), language));
        for (int i = 0; i < static_cast<int>(StopReason::count); ++i)
            reasons.insert(words_of(reason_word(static_cast<StopReason>(i)), language));
        CHECK(steps.size() == usual_checks().size());
        CHECK(names.size() == static_cast<std::size_t>(check_lists));
        CHECK(reasons.size() == static_cast<std::size_t>(StopReason::count));
        for (const auto* words : {&steps, &names, &reasons}) CHECK(words->count("") == 0);
    }
    CHECK(step_word(CheckStep::own) == Word::count);
    CHECK(step_word(CheckStep::count) == Word::count);
    CHECK(step_text(Language::english, {40, {}, CheckStep::own, "hem straight", {}}) ==
          "hem straight");
}

TEST_CASE("Large letters on a small phone: one list after the other, round and back") {
    Driver driver(small_phone);
    driver.set_looks(Language::spanish, 2.0f);
    driver.program().act(OpenDay{DayPart::lists});
    driver.settle();
    CHECK_FALSE(driver.has("lists/choose"));
    std::set<std::string> seen;
    for (int i = 0; i < 6; ++i) {
        seen.insert(driver.find("lists/progress").label);
        driver.tap("lists/next");
    }
    CHECK(seen.size() == 6);
    CHECK(driver.find("lists/progress").label ==
          word(Language::spanish, Word::list_before_run));
    driver.tap("lists/previous");
    CHECK(driver.find("lists/progress").label == word(Language::spanish, Word::list_tear_down));
}

TEST_CASE("The first piece is approved by whom and against what, and the approval taken back") {
    for (const WindowSize& size : {small_phone, tablet}) {
        INFO(size.name);
        const ScratchFolder folder;
        Driver driver(size, folder.path());
        open_part(driver, "lists");
        driver.tap("lists/first-piece");
        CHECK(driver.find("lists/approval").label == words_of(Word::approval_not_given));
        // Without initials, the button asks who it is.
        driver.tap("lists/approve");
        REQUIRE(driver.has("typing"));
        driver.type("Shift lead");
        driver.tap("typing/done");
        CHECK(record_of(driver).approval == Approval{"Shift lead", "", moment});
        type_into(driver, "lists/approved-against", "the sample");
        CHECK(record_of(driver).approval == Approval{"Shift lead", "the sample", moment});
        CHECK(holds(driver.find("lists/approval").label,
                    stamp_text({moment, "Shift lead"})));
        driver.picture(std::string("lists approved ") + size.name);
        driver.tap("lists/approve");
        CHECK(record_of(driver).approval == Approval{"", "the sample", 0});
        type_into(driver, "lists/initials", "AB");
        driver.tap("lists/approve");
        CHECK(record_of(driver).approval == Approval{"AB", "the sample", moment});
        undo(driver);
        CHECK(record_of(driver).approval == Approval{"", "the sample", 0});
    }
}
