// Faults through the real program: from what is seen or heard to what mends it, by touch and by the
// keyboard alone, in both languages.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/text/fault_sentences.h"
#include "app/text/sentences.h"
#include "app/views/measure_words.h"
#include "tests/app/exercise_steps.h"
#include "tests/app/visit_faults.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;

namespace {

struct Setting {
    WindowSize size;
    Language language;
};
const Setting settings[] = {{small_phone, Language::english},
                            {small_phone, Language::spanish},
                            {desktop, Language::english},
                            {desktop, Language::spanish}};

const FaultBook& book() { return fault_lore().book; }
const FaultState& state(Driver& driver) { return driver.program().state().practice.fault; }

/// Ids of the causes as they stand on the screen, the first first.
std::vector<std::string> causes_in_order(const Driver& driver) {
    std::vector<std::string> ids;
    const std::string start = "faults/cause/";
    for (const Thing& thing : driver.list().things()) {
        const std::string name(thing.name);
        if (!name.starts_with(start) || name.find('/', start.size()) != std::string::npos) continue;
        ids.push_back(name.substr(start.size()));
        CHECK(std::string(thing.label).starts_with(std::to_string(ids.size()) + ". "));
    }
    REQUIRE_FALSE(ids.empty());
    return ids;
}

/// The test that is asked next: its question stands first.
std::string asked(const Driver& driver) {
    const std::string start = "faults/test/";
    for (const Thing& thing : driver.list().things()) {
        const std::string name(thing.name);
        if (name.starts_with(start) && name.find('/', start.size()) == std::string::npos)
            return name.substr(start.size());
    }
    return {};
}

Ranking ranked(Driver& driver) {
    return rank_causes(book(), *state(driver).symptom, driver.session().job(),
                       driver.session().assessment(), state(driver).head, state(driver).answers);
}

const std::string& first_of(const Ranking& ranking) {
    return book().causes[ranking.causes.front().cause].id;
}

void choose(Driver& driver, const char* symptom) {
    driver.tap("place/practice");
    driver.tap("practice/faults");
    if (driver.has("faults/another")) driver.tap("faults/another");
    driver.tap(std::string("faults/symptom/") + symptom);
}

} // namespace

TEST_CASE("From a head that makes no stroke to stops that let it run, by touch", "[faults]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        const Job before = driver.session().job();
        const HeadId head = head_on(before, 6)->id;
        driver.tap("head/6");
        driver.tap("press/find-fault");
        CHECK(driver.program().state().place == Place::practice);
        CHECK(state(driver).head == head);
        driver.tap("faults/symptom/no_stroke");
        CHECK(driver.find("faults/symptom").label ==
              text_of(setting.language, fault_lore().symptoms[*state(driver).symptom]));
        CHECK(driver.find("faults/head/6").chosen);
        CHECK(causes_in_order(driver).front() == "both_sensors");
        driver.reveal("faults/cause/both_sensors/mend");
        driver.picture(std::string("faults-") + setting.size.name +
                       (setting.language == Language::spanish ? "-es" : ""));
        CHECK(driver.find("faults/cause/both_sensors/caution").label ==
              word(setting.language, caution_word(Caution::isolated_and_bled)));
        const Stops advised = *driver.head(6).advised;
        driver.tap("faults/fix/both_sensors");
        CHECK(driver.stops(6) == advised);
        CHECK(driver.find("notice").label == word(setting.language, Word::faults_was_set));
        // It has seen that the stops are mended, and there is nothing left to set.
        CHECK(causes_in_order(driver).front() != "both_sensors");
        CHECK_FALSE(driver.has("faults/fix/both_sensors"));
        driver.tap("notice/close");
        driver.tap("faults/undo");
        CHECK(driver.session().job() == before);
        CHECK(causes_in_order(driver).front() == "both_sensors");
        CHECK(driver.has("faults/fix/both_sensors"));
    }
}

TEST_CASE("The same by the keyboard alone, from the press, and undone by its key", "[faults]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        const Job before = driver.session().job();
        by_keys(driver, "press/find-fault");
        CHECK(state(driver).head == 0); // of the press: nobody has said where
        by_keys(driver, "faults/symptom/no_stroke");
        CHECK(driver.find("faults/head/0").chosen);
        // It names the head that it was seen at, and mends that one.
        CHECK_THAT(std::string(driver.find("faults/cause/both_sensors/why/1").label),
                   ContainsSubstring(head_title(setting.language, *head_on(before, 6))));
        by_keys(driver, "faults/head/6");
        by_keys(driver, "faults/fix/both_sensors");
        CHECK_FALSE(driver.head(6).both_on);
        driver.key(Key::z, true);
        CHECK(driver.session().job() == before);
        const std::string test = asked(driver);
        const std::string answer =
            book().tests[*find_test(book(), test)].answers.front().id;
        by_keys(driver, "faults/test/" + test + "/" + answer);
        CHECK(state(driver).answers.size() == 1);
        by_keys(driver, "faults/forget");
        CHECK(state(driver).answers.empty());
    }
}

