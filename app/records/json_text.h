// JSON text as a tree, read strictly: one value, UTF-8 without a byte order mark, no key twice in
// an object, numbers finite, depth and size limited. RFC 8259 beyond that.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/records/exchange.h"
#include "app/records/json_piece.h"

namespace carriageway {

/// One value of the text.
struct JsonNode {
    enum class Kind : std::uint8_t { null, truth, number, text, object, list };
    Kind kind = Kind::null;
    bool truth = false;
    double number = 0.0;
    std::string text;              ///< a text's characters; a number as it was written
    std::vector<std::string> keys; ///< of an object, in the order of the text
    std::vector<JsonNode> items;   ///< of an object (one a key) or a list
    std::size_t end = 0; ///< bytes of the whole text up to the end of the value (of its opening
                         ///< bracket for objects and lists)
};

/// Reads the whole text into `root`. Kind::none: it was read; otherwise `root` is of no use.
ReadFault parse_json(std::string_view text, JsonNode& root);

/// A value for a message: as in the text, shortened, control characters escaped.
std::string shown(const JsonNode& node);

/// A path with one more key, or one more index.
std::string path_with(std::string_view path, std::string_view key);
std::string path_with(std::string_view path, std::size_t index);

} // namespace carriageway
