// The sheet as pages: nothing cut off or laid over anything else, everything on it, read back by
// independent readers from the PDF.
#include <algorithm>
#include <set>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#include <imgui.h>

#include "app/drawing/fonts.h"
#include "app/records/job_link.h"
#include "app/text/list_sentences.h"
#include "app/text/sentences.h"
#include "core/walk.h"
#include "tests/app/paper_jobs.h"
#include "tests/app/pdf_reader.h"

#if CARRIAGEWAY_SCANNER
#include <zbar.h>
#endif

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;

namespace {

/// Boxes of texts that only touch: rounding of sums of line heights, dp.
constexpr float slack = 0.5f;

struct PlacedText {
    std::string words;
    Box box, clip;
};

std::vector<PlacedText> texts_of(const DrawingList& page) {
    std::vector<PlacedText> texts;
    for (const Mark& mark : page.marks()) {
        if (mark.kind != MarkKind::text) continue;
        const Vec at = page.points(mark)[0];
        texts.push_back({std::string(page.words(mark)),
                         {at.x, at.y, at.x + mark.extent.x, at.y + mark.extent.y},
                         page.clip_box(mark.clip)});
    }
    return texts;
}

/// What is wrong with a page's texts: off it, cut off, or over one another.
std::vector<std::string> faults_of(const DrawingList& page) {
    std::vector<std::string> faults;
    const std::vector<PlacedText> texts = texts_of(page);
    const Box within = page.window().inset(50.0f); // 10 mm
    const auto inside = [](const Box& box, const Box& of) {
        return box.x0 >= of.x0 && box.y0 >= of.y0 && box.x1 <= of.x1 && box.y1 <= of.y1;
    };
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const Box& box = texts[i].box;
        if (!inside(box, within)) faults.push_back("off the page: " + texts[i].words);
        if (!inside(box.inset(slack), texts[i].clip)) faults.push_back("cut off: " + texts[i].words);
        for (std::size_t j = i + 1; j < texts.size(); ++j)
            if (overlap(box.inset(slack), texts[j].box.inset(slack)))
                faults.push_back(texts[i].words + " over " + texts[j].words);
    }
    return faults;
}

std::string all_texts(const JobSheet& sheet) {
    std::string all;
    for (const DrawingList& page : sheet.pages)
        for (const PlacedText& text : texts_of(page)) all += text.words + " ";
    return all;
}

/// Whether a text stands in another as it is, but for where its lines and long words were broken.
bool whole_in(std::string all, std::string wanted) {
    std::erase(all, ' ');
    std::erase(wanted, ' ');
    return all.find(wanted) != std::string::npos;
}

/// Whether words stand one after the other in a text, whatever stands between them.
bool in_order(const std::string& text, const std::string& wanted) {
    std::istringstream words(wanted);
    std::size_t at = 0;
    for (std::string each; words >> each;) {
        at = text.find(each, at);
        if (at == std::string::npos) return false;
        at += each.size();
    }
    return true;
}

template <class Visit>
void for_every_kind(const Visit& visit) {
    for (const Language language : {Language::english, Language::spanish, Language::pseudo})
        for (const bool letter : {false, true})
            for (const bool heads : {true, false}) {
                SheetRequest request = sheet_request(language, letter, heads);
                INFO((language == Language::english ? "English"
                      : language == Language::spanish ? "Spanish"
                                                      : "pseudo")
                     << (letter ? ", letter" : ", A4") << (heads ? ", heads" : ", tables"));
                visit(request);
            }
}

} // namespace

TEST_CASE("Every text lies on its page and none over another, whatever the job", "[paper]") {
    for_every_kind([](SheetRequest request) {
        for (const auto& [name, job] : paper_jobs()) {
            for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
                INFO(name << (unit == LengthUnit::mm ? ", mm" : ", in"));
                request.job = job;
                request.unit = unit;
                SheetInput input;
                prepare_sheet(request, input);
                const JobSheet sheet = job_sheet(input.paper);
                REQUIRE_FALSE(sheet.pages.empty());
                for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
                    INFO("page " << i + 1);
                    CHECK(faults_of(sheet.pages[i]).empty());
                }
            }
        }
    });
}

