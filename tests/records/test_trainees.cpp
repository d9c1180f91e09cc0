// The people who practise: what is stored of them, summed up, and erased.
#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <SQLiteCpp/SQLiteCpp.h>

#include "app/records/call_log.h"
#include "app/records/trainees.h"
#include "tests/records/stored_samples.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;
using Kind = LibraryFault::Kind;
using Journal = LibraryOptions::Journal;
namespace fs = std::filesystem;

namespace {

Library opened(const std::string& folder, Journal journal = Journal::write_ahead) {
    LibraryOptions options;
    options.journal = journal;
    LibraryResult<Library> library = Library::open(folder, options);
    if (!library) FAIL(library.fault().detail);
    return std::move(*library);
}

TraineeId added(Library& library, const std::string& name, Timestamp time = 1) {
    const LibraryResult<TraineeId> id = add_trainee(library, name, time);
    if (!id) FAIL(id.fault().detail);
    return *id;
}

Attempt attempt(PracticeTopic topic, int level, double score, Timestamp time) {
    Attempt made;
    made.topic = topic;
    made.level = level;
    made.seed = 0xF000'0000'0000'0001u + static_cast<std::uint64_t>(time);
    made.score = score;
    made.seconds = 30.0;
    made.time = time;
    return made;
}

const Mistake long_stroke{MarkReason::stroke_long, {}, {}};
const Mistake missed{MarkReason::fault_missed, FindingKind::starved, {}};
const Mistake angle{MarkReason::line_not_set, {}, Field::squeegee_angle};

/// Whether bytes stand in any file of a folder.
bool is_anywhere(const ScratchFolder& folder, const std::string& bytes) {
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder.path()))
        if (entry.is_regular_file() &&
            bytes_of(entry.path().string()).find(bytes) != std::string::npos)
            return true;
    return false;
}

} // namespace

TEST_CASE("people are added, renamed and listed by name", "[library][trainees]") {
    const Journal journal = GENERATE(Journal::write_ahead, Journal::rollback);
    const ScratchFolder folder;
    TraineeId robin = 0, ana = 0, other = 0;
    {
        Library library = opened(folder.path(), journal);
        CHECK(trainees(library)->empty());
        robin = added(library, "  robin ", 10);
        ana = added(library, "Ana María", 11);
        other = added(library, "Robin", 12); // two may have the same name
        CHECK(robin > 0);
        CHECK(add_trainee(library, " \t ", 1).fault().kind == Kind::bad_name);
        CHECK(add_trainee(library, "\xFF", 1).fault().kind == Kind::bad_name);
        CHECK(add_trainee(library, std::string(longest_name + 1, 'x'), 1).fault().kind ==
              Kind::bad_name);
    }
    Library again = opened(folder.path(), journal);
    CHECK(*trainees(again) == std::vector<TraineeRow>{{ana, "Ana María", 11},
                                                       {robin, "robin", 10},
                                                       {other, "Robin", 12}});
    CHECK_FALSE(rename_trainee(again, robin, "Zoe"));
    CHECK(trainees(again)->back() == TraineeRow{robin, "Zoe", 10});
    CHECK(rename_trainee(again, robin, "")->kind == Kind::bad_name);
    CHECK(rename_trainee(again, 999, "Nobody")->kind == Kind::no_such_trainee);
    CHECK_FALSE(again.check());
}

TEST_CASE("an attempt is read back as it was stored, once", "[library][trainees]") {
    const ScratchFolder folder;
    Library library = opened(folder.path());
    const TraineeId robin = added(library, "Robin");
    Attempt made = attempt(PracticeTopic::find_fault, 3, 0.7, 5000);
    made.hints = 2;
    made.counts = false;
    made.mistakes = {missed, long_stroke, angle};
    const LibraryResult<AttemptId> id = add_attempt(library, robin, made);
    REQUIRE(id);
    CHECK(*add_attempt(library, robin, made) == *id); // the same once more
    CHECK(*attempts(library, robin) == std::vector<Attempt>{made});
    CHECK(attempts(library, 0)->empty());
    Attempt later = made;
    later.time = 4000;
    CHECK(*add_attempt(library, robin, later) != *id);
    CHECK(attempts(library, robin)->front() == later); // the oldest first
    CHECK(*add_attempt(library, 0, made) != *id);      // by nobody in particular
    CHECK(attempts(library, 0)->size() == 1);
    CHECK(add_attempt(library, 77, made).fault().kind == Kind::no_such_trainee);
    CHECK(attempts(library, 77).fault().kind == Kind::no_such_trainee);
    CHECK_FALSE(library.check());
}

