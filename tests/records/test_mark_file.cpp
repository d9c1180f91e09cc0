// The files of marks that `carriageway register` reads.
#include <catch2/catch_test_macros.hpp>
#include <set>

#include "app/records/mark_file.h"

using namespace carriageway;
using Kind = MarkFileFault::Kind;

namespace {

const std::string headings = std::string(mark_columns) + "\n";
const std::string print_headings = headings.substr(0, headings.size() - 1) + ",platen,turn\n";

/// So many lines of marks in prints of two.
std::string lines(std::size_t count) {
    std::string text = print_headings;
    for (std::size_t i = 0; i < count; ++i)
        text += (i % 2 == 0 ? "0,0,0,0," : "100,0,100,0,") + std::to_string(i / 2 + 1) + ",1\n";
    return text;
}

} // namespace

TEST_CASE("marks are read with quotes, both line ends and a byte order mark", "[marks]") {
    const ReadMarks read = read_marks("\xEF\xBB\xBF" + headings +
                                      "-150,-200,-149,-200\n150,-200,151,-200\r\n"
                                      "\r\n150,200,151,200\n\"-150\",200,-1.49e2,200");
    REQUIRE(read);
    REQUIRE(read.rounds.size() == 1);
    REQUIRE(read.rounds.front().marks.size() == 4);
    CHECK(read.rounds.front().marks[3].nominal.x == -150.0);
    CHECK(read.rounds.front().marks[3].measured.x == -149.0);
    CHECK_FALSE(read.by_platen);
    // Columns in another order, with platen and turn: a print each.
    const ReadMarks prints = read_marks(
        "turn,platen,measured_x_mm,measured_y_mm,nominal_x_mm,nominal_y_mm\n"
        "1,1,0.1,0,0,0\n1,2,0.2,0,0,0\n1,1,100.1,0,100,0\n");
    REQUIRE(prints);
    CHECK(prints.by_platen);
    REQUIRE(prints.rounds.size() == 2);
    CHECK(prints.rounds[0].marks.size() == 2);
    CHECK(prints.rounds[1].platen == 2);
}

TEST_CASE("what isn't understood is refused with its line and character", "[marks]") {
    struct Case {
        std::string text;
        Kind kind;
        std::size_t line;
        std::size_t column;
    };
    const Case cases[] = {
        {"", Kind::no_marks, 0, 0},
        {"\n\n", Kind::no_marks, 0, 0},
        {headings, Kind::no_marks, 0, 0},
        {"x,y\n1,2\n", Kind::heading, 1, 1},
        {"nominal_x_mm,Nominal_y_mm\n", Kind::heading, 1, 14},
        {"nominal_x_mm,nominal_x_mm\n", Kind::repeated, 1, 14},
        // Where the missing one would be added.
        {"nominal_x_mm,nominal_y_mm,measured_x_mm\n1,2,3\n", Kind::missing_column, 1, 40},
        {"nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm,platen\n1,2,3,4,5\n",
         Kind::missing_column, 1, 61},
        {headings + "1,2,3\n", Kind::columns, 2, 6},
        {headings + "1,2,3,4,5\n", Kind::columns, 2, 9},
        {headings + "1,2,3,4\n1,2,three,4\n", Kind::number, 3, 5},
        {headings + "1,2,3,4\n\n1,2,,4\n", Kind::number, 4, 5},
        {headings + "1,2,1/2,4\n", Kind::number, 2, 5},
        {headings + "1,2,nan,4\n", Kind::number, 2, 5},
        {headings + "1,2,3, 4\n", Kind::number, 2, 7},
        {headings + "ñ,2,3,x\n", Kind::number, 2, 1},
        // In characters, not bytes.
        {headings + "\"1\",2,3,\"ññ\",4\n", Kind::columns, 2, 14},
        {headings + "1,2,1e9,4\n", Kind::out_of_range, 2, 5},
        {headings + "1,2,3,-5001\n", Kind::out_of_range, 2, 7},
        {headings + "1,2,\"3,4\n", Kind::quote, 2, 5},
        {headings + "1,2,3\",4\n", Kind::quote, 2, 6},
        {headings + "1,2,\"3\"x,4\n", Kind::quote, 2, 8},
        {headings + "1,2,\xFF,4\n", Kind::not_utf8, 2, 5},
        {headings + "1,2,3,4\r1,2,3,4\r", Kind::line_end, 2, 8},
        {headings + "1,2,3,4\n1,2,3,4\r", Kind::line_end, 3, 8},
        {"nominal_x_mm\r", Kind::line_end, 1, 13},
        {headings + std::string(longest_mark_line + 1, '1'), Kind::long_line, 2, 1},
        {headings + std::string(longest_mark_line, '1'), Kind::columns, 2, longest_mark_line + 1},
        {print_headings + "1,2,3,4,1.5,1\n", Kind::whole, 2, 9},
        {print_headings + "1,2,3,4,0,1\n", Kind::whole, 2, 9},
        {print_headings + "1,2,3,4,1,1000001\n", Kind::whole, 2, 11},
        {std::string(largest_mark_file + 1, ' '), Kind::too_large, 0, 0},
    };
    for (const Case& one : cases) {
        INFO(one.text.substr(0, 120));
        const ReadMarks read = read_marks(one.text);
        CHECK(read.fault.kind == one.kind);
        CHECK(read.fault.line == one.line);
        CHECK(read.fault.column == one.column);
        CHECK(read.rounds.empty());
        CHECK_FALSE(read.by_platen);
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string said = fault_sentence(language, read.fault);
            CHECK(said.size() > 15);
            CHECK(said.find('{') == std::string::npos);
        }
    }
}

TEST_CASE("each limit of a file of marks has its own sentence", "[marks]") {
    CHECK(read_marks(lines(most_mark_lines)));
    const MarkFileFault rows = read_marks(lines(most_mark_lines + 1)).fault;
    CHECK(rows.kind == Kind::too_many_lines);
    CHECK(rows.line == most_mark_lines + 2);
    CHECK(rows.column == 1);
    std::string many = headings;
    for (std::size_t i = 0; i < most_marks_a_round; ++i) many += "1,2,3,4\n";
    CHECK(read_marks(many));
    const MarkFileFault marks = read_marks(many + "1,2,3,4\n").fault;
    CHECK(marks.kind == Kind::too_many_marks);
    CHECK(marks.line == most_marks_a_round + 2);
    const MarkFileFault line = read_marks(std::string(longest_mark_line + 1, 'x')).fault;
    const MarkFileFault file = read_marks(std::string(largest_mark_file + 1, '\n')).fault;
    for (const Language language : {Language::english, Language::spanish}) {
        const auto limit = [&](const MarkFileFault& fault, std::size_t most) {
            const std::string said = fault_sentence(language, fault);
            CHECK(said.find(std::to_string(most)) != std::string::npos);
            return said;
        };
        const std::set<std::string> sentences{
            limit(rows, most_mark_lines), limit(marks, most_marks_a_round),
            limit(line, longest_mark_line), limit(file, largest_mark_file)};
        CHECK(sentences.size() == 4);
    }
}
