#include "app/drawing/pdf_letters.h"

#include "app/drawing/fonts.h"

namespace carriageway {

namespace {

/// What CP1252 has from 0x80 to 0x9F; 0: nothing.
constexpr char16_t upper_controls[] = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178,
};
static_assert(sizeof upper_controls == 32 * sizeof(char16_t));

/// The code of a letter in CP1252; 0: it has none. Controls have none: they are not written.
std::uint8_t cp1252(char32_t letter) {
    if ((letter >= 0x20 && letter < 0x7F) || (letter >= 0xA0 && letter <= 0xFF))
        return static_cast<std::uint8_t>(letter);
    for (std::size_t i = 0; i < 32; ++i)
        if (letter != 0 && upper_controls[i] == letter) return static_cast<std::uint8_t>(0x80 + i);
    return 0;
}

constexpr std::uint8_t question = '?';

} // namespace

char32_t take_code_point(std::string_view& text) {
    constexpr char32_t unknown = 0xFFFD;
    constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(0);
    std::size_t count = 0;
    if (first < 0x80)
        count = 1;
    else if (first >= 0xC2 && first < 0xE0)
        count = 2;
    else if (first >= 0xE0 && first < 0xF0)
        count = 3;
    else if (first >= 0xF0 && first < 0xF5)
        count = 4;
    char32_t point = count < 2 ? first : first & (0x7Fu >> count);
    bool good = count > 0 && count <= text.size();
    for (std::size_t i = 1; good && i < count; ++i) {
        good = (byte(i) & 0xC0u) == 0x80u;
        point = point << 6 | (byte(i) & 0x3Fu);
    }
    good = good && point >= least[count] && point <= 0x10FFFF && (point < 0xD800 || point > 0xDFFF);
    text.remove_prefix(good ? count : 1);
    return good ? point : unknown;
}

std::string utf8_of(char32_t point) {
    const auto tail = [&](int shift) {
        return static_cast<char>(0x80u | (point >> shift & 0x3Fu));
    };
    if (point < 0x80) return {static_cast<char>(point)};
    if (point < 0x800) return {static_cast<char>(0xC0u | point >> 6), tail(0)};
    if (point < 0x10000) return {static_cast<char>(0xE0u | point >> 12), tail(6), tail(0)};
    return {static_cast<char>(0xF0u | point >> 18), tail(12), tail(6), tail(0)};
}

void PdfLetters::take(std::string_view text) {
    while (!text.empty()) letters_.insert(take_code_point(text));
}

void PdfLetters::settle(const Shown& shown) {
    codes_.clear();
    extra_.clear();
    replaced_.clear();
    std::array<bool, 256> taken{};
    std::vector<char32_t> others;
    for (const char32_t letter : letters_) {
        const std::uint8_t code = cp1252(letter);
        if (code == 0 || !shown(letter)) {
            others.push_back(letter);
            continue;
        }
        codes_[letter] = code;
        taken[code] = true;
    }
    for (const char32_t letter : others) {
        if (shown(letter)) place(letter, taken);
        if (codes_.count(letter) != 0) continue;
        const char plain = plain_letter(letter);
        codes_[letter] = plain != '\0' ? static_cast<std::uint8_t>(plain) : question;
        replaced_.push_back(utf8_of(letter));
    }
}

/// Gives a letter a free code: one that CP1252 leaves empty, or one of a letter that isn't needed.
void PdfLetters::place(char32_t letter, std::array<bool, 256>& taken) {
    const auto give = [&](std::size_t code) {
        if (taken[code]) return false;
        taken[code] = true;
        codes_[letter] = static_cast<std::uint8_t>(code);
        extra_.emplace_back(static_cast<std::uint8_t>(code), letter);
        return true;
    };
    for (const std::size_t code : {0x81u, 0x8Du, 0x8Fu, 0x90u, 0x9Du})
        if (give(code)) return;
    for (std::size_t code = 0xFF; code > 0xA0; --code)
        if (give(code)) return;
}

std::string PdfLetters::written(std::string_view text) const {
    std::string bytes;
    while (!text.empty()) {
        const auto found = codes_.find(take_code_point(text));
        bytes += static_cast<char>(found == codes_.end() ? question : found->second);
    }
    return bytes;
}

} // namespace carriageway
