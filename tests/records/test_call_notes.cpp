// What a call has come to, as its log keeps it.
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "app/records/call_log.h"
#include "app/records/call_notes.h"
#include "app/records/fault_book.h"
#include "core/job_check.h"

using namespace carriageway;

namespace {

const FaultBook& book() { return fault_lore().book; }

CallNotes some_notes() {
    CallNotes notes;
    notes.job = (JobId{1} << job_id_bits) - 1;
    notes.head = 6;
    notes.answers = {{3, 1}, {0, 0}};
    notes.skipped = {5};
    notes.read = {{6, Field::operator_stop}, {0, Field::dryer_temperature}};
    notes.told = {4, 1};
    notes.text = "Rings back after the shift. Señal débil \"en la línea\".";
    return notes;
}

} // namespace

TEST_CASE("notes of a call are kept as they are", "[calls]") {
    REQUIRE(book().tests.size() > 5);
    const CallNotes notes = some_notes();
    CHECK(read_call_notes(book(), write_call_notes(book(), notes)) == notes);
    CHECK(read_call_notes(book(), write_call_notes(book(), {})) == CallNotes{});
}

TEST_CASE("everything that can be answered of the largest call fits into its log", "[calls]") {
    CallNotes notes = some_notes();
    notes.answers.clear();
    notes.read.clear();
    for (std::size_t test = 0; test < book().tests.size(); ++test) notes.answers.push_back({test, 0});
    for (int field = 0; field < 60; ++field) notes.read.push_back({6, static_cast<Field>(field)});
    notes.text = std::string(longest_own_notes, 'x');
    const std::string text = write_call_notes(book(), notes);
    CHECK(text.size() <= longest_call_notes);
    const CallNotes read = read_call_notes(book(), text);
    CHECK(read.answers == notes.answers);
    CHECK(read.text == notes.text);
    CHECK(read.job == notes.job);
    CHECK(read.told == notes.told);
}

TEST_CASE("a text that isn't notes of a call is the person's own, whole characters only", "[calls]") {
    CHECK(read_call_notes(book(), "clicks, no stroke").text == "clicks, no stroke");
    CHECK(read_call_notes(book(), "").text.empty());
    std::string damaged = write_call_notes(book(), some_notes());
    damaged.resize(damaged.size() / 2);
    const CallNotes read = read_call_notes(book(), damaged);
    CHECK(read.job == 0);
    CHECK(read.answers.empty());
    CHECK(read.text == damaged);
    std::string accents;
    while (accents.size() <= longest_own_notes) accents += "ñ";
    const std::string cut = read_call_notes(book(), "x" + accents).text;
    CHECK(cut.size() <= longest_own_notes);
    CHECK(is_utf8(cut));
}

TEST_CASE("what a later fault book doesn't know any more is left out, the rest stays", "[calls]") {
    std::string text = write_call_notes(book(), some_notes());
    const std::string id = book().tests[3].id;
    text.replace(text.find("\"" + id + "\""), id.size() + 2, "\"gone_meanwhile\"");
    const CallNotes read = read_call_notes(book(), text);
    CHECK(read.answers == std::vector<TestAnswer>{{0, 0}});
    CHECK(read.told == some_notes().told);
    CHECK(read.text == some_notes().text);
}
