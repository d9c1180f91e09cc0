#include "app/drawing/paper_type.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include "app/drawing/embedded_fonts.h"
#include "app/drawing/fonts.h"
#include "app/drawing/pdf_letters.h"

namespace carriageway {

namespace {

/// Beyond this code point the faces have next to nothing: see letters.inc.
constexpr char32_t letters_end = 0x2800;

/// Reads big-endian numbers of an OpenType file, within its bounds (ISO/IEC 14496-22).
struct FaceFile {
    const unsigned char* bytes;
    std::size_t size;

    std::uint32_t u16(std::size_t at) const {
        if (size < 2 || at > size - 2) throw std::runtime_error("The font file ends too early.");
        return static_cast<std::uint32_t>(bytes[at]) << 8 | bytes[at + 1];
    }
    std::uint32_t u32(std::size_t at) const { return u16(at) << 16 | u16(at + 2); }

    std::size_t table(std::string_view tag) const {
        const std::uint32_t count = u16(4);
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t entry = 12 + 16 * i;
            const std::size_t offset = u32(entry + 8); // and checks that the tag is there
            if (std::equal(tag.begin(), tag.end(), bytes + entry)) return offset;
        }
        throw std::runtime_error("The font file lacks a table.");
    }

    /// The subtable of `cmap` for the Basic Multilingual Plane (format 4).
    std::size_t letters() const {
        const std::size_t cmap = table("cmap");
        for (std::size_t i = 0, count = u16(cmap + 2); i < count; ++i) {
            const std::size_t subtable = cmap + u32(cmap + 8 + 8 * i);
            if (u16(subtable) == 4) return subtable;
        }
        throw std::runtime_error("The font file has no letters.");
    }
};

/// Advance of every letter as a share of the em; below 0: the face lacks it.
using Advances = std::vector<float>;

void read_segment(const FaceFile& file, std::size_t map, std::size_t segment, std::size_t count,
                  Advances& advances) {
    const std::size_t ends = map + 14, starts = ends + 2 * count + 2;
    const std::size_t deltas = starts + 2 * count, offsets = deltas + 2 * count;
    const double em = file.u16(file.table("head") + 18);
    const std::size_t metrics = file.table("hmtx");
    const std::uint32_t wide = file.u16(file.table("hhea") + 34);
    const std::uint32_t first = file.u16(starts + 2 * segment), last = file.u16(ends + 2 * segment);
    const std::uint32_t delta = file.u16(deltas + 2 * segment);
    const std::size_t at = offsets + 2 * segment;
    const std::uint32_t offset = file.u16(at);
    for (std::uint32_t letter = first; letter <= last && letter < letters_end; ++letter) {
        std::uint32_t glyph = offset == 0 ? letter : file.u16(at + offset + 2 * (letter - first));
        if (offset == 0 || glyph != 0) glyph = (glyph + delta) & 0xFFFFu;
        if (glyph == 0 || wide == 0) continue;
        // Glyphs beyond the last that has a width of its own share that one's.
        const std::size_t entry = metrics + 4 * std::min<std::size_t>(glyph, wide - 1);
        advances[letter] = static_cast<float>(file.u16(entry) / em);
    }
}

Advances advances_of(const FaceFile& file) {
    Advances advances(letters_end, -1.0f);
    const std::size_t map = file.letters();
    const std::size_t count = file.u16(map + 6) / 2;
    for (std::size_t i = 0; i < count; ++i) read_segment(file, map, i, count, advances);
    return advances;
}

struct Face {
    Advances advances;
    FaceMetrics metrics;
};

Face made_face(const unsigned char* bytes, unsigned size) {
    return {advances_of({bytes, size}), metrics_of(bytes, size)};
}

const Face& face_of(bool bold) {
    static const std::array<Face, 2> faces{
        made_face(embedded::b612_regular, embedded::b612_regular_size),
        made_face(embedded::b612_bold, embedded::b612_bold_size)};
    return faces[bold];
}

bool has(const Face& face, char32_t letter) {
    return letter < letters_end && face.advances[letter] >= 0.0f;
}

float advance(const Face& face, char32_t letter) {
    if (has(face, letter)) return face.advances[letter];
    const char plain = plain_letter(letter);
    return std::max(0.0f, face.advances[static_cast<unsigned char>(plain != '\0' ? plain : '?')]);
}

} // namespace

void PaperType::set_scale(float scale) {
    scale_ = std::isfinite(scale) && scale > 0.0f ? scale : 1.0f;
}

float PaperType::width(TypeStyle style, std::string_view text) const {
    const Face& face = face_of(style.bold);
    float ems = 0.0f;
    while (!text.empty()) ems += advance(face, take_code_point(text));
    return ems * em_of(style.size) * scale_;
}

float PaperType::height(TypeStyle style) const {
    return em_of(style.size) * scale_ * static_cast<float>(face_of(style.bold).metrics.line());
}

void add_unprintable(std::string_view text, std::vector<std::string>& found) {
    while (!text.empty()) {
        const char32_t letter = take_code_point(text);
        if (has(face_of(false), letter) && has(face_of(true), letter)) continue;
        const std::string written = utf8_of(letter);
        // Bytes of UTF-8 are in the order of code points.
        const auto place = std::lower_bound(found.begin(), found.end(), written);
        if (place == found.end() || *place != written) found.insert(place, written);
    }
}

} // namespace carriageway