TEST_CASE("an attempt outside its limits is brought within them", "[library][trainees]") {
    Library library = Library::in_memory();
    Attempt wild;
    wild.level = 99;
    wild.score = -3.0;
    wild.seconds = 1e300;
    wild.hints = -5;
    wild.mistakes.assign(1000, long_stroke);
    wild.mistakes.front() = {MarkReason::fault_found, {}, {}}; // no mistake at all
    REQUIRE(add_attempt(library, 0, wild));
    const Attempt kept = attempts(library, 0)->front();
    CHECK(kept.level == highest_level);
    CHECK(kept.score == 0.0);
    CHECK(kept.seconds == longest_attempt);
    CHECK(kept.hints == 0);
    CHECK(kept.mistakes == std::vector<Mistake>(most_mistakes, long_stroke));
    CHECK_FALSE(library.check());
}

TEST_CASE("what was done is summed up topic by topic", "[library][trainees]") {
    Library library = Library::in_memory();
    const TraineeId robin = added(library, "Robin", 3);
    const PracticeTopic stroke = PracticeTopic::shortest_stroke;
    Attempt again = attempt(stroke, 1, 1.0, 100); // the same once more: counts for nothing
    again.counts = false;
    again.mistakes = {angle};
    const double scores[] = {0.1, 0.9, 0.9, 0.5, 0.9, 1.0};
    for (int i = 0; i < 6; ++i) {
        Attempt made = attempt(stroke, i < 3 ? 1 : 2, scores[i], 10 + i);
        if (i < 4) made.mistakes = {long_stroke};
        if (i == 0) made.mistakes.push_back(missed);
        REQUIRE(add_attempt(library, robin, made));
    }
    REQUIRE(add_attempt(library, robin, again));
    const LibraryResult<TraineeSummary> summary = trainee_summary(library, robin);
    REQUIRE(summary);
    CHECK(summary->who == TraineeRow{robin, "Robin", 3});
    const TopicSummary& of = summary->of(stroke);
    CHECK(of.done.attempts == 7);
    CHECK(of.done.level == 3); // two at level 2 in a row were managed
    CHECK_THAT(of.done.mean_of_last, WithinAbs(0.84, 1e-12)); // of the last five that count
    CHECK(of.done.seconds == 210.0);
    CHECK(of.done.last == 100);
    CHECK(of.mistakes == std::vector<MistakeCount>{{long_stroke, 4}, {missed, 1}, {angle, 1}});
    CHECK(summary->of(PracticeTopic::find_fault) == TopicSummary{});
    CHECK(practice_next(summary->done(), 200)->topic == PracticeTopic::find_fault);
    CHECK(trainee_summary(library, 0)->of(stroke) == TopicSummary{});
    CHECK(trainee_summary(library, 99).fault().kind == Kind::no_such_trainee);
}

