// The people who practise, as a trainer and a trainee work with them: by touch and by keys, in both
// languages, and with what is sent between two devices.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/records/exercise_file.h"
#include "app/text/practice_sentences.h"
#include "tests/app/exercise_steps.h"
#include "tests/app/list_steps.h"
#include "tests/app/visit_trainees.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;
namespace fs = std::filesystem;

namespace {

void open_trainees(Driver& driver) {
    driver.tap("place/practice");
    driver.tap("practice/trainees");
}

void add(Driver& driver, std::string_view name) { listing::type_into(driver, "trainee/add", name); }

const TraineeSummary& who(Driver& driver) { return driver.session().practised_by(); }

std::string choose_name(const TraineeRow& row) {
    return "trainee/choose/" + std::to_string(row.id);
}

TraineeRow row_named(Driver& driver, const std::string& name) {
    for (const TraineeSummary& person : driver.session().group())
        if (person.who.name == name) return person.who;
    FAIL("nobody is called " + name);
    return {};
}

std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// The one file in `exports` whose name begins so.
std::string exported(const ScratchFolder& folder, const std::string& start) {
    std::string found;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder.file("exports")))
        if (entry.path().filename().string().starts_with(start)) found = entry.path().string();
    INFO(start);
    REQUIRE_FALSE(found.empty());
    return found;
}

bool is_in_library(const ScratchFolder& folder, const std::string& bytes) {
    for (const char* file : {"library.db", "library.db-wal"})
        if (text_of_file(folder.file(file)).find(bytes) != std::string::npos) return true;
    return false;
}

/// Begins an exercise, answers it rightly, and marks it.
void do_exercise(Driver& driver, ExerciseKind kind) {
    driver.tap("place/practice");
    driver.tap("practice/exercises");
    driver.tap(start_name(kind));
    answer_rightly(driver);
    driver.tap("exercise/mark");
    REQUIRE(state_of(driver).stage == ExerciseStage::marked);
}

} // namespace

TEST_CASE("A person is added by touch, chosen, and still chosen at the next start") {
    for (const WindowSize& size : {small_phone, phone, desktop})
        for (const Language language : {Language::english, Language::spanish}) {
            INFO(size.name);
            const ScratchFolder folder;
            {
                Driver driver(size, folder.path(), language);
                open_trainees(driver);
                CHECK(driver.find("trainee/choose/0").chosen);
                add(driver, "Robin");
                add(driver, "  Lou  ");
                CHECK(who(driver).who.name == "Lou"); // spaces at the ends are nothing
                CHECK(driver.find("trainee/who").label == "Lou");
                driver.tap(choose_name(row_named(driver, "Robin")));
                CHECK(who(driver).who.name == "Robin");
                CHECK(driver.find(choose_name(row_named(driver, "Robin"))).chosen);
                CHECK_FALSE(driver.find("trainee/choose/0").chosen);
            }
            Driver again(size, folder.path(), language);
            CHECK(who(again).who.name == "Robin");
            open_trainees(again);
            CHECK(again.find("trainee/who").label == "Robin");
            again.tap("trainee/choose/0");
            CHECK(who(again).who.id == 0);
        }
}

TEST_CASE("A name that can't be kept stays where it is typed, and a blank one adds nobody") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_trainees(driver);
    driver.tap("trainee/add");
    driver.type(std::string(longest_name + 1, 'x'));
    driver.tap("typing/done");
    CHECK(driver.has("typing"));
    CHECK_THAT(driver.find("notice").label, ContainsSubstring(std::to_string(longest_name)));
    driver.key(Key::escape);
    driver.tap("notice/close"); // it lies over the field
    listing::type_into(driver, "trainee/add", "   ");
    CHECK(driver.session().group().empty());
    add(driver, "Robin");
    listing::type_into(driver, "trainee/rename", "Robin B.");
    CHECK(who(driver).who.name == "Robin B.");
}

