#include "app/records/mark_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "app/text/measure.h"
#include "core/fields.h"
#include "core/job_check.h"

namespace carriageway {

namespace {

using Kind = MarkFileFault::Kind;

constexpr std::array<std::string_view, 6> headings{"nominal_x_mm",  "nominal_y_mm", "measured_x_mm",
                                                   "measured_y_mm", "platen",       "turn"};
constexpr std::size_t places = 4; ///< of the headings, those that must be there
constexpr int most_number = 1'000'000;

/// One line of fields, with where it begins.
struct Line {
    std::size_t number = 0;
    std::vector<std::string> fields;
};

/// Cuts a text into lines of fields as RFC 4180 has it; empty lines are passed over.
class CsvReader {
  public:
    explicit CsvReader(std::string_view text) : text_(text) {}

    /// The next line; nothing at the end or after a fault.
    std::optional<Line> next(MarkFileFault& fault) {
        while (at_ < text_.size()) {
            Line line;
            line.number = ++number_;
            if (!fields(line, fault)) return std::nullopt;
            if (line.fields.size() > 1 || !line.fields.front().empty()) return line;
        }
        return std::nullopt;
    }

  private:
    bool fields(Line& line, MarkFileFault& fault) {
        for (;;) {
            std::string field;
            if (at_ < text_.size() && text_[at_] == '"') {
                if (!quoted(field, line, fault)) return false;
            } else {
                while (at_ < text_.size() && text_[at_] != ',' && !line_end()) field += text_[at_++];
                if (field.find('"') != std::string::npos) {
                    fault = {Kind::quote, line.number, field};
                    return false;
                }
            }
            line.fields.push_back(std::move(field));
            if (at_ < text_.size() && text_[at_] == ',') {
                ++at_;
                continue;
            }
            return skip_line_end(line, fault);
        }
    }

    bool line_end() const { return text_[at_] == '\n' || text_[at_] == '\r'; }

    bool skip_line_end(const Line& line, MarkFileFault& fault) {
        if (at_ >= text_.size()) return true;
        if (!line_end()) { // something follows a closing quote
            fault = {Kind::quote, line.number, std::string(text_.substr(at_, 20))};
            return false;
        }
        if (text_[at_] == '\r') ++at_;
        if (at_ < text_.size() && text_[at_] == '\n') ++at_;
        return true;
    }

