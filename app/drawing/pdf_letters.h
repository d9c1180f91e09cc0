// Words as the bytes of a PDF's text. A simple font of a PDF has 256 codes: those of CP1252
// (WinAnsiEncoding: ISO 32000-1, annex D), of which the ones that a sheet doesn't need are given to
// what else is written on it, such as arrows, the minus sign and fractions.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace carriageway {

/// The code point at the front of UTF-8, which is taken off. U+FFFD, and one byte less, for what is
/// no UTF-8. `text` may not be empty.
char32_t take_code_point(std::string_view& text);

/// UTF-8 of a code point.
std::string utf8_of(char32_t code_point);

/// First every text is taken in, then codes are settled, then texts are written.
class PdfLetters {
public:
    /// Whether the font has a letter.
    using Shown = std::function<bool(char32_t)>;

    void take(std::string_view text);
    void settle(const Shown& shown);

    /// The bytes of a text; one byte a letter. What can't be shown becomes its plain letter
    /// (fonts.h) or a question mark.
    std::string written(std::string_view text) const;

    /// Codes that no longer mean what they do in CP1252, with what they mean instead.
    const std::vector<std::pair<std::uint8_t, char32_t>>& extra() const { return extra_; }

    /// What could not be shown, each once, in UTF-8, in the order of code points.
    const std::vector<std::string>& replaced() const { return replaced_; }

private:
    void place(char32_t letter, std::array<bool, 256>& taken);

    std::set<char32_t> letters_;
    std::map<char32_t, std::uint8_t> codes_;
    std::vector<std::pair<std::uint8_t, char32_t>> extra_;
    std::vector<std::string> replaced_;
};

} // namespace carriageway
