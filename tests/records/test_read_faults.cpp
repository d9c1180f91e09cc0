// What a refused file is said to have: the place, what was found, what was expected, in words.
#include <algorithm>
#include <fstream>
#include <iterator>

#include <catch2/catch_test_macros.hpp>

#include "app/records/exchange.h"
#include "app/text/words.h"

using namespace carriageway;
using Kind = ReadFault::Kind;

namespace {

std::string demo_text() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/demo/demo-job.json", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// The fault of the demonstration with the first `before` replaced.
ReadFault with(const std::string& before, const std::string& after) {
    std::string text = demo_text();
    const std::size_t at = text.find(before);
    REQUIRE(at != std::string::npos);
    text.replace(at, before.size(), after);
    const ReadJob read = read_job(text);
    CHECK_FALSE(read.job.has_value());
    return read.fault;
}

/// The line of the demonstration on which a text first stands.
std::size_t line_with(const std::string& piece) {
    const std::string text = demo_text();
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    return 1 + static_cast<std::size_t>(
                   std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

std::string english(const ReadFault& fault) { return fault_sentence(Language::english, fault); }

const std::string run_past = "\"run_past_mm\": 25";

}  // namespace

TEST_CASE("a number out of range is told with its range, unit and line") {
    const ReadFault far = with(run_past, "\"run_past_mm\": 2500.5");
    CHECK(far.kind == Kind::out_of_range);
    CHECK(far.path == "wishes.run_past_mm");
    CHECK(far.found == "2500.5");
    CHECK(far.expected == "0 … 1000");
    CHECK(far.line == line_with(run_past));
    CHECK(english(far) == "wishes.run_past_mm, line " + std::to_string(far.line) +
                              ": found 2500.5 mm, expected 0 … 1000 mm.");

    const ReadFault steep = with("\"angle_deg\": 20", "\"angle_deg\": 46");
    CHECK(steep.path == "heads[0].squeegee.angle_deg");
    CHECK(english(steep).find("found 46°, expected 0 … 45°.") != std::string::npos);
    const ReadFault slow = with("\"print_speed_mm_per_s\": 450", "\"print_speed_mm_per_s\": 0.5");
    CHECK(english(slow).find("found 0.5 mm/s, expected 1 … 5000 mm/s.") != std::string::npos);
    const ReadFault turns = with("\"mm_per_turn\": 1.25", "\"mm_per_turn\": 0");
    CHECK(english(turns).find("found 0 mm, expected > 0 … 100 mm.") != std::string::npos);
    const ReadFault marks = with("\"gauge_marks\": 0.8", "\"gauge_marks\": 2000");
    CHECK(fault_sentence(Language::spanish, marks).find("2000 marcas") != std::string::npos);
}

TEST_CASE("what isn't a number is told as it stands in the file") {
    for (const char* word : {"NaN", "nan", "-Infinity", "Infinity", "1e999", "-1e400"}) {
        const ReadFault fault = with(run_past, std::string("\"run_past_mm\": ") + word);
        INFO(word);
        CHECK(fault.kind == Kind::not_finite);
        CHECK(fault.path == "wishes.run_past_mm");
        CHECK(fault.found == word);
        CHECK(fault.line == line_with(run_past));
    }
    const ReadFault quoted = with(run_past, "\"run_past_mm\": \"25 mm\"");
    CHECK(quoted.kind == Kind::wrong_type);
    CHECK(quoted.found == "\"25 mm\"");
    CHECK(english(quoted).find("found \"25 mm\", expected a number.") != std::string::npos);
}

TEST_CASE("a misspelled field is told with the one that was probably meant") {
    CHECK(with(run_past, "\"run_past\": 25").expected == "run_past_mm");
    CHECK(with(run_past, "\"run_past_in\": 25").expected == "run_past_mm");
    CHECK(with("\"wishes\"", "\"whishes\"").expected == "wishes");
    CHECK(with("\"angle_deg\"", "\"angle\"").expected == "angle_deg");
    const ReadFault extra = with(run_past, "\"ambition\": 1, " + run_past);
    CHECK(extra.kind == Kind::unknown_field);
    CHECK(extra.path == "wishes.ambition");
    CHECK(extra.expected.empty());
}

TEST_CASE("a missing choice names what may be given") {
    const ReadFault none = with("\"angle_deg\": 20,", "");
    CHECK(none.kind == Kind::missing_field);
    CHECK(none.path == "heads[0].squeegee.angle_deg");
    CHECK(none.expected == "angle_deg | angle_rad");
    const ReadFault both = with("\"angle_deg\": 20,", "\"angle_deg\": 20, \"angle_rad\": 0.3,");
    CHECK(both.kind == Kind::both_given);
    CHECK(both.path == "heads[0].squeegee.angle_rad");
    const ReadFault word = with("\"toward_operator\"", "\"towards_operator\"");
    CHECK(word.expected == "\"toward_operator\", \"toward_machine\"");
}

TEST_CASE("a version that is newer is told so") {
    const ReadFault newer = with("\"carriageway_job\": 1", "\"carriageway_job\": 7");
    CHECK(newer.kind == Kind::newer_version);
    CHECK(newer.found == "7");
    CHECK(newer.expected == "1");
    CHECK(english(newer).find("newer version of the program") != std::string::npos);
}

TEST_CASE("a syntax error is told with line and character, what stands there and what should") {
    const ReadFault comma = with(run_past + ",", run_past);
    CHECK(comma.kind == Kind::syntax);
    CHECK(comma.found == "\"side_overlap_mm\"");
    CHECK(comma.expected == "\",\" | \"}\"");
    CHECK(comma.line == line_with(run_past) + 1);

    const ReadFault colon = with(run_past, "\"run_past_mm\" 25");
    CHECK(colon.line == line_with(run_past));
    CHECK(colon.column == 19);
    CHECK(colon.found == "25");
    CHECK(colon.expected == "\":\"");

    const ReadFault bare = with(run_past, "run_past_mm: 25");
    CHECK(bare.column == 5);
    CHECK(bare.found == "run_past_mm");
    CHECK(with(run_past, "\"run_past_mm\": 25.x").found == "25.x");

    const std::string text = demo_text();
    const ReadFault cut = read_job(text.substr(0, text.size() / 2)).fault;
    CHECK(english(cut).find("the text ends before it is complete") != std::string::npos);
}

TEST_CASE("text after the end is told, and can't command a terminal") {
    const ReadFault more = read_job(demo_text() + "\n{\"more\": 1}\n").fault;
    CHECK(more.kind == Kind::trailing_text);
    CHECK(more.found == "{\"more\": 1}");
    const ReadFault escape = read_job(demo_text() + "x\x1B[2J\xC2\x9B" "2J").fault;
    CHECK(escape.kind == Kind::trailing_text);
    CHECK(escape.found == "x?[2J?2J");
    const ReadFault name = with("\"toward_operator\"", "\"\\u001b[2J\xC2\x9B\"");
    for (const char c : english(name)) CHECK(static_cast<unsigned char>(c) >= 0x20);
    CHECK(english(name).find("\xC2\x9B") == std::string::npos);
}

TEST_CASE("a byte that isn't UTF-8 is told with its place") {
    const ReadFault latin = with("Sail yellow", "Sail \xE9");
    CHECK(latin.kind == Kind::wrong_encoding);
    CHECK(latin.found == "0xE9");
    CHECK(latin.expected == "UTF-8");
    CHECK(latin.line == line_with("Sail yellow"));
    // RFC 3629: overlong forms, surrogates and what is beyond U+10FFFF are not UTF-8.
    for (const char* bad : {"\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80"}) {
        CHECK(with("Sail yellow", bad).kind == Kind::wrong_encoding);
    }
}

TEST_CASE("too much of anything is refused before it takes memory") {
    const std::string start = "{\"carriageway_job\": 1, \"name\": ";
    const ReadFault deep = read_job(start + std::string(100, '[') + std::string(100, ']') + "}").fault;
    CHECK(deep.kind == Kind::too_deep);
    CHECK(deep.expected == std::to_string(deepest_text));
    std::string many = start + "[0";
    for (std::size_t i = 0; i < most_values; ++i) many += ",0";
    const ReadFault values = read_job(many + "]}").fault;
    CHECK(values.kind == Kind::too_many_values);
    CHECK(values.expected == std::to_string(most_values));
    std::string wide = "{\"carriageway_job\": 1";
    for (int i = 0; i < 200; ++i) wide += ", \"k" + std::to_string(i) + "\": 0";
    CHECK(read_job(wide + "}").fault.kind == Kind::too_many_values);
}
