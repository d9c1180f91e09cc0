// Sizes of type and how wide text runs, without naming the font library.
#pragma once

#include <cstdint>
#include <string_view>

namespace carriageway {

/// Sizes of type, as em sizes in dp at a text size of 100 %.
enum class TypeSize : std::uint8_t {
    small,  ///< 13: captions, dimension lines
    body,   ///< 16
    title,  ///< 20
    large,  ///< 26: the number being set
    count,
};
float em_of(TypeSize size);

struct TypeStyle {
    TypeSize size = TypeSize::body;
    bool bold = false;
    bool operator==(const TypeStyle&) const = default;
};

inline constexpr TypeStyle small_text{TypeSize::small, false};
inline constexpr TypeStyle small_bold_text{TypeSize::small, true};
inline constexpr TypeStyle body_text{TypeSize::body, false};
inline constexpr TypeStyle bold_text{TypeSize::body, true};
inline constexpr TypeStyle title_text{TypeSize::title, true};
inline constexpr TypeStyle large_text{TypeSize::large, true};

/// Measures text in dp, the text size of the user included.
class TypeMeasure {
public:
    virtual ~TypeMeasure() = default;
    /// Width of one line.
    virtual float width(TypeStyle style, std::string_view text) const = 0;
    /// Height of one line, ascent to descent.
    virtual float height(TypeStyle style) const = 0;
    /// The user's text size, 0.8 to 2.
    virtual float scale() const = 0;
    /// Pixels of the raster that letters are drawn in; widths depend on it a little.
    virtual float pixels_per_dp() const { return 1.0f; }
};

} // namespace carriageway
