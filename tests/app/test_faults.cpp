// Faults through the real program: from what is seen or heard to what mends it, by touch and by the
// keyboard alone, in both languages.
#include <set>

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

TEST_CASE("To measure leads to where it is measured", "[faults]") {
    std::set<Measure::Kind> seen;
    for (std::size_t cause = 0; cause < book().causes.size(); ++cause) {
        const FaultCause& of = book().causes[cause];
        std::size_t symptom = 0;
        const auto has_it = [&](const Symptom& one) {
            return std::any_of(one.causes.begin(), one.causes.end(),
                               [&](const SymptomCause& by) { return by.cause == cause; });
        };
        while (!has_it(book().symptoms[symptom])) ++symptom;
        INFO(of.id);
        Driver driver(phone);
        const HeadId head = head_on(driver.session().job(), 7)->id;
        driver.program().act(FindFaultAt{head});
        driver.program().act(ChooseSymptom{symptom});
        open_causes(driver, symptom);
        if (of.measure.kind == Measure::Kind::none) {
            CHECK_FALSE(driver.has("faults/measure/" + of.id));
            continue;
        }
        const bool first = seen.insert(of.measure.kind).second;
        if (first) driver.tap("faults/measure/" + of.id);
        else driver.program().act(MeasureCause{of.measure, head});
        driver.settle();
        const ViewState& now = driver.program().state();
        switch (of.measure.kind) {
        case Measure::Kind::number:
            REQUIRE(now.pad);
            CHECK(now.pad->field == of.measure.field);
            CHECK((now.pad->head == head ||
                   info_of(of.measure.field).owner != FieldOwner::head));
            CHECK(driver.has("pad/display"));
            break;
        case Measure::Kind::procedure:
            CHECK(now.measuring.open);
            REQUIRE(now.measuring.target);
            CHECK(now.measuring.target->field == of.measure.field);
            break;
        default:
            CHECK(now.place == Place::registration);
            CHECK(now.registering.mode ==
                  (of.measure.kind == Measure::Kind::marks       ? RegisterMode::marks
                   : of.measure.kind == Measure::Kind::platen_marks ? RegisterMode::platens
                                                                    : RegisterMode::heights));
        }
    }
    CHECK(seen.size() == 5);
}

TEST_CASE("A number of a head is asked for only once it is said which head", "[faults]") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(phone, {}, language);
        driver.program().act(MeasureCause{{Measure::Kind::number, Field::squeegee_pressure}, 0});
        driver.settle();
        CHECK_FALSE(driver.program().state().pad);
        CHECK(driver.find("notice").label == word(language, Word::faults_which_head_first));
    }
}

TEST_CASE("Of every symptom and cause it stands who says so, and what to mind", "[faults]") {
    for (const Language language : {Language::english, Language::spanish}) {
        Driver driver(tablet, {}, language);
        const auto who = [&](std::size_t source) {
            return say(language, Word::faults_who_says,
                       {text_of(language, fault_lore().sources[source])});
        };
        for (std::size_t symptom = 0; symptom < book().symptoms.size(); ++symptom) {
            driver.program().act(FindFaultAt{0});
            driver.program().act(ChooseSymptom{symptom});
            open_causes(driver, symptom);
            INFO(book().symptoms[symptom].id);
            CHECK(driver.find("faults/symptom/source").label ==
                  who(book().symptoms[symptom].causes.front().source));
            for (const SymptomCause& made_by : book().symptoms[symptom].causes) {
                const FaultCause& cause = book().causes[made_by.cause];
                const std::string name = "faults/cause/" + cause.id;
                INFO(cause.id);
                CHECK(driver.find(name + "/source").label == who(cause.source));
                CHECK(driver.find(name + "/mend").label ==
                      text_of(language, fault_lore().causes[made_by.cause].fix));
                CHECK(driver.has(name + "/caution") == (cause.caution != Caution::none));
                if (cause.caution != Caution::none)
                    CHECK(driver.find(name + "/caution").label ==
                          word(language, caution_word(cause.caution)));
            }
            answer_tests(driver, symptom); // so that all of them stand there
            for (const SymptomCause& made_by : book().symptoms[symptom].causes)
                for (const std::size_t test : book().causes[made_by.cause].tests) {
                    const FaultTest& of = book().tests[test];
                    INFO(of.id);
                    CHECK(driver.has("faults/test/" + of.id + "/caution") ==
                          (of.caution != Caution::none));
                }
        }
    }
}

TEST_CASE("Where hands reach in or stand by what moves, tests and fixes say so", "[faults]") {
    // These are made on a printed garment, at a table.
    const std::set<std::string> at_table{"stretch_print", "peel_colours"};
    for (const FaultTest& test : book().tests) {
        INFO(test.id);
        CHECK((test.caution == Caution::none) == (at_table.count(test.id) == 1));
    }
    for (const FaultCause& cause : book().causes) {
        INFO(cause.id);
        CHECK(cause.caution != Caution::none);
        // What is set by hand inside the head is set on a press that can't move.
        static const std::set<Fix> inside{Fix::stops_advised, Fix::heights_level,
                                          Fix::wings_flat,    Fix::angle_usual,
                                          Fix::gap_advised,   Fix::blade_on_platen,
                                          Fix::flood_wider,   Fix::flood_reaches};
        if (inside.count(cause.fix) == 1) CHECK(cause.caution == Caution::isolated_and_bled);
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