TEST_CASE("An exercise that is marked is noted for who practises, and levels are theirs") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_trainees(driver);
    add(driver, "Robin");
    const TraineeRow robin = who(driver).who;
    do_exercise(driver, ExerciseKind::trainee_angle);
    driver.reveal("exercise/save-result");
    driver.picture("result sent");
    CHECK(driver.find("exercise/kept").label ==
          say(Language::english, Word::exercise_result_kept, {"Robin"}));
    const TopicSummary& topic = who(driver).of(PracticeTopic::trainee_angle);
    REQUIRE(topic.done.attempts == 1);
    CHECK(topic.done.mean_of_last > 0.99);
    CHECK(topic.mistakes.empty());
    driver.tap("exercise/another");
    answer_rightly(driver);
    driver.tap("exercise/mark");
    CHECK(who(driver).of(PracticeTopic::trainee_angle).done.level == 2); // two in a row
    driver.tap("exercise/all");
    CHECK(driver.find("exercise/for").label == say(Language::english, Word::exercise_for, {"Robin"}));
    const std::string start = start_name(ExerciseKind::trainee_angle);
    const std::string second = say(Language::english, Word::exercise_level, {"2"});
    CHECK_THAT(driver.find(start).value, ContainsSubstring(second));
    // Somebody else begins at the beginning, and Robin goes on where Robin was.
    driver.tap("practice/trainees");
    add(driver, "Lou");
    driver.tap("practice/exercises");
    CHECK_THAT(driver.find(start).value,
               ContainsSubstring(say(Language::english, Word::exercise_level, {"1"})));
    driver.tap("practice/trainees");
    driver.tap(choose_name(robin));
    driver.tap("practice/exercises");
    CHECK_THAT(driver.find(start).value, ContainsSubstring(second));
}

TEST_CASE("What was done without a name is kept as well, and levels outlive the program") {
    const ScratchFolder folder;
    const std::string start = start_name(ExerciseKind::judge_gap);
    {
        Driver driver(desktop, folder.path());
        do_exercise(driver, ExerciseKind::judge_gap);
        driver.tap("exercise/another");
        answer_rightly(driver);
        driver.tap("exercise/mark");
    }
    Driver again(desktop, folder.path());
    again.tap("place/practice");
    CHECK_THAT(again.find(start).value,
               ContainsSubstring(say(Language::english, Word::exercise_level, {"2"})));
}

TEST_CASE("Mistakes of an exercise are told under its topic, and it can be begun from there") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path(), Language::spanish);
    driver.tap("place/practice");
    driver.tap(start_name(ExerciseKind::which_dial));
    driver.tap("exercise/mark"); // nothing answered
    const std::vector<Mistake> made = mistakes_of(run_of(driver).marking);
    REQUIRE_FALSE(made.empty());
    driver.tap("practice/trainees");
    driver.tap("trainee/topic/which_dial");
    CHECK_THAT(driver.find("trainee/topic/which_dial/mistake/1").label,
               ContainsSubstring(mistake_text(Language::spanish, made.front())));
    driver.tap("trainee/topic/which_dial/practise");
    CHECK(run_of(driver).exercise.kind == ExerciseKind::which_dial);
    CHECK(state_of(driver).stage == ExerciseStage::under_way);
}

TEST_CASE("What comes next is what the rule says, and a tap begins it") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_trainees(driver);
    add(driver, "Robin");
    const std::optional<NextTopic> next = practice_next(who(driver).done(), driver.session().time());
    REQUIRE(next);
    CHECK(driver.find("trainee/next").label == topic_text(Language::english, next->topic));
    driver.tap("trainee/next");
    CHECK(topic_of(run_of(driver).exercise.kind) == next->topic);
}

TEST_CASE("A topic is signed for by touch, with initials and time, and the signature taken back") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_trainees(driver);
    add(driver, "Robin");
    listing::type_into(driver, "trainee/initials", "MK");
    driver.tap("trainee/topic/call");
    driver.tap("trainee/topic/call/shown");
    driver.tap("trainee/topic/call/alone");
    const TopicSigns expected{SignOff{"MK", driver.session().time()}, std::nullopt,
                              SignOff{"MK", driver.session().time()}};
    CHECK(who(driver).of(PracticeTopic::call).signs == expected);
    CHECK(driver.find("trainee/topic/call/alone").chosen);
    CHECK_THAT(driver.find("trainee/topic/call/alone").value, ContainsSubstring("MK"));
    CHECK_THAT(driver.find("trainee/topic/call").value,
               ContainsSubstring(std::string(word(Language::english, Word::sign_alone))));
    driver.tap("trainee/topic/call/alone");
    CHECK(who(driver).of(PracticeTopic::call).state() == SignState::shown);
    CHECK_FALSE(driver.find("trainee/topic/call/alone").chosen);
}

