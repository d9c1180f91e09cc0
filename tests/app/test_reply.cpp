// The reply to a call, where it arrives: whole, left and brought back, and damaged.

#include "tests/app/call_steps.h"

using namespace carriageway;
using namespace carriageway::calling;
using Catch::Matchers::ContainsSubstring;

TEST_CASE("A reply opens on another device as a visit that shows what to change") {
    for (const WindowSize& size : {phone, desktop})
        for (const Language language : {Language::english, Language::spanish}) {
            INFO(size.name);
            std::string link;
            {
                const ScratchFolder helper;
                link = reply_link(helper, language);
            }
            const ReadReply sent = read_reply_link(link);
            REQUIRE(sent);
            const ScratchFolder folder;
            Driver driver(size, folder.path(), language);
            const JobId own = driver.session().current();
            driver.open_link(link);
            CHECK(driver.session().visiting());
            CHECK(driver.session().job() == sent.reply->before);
            CHECK(driver.find("reply/title").label == words_of(Word::reply_title, language));
            const Ruler& ruler = sent.reply->before.press.ruler;
            const auto ruler_of = [&](const Job& job) {
                return format_ruler(ruler, head_on(job, 6)->stops.operator_side);
            };
            const std::string line = driver.find("reply/change/1").label;
            CHECK_THAT(line, ContainsSubstring(ruler_of(sent.reply->before)));
            CHECK_THAT(line, ContainsSubstring(ruler_of(sent.reply->after)));
            for (const char* picture : {"reply/before", "reply/after"}) {
                driver.reveal(picture);
                CHECK(driver.find(picture).role == ThingRole::image);
            }
            CHECK_FALSE(driver.find("reply/before").value.empty()); // what is wrong there
            CHECK(driver.find("reply/after").value != driver.find("reply/before").value);
            driver.picture(std::string("reply ") + size.name +
                           (language == Language::english ? "" : " es"));
            driver.tap("reply/press");
            CHECK(driver.has("visit"));
            driver.tap("reply/show");
            driver.tap("reply/set");
            CHECK(driver.session().job() == sent.reply->after);
            CHECK(driver.has("reply/is-set"));
            CHECK(driver.session().rows().size() == 1); // nothing was kept
            driver.tap("reply/press");
            driver.tap("visit/keep");
            CHECK(driver.session().rows().size() == 2);
            driver.tap("place/practice");
            driver.tap("practice/call");
            CHECK(driver.has("reply/title")); // it goes with the job that was kept
            driver.program().act(OpenJob{own});
            driver.settle();
            CHECK_FALSE(driver.has("reply/show"));
        }
}

TEST_CASE("A reply that was left comes back with its visit") {
    std::string link;
    {
        const ScratchFolder helper;
        link = reply_link(helper);
    }
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    driver.open_link(link);
    driver.tap("reply/press");
    driver.tap("visit/leave");
    open_calls(driver);
    CHECK_FALSE(driver.has("reply/title"));
    driver.program().act(BringVisitBack{});
    driver.settle();
    driver.tap("reply/show");
    CHECK(driver.has("reply/title"));
    // Another visit's going back is not this one's.
    driver.open_link("#" + job_link_fragment(demo_job()));
    driver.program().act(LeaveVisit{});
    driver.program().act(BringVisitBack{});
    driver.settle();
    CHECK_FALSE(driver.has("reply/show"));
}

TEST_CASE("A damaged reply is refused with a reason, and nothing is lost by it") {
    std::string link;
    {
        const ScratchFolder helper;
        link = reply_link(helper);
    }
    const ScratchFolder folder;
    Driver driver(desktop, folder.path());
    begin_at_head_6(driver);
    const Job job = driver.session().job();
    const CallNotes notes = call_of(driver).notes;
    for (const std::string& broken :
         {link.substr(0, link.size() - 9), link.substr(0, link.find("reply=") + 6),
          std::string("#reply=7.AAAA"), std::string("#reply=1.AAAAAAAAAAAA")}) {
        driver.open_link(broken);
        CHECK(driver.find("notice").label.size() > 20);
        CHECK(driver.program().state().notice->trouble);
        CHECK_FALSE(driver.session().visiting());
        CHECK(driver.session().job() == job);
        CHECK(call_of(driver).notes == notes);
        driver.tap("notice/close");
    }
    CHECK(driver.has("call/question"));
}
