// Exercises through the real program: begun, answered with the real controls and marked, by touch
// and by keys, with nothing on the screen meanwhile that gives the answer away.
#include "tests/app/exercise_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

struct Setting {
    WindowSize size;
    Language language;
};
const Setting settings[] = {{phone, Language::english},
                            {phone, Language::spanish},
                            {desktop, Language::english},
                            {desktop, Language::spanish}};

} // namespace

TEST_CASE("A stroke is set by touch, marked, and the own job is as it was", "[exercises]") {
    for (const Setting& setting : settings) {
        const ScratchFolder folder;
        Driver driver(setting.size, folder.path(), setting.language);
        driver.tap("head/6");
        driver.tap("finding/6/0/fix");
        const Job own = driver.session().job();
        const JobId current = driver.session().current();
        start(driver, ExerciseKind::shortest_stroke);
        CHECK(driver.session().practising());
        CHECK(driver.program().state().place == Place::press);
        const Exercise exercise = run_of(driver).exercise;
        CHECK(driver.find("exercise/asked").value ==
              exercise_asked_text(setting.language, LengthUnit::mm, exercise));
        driver.picture(std::string("stroke-") + setting.size.name +
                       (setting.language == Language::spanish ? "-es" : ""));
        check_nothing_given_away(driver, driver.session().job());
        set_stops_by_pad(driver, solved_stops(exercise));
        CHECK(driver.find("exercise/words").label.find('2') != std::string::npos);
        check_nothing_given_away(driver, driver.session().job());
        driver.tap("exercise/mark");
        REQUIRE(state_of(driver).stage == ExerciseStage::marked);
        bool short_stroke = false, fit = false;
        for (const MarkLine& line : run_of(driver).marking.lines) {
            short_stroke = short_stroke || line.reason == MarkReason::stroke_short;
            fit = fit || line.reason == MarkReason::head_fit;
        }
        CHECK(fit);
        CHECK(short_stroke);
        CHECK(driver.has("exercise/score"));
        CHECK(driver.has("exercise/line/1"));
        driver.picture(std::string("result-") + setting.size.name +
                       (setting.language == Language::spanish ? "-es" : ""));
        // The own job is open again, with what can be undone in it.
        CHECK_FALSE(driver.session().practising());
        CHECK(driver.session().job() == own);
        CHECK(driver.session().current() == current);
        CHECK(driver.session().rows().size() == 1);
        REQUIRE(driver.session().can_undo());
        driver.tap("place/press");
        CHECK(driver.has("verdict"));
        driver.tap("undo");
        CHECK(driver.session().job() == demo_job());
        driver.tap("redo");
        CHECK(driver.session().job() == own);
    }
}

TEST_CASE("Faults are ticked by touch; settings are looked at only, and say nothing",
          "[exercises]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        start(driver, ExerciseKind::find_fault);
        const Exercise exercise = run_of(driver).exercise;
        Job shown = driver.session().job();
        check_nothing_given_away(driver, shown);
        driver.picture(std::string("faults-") + setting.size.name +
                       (setting.language == Language::spanish ? "-es" : ""));
        const Head& first = exercise.job.heads.front();
        driver.program().state().open.fill(true);
        driver.program().act(ChooseHead{first.id});
        driver.settle();
        check_nothing_given_away(driver, shown);
        driver.picture(std::string("faults-head-") + setting.size.name);
        // Nothing can be changed, by keys, by touch or by an old action.
        driver.key(Key::up);
        driver.program().act(StepStop{first.id, End::machine_side, 1.0, 0.0});
        driver.program().act(DoEdit{Edit{SetWinged{first.id, !first.flood.winged}}});
        CHECK_FALSE(driver.has("stop/less"));
        CHECK(driver.session().job() == shown);
        driver.program().act(ChooseHead{0});
        driver.settle();
        answer_rightly(driver);
        driver.tap("exercise/mark");
        CHECK(run_of(driver).score == 1.0);
        CHECK(driver.find("exercise/score").value == word(setting.language, Word::exercise_full));
        CHECK(driver.session().job() == demo_job());
    }
}

TEST_CASE("What finds faults in the open job is covered while they are asked for", "[exercises]") {
    Driver driver(phone);
    start(driver, ExerciseKind::find_fault);
    for (const char* part : {"practice/faults", "practice/call"}) {
        driver.tap("place/practice");
        driver.tap(part);
        CHECK(driver.has("exercise/waits"));
        driver.tap("exercise/return");
        CHECK(driver.program().state().place == Place::press);
    }
    driver.tap("exercise/leave");
    driver.tap("practice/faults");
    CHECK_FALSE(driver.has("exercise/waits"));
}

