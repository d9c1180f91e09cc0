// Words broken into lines, kept from frame to frame: most of what a frame says was said by the last.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "app/drawing/type.h"

namespace carriageway {

/// One line of some words.
struct WrappedLine {
    std::uint32_t first = 0, length = 0; ///< bytes of the words
    float width = 0.0f;                  ///< dp
    std::string_view of(std::string_view words) const { return words.substr(first, length); }
};

/// Breaks words at their spaces, and a word that is longer than a line between its letters: nothing
/// is ever cut off. For one kind of type; where its size changes, all lines are broken anew.
class WordWrap {
public:
    /// A frame begins: what the one before last used and the last did not is forgotten.
    void begin(const TypeMeasure& type);

    /// The lines of `words` within `width`, dp. Valid until the next frame begins.
    const std::vector<WrappedLine>& lines(std::string_view words, TypeStyle style, float width);

    /// How many words' lines are kept.
    std::size_t kept() const { return kept_.size(); }

private:
    struct Kept {
        std::string words;
        TypeStyle style;
        float width = 0.0f;
        std::vector<WrappedLine> lines;
        bool used = false; ///< in this frame
    };

    /// Room for lines that have none yet.
    Kept& fresh(std::size_t number);

    const TypeMeasure* type_ = nullptr;
    float scale_ = 0.0f, pixels_per_dp_ = 0.0f;
    std::map<std::size_t, Kept> kept_; ///< by a number made of words, style and width
    std::vector<std::map<std::size_t, Kept>::node_type> spare_; ///< forgotten: their storage is used again
};

} // namespace carriageway
