#include "app/records/carried_text.h"

#include <charconv>

namespace carriageway {

using Kind = ReadFault::Kind;

ReadFault carried_fault(Kind kind, std::string path, std::string found, std::string expected) {
    ReadFault fault;
    fault.kind = kind;
    fault.path = std::move(path);
    fault.found = std::move(found);
    fault.expected = std::move(expected);
    return fault;
}

std::optional<std::uint64_t> seed_of(const std::string& text) {
    std::uint64_t seed = 0;
    const char* const end = text.data() + text.size();
    const std::from_chars_result read = std::from_chars(text.data(), end, seed);
    if (text.empty() || read.ec != std::errc() || read.ptr != end) return std::nullopt;
    return seed;
}

ReadFault seed_fault(const std::string& path, const std::string& text) {
    ReadFault fault = carried_fault(Kind::wrong_type, path, in_quotes(shortened(text)), {});
    fault.shape = Shape::whole_number;
    return fault;
}

} // namespace carriageway
