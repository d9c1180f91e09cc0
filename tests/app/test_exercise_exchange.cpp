// Exercises and results between a trainer's device and a trainee's: by file and by link, and what is
// refused.
#include <filesystem>
#include <fstream>
#include <iterator>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/records/exercise_file.h"
#include "tests/app/exercise_steps.h"
#include "tests/app/list_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::ContainsSubstring;
namespace fs = std::filesystem;

namespace {

std::string written(const ScratchFolder& folder, const std::string& start) {
    for (const fs::directory_entry& entry : fs::directory_iterator(folder.file("exports")))
        if (entry.path().filename().string().starts_with(start)) return entry.path().string();
    FAIL("no file begins with " + start);
    return {};
}

void do_exercise(Driver& driver, ExerciseKind kind) {
    driver.tap("place/practice");
    driver.tap(start_name(kind));
    answer_rightly(driver);
    driver.tap("exercise/mark");
    REQUIRE(state_of(driver).stage == ExerciseStage::marked);
}

std::string copied_link(Driver& driver) {
    for (const Errand& errand : driver.window().errands())
        if (errand.kind == ErrandKind::copy_text) return errand.text;
    FAIL("nothing was copied");
    return {};
}

} // namespace

TEST_CASE("An exercise goes to another device as a file and is the same there") {
    const ScratchFolder folder, other;
    Exercise sent;
    {
        Driver trainer(desktop, folder.path());
        do_exercise(trainer, ExerciseKind::read_sheet);
        sent = run_of(trainer).exercise;
        trainer.tap("exercise/save");
    }
    Driver trainee(phone, other.path(), Language::spanish);
    const Job own = trainee.session().job();
    trainee.drop_file(written(folder, "exercise-"));
    REQUIRE(state_of(trainee).stage == ExerciseStage::under_way);
    const Exercise& arrived = run_of(trainee).exercise;
    CHECK(arrived.kind == sent.kind);
    CHECK(arrived.seed == sent.seed);
    CHECK(arrived.sheet == sent.sheet);
    answer_rightly(trainee);
    trainee.tap("exercise/mark");
    CHECK(run_of(trainee).score > 0.99);
    CHECK(trainee.session().job() == own); // the person's own job is as it was
}

TEST_CASE("A trainer's own exercise goes by link, and is found out there") {
    const ScratchFolder other;
    const Job job = right_job();
    const std::optional<Exercise> made =
        exercise_from(job, {breakings_of(job, job.heads.front().id).front().edit});
    REQUIRE(made);
    Driver trainee(phone, other.path());
    trainee.open_link("https://example.org/carriageway/#" + exercise_link_fragment(*made));
    REQUIRE(state_of(trainee).stage == ExerciseStage::under_way);
    CHECK(run_of(trainee).exercise == *made);
    check_nothing_given_away(trainee, trainee.session().job());
    answer_rightly(trainee);
    trainee.tap("exercise/mark");
    CHECK(run_of(trainee).score > 0.99);
    const TopicSummary& done = trainee.session().practised_by().of(PracticeTopic::find_fault);
    CHECK(done.done.attempts == 1);
    CHECK(done.results.empty()); // for no level
}

TEST_CASE("An exercise that arrives while another is answered waits, and nothing is lost") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    start(driver, ExerciseKind::trainee_angle);
    driver.tap("exercise/number/1");
    const ExerciseAnswer answer = run_of(driver).answer;
    driver.open_link(exercise_link_fragment(make_exercise(ExerciseKind::judge_gap, 5, 1)));
    CHECK(run_of(driver).exercise.kind == ExerciseKind::trainee_angle);
    CHECK(run_of(driver).answer == answer);
    CHECK_THAT(driver.find("notice").label,
               ContainsSubstring(std::string(word(Language::english, Word::the_link))));
}

