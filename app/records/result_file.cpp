// What came of an exercise, as a file and as a link.
#include "app/records/carried_text.h"
#include "app/records/form_parts.h"

namespace carriageway {

namespace {

using Kind = ReadFault::Kind;

constexpr std::size_t longest_mistake = 80;

/// Later than any clock will say for a long time, and exact as a number of JSON.
constexpr std::int64_t last_time = std::int64_t{1} << 53;

struct CarriedResult {
    ExerciseResult result;
    std::string seed = "0";
    std::vector<std::string> mistakes;
};

const Choices& topic_choices() {
    static const Choices choices = [] {
        Choices made;
        for (std::size_t i = 0; i < topic_count; ++i)
            made.push_back(topic_key(static_cast<PracticeTopic>(i)));
        return made;
    }();
    return choices;
}

void describe_result(Form& form, CarriedResult& carried) {
    Attempt& attempt = carried.result.attempt;
    describe_choice(form, "kind", attempt.topic, topic_choices());
    form.text("seed", carried.seed, {longest_seed});
    describe_whole(form, "level", attempt.level, {lowest_level, highest_level});
    form.number("score", attempt.score, {0.0, 1.0, 1.0, false, Quantity::share, {}});
    form.number("time_s", attempt.seconds, {0.0, longest_attempt, 1.0, false, Quantity::time, {}});
    describe_whole(form, "hints", attempt.hints, {0, most_hints});
    describe_whole(form, "marked_ms", attempt.time, {0, last_time});
    form.optional_truth("counts", attempt.counts, true);
    describe_list(form, "mistakes", carried.mistakes, {0, most_mistakes, true, true},
                  [&](std::string& key) { form.text("", key, {longest_mistake}); });
    form.text("name", carried.result.name, any_note);
}

/// What a mistake's key must look like, for a message.
constexpr const char* some_mistakes = "\"stroke_long\", \"fault_missed starved\", …";

std::optional<ReadFault> result_of(const CarriedResult& carried, ExerciseResult& result) {
    result = carried.result;
    const std::optional<std::uint64_t> seed = seed_of(carried.seed);
    if (!seed) return seed_fault("seed", carried.seed);
    result.attempt.seed = *seed;
    for (std::size_t i = 0; i < carried.mistakes.size(); ++i) {
        const std::optional<Mistake> mistake = mistake_from(carried.mistakes[i]);
        if (!mistake)
            return carried_fault(Kind::wrong_choice, "mistakes[" + std::to_string(i) + "]",
                                 in_quotes(shortened(carried.mistakes[i])), some_mistakes);
        result.attempt.mistakes.push_back(*mistake);
    }
    if (result.name.empty()) return std::nullopt;
    const std::optional<std::string> name = trainee_name(result.name);
    if (!name)
        return carried_fault(Kind::bad_text, "name", in_quotes(shortened(result.name)),
                             std::to_string(longest_name));
    result.name = *name;
    return std::nullopt;
}

std::string result_text(const ExerciseResult& result, bool pretty) {
    CarriedResult carried{result, std::to_string(result.attempt.seed), {}};
    for (const Mistake& mistake : result.attempt.mistakes)
        carried.mistakes.push_back(mistake_key(mistake));
    std::string text =
        write_document(result_key, exercise_format, carried, describe_result, pretty);
    if (!pretty) text.pop_back();
    return text;
}

} // namespace

std::string write_result(const ExerciseResult& result) { return result_text(result, true); }

ReadResult read_result(std::string_view text) {
    ReadResult read;
    if (text.size() > largest_result) {
        read.fault = carried_fault(Kind::too_large, {}, std::to_string(text.size()),
                                   std::to_string(largest_result));
        return read;
    }
    CarriedResult carried;
    ExerciseResult result;
    read.fault = read_document(text, result_key, exercise_format, carried, describe_result,
                               [&](const CarriedResult& all) { return result_of(all, result); });
    if (read.fault.kind == Kind::none) read.result = std::move(result);
    return read;
}

std::string result_link_fragment(const ExerciseResult& result) {
    return link_fragment(result_marker, result_text(result, false));
}

ReadResult read_result_link(std::string_view text) {
    return read_from_link(text, result_marker, read_result);
}

} // namespace carriageway
