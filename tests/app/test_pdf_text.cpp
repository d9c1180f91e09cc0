// Words of a PDF: the typeface is in it, they can be found and selected, and what can't be written
// is told.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "app/drawing/pdf_letters.h"
#include "app/text/words.h"
#include "tests/app/painted.h"
#include "tests/app/pdf_reader.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::WithinAbs;

namespace {

PdfPage page_of(const Sheet& sheet) { return {&sheet.list, pdf_a4, 0.25}; }

constexpr char spanish[] = "Añada 2½ mm: ¿la señal está a −3,5 µm × 2 → ⅛″?";

} // namespace

TEST_CASE("words can be found in a PDF, in both faces", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.text({100, 100}, spanish, {}, Role::ink, Role::paper);
    sheet.list.text({100, 140}, "Paro (lado) \\ cabezal", {TypeSize::title, true}, Role::stop,
                    Role::paper);
    const PdfFile file = made_pdf({page_of(sheet)});
    CHECK(file.replaced.empty());
    const PdfReader reader(file.bytes);
    CHECK(reader.text().find(spanish) != std::string::npos);
    CHECK(reader.text().find("Paro (lado) \\ cabezal") != std::string::npos);
}

TEST_CASE("the typeface is in the PDF as TrueType, and only what is used of it", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.text({100, 100}, "Rasqueta", {}, Role::ink, Role::paper);
    sheet.list.text({100, 140}, "Paro", {TypeSize::title, true}, Role::ink, Role::paper);
    const std::string bytes = made_pdf({page_of(sheet)}).bytes;
    std::istringstream table(PdfReader(bytes).fonts());
    std::string line;
    int faces = 0;
    while (std::getline(table, line)) {
        if (line.find("B612") == std::string::npos) continue;
        ++faces;
        INFO(line);
        std::istringstream cells(line);
        std::string name, type, encoding, embedded, subset;
        cells >> name >> type >> encoding >> embedded >> subset;
        CHECK(type == "TrueType");
        CHECK(embedded == "yes");
        CHECK(subset == "yes");
    }
    CHECK(faces == 2);
    CHECK(bytes.size() < 40000);
}

TEST_CASE("words stand in the box that the list gave them", "[pdf]") {
    constexpr double dp = 0.25 / 25.4 * 72.0, finer = 2.0; // points; pixels a dp
    for (const float text_size : {0.8f, 1.0f, 2.0f}) {
        Sheet sheet(840, 1188, 1.0f, text_size);
        std::vector<Box> boxes;
        for (int size = 0; size < static_cast<int>(TypeSize::count); ++size)
            for (const bool bold : {false, true})
                boxes.push_back(sheet.list.text(
                    {100, 100.0f + 100.0f * static_cast<float>(boxes.size())}, "Mantenimiento232mm",
                    {static_cast<TypeSize>(size), bold}, Role::ink, Role::paper));
        const PdfReader reader(made_pdf({page_of(sheet)}).bytes);
        const std::vector<FoundWord> words = reader.words();
        const Picture picture = reader.page(1, 4.0 * finer);
        REQUIRE(words.size() == boxes.size());
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            const double height = double(boxes[i].height()), top = double(boxes[i].y0);
            CHECK_THAT(words[i].x0, WithinAbs(double(boxes[i].x0) * dp, 0.02));
            CHECK_THAT(words[i].x1,
                       WithinAbs(double(boxes[i].x1) * dp, 0.004 * double(boxes[i].width()) * dp));
            CHECK_THAT(words[i].y0, WithinAbs(top * dp, 0.02 * height * dp));
            CHECK_THAT(words[i].y1, WithinAbs((top + height) * dp, 0.02 * height * dp));
            // M stands on the base line, 0.965 em below the top, and is 0.76 em high
            // (test_type.cpp).
            const double em = height / 1.215;
            int first = 1 << 20, last = -1;
            for (int y = int(finer * top); y < int(finer * (top + height)); ++y)
                for (int x = 0; x < picture.width; ++x)
                    if (luminance(picture.at(x, y)) < 0.2) {
                        first = std::min(first, y);
                        last = y;
                    }
            CHECK_THAT(last + 1.0, WithinAbs(finer * (top + 0.965 * em), finer * 0.02 * em + 1.0));
            CHECK_THAT(first + 0.0, WithinAbs(finer * (top + 0.205 * em), finer * 0.02 * em + 1.0));
        }
    }
}

TEST_CASE("letters that the typeface lacks are replaced and told, each once", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.text({100, 100}, "Łódź 日本 😀 日 Ž x", {}, Role::ink, Role::paper);
    const PdfFile file = made_pdf({page_of(sheet), page_of(sheet)});
    CHECK(file.replaced == std::vector<std::string>{"Ł", "ź", "Ž", "日", "本", "😀"});
    CHECK(PdfReader(file.bytes).text().find("Lódz ?? ? ? Z x") != std::string::npos);
    CHECK(file.left_out == 0);
}

