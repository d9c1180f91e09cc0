// A call from the first word to its place in the log: by touch and by keys, in both languages.

#include "tests/app/call_steps.h"

using namespace carriageway;
using namespace carriageway::calling;
using Catch::Matchers::ContainsSubstring;

TEST_CASE("A call is asked through by touch, and no job but its own is changed") {
    for (const WindowSize& size : {small_phone, desktop})
        for (const Language language : {Language::english, Language::spanish}) {
            INFO(size.name);
            const ScratchFolder folder;
            Driver driver(size, folder.path(), language);
            driver.as_in_a_browser();
            const JobId before = driver.session().current();
            const Job own = driver.session().job();
            begin_at_head_6(driver);
            const JobId job = driver.session().current();
            REQUIRE(job != before);
            CHECK(driver.find("call/symptom").label ==
                  text_of(language, fault_lore().symptoms[*find_symptom(book(), "no_stroke")]));
            // A number as it is read out: the ruler's, and drawn at once.
            const Stops stops = driver.stops(6);
            const std::string picture = driver.find("call/picture").label;
            const std::string stop = "head/6/stops.machine_mm";
            driver.tap(stop);
            driver.picture(std::string("call pad ") + size.name);
            driver.pad("690mm");
            driver.tap("pad/accept");
            CHECK(driver.stops(6).machine_side != stops.machine_side);
            CHECK_THAT(driver.find(stop).value, ContainsSubstring("690"));
            CHECK(call_of(driver).notes.read ==
                  std::vector<NumberRead>{{call_of(driver).notes.head, Field::machine_stop}});
            CHECK(driver.find("call/picture").label == picture);
            CHECK(ask_everything(driver) > 1);
            driver.reveal("call/cause/both_sensors/tell");
            CHECK_THAT(driver.find("call/cause/both_sensors").label, ContainsSubstring("1. "));
            CHECK(driver.has("call/say/none"));
            driver.tap("call/cause/both_sensors/tell");
            CHECK_FALSE(driver.has("call/say/none"));
            // What is read back is what the program would set, in the ruler's numbers.
            const Stops advised = *driver.head(6).advised;
            const std::string to = format_ruler(own.press.ruler, advised.operator_side);
            CHECK_THAT(driver.find("call/say/1").label, ContainsSubstring(to));
            driver.program().state().practice_scroll = 0.0f;
            driver.settle();
            driver.picture(std::string("call asked ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.reveal("call/picture");
            driver.picture(std::string("call drawn ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.reveal("call/set");
            driver.picture(std::string("call told ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.tap("call/copy");
            const ReadReply reply = read_reply_link(copied(driver));
            REQUIRE(reply);
            CHECK(head_on(reply.reply->after, 6)->stops == advised);
            driver.tap("call/set");
            CHECK(driver.head(6).fit);
            CHECK(driver.has("call/say/done"));
            driver.tap("call/outcome/solved");
            driver.tap("call/leave");
            // The job that was open before is open again, and stands as it did.
            CHECK(driver.session().current() == before);
            CHECK(driver.session().job() == own);
            REQUIRE(call_of(driver).log.size() == 1);
            const CallRow row = call_of(driver).log.front();
            CHECK(row.call.outcome == CallOutcome::solved);
            CHECK(row.call.found == "both_sensors");
            const Thing& card = driver.find("call/row/" + std::to_string(row.id));
            CHECK_THAT(card.value, ContainsSubstring(words_of(Word::call_solved, language)));
            CHECK(driver.find("call/group/1").label == own.press.name);
            driver.picture(std::string("call log ") + size.name);
        }
}

TEST_CASE("A whole call, and the link that goes back, by the keyboard alone") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.as_in_a_browser();
    by_keys(driver, "place/practice");
    by_keys(driver, "practice/call");
    by_keys(driver, "call/begin");
    by_keys(driver, "call/press");
    driver.window().press(Key::a, true);
    driver.settle();
    driver.type("Line two");
    driver.key(Key::enter);
    by_keys(driver, "call/symptom/no_stroke");
    by_keys(driver, "call/head/6");
    by_keys(driver, "head/6/stops.operator_mm");
    REQUIRE(driver.has("pad/display"));
    driver.type("600");
    by_keys(driver, "pad/accept");
    CHECK(format_ruler(driver.session().job().press.ruler, driver.stops(6).operator_side) ==
          driver.find("head/6/stops.operator_mm").value);
    const std::optional<CallQuestion> first = question_of(driver);
    REQUIRE(first);
    const bool number = first->kind == CallQuestion::Kind::number;
    by_keys(driver, number ? "call/as-shown"
                           : answer_for(*first, *find_cause(book(), "both_sensors")));
    // The keyboard stands on the next question: it is answered without going round.
    const std::optional<CallQuestion> second = question_of(driver);
    REQUIRE(second);
    CHECK_FALSE(same_question(*first, *second));
    CHECK(driver.has(driver.program().state().focus));
    driver.key(Key::enter);
    by_keys(driver, "call/cause/both_sensors/tell");
    by_keys(driver, "call/copy");
    CHECK(read_reply_link(copied(driver)));
    by_keys(driver, "call/outcome/passed-on");
    by_keys(driver, "call/leave");
    REQUIRE(call_of(driver).log.size() == 1);
    const CallRow row = call_of(driver).log.front();
    CHECK(row.call.press == "Line two");
    CHECK(row.call.outcome == CallOutcome::passed_on);
    const std::string name = "call/row/" + std::to_string(row.id);
    by_keys(driver, name + "/erase");
    driver.key(Key::enter); // the keyboard stands on what keeps it
    CHECK(call_of(driver).log.size() == 1);
    by_keys(driver, name + "/erase");
    by_keys(driver, name + "/do");
    CHECK(call_of(driver).log.empty());
}

TEST_CASE("A call that nobody ended goes on where it was after a restart") {
    const ScratchFolder folder;
    CallNotes notes;
    Job job;
    JobId own = 0;
    {
        Driver driver(phone, folder.path());
        own = driver.session().current();
        begin_at_head_6(driver);
        driver.tap("head/6/image.length_mm");
        driver.pad("222mm");
        driver.tap("pad/accept");
        CHECK(driver.find("head/6/image.length_mm").value == "222 mm");
        const std::optional<CallQuestion> question = question_of(driver);
        REQUIRE(question);
        driver.tap(question->kind == CallQuestion::Kind::number
                       ? "call/skip"
                       : answer_for(*question, *find_cause(book(), "both_sensors")));
        driver.tap("call/cause/both_sensors/tell");
        listing::type_into(driver, "call/notes", "Rings back at six");
        notes = call_of(driver).notes;
        job = driver.session().job();
    }
    Driver driver(phone, folder.path(), Language::spanish);
    driver.tap("place/practice");
    driver.tap("practice/call");
    REQUIRE(call_of(driver).log.size() == 1);
    driver.tap("call/row/" + std::to_string(call_of(driver).log.front().id));
    CHECK(call_of(driver).notes == notes);
    CHECK(driver.session().job() == job);
    CHECK(driver.find("head/6/image.length_mm").value == "222 mm");
    CHECK(driver.find("call/notes").value == "Rings back at six");
    CHECK(driver.find("call/cause/both_sensors/tell").chosen);
    CHECK(driver.session().read(own));
    CHECK_FALSE(driver.session().read(own)->name == job.name);
}

TEST_CASE("What is typed while another job is open is not the caller's") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    const JobId own = driver.session().current();
    begin_at_head_6(driver);
    const CallNotes notes = call_of(driver).notes;
    driver.program().act(OpenJob{own});
    driver.settle();
    driver.program().act(OpenPad{head_on(driver.session().job(), 6)->id, Field::print_speed});
    driver.settle();
    driver.pad("400");
    driver.tap("pad/accept");
    CHECK(call_of(driver).notes == notes);
    open_calls(driver);
    CHECK(driver.has("call/elsewhere"));
    CHECK_FALSE(driver.has("call/question"));
    driver.tap("call/back");
    CHECK(driver.session().current() == notes.job);
    CHECK(driver.has("call/question"));
    CHECK(head_on(driver.session().job(), 6)->print_speed != 400.0);
}

TEST_CASE("Erasing a call is asked for once more; its job can be brought back") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    begin_at_head_6(driver);
    const JobId job = driver.session().current();
    const std::size_t jobs = driver.session().rows().size();
    driver.tap("call/leave");
    const CallId id = call_of(driver).log.front().id;
    driver.program().act(EraseCall{id}); // unasked
    driver.settle();
    CHECK(call_of(driver).log.size() == 1);
    const std::string name = "call/row/" + std::to_string(id);
    driver.tap(name + "/erase");
    driver.tap(name + "/keep");
    CHECK(call_of(driver).log.size() == 1);
    driver.tap(name + "/erase");
    driver.tap(name + "/do");
    CHECK(call_of(driver).log.empty());
    CHECK(driver.session().recent_calls(10).empty());
    CHECK(driver.session().rows().size() == jobs - 1);
    driver.tap("notice/restore");
    CHECK(driver.session().rows().size() == jobs);
    CHECK(driver.session().read(job));
}

TEST_CASE("A call whose job was deleted goes on with a copy, and says so") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    begin_at_head_6(driver);
    const JobId job = driver.session().current();
    driver.tap("call/leave");
    driver.program().act(RemoveJob{job});
    open_calls(driver);
    driver.tap("call/row/" + std::to_string(call_of(driver).log.front().id));
    CHECK(driver.find("notice").label == words_of(Word::call_job_gone, Language::english));
    CHECK(call_of(driver).notes.job == driver.session().current());
    CHECK(call_of(driver).notes.job != job);
    CHECK(driver.has("call/question"));
}

TEST_CASE("A call may begin on a press that was kept, and waits for an exercise under way") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.program().act(KeepPress{});
    driver.settle();
    driver.tap("notice/close"); // it would lie over what is tapped next
    start(driver, ExerciseKind::judge_gap);
    open_calls(driver);
    driver.tap("call/begin");
    CHECK(call_of(driver).id == 0);
    CHECK(state_of(driver).stage == ExerciseStage::under_way);
    driver.program().act(LeaveExercise{});
    open_calls(driver);
    const PressRow press = driver.session().presses().front();
    driver.tap("call/begin/" + std::to_string(press.id));
    CHECK(driver.session().job().press.name == press.name);
    REQUIRE(driver.session().job().heads.size() == 1);
    CHECK(call_of(driver).notes.head == driver.session().job().heads.front().id);
    driver.tap("call/symptom/weak_end");
    CHECK(driver.has("call/picture"));
    CHECK(driver.has("call/question"));
}
