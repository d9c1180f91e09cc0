#include "app/text/words.h"

#include <array>
#include <cstddef>

#include "app/text/spare_text.h"

namespace carriageway {
namespace {

constexpr std::size_t word_count = static_cast<std::size_t>(Word::count);

struct Row {
    std::string_view key;
    std::string_view english;
    std::string_view spanish;
};

constexpr std::array<Row, word_count> rows{{
#define WORD(key, english, spanish) {#key, english, spanish},
#include "app/text/catalogue.inc"
#undef WORD
}};

struct Accent {
    char plain;
    const char* accented;
    bool vowel;
};

// Letters of Latin-1, which every font of the program has.
constexpr Accent accents[] = {
    {'a', "á", true},  {'e', "é", true},  {'i', "í", true},  {'o', "ó", true},  {'u', "ú", true},
    {'A', "Á", true},  {'E', "É", true},  {'I', "Í", true},  {'O', "Ó", true},  {'U', "Ú", true},
    {'c', "ç", false}, {'n', "ñ", false}, {'y', "ý", false}, {'C', "Ç", false}, {'N', "Ñ", false},
};

const Accent* accent_of(char letter) {
    for (const Accent& accent : accents) {
        if (accent.plain == letter) return &accent;
    }
    return nullptr;
}

std::size_t characters_in(std::string_view text) {
    std::size_t count = 0;
    for (const char byte : text) {
        if ((static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) ++count;
    }
    return count;
}

/// Accents every letter that has one and doubles the vowels, which makes text about a third
/// longer and leaves its breaks where they were; fills up short words.
std::string pseudo_of(std::string_view english) {
    std::string out = "[";
    bool placeholder = false;
    for (const char letter : english) {
        if (letter == '{') placeholder = true;
        const Accent* accent = placeholder ? nullptr : accent_of(letter);
        if (accent == nullptr) {
            out += letter;
        } else {
            out += accent->accented;
            if (accent->vowel) out += accent->accented;
        }
        if (letter == '}') placeholder = false;
    }
    const std::size_t wanted = (characters_in(english) * 4 + 2) / 3;
    while (characters_in(out) + 1 < wanted)
        out += '~';
    out += ']';
    return out;
}

const std::array<std::string, word_count>& pseudo_words() {
    static const std::array<std::string, word_count> words = [] {
        std::array<std::string, word_count> made;
        for (std::size_t index = 0; index < word_count; ++index) {
            made[index] = pseudo_of(rows[index].english);
        }
        return made;
    }();
    return words;
}

}  // namespace

std::string pseudo_text(std::string_view english) { return pseudo_of(english); }

std::string_view word(Language language, Word key) {
    const std::size_t index = static_cast<std::size_t>(key);
    if (index >= word_count) return {};
    switch (language) {
        case Language::english:
            return rows[index].english;
        case Language::spanish:
            return rows[index].spanish;
        case Language::pseudo:
            return pseudo_words()[index];
    }
    return rows[index].english;
}

std::string in_one_line(const std::vector<std::string>& sentences) {
    std::string line;
    for (const std::string& sentence : sentences) line += (line.empty() ? "" : " ") + sentence;
    return line;
}

std::string say(Language language, Word key, std::initializer_list<std::string_view> arguments) {
    const std::string_view text = word(language, key);
    std::string out = spare_text();
    out.reserve(text.size() + 16 * arguments.size());
    std::size_t said = 0; // of the text, in `out`
    for (std::size_t at = text.find('{'); at < text.size(); at = text.find('{', at + 1)) {
        if (at + 2 >= text.size() || text[at + 2] != '}') continue;
        const std::size_t number = static_cast<std::size_t>(text[at + 1] - '0');
        if (number > 9 || number >= arguments.size()) continue;
        out += text.substr(said, at - said);
        out += arguments.begin()[number];
        said = at + 3;
    }
    out += text.substr(said);
    return out;
}

std::string capitalised(std::string_view text) {
    std::string out(text);
    if (out.empty()) return out;
    if (out[0] >= 'a' && out[0] <= 'z') {
        out[0] = static_cast<char>(out[0] - 'a' + 'A');
        return out;
    }
    // á to þ are U+00E1 to U+00FE: two bytes in UTF-8, their capitals 0x20 below.
    if (out.size() > 1 && out[0] == '\xC3') {
        const unsigned char second = static_cast<unsigned char>(out[1]);
        if (second >= 0xA0U && second <= 0xBEU && second != 0xB7U) {
            out[1] = static_cast<char>(second - 0x20U);
        }
    }
    return out;
}

std::string_view name_of(Word key) {
    const std::size_t index = static_cast<std::size_t>(key);
    return index < word_count ? rows[index].key : std::string_view();
}

Language system_language(std::string_view locale_name) {
    const auto starts = [&](std::string_view prefix) {
        if (locale_name.size() < prefix.size()) return false;
        for (std::size_t at = 0; at < prefix.size(); ++at) {
            char letter = locale_name[at];
            if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
            if (letter == '-') letter = '_';
            if (letter != prefix[at]) return false;
        }
        const char next = locale_name.size() > prefix.size() ? locale_name[prefix.size()] : '\0';
        return next == '\0' || next == '_' || next == '-' || next == '.' || next == '@';
    };
    if (starts("es")) return Language::spanish;
    if (starts("en_xa")) return Language::pseudo;
    return Language::english;
}

}  // namespace carriageway