TEST_CASE("every letter that the typeface has can be written and found", "[pdf]") {
    constexpr char32_t ends[] = {
#include "app/drawing/letters.inc"
    };
    const ImFont& font = *fonts_for(1.0f, 1.0f).font({});
    std::vector<char32_t> letters;
    for (std::size_t i = 0; i < std::size(ends); i += 2)
        for (char32_t letter = ends[i]; letter <= ends[i + 1]; ++letter)
            if (plain_letter(letter) == '\0' && font.FindGlyphNoFallback(static_cast<ImWchar>(letter)))
                letters.push_back(letter);
    CHECK(letters.size() > 240);
    // So few at a time that there is a code for each.
    for (std::size_t first = 0; first < letters.size(); first += 60) {
        Sheet sheet(840, 1188);
        const std::size_t last = std::min(letters.size(), first + 60);
        for (std::size_t i = first; i < last; ++i)
            sheet.list.text({100, 10.0f + 18.0f * static_cast<float>(i - first)},
                            "x" + utf8_of(letters[i]) + "x", {}, Role::ink, Role::paper);
        const PdfFile file = made_pdf({page_of(sheet)});
        REQUIRE(file.replaced.empty());
        const std::string text = PdfReader(file.bytes).text();
        for (std::size_t i = first; i < last; ++i) {
            INFO("U+" << std::hex << static_cast<unsigned>(letters[i]));
            // The reader makes one kind of space of all and takes soft hyphens for line ends.
            if (letters[i] == 0x20 || letters[i] == 0xA0 || letters[i] == 0xAD) continue;
            CHECK(text.find("x" + utf8_of(letters[i]) + "x") != std::string::npos);
        }
    }
}

TEST_CASE("every word of the catalogue can be written on paper", "[pdf]") {
    for (const Language language : {Language::english, Language::spanish}) {
        Sheet sheet(840, 1188);
        for (int i = 0; i < static_cast<int>(Word::count); ++i)
            sheet.list.text({10, 10}, word(language, static_cast<Word>(i)), {}, Role::ink,
                            Role::paper);
        CHECK(made_pdf({page_of(sheet)}).replaced.empty());
    }
}

TEST_CASE("codes go to letters of CP1252 first, and spare ones to others", "[pdf]") {
    PdfLetters letters;
    letters.take("a\xC3\xBF\xE2\x82\xAC\xE2\x86\x92\xE2\x88\x92"); // a ÿ € → −
    letters.settle([](char32_t) { return true; });
    CHECK(letters.written("a\xC3\xBF\xE2\x82\xAC") == "a\xFF\x80"); // Unicode's table of CP1252
    REQUIRE(letters.extra().size() == 2);
    CHECK(letters.extra()[0].second == 0x2192);
    CHECK(letters.extra()[1].second == 0x2212);
    for (const auto& [code, letter] : letters.extra())
        CHECK(letters.written(utf8_of(letter)) == std::string(1, static_cast<char>(code)));
    CHECK(letters.extra()[0].first != letters.extra()[1].first);
    CHECK(letters.replaced().empty());
}

TEST_CASE("more letters than a font has codes for are told, not mixed up", "[pdf]") {
    PdfLetters letters;
    std::string text;
    for (char32_t letter = 0x20; letter < 0x250; ++letter)
        if (letter < 0x7F || letter > 0x9F) text += utf8_of(letter);
    letters.take(text);
    letters.settle([](char32_t) { return true; });
    std::map<char, int> used;
    for (const char byte : letters.written(text)) ++used[byte];
    CHECK(letters.replaced().size() > 300);
    for (const auto& [code, letter] : letters.extra()) CHECK(used[static_cast<char>(code)] == 1);
    CHECK(used['\xE9'] == 1); // é keeps its code
}

TEST_CASE("what is no UTF-8 is told as U+FFFD and hides no letter after it", "[pdf]") {
    for (const std::string bad :
         {"\xC3", "\xFF", "\xC0\xAF", "\xE2\x82", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80"}) {
        PdfLetters letters;
        letters.take("a" + bad + "b");
        letters.settle([](char32_t letter) { return letter < 0x80; });
        CHECK(letters.replaced() == std::vector<std::string>{"\xEF\xBF\xBD"});
        const std::string written = letters.written("a" + bad + "b");
        CHECK(written.front() == 'a');
        CHECK(written.back() == 'b');
        CHECK(written[1] == '?');
    }
    for (const char32_t point :
         {0x24u, 0xA2u, 0x20ACu, 0x10348u, 0x7FFu, 0x800u, 0xFFFFu, 0x10000u, 0x10FFFFu}) {
        const std::string utf8 = utf8_of(point);
        std::string_view rest = utf8;
        CHECK(take_code_point(rest) == point);
        CHECK(rest.empty());
    }
}
