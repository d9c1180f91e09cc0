// Pieces of JSON text for a message: where they begin and end, and so that they can be shown.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace carriageway {

constexpr std::size_t longest_shown = 40; ///< characters of a value in a message

/// Whether a byte continues a character of UTF-8.
constexpr bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0u) == 0x80u; }

/// Cut between characters to the longest that is shown.
std::string shortened(std::string_view text);

/// Control characters, which some terminals obey, as question marks.
std::string harmless(std::string_view text);

/// As JSON; bytes that aren't UTF-8 become U+FFFD. C1 controls, which some terminals obey, and all
/// else beyond ASCII are escaped when one of them is there.
std::string in_quotes(std::string_view text);

/// Whether a character belongs to a word or a number.
bool in_word(char c);

/// Where the word or number around a byte begins; the byte itself where it belongs to none.
std::size_t word_start(std::string_view text, std::size_t at);

/// The word, number or single character that begins at a byte.
std::string_view word_at(std::string_view text, std::size_t at);

/// Whether a word stands for no number or an infinite one, as some programs write them.
bool names_no_number(std::string_view word);

/// The line on which byte `offset` of the text stands, 1 for the first.
std::size_t line_of(std::string_view text, std::size_t offset);

/// The character of its line at which it stands, 1 for the first.
std::size_t column_of(std::string_view text, std::size_t offset);

/// Bytes before the first that is not UTF-8 (RFC 3629: shortest form, no surrogates, up to
/// U+10FFFF); the whole length when all is.
std::size_t utf8_length(std::string_view text);

} // namespace carriageway
