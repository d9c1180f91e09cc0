// A job that comes by a link: shown, worked on, kept or left, and never stored behind anyone's back.

#include <catch2/catch_test_macros.hpp>

#include "app/records/job_link.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

/// The demonstration under another name, so that it is told from the library's own.
Job sent_job(const std::string& name = "Harbour fair tote") {
    Job job = demo_job();
    job.name = name;
    return job;
}

std::string link_to(const Job& job) { return "https://example.org/carriageway/#" + job_link_fragment(job); }

int taken(Driver& driver) {
    int count = 0;
    for (const Errand& errand : driver.window().errands())
        if (errand.kind == ErrandKind::link_taken) ++count;
    return count;
}

} // namespace

TEST_CASE("A link's job is shown, worked on and undone, and nothing of it is stored") {
    const ScratchFolder folder;
    const Job sent = sent_job();
    {
        Driver driver(phone, folder.path());
        const JobId before = driver.session().current();
        driver.open_link(link_to(sent));
        CHECK(driver.session().visiting());
        CHECK(driver.session().current() == 0);
        CHECK(driver.session().job() == sent);
        CHECK(driver.session().save_state() == SaveState::visiting);
        CHECK(driver.find("visit").label == words_of(Word::visit));
        CHECK(driver.find("saved").label == words_of(Word::visit_not_kept));
        CHECK(driver.find("title").label == sent.name);
        driver.picture("visit-phone");
        driver.tap("head/6");
        driver.tap("finding/6/0/fix");
        CHECK(driver.head(6).fit);
        driver.tap("undo");
        CHECK(driver.session().job() == sent);
        driver.tap("redo");
        CHECK(driver.head(6).fit);
        CHECK(driver.session().rows().size() == 1);
        CHECK(driver.session().rows().front().id == before);
        CHECK(taken(driver) == 0);
    }
    Driver driver(phone, folder.path());
    CHECK(driver.session().rows().size() == 1);
    CHECK(driver.session().job() == demo_job());
    CHECK_FALSE(driver.has("visit"));
}

TEST_CASE("A link's job that is kept is in the library as it was worked on, undo included") {
    const ScratchFolder folder;
    Stops set;
    {
        Driver driver(small_phone, folder.path());
        driver.open_link("#" + job_link_fragment(sent_job()));
        driver.tap("head/6");
        driver.tap("finding/6/0/fix");
        set = driver.stops(6);
        driver.tap("visit/keep");
        CHECK_FALSE(driver.session().visiting());
        CHECK_FALSE(driver.has("visit"));
        CHECK(taken(driver) == 1);
        CHECK(driver.find("notice").label == say(Language::english, Word::visit_kept, {"Harbour fair tote"}));
        REQUIRE(driver.session().rows().size() == 2);
        CHECK(driver.session().current() != 0);
        driver.tap("undo");
        CHECK_FALSE(driver.stops(6) == set);
        driver.tap("redo");
        REQUIRE(driver.session().flush());
    }
    Driver driver(small_phone, folder.path());
    CHECK(driver.session().job().name == "Harbour fair tote");
    CHECK(driver.stops(6) == set);
}

TEST_CASE("A visit that is left leads back to what was open, and can be gone back to with its edits") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.tap("head/6");
    driver.tap("finding/6/0/fix");
    const Job own = driver.session().job();
    const JobId before = driver.session().current();
    driver.open_link(link_to(sent_job()));
    driver.picture("visit-desktop");
    driver.tap("set-every-stop");
    const Job worked_on = driver.session().job();
    driver.tap("visit/leave");
    CHECK_FALSE(driver.session().visiting());
    CHECK(driver.session().current() == before);
    CHECK(driver.session().job() == own);
    CHECK(taken(driver) == 1);
    REQUIRE(driver.has("notice/visit-back"));
    CHECK(driver.find("notice").label == say(Language::english, Word::visit_left, {"Harbour fair tote"}));
    driver.picture("visit-left-desktop");
    driver.tap("notice/visit-back");
    CHECK(driver.session().visiting());
    CHECK(driver.session().job() == worked_on);
    CHECK_FALSE(driver.has("notice"));
    driver.tap("undo");
    CHECK(driver.session().job() == sent_job());
    CHECK(driver.session().rows().size() == 1);
    // And the job of the library was stored when it was left for the link.
    driver.tap("visit/leave");
    CHECK(driver.session().job() == own);
}

