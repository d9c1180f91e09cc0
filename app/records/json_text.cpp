#include "app/records/json_text.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <nlohmann/json.hpp>

namespace carriageway {
namespace {

using Json = nlohmann::json;
using Kind = ReadFault::Kind;

constexpr std::size_t most_members = 100; // of an object: far more than any has

// Walks over the text and says how far the reader has come: nlohmann's events don't.
struct CountedByte {
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    const char* at;
    std::size_t* count;

    reference operator*() const { return *at; }
    CountedByte& operator++() {
        ++at;
        ++*count;
        return *this;
    }
    CountedByte operator++(int) {
        CountedByte before = *this;
        ++*this;
        return before;
    }
    bool operator==(const CountedByte& other) const { return at == other.at; }
    bool operator!=(const CountedByte& other) const { return at != other.at; }
};

bool says(std::string_view message, std::string_view words) {
    return message.find(words) != std::string_view::npos;
}

// What would have been right, out of the library's sentence about a syntax error.
std::string expected_token(std::string_view message) {
    if (says(message, "; expected string literal")) return "\"\u2026\"";
    if (says(message, "; expected '}'")) return "\",\" | \"}\"";
    if (says(message, "; expected ']'")) return "\",\" | \"]\"";
    if (says(message, "; expected ':'")) return "\":\"";
    return {};
}

/// Builds the tree, and stops at the first fault.
class TreeBuilder : public nlohmann::json_sax<Json> {
  public:
    TreeBuilder(std::string_view text, JsonNode& root, const std::size_t& read)
        : text_(text), root_(root), read_(read) {}

    ReadFault fault;

    bool null() override { return add(JsonNode::Kind::null, read_) != nullptr; }
    bool boolean(bool value) override {
        JsonNode* node = add(JsonNode::Kind::truth, read_);
        if (node != nullptr) node->truth = value;
        return node != nullptr;
    }
    bool number_integer(std::int64_t value) override {
        return add_number(static_cast<double>(value), std::to_string(value));
    }
    bool number_unsigned(std::uint64_t value) override {
        return add_number(static_cast<double>(value), std::to_string(value));
    }
    bool number_float(double value, const std::string& written) override {
        return add_number(value, written);
    }
    bool string(std::string& value) override {
        JsonNode* node = add(JsonNode::Kind::text, read_);
        if (node != nullptr) node->text = std::move(value);
        return node != nullptr;
    }
    bool binary(binary_t&) override { return false; }  // not in JSON text