TEST_CASE("Every page says which job it is of, and which page of how many", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = many_heads(12);
        SheetInput input;
        prepare_sheet(request, input);
        const JobSheet sheet = job_sheet(input.paper);
        CHECK(sheet.pages.size() > (request.page_a_head ? 12u : 2u));
        for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
            std::string texts;
            for (const PlacedText& text : texts_of(sheet.pages[i])) texts += text.words + "\n";
            CHECK_THAT(texts, ContainsSubstring(request.job.name));
            CHECK_THAT(texts, ContainsSubstring(std::to_string(i + 1) + " / " + std::to_string(sheet.pages.size())));
        }
    });
}

TEST_CASE("Long texts stand on the sheet whole", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = wordy_job();
        SheetInput input;
        prepare_sheet(request, input);
        const std::string all = all_texts(job_sheet(input.paper));
        CHECK(whole_in(all, request.job.name));
        CHECK(whole_in(all, request.job.press.name));
        CHECK(whole_in(all, request.job.garment.name));
        for (const Head& head : request.job.heads) {
            CHECK(whole_in(all, head.colour));
            if (!request.page_a_head) continue;
            CHECK(whole_in(all, head.notes.ink));
            CHECK(whole_in(all, head.notes.stencil));
        }
        for (const CheckItem& item : request.job.press.checks)
            if (item.list == CheckList::before_run) CHECK(whole_in(all, step_text(request.language, item)));
        for (const Word word : {Word::paper_decides, Word::caution_index_path, Word::caution_isolated,
                                Word::caution_hot, Word::caution_solvents})
            CHECK(in_order(all, std::string(carriageway::word(request.language, word))));
    });
}

TEST_CASE("Every number of every head stands on the sheet, and what was really set", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = walked_job();
        SheetInput input;
        prepare_sheet(request, input);
        const std::string all = all_texts(job_sheet(input.paper));
        const Job& job = request.job;
        for (const Head& head : job.heads) {
            for (const Field field : walk_fields(job, head.id)) {
                const std::string planned = paper_value(request.language, request.unit, job, field, number_of(job, &head, field));
                INFO(planned);
                CHECK(in_order(all, planned));
            }
            CHECK(in_order(all, head.colour));
        }
        for (const WalkMark& mark : job.walk) {
            if (!mark.real) continue;
            const std::string real = paper_number(request.unit, job, mark.field, *mark.real);
            INFO(real);
            CHECK(in_order(all, real));
        }
        CHECK_THAT(all, ContainsSubstring("QZ")); // the initials
    });
}

