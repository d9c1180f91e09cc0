// Jobs, press profiles and edits as JSON text.
//
// Reading is strict: what isn't understood, isn't there, is there twice or lies outside its limits
// is refused with its path, what was found and what was expected, and nothing of the text is used.
// Limits of numbers are those of core/fields.h. The format is described by
// assets/schemas/job.schema.json: lengths mm, angles degrees, speeds mm/s, times s.
//
// Writing is pretty, in an order that never changes and without the locale; reading what was
// written gives back exactly the same value.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/edit.h"
#include "core/job.h"

namespace carriageway {

enum class Language; // app/text

/// Version of the format that is written, and the newest that is read.
inline constexpr int job_format = 1;

/// Largest text that is read, bytes. Ours: the largest job that core accepts is smaller.
inline constexpr std::size_t largest_text = 16u * 1024u * 1024u;

/// Objects and lists within one another that are read. Ours: a job needs 5.
inline constexpr int deepest_text = 16;

/// Values that are read. Ours: 64 heads with outlines of 2000 corners have fewer.
inline constexpr std::size_t most_values = 500'000;

/// What a place in the text should have held.
enum class Shape {
    none,
    object,
    list,
    number,
    whole_number,
    text,
    truth,  ///< true or false
    colour, ///< "#RRGGBB"
};

/// Why a text was refused. Strings are as in the text or figures with units, in no language;
/// fault_sentence() puts them into words.
struct ReadFault {
    enum class Kind {
        none,
        empty,           ///< nothing but white space
        too_large,       ///< found: bytes; expected: the limit
        wrong_encoding,  ///< found: the encoding or the byte; expected: UTF-8
        syntax,          ///< found: what stands there; line and column say where
        trailing_text,   ///< found: what follows the end
        too_deep,        ///< expected: levels
        too_many_values, ///< more values than most_values, or too long a list; expected: how many
        duplicate_key,   ///< path: of the second one
        not_finite,      ///< NaN, Infinity or a number too large for any computer
        wrong_document,  ///< not a job (or press, or edit); expected: the key that holds its version,
                         ///< found: that of another document, if it is one
        newer_version,   ///< found: its version; expected: the newest that is read
        unknown_field,   ///< expected: the key that was probably meant, or empty
        missing_field,   ///< expected: the fields of which one must be there, where there is a choice
        wrong_type,      ///< found: the value; shape: what was expected
        out_of_range,    ///< expected: "10 … 2000"; both in the unit of `quantity`
        wrong_choice,    ///< expected: the choices, as in the text
        wrong_length,    ///< a list with too few or too many; expected: how many
        bad_text,        ///< a name too long; expected: bytes
        both_given,      ///< two fields of which only one may be there; path: of the second
        wrong_order,     ///< expected: "> 4" or "< 380", in the unit of `quantity`
        taken,           ///< an id or a station that an earlier head has, or a station that is used
                         ///< for something else; expected: that use, as in the text, or empty
        not_an_outline,  ///< corners whose edges cross or touch, or that enclose next to nothing
        repeated,        ///< what may stand in its list once only, a second time
        out_of_order,    ///< found: an entry that must stand before the one in `expected`
        own_text,        ///< a step of one's own without a text, or a usual one with one
        not_allowed,     ///< core refused it for another reason, `refusal`
        not_as_claimed,  ///< an exercise's job has other faults than it says
        // Of links (job_link.h):
        not_a_link,      ///< no job stands in it
        newer_link,      ///< found: its version; expected: the newest that is read
        damaged_link,    ///< cut short or changed on its way
        link_too_large,  ///< expected: the limit, bytes
    };
    Kind kind = Kind::none;
    std::string path;     ///< such as heads[2].image.width_mm; empty: the text as a whole
    std::string found;    ///< shortened to about 40 characters
    std::string expected;
    Shape shape = Shape::none;          ///< for wrong_type
    std::optional<Quantity> quantity;   ///< where found and expected are numbers with a unit
    std::optional<Refusal> refusal;     ///< for not_allowed
    std::size_t line = 0;   ///< 1 for the first; 0: not known
    std::size_t column = 0; ///< in characters, 1 for the first; 0: not known
};

struct ReadJob {
    std::optional<Job> job; ///< empty when refused
    ReadFault fault;
    explicit operator bool() const { return job.has_value(); }
};

struct ReadPress {
    std::optional<PressProfile> press;
    ReadFault fault;
    explicit operator bool() const { return press.has_value(); }
};

struct ReadEdit {
    std::optional<Edit> edit;
    ReadFault fault;
    explicit operator bool() const { return edit.has_value(); }
};

/// Reads a job. One that is returned is accepted by fault_of().
ReadJob read_job(std::string_view text);

/// Reads a press profile by itself.
ReadPress read_press(std::string_view text);

/// Reads an edit. It is well formed; whether it can be done to a job, apply() says.
ReadEdit read_edit(std::string_view text);

/// Writes a job that fault_of() accepts; others are written as well, but may be refused when read.
/// UTF-8, ends with a line feed.
std::string write_job(const Job& job);

/// The same in as few bytes as it takes: no white space, no line feed.
std::string write_job_compact(const Job& job);

std::string write_press(const PressProfile& press);

/// The same for an edit, on one line.
std::string write_edit(const Edit& edit);

/// One or two sentences that name the place, what was found and what was expected.
std::string fault_sentence(Language language, const ReadFault& fault);

} // namespace carriageway
