#include "app/records/form_write.h"

#include <nlohmann/json.hpp>

namespace carriageway {
namespace {

std::string text_json(const std::string& text) {
    // What isn't UTF-8, which core doesn't accept, is written as U+FFFD rather than thrown at.
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace

FormWriter::FormWriter(bool pretty) : pretty_(pretty) {
    open("", '{');
}

std::string FormWriter::finish() {
    close('}');
    out_ += '\n';
    return std::move(out_);
}

// Where the next item or closing bracket stands.
void FormWriter::new_line() {
    if (!pretty_) return;
    if (on_one_line_) {
        if (!first_) out_ += ' ';
        return;
    }
    out_ += '\n';
    out_.append(static_cast<std::size_t>(level_) * 2, ' ');
}

// The comma, the line and the key before a value.
void FormWriter::begin(const char* key) {
    if (!first_) out_ += ',';
    if (level_ > 0) new_line();
    first_ = false;
    if (key[0] == '\0') return;
    out_ += text_json(key);
    out_ += pretty_ ? ": " : ":";
}

void FormWriter::scalar(const char* key, const std::string& json) {
    begin(key);
    out_ += json;
}

void FormWriter::open(const char* key, char bracket) {
    begin(key);
    out_ += bracket;
    ++level_;
    first_ = true;
}

void FormWriter::close(char bracket) {
    --level_;
    if (!first_ && !on_one_line_) new_line();
    out_ += bracket;
    first_ = false;
}

void FormWriter::object(const char* key, const std::function<void()>& members) {
    open(key, '{');
    members();
    close('}');
}

void FormWriter::optional_object(const char* key, bool& there,
                                 const std::function<void()>& members) {
    if (there) object(key, members);
}

void FormWriter::one_of(const std::vector<Way>& ways, std::size_t chosen) {
    ways.at(chosen).describe();
}

void FormWriter::number(const char* key, double& value, const NumberRange& range) {
    if (value == range.usual) return;
    scalar(key, number_text(number_in_file(value, range.factor).value_or(value / range.factor)));
}

void FormWriter::whole(const char* key, std::int64_t& value, const WholeRange& range) {
    if (value == range.usual) return;
    scalar(key, std::to_string(value));
}

void FormWriter::truth(const char* key, bool& value) {
    scalar(key, value ? "true" : "false");
}

void FormWriter::text(const char* key, std::string& value, const TextSize& size) {
    if (value.empty() && size.optional) return;
    scalar(key, text_json(value));
}

void FormWriter::colour(const char* key, std::uint32_t& value) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string json = "\"#";
    for (int shift = 20; shift >= 0; shift -= 4) json += digits[(value >> shift) & 15u];
    scalar(key, json + '"');
}

void FormWriter::choice(const char* key, std::size_t& index, const Choices& choices) {
    scalar(key, text_json(index < choices.size() ? choices[index] : ""));
}

void FormWriter::optional_truth(const char* key, bool& value, bool usual) {
    if (value != usual) truth(key, value);
}

void FormWriter::optional_choice(const char* key, std::size_t& index, const Choices& choices,
                                 std::size_t usual) {
    if (index != usual) choice(key, index, choices);
}

void FormWriter::list(const char* key, std::size_t size, const ListSize& allowed,
                      const std::function<void(std::size_t)>&,
                      const std::function<void(std::size_t)>& item) {
    if (size == 0 && allowed.optional) return;
    open(key, '[');
    on_one_line_ = allowed.on_one_line;
    for (std::size_t i = 0; i < size; ++i) item(i);
    close(']');
    on_one_line_ = false;
}

}  // namespace carriageway