    bool quoted(std::string& field, const Line& line, MarkFileFault& fault) {
        ++at_;
        for (; at_ < text_.size(); ++at_) {
            if (text_[at_] == '\n') ++number_;
            if (text_[at_] != '"') {
                field += text_[at_];
            } else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
                field += text_[at_++];
            } else {
                ++at_;
                return true;
            }
        }
        fault = {Kind::quote, line.number, field.substr(0, 20)};
        return false;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t number_ = 0;
};

/// Which field of a line holds which heading; -1: none.
using Columns = std::array<int, headings.size()>;

bool read_headings(const Line& line, Columns& columns, MarkFileFault& fault) {
    columns.fill(-1);
    for (std::size_t i = 0; i < line.fields.size(); ++i) {
        const auto found = std::find(headings.begin(), headings.end(), line.fields[i]);
        const auto index = static_cast<std::size_t>(found - headings.begin());
        if (found == headings.end() || columns[index] >= 0) {
            fault = {Kind::heading, line.number, line.fields[i].substr(0, 40)};
            return false;
        }
        columns[index] = static_cast<int>(i);
    }
    const bool by_platen = columns[4] >= 0 || columns[5] >= 0;
    for (std::size_t i = 0; i < (by_platen ? headings.size() : places); ++i) {
        if (columns[i] >= 0) continue;
        fault = {Kind::missing_column, line.number, std::string(headings[i])};
        return false;
    }
    return true;
}

/// A plain number: read_number() also takes fractions and commas, which a file may not have.
std::optional<double> plain_number(const std::string& text) {
    if (text.empty() || text.find_first_not_of("0123456789.+-eE") != std::string::npos) return std::nullopt;
    const std::size_t power = text.find_first_of("eE");
    std::optional<double> value = read_number(text.substr(0, power));
    if (!value || power == std::string::npos) return value;
    const std::optional<double> exponent = read_number(text.substr(power + 1));
    if (!exponent || *exponent != std::round(*exponent) || std::abs(*exponent) > 12.0) return std::nullopt;
    return *value * std::pow(10.0, *exponent);
}

bool read_line(const Line& line, const Columns& columns, ReadMarks& out) {
    std::array<double, headings.size()> numbers{};
    for (std::size_t i = 0; i < headings.size(); ++i) {
        if (columns[i] < 0) continue;
        const std::string& field = line.fields[static_cast<std::size_t>(columns[i])];
        const std::optional<double> value = plain_number(field);
        const bool whole = i >= places;
        Kind kind = Kind::none;
        if (!value) kind = whole ? Kind::whole : Kind::number;
        else if (whole && (*value != std::round(*value) || *value < 1.0 || *value > most_number))
            kind = Kind::whole;
        else if (!whole && !accepts(Field::image_offset_x, *value)) kind = Kind::out_of_range;
        if (kind != Kind::none) {
            out.fault = {kind, line.number, field.substr(0, 40)};
            return false;
        }
        numbers[i] = *value;
    }
    const int platen = static_cast<int>(numbers[4]), turn = static_cast<int>(numbers[5]);
    auto round = std::find_if(out.rounds.begin(), out.rounds.end(), [&](const MarkRound& one) {
        return one.platen == platen && one.turn == turn;
    });
    if (round == out.rounds.end()) {
        out.rounds.push_back({platen, turn, {}, {}});
        round = out.rounds.end() - 1;
    }
    if (round->marks.size() >= most_marks_a_round) {
        out.fault = {Kind::too_many, line.number, std::to_string(most_marks_a_round)};
        return false;
    }
    round->marks.push_back({{numbers[0], numbers[1]}, {numbers[2], numbers[3]}});
    return true;
}

} // namespace

ReadMarks read_marks(std::string_view text) {
    ReadMarks out;
    if (text.size() > largest_mark_file) {
        out.fault = {Kind::too_large, 0, std::to_string(largest_mark_file)};
        return out;
    }
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    if (!is_utf8(text)) {
        out.fault = {Kind::not_utf8, 0, {}};
        return out;
    }
    CsvReader reader(text);
    Columns columns{};
    const std::optional<Line> first = reader.next(out.fault);
    if (first && !read_headings(*first, columns, out.fault)) return out;
    std::size_t lines = 0;
    while (first && out) {
        const std::optional<Line> line = reader.next(out.fault);
        if (!line) break;
        if (line->fields.size() != first->fields.size()) {
            out.fault = {Kind::columns, line->number, std::to_string(first->fields.size())};
        } else if (++lines > most_mark_lines) {
            out.fault = {Kind::too_many, line->number, std::to_string(most_mark_lines)};
        } else {
            read_line(*line, columns, out);
        }
    }
    if (out && lines == 0) out.fault = {Kind::no_marks, 0, {}};
    if (!out) out.rounds.clear();
    out.by_platen = columns[4] >= 0 && lines > 0;
    return out;
}

std::string fault_sentence(Language language, const MarkFileFault& fault) {
    const std::string line = std::to_string(fault.line);
    switch (fault.kind) {
    case Kind::none: break;
    case Kind::too_large: return say(language, Word::marks_too_large, {fault.found});
    case Kind::not_utf8: return std::string(word(language, Word::marks_not_utf8));
    case Kind::no_marks: return std::string(word(language, Word::marks_none));
    case Kind::heading: return say(language, Word::marks_heading, {line, fault.found});
    case Kind::missing_column: return say(language, Word::marks_missing, {line, fault.found});
    case Kind::columns: return say(language, Word::marks_columns, {line, fault.found});
    case Kind::quote: return say(language, Word::marks_quote, {line, fault.found});
    case Kind::number: return say(language, Word::marks_number, {line, fault.found});
    case Kind::whole: return say(language, Word::marks_whole, {line, fault.found});
    case Kind::out_of_range: return say(language, Word::marks_range, {line, fault.found});
    case Kind::too_many: return say(language, Word::marks_too_many, {line, fault.found});
    }
    return {};
}

} // namespace carriageway
