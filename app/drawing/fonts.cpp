#include "app/drawing/fonts.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>
#include <string>

#include "app/drawing/embedded_fonts.h"

namespace carriageway {

namespace {

/// Pairs of first and last code points. Dear ImGui leaves out what the font lacks.
constexpr ImWchar wanted[] = {
#include "app/drawing/letters.inc"
    0,
};

/// An empty ballot box: stands for letters that B612 lacks, and is nowhere else in use.
constexpr ImWchar missing = 0x2610;

/// Latin letters that B612 lacks, U+0100 to U+017F, by the plain letter that is shown instead: a
/// name is easier to read without an accent than with a box. A dot: there is none.
constexpr char plain[] =
    "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIi..JjKkkLlLlLlLlLlNnNnNnn..OoOoOo..RrRrRrSs"
    "SsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs";
static_assert(sizeof plain == 0x80 + 1, "one letter for each of U+0100 to U+017F");

/// Above this em size (px) the letters are drawn from a smaller raster, enlarged: at such
/// sizes it can't be seen, and the texture stays within what small graphics chips take.
constexpr float largest_raster = 112.0f;

const unsigned char* file_of(bool bold) {
    return bold ? embedded::b612_bold : embedded::b612_regular;
}
unsigned size_of(bool bold) { return bold ? embedded::b612_bold_size : embedded::b612_regular_size; }

/// Reads big-endian numbers of a font file, within its bounds.
struct FontFile {
    const unsigned char* bytes;
    std::size_t size;

    std::uint32_t u16(std::size_t at) const {
        if (size < 2 || at > size - 2) throw std::runtime_error("The font file ends too early.");
        return static_cast<std::uint32_t>(bytes[at]) << 8 | bytes[at + 1];
    }
    std::uint32_t u32(std::size_t at) const { return u16(at) << 16 | u16(at + 2); }
    double s16(std::size_t at) const { return static_cast<std::int16_t>(u16(at)); }