TEST_CASE("An answer changes the order and says so; once more takes it back", "[faults]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        choose(driver, "jerky");
        const std::vector<std::string> at_first = causes_in_order(driver);
        CHECK_FALSE(driver.has("faults/changed"));
        const std::size_t test = *find_test(book(), asked(driver));
        // The answer that speaks most against what is first now.
        const std::size_t first = ranked(driver).causes.front().cause;
        std::size_t against = 0;
        for (std::size_t i = 0; i < book().tests[test].answers.size(); ++i)
            if (answer_factor(book().tests[test], i, first) <
                answer_factor(book().tests[test], against, first))
                against = i;
        const std::string chip = "faults/test/" + book().tests[test].id + "/" +
                                 book().tests[test].answers[against].id;
        driver.tap(chip);
        REQUIRE(state(driver).answers == std::vector<TestAnswer>{{test, against}});
        CHECK(driver.find(chip).chosen);
        CHECK(asked(driver) != book().tests[test].id); // the next one is asked
        const std::vector<std::string> after = causes_in_order(driver);
        REQUIRE(after != at_first);
        REQUIRE(after.front() != at_first.front());
        CHECK(after.front() == first_of(ranked(driver)));
        const auto was = std::find(at_first.begin(), at_first.end(), after.front());
        CHECK(driver.find("faults/changed").label ==
              say(setting.language, Word::faults_now_first,
                  {text_of(setting.language,
                           fault_lore().causes[*find_cause(book(), after.front())].name),
                   std::to_string(1 + (was - at_first.begin()))}));
        driver.reveal("faults/changed");
        driver.picture(std::string("faults-answered-") + setting.size.name +
                       (setting.language == Language::spanish ? "-es" : ""));
        driver.tap(chip);
        CHECK(state(driver).answers.empty());
        CHECK(causes_in_order(driver) == at_first);
        CHECK_FALSE(driver.has("faults/changed"));
    }
}

TEST_CASE("An answer that leaves the first cause first tells its share, then and now", "[faults]") {
    Driver driver(phone);
    choose(driver, "jerky");
    const double before = ranked(driver).causes.front().share;
    driver.program().act(AnswerTest{{*find_test(book(), "gauge_moving"), 0}}); // it falls
    driver.settle();
    const RankedCause first = ranked(driver).causes.front();
    REQUIRE(book().causes[first.cause].id == "air_low");
    CHECK(first.share > before);
    CHECK(driver.find("faults/changed").label ==
          say(Language::english, Word::faults_still_first,
              {"Too little air reaches the head", cause_share_text(before),
               cause_share_text(first.share)}));
}

TEST_CASE("Whoever answers comes to the end of the tests, and may forget", "[faults]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        choose(driver, "colours_wander");
        const std::vector<std::string> at_first = causes_in_order(driver);
        for (std::string test = asked(driver); !driver.has("faults/none"); test = asked(driver)) {
            if (state(driver).answers.size() > 8) FAIL("there is no end of it");
            const FaultTest& next = book().tests[*find_test(book(), test)];
            driver.tap("faults/test/" + test + "/" + next.answers.back().id);
        }
        CHECK(driver.find("faults/none").label ==
              word(setting.language, Word::faults_no_more_tests));
        CHECK(state(driver).answers.size() >= 3);
        driver.tap("faults/forget");
        CHECK(state(driver).answers.empty());
        CHECK(causes_in_order(driver) == at_first);
    }
}

TEST_CASE("What was answered about one job says nothing of another", "[faults]") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    choose(driver, "jerky");
    const std::vector<std::string> at_first = causes_in_order(driver);
    driver.tap("faults/test/" + asked(driver) + "/" +
               book().tests[*find_test(book(), asked(driver))].answers.back().id);
    CHECK(causes_in_order(driver) != at_first);
    driver.program().act(NewJob{});
    driver.settle();
    driver.tap("place/practice");
    CHECK_FALSE(driver.has("faults/forget"));
    CHECK_FALSE(driver.has("faults/changed"));
    const Ranking unanswered =
        rank_causes(book(), *state(driver).symptom, driver.session().job(),
                    driver.session().assessment(), 0, {});
    CHECK(causes_in_order(driver).front() == first_of(unanswered));
}
