// Type: em sizes, widths, missing letters, and words that stay within the box they were given.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <stdexcept>
#include <vector>

#include "app/drawing/embedded_fonts.h"
#include "tests/app/painted.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

const std::uint32_t paper = colour_of(Theme::light, Role::paper);

std::vector<TypeStyle> styles() {
    std::vector<TypeStyle> all;
    for (int size = 0; size < static_cast<int>(TypeSize::count); ++size)
        for (const bool bold : {false, true}) all.push_back({static_cast<TypeSize>(size), bold});
    return all;
}

/// Where the ink of a word is, with its top left at 10, 10 dp: pixels of which half is covered.
Marked ink_of(const char* words, TypeStyle style, float ratio, float text = 1.0f) {
    Sheet sheet(340, 90, ratio, text);
    sheet.list.text({10, 10}, words, style, Role::ink, Role::paper);
    return marked(sheet.picture(), paper, apart(paper, colour_of(Theme::light, Role::ink)) / 2);
}

} // namespace

TEST_CASE("em sizes are those promised", "[type]") {
    CHECK(em_of(TypeSize::small) == 13.0f);
    CHECK(em_of(TypeSize::body) == 16.0f);
    CHECK(em_of(TypeSize::title) == 20.0f);
    CHECK(em_of(TypeSize::large) == 26.0f);
}

TEST_CASE("ascent and descent come from the font file", "[type]") {
    // B612 1.008: 2000 units an em, ascender 1930, descender -500 (its tables head and hhea, read
    // with another program).
    for (const bool bold : {false, true}) {
        const FaceMetrics face =
            bold ? metrics_of(embedded::b612_bold, embedded::b612_bold_size)
                 : metrics_of(embedded::b612_regular, embedded::b612_regular_size);
        CHECK_THAT(face.ascent, WithinAbs(0.965, 1e-9));
        CHECK_THAT(face.descent, WithinAbs(0.25, 1e-9));
        CHECK_THAT(face.line(), WithinAbs(1.215, 1e-9));
    }
}

TEST_CASE("what is not a font file is refused", "[type]") {
    const std::vector<unsigned char> whole(embedded::b612_regular,
                                           embedded::b612_regular + embedded::b612_regular_size);
    for (const std::size_t size : {0u, 1u, 5u, 11u, 12u, 40u, 200u})
        CHECK_THROWS_AS(metrics_of(whole.data(), size), std::runtime_error);
    const std::vector<unsigned char> zeros(4096, 0);
    CHECK_THROWS_AS(metrics_of(zeros.data(), zeros.size()), std::runtime_error);
    const std::vector<unsigned char> ones(4096, 0xFF);
    CHECK_THROWS_AS(metrics_of(ones.data(), ones.size()), std::runtime_error);
}

TEST_CASE("letters are as high as the em size says", "[type]") {
    // B612's H is 1520 units of 2000 high, the bold one 1527 (their outlines, read with another
    // program; the capital height of 1500 in its table OS/2 is that of the E).
    for (const float ratio : {1.0f, 2.0f, 4.0f}) {
        for (const float text : {0.8f, 1.0f, 2.0f}) {
            for (const TypeStyle style : styles()) {
                const Marked ink = ink_of("H", style, ratio, text);
                const double em = double(em_of(style.size)) * double(ratio) * double(text);
                INFO("em of " << em << " px, " << (style.bold ? "bold" : "regular"));
                // To the nearest pixel of the raster, which is enlarged beyond 112 px (fonts.cpp); a
                // tenth more, because the tops of the stems aren't quite level.
                const double within = em <= 112.0 ? 0.6 : 0.6 * em / 112.0 + 0.5;
                CHECK_THAT(double(ink.y1 - ink.y0 + 1),
                           WithinAbs((style.bold ? 0.7635 : 0.76) * em, within));
                // The baseline is an ascent below the top of the box.
                CHECK_THAT(double(ink.y1 + 1),
                           WithinAbs(10.0 * double(ratio) + 0.965 * em, within));
            }
        }
    }
}

