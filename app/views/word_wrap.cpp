#include "app/views/word_wrap.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace carriageway {

namespace {

/// Bytes of the longest beginning that fits, at least one letter.
std::size_t letters_that_fit(const TypeMeasure& type, TypeStyle style, std::string_view word, float width) {
    const auto next = [&](std::size_t at) {
        do ++at;
        while (at < word.size() && (static_cast<unsigned char>(word[at]) & 0xC0) == 0x80);
        return at;
    };
    std::size_t end = next(0);
    while (end < word.size() && type.width(style, word.substr(0, next(end))) <= width) end = next(end);
    return end;
}

/// The first line of `words`, and how many bytes it takes with the space that ends it.
struct First {
    std::size_t length = 0, taken = 0;
    float width = 0.0f;
};

First first_line(const TypeMeasure& type, std::string_view words, TypeStyle style, float width) {
    // Words are measured one by one and added up. Where the sum lies so near to the width that its
    // rounding could decide, the line is measured as a whole.
    const auto fits = [&](float& sum, std::size_t letters) {
        if (std::abs(sum - width) < 0.5f) sum = type.width(style, words.substr(0, letters));
        return sum <= width;
    };
    First line;
    std::size_t end = 0;
    // Grow word by word until the line is full; a single long word stands alone.
    while (true) {
        const std::size_t space = words.find(' ', end);
        const std::size_t stop = std::min(space, words.size());
        float grown = line.width + type.width(style, words.substr(line.length, stop - line.length));
        if (!fits(grown, stop)) {
            if (end > 0) break;
            line.length = letters_that_fit(type, style, words.substr(0, stop), width);
            line.taken = std::min(words.size(), line.length + (line.length == stop ? 1 : 0));
            line.width = type.width(style, words.substr(0, line.length));
            return line;
        }
        line.length = stop;
        line.width = grown;
        if (space == std::string_view::npos) break;
        end = space + 1;
    }
    line.taken = std::min(words.size(), line.length + 1);
    return line;
}

void break_lines(const TypeMeasure& type, std::string_view words, TypeStyle style, float width,
                 std::vector<WrappedLine>& lines) {
    lines.clear();
    std::size_t at = 0;
    while (at < words.size()) {
        const First line = first_line(type, words.substr(at), style, width);
        lines.push_back({static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(line.length), line.width});
        at += line.taken;
    }
}

} // namespace

void WordWrap::begin(const TypeMeasure& type) {
    type_ = &type;
    if (type.scale() != scale_ || type.pixels_per_dp() != pixels_per_dp_) kept_.clear();
    scale_ = type.scale();
    pixels_per_dp_ = type.pixels_per_dp();
    for (auto each = kept_.begin(); each != kept_.end();) {
        const auto next = std::next(each);
        if (!std::exchange(each->second.used, false)) spare_.push_back(kept_.extract(each));
        each = next;
    }
}

WordWrap::Kept& WordWrap::fresh(std::size_t number) {
    if (spare_.empty()) return kept_[number];
    auto node = std::move(spare_.back());
    spare_.pop_back();
    node.key() = number;
    return kept_.insert(std::move(node)).position->second;
}

const std::vector<WrappedLine>& WordWrap::lines(std::string_view words, TypeStyle style, float width) {
    static const std::vector<WrappedLine> none;
    if (words.empty()) return none;
    std::size_t number = std::hash<std::string_view>()(words);
    number ^= std::hash<float>()(width) * std::size_t{0x9e3779b1u};
    number += static_cast<std::size_t>(style.size) * 2 + (style.bold ? 1 : 0);
    // Others may have come to the same number: then the next one that is free.
    auto found = kept_.find(number);
    for (; found != kept_.end(); found = kept_.find(++number)) {
        Kept& kept = found->second;
        if (kept.words != words || kept.style != style || kept.width != width) continue;
        kept.used = true;
        return kept.lines;
    }
    Kept& kept = fresh(number);
    kept.words = words;
    kept.style = style;
    kept.width = width;
    kept.used = true;
    break_lines(*type_, words, style, width, kept.lines);
    return kept.lines;
}

} // namespace carriageway
