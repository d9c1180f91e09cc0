// Two halves of one walk put together: by files and links as a person hands them over, with choices
// where the two are at odds.
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>

#include "app/records/exchange.h"
#include "app/records/job_link.h"
#include "app/text/merge_sentences.h"
#include "app/text/sentences.h"
#include "core/walk.h"
#include "tests/app/visit_walk.h"
#include "tests/scratch_folder.h"

using namespace carriageway;

namespace {

const Stamp by_ab{1'700'000'100'000, "AB"};
const Stamp by_cd{1'700'000'200'000, "CD"};

std::string counted(Word key, int count) {
    return say(Language::english, key, {std::to_string(count)});
}

HeadId on(const Job& job, int station) { return head_on(job, station)->id; }

/// Ticks everything on these stations.
Job ticked(Job job, std::initializer_list<int> stations, const Stamp& by) {
    for (const int station : stations) {
        const std::optional<Edit> all = tick_all(job, on(job, station), by);
        REQUIRE(all);
        REQUIRE(apply(job, *all));
    }
    return job;
}

Job with_gauge(Job job, double marks, const Stamp& by) {
    REQUIRE(apply(job, Edit{really_set(job, on(job, 5), Field::squeegee_gauge, marks, by)}));
    return job;
}

/// Halves of the demonstration's walk that both noted one number of the head on station 5.
Job my_half() { return with_gauge(ticked(demo_job(), {2, 5}, by_ab), 1.2, by_ab); }
Job their_half() { return with_gauge(ticked(demo_job(), {6, 7, 8}, by_cd), 1.4, by_cd); }

std::string file_of(const ScratchFolder& folder, const Job& job, const std::string& name) {
    const std::string path = folder.file(name);
    write_bytes(path, write_job(job));
    return path;
}

/// A library with a job in it that is open, and nothing to undo.
void open_job(Driver& driver, const Job& job) { REQUIRE(driver.session().open_new(job)); }

int links_taken(Driver& driver) {
    int count = 0;
    for (const Errand& errand : driver.window().errands())
        if (errand.kind == ErrandKind::link_taken) ++count;
    return count;
}

} // namespace

TEST_CASE("Two halves from two files are one walk, with either choice where they are at odds") {
    const bool take_theirs = GENERATE(false, true);
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name << (take_theirs ? ", theirs" : ", mine"));
        const ScratchFolder folder;
        const Job mine = my_half();
        Driver driver(size, folder.file("library"));
        driver.drop_file(file_of(folder, mine, "mine.json")); // not the demonstration's: no mark
        REQUIRE(driver.has("merge/about"));
        driver.tap("merge/accept");
        REQUIRE(driver.session().job() == mine);
        const std::size_t rows = driver.session().rows().size();

        driver.drop_file(file_of(folder, their_half(), "theirs.json"));
        REQUIRE(driver.has("merge/about"));
        CHECK(driver.session().rows().size() == rows);
        CHECK(driver.session().job() == mine); // nothing changes yet
        for (const char* place : {"6", "7", "8"})
            CHECK(driver.find(std::string("merge/takes/head/") + place).value ==
                  counted(Word::merge_takes_walk, 16));
        CHECK_FALSE(driver.has("merge/takes/head/2"));
        CHECK_FALSE(driver.has("merge/2"));
        CHECK(driver.find("merge/1").label ==
              "Head 5 · Sail yellow: " +
                  say(Language::english, Word::merge_what_set, {"squeegee gauge"}));
        CHECK(driver.find("merge/1/mine").chosen);
        CHECK(driver.find("merge/1/mine").value.find("1.2 marks") == 0);
        CHECK(driver.find("merge/1/mine").value.find("AB") != std::string::npos);
        CHECK(driver.find("merge/1/theirs").value.find("1.4 marks") == 0);
        CHECK(driver.find("merge/1/theirs").value.find("CD") != std::string::npos);
        if (take_theirs) {
            driver.tap("merge/1/theirs");
            CHECK(driver.find("merge/1/theirs").chosen);
            CHECK_FALSE(driver.find("merge/1/mine").chosen);
        }
        driver.picture(std::string("merge ") + size.name);
        driver.tap("merge/accept");
        CHECK(driver.find("notice").label == words_of(Word::merge_done));
        const Job both = driver.session().job();
        const HeadId shared = on(both, 5);
        const WalkMark* mark = mark_of(both, shared, Field::squeegee_gauge);
        REQUIRE(mark != nullptr);
        CHECK(mark->real == (take_theirs ? 1.4 : 1.2));
        CHECK(mark->stamp == (take_theirs ? by_cd : by_ab));
        for (const int station : {2, 5, 6, 7, 8})
            CHECK(progress_at(both, on(both, station)).finished());
        CHECK(mark_of(both, on(both, 2), Field::flood_angle)->stamp == by_ab);
        CHECK(mark_of(both, on(both, 7), Field::flood_angle)->stamp == by_cd);
        // The walk goes on with what neither has done.
        CHECK(driver.find("walk/head").label == "Head 9 · Line black");
        driver.program().act(CloseNotice{});
        driver.tap("day/undo");
        CHECK(driver.session().job() == mine);
        REQUIRE(driver.session().redo());
        CHECK(driver.session().job() == both);
    }
}

