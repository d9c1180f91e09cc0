// What leaves the device of the people who practise: one person's data, and the group's table.
#include <cmath>

#include "app/records/form_parts.h"
#include "app/records/form_write.h"
#include "app/records/job_table.h"
#include "app/records/stored_practice.h"
#include "app/records/utc_text.h"
#include "app/text/exercise_sentences.h"
#include "app/text/practice_sentences.h"

namespace carriageway {

namespace {

constexpr const char* export_key = "carriageway_trainee";
constexpr int export_format = 1;
constexpr double seconds_per_minute = 60.0;

/// Things are written one by one: FormWriter takes references, as a reader would.
struct Written {
    FormWriter& form;
    void text(const char* key, std::string value) { form.text(key, value, {}); }
    void number(const char* key, double value) { form.number(key, value, {}); }
    void whole(const char* key, std::int64_t value) { form.whole(key, value, {}); }
    void truth(const char* key, bool value) { form.truth(key, value); }
};

void write_sign(FormWriter& form, PracticeTopic topic, SignState state, const SignOff& sign) {
    Written out{form};
    form.object("", [&] {
        out.text("topic", topic_key(topic));
        out.text("state", sign_key(state));
        out.text("by", sign.by);
        out.text("time", utc_text(sign.time));
    });
}

void write_attempt(FormWriter& form, const Attempt& attempt) {
    Written out{form};
    form.object("", [&] {
        out.text("topic", topic_key(attempt.topic));
        out.whole("level", attempt.level);
        out.text("seed", std::to_string(attempt.seed));
        out.number("score", attempt.score);
        out.number("seconds", attempt.seconds);
        out.whole("hints", attempt.hints);
        out.text("time", utc_text(attempt.time));
        out.truth("counts", attempt.counts);
        std::vector<std::string> keys;
        for (const Mistake& mistake : attempt.mistakes) keys.push_back(mistake_key(mistake));
        describe_list(form, "mistakes", keys, {0, most_mistakes, true},
                      [&](std::string& key) { form.text("", key, {}); });
    });
}

struct Signed {
    PracticeTopic topic;
    SignState state;
    SignOff sign;
};

std::vector<Signed> signs_of(const TraineeSummary& summary) {
    std::vector<Signed> out;
    for (std::size_t topic = 0; topic < topic_count; ++topic)
        for (std::size_t state = 0; state < summary.topics[topic].signs.size(); ++state)
            if (const std::optional<SignOff>& sign = summary.topics[topic].signs[state])
                out.push_back({static_cast<PracticeTopic>(topic), static_cast<SignState>(state),
                               *sign});
    return out;
}

// ---- the group's table ----

std::vector<std::string> column_names(Language language) {
    std::vector<std::string> names;
    for (const Word key : {Word::group_name, Word::group_topic, Word::group_attempts,
                           Word::group_level, Word::group_mean, Word::group_minutes,
                           Word::group_last})
        names.emplace_back(word(language, key));
    for (const Word state : {Word::sign_shown, Word::sign_helped, Word::sign_alone})
        for (const Word key : {Word::group_sign_by, Word::group_sign_on})
            names.push_back(say(language, key, {word(language, state)}));
    names.emplace_back(word(language, Word::group_mistake));
    return names;
}

std::string minutes_text(double seconds) {
    return number_text(std::round(10.0 * seconds / seconds_per_minute) / 10.0);
}

std::vector<std::string> row_of(const TraineeSummary& person, PracticeTopic topic,
                                Language language) {
    const TopicSummary& summary = person.of(topic);
    const TopicDone& done = summary.done;
    const bool tried = done.attempts > 0;
    std::vector<std::string> row{plain_field(person.who.name), topic_text(language, topic),
                                 std::to_string(done.attempts)};
    row.push_back(tried ? std::to_string(done.level) : std::string());
    row.push_back(tried ? std::to_string(points_of(done.mean_of_last)) : std::string());
    row.push_back(tried ? minutes_text(done.seconds) : std::string());
    row.push_back(done.last > 0 ? utc_text(done.last) : std::string());
    for (const std::optional<SignOff>& sign : summary.signs) {
        row.push_back(sign ? plain_field(sign->by) : std::string());
        row.push_back(sign ? utc_text(sign->time) : std::string());
    }
    row.push_back(summary.mistakes.empty()
                      ? std::string()
                      : mistake_text(language, summary.mistakes.front().mistake));
    return row;
}

} // namespace

LibraryResult<std::string> export_trainee(const Library& library, TraineeId id) {
    const LibraryResult<TraineeSummary> summary = trainee_summary(library, id);
    if (!summary) return summary.fault();
    LibraryResult<std::vector<Attempt>> made = attempts(library, id);
    if (!made) return made.fault();
    std::vector<Signed> signs = signs_of(*summary);
    FormWriter form(true);
    Written out{form};
    out.whole(export_key, export_format);
    out.text("name", summary->who.name);
    out.text("created", utc_text(summary->who.created));
    describe_list(form, "signed", signs, any_number,
                  [&](const Signed& one) { write_sign(form, one.topic, one.state, one.sign); });
    describe_list(form, "attempts", *made, any_number,
                  [&](const Attempt& attempt) { write_attempt(form, attempt); });
    return form.finish();
}

std::string group_table(const std::vector<TraineeSummary>& group, Language language) {
    std::string out = csv_line(column_names(language));
    for (const TraineeSummary& person : group)
        for (const PracticeTopic topic : topics_in_order)
            out += csv_line(row_of(person, topic, language));
    return out;
}

} // namespace carriageway