TEST_CASE("Every kind begins and has full marks for its own solution", "[exercises]") {
    for (const WindowSize& size : {phone, desktop})
        for (const ExerciseKind kind : exercise_kinds_in_order) {
            Driver driver(size);
            for (int times = 0; times < 4; ++times) {
                driver.program().act(ShowPractice{PracticePart::exercises});
                driver.program().act(StartExercise{kind});
                driver.settle();
                INFO(exercise_kind_name(kind) << ", seed " << run_of(driver).exercise.seed);
                answer_rightly(driver);
                if (times == 0) {
                    driver.picture("right-" + std::string(exercise_kind_name(kind)) + "-" +
                                   size.name);
                }
                driver.tap("exercise/mark");
                CHECK(run_of(driver).score == 1.0);
                CHECK(points_of(run_of(driver).score) == 100);
                CHECK(driver.session().job() == demo_job());
            }
            // Two that are managed at a level make it harder.
            CHECK(run_of(driver).level_after > lowest_level);
            driver.tap("exercise/all");
            const int level = next_level(state_of(driver).record->of(kind));
            CHECK(driver.find(start_name(kind))
                      .value.starts_with(say(Language::english, Word::exercise_level,
                                             {std::to_string(level)})));
        }
}

TEST_CASE("By the keyboard alone: a number is chosen, a stroke is set", "[exercises]") {
    for (const Setting& setting : settings) {
        Driver driver(setting.size, {}, setting.language);
        by_keys(driver, "place/practice");
        by_keys(driver, start_name(ExerciseKind::trainee_angle));
        REQUIRE(state_of(driver).stage == ExerciseStage::under_way);
        const Exercise angle = run_of(driver).exercise;
        for (std::size_t i = 0; i < angle.numbers.size(); ++i)
            if (angle.numbers[i] == angle.solution.number)
                by_keys(driver, "exercise/number/" + std::to_string(i + 1));
        by_keys(driver, "exercise/mark");
        CHECK(run_of(driver).score == 1.0);
        CHECK(driver.program().state().focus == "exercise/another");
        by_keys(driver, "exercise/all");

        by_keys(driver, start_name(ExerciseKind::shortest_stroke));
        REQUIRE(driver.session().practising());
        const Stops stops = solved_stops(run_of(driver).exercise);
        for (const End end : {End::machine_side, End::operator_side}) {
            by_keys(driver, end == End::machine_side ? "stop/machine" : "stop/operator");
            by_keys(driver, "stop/number");
            driver.type(typed(driver.session().job(), stop_of(stops, end)));
            by_keys(driver, "pad/accept");
        }
        CHECK(find_head(driver.session().job(), run_of(driver).exercise.head)->stops == stops);
        by_keys(driver, "exercise/mark");
        REQUIRE(state_of(driver).stage == ExerciseStage::marked);
        CHECK(run_of(driver).score > 0.5);
        CHECK(driver.session().job() == demo_job());
    }
}

TEST_CASE("Undo takes a move away, and a hint costs what it says", "[exercises]") {
    Driver driver(phone);
    start(driver, ExerciseKind::shortest_stroke);
    const HeadId head = run_of(driver).exercise.head;
    const Stops stops = find_head(driver.session().job(), head)->stops;
    driver.tap("stop/more");
    driver.tap("stop/more");
    CHECK(driver.session().practised().size() == 2);
    driver.tap("undo");
    CHECK(driver.session().practised().size() == 1);
    driver.tap("redo");
    CHECK(driver.session().practised().size() == 2);
    driver.tap("undo");
    driver.tap("undo");
    CHECK(driver.session().practised().empty());
    CHECK(find_head(driver.session().job(), head)->stops == stops);
    CHECK_FALSE(driver.session().can_undo());
    driver.tap("exercise/hint");
    CHECK(driver.find("exercise/hint/1").label ==
          hint_text(Language::english, LengthUnit::mm, run_of(driver).exercise,
                    run_of(driver).hints.front()));
    answer_rightly(driver);
    driver.tap("exercise/mark");
    CHECK(run_of(driver).marking.score == 1.0);
    CHECK(run_of(driver).score == after_hints(1.0, 1));
    CHECK(driver.has("exercise/hints"));
}