TEST_CASE("a topic is signed for step by step, and a signature is taken away again",
          "[library][trainees]") {
    Library library = Library::in_memory();
    const TraineeId robin = added(library, "Robin"), ana = added(library, "Ana");
    const PracticeTopic topic = PracticeTopic::call;
    const auto of = [&](TraineeId who) { return trainee_summary(library, who)->of(topic); };
    CHECK_FALSE(of(robin).state());
    REQUIRE_FALSE(sign_topic(library, robin, topic, SignState::shown, SignOff{"MK", 10}));
    CHECK(of(robin).state() == SignState::shown);
    REQUIRE_FALSE(sign_topic(library, robin, topic, SignState::alone, SignOff{"", 20}));
    CHECK(of(robin).state() == SignState::alone);
    CHECK(of(robin).signs == TopicSigns{SignOff{"MK", 10}, std::nullopt, SignOff{"", 20}});
    REQUIRE_FALSE(sign_topic(library, robin, topic, SignState::alone, SignOff{"TL", 30}));
    CHECK(of(robin).signs[2] == SignOff{"TL", 30});
    REQUIRE_FALSE(sign_topic(library, robin, topic, SignState::alone, std::nullopt));
    CHECK(of(robin).state() == SignState::shown);
    CHECK_FALSE(of(ana).state());
    CHECK(sign_topic(library, 0, topic, SignState::shown, SignOff{"MK", 1})->kind ==
          Kind::no_such_trainee);
    CHECK_FALSE(library.check());
}

TEST_CASE("a person who is erased leaves no bytes behind", "[library][trainees][erase]") {
    const Journal journal = GENERATE(Journal::write_ahead, Journal::rollback);
    INFO("seed " << Catch::getSeed());
    const ScratchFolder folder;
    const std::string name = "Wilhelmina-Thunderbolt", signer = "QXJZ";
    Library library = opened(folder.path(), journal);
    Library beside = opened(folder.path(), journal); // as the autosave has it
    // Many others around, so that pages are split and filled again.
    std::vector<TraineeId> people;
    for (int i = 0; i < 120; ++i)
        people.push_back(added(library, "Person number " + std::to_string(i)));
    const TraineeId her = added(library, "Before " + name);
    for (int i = 0; i < 120; ++i)
        people.push_back(added(library, "Another number " + std::to_string(i)));
    REQUIRE_FALSE(rename_trainee(library, her, name));
    Attempt odd = attempt(PracticeTopic::find_fault, 2, 0.123456789, 1);
    for (int i = 0; i < 300; ++i) {
        odd.time = 1000 + i;
        odd.mistakes = {missed, angle};
        REQUIRE(add_attempt(library, i % 3 == 0 ? her : people[static_cast<std::size_t>(i) % 9],
                            odd));
    }
    for (int i = 0; i < 9; ++i)
        REQUIRE_FALSE(sign_topic(library, her, static_cast<PracticeTopic>(i), SignState::helped,
                                 SignOff{signer, 1}));
    const JobId job = *library.create(samples::job("Beside her"), 1);
    REQUIRE(is_anywhere(folder, name));
    REQUIRE(is_anywhere(folder, signer));
    REQUIRE(beside.open(job));

    REQUIRE_FALSE(erase_trainee(library, her));
    CHECK_FALSE(is_anywhere(folder, name));
    CHECK_FALSE(is_anywhere(folder, signer));
    CHECK(trainee_summary(library, her).fault().kind == Kind::no_such_trainee);
    CHECK(attempts(library, people[1])->size() > 0);
    CHECK(trainees(library)->size() == people.size());
    CHECK(library.open(job));
    CHECK_FALSE(erase_trainee(library, her)); // twice is no fault
    CHECK_FALSE(library.check());

    // Her id is nobody else's.
    CHECK(added(library, "Somebody new") > her);
    // Erased one by one, they all go.
    for (const TraineeId person : people) REQUIRE_FALSE(erase_trainee(library, person));
    CHECK_FALSE(is_anywhere(folder, "Person number"));
    CHECK_FALSE(is_anywhere(folder, "Another number"));
}

TEST_CASE("what nobody in particular did is erased by itself", "[library][trainees][erase]") {
    Library library = Library::in_memory();
    const TraineeId robin = added(library, "Robin");
    REQUIRE(add_attempt(library, 0, attempt(PracticeTopic::call, 1, 1.0, 1)));
    REQUIRE(add_attempt(library, robin, attempt(PracticeTopic::call, 1, 1.0, 1)));
    REQUIRE_FALSE(erase_trainee(library, 0));
    CHECK(attempts(library, 0)->empty());
    CHECK(attempts(library, robin)->size() == 1);
}