TEST_CASE("What both have noted alike says that there is nothing new in it") {
    const ScratchFolder folder;
    Driver driver(phone, folder.file("library"));
    open_job(driver, my_half());
    const std::size_t rows = driver.session().rows().size();
    // The same, and the same with less in it.
    for (const Job& theirs : {my_half(), ticked(demo_job(), {2}, by_ab)}) {
        driver.drop_file(file_of(folder, theirs, "theirs.json"));
        CHECK(driver.find("notice").label == words_of(Word::merge_nothing_new));
        CHECK_FALSE(driver.has("day-sheet"));
        CHECK(driver.session().rows().size() == rows);
        CHECK_FALSE(driver.session().can_undo());
        driver.tap("notice/close");
    }
}

TEST_CASE("A half without anything at odds is shown before it is taken over") {
    const ScratchFolder folder;
    Driver driver(phone, folder.file("library"));
    open_job(driver, ticked(demo_job(), {2}, by_ab));
    Job theirs = ticked(demo_job(), {9}, by_cd);
    REQUIRE(apply(theirs, *tick_all(theirs, 0, by_cd)));
    RunRecord record;
    record.counts = {{96.0, 2.0, by_cd}};
    record.stoppages = {{4.5, StopReason::ink, "", by_cd}};
    REQUIRE(apply(theirs, Edit{SetRecord{record}}));
    REQUIRE(apply(theirs, Edit{SetNote{on(theirs, 9), Note::ink, "softened"}}));
    driver.drop_file(file_of(folder, theirs, "theirs.json"));
    CHECK_FALSE(driver.has("merge/1"));
    CHECK(driver.find("merge/takes/head/9").value == counted(Word::merge_takes_walk, 16));
    CHECK(driver.find("merge/takes/job").value == counted(Word::merge_takes_walk, 2));
    CHECK(driver.find("merge/takes/counts").label == counted(Word::merge_takes_counts, 1));
    CHECK(driver.find("merge/takes/stoppages").label == counted(Word::merge_takes_stoppages, 1));
    CHECK(driver.find("merge/takes/others").label == counted(Word::merge_takes_plan, 1));
    CHECK_FALSE(driver.has("merge/takes/readings"));
    driver.tap("merge/accept");
    CHECK(progress_at(driver.session().job(), 0).finished());
    CHECK(driver.session().job().record == record);
    CHECK(head_on(driver.session().job(), 9)->notes.ink == "softened");
}

TEST_CASE("Another job's file, and this one's without a walk, open as a job as before") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.file("library"));
    open_job(driver, my_half());
    Job other = their_half();
    other.name = "Harbour fair tote";
    for (Head& head : other.heads) head.colour += " tint";
    Job plain = demo_job();
    plain.name = "Never walked";
    for (const Job& job : {plain, other}) {
        const std::size_t rows = driver.session().rows().size();
        driver.drop_file(file_of(folder, job, "other.json"));
        CHECK_FALSE(driver.has("merge/about"));
        CHECK(driver.session().job() == job);
        CHECK(driver.session().rows().size() == rows + 1);
    }
}

TEST_CASE("The other half may be left, or opened as a job of its own") {
    const ScratchFolder folder;
    Driver driver(phone, folder.file("library"));
    const Job mine = my_half(), theirs = their_half();
    open_job(driver, mine);
    const std::string path = file_of(folder, theirs, "theirs.json");
    driver.drop_file(path);
    driver.tap("merge/drop");
    CHECK_FALSE(driver.has("day-sheet"));
    CHECK_FALSE(driver.program().state().day.merge);
    CHECK(driver.session().job() == mine);
    // From the walk it leads back to the walk.
    driver.tap("day");
    driver.tap("day/walk");
    driver.drop_file(path);
    driver.tap("merge/drop");
    CHECK(driver.has("walk/head"));
    const std::size_t rows = driver.session().rows().size();
    driver.drop_file(path);
    driver.tap("merge/own");
    CHECK(driver.session().rows().size() == rows + 1);
    CHECK(driver.session().job() == theirs);
    CHECK_FALSE(driver.has("day-sheet"));
}