TEST_CASE("A result goes to the trainer with the name that was typed, and is noted for a person") {
    const ScratchFolder folder, other;
    std::string nameless;
    {
        Driver trainee(phone, folder.path());
        trainee.as_in_a_browser();
        trainee.tap("place/practice");
        trainee.tap("practice/trainees");
        listing::type_into(trainee, "trainee/add", "Secret Nickname");
        trainee.tap("practice/exercises");
        do_exercise(trainee, ExerciseKind::judge_gap);
        trainee.tap("exercise/copy-result");
        nameless = copied_link(trainee);
        // Who is chosen on the device is in no link; only what was typed for the trainer is.
        CHECK(read_result_link(nameless).result->name.empty());
        listing::type_into(trainee, "exercise/sender", "Robin");
        trainee.tap("exercise/save-result");
    }
    const std::string path = written(folder, "result-");

    Driver trainer(desktop, other.path());
    trainer.drop_file(path);
    CHECK_THAT(trainer.find("result/of").label, ContainsSubstring("Robin"));
    CHECK(trainer.has("result/whose")); // nobody is chosen yet
    CHECK_FALSE(trainer.has("result/note"));
    listing::type_into(trainer, "trainee/add", "Robin B.");
    trainer.tap("result/note");
    CHECK_FALSE(trainer.has("result/note"));
    const TopicSummary& done = trainer.session().practised_by().of(PracticeTopic::judge_gap);
    CHECK(done.done.attempts == 1);
    CHECK(done.done.mean_of_last > 0.99);
    // The same once more, by link this time, is not counted twice.
    trainer.open_link(nameless);
    trainer.tap("result/note");
    CHECK(trainer.session().practised_by().of(PracticeTopic::judge_gap).done.attempts == 1);
    trainer.open_link(nameless);
    trainer.tap("result/drop");
    CHECK_FALSE(trainer.has("result/drop"));
}

TEST_CASE("A result from a clock that is ahead is noted as of now") {
    const ScratchFolder folder;
    Driver trainer(desktop, folder.path());
    trainer.tap("place/practice");
    trainer.tap("practice/trainees");
    listing::type_into(trainer, "trainee/add", "Robin");
    ExerciseResult result;
    result.attempt.topic = PracticeTopic::judge_gap;
    result.attempt.score = 1.0;
    result.attempt.time = trainer.session().time() + 1'000'000'000;
    trainer.open_link(result_link_fragment(result));
    trainer.tap("result/note");
    const TopicSummary& done = trainer.session().practised_by().of(PracticeTopic::judge_gap);
    REQUIRE(done.done.attempts == 1);
    CHECK(done.done.last == trainer.session().time());
}

TEST_CASE("What can't be read says why, and changes nothing") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    const Job own = driver.session().job();
    std::string text = write_exercise(make_exercise(ExerciseKind::judge_gap, 5, 1));
    text.replace(text.find("judge_gap"), 9, "juggling!");
    write_bytes(folder.file("sent.json"), text);
    driver.drop_file(folder.file("sent.json"));
    CHECK_THAT(driver.find("notice").label, ContainsSubstring("sent.json"));
    CHECK_THAT(driver.find("notice").label, ContainsSubstring("juggling!"));
    CHECK(state_of(driver).run == nullptr);
    for (const char* link : {"#exercise=1.AAAA", "#result=1.AAAA", "#exercise=7.AAAA"}) {
        driver.open_link(link);
        CHECK(driver.has("notice"));
        CHECK(state_of(driver).run == nullptr);
        CHECK_FALSE(driver.program().state().practice.trainee.arrived);
    }
    CHECK(driver.session().job() == own);
}

TEST_CASE("Without an address for links only files are offered") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    do_exercise(driver, ExerciseKind::judge_gap);
    CHECK(driver.has("exercise/save"));
    CHECK(driver.has("exercise/save-result"));
    CHECK_FALSE(driver.has("exercise/copy"));
    CHECK_FALSE(driver.has("exercise/copy-result"));
}
