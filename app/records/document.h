// Documents as JSON text: one object whose first key says what it is and in which version.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "app/records/exchange.h"
#include "app/records/form_read.h"
#include "app/records/form_write.h"

namespace carriageway {

/// The node at a path such as heads[2].image, as far as the tree has it.
const JsonNode& node_at(const JsonNode& root, std::string_view path);

/// Whether the text is the document of this key, in a version up to `newest`. Kind::none: it is, or
/// it is no object, which the reader of its form tells.
ReadFault version_fault(const JsonNode& root, const char* key, int newest);

/// The first thing that core has against a job each of whose fields was read; its path is that in a
/// job file.
std::optional<ReadFault> fault_of_whole(const Job& job);

/// Reads a document's fields into `value`; Kind::none when all was right. `describe` walks along
/// its form (form.h); `check` says what is wrong with the whole, with its path.
template <typename Value, typename Describe, typename Check>
ReadFault read_document(std::string_view text, const char* key, int newest, Value& value,
                        Describe describe, Check check) {
    JsonNode root;
    ReadFault fault = parse_json(text, root);
    if (fault.kind != ReadFault::Kind::none) return fault;
    fault = version_fault(root, key, newest);
    if (fault.kind != ReadFault::Kind::none) {
        fault.line = line_of(text, node_at(root, fault.path).end);
        return fault;
    }
    FormReader reader(root);
    std::int64_t version = newest;
    reader.whole(key, version, {1, newest});
    describe(reader, value);
    fault = reader.finish();
    if (fault.kind != ReadFault::Kind::none) {
        fault.line = line_of(text, reader.fault_end());
        return fault;
    }
    if (auto found = check(value)) {
        fault = std::move(*found);
        fault.line = line_of(text, node_at(root, fault.path).end);
    }
    return fault;
}

/// Ends with a line feed.
template <typename Value, typename Describe>
std::string write_document(const char* key, int version, Value value, Describe describe,
                           bool pretty) {
    FormWriter writer(pretty);
    std::int64_t number = version;
    writer.whole(key, number, {});
    describe(writer, value);
    return writer.finish();
}

} // namespace carriageway
