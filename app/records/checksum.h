// A checksum of stored text: a damaged digit must not be taken for a number.
#pragma once

#include <cstdint>
#include <string_view>

namespace carriageway {

/// FNV-1a of 64 bits, whose constants are those of the Internet draft "The FNV Non-Cryptographic
/// Hash Algorithm" (draft-eastlake-fnv). Every change of a single byte changes it. `before` is the
/// checksum of what goes before the text, when it is taken in parts.
constexpr std::uint64_t checksum_begin = 14695981039346656037ull;
constexpr std::uint64_t checksum_of(std::string_view text, std::uint64_t before = checksum_begin) {
    std::uint64_t sum = before;
    for (char c : text) {
        sum ^= static_cast<unsigned char>(c);
        sum *= 1099511628211ull;
    }
    return sum;
}

} // namespace carriageway
