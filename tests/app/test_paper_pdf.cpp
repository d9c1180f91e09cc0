// The sheet as a PDF, read back by independent readers.
#include <set>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#include <imgui.h>

#include "app/drawing/fonts.h"
#include "app/records/job_link.h"
#include "app/text/sentences.h"
#include "tests/app/paper_texts.h"
#include "tests/app/pdf_reader.h"

#if CARRIAGEWAY_SCANNER
#include <zbar.h>
#endif

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;

TEST_CASE("Poppler finds the sheet's size, pages, words and fonts, and warns of nothing",
          "[paper]") {
    for_every_kind([](SheetRequest request) {
        if (request.language == Language::pseudo) return;
        request.job = walked_job();
        const DrawnSheet drawn = sheet_of(request);
        REQUIRE(drawn.trouble.empty());
        CHECK(drawn.replaced.empty());
        const PdfReader reader(drawn.bytes);
        const std::string facts = reader.facts();
        CHECK_THAT(facts, ContainsSubstring("Pages:           " + std::to_string(drawn.pages)));
        CHECK(drawn.pages >=
              (request.page_a_head ? 1 + static_cast<int>(request.job.heads.size()) : 2));
        CHECK_THAT(facts,
                   ContainsSubstring(request.letter ? "612 x 792 pts (letter)" : "pts (A4)"));
        const std::string text = reader.text();
        CHECK(in_order(text, request.job.name));
        for (const Head& head : request.job.heads) CHECK(in_order(text, head.colour));
        for (const Word key :
             {Word::paper_stations, Word::list_before_run, Word::step_guards_closed,
              Word::section_flood_bar, Word::paper_decides})
            CHECK(in_order(text, std::string(word(request.language, key))));
        if (request.language == Language::spanish) CHECK_THAT(text, ContainsSubstring("ángulo"));
        const Head& head = request.job.heads.front();
        CHECK(in_order(text, format_ruler(request.job.press.ruler, head.stops.operator_side)) );
        // One line a face behind two of headings: name, type, encoding, embedded, subset, unicode.
        std::istringstream fonts(reader.fonts());
        int faces = 0;
        for (std::string line; std::getline(fonts, line);) {
            if (line.find("B612") == std::string::npos) continue;
            ++faces;
            std::istringstream words(line.substr(line.find("TrueType")));
            std::string type, encoding, embedded;
            words >> type >> encoding >> embedded;
            CHECK(embedded == "yes");
        }
        CHECK(faces == 2);
    });
}

TEST_CASE("Words are as wide on paper as they were measured", "[paper]") {
    PaperType type;
    ImFontAtlas atlas;
    const Fonts fonts(atlas);
    const char* samples[] = {"Paper-boat regatta shirt, front",
                             "ángulo de la contrarracleta, 12.5°", "→ 686 mm × 1½"};
    for (const char* sample : samples)
        for (const TypeSize size :
             {TypeSize::small, TypeSize::body, TypeSize::title, TypeSize::large})
            for (const bool bold : {false, true}) {
                INFO(sample);
                const TypeStyle style{size, bold};
                // Dear ImGui's widths come from a raster of whole pixels.
                CHECK_THAT(static_cast<double>(type.width(style, sample)),
                           WithinAbs(static_cast<double>(fonts.width(style, sample)), 1.0));
                CHECK_THAT(static_cast<double>(type.height(style)),
                           WithinAbs(static_cast<double>(fonts.height(style)), 0.01));
            }
    DrawingList list;
    list.begin({0.0f, 0.0f, 1050.0f, 1485.0f}, type);
    list.text({100.0f, 100.0f}, "contrarracleta", {TypeSize::title, true}, Role::ink, Role::paper);
    const PdfReader reader(made_pdf({{&list, {210.0, 297.0}, paper_mm_per_dp}}).bytes);
    const std::vector<FoundWord> words = reader.words();
    REQUIRE(words.size() == 1);
    const double points_per_dp = paper_mm_per_dp * 72.0 / 25.4;
    CHECK_THAT(words.front().x1 - words.front().x0,
               WithinAbs(points_per_dp * static_cast<double>(
                                             type.width({TypeSize::title, true}, "contrarracleta")),
                         0.1));
}

TEST_CASE("The same request gives the same bytes, another one others", "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, true);
    const std::string once = sheet_of(request).bytes;
    CHECK(sheet_of(request).bytes == once);
    std::set<std::string> different{once};
    for_every_kind([&](const SheetRequest& other) { different.insert(sheet_of(other).bytes); });
    CHECK(different.size() == 12);
}

TEST_CASE("Letters that neither face has are found once each; a plain one stands for them",
          "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, true);
    request.job.name = "\u5929\u9752\u5929 \u017Ba\u00F1";
    request.job.heads.front().notes.ink = "\u5929";
    const std::vector<std::string> letters = unprintable_letters(request.job);
    CHECK(letters == sheet_of(request).replaced);
    CHECK(std::count(letters.begin(), letters.end(), "\u5929") == 1);
    CHECK(unprintable_letters(walked_job()).empty());
}

TEST_CASE("A job without heads, or with controls in its texts, has a sheet as well", "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, true);
    request.job.heads.clear();
    request.job.name = "two\nlines\tand a tab";
    const DrawnSheet drawn = sheet_of(request);
    REQUIRE(drawn.trouble.empty());
    CHECK(drawn.replaced.empty());
    const std::string text = PdfReader(drawn.bytes).text();
    CHECK_THAT(text, ContainsSubstring("two lines and a tab"));
    CHECK(in_order(text, std::string(word(Language::english, Word::no_heads))));
}

#if CARRIAGEWAY_SCANNER

TEST_CASE("The code on the printed page is read back by zbar as the job's link", "[paper]") {
    for (const bool letter : {false, true})
        for (const bool walked : {false, true}) {
            SheetRequest request = sheet_request(Language::spanish, letter, true);
            if (walked) request.job = walked_job();
            request.link_base = "https://example.org/carriageway/";
            const Picture page = PdfReader(sheet_of(request).bytes).page(1, 150.0 / 25.4);
            std::vector<unsigned char> grey;
            for (std::size_t i = 0; i < page.rgba.size(); i += 4)
                grey.push_back(static_cast<unsigned char>(
                    (2 * page.rgba[i] + 5 * page.rgba[i + 1] + page.rgba[i + 2]) / 8));
            zbar::ImageScanner scanner;
            scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
            scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
            zbar::Image image(static_cast<unsigned>(page.width), static_cast<unsigned>(page.height),
                              "Y800", grey.data(), grey.size());
            scanner.scan(image);
            std::vector<std::string> found;
            for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol)
                found.push_back(symbol->get_data());
            REQUIRE(found.size() == 1);
            CHECK(found.front() ==
                  "https://example.org/carriageway/#" + job_link_fragment(request.job));
            const ReadJob read = read_job_link(found.front());
            REQUIRE(read);
            CHECK(*read.job == request.job);
        }
}

#endif
