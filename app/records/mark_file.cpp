#include "app/records/mark_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "app/records/json_piece.h"
#include "app/text/measure.h"
#include "core/fields.h"
#include "core/job_check.h"

namespace carriageway {

namespace {

using Kind = MarkFileFault::Kind;

constexpr std::array<std::string_view, 6> headings{"nominal_x_mm",  "nominal_y_mm", "measured_x_mm",
                                                   "measured_y_mm", "platen",       "turn"};
constexpr std::size_t places = 4; ///< of the headings, those that must be there
constexpr Field farthest_place = Field::image_offset_x; ///< places go as far as this number does

/// A field, and at which byte of the text it begins.
struct Cell {
    std::string text;
    std::size_t at = 0;
};

/// One line of fields, and where it ends.
struct Line {
    std::vector<Cell> cells;
    std::size_t end = 0;
};

MarkFileFault fault_at(Kind kind, std::string_view text, std::size_t at,
                       std::string_view found = {}, std::string limit = {}) {
    return {kind, line_of(text, at), column_of(text, at), shortened(found), std::move(limit)};
}

/// Cuts a text into lines of fields as RFC 4180 has it; empty lines are passed over.
class CsvReader {
  public:
    explicit CsvReader(std::string_view text) : text_(text) {}

    /// The next line; nothing at the end or after a fault.
    std::optional<Line> next(MarkFileFault& fault) {
        while (at_ < text_.size()) {
            Line line;
            if (!cells(line, fault)) return std::nullopt;
            if (line.cells.size() > 1 || !line.cells.front().text.empty()) return line;
        }
        return std::nullopt;
    }

  private:
    bool cells(Line& line, MarkFileFault& fault) {
        for (;;) {
            Cell cell{{}, at_};
            const bool read =
                at_ < text_.size() && text_[at_] == '"' ? quoted(cell, fault) : plain(cell, fault);
            if (!read) return false;
            line.cells.push_back(std::move(cell));
            if (at_ >= text_.size() || text_[at_] != ',') break;
            ++at_;
        }
        line.end = at_;
        return skip_line_end(fault);
    }

    bool line_end() const { return text_[at_] == '\n' || text_[at_] == '\r'; }

    bool skip_line_end(MarkFileFault& fault) {
        if (at_ >= text_.size()) return true;
        if (!line_end()) { // something follows a closing quote
            fault = fault_at(Kind::quote, text_, at_, text_.substr(at_, 1));
            return false;
        }
        if (text_[at_] == '\r') ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++at_;
        return true;
    }

    bool plain(Cell& cell, MarkFileFault& fault) {
        for (; at_ < text_.size() && text_[at_] != ',' && !line_end(); ++at_) {
            if (text_[at_] == '"') {
                fault = fault_at(Kind::quote, text_, at_, "\"");
                return false;
            }
            cell.text += text_[at_];
        }
        return true;
    }

