// What the files of exercises and of results have in common.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "app/records/document.h"
#include "app/records/exercise_file.h"
#include "app/records/link_text.h"

namespace carriageway {

/// What stands before a result in a link.
inline constexpr std::string_view result_marker = "result=";

/// Digits of 2^64 - 1: seeds are texts, because numbers of JSON don't hold them everywhere.
inline constexpr std::size_t longest_seed = 20;

ReadFault carried_fault(ReadFault::Kind kind, std::string path, std::string found,
                        std::string expected);

/// The seed that a text names; nothing where it is no whole number up to 2^64 - 1.
std::optional<std::uint64_t> seed_of(const std::string& text);
ReadFault seed_fault(const std::string& path, const std::string& text);

/// Reads the text of a link, all of which stands in one line.
template <class Read>
Read read_from_link(std::string_view text, std::string_view marker,
                    Read (*read)(std::string_view)) {
    const LinkText link = read_link_text(text, marker);
    Read out;
    if (link.fault.kind != ReadFault::Kind::none) out.fault = link.fault;
    else out = read(link.text);
    if (out.fault.column == 0) out.fault.line = 0;
    return out;
}

} // namespace carriageway