TEST_CASE("A result says for whom it was noted, and keeps one person's name from another's") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_trainees(driver);
    add(driver, "Lou");
    add(driver, "Robin");
    do_exercise(driver, ExerciseKind::judge_gap);
    CHECK(driver.has("exercise/kept"));
    listing::type_into(driver, "exercise/sender", "Robin B.");
    driver.tap("practice/trainees");
    driver.tap(choose_name(row_named(driver, "Lou")));
    driver.tap("practice/exercises");
    REQUIRE(driver.has("exercise/save-result"));
    CHECK_FALSE(driver.has("exercise/kept")); // it was noted for Robin
    CHECK(driver.program().state().practice.trainee.sender.empty());
}

TEST_CASE("What to practise next leads back to an exercise that is under way") {
    Driver driver(desktop);
    start(driver, ExerciseKind::judge_gap);
    driver.tap("exercise/number/1");
    const std::shared_ptr<ExerciseRun> run = state_of(driver).run;
    driver.tap("practice/trainees");
    driver.tap("trainee/next");
    CHECK(state_of(driver).run == run);
    CHECK(run->answer.number == run->exercise.numbers.front());
    CHECK(driver.has("exercise/mark"));
}

TEST_CASE("Nobody in particular is signed for, and nothing offers to") {
    Driver driver(phone);
    open_trainees(driver);
    driver.tap("trainee/topic/call");
    CHECK_FALSE(driver.has("trainee/topic/call/shown"));
    CHECK_FALSE(driver.has("trainee/export"));
    CHECK_FALSE(driver.has("trainee/erase")); // nothing was done yet
}

TEST_CASE("Erasing is asked once more, says that it is final, and leaves no bytes") {
    for (const Language language : {Language::english, Language::spanish}) {
        const ScratchFolder folder;
        Driver driver(phone, folder.path(), language);
        open_trainees(driver);
        add(driver, "Wilhelmina-Thunderbolt");
        do_exercise(driver, ExerciseKind::judge_gap);
        driver.tap("practice/trainees");
        REQUIRE(is_in_library(folder, "Wilhelmina-Thunderbolt"));
        driver.tap("trainee/erase");
        CHECK(driver.session().group().size() == 1); // not yet
        driver.tap("trainee/erase/keep");
        CHECK_FALSE(driver.has("trainee/erase/do"));
        driver.tap("trainee/erase");
        // The question and both answers are in sight at once.
        for (const char* name : {"trainee/erase/keep", "trainee/erase/do"}) {
            const Thing& answer = driver.find(name);
            CHECK(driver.list().clip_box(answer.clip).contains(answer.box.centre()));
        }
        driver.picture(language == Language::english ? "trainee erase" : "trainee erase es");
        driver.program().state().practice.trainee.sender = "Wilhelmina-Thunderbolt";
        driver.tap("trainee/erase/do");
        CHECK(driver.session().group().empty());
        CHECK(who(driver).who.id == 0);
        CHECK(driver.program().state().practice.trainee.sender.empty()); // nor is it sent again
        CHECK(driver.find("trainee/choose/0").chosen);
        CHECK(driver.find("notice").label == word(language, Word::trainee_erased));
        CHECK_FALSE(is_in_library(folder, "Wilhelmina-Thunderbolt"));
    }
}

TEST_CASE("Erasing that was asked for is off when something else was looked at meanwhile") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    open_trainees(driver);
    add(driver, "Robin");
    const TraineeId robin = who(driver).who.id;
    add(driver, "Lou");
    driver.tap("trainee/erase");
    driver.tap(choose_name(row_named(driver, "Robin")));
    CHECK_FALSE(driver.has("trainee/erase/do"));
    driver.program().act(EraseTrainee{robin}); // and nothing but the second step does it
    CHECK(driver.session().group().size() == 2);
    driver.tap("trainee/erase");
    driver.tap("practice/exercises");
    driver.tap("practice/trainees");
    CHECK_FALSE(driver.has("trainee/erase/do"));
}

