#include "app/records/json_piece.h"

#include <algorithm>
#include <cctype>

#include <nlohmann/json.hpp>

namespace carriageway {

std::string shortened(std::string_view text) {
    std::size_t characters = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (!continues(text[i]) && ++characters > longest_shown) {
            return std::string(text.substr(0, i)).append("\u2026");
        }
    }
    return std::string(text);
}

std::string harmless(std::string_view text) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const auto next = static_cast<unsigned char>(i + 1 < text.size() ? text[i + 1] : 0);
        const bool two_bytes = byte == 0xC2 && next >= 0x80 && next < 0xA0;
        const bool control = byte < 0x20 || byte == 0x7F || two_bytes;
        result += control ? '?' : text[i];
        if (two_bytes) ++i;
    }
    return result;
}

std::string in_quotes(std::string_view text) {
    using Json = nlohmann::json;
    bool controls = false;
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        const auto next = static_cast<unsigned char>(text[i + 1]);
        controls |= text[i] == '\xC2' && next >= 0x80 && next < 0xA0;
    }
    return Json(std::string(text)).dump(-1, ' ', controls, Json::error_handler_t::replace);
}

bool in_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '.' || c == '-' ||
           c == '+';
}

std::size_t word_start(std::string_view text, std::size_t at) {
    if (at >= text.size() || !in_word(text[at])) return at;
    while (at > 0 && in_word(text[at - 1])) --at;
    return at;
}

std::string_view word_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && in_word(text[end])) ++end;
    if (end == at && end < text.size()) {
        do ++end;
        while (end < text.size() && continues(text[end]));
    }
    return text.substr(at, end - at);
}

bool names_no_number(std::string_view word) {
    if (!word.empty() && (word[0] == '-' || word[0] == '+')) word.remove_prefix(1);
    std::string small(word);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return small == "nan" || small == "inf" || small == "infinity";
}

std::size_t line_of(std::string_view text, std::size_t offset) {
    const auto before = text.substr(0, offset);
    return 1 + static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n'));
}

std::size_t column_of(std::string_view text, std::size_t offset) {
    const auto line_start = text.substr(0, offset).rfind('\n');
    const std::size_t from = line_start == std::string_view::npos ? 0 : line_start + 1;
    const auto line = text.substr(from, offset - from);
    return 1 + static_cast<std::size_t>(
                   std::count_if(line.begin(), line.end(), [](char c) { return !continues(c); }));
}

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

} // namespace carriageway