TEST_CASE("A half comes by a link as well, and the link is dealt with once it is") {
    const ScratchFolder folder;
    Driver driver(phone, folder.file("library"));
    open_job(driver, my_half());
    const std::string link = "#" + job_link_fragment(their_half());
    driver.open_link(link);
    REQUIRE(driver.has("merge/about"));
    CHECK_FALSE(driver.session().visiting());
    CHECK(links_taken(driver) == 0); // loaded again, the page would ask again
    driver.tap("merge/accept");
    CHECK(links_taken(driver) == 1);
    CHECK(progress_at(driver.session().job(), on(driver.session().job(), 8)).finished());
    driver.open_link(link);
    driver.tap("merge/own");
    CHECK(driver.session().visiting());
    CHECK(driver.session().job() == their_half());
}

TEST_CASE("A half put aside waits on the walk, and is looked through anew after a change") {
    const ScratchFolder folder;
    Driver driver(phone, folder.file("library"));
    open_job(driver, demo_job());
    REQUIRE_FALSE(driver.session().commit(*tick_all(demo_job(), on(demo_job(), 2), by_ab)));
    const Job unset = driver.session().job();
    REQUIRE_FALSE(driver.session().commit(
        Edit{really_set(unset, on(unset, 5), Field::squeegee_gauge, 1.2, by_ab)}));
    driver.drop_file(file_of(folder, their_half(), "theirs.json"));
    REQUIRE(driver.has("merge/1"));
    driver.tap("day/back");
    driver.tap("day/walk");
    driver.tap("walk/merge");
    REQUIRE(driver.has("merge/1"));
    // What the two were at odds about goes.
    driver.tap("day/undo");
    REQUIRE(driver.session().job() == unset);
    driver.tap("merge/accept");
    CHECK(driver.find("notice").label == words_of(Word::merge_changed));
    CHECK_FALSE(driver.has("merge/1"));
    CHECK(driver.session().job() == unset);
    driver.program().act(CloseNotice{});
    driver.settle();
    driver.tap("merge/accept");
    CHECK(value_as_set(driver.session().job(), on(unset, 5), Field::squeegee_gauge) == 1.4);
}

TEST_CASE("Whatever the two are at odds about has a name and says what each half holds") {
    const Job base = demo_job();
    const HeadId shared = on(base, 5);
    Job mine = with_gauge(base, 1.2, by_ab), theirs = other_half(base, shared);
    REQUIRE(apply(mine, Edit{SetNote{shared, Note::ink, "as it comes"}}));
    RunRecord record = mine.record;
    record.counts = {{96.0, 0.0, {1'700'000'360'000, "CD"}}};
    record.stoppages = {{6.0, StopReason::ink, "", {1'700'000'360'000, "CD"}}};
    REQUIRE(apply(mine, Edit{SetRecord{record}}));
    const WalkMerge merge = merge_walks(mine, theirs);
    REQUIRE(merge.refusal == MergeRefusal::none);
    const LengthUnit mm = LengthUnit::mm;
    std::vector<std::string> said;
    for (const MergeConflict& conflict : merge.conflicts) {
        const Language en = Language::english;
        said.push_back(odds_text(en, merge, conflict) + " | " +
                       half_text(en, mm, merge, conflict, false) + " | " +
                       half_text(en, mm, merge, conflict, true));
    }
    const std::string head = "Head 5 · Sail yellow: ";
    const std::vector<std::string> expected = {
        "The job: name of the job | " + base.name + " | The same tote, evening shift",
        head + "both stops, ruler | operator 315 mm, machine 679 mm | " +
            "operator 312 mm, machine 679 mm",
        head + "ink | as it comes | with a tenth of softener",
        head + "print speed, as planned | 0.6 m/s | 0.512 m/s",
        head + "squeegee gauge, as set | 1.2 marks | 1.4 marks",
        "The job: count of pieces | 96 printed | 96 printed, 2 of them spoiled",
        "The job: stoppage | 6 min: ink | 4.5 min: ink · tin empty"};
    CHECK(said == expected);
    // In Spanish every place has other words, and every one some.
    for (const MergeConflict& conflict : merge.conflicts) {
        const std::string spanish = odds_text(Language::spanish, merge, conflict);
        CHECK(spanish != odds_text(Language::english, merge, conflict));
        for (const bool theirs_too : {false, true})
            CHECK_FALSE(half_text(Language::spanish, mm, merge, conflict, theirs_too).empty());
    }
}