    std::size_t table(const char* tag) const {
        const std::uint32_t count = u16(4);
        for (std::uint32_t i = 0; i < count; ++i) {
            const std::size_t entry = 12 + 16 * static_cast<std::size_t>(i);
            u32(entry + 12);
            if (std::equal(tag, tag + 4, bytes + entry)) return u32(entry + 8);
        }
        throw std::runtime_error(std::string("The font file has no table ") + tag + ".");
    }
};

} // namespace

char plain_letter(char32_t letter) {
    const char32_t at = letter - 0x100;
    return letter < 0x100 || at >= sizeof plain - 1 || plain[at] == '.' ? '\0' : plain[at];
}

FaceMetrics metrics_of(const unsigned char* file, std::size_t size) {
    const FontFile font{file, size};
    const double em = font.u16(font.table("head") + 18);
    const std::size_t hhea = font.table("hhea");
    FaceMetrics metrics;
    metrics.ascent = font.s16(hhea + 4) / em;
    metrics.descent = -font.s16(hhea + 6) / em;
    if (!(em > 0.0) || !(metrics.ascent > 0.0) || !(metrics.descent >= 0.0))
        throw std::runtime_error("The font file has no usable line height.");
    return metrics;
}

Fonts::Fonts(ImFontAtlas& atlas) : atlas_(atlas) {
    for (const bool bold : {false, true}) faces_[bold] = metrics_of(file_of(bold), size_of(bold));
    rebuild(1.0f, 1.0f);
}

bool Fonts::rebuild(float scale, float pixels_per_dp) {
    if (!std::isfinite(scale)) scale = 1.0f;
    if (!std::isfinite(pixels_per_dp)) pixels_per_dp = 1.0f;
    scale = std::clamp(scale, least_scale, most_scale);
    pixels_per_dp = std::clamp(pixels_per_dp, 0.25f, 16.0f);
    if (scale == scale_ && pixels_per_dp == pixels_per_dp_) return false;
    scale_ = scale;
    pixels_per_dp_ = pixels_per_dp;

    atlas_.Clear();
    atlas_.SetTexID(nullptr);
    // Lines are drawn as polygons (screen_painter.h) and the pointer is the system's.
    atlas_.Flags = ImFontAtlasFlags_NoPowerOfTwoHeight | ImFontAtlasFlags_NoMouseCursors |
                   ImFontAtlasFlags_NoBakedLines;
    for (const bool bold : {false, true})
        for (std::size_t i = 0; i < sizes; ++i) add({static_cast<TypeSize>(i), bold});
    if (!atlas_.Build()) throw std::runtime_error("The embedded typeface can't be read.");
    for (ImFont* font : fonts_) {
        for (ImWchar letter = 0x100; letter < 0x180; ++letter) {
            const char shown = plain_letter(letter);
            if (shown != '\0' && font->FindGlyphNoFallback(letter) == nullptr)
                font->AddRemapChar(letter, static_cast<ImWchar>(shown));
        }
    }
    return true;
}

void Fonts::add(TypeStyle style) {
    const FaceMetrics& face = faces_[style.bold];
    const float line = static_cast<float>(face.line());
    const float em = pixel_size(style) / line;
    const float raster = std::min(em, largest_raster);

    ImFontConfig config;
    config.FontData = const_cast<unsigned char*>(file_of(style.bold)); // copied, never written
    config.FontDataSize = static_cast<int>(size_of(style.bold));
    config.FontDataOwnedByAtlas = false;
    // Dear ImGui cuts a size down to whole pixels. The density makes up for it, so that letters
    // are drawn in the raster that they are shown in, and not stretched by up to a twelfth.
    config.SizePixels = std::floor(raster * line);
    config.RasterizerDensity = raster * line / config.SizePixels;
    // Small letters start between pixels: three samples across keep their spacing even.
    config.OversampleH = raster < 24.0f ? 3 : raster < 48.0f ? 2 : 1;
    config.OversampleV = 1;
    config.GlyphRanges = wanted;
    // Dear ImGui puts the baseline at the ascent of its own size, rounded up. It is to lie on the
    // edge of pixels that is nearest to the real ascent.
    const float its_ascent = config.SizePixels / line * static_cast<float>(face.ascent);
    config.GlyphOffset.y = std::round(raster * static_cast<float>(face.ascent)) /
                               config.RasterizerDensity -
                           std::floor(its_ascent + 1.0f);

    ImFont* font = atlas_.AddFont(&config);
    font->FallbackChar = missing;
    font->Scale = pixel_size(style) / config.SizePixels;
    fonts_[index(style)] = font;
}

float Fonts::pixel_size(TypeStyle style) const {
    return em_of(style.size) * scale_ * pixels_per_dp_ *
           static_cast<float>(faces_[style.bold].line());
}

float Fonts::width(TypeStyle style, std::string_view text) const {
    if (text.empty()) return 0.0f;
    const ImFont& face = *font(style);
    const float size = pixel_size(style);
    // Plain letters are added up here, as Dear ImGui does, without its care for breaks and bytes.
    const float ratio = size / face.FontSize;
    float sum = 0.0f;
    std::size_t plain = 0;
    for (; plain < text.size(); ++plain) {
        const unsigned char letter = static_cast<unsigned char>(text[plain]);
        if (letter < 32 || letter >= 128 || letter >= face.IndexAdvanceX.Size) break;
        sum += face.IndexAdvanceX.Data[letter] * ratio;
    }
    if (plain == text.size()) return sum / pixels_per_dp_;
    const ImVec2 extent =
        face.CalcTextSizeA(size, std::numeric_limits<float>::max(), 0.0f, text.data(),
                           text.data() + text.size());
    return extent.x / pixels_per_dp_;
}

float Fonts::height(TypeStyle style) const { return pixel_size(style) / pixels_per_dp_; }

} // namespace carriageway
