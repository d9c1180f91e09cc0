// A file of registration marks: CSV (RFC 4180) with a line of headings.
//
// Columns, in any order: nominal_x_mm, nominal_y_mm, measured_x_mm, measured_y_mm, in a head's axes
// (x to the right of an operator facing the press centre, y toward the machine, mm), and optionally
// platen and turn (whole numbers, both or neither). One mark a line; lines of one platen and turn
// are one print. Numbers have a point and no locale. Lines end with a line feed, before which a
// carriage return may stand, but not one alone: such a file would be a single line.
//
// Reading is strict: what isn't understood is refused with its line and character, and nothing of
// it is used.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "app/text/words.h"
#include "core/readings.h"

namespace carriageway {

/// The columns that must be there, and those that may, as the line of headings has them.
inline constexpr std::string_view mark_columns =
    "nominal_x_mm,nominal_y_mm,measured_x_mm,measured_y_mm";
inline constexpr std::string_view print_columns = "platen,turn";

/// Largest file that is read and longest line of it, bytes, and most lines of marks. Ours: far more
/// than anyone needs.
inline constexpr std::size_t largest_mark_file = 1024u * 1024u;
inline constexpr std::size_t longest_mark_line = 1000;
inline constexpr std::size_t most_mark_lines = 10'000;

/// Why a file of marks was refused.
struct MarkFileFault {
    enum class Kind {
        none,
        too_large, ///< limit: bytes
        not_utf8,
        no_marks,       ///< nothing but the headings, or nothing at all
        heading,        ///< found: a column that isn't known
        repeated,       ///< found: a column that is there twice
        missing_column, ///< found: the one that is missing
        columns,        ///< found: fields of a line; limit: headings
        quote,          ///< a quote that is not closed or stands within a field
        number,         ///< found: what should be a number
        whole,          ///< found: what should be a whole number from 1 to limit
        out_of_range,   ///< found: a place beyond limit, mm
        line_end,       ///< a carriage return without a line feed
        long_line,      ///< limit: bytes
        too_many_lines, ///< limit: lines of marks
        too_many_marks, ///< limit: marks of one print
    };
    Kind kind = Kind::none;
    std::size_t line = 0;   ///< 1 for the headings; 0: the file as a whole
    std::size_t column = 0; ///< in characters, 1 for the first; 0: likewise
    std::string found{};    ///< shortened
    std::string limit{};
};

struct ReadMarks {
    std::vector<MarkRound> rounds; ///< prints in the order in which they appear
    bool by_platen = false;        ///< the file has platen and turn
    MarkFileFault fault;
    explicit operator bool() const { return fault.kind == MarkFileFault::Kind::none; }
};

/// Reads the bytes of a file. A byte order mark at its start is skipped.
ReadMarks read_marks(std::string_view text);

/// One sentence that says where and what.
std::string fault_sentence(Language language, const MarkFileFault& fault);

} // namespace carriageway
