// The catalogue: complete, with the same placeholders in every language.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <set>
#include <string>
#include <vector>

#include "app/text/words.h"

using namespace carriageway;

namespace {

std::vector<Word> all_words() {
    std::vector<Word> words;
    for (int index = 0; index < static_cast<int>(Word::count); ++index) {
        words.push_back(static_cast<Word>(index));
    }
    return words;
}

/// The placeholders of a text, each once and in order.
std::set<std::string> placeholders(std::string_view text) {
    std::set<std::string> found;
    for (std::size_t at = 0; at + 2 < text.size(); ++at) {
        if (text[at] == '{' && text[at + 2] == '}') found.insert(std::string(text.substr(at, 3)));
    }
    return found;
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    }));
}

/// Rows that are the same in both languages: units, names of languages, patterns of numbers.
const std::set<std::string_view> same_in_both{
    "contact_tilt_value", "measure_value", "language_english",
    "language_spanish",
    "detail_number",
    // signs, numbers and names of paper
    "stations_cost", "caution_sign", "stoppage_row", "paper_instead", "paper_sides",
    "paper_column_bare", "paper_column_unit", "paper_a4", "no",
    "exercise_seconds", "exercise_minutes", "evidence_seen", "evidence_seen_value", "evidence_of",
    "evidence_minutes", "faults_no",
};

}  // namespace

TEST_CASE("every word has a text in every language") {
    for (const Word key : all_words()) {
        INFO(name_of(key));
        CHECK_FALSE(word(Language::english, key).empty());
        CHECK_FALSE(word(Language::spanish, key).empty());
        CHECK_FALSE(word(Language::pseudo, key).empty());
    }
    CHECK(word(Language::english, Word::count).empty());
}

TEST_CASE("placeholders are the same in every language, and numbered from 0") {
    for (const Word key : all_words()) {
        INFO(name_of(key));
        const std::set<std::string> english = placeholders(word(Language::english, key));
        CHECK(english == placeholders(word(Language::spanish, key)));
        CHECK(english == placeholders(word(Language::pseudo, key)));
        std::size_t number = 0;
        for (const std::string& one : english) {
            CHECK(one == "{" + std::to_string(number) + "}");
            ++number;
        }
        const std::string_view text = word(Language::english, key);
        CHECK(static_cast<std::size_t>(std::count(text.begin(), text.end(), '{')) >=
              english.size());
        CHECK(std::count(text.begin(), text.end(), '{') ==
              std::count(text.begin(), text.end(), '}'));
    }
}

TEST_CASE("nothing is left in English in the Spanish catalogue") {
    for (const Word key : all_words()) {
        INFO(name_of(key));
        const bool same = word(Language::english, key) == word(Language::spanish, key);
        CHECK(same == (same_in_both.count(name_of(key)) == 1));
    }
}

TEST_CASE("no key stands for two texts, and no text has loose ends") {
    std::set<std::string_view> names;
    for (const Word key : all_words()) {
        INFO(name_of(key));
        CHECK(names.insert(name_of(key)).second);
        for (const Language language : {Language::english, Language::spanish}) {
            const std::string_view text = word(language, key);
            CHECK(text.front() != ' ');
            CHECK(text.back() != ' ');
            CHECK(text.find("  ") == std::string_view::npos);
        }
    }
}

TEST_CASE("the pseudo-language is a third longer, bracketed and accented") {
    for (const Word key : all_words()) {
        INFO(name_of(key));
        const std::string_view english = word(Language::english, key);
        const std::string_view pseudo = word(Language::pseudo, key);
        CHECK(pseudo.front() == '[');
        CHECK(pseudo.back() == ']');
        CHECK(static_cast<double>(characters(pseudo)) >=
              1.3 * static_cast<double>(characters(english)));
    }
    CHECK(word(Language::pseudo, Word::undo) != word(Language::english, Word::undo));
    CHECK(word(Language::pseudo, Word::undo).find("Uñdo") == std::string_view::npos);
}

TEST_CASE("say fills placeholders in") {
    CHECK(say(Language::english, Word::heads_fit, {"4", "6"}) == "4 of 6 heads fit to run");
    CHECK(say(Language::english, Word::head_title, {"6", "navy"}) == "Head 6 · navy");
    CHECK(say(Language::spanish, Word::head_title, {"6", "marino"}) == "Cabezal 6 · marino");
    // What a person typed is put in as it is, never looked into again.
    CHECK(say(Language::english, Word::head_title, {"6", "{0}"}) == "Head 6 · {0}");
    // A missing argument stays to be seen.
    CHECK(say(Language::english, Word::head_title, {"6"}) == "Head 6 · {1}");
    CHECK(say(Language::english, Word::undo, {"6"}) == "Undo");
}

TEST_CASE("a capital at the start of a line") {
    CHECK(capitalised("the machine end") == "The machine end");
    CHECK(capitalised("ángulo") == "Ángulo");
    CHECK(capitalised("ñandú") == "Ñandú");
    CHECK(capitalised("0.5 mm") == "0.5 mm");
    CHECK(capitalised("÷") == "÷");
    CHECK(capitalised("") == "");
}

TEST_CASE("the system's language") {
    for (const char* name : {"es", "es_MX.UTF-8", "es-ES", "ES_es", "es.UTF-8", "es@euro"}) {
        INFO(name);
        CHECK(system_language(name) == Language::spanish);
    }
    for (const char* name : {"", "C", "POSIX", "en", "en_GB.UTF-8", "et_EE", "est", "e", "de"}) {
        INFO(name);
        CHECK(system_language(name) == Language::english);
    }
    CHECK(system_language("en_XA") == Language::pseudo);
    CHECK(system_language("en_XA.UTF-8") == Language::pseudo);
}