TEST_CASE("Opening something else while visiting says so and keeps the way back, after the notice too") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    const JobId own = driver.session().current();
    driver.open_link(link_to(sent_job()));
    driver.tap("set-every-stop");
    const Job worked_on = driver.session().job();
    driver.tap("place/jobs");
    CHECK_FALSE(driver.has("visit/back"));
    driver.tap("job/" + std::to_string(own));
    driver.tap("job/" + std::to_string(own) + "/open");
    CHECK(driver.session().current() == own);
    CHECK(taken(driver) == 1);
    REQUIRE(driver.has("notice/visit-back"));
    driver.window().pass(15.0);
    driver.settle();
    CHECK(driver.has("notice/visit-back")); // long enough to be read and thought about
    driver.window().pass(10.0);
    driver.settle();
    CHECK_FALSE(driver.has("notice"));
    driver.tap("place/jobs");
    driver.picture("visit-left-jobs");
    driver.tap("visit/back");
    CHECK(driver.session().visiting());
    CHECK(driver.session().job() == worked_on);
    // A new job puts it aside as well.
    driver.tap("place/jobs");
    driver.tap("new-job");
    CHECK_FALSE(driver.session().visiting());
    REQUIRE(driver.has("notice/visit-back"));
    driver.tap("notice/visit-back");
    CHECK(driver.session().job() == worked_on);
}

TEST_CASE("A second link puts the first aside, and the same one again changes nothing") {
    Driver driver(phone);
    const Job first = sent_job("First"), second = sent_job("Second");
    driver.open_link(link_to(first));
    driver.open_link(link_to(first));
    CHECK_FALSE(driver.has("notice"));
    CHECK(driver.session().left_visit() == nullptr);
    driver.tap("set-every-stop");
    const Job worked_on = driver.session().job();
    driver.open_link(link_to(second));
    CHECK(driver.session().job() == second);
    CHECK(taken(driver) == 0); // the address holds the second link now
    driver.tap("notice/visit-back");
    CHECK(driver.session().job() == worked_on);
    driver.tap("notice/visit-back");
    CHECK(driver.session().job() == second);
    driver.tap("visit/leave");
    CHECK(driver.session().job() == demo_job());
}

TEST_CASE("A link that can't be read changes nothing and says what to do, in both languages") {
    for (const Language language : {Language::english, Language::spanish}) {
        const ScratchFolder folder;
        Driver driver(small_phone, folder.path(), language);
        const JobId own = driver.session().current();
        std::string link = link_to(sent_job());
        link.resize(link.size() / 2);
        driver.open_link(link);
        CHECK(driver.find("notice").label.find(word(language, Word::read_damaged_link)) != std::string::npos);
        CHECK(driver.session().current() == own);
        driver.picture(language == Language::english ? "link-damaged" : "link-damaged-es");
        // While a visit is under way it goes on, with its edits.
        driver.open_link(link_to(sent_job()));
        driver.tap("set-every-stop");
        const Job worked_on = driver.session().job();
        driver.open_link("https://example.org/#job=7.abcdef");
        CHECK(driver.find("notice").label.find(say(language, Word::read_newer_link, {"7", "1"})) != std::string::npos);
        CHECK(driver.session().visiting());
        CHECK(driver.session().job() == worked_on);
        driver.open_link("https://example.org/");
        CHECK(driver.find("notice").label.find(word(language, Word::read_not_a_link)) != std::string::npos);
        CHECK(driver.session().job() == worked_on);
        CHECK(taken(driver) == 0);
        CHECK(driver.session().rows().size() == 1);
    }
}

TEST_CASE("A link may arrive before the first frame") {
    Session session(demo_job(), Language::english);
    Program program(session);
    InputEvent event;
    event.kind = InputKind::link;
    event.text = link_to(sent_job());
    program.handle(event);
    CHECK(session.visiting());
    CHECK(session.job() == sent_job());
}

TEST_CASE("A job without a name gets one when it is kept") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.open_link(link_to(sent_job("")));
    CHECK(driver.session().visiting());
    driver.tap("visit/keep");
    CHECK_FALSE(driver.session().visiting());
    CHECK(driver.session().job().name == words_of(Word::untitled));
}

TEST_CASE("Leaving leads to a job even when the one from before is gone") {
    const ScratchFolder folder;
    Driver driver(phone, folder.path());
    driver.open_link(link_to(sent_job()));
    const JobId own = driver.session().rows().front().id;
    REQUIRE(driver.session().remove(own));
    CHECK(driver.session().visiting());
    driver.tap("visit/leave");
    CHECK_FALSE(driver.session().visiting());
    CHECK(driver.session().current() != 0);
    CHECK(driver.session().job().name == demo_job().name);
}

TEST_CASE("The banner stands at every size and in every language, and takes little of the drawing") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop})
        for (const Language language : {Language::english, Language::spanish})
            for (const float scale : {1.0f, 2.0f}) {
                Driver driver(size);
                driver.set_looks(language, scale);
                driver.open_link(link_to(sent_job()));
                INFO(size.name << ", " << scale << ", " << static_cast<int>(language));
                CHECK(driver.has("visit/keep"));
                CHECK(driver.has("visit/leave"));
                CHECK(driver.program().frame().diagram.height() > 0.17f * static_cast<float>(size.height));
                driver.picture(std::string("banner ") + size.name + (scale > 1.0f ? " 200" : " 100") +
                               (language == Language::spanish ? " es" : ""));
                driver.tap("head/7");
                CHECK(driver.has("visit/keep"));
                CHECK(driver.find("title").value == std::string(word(language, Word::visit_not_kept)));
            }
}