    bool start_object(std::size_t) override { return open(JsonNode::Kind::object); }
    bool start_array(std::size_t) override { return open(JsonNode::Kind::list); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(std::string& value) override {
        JsonNode& object = *open_.back();
        if (std::find(object.keys.begin(), object.keys.end(), value) != object.keys.end()) {
            return refuse(Kind::duplicate_key, path_with(path(), value), in_quotes(value), {});
        }
        if (object.keys.size() >= most_members) {
            return refuse(Kind::too_many_values, path(), {}, std::to_string(most_members));
        }
        object.keys.push_back(std::move(value));
        return true;
    }

    bool parse_error(std::size_t position, const std::string& last_token,
                     const Json::exception& error) override;

  private:
    bool refuse(Kind kind, std::string path, std::string found, std::string expected) {
        fault.kind = kind;
        fault.path = std::move(path);
        fault.found = shortened(harmless(found));
        fault.expected = std::move(expected);
        fault.line = line_of(text_, read_);
        return false;
    }

    // The next value's place in the tree.
    JsonNode* add(JsonNode::Kind kind, std::size_t end) {
        if (++values_ > most_values) {
            refuse(Kind::too_many_values, path(), {}, std::to_string(most_values));
            return nullptr;
        }
        JsonNode* node = &root_;
        if (!open_.empty()) {
            open_.back()->items.emplace_back();
            node = &open_.back()->items.back();
        }
        node->kind = kind;
        node->end = end;
        begun_ = true;
        return node;
    }

    bool add_number(double value, std::string written) {
        // The reader has looked at the byte behind a number already.
        JsonNode* node = add(JsonNode::Kind::number, read_ - (read_ < text_.size() ? 1 : 0));
        if (node == nullptr) return false;
        node->number = value;
        node->text = std::move(written);
        return true;
    }

    bool open(JsonNode::Kind kind) {
        if (open_.size() >= static_cast<std::size_t>(deepest_text)) {
            return refuse(Kind::too_deep, path(), {}, std::to_string(deepest_text));
        }
        JsonNode* node = add(kind, read_);
        if (node != nullptr) open_.push_back(node);
        return node != nullptr;
    }

    bool close() {
        open_.pop_back();
        return true;
    }

    // Of the value that is read, or of the object whose next key is.
    std::string path() const {
        std::string path;
        for (const JsonNode* node : open_) {
            const bool innermost = node == open_.back();
            if (node->kind == JsonNode::Kind::list) {
                path = path_with(path, node->items.size() - (innermost ? 0 : 1));
            } else if (!innermost || node->keys.size() > node->items.size()) {
                path = path_with(path, node->keys.back());
            }
        }
        return path;
    }

    std::string_view text_;
    JsonNode& root_;
    const std::size_t& read_;
    std::vector<JsonNode*> open_;
    std::size_t values_ = 0;
    bool begun_ = false;
};

bool TreeBuilder::parse_error(std::size_t position, const std::string& last_token,
                              const Json::exception& error) {
    // `position` counts the byte at fault, and the end of the text as one.
    const bool at_end = position > text_.size();
    const std::size_t fault_at = at_end ? text_.size() : std::max<std::size_t>(position, 1) - 1;
    std::size_t from = word_start(text_, fault_at);
    const std::string word(word_at(text_, from));
    const std::string_view message = error.what();

    if (begun_ && open_.empty() && error.id == 101) {
        const auto rest = text_.substr(from);
        refuse(Kind::trailing_text, {}, std::string(rest.substr(0, rest.find('\n'))), {});
    } else if (error.id == 406 || names_no_number(word)) {
        refuse(Kind::not_finite, path(), word, {});
        fault.line = line_of(text_, from);
        return false;
    } else if (says(message, "invalid string") || says(message, "unexpected string literal")) {
        // The library's token is exact only for strings and numbers; else it drags along what was
        // before it.
        refuse(Kind::syntax, path(), at_end ? std::string() : last_token, expected_token(message));
        from = fault_at;
    } else {
        const bool bare = !word.empty() && in_word(word[0]);
        refuse(Kind::syntax, path(), word.empty() || bare ? word : in_quotes(word),
               expected_token(message));
    }
    fault.line = line_of(text_, from);
    fault.column = column_of(text_, from);
    return false;
}

ReadFault fault_of_encoding(std::string_view text) {
    struct Mark {
        std::string_view bytes;
        const char* name;
    };
    // The longer marks first: that of UTF-32 begins like that of UTF-16.
    static constexpr Mark marks[] = {
        {std::string_view("\xEF\xBB\xBF", 3), "UTF-8 BOM (EF BB BF)"},
        {std::string_view("\xFF\xFE\0\0", 4), "UTF-32"},
        {std::string_view("\0\0\xFE\xFF", 4), "UTF-32"},
        {std::string_view("\xFF\xFE", 2), "UTF-16"},
        {std::string_view("\xFE\xFF", 2), "UTF-16"},
        {std::string_view("\0{", 2), "UTF-16"},
        {std::string_view("{\0", 2), "UTF-16"},
    };
    ReadFault fault;
    fault.expected = "UTF-8";
    for (const Mark& mark : marks) {
        if (text.substr(0, mark.bytes.size()) == mark.bytes) {
            fault.kind = Kind::wrong_encoding;
            fault.found = mark.name;
            return fault;
        }
    }
    const std::size_t valid = utf8_length(text);
    if (valid < text.size()) {
        static constexpr char digits[] = "0123456789ABCDEF";
        const auto byte = static_cast<unsigned char>(text[valid]);
        fault.kind = Kind::wrong_encoding;
        fault.found = {'0', 'x', digits[byte >> 4u], digits[byte & 15u]};
        fault.line = line_of(text, valid);
        fault.column = column_of(text, valid);
    }
    return fault;
}

}  // namespace

ReadFault parse_json(std::string_view text, JsonNode& root) {
    ReadFault fault;
    if (text.size() > largest_text) {
        fault.kind = Kind::too_large;
        fault.found = std::to_string(text.size());
        fault.expected = std::to_string(largest_text);
        return fault;
    }
    fault = fault_of_encoding(text);
    if (fault.kind != Kind::none) return fault;
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        fault.kind = Kind::empty;
        fault.expected.clear();
        return fault;
    }
    std::size_t read = 0;
    TreeBuilder builder(text, root, read);
    const CountedByte first{text.data(), &read};
    const CountedByte last{text.data() + text.size(), &read};
    Json::sax_parse(first, last, &builder);
    return builder.fault;
}

std::string shown(const JsonNode& node) {
    switch (node.kind) {
        case JsonNode::Kind::null: return "null";
        case JsonNode::Kind::truth: return node.truth ? "true" : "false";
        case JsonNode::Kind::number: return shortened(node.text);
        case JsonNode::Kind::text: return shortened(in_quotes(node.text));
        case JsonNode::Kind::object: return node.items.empty() ? "{}" : "{\u2026}";
        case JsonNode::Kind::list: break;
    }
    return node.items.empty() ? "[]" : "[\u2026]";
}

std::string path_with(std::string_view path, std::string_view key) {
    const bool plain = !key.empty() && key.size() <= longest_shown &&
                       std::all_of(key.begin(), key.end(), [](unsigned char c) {
                           return std::isalnum(c) != 0 || c == '_';
                       });
    std::string result(path);
    if (!plain) return result + "[" + shortened(in_quotes(key)) + "]";
    if (!result.empty()) result += '.';
    return result.append(key);
}

std::string path_with(std::string_view path, std::size_t index) {
    return std::string(path) + "[" + std::to_string(index) + "]";
}

}  // namespace carriageway
