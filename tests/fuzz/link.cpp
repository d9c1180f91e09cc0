#include "app/records/exercise_file.h"
#include "app/records/link_text.h"
#include "app/records/reply_link.h"
#include "tests/fuzz/inputs.h"
#include "tests/fuzz/refusals.h"

namespace carriageway::fuzz {
namespace {

void read_as_job(std::string_view text) {
    const ReadJob read = read_job_link(text);
    if (!read) return told(read.fault);
    demand(!fault_of(*read.job), "core refuses a job out of a link");
    const ReadJob again = read_job_link(job_link_fragment(*read.job));
    demand(again && *again.job == *read.job, "a job's link is read as another job");
}

void read_as_exercise(std::string_view text) {
    const ReadExercise read = read_exercise_link(text);
    if (!read) return told(read.fault);
    demand(!fault_of(read.exercise->job), "core refuses the job of an exercise out of a link");
}

void read_as_result(std::string_view text) {
    if (const ReadResult read = read_result_link(text); !read) told(read.fault);
}

void read_as_reply(std::string_view text) {
    const ReadReply read = read_reply_link(text);
    if (!read) return told(read.fault);
    demand(!fault_of(read.reply->before) && !fault_of(read.reply->after),
           "core refuses a job out of a reply");
    const ReadReply again = read_reply_link(reply_link_fragment(*read.reply));
    demand(again && *again.reply == *read.reply, "a reply's link is read as another");
}

struct Way {
    const char* marker;
    LinkContent content;
    void (*read)(std::string_view text);
};
constexpr Way ways[] = {{"job=", LinkContent::job, read_as_job},
                        {"exercise=", LinkContent::exercise, read_as_exercise},
                        {"result=", LinkContent::result, read_as_result},
                        {"reply=", LinkContent::reply, read_as_reply}};

} // namespace

void link(std::string_view bytes) {
    (void)content_of_link(bytes);
    (void)looks_like_link(bytes);
    for (const Way& way : ways) {
        way.read(bytes);
        // What is packed has a check sum that chance doesn't meet, so it is made here.
        const std::string fragment = link_fragment(way.marker, bytes);
        if (fragment.empty()) continue;
        demand(read_link_text(fragment, way.marker).text == bytes, "a link carries another text");
        demand(content_of_link(fragment) == way.content, "a link is taken for another kind");
        way.read(fragment);
    }
}

} // namespace carriageway::fuzz