TEST_CASE("The group is seen at a glance, and a row leads to its person") {
    for (const WindowSize& size : {phone, desktop})
        for (const Language language : {Language::english, Language::spanish}) {
            const ScratchFolder folder;
            Driver driver(size, folder.path(), language);
            open_trainees(driver);
            driver.tap("trainee/group");
            CHECK(driver.has("trainee/nobody"));
            for (const char* name : {"Robin", "Ana María", "Lou"}) {
                REQUIRE(driver.session().add_trainee(name));
                do_much(driver.session(), static_cast<int>(driver.session().group().size()));
            }
            driver.tap("trainee/one");
            driver.tap("trainee/group");
            const TraineeRow ana = row_named(driver, "Ana María");
            const Thing& row = driver.find("trainee/row/" + std::to_string(ana.id));
            CHECK(row.label == "Ana María");
            for (const PracticeTopic topic : topics_in_order)
                CHECK_THAT(row.value, ContainsSubstring(topic_text(language, topic)));
            CHECK_THAT(row.value, ContainsSubstring(std::string(word(language, Word::sign_helped))));
            driver.set_looks(language, 1.0f);
            driver.picture(std::string("group ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.set_looks(language, 1.0f, ThemeChoice::dark);
            driver.picture(std::string("group dark ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.tap("trainee/row/" + std::to_string(ana.id));
            CHECK(who(driver).who == ana);
            CHECK(driver.find("trainee/who").label == "Ana María");
            driver.tap("trainee/topic/read_sheet");
            driver.picture(std::string("person dark ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.set_looks(language, 1.0f);
            driver.program().state().practice_scroll = 0.0f;
            driver.settle();
            driver.picture(std::string("person ") + size.name +
                           (language == Language::english ? "" : " es"));
        }
}

TEST_CASE("One person's data and the group's table are written by one tap each") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    open_trainees(driver);
    add(driver, "Lou");
    add(driver, "Robin");
    do_exercise(driver, ExerciseKind::judge_gap);
    driver.tap("practice/trainees");
    driver.tap("trainee/export");
    const std::string path = exported(folder, "practice-");
    CHECK_THAT(driver.find("notice").label, ContainsSubstring(path));
    CHECK(path.find("Robin") == std::string::npos); // a file's name is seen by everybody
    const std::string data = text_of_file(path);
    CHECK_THAT(data, ContainsSubstring("Robin"));
    CHECK_THAT(data, ContainsSubstring("judge_gap"));
    CHECK(data.find("Lou") == std::string::npos);
    driver.tap("notice/close");
    driver.tap("trainee/group");
    driver.tap("trainee/save-group");
    const std::string table = text_of_file(exported(folder, "practice."));
    CHECK(std::count(table.begin(), table.end(), '\n') == 1 + 2 * static_cast<int>(topic_count));
    CHECK_THAT(table, ContainsSubstring("Lou,"));
}

TEST_CASE("All of it can be done with the keyboard alone") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    by_keys(driver, "place/practice");
    by_keys(driver, "practice/trainees");
    by_keys(driver, "trainee/add");
    driver.type("Robin");
    driver.key(Key::enter);
    REQUIRE(who(driver).who.name == "Robin");
    by_keys(driver, "trainee/topic/call");
    by_keys(driver, "trainee/topic/call/helped");
    CHECK(who(driver).of(PracticeTopic::call).state() == SignState::helped);
    by_keys(driver, "trainee/group");
    by_keys(driver, "trainee/row/" + std::to_string(who(driver).who.id));
    CHECK(driver.has("trainee/who"));
    by_keys(driver, "trainee/erase");
    // The keyboard stands on what keeps the person: Enter once more erases nobody.
    driver.key(Key::enter);
    CHECK(driver.session().group().size() == 1);
    by_keys(driver, "trainee/erase");
    by_keys(driver, "trainee/erase/do");
    CHECK(driver.session().group().empty());
}
