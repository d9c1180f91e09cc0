#include "app/records/document.h"

#include <algorithm>

#include "app/records/exercise_file.h"
#include "app/records/job_form.h"

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

const JsonNode* member(const JsonNode& object, std::string_view key) {
    const auto at = std::find(object.keys.begin(), object.keys.end(), key);
    if (at == object.keys.end()) return nullptr;
    return &object.items[static_cast<std::size_t>(at - object.keys.begin())];
}

ReadFault fault_at(Kind kind, std::string path, std::string found, std::string expected) {
    ReadFault fault;
    fault.kind = kind;
    fault.path = std::move(path);
    fault.found = std::move(found);
    fault.expected = std::move(expected);
    return fault;
}

}  // namespace

const JsonNode& node_at(const JsonNode& root, std::string_view path) {
    const JsonNode* node = &root;
    while (!path.empty()) {
        const JsonNode* next = nullptr;
        if (path[0] == '[') {
            const std::size_t close = path.find(']');
            std::size_t index = 0;
            for (const char digit : path.substr(1, close - 1)) {
                index = index * 10 + static_cast<std::size_t>(digit - '0');
            }
            if (index < node->items.size()) next = &node->items[index];
            path.remove_prefix(close + 1);
        } else {
            const std::size_t end = std::min(path.find_first_of(".["), path.size());
            next = member(*node, path.substr(0, end));
            path.remove_prefix(end);
        }
        if (!path.empty() && path[0] == '.') path.remove_prefix(1);
        if (next == nullptr) return *node;
        node = next;
    }
    return *node;
}

ReadFault version_fault(const JsonNode& root, const char* key, int newest) {
    ReadFault fault;
    if (root.kind != JsonNode::Kind::object) return fault;  // told by the reader
    const JsonNode* version = member(root, key);
    if (version == nullptr) {
        std::string found;
        for (const char* other : {job_key, press_key, edit_key, exercise_key, result_key}) {
            if (member(root, other) != nullptr) found = other;
        }
        return fault_at(Kind::wrong_document, {}, found, key);
    }
    if (version->kind == JsonNode::Kind::number && version->number > newest) {
        return fault_at(Kind::newer_version, key, shown(*version), std::to_string(newest));
    }
    return fault;
}

}  // namespace carriageway
