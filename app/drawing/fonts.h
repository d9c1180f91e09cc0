// The typeface B612 in every size that the program writes in, ready for Dear ImGui.
//
// Sizes are em sizes. Dear ImGui's size is the height of a line, ascent to descent, so an em of
// 16 px in B612 is a Dear ImGui size of 19.44 px: the ratio is read from the font file.
#pragma once

#include <array>
#include <cstddef>

#include "app/drawing/type.h"

struct ImFont;
struct ImFontAtlas;

namespace carriageway {

/// Ascent and descent of a face as shares of its em, both positive.
struct FaceMetrics {
    double ascent = 0.0;
    double descent = 0.0;
    double line() const { return ascent + descent; }
};

/// Reads them from the tables `head` (units per em) and `hhea` (ascender, descender) of an OpenType
/// file (ISO/IEC 14496-22, 5.2.2 and 5.2.3). Throws std::runtime_error for anything else.
FaceMetrics metrics_of(const unsigned char* file, std::size_t size);

/// The plain letter that is shown instead of a Latin one (U+0100 to U+017F) that B612 lacks; 0: none.
char plain_letter(char32_t letter);

/// Every size and weight in one atlas; measures text as it will be drawn.
class Fonts : public TypeMeasure {
public:
    static constexpr float least_scale = 0.8f;
    static constexpr float most_scale = 2.0f;

    /// Fills the atlas for a text size of 100 % at one pixel a dp. The atlas must outlive the fonts.
    explicit Fonts(ImFontAtlas& atlas);
    Fonts(const Fonts&) = delete;
    Fonts& operator=(const Fonts&) = delete;

    /// Fills the atlas anew for a text size (kept within least_scale and most_scale) and a display.
    /// Returns false, having done nothing, when both are as before. Call it between frames; the
    /// texture has to be uploaded again afterwards, which the atlas says by a texture id of 0.
    bool rebuild(float scale, float pixels_per_dp);

    float width(TypeStyle style, std::string_view text) const override;
    float height(TypeStyle style) const override;
    float scale() const override { return scale_; }

    float pixels_per_dp() const override { return pixels_per_dp_; }
    ImFontAtlas& atlas() const { return atlas_; }
    ImFont* font(TypeStyle style) const { return fonts_[index(style)]; }
    /// Height of a line in pixels: the size to give to Dear ImGui.
    float pixel_size(TypeStyle style) const;

private:
    static constexpr std::size_t sizes = static_cast<std::size_t>(TypeSize::count);
    static std::size_t index(TypeStyle style) {
        return static_cast<std::size_t>(style.size) + (style.bold ? sizes : 0u);
    }
    void add(TypeStyle style);

    ImFontAtlas& atlas_;
    std::array<ImFont*, 2 * sizes> fonts_{};
    std::array<FaceMetrics, 2> faces_; ///< regular, bold
    float scale_ = 0.0f;
    float pixels_per_dp_ = 0.0f;
};

} // namespace carriageway
