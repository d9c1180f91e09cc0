// What is noted while a run goes on: pieces counted and stoppages, by the pad and by keys.
#include <catch2/catch_test_macros.hpp>

#include "app/text/list_sentences.h"
#include "app/views/day_view.h"
#include "tests/app/list_steps.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using namespace carriageway::listing;

namespace {

constexpr std::int64_t hour = 3'600'000;

void open_run(Driver& driver) {
    driver.program().act(OpenDay{DayPart::lists});
    driver.program().act(ShowList{CheckList::first_piece, true});
    driver.settle();
    REQUIRE(driver.has("lists/tally"));
}

std::string trouble(Driver& driver) {
    REQUIRE(driver.program().state().pad);
    return driver.program().state().pad->trouble;
}

std::string reason_name(StopReason reason) {
    return "lists/reason/" + std::to_string(static_cast<int>(reason));
}

} // namespace

TEST_CASE("Pieces are counted by the pad: printed, then spoiled, at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        const ScratchFolder folder;
        Driver driver(size, folder.path());
        open_run(driver);
        CHECK(driver.find("lists/tally").label == words_of(Word::tally_none));
        driver.tap("lists/count");
        CHECK(driver.find("pad/display").label == capitalised(words_of(Word::day_printed)));
        type_number(driver, "240");
        CHECK(driver.find("pad/display").label == capitalised(words_of(Word::day_spoiled)));
        CHECK(driver.find("pad/display").value == "0");
        type_number(driver, "3");
        CHECK_FALSE(driver.has("pad"));
        CHECK(record_of(driver).counts == std::vector<PieceCount>{{240, 3, {moment, ""}}});
        // As many spoiled as before, where nothing else is typed.
        driver.tap("lists/count");
        type_number(driver, "300");
        CHECK(driver.find("pad/display").value == "3");
        driver.tap("pad/accept");
        REQUIRE(record_of(driver).counts.size() == 2);
        CHECK(record_of(driver).counts.back() == PieceCount{300, 3, {moment, ""}});
        const std::string wanted = format_number(driver.session().job().run.pieces, 0);
        CHECK(driver.find("lists/tally").label ==
              say(Language::english, Word::tally_printed_of, {"300", wanted}));
        driver.picture(std::string("in the run ") + size.name);
        driver.tap("lists/count/1/remove");
        CHECK(record_of(driver).counts == std::vector<PieceCount>{{300, 3, {moment, ""}}});
        undo(driver);
        CHECK(record_of(driver).counts.size() == 2);
        driver.key(Key::escape);
        CHECK(driver.find("day/lists").value ==
              say(Language::english, Word::list_all_progress_printed, {"0", "31", "300"}));
    }
}

TEST_CASE("What can't be counted is refused on the pad, with what to do") {
    Driver driver(phone);
    open_run(driver);
    driver.program().act(DoEdit{Edit{SetRecord{{{}, {{240, 3, {}}}, {}, {}, {}}}}});
    const Job before = driver.session().job();
    const auto refused = [&](std::string_view typed, const std::string& why) {
        INFO(typed);
        for (int i = 0; i < 12; ++i) driver.tap("pad/backspace");
        type_number(driver, typed);
        CHECK(trouble(driver) == why);
        CHECK(driver.session().job() == before);
    };
    const auto say_it = [](Word key, std::string_view what) {
        return say(Language::english, key, {what});
    };
    driver.tap("lists/count");
    refused("2.5", say_it(Word::tally_not_whole, "1000000000"));
    refused("-4", say_it(Word::tally_not_whole, "1000000000"));
    refused("239", say_it(Word::tally_fewer, "240"));
    refused("", say_it(Word::number_not_read_plain, ""));
    type_number(driver, "250");
    refused("251", say_it(Word::tally_too_spoiled, "250"));
    driver.tap("pad/cancel");
    CHECK_FALSE(driver.has("pad"));
    CHECK(driver.session().job() == before);
    driver.tap("lists/minutes");
    refused("-1", say_it(Word::stoppage_minutes_refused, "100000"));
    refused("100001", say_it(Word::stoppage_minutes_refused, "100000"));
    driver.tap("pad/cancel");
    CHECK_FALSE(driver.session().job().record.stoppages.size() > 0);
}

TEST_CASE("A run that keeps as many counts as it may says so, and loses none") {
    Driver driver(phone);
    RunRecord record;
    record.counts.assign(most_counts, {10, 0, {}});
    driver.program().act(DoEdit{Edit{SetRecord{record}}});
    driver.program().act(OpenDay{DayPart::lists});
    driver.program().act(ShowList{CheckList::first_piece, true});
    driver.settle();
    driver.tap("lists/count");
    type_number(driver, "11");
    CHECK(trouble(driver) ==
          say(Language::english, Word::tally_full, {std::to_string(most_counts)}));
    CHECK(record_of(driver) == record);
}

