// A reply to a call as a link: whole, damaged, and made by somebody who means no good.
#include <random>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include "app/records/exercise_file.h"
#include "app/records/job_link.h"
#include "app/records/link_text.h"
#include "app/records/reply_link.h"
#include "app/text/words.h"
#include "tests/core/fault_samples.h"

using namespace carriageway;
using Kind = ReadFault::Kind;

namespace {

Job caller_job() {
    Job job = sample::faultless_job();
    job.name = "Call";
    return job;
}

Reply some_reply() {
    const Job job = caller_job();
    const Head& head = job.heads.front();
    Stops stops = head.stops;
    stops.machine_side += 12.5;
    const std::optional<Reply> reply =
        reply_of(job, {Edit{Together{{Edit{SetStops{head.id, stops}},
                                      Edit{SetNumber{head.id, Field::print_speed, 400.0}}}}}});
    REQUIRE(reply);
    return *reply;
}

/// The text in a reply's link, to be changed and packed again.
std::string carried(const Reply& reply) {
    return read_link_text(reply_link_fragment(reply), reply_marker).text;
}

ReadFault fault_with(const std::string& from, const std::string& to) {
    std::string text = carried(some_reply());
    const std::size_t at = text.find(from);
    INFO(from << " in " << text.substr(0, 300));
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    const ReadReply read = read_reply_link(link_fragment(reply_marker, text));
    CHECK_FALSE(read);
    CHECK_FALSE(fault_sentence(Language::english, read.fault).empty());
    CHECK_FALSE(fault_sentence(Language::spanish, read.fault).empty());
    return read.fault;
}

} // namespace

TEST_CASE("a reply arrives as it was sent: before, what to change, after", "[reply_link]") {
    const Reply sent = some_reply();
    CHECK(sent.changes.size() == 2); // taken apart
    const std::string link = "https://press.example/a#" + reply_link_fragment(sent);
    CHECK(content_of_link(link) == LinkContent::reply);
    const ReadReply read = read_reply_link(link);
    REQUIRE(read);
    CHECK(*read.reply == sent);
    CHECK_FALSE(read.reply->after == read.reply->before);
}

TEST_CASE("a reply carries nobody's initials", "[reply_link]") {
    Job job = caller_job();
    WalkMark mark;
    mark.head = job.heads.front().id;
    mark.field = Field::machine_stop;
    mark.done = true;
    mark.stamp.initials = "QQZ";
    job.walk = {mark};
    const std::optional<Reply> reply =
        reply_of(job, {Edit{SetNumber{mark.head, Field::print_speed, 400.0}}});
    REQUIRE(reply);
    CHECK(carried(*reply).find("QQZ") == std::string::npos);
}

TEST_CASE("no reply is made of what isn't a change of numbers", "[reply_link]") {
    const Job job = caller_job();
    const HeadId head = job.heads.front().id;
    CHECK_FALSE(reply_of(job, {}));
    CHECK_FALSE(reply_of(job, {Edit{RemoveHead{head}}}));
    CHECK_FALSE(reply_of(job, {Edit{SetNumber{head, Field::print_speed, -1.0}}}));
    CHECK_FALSE(reply_of(job, {Edit{SetNumber{head + 77, Field::print_speed, 400.0}}}));
    const double now = job.heads.front().print_speed;
    CHECK_FALSE(reply_of(job, {Edit{SetNumber{head, Field::print_speed, now}}}));
}

TEST_CASE("a link whose changes aren't such is refused, and says where", "[reply_link]") {
    CHECK(fault_with("\"set_number\"", "\"set_nonsense\"").kind != Kind::none);
    CHECK(fault_with("\"changes\":[", "\"changes\":[{\"remove_head\":{\"head\":" +
                                          std::to_string(caller_job().heads.front().id) + "}},")
              .path == "changes[0]");
    CHECK(fault_with("\"value\":400", "\"value\":-400").kind == Kind::out_of_range);
    CHECK(fault_with("\"carriageway_reply\":1", "\"carriageway_reply\":2").kind != Kind::none);
    CHECK(fault_with("\"carriageway_reply\":1", "\"carriageway_job\":1").kind != Kind::none);
    CHECK(fault_with("\"changes\":[", "\"changes\":[],\"more\":[").kind != Kind::none);
}

TEST_CASE("links are told apart by what they carry", "[reply_link]") {
    const std::string reply = reply_link_fragment(some_reply());
    const std::string job = job_link_fragment(caller_job());
    CHECK(read_reply_link(job).fault.kind == Kind::not_a_link);
    CHECK(read_job_link(reply).fault.kind == Kind::not_a_link);
    CHECK(read_reply_link("reply=2.abc").fault.kind == Kind::newer_link);
    CHECK(read_reply_link("reply=1.!").fault.kind == Kind::damaged_link);
    CHECK(read_reply_link(std::string(longest_job_link + 1, 'a')).fault.kind ==
          Kind::link_too_large);
    // A job's text under a reply's marker.
    const std::string crossed =
        link_fragment(reply_marker, read_link_text(job, "job=").text);
    CHECK(read_reply_link(crossed).fault.kind == Kind::wrong_document);
}

TEST_CASE("a reply that was damaged on its way is refused", "[reply_link]") {
    std::mt19937 random(Catch::getSeed());
    INFO("seed " << Catch::getSeed());
    const std::string whole = reply_link_fragment(some_reply());
    const std::string_view letters = "ABCxyz019-_";
    for (int round = 0; round < 300; ++round) {
        std::string link = whole;
        const std::size_t at = reply_marker.size() + 2 + random() % (link.size() - 12);
        if (round % 3 == 0) link.resize(at);
        else if (round % 3 == 1) link.erase(at, 1 + random() % 3);
        else link[at] = letters[random() % letters.size()];
        if (link == whole) continue;
        const ReadReply read = read_reply_link(link);
        INFO("round " << round);
        CHECK_FALSE(read);
        CHECK(read.fault.kind != Kind::none);
    }
}
