// One run of the command line: its streams, its language, and how errors are said.
#pragma once

#include <string>
#include <string_view>

#include "app/records/command_line.h"

namespace carriageway {

/// What every command of one run shares.
struct Console {
    const CommandServices& services;
    Language language = Language::english;
    LengthUnit unit = LengthUnit::mm;
    bool json = false;
    std::string command;  ///< "check"; empty when there is none

    std::string text(Word key) const { return std::string(word(language, key)); }

    /// Prints "carriageway: subject: message" as an error; without a subject "carriageway:
    /// message". Returns exit_trouble.
    int complain(std::string_view subject, std::string_view message) const;

    /// Prints an error about the arguments, and where help is. Returns exit_trouble.
    int misuse(std::string_view message) const;
};

/// Text fit for a terminal: characters that would steer it, and bytes that are not UTF-8, become
/// "?".
std::string printable(std::string_view text);

/// Characters of a UTF-8 text.
std::size_t characters_in(std::string_view text);

/// Writes bytes to standard output.
void write_out(const Console& console, std::string_view bytes);

}  // namespace carriageway