TEST_CASE("A count says how fast it went since the one before") {
    Driver driver(desktop);
    // 600 pieces in two hours.
    RunRecord record;
    record.counts = {{240, 3, {moment, "AB"}}, {840, 12, {moment + 2 * hour, "AB"}}};
    driver.program().act(DoEdit{Edit{SetRecord{record}}});
    open_run(driver);
    const std::string rate = say(Language::english, Word::tally_rate, {"300"});
    const auto holds = [](const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    };
    CHECK(driver.find("lists/tally").value ==
          say(Language::english, Word::tally_spoiled, {"12"}) + " (1.4 %). " + capitalised(rate));
    CHECK(holds(driver.find("lists/count/2").value, rate));
    CHECK(driver.find("lists/count/1").value ==
          stamp_text(record.counts.front().stamp));
}

TEST_CASE("A stoppage has a reason, minutes, a beginning and a note, at every size") {
    for (const WindowSize& size : {small_phone, phone, tablet, desktop}) {
        INFO(size.name);
        const ScratchFolder folder;
        Driver driver(size, folder.path());
        const Job before = driver.session().job();
        open_run(driver);
        CHECK(driver.find("lists/stood-still").label == words_of(Word::stoppage_none));
        CHECK_FALSE(driver.has("lists/stoppage-note"));
        driver.tap(reason_name(StopReason::ink));
        CHECK(driver.find(reason_name(StopReason::ink)).chosen);
        driver.tap("lists/minutes");
        type_number(driver, "12.5");
        // It ends now, so it began 12.5 minutes, 750 s, ago.
        const Stoppage first{12.5, StopReason::ink, "", {moment - 750'000, ""}};
        CHECK(record_of(driver).stoppages == std::vector<Stoppage>{first});
        driver.tap(reason_name(StopReason::garments));
        driver.tap("lists/minutes");
        type_number(driver, "4");
        type_into(driver, "lists/stoppage-note", "wrong size in the box");
        REQUIRE(record_of(driver).stoppages.size() == 2);
        CHECK(record_of(driver).stoppages.front() == first);
        CHECK(record_of(driver).stoppages.back() ==
              Stoppage{4.0, StopReason::garments, "wrong size in the box", {moment - 240'000, ""}});
        CHECK(driver.find("lists/stood-still").label ==
              say(Language::english, Word::stoppage_total, {"16.5"}));
        CHECK(driver.find("lists/stoppage/2").label == "4 min: garments");
        CHECK(driver.find("lists/stoppage/2").value.ends_with("wrong size in the box"));
        // What is typed again begins with what stands there.
        driver.tap("lists/stoppage-note");
        CHECK(driver.program().state().typing->text == "wrong size in the box");
        driver.key(Key::escape);
        driver.picture(std::string("stoppages ") + size.name);
        driver.tap("lists/stoppage/1/remove");
        REQUIRE(record_of(driver).stoppages.size() == 1);
        CHECK(record_of(driver).stoppages.front().reason == StopReason::garments);
        for (int edits = 0; edits < 4; ++edits) undo(driver);
        CHECK(driver.session().job() == before);
    }
}

TEST_CASE("Count, stoppage and notes by keys alone, in Spanish") {
    const ScratchFolder folder;
    Driver driver(desktop, folder.path(), Language::spanish);
    enter_on(driver, "day");
    enter_on(driver, "day/lists");
    enter_on(driver, "lists/in-run");
    enter_on(driver, "lists/count");
    driver.type("96");
    enter_on(driver, "pad/accept");
    driver.type("2");
    enter_on(driver, "pad/accept");
    CHECK(record_of(driver).counts == std::vector<PieceCount>{{96, 2, {moment, ""}}});
    CHECK(driver.find("lists/count/1").label == "96 impresas, 2 de ellas, defectuosas");
    enter_on(driver, reason_name(StopReason::flash));
    enter_on(driver, "lists/minutes");
    driver.type("7,5");
    enter_on(driver, "pad/accept");
    REQUIRE(record_of(driver).stoppages.size() == 1);
    CHECK(record_of(driver).stoppages.front().minutes == 7.5);
    CHECK(driver.find("lists/stoppage/1").label == "7.5 min: presecador");
    CHECK(driver.find(reason_name(StopReason::other)).label == "Otra cosa");
    enter_on(driver, "lists/run-notes");
    driver.type("palets calientes");
    driver.key(Key::enter);
    CHECK(record_of(driver).notes == "palets calientes");
}
