#include "app/records/fault_book_reader.h"

#include <algorithm>

namespace carriageway {
namespace {

using Kind = JsonNode::Kind;

const char* name_of(Kind kind) {
    switch (kind) {
        case Kind::null: return "null";
        case Kind::truth: return "true or false";
        case Kind::number: return "a number";
        case Kind::text: return "a text";
        case Kind::object: return "an object";
        case Kind::list: return "a list";
    }
    return "";
}

/// What stands for a value that isn't there.
const JsonNode& nothing(Kind kind) {
    static const JsonNode nodes[] = {{Kind::null, {}, {}, {}, {}, {}, {}},
                                     {Kind::truth, {}, {}, {}, {}, {}, {}},
                                     {Kind::number, {}, {}, {}, {}, {}, {}},
                                     {Kind::text, {}, {}, {}, {}, {}, {}},
                                     {Kind::object, {}, {}, {}, {}, {}, {}},
                                     {Kind::list, {}, {}, {}, {}, {}, {}}};
    return nodes[static_cast<std::size_t>(kind)];
}

const JsonNode* find(const JsonNode& node, std::string_view key) {
    for (std::size_t i = 0; i < node.keys.size(); ++i)
        if (node.keys[i] == key) return &node.items[i];
    return nullptr;
}

} // namespace

void BookParts::refuse(const BookNode& at, const std::string& sentence) {
    if (fault_) return;
    FaultBookFault fault;
    fault.what = at.path.empty() ? sentence : at.path + ": " + sentence;
    if (at.node->end > 0) {
        fault.line = line_of(text_, at.node->end - 1);
        fault.column = column_of(text_, at.node->end - 1);
    }
    fault_ = fault;
}

void BookParts::object(const BookNode& at, std::initializer_list<std::string_view> keys) {
    if (at.node->kind != Kind::object) return refuse(at, "an object is wanted here");
    for (std::size_t i = 0; i < at.node->keys.size(); ++i)
        if (std::find(keys.begin(), keys.end(), at.node->keys[i]) == keys.end())
            return refuse(item(at, i), "this key is not known");
}

BookNode BookParts::member(const BookNode& of, std::string_view key, Kind kind) {
    if (!has(of, key)) refuse(of, "\"" + std::string(key) + "\" is missing");
    return optional_member(of, key, kind);
}

BookNode BookParts::optional_member(const BookNode& of, std::string_view key, Kind kind) {
    const JsonNode* found = find(*of.node, key);
    BookNode member{found == nullptr ? &nothing(kind) : found, path_with(of.path, key)};
    if (member.node->kind == kind) return member;
    refuse(member, std::string(name_of(kind)) + " is wanted here");
    return {&nothing(kind), member.path};
}

bool BookParts::has(const BookNode& of, std::string_view key) const {
    return find(*of.node, key) != nullptr;
}

std::string BookParts::text(const BookNode& of, std::string_view key) {
    const BookNode at = member(of, key, Kind::text);
    const std::string& text = at.node->text;
    if (text.empty()) refuse(at, "this text is empty");
    if (text.size() > longest_book_text)
        refuse(at, "this text is longer than " + std::to_string(longest_book_text) + " bytes");
    return text;
}

BookText BookParts::both(const BookNode& of) { return {text(of, "en"), text(of, "es")}; }

std::string BookParts::id(const BookNode& of) {
    const std::string id = text(of, "id");
    const bool plain = std::all_of(id.begin(), id.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
    if (!plain) refuse(of, "an id has small letters, digits and low lines only");
    return id;
}

double BookParts::factor(const BookNode& at) {
    const bool good = at.node->kind == Kind::number && at.node->number >= least_factor &&
                      at.node->number <= most_factor;
    if (good) return at.node->number;
    refuse(at, "a number from 0.02 to 50 is wanted here");
    return 1.0;
}

double BookParts::optional_factor(const BookNode& of, std::string_view key) {
    if (!has(of, key)) return 1.0;
    return factor(optional_member(of, key, Kind::number));
}

BookNode BookParts::item(const BookNode& of, std::size_t index) {
    const bool object = of.node->kind == Kind::object;
    return {&of.node->items[index], object ? path_with(of.path, of.node->keys[index])
                                           : path_with(of.path, index)};
}

} // namespace carriageway
