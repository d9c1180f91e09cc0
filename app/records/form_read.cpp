#include "app/records/form_read.h"

#include <algorithm>
#include <cmath>

#include "app/records/expected_text.h"
#include "app/records/misspelled.h"

namespace carriageway {
namespace {

using Kind = ReadFault::Kind;

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

}  // namespace

FormReader::FormReader(const JsonNode& root) {
    if (root.kind == JsonNode::Kind::object) {
        open(root, {});
        return;
    }
    item_ = &root;
    refuse("", root, Kind::wrong_type, {});
    fault_.shape = Shape::object;
}

std::string FormReader::path_to(const char* key) const {
    return key[0] == '\0' ? item_path_ : path_with(open_.back().path, key);
}

void FormReader::refuse(const char* key, const JsonNode& node, Kind kind, std::string expected) {
    if (stopped()) return;
    fault_.kind = kind;
    fault_.path = path_to(key);
    fault_.found = shown(node);
    fault_.expected = std::move(expected);
    fault_end_ = node.end;
}

void FormReader::miss(const char* key, std::string expected) {
    ReadFault& missing = open_.back().missing;
    if (missing.kind != Kind::none) return;
    missing.kind = Kind::missing_field;
    missing.path = path_with(open_.back().path, key);
    missing.expected = std::move(expected);
}

const JsonNode* FormReader::look(const char* key) const {
    if (key[0] == '\0') return item_;
    const JsonNode& object = *open_.back().node;
    const auto at = std::find(object.keys.begin(), object.keys.end(), key);
    if (at == object.keys.end()) return nullptr;
    return &object.items[static_cast<std::size_t>(at - object.keys.begin())];
}

// Whether something that may be left out is; it is known from then on.
bool FormReader::left_out(const char* key) {
    if (stopped() || look(key) != nullptr) return false;
    open_.back().known.emplace_back(key);
    return true;
}

// The value of a key, or nullptr where there is none or of another kind than wanted.
const JsonNode* FormReader::take(const char* key, JsonNode::Kind kind, Shape shape) {
    if (stopped()) return nullptr;
    if (key[0] != '\0') open_.back().known.emplace_back(key);
    const JsonNode* node = look(key);
    if (node == nullptr) {
        miss(key, {});
        return nullptr;
    }
    if (node->kind != kind) {
        refuse(key, *node, Kind::wrong_type, {});
        fault_.shape = shape;
        return nullptr;
    }
    return node;
}

void FormReader::open(const JsonNode& node, std::string path) {
    open_.push_back({&node, std::move(path), {}, {}});
}

// What is there without having been asked for is unknown; that is told before what is missing,
// since a misspelled key is both.
void FormReader::close() {
    const Open& object = open_.back();
    for (std::size_t i = 0; i < object.node->keys.size() && !stopped(); ++i) {
        const std::string& key = object.node->keys[i];
        if (std::find(object.known.begin(), object.known.end(), key) != object.known.end()) continue;
        std::vector<std::string> absent;
        for (const std::string& known : object.known) {
            if (look(known.c_str()) == nullptr) absent.push_back(known);
        }
        fault_.kind = Kind::unknown_field;
        fault_.path = path_with(object.path, key);
        fault_.found = shown(object.node->items[i]);
        fault_.expected = meant_key(key, absent);
        fault_end_ = object.node->items[i].end;
    }
    if (!stopped() && object.missing.kind != Kind::none) {
        fault_ = object.missing;
        fault_end_ = object.node->end;
    }
    open_.pop_back();
}

ReadFault FormReader::finish() {
    if (!open_.empty()) close();
    return fault_;
}

void FormReader::object(const char* key, const std::function<void()>& members) {
    const JsonNode* node = take(key, JsonNode::Kind::object, Shape::object);
    if (node == nullptr) return;
    open(*node, path_to(key));
    members();
    close();
}

void FormReader::optional_object(const char* key, bool& there,
                                 const std::function<void()>& members) {
    if (stopped()) return;
    open_.back().known.emplace_back(key);
    there = look(key) != nullptr;
    if (there) object(key, members);
}

void FormReader::one_of(const std::vector<Way>& ways, std::size_t) {
    if (stopped()) return;
    const Way* chosen = nullptr;
    std::string all;
    for (const Way& way : ways) {
        const char* present = nullptr;
        for (std::size_t i = 0; i < way.keys.size(); ++i) {
            if (present == nullptr && look(way.keys[i]) != nullptr) present = way.keys[i];
            all += (all.empty() ? "" : (i > 0 ? " + " : " | ")) + std::string(way.keys[i]);
        }
        if (present == nullptr) continue;
        if (chosen != nullptr) {
            refuse(present, *look(present), Kind::both_given, all);
            return;
        }
        chosen = &way;
    }
    if (chosen != nullptr) {
        chosen->describe();
        return;
    }
    for (const Way& way : ways) {
        open_.back().known.insert(open_.back().known.end(), way.keys.begin(), way.keys.end());
    }
    miss(ways.front().keys.front(), all);
}

void FormReader::number(const char* key, double& value, const NumberRange& range) {
    if (range.usual && left_out(key)) {
        value = *range.usual;
        return;
    }
    const JsonNode* node = take(key, JsonNode::Kind::number, Shape::number);
    if (node == nullptr) return;
    const double number = node->number * range.factor;
    const bool above = range.above_least ? number > range.least : number >= range.least;
    if (above && number <= range.most) {
        value = number;
        return;
    }
    refuse(key, *node, Kind::out_of_range, range_text(range));
    fault_.quantity = range.quantity;
}

void FormReader::whole(const char* key, std::int64_t& value, const WholeRange& range) {
    if (range.usual && left_out(key)) {
        value = *range.usual;
        return;
    }
    const JsonNode* node = take(key, JsonNode::Kind::number, Shape::whole_number);
    if (node == nullptr) return;
    if (node->number != std::floor(node->number)) {
        refuse(key, *node, Kind::wrong_type, {});
        fault_.shape = Shape::whole_number;
        return;
    }
    const bool inside = node->number >= static_cast<double>(range.least) &&
                        node->number <= static_cast<double>(range.most);
    if (inside) {
        value = static_cast<std::int64_t>(node->number);
    } else {
        refuse(key, *node, Kind::out_of_range, range_text(range));
    }
}

void FormReader::truth(const char* key, bool& value) {
    const JsonNode* node = take(key, JsonNode::Kind::truth, Shape::truth);
    if (node != nullptr) value = node->truth;
}

void FormReader::text(const char* key, std::string& value, const TextSize& size) {
    if (size.optional && left_out(key)) {
        value.clear();
        return;
    }
    const JsonNode* node = take(key, JsonNode::Kind::text, Shape::text);
    if (node == nullptr) return;
    if (node->text.size() > size.most) {
        refuse(key, *node, Kind::bad_text, std::to_string(size.most));
    } else {
        value = node->text;
    }
}

void FormReader::colour(const char* key, std::uint32_t& value) {
    const JsonNode* node = take(key, JsonNode::Kind::text, Shape::colour);
    if (node == nullptr) return;
    std::uint32_t colour = 0;
    bool good = node->text.size() == 7 && node->text[0] == '#';
    for (std::size_t i = 1; good && i < 7; ++i) {
        const int digit = hex_digit(node->text[i]);
        good = digit >= 0;
        colour = colour * 16 + static_cast<std::uint32_t>(digit);
    }
    if (good) {
        value = colour;
    } else {
        refuse(key, *node, Kind::wrong_type, {});
        fault_.shape = Shape::colour;
    }
}

void FormReader::choice(const char* key, std::size_t& index, const Choices& choices) {
    const JsonNode* node = take(key, JsonNode::Kind::text, Shape::text);
    if (node == nullptr) return;
    const auto at = std::find_if(choices.begin(), choices.end(),
                                 [&](const char* choice) { return node->text == choice; });
    if (at != choices.end()) {
        index = static_cast<std::size_t>(at - choices.begin());
    } else {
        refuse(key, *node, Kind::wrong_choice, choices_text(choices, node->text));
    }
}

void FormReader::optional_truth(const char* key, bool& value, bool usual) {
    value = usual;
    if (!left_out(key)) truth(key, value);
}

void FormReader::optional_choice(const char* key, std::size_t& index, const Choices& choices,
                                 std::size_t usual) {
    index = usual;
    if (!left_out(key)) choice(key, index, choices);
}

void FormReader::list(const char* key, std::size_t, const ListSize& allowed,
                      const std::function<void(std::size_t)>& resize,
                      const std::function<void(std::size_t)>& item) {
    if (allowed.optional && left_out(key)) {
        resize(0);
        return;
    }
    const JsonNode* node = take(key, JsonNode::Kind::list, Shape::list);
    if (node == nullptr) return;
    const std::size_t size = node->items.size();
    if (size < allowed.least || size > allowed.most) {
        refuse(key, *node, Kind::wrong_length, size_text(allowed));
        fault_.found = std::to_string(size);
        return;
    }
    resize(size);
    const JsonNode* item_around = item_;
    const std::string path_around = item_path_;
    const std::string path = path_to(key);
    for (std::size_t i = 0; i < size && !stopped(); ++i) {
        item_ = &node->items[i];
        item_path_ = path_with(path, i);
        item(i);
    }
    item_ = item_around;
    item_path_ = path_around;
}

}  // namespace carriageway
