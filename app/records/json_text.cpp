#include "app/records/json_text.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <nlohmann/json.hpp>

namespace carriageway {
namespace {

using Json = nlohmann::json;
using Kind = ReadFault::Kind;

constexpr std::size_t longest_shown = 40;      // characters of a value in a message
constexpr std::size_t most_members = 100;      // of an object: far more than any has
constexpr std::string_view ellipsis = "\u2026";

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0u) == 0x80u; }

// Cut between characters.
std::string shortened(std::string_view text) {
    std::size_t characters = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (!continues(text[i]) && ++characters > longest_shown) {
            return std::string(text.substr(0, i)).append(ellipsis);
        }
    }
    return std::string(text);
}

// As JSON; bytes that aren't UTF-8 become U+FFFD. C1 controls, which some terminals obey, and all
// else beyond ASCII are escaped when one of them is there.
std::string in_quotes(std::string_view text) {
    bool controls = false;
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        const auto next = static_cast<unsigned char>(text[i + 1]);
        controls |= text[i] == '\xC2' && next >= 0x80 && next < 0xA0;
    }
    return Json(std::string(text)).dump(-1, ' ', controls, Json::error_handler_t::replace);
}

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

bool starts_with_word(std::string_view text, std::string_view word) {
    if (text.size() < word.size()) return false;
    return std::equal(word.begin(), word.end(), text.begin(), [](char a, char b) {
        return a == static_cast<char>(std::tolower(static_cast<unsigned char>(b)));
    });
}

bool names_no_number(std::string_view text) {
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) text.remove_prefix(1);
    return starts_with_word(text, "nan") || starts_with_word(text, "inf");
}

std::size_t column_of(std::string_view text, std::size_t offset) {
    const auto line_start = text.substr(0, offset).rfind('\n');
    const std::size_t from = line_start == std::string_view::npos ? 0 : line_start + 1;
    const auto line = text.substr(from, offset - from);
    return 1 + static_cast<std::size_t>(
                   std::count_if(line.begin(), line.end(), [](char c) { return !continues(c); }));
}

// What would have been right, out of the library's sentence about a syntax error.
std::string expected_token(std::string_view message) {
    const auto at = message.rfind("expected ");
    if (at == std::string_view::npos || message.find("; expected ") == std::string_view::npos) {
        return {};
    }
    const auto token = message.substr(at + 9);
    if (token == "string literal") return "\"\u2026\"";
    if (token == "'}'") return ", }";
    if (token == "']'") return ", ]";
    if (token == "':'") return ":";
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
        fault.found = shortened(found);
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

    // Of the innermost open object or list.
    std::string path() const {
        std::string path;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            const JsonNode& node = *open_[i];
            const bool innermost = i + 1 == open_.size();
            if (innermost) break;
            path = node.kind == JsonNode::Kind::object
                       ? path_with(path, node.keys.back())
                       : path_with(path, node.items.size() - 1);
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
    const std::size_t end = std::min(position, text_.size());
    const bool at_end = position > text_.size();
    const std::size_t fault_at = at_end ? text_.size() : (end > 0 ? end - 1 : 0);
    const std::size_t token_at = end - std::min(end, last_token.size());

    const bool complete = begun_ && open_.empty();
    if (complete && error.id == 101) {
        const auto rest = text_.substr(std::min(token_at, fault_at));
        refuse(Kind::trailing_text, {}, shortened(rest.substr(0, rest.find('\n'))), {});
    } else if (error.id == 406 || names_no_number(text_.substr(token_at))) {
        refuse(Kind::not_finite, path(), shortened(text_.substr(token_at, longest_shown)), {});
    } else {
        refuse(Kind::syntax, path(), at_end ? std::string() : last_token,
               expected_token(error.what()));
    }
    fault.line = line_of(text_, fault_at);
    fault.column = column_of(text_, fault_at);
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

std::size_t utf8_length(std::string_view text) {
    std::size_t i = 0;
    while (i < text.size()) {
        const auto lead = static_cast<unsigned char>(text[i]);
        std::size_t more = 0;
        if (lead >= 0xC2 && lead <= 0xDF) more = 1;
        else if (lead >= 0xE0 && lead <= 0xEF) more = 2;
        else if (lead >= 0xF0 && lead <= 0xF4) more = 3;
        else if (lead >= 0x80) return i;
        if (text.size() - i <= more) return i;
        for (std::size_t k = 1; k <= more; ++k) {
            if (!continues(text[i + k])) return i;
        }
        if (more >= 2) {
            const auto second = static_cast<unsigned char>(text[i + 1]);
            const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
            const bool surrogate = lead == 0xED && second >= 0xA0;
            const bool beyond = lead == 0xF4 && second >= 0x90;
            if (overlong || surrogate || beyond) return i;
        }
        i += more + 1;
    }
    return i;
}

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

std::size_t line_of(std::string_view text, std::size_t offset) {
    const auto before = text.substr(0, offset);
    return 1 + static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n'));
}

}  // namespace carriageway
