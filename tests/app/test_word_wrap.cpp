// Words broken into lines, against their properties: nothing lost, nothing too wide, no line that
// could have taken one more word; and the same whether kept or made anew.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <random>
#include <string>

#include "app/views/word_wrap.h"

using namespace carriageway;

namespace {

/// Letters of three widths, so that sums differ from line to line.
class UnevenType : public TypeMeasure {
public:
    float width(TypeStyle style, std::string_view text) const override {
        ++measured;
        float sum = 0.0f;
        for (const char letter : text)
            if ((static_cast<unsigned char>(letter) & 0xC0) != 0x80)
                sum += letter == 'i' ? 0.3f : letter == 'm' ? 0.9f : 0.55f;
        return sum * em_of(style.size) * times * (pixels > 1.0f ? 1.02f : 1.0f) * (style.bold ? 1.1f : 1.0f);
    }
    float height(TypeStyle style) const override { return 1.2f * em_of(style.size) * times; }
    float scale() const override { return times; }
    float pixels_per_dp() const override { return pixels; }
    float times = 1.0f, pixels = 1.0f;
    mutable int measured = 0;
};

std::string some_words(std::mt19937& random) {
    constexpr const char* letters[] = {"a", "i", "m", "é", "n", " "};
    std::string words;
    for (auto left = random() % 120; left > 0; --left) words += letters[random() % 6];
    return words;
}

/// Whether a line may end before this byte: not within a letter.
bool begins_letter(std::string_view words, std::size_t at) {
    return at >= words.size() || (static_cast<unsigned char>(words[at]) & 0xC0) != 0x80;
}

void check_lines(const UnevenType& type, const std::string& words, TypeStyle style, float width,
                 const std::vector<WrappedLine>& lines) {
    INFO('"' << words << "\" in " << width);
    std::size_t at = 0;
    for (const WrappedLine& line : lines) {
        const std::string_view text = line.of(words);
        REQUIRE(line.first == at);
        CHECK(std::abs(line.width - type.width(style, text)) < 0.01f);
        const bool alone = std::count_if(text.begin(), text.end(), [](char letter) {
            return (static_cast<unsigned char>(letter) & 0xC0) != 0x80;
        }) == 1 && text != " ";
        CHECK((line.width <= width || alone)); // a letter that is wider than a line stands in one
        at += line.length;
        CHECK(begins_letter(words, at));
        if (at >= words.size()) {
            CHECK(&line == &lines.back());
            break;
        }
        const bool at_space = words[at] == ' ';
        // The next word, or letter, would not have fitted.
        std::size_t more = at + 1;
        if (at_space) more = std::min(words.find(' ', at + 1), words.size());
        while (!begins_letter(words, more)) ++more;
        CHECK(type.width(style, std::string_view(words).substr(line.first, more - line.first)) > width);
        if (at_space) ++at;
        else CHECK(text.find(' ') == std::string_view::npos); // only a word that is too long is broken
    }
    CHECK(at >= words.size());
}

} // namespace

TEST_CASE("Words are broken into lines that fit, and nothing is lost", "[words]") {
    constexpr unsigned seed = 20261127;
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const UnevenType type;
    WordWrap wrap;
    wrap.begin(type);
    for (int i = 0; i < 3000; ++i) {
        const std::string words = some_words(random);
        const TypeStyle style{static_cast<TypeSize>(random() % 4), random() % 2 == 0};
        const float width = static_cast<float>(5 + random() % 300);
        check_lines(type, words, style, width, wrap.lines(words, style, width));
    }
    CHECK(wrap.lines("", {}, 100.0f).empty());
}

TEST_CASE("Lines that are kept are those that would be made", "[words]") {
    constexpr unsigned seed = 20261128;
    INFO("seed " << seed);
    std::mt19937 random(seed);
    UnevenType type;
    WordWrap kept;
    std::vector<std::string> texts;
    for (int i = 0; i < 40; ++i) texts.push_back(some_words(random));
    for (int frame = 0; frame < 60; ++frame) {
        if (frame % 20 == 19) type.times = 0.8f + 0.01f * static_cast<float>(random() % 120);
        if (frame % 20 == 9) type.pixels = 3.0f - type.pixels;
        kept.begin(type);
        for (int i = 0; i < 30; ++i) {
            const std::string& words = texts[random() % texts.size()];
            const TypeStyle style{static_cast<TypeSize>(random() % 4), random() % 2 == 0};
            const float width = static_cast<float>(60 + 40 * (random() % 4));
            WordWrap fresh;
            fresh.begin(type);
            const auto same = [](const WrappedLine& a, const WrappedLine& b) {
                return a.first == b.first && a.length == b.length && a.width == b.width;
            };
            const auto& ours = kept.lines(words, style, width);
            const auto& theirs = fresh.lines(words, style, width);
            CHECK(std::equal(ours.begin(), ours.end(), theirs.begin(), theirs.end(), same));
        }
    }
}

TEST_CASE("Lines are kept while they are used, and no longer", "[words]") {
    const UnevenType type;
    WordWrap wrap;
    const auto frame = [&](std::initializer_list<const char*> said) {
        wrap.begin(type);
        for (const char* words : said) wrap.lines(words, {}, 60.0f);
    };
    frame({"a mile in minutes", "nine minimal animals"});
    CHECK(wrap.kept() == 2);
    type.measured = 0;
    frame({"a mile in minutes", "nine minimal animals"});
    CHECK(type.measured == 0); // nothing is broken anew
    frame({"nine minimal animals"});
    frame({"nine minimal animals", "a lamb"});
    CHECK(type.measured > 0);
    CHECK(wrap.kept() == 2);
    for (int i = 0; i < 1000; ++i) frame({std::to_string(i).c_str()});
    CHECK(wrap.kept() <= 2);
    frame({});
    frame({});
    CHECK(wrap.kept() == 0);
}
