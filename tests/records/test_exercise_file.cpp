// Exercises and results from one device to another: exact, or clearly refused.
#include <random>
#include <string>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/records/exercise_file.h"
#include "app/records/job_link.h"
#include "app/text/words.h"
#include "core/exercise_break.h"

using namespace carriageway;
using Kind = ReadFault::Kind;
using Catch::Matchers::ContainsSubstring;

namespace {

/// A job in which nothing is wrong, of the exercises' own making.
Job right_job() {
    const Exercise made = make_exercise(ExerciseKind::shortest_stroke, 7, 1);
    Job job = made.job;
    for (const Edit& edit : made.solution.edits) REQUIRE(apply(job, edit));
    job.name = "Lantern walk shirt";
    REQUIRE(faults_of(job).empty());
    return job;
}

Exercise trainers_own() {
    const Job job = right_job();
    const std::vector<Breaking> all = breakings_of(job, job.heads.front().id);
    REQUIRE_FALSE(all.empty());
    const std::optional<Exercise> made = exercise_from(job, {all.front().edit});
    REQUIRE(made);
    return *made;
}

ExerciseResult some_result() {
    ExerciseResult result;
    result.attempt.topic = PracticeTopic::read_sheet;
    result.attempt.level = 4;
    result.attempt.seed = 18446744073709551615u;
    result.attempt.score = 0.1 + 0.2;
    result.attempt.seconds = 83.25;
    result.attempt.hints = 2;
    result.attempt.time = 1'764'000'000'123;
    result.attempt.mistakes = {{MarkReason::line_not_set, {}, Field::squeegee_angle},
                               {MarkReason::fault_missed, FindingKind::starved, {}}};
    result.name = "Ana María";
    return result;
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
    const std::size_t at = text.find(what);
    INFO(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

std::string sentence(const ReadFault& fault) { return fault_sentence(Language::english, fault); }

/// The same text, damaged as messages and disks damage it.
std::string damaged(std::string text, std::mt19937& random) {
    const auto at = [&] {
        return std::uniform_int_distribution<std::size_t>(0, text.size() - 1)(random);
    };
    switch (std::uniform_int_distribution<int>(0, 4)(random)) {
    case 0: text.resize(at()); break;
    case 1: text[at()] = static_cast<char>(random() & 0xFF); break;
    case 2: text.erase(at(), 1 + random() % 9); break;
    case 3: text.insert(at(), text.substr(at(), 1 + random() % 40)); break;
    default: std::swap(text[at()], text[at()]); break;
    }
    return text;
}

} // namespace

TEST_CASE("an exercise of every kind arrives as it was, as a file and as a link",
          "[exercise_file]") {
    for (int kind = 0; kind < static_cast<int>(ExerciseKind::count); ++kind)
        for (const std::uint64_t seed : {std::uint64_t{1}, 18446744073709551615u}) {
            INFO("kind " << kind << ", seed " << seed);
            const Exercise sent = make_exercise(static_cast<ExerciseKind>(kind), seed, 3);
            const ReadExercise file = read_exercise(write_exercise(sent));
            INFO(sentence(file.fault));
            REQUIRE(file);
            CHECK(*file.exercise == sent);
            const std::string link = exercise_link_fragment(sent);
            CHECK(link.size() < 200); // kind, seed and level alone: no job
            const ReadExercise read = read_exercise_link("https://press.example/#" + link);
            REQUIRE(read);
            CHECK(*read.exercise == sent);
        }
}

TEST_CASE("a trainer's exercise travels as the broken job with what is claimed and what mends it",
          "[exercise_file]") {
    const Exercise sent = trainers_own();
    const ReadExercise file = read_exercise(write_exercise(sent));
    INFO(sentence(file.fault));
    REQUIRE(file);
    CHECK(*file.exercise == sent);
    const ReadExercise link = read_exercise_link(exercise_link_fragment(sent));
    REQUIRE(link);
    CHECK(*link.exercise == sent);
    CHECK(mark(*link.exercise, link.exercise->solution).score > 0.999);
}

TEST_CASE("every breaking that is offered can be sent", "[exercise_file]") {
    const Job job = right_job();
    int sent = 0;
    for (const Breaking& breaking : breakings_of(job, job.heads.front().id)) {
        const std::optional<Exercise> made = exercise_from(job, {breaking.edit});
        REQUIRE(made);
        const ReadExercise read = read_exercise_link(exercise_link_fragment(*made));
        INFO(static_cast<int>(breaking.kind) << ": " << sentence(read.fault));
        REQUIRE(read);
        CHECK(*read.exercise == *made);
        ++sent;
    }
    CHECK(sent > 5);
}

TEST_CASE("an exercise of a real job leaves walk and record behind: initials stand in them",
          "[exercise_file]") {
    Exercise sent = trainers_own();
    const HeadId head = sent.job.heads.front().id;
    sent.job.walk = {{head, Field::squeegee_pressure, true, {}, {5000, "QXJZ"}}};
    sent.job.record.approval = {"Wilhelmina", "the customer's print", 5500};
    const std::string text = write_exercise(sent);
    CHECK(text.find("QXJZ") == std::string::npos);
    CHECK(text.find("Wilhelmina") == std::string::npos);
    CHECK(read_exercise(text));
}

TEST_CASE("an exercise that claims what isn't found is refused", "[exercise_file][faults]") {
    const std::string text = write_exercise(trainers_own());
    const auto kind_of_fault = [](const std::string& changed) {
        const ReadExercise read = read_exercise(changed);
        CHECK_FALSE(read);
        return read.fault.kind;
    };
    REQUIRE(read_exercise(text));
    const Exercise sent = trainers_own();
    const std::size_t claims = text.find("\"claims\"");
    const std::size_t fault = text.find("\"fault\": \"", claims) + 10;
    const std::string claimed = text.substr(fault, text.find('"', fault) - fault);
    // Another fault is claimed, one more, and one of another head.
    CHECK(kind_of_fault(replaced(text, "\"fault\": \"" + claimed, "\"fault\": \"tension_apart")) ==
          Kind::not_as_claimed);
    CHECK(kind_of_fault(replaced(text, "\"claims\": [",
                                 "\"claims\": [{\"head\": 1, \"fault\": \"tension_apart\"},")) ==
          Kind::not_as_claimed);
    // The job has been mended on its way, or is no job at all.
    Exercise mended = sent;
    for (const Edit& edit : sent.solution.edits) REQUIRE(apply(mended.job, edit));
    CHECK(kind_of_fault(write_exercise(mended)) == Kind::not_as_claimed);
    Exercise no_job = sent;
    no_job.job.heads.push_back(no_job.job.heads.front());
    CHECK(kind_of_fault(write_exercise(no_job)) == Kind::taken);
    // What is said to mend it doesn't.
    Exercise unmended = sent;
    unmended.solution.edits = {Edit{SetName{0, "Still broken"}}};
    CHECK(kind_of_fault(write_exercise(unmended)) == Kind::not_as_claimed);
    CHECK_THAT(sentence(read_exercise(write_exercise(unmended)).fault),
               ContainsSubstring("other faults"));
}

TEST_CASE("what is wrong with an exercise is told with its place", "[exercise_file][faults]") {
    const std::string text = write_exercise(make_exercise(ExerciseKind::which_dial, 5, 2));
    const auto fault = [&](const std::string& what, const std::string& by) {
        const ReadExercise read = read_exercise(replaced(text, what, by));
        CHECK_FALSE(read);
        return read.fault;
    };
    CHECK(fault("which_dial", "which_knob").kind == Kind::wrong_choice);
    CHECK(fault("which_dial", "which_knob").line == 4);
    CHECK(fault("\"level\": 2", "\"level\": 9").kind == Kind::out_of_range);
    CHECK(fault("\"5\"", "\"-5\"").path == "made.seed");
    CHECK(fault("\"5\"", "\"18446744073709551616\"").kind == Kind::wrong_type);
    CHECK(fault("\"5\"", "5").kind == Kind::wrong_type);
    CHECK(fault("\"made\"", "\"mad\"").kind == Kind::unknown_field);
    CHECK(fault("\"carriageway_exercise\": 1", "\"carriageway_exercise\": 2").kind ==
          Kind::newer_version);
    const ReadFault syntax = fault("\"level\": 2", "\"level\": ,");
    CHECK(syntax.kind == Kind::syntax);
    CHECK(syntax.line == 6);
    CHECK(syntax.column > 1);
    CHECK_THAT(sentence(syntax), ContainsSubstring("6"));
    CHECK(read_exercise("").fault.kind == Kind::empty);

    // Documents that are something else say what they are.
    CHECK(read_exercise(write_job(right_job())).fault.found == "carriageway_job");
    CHECK(read_job(text).fault.kind == Kind::wrong_document);
    CHECK(read_job(text).fault.found == exercise_key);
    CHECK(read_job(write_result(some_result())).fault.found == result_key);
}

TEST_CASE("a result arrives as it was, as a file and as a link", "[exercise_file]") {
    const ExerciseResult sent = some_result();
    const ReadResult file = read_result(write_result(sent));
    INFO(sentence(file.fault));
    REQUIRE(file);
    CHECK(*file.result == sent);
    const std::string link = result_link_fragment(sent);
    CHECK(link.size() < 500);
    REQUIRE(read_result_link("#" + link));
    CHECK(*read_result_link("#" + link).result == sent);
    // A name stands in it only where the person typed one.
    ExerciseResult nameless = sent;
    nameless.name.clear();
    CHECK(write_result(nameless).find("name") == std::string::npos);
    CHECK(*read_result(write_result(nameless)).result == nameless);
    CHECK(*read_result(write_result({})).result == ExerciseResult{});
}

TEST_CASE("what is wrong with a result is told with its place", "[exercise_file][faults]") {
    const std::string text = write_result(some_result());
    const auto fault = [&](const std::string& what, const std::string& by) {
        const ReadResult read = read_result(replaced(text, what, by));
        CHECK_FALSE(read);
        return read.fault;
    };
    CHECK(fault("read_sheet", "juggling").kind == Kind::wrong_choice);
    CHECK(fault("\"score\": 0.3", "\"score\": 1.3").kind == Kind::out_of_range);
    CHECK(fault("83.25", "-1").path == "time_s");
    CHECK(fault("83.25", "1e999").kind == Kind::not_finite);
    CHECK(fault("fault_missed starved", "fault_missed juggling").path == "mistakes[1]");
    CHECK_THAT(sentence(fault("fault_missed starved", "fault_missed juggling")),
               ContainsSubstring("juggling"));
    CHECK(fault("\"hints\": 2", "\"hints\": 2.5").kind == Kind::wrong_type);
    CHECK(fault("Ana María", "  ").path == "name");
    CHECK(fault("Ana María", std::string(longest_name + 1, 'x')).kind == Kind::bad_text);
    CHECK(read_result(text + std::string(largest_result, ' ')).fault.kind == Kind::too_large);
}

TEST_CASE("links are told apart by what they carry, and refused when they carry something else",
          "[exercise_file]") {
    const std::string exercise = exercise_link_fragment(make_exercise(ExerciseKind::judge_gap, 3, 1));
    const std::string result = result_link_fragment(some_result());
    CHECK(content_of_link("https://press.example/a?b=c#" + exercise) == LinkContent::exercise);
    CHECK(content_of_link(result) == LinkContent::result);
    CHECK(content_of_link("https://press.example/") == LinkContent::job);
    CHECK(read_exercise_link(result).fault.kind == Kind::not_a_link);
    CHECK(read_result_link(exercise).fault.kind == Kind::not_a_link);
    // A result's text behind the marker of an exercise.
    std::string crossed = result;
    crossed.replace(0, 7, "exercise=");
    CHECK(read_exercise_link(crossed).fault.kind == Kind::wrong_document);
    CHECK(read_exercise_link("exercise=2.abc").fault.kind == Kind::newer_link);
    CHECK(read_exercise_link("exercise=1.!").fault.kind == Kind::damaged_link);
    CHECK(read_exercise_link(std::string(longest_job_link + 1, 'a')).fault.kind ==
          Kind::link_too_large);
}

TEST_CASE("what was cut short or garbled is refused with a reason, or is sound",
          "[exercise_file][faults]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 random(Catch::getSeed());
    const Exercise own = trainers_own();
    const std::string texts[] = {write_exercise(own), exercise_link_fragment(own),
                                 write_exercise(make_exercise(ExerciseKind::find_fault, 9, 2)),
                                 write_result(some_result()), result_link_fragment(some_result())};
    int refused = 0;
    for (int round = 0; round < 1500; ++round) {
        const std::string text = damaged(texts[round % 5], random);
        INFO("round " << round << ": " << text.substr(0, 200));
        for (const ReadExercise& read : {read_exercise(text), read_exercise_link(text)}) {
            CHECK(read.exercise.has_value() == (read.fault.kind == Kind::none));
            if (read) CHECK_FALSE(fault_of(read.exercise->job));
            if (read && read.exercise->from_job)
                CHECK(faults_of(read.exercise->job) == read.exercise->solution.faults);
            if (!read) CHECK_FALSE(sentence(read.fault).empty());
            refused += !read;
        }
        for (const ReadResult& read : {read_result(text), read_result_link(text)}) {
            CHECK(read.result.has_value() == (read.fault.kind == Kind::none));
            if (read) CHECK((read.result->attempt.score >= 0 && read.result->attempt.score <= 1));
            if (!read) CHECK_FALSE(sentence(read.fault).empty());
        }
    }
    CHECK(refused > 1000);
}