TEST_CASE("words stay within their box, and the box is no wider than it has to be", "[type]") {
    // As wide as drawn: an M on both sides has little room beside it.
    const char* words[] = {"M232 mm M", "M\xC3\xB1\xC3\xBC\xC3\x89 \xC2\xBD M", "MM"};
    for (const float ratio : {1.0f, 1.5f, 2.75f}) {
        for (const float text : {0.8f, 1.0f, 1.3f, 2.0f}) {
            for (const TypeStyle style : styles()) {
                for (const char* each : words) {
                    Sheet sheet(340, 90, ratio, text);
                    const Box box =
                        sheet.list.text({10, 10}, each, style, Role::ink, Role::paper);
                    const Marked ink = marked(sheet.picture(), paper);
                    INFO(each << " at " << ratio << ", " << text);
                    CHECK(static_cast<float>(ink.x0) >= box.x0 * ratio - 1.0f);
                    CHECK(static_cast<float>(ink.x1 + 1) <= box.x1 * ratio + 1.0f);
                    CHECK(static_cast<float>(ink.y0) >= box.y0 * ratio - 1.0f);
                    CHECK(static_cast<float>(ink.y1 + 1) <= box.y1 * ratio + 1.0f);
                    const float em = em_of(style.size) * ratio * text;
                    CHECK(static_cast<float>(ink.x1 + 1) >= box.x1 * ratio - 0.15f * em - 1.0f);
                }
            }
        }
    }
}

TEST_CASE("widths grow with the text size and don't depend on the display", "[type]") {
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    const char* words = "Stop 44 mm toward the machine";
    for (const TypeStyle style : styles()) {
        REQUIRE((fonts.rebuild(1.0f, 1.0f) || fonts.scale() == 1.0f));
        const float plain = fonts.width(style, words);
        CHECK_THAT(double(fonts.height(style)), WithinRel(1.215 * double(em_of(style.size)), 1e-5));
        fonts.rebuild(1.0f, 3.0f);
        CHECK_THAT(double(fonts.width(style, words)), WithinRel(double(plain), 1e-3));
        fonts.rebuild(1.5f, 3.0f);
        CHECK_THAT(double(fonts.width(style, words)), WithinRel(1.5 * double(plain), 1e-3));
        CHECK_THAT(double(fonts.height(style)),
                   WithinRel(1.5 * 1.215 * double(em_of(style.size)), 1e-5));
        fonts.rebuild(1.0f, 1.0f);
    }
    CHECK(fonts.width({}, "") == 0.0f);
}

TEST_CASE("fonts are built anew only when something changed", "[type]") {
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    CHECK_FALSE(fonts.rebuild(1.0f, 1.0f));
    atlas.SetTexID(reinterpret_cast<ImTextureID>(&atlas));
    CHECK(fonts.rebuild(1.0f, 2.0f));
    CHECK(atlas.TexID == nullptr); // to be uploaded
    CHECK_FALSE(fonts.rebuild(1.0f, 2.0f));
    CHECK(fonts.rebuild(9.0f, 2.0f));
    CHECK(fonts.scale() == 2.0f);
    CHECK_FALSE(fonts.rebuild(5.0f, 2.0f));
    CHECK(fonts.rebuild(0.1f, 2.0f));
    CHECK(fonts.scale() == 0.8f);
}

TEST_CASE("the texture of the largest type is one that small graphics chips take", "[type]") {
    // OpenGL ES 3.0 promises 2048; 4096 is what its chips have (from memory).
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    fonts.rebuild(2.0f, 4.0f);
    CHECK(atlas.TexWidth <= 4096);
    CHECK(atlas.TexHeight <= 4096);
}

TEST_CASE("letters that the face lacks are shown by another, never by nothing", "[type]") {
    const auto picture = [](const char* words) {
        Sheet sheet(80, 30);
        sheet.list.text({4, 4}, words, {}, Role::ink, Role::paper);
        return sheet.picture();
    };
    const Picture box = picture("\xE2\x98\x90"); // U+2610
    CHECK(marked(box, paper).pixels > 10);
    CHECK(picture("\xE6\x97\xA5") == box);     // a Chinese character
    CHECK(picture("\xF0\x9F\x98\x80") == box); // beyond 16 bits
    CHECK(picture("\xC5\x81\xC3\xB3""d\xC5\xBA") == picture("L\xC3\xB3""dz"));
    CHECK(picture("\xC3\xB1") != picture("n"));
}

TEST_CASE("all signs that the program writes are in the face", "[type]") {
    ImFontAtlas atlas;
    Fonts fonts(atlas);
    const ImWchar signs[] = {0x2192, 0x2190, 0x2191, 0x2193, 0x00B7, 0x2013, 0x2014, 0x2026,
                             0x00D7, 0x00B1, 0x00B0, 0x00BD, 0x00BC, 0x00BE, 0x215B, 0x215C,
                             0x215D, 0x215E, 0x2039, 0x203A, 0x2212, 0x00BF, 0x00A1, 0x00F1};
    for (const TypeStyle style : styles())
        for (const ImWchar sign : signs) {
            INFO("U+" << std::hex << sign);
            CHECK(fonts.font(style)->FindGlyphNoFallback(sign) != nullptr);
        }
}