    bool quoted(Cell& cell, MarkFileFault& fault) {
        for (++at_; at_ < text_.size(); ++at_) {
            if (text_[at_] != '"') {
                cell.text += text_[at_];
            } else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
                cell.text += text_[at_++];
            } else {
                ++at_;
                return true;
            }
        }
        fault = fault_at(Kind::quote, text_, cell.at, "\"");
        return false;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

/// What is wrong with the text before it is cut into fields.
MarkFileFault text_fault(std::string_view text) {
    const std::size_t valid = utf8_length(text);
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        if (valid < end) return fault_at(Kind::not_utf8, text, valid);
        if (end - at > longest_mark_line)
            return fault_at(Kind::long_line, text, at, {}, std::to_string(longest_mark_line));
        const std::size_t stop = text.substr(at, end - at).find('\r');
        if (stop != std::string_view::npos && (at + stop + 1 < end || end == text.size()))
            return fault_at(Kind::line_end, text, at + stop);
        at = end + 1;
    }
    return {};
}

/// Which field of a line holds which heading; -1: none.
using Columns = std::array<int, headings.size()>;

MarkFileFault read_headings(std::string_view text, const Line& line, Columns& columns) {
    columns.fill(-1);
    for (std::size_t i = 0; i < line.cells.size(); ++i) {
        const Cell& cell = line.cells[i];
        const auto found = std::find(headings.begin(), headings.end(), cell.text);
        if (found == headings.end()) return fault_at(Kind::heading, text, cell.at, cell.text);
        const auto index = static_cast<std::size_t>(found - headings.begin());
        if (columns[index] >= 0) return fault_at(Kind::repeated, text, cell.at, cell.text);
        columns[index] = static_cast<int>(i);
    }
    const bool by_platen = columns[4] >= 0 || columns[5] >= 0;
    for (std::size_t i = 0; i < (by_platen ? headings.size() : places); ++i)
        if (columns[i] < 0) return fault_at(Kind::missing_column, text, line.end, headings[i]);
    return {};
}

/// A plain number: read_number() also takes fractions and commas, which a file may not have.
std::optional<double> plain_number(const std::string& text) {
    if (text.empty() || text.find_first_not_of("0123456789.+-eE") != std::string::npos)
        return std::nullopt;
    const std::size_t power = text.find_first_of("eE");
    std::optional<double> value = read_number(text.substr(0, power));
    if (!value || power == std::string::npos) return value;
    const std::optional<double> exponent = read_number(text.substr(power + 1));
    if (!exponent || *exponent != std::round(*exponent) || std::abs(*exponent) > 12.0)
        return std::nullopt;
    return *value * std::pow(10.0, *exponent);
}

/// The number of one field, in the column of a heading.
MarkFileFault read_cell(std::string_view text, const Cell& cell, std::size_t heading,
                        double& number) {
    const std::optional<double> value = plain_number(cell.text);
    if (heading >= places) {
        if (!value || *value != std::round(*value) || *value < 1.0 || *value > most_number)
            return fault_at(Kind::whole, text, cell.at, cell.text, std::to_string(most_number));
    } else if (!value) {
        return fault_at(Kind::number, text, cell.at, cell.text);
    } else if (!accepts(farthest_place, *value)) {
        return fault_at(Kind::out_of_range, text, cell.at, cell.text,
                        format_number(info_of(farthest_place).most, 0));
    }
    number = *value;
    return {};
}

MarkFileFault read_line(std::string_view text, const Line& line, const Columns& columns,
                        std::vector<MarkRound>& rounds) {
    std::array<double, headings.size()> numbers{};
    for (std::size_t i = 0; i < headings.size(); ++i) {
        if (columns[i] < 0) continue;
        const Cell& cell = line.cells[static_cast<std::size_t>(columns[i])];
        MarkFileFault fault = read_cell(text, cell, i, numbers[i]);
        if (fault.kind != Kind::none) return fault;
    }
    const int platen = static_cast<int>(numbers[4]), turn = static_cast<int>(numbers[5]);
    auto round = std::find_if(rounds.begin(), rounds.end(), [&](const MarkRound& one) {
        return one.platen == platen && one.turn == turn;
    });
    if (round == rounds.end()) {
        rounds.push_back({platen, turn, {}, {}, true});
        round = rounds.end() - 1;
    }
    if (round->marks.size() >= most_marks_a_round)
        return fault_at(Kind::too_many_marks, text, line.cells.front().at, {},
                        std::to_string(most_marks_a_round));
    round->marks.push_back({{numbers[0], numbers[1]}, {numbers[2], numbers[3]}});
    return {};
}

/// The lines after the headings.
void read_lines(std::string_view text, CsvReader& reader, const Columns& columns, std::size_t count,
                ReadMarks& out) {
    std::size_t lines = 0;
    while (out) {
        const std::optional<Line> line = reader.next(out.fault);
        if (!line) break;
        const std::vector<Cell>& cells = line->cells;
        if (cells.size() != count) {
            // At the first that is too many, or where the missing ones should be.
            const std::size_t at = cells.size() > count ? cells[count].at : line->end;
            out.fault = fault_at(Kind::columns, text, at, std::to_string(cells.size()),
                                 std::to_string(count));
        } else if (++lines > most_mark_lines) {
            out.fault = fault_at(Kind::too_many_lines, text, cells.front().at, {},
                                 std::to_string(most_mark_lines));
        } else {
            out.fault = read_line(text, *line, columns, out.rounds);
        }
    }
    if (out && lines == 0) out.fault.kind = Kind::no_marks;
}

} // namespace

ReadMarks read_marks(std::string_view text) {
    ReadMarks out;
    if (text.size() > largest_mark_file) {
        out.fault = {Kind::too_large, 0, 0, {}, std::to_string(largest_mark_file)};
        return out;
    }
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    out.fault = text_fault(text);
    if (!out) return out;
    CsvReader reader(text);
    Columns columns{};
    const std::optional<Line> first = reader.next(out.fault);
    if (!first) {
        if (out) out.fault.kind = Kind::no_marks;
        return out;
    }
    out.fault = read_headings(text, *first, columns);
    if (out) read_lines(text, reader, columns, first->cells.size(), out);
    if (!out) out.rounds.clear();
    out.by_platen = out && columns[4] >= 0;
    return out;
}

std::string fault_sentence(Language language, const MarkFileFault& fault) {
    const std::string place =
        capitalised(say(language, Word::read_line_column,
                        {std::to_string(fault.line), std::to_string(fault.column)}));
    const auto said = [&](Word key) {
        return say(language, key, {place, fault.found, fault.limit});
    };
    switch (fault.kind) {
    case Kind::none: break;
    case Kind::too_large: return say(language, Word::marks_too_large, {fault.limit});
    case Kind::not_utf8: return said(Word::marks_not_utf8);
    case Kind::no_marks: return std::string(word(language, Word::marks_none));
    case Kind::heading: return said(Word::marks_heading);
    case Kind::repeated: return said(Word::marks_repeated);
    case Kind::missing_column: return said(Word::marks_missing);
    case Kind::columns: return said(Word::marks_columns);
    case Kind::quote: return said(Word::marks_quote);
    case Kind::number: return said(Word::marks_number);
    case Kind::whole: return said(Word::marks_whole);
    case Kind::out_of_range: return said(Word::marks_range);
    case Kind::line_end: return said(Word::marks_line_end);
    case Kind::long_line: return say(language, Word::marks_long_line, {place, fault.limit});
    case Kind::too_many_lines:
        return say(language, Word::marks_too_many_lines, {place, fault.limit});
    case Kind::too_many_marks: return say(language, Word::marks_too_many, {place, fault.limit});
    }
    return {};
}

} // namespace carriageway