TEST_CASE("Poppler finds the sheet's size, pages, words and fonts, and warns of nothing", "[paper]") {
    for_every_kind([](SheetRequest request) {
        if (request.language == Language::pseudo) return;
        request.job = walked_job();
        const DrawnSheet drawn = sheet_of(request);
        REQUIRE(drawn.trouble.empty());
        CHECK(drawn.replaced.empty());
        const PdfReader reader(drawn.pdf);
        const std::string facts = reader.facts();
        CHECK_THAT(facts, ContainsSubstring("Pages:           " + std::to_string(drawn.pages)));
        CHECK(drawn.pages >= (request.page_a_head ? 1 + static_cast<int>(request.job.heads.size()) : 2));
        CHECK_THAT(facts, ContainsSubstring(request.letter ? "612 x 792 pts (letter)" : "pts (A4)"));
        const std::string text = reader.text();
        CHECK(in_order(text, request.job.name));
        for (const Head& head : request.job.heads) CHECK(in_order(text, head.colour));
        for (const Word key : {Word::paper_stations, Word::list_before_run, Word::step_guards_closed,
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
    const char* samples[] = {"Paper-boat regatta shirt, front", "ángulo de la contrarracleta, 12.5°", "→ 686 mm × 1½"};
    for (const char* sample : samples)
        for (const TypeSize size : {TypeSize::small, TypeSize::body, TypeSize::title, TypeSize::large})
            for (const bool bold : {false, true}) {
                INFO(sample);
                const TypeStyle style{size, bold};
                // Dear ImGui's widths come from a raster of whole pixels.
                CHECK_THAT(static_cast<double>(type.width(style, sample)),
                           WithinAbs(static_cast<double>(fonts.width(style, sample)), 1.0));
                CHECK_THAT(static_cast<double>(type.height(style)), WithinAbs(static_cast<double>(fonts.height(style)), 0.01));
            }
    DrawingList list;
    list.begin({0.0f, 0.0f, 1050.0f, 1485.0f}, type);
    list.text({100.0f, 100.0f}, "contrarracleta", {TypeSize::title, true}, Role::ink, Role::paper);
    const PdfReader reader(made_pdf({{&list, {210.0, 297.0}, paper_mm_per_dp}}).bytes);
    const std::vector<FoundWord> words = reader.words();
    REQUIRE(words.size() == 1);
    const double points_per_dp = paper_mm_per_dp * 72.0 / 25.4;
    CHECK_THAT(words.front().x1 - words.front().x0,
               WithinAbs(points_per_dp * static_cast<double>(type.width({TypeSize::title, true}, "contrarracleta")), 0.1));
}

TEST_CASE("The same request gives the same bytes, another one others", "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, true);
    const std::string once = sheet_of(request).pdf;
    CHECK(sheet_of(request).pdf == once);
    std::set<std::string> different{once};
    for_every_kind([&](const SheetRequest& other) { different.insert(sheet_of(other).pdf); });
    CHECK(different.size() == 12);
}

TEST_CASE("The recipe's gaps are told head by head, heads with the same ones together", "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, false);
    Job& job = request.job;
    for (Head& head : job.heads) {
        head.squeegee.hardness = 0.0;
        head.squeegee.edge = BladeEdge::not_noted;
        head.notes = {};
    }
    job.heads[1].notes.ink = "plastisol";
    job.garment.name.clear();
    job.run.flash_temperature = job.run.dryer_temperature = 0.0;
    SheetInput input;
    prepare_sheet(request, input);
    const std::string all = all_texts(job_sheet(input.paper));
    std::string others;
    for (const Head& head : job.heads)
        if (head.id != job.heads[1].id) others += (others.empty() ? "" : ", ") + std::to_string(head.station);
    CHECK_THAT(all, ContainsSubstring("Heads " + others + ": stencil, ink, blade hardness, blade edge"));
    CHECK_THAT(all, ContainsSubstring("Head " + std::to_string(job.heads[1].station) + ": stencil, blade hardness, blade edge"));
    CHECK_THAT(all, ContainsSubstring("Job: garment, heat of the flash unit, dryer"));
}

TEST_CASE("Letters that neither face has are found once each; a plain one stands for them", "[paper]") {
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
    const std::string text = PdfReader(drawn.pdf).text();
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
            const Picture page = PdfReader(sheet_of(request).pdf).page(1, 150.0 / 25.4);
            std::vector<unsigned char> grey;
            for (std::size_t i = 0; i < page.rgba.size(); i += 4)
                grey.push_back(static_cast<unsigned char>((2 * page.rgba[i] + 5 * page.rgba[i + 1] + page.rgba[i + 2]) / 8));
            zbar::ImageScanner scanner;
            scanner.set_config(zbar::ZBAR_NONE, zbar::ZBAR_CFG_ENABLE, 0);
            scanner.set_config(zbar::ZBAR_QRCODE, zbar::ZBAR_CFG_ENABLE, 1);
            zbar::Image image(static_cast<unsigned>(page.width), static_cast<unsigned>(page.height), "Y800", grey.data(),
                              grey.size());
            scanner.scan(image);
            std::vector<std::string> found;
            for (auto symbol = image.symbol_begin(); symbol != image.symbol_end(); ++symbol)
                found.push_back(symbol->get_data());
            REQUIRE(found.size() == 1);
            CHECK(found.front() == "https://example.org/carriageway/#" + job_link_fragment(request.job));
            const ReadJob read = read_job_link(found.front());
            REQUIRE(read);
            CHECK(*read.job == request.job);
        }
}

#endif