TEST_CASE("while another program reads the log, erasing says that traces are left",
          "[library][trainees][erase]") {
    const ScratchFolder folder;
    LibraryOptions options;
    options.busy_timeout = 20;
    LibraryResult<Library> library = Library::open(folder.path(), options);
    REQUIRE(library);
    const TraineeId her = added(*library, "Wilhelmina-Thunderbolt");
    {
        SQLite::Database other(folder.file("library.db"), SQLite::OPEN_READWRITE);
        SQLite::Statement reading(other, "SELECT * FROM trainees");
        REQUIRE(reading.executeStep());
        const std::optional<LibraryFault> fault = erase_trainee(*library, her);
        REQUIRE(fault);
        CHECK(fault->kind == Kind::locked);
        CHECK(trainees(*library)->empty()); // gone from the library all the same
    }
    CHECK_FALSE(erase_trainee(*library, her));
    CHECK_FALSE(is_anywhere(folder, "Wilhelmina-Thunderbolt"));
}

TEST_CASE("rows that can't be understood are left out, and checking names them",
          "[library][trainees][faults]") {
    const char* damage = GENERATE(
        "UPDATE attempts SET topic = 'juggling' WHERE time = 1",
        "UPDATE attempts SET mistakes = 'fault_missed nothing' WHERE time = 1",
        "UPDATE attempts SET score = 1.5 WHERE time = 1",
        "UPDATE attempts SET level = 0 WHERE time = 1",
        "UPDATE sign_offs SET state = 'juggled'", "UPDATE calls SET outcome = 'juggled'",
        "PRAGMA foreign_keys = OFF; UPDATE attempts SET trainee = 900 WHERE time = 1");
    INFO(damage);
    const ScratchFolder folder;
    {
        Library library = opened(folder.path());
        const TraineeId robin = added(library, "Robin");
        REQUIRE(add_attempt(library, robin, attempt(PracticeTopic::call, 1, 1.0, 1)));
        REQUIRE(add_attempt(library, robin, attempt(PracticeTopic::call, 1, 1.0, 2)));
        REQUIRE_FALSE(
            sign_topic(library, robin, PracticeTopic::call, SignState::shown, SignOff{"MK", 1}));
        REQUIRE(add_call(library, {}));
    }
    SQLite::Database(folder.file("library.db"), SQLite::OPEN_READWRITE).exec(damage);
    Library library = opened(folder.path());
    REQUIRE(library.check());
    CHECK(library.check()->kind == Kind::corrupt);
    const TraineeId robin = trainees(library)->front().id;
    CHECK(attempts(library, robin)->back().time == 2);
    CHECK(calls(library, 5)->size() == 1);
    // Even so they are erased with the person.
    CHECK_FALSE(erase_trainee(library, robin));
}

TEST_CASE("keys of topics, signatures and mistakes are read back, and no others",
          "[trainees]") {
    for (std::size_t i = 0; i < topic_count; ++i)
        CHECK(topic_from(topic_key(static_cast<PracticeTopic>(i))) ==
              static_cast<PracticeTopic>(i));
    CHECK_FALSE(topic_from("count"));
    for (const SignState state : {SignState::shown, SignState::helped, SignState::alone})
        CHECK(sign_from(sign_key(state)) == state);
    for (int i = 0; i <= static_cast<int>(MarkReason::not_answered); ++i) {
        Mistake mistake{static_cast<MarkReason>(i), {}, {}};
        if (is_about_finding(mistake.reason)) mistake.finding = FindingKind::length_differs;
        if (is_about_field(mistake.reason)) mistake.field = Field::mesh_count;
        const std::string key = mistake_key(mistake);
        if (is_mistake(mistake.reason)) CHECK(mistake_from(key) == mistake);
        else CHECK_FALSE(mistake_from(key));
    }
    for (const char* wrong : {"", " ", "fault_missed", "fault_missed ", "fault_missed juggling",
                              "stroke_long starved", "stroke_long ", "line_not_set starved"})
        CHECK_FALSE(mistake_from(wrong));
}
