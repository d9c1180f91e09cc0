// A file of registration marks: CSV (RFC 4180) with a line of headings.
//
// Columns, in any order: nominal_x_mm, nominal_y_mm, measured_x_mm, measured_y_mm, in a head's axes
// (x to the right of an operator facing the press centre, y toward the machine, mm), and optionally
// platen and turn (whole numbers, both or neither). One mark a line; lines of one platen and turn
// are one print. Numbers have a point and no locale.
//
// Reading is strict: what isn't understood is refused with its line, and nothing of it is used.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "app/text/words.h"
#include "core/readings.h"

namespace carriageway {

/// Largest file that is read, bytes, and most lines of marks. Ours: far more than anyone reads.
inline constexpr std::size_t largest_mark_file = 1024u * 1024u;
inline constexpr std::size_t most_mark_lines = 10'000;

/// Why a file of marks was refused.
struct MarkFileFault {
    enum class Kind {
        none,
        too_large,
        not_utf8,
        no_marks,       ///< nothing but the headings, or nothing at all
        heading,        ///< found: a column that isn't known or is there twice
        missing_column, ///< found: the one that is missing
        columns,        ///< a line with more or fewer fields than headings
        quote,          ///< a quote that is not closed or stands within a field
        number,         ///< found: what should be a number
        whole,          ///< found: what should be a whole number from 1 to 1000000
        out_of_range,   ///< found: a place beyond 5000 mm
        too_many,       ///< lines, or marks of one print
    };
    Kind kind = Kind::none;
    std::size_t line = 0; ///< 1 for the headings; 0: the file as a whole
    std::string found;
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
