// Sheets as PDF from lists that no view would draw: numbers that are none or far away, empty lists,
// papers that don't exist, too little memory. The reader must take whatever comes out.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <deque>
#include <limits>
#include <random>

#include "app/drawing/pdf_memory.h"
#include "tests/app/painted.h"
#include "tests/app/pdf_reader.h"

using namespace carriageway;
using namespace carriageway::test;

namespace {

constexpr std::uint32_t white = 0xFFFFFF;
constexpr float not_a_number = std::numeric_limits<float>::quiet_NaN();
constexpr float inf = std::numeric_limits<float>::infinity();

PdfPage page_of(const DrawingList& list) { return {&list, pdf_a4, 0.25}; }

Picture seen(const Sheet& sheet) {
    return PdfReader(made_pdf({page_of(sheet.list)}).bytes).page(1, 4.0);
}

/// One mark of every kind that has this number somewhere.
void draw_with(DrawingList& list, float odd, int where) {
    const auto pick = [&](int place, float plain) { return where == place ? odd : plain; };
    const Vec corners[] = {{pick(0, 10), 10}, {90, pick(1, 20)}, {50, 80}};
    const Paint colour = own_colour(red);
    list.fill(corners, 3, colour);
    list.line(corners, 3, colour, pick(2, 3));
    list.loop(corners, 3, colour, pick(3, 3));
    list.hatch(corners, 3, colour, pick(4, 1), pick(5, 8), pick(6, 1), pick(7, 0));
    list.round({pick(0, 10), 10, 90, pick(1, 80)}, pick(8, 4), colour);
    list.ring({10, pick(1, 10), pick(0, 90), 80}, pick(9, 4), colour, pick(10, 2));
    list.disc({pick(0, 50), pick(1, 50)}, pick(11, 20), colour);
    list.circle({50, pick(0, 50)}, pick(12, 20), colour, pick(13, 2));
    list.push_clip({pick(14, 0), 0, 100, pick(15, 100)});
    list.text({pick(0, 20), pick(1, 20)}, "232 mm", {}, Role::ink, Role::paper);
    list.pop_clip();
}
constexpr int places = 16;

} // namespace

TEST_CASE("numbers that are none leave out their mark and no other", "[pdf]") {
    std::deque<Sheet> sheets;
    std::vector<PdfPage> pages;
    for (int where = 0; where < places; ++where) {
        for (const float odd : {not_a_number, inf, -inf}) {
            sheets.emplace_back(840.0f, 1188.0f);
            draw_with(sheets.back().list, odd, where);
            sheets.back().list.round({400, 400, 500, 500}, 0.0f, own_colour(blue));
            pages.push_back(page_of(sheets.back().list));
            const PdfFile file = made_pdf({pages.back()});
            INFO("place " << where << ", " << odd);
            CHECK(file.left_out == (where == 0 ? 9 : where == 1 ? 8 : where < 14 ? 1 : 0));
        }
    }
    const PdfReader reader(made_pdf(pages).bytes);
    for (int page = 1; page <= static_cast<int>(pages.size()); page += 7)
        CHECK(reader.page(page, 1.0).at(112, 112) == blue);
}

TEST_CASE("numbers of any size crash nothing and can be read", "[pdf]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    std::uniform_real_distribution<float> digits(-10.0f, 10.0f);
    std::uniform_int_distribution<int> power(-44, 37), place(0, places);
    std::deque<Sheet> sheets;
    std::vector<PdfPage> pages;
    for (int i = 0; i < 150; ++i) {
        sheets.emplace_back(840.0f, 1188.0f);
        for (int round = 0; round < 4; ++round)
            draw_with(sheets.back().list,
                      digits(source) * std::pow(10.0f, static_cast<float>(power(source))),
                      place(source));
        pages.push_back(page_of(sheets.back().list));
    }
    for (const float least :
         {std::numeric_limits<float>::denorm_min(), std::numeric_limits<float>::max(),
          std::numeric_limits<float>::lowest()}) {
        sheets.emplace_back(840.0f, 1188.0f);
        for (int where = 0; where < places; ++where) draw_with(sheets.back().list, least, where);
        pages.push_back(page_of(sheets.back().list));
    }
    const PdfReader reader(made_pdf(pages).bytes);
    CHECK_FALSE(reader.text().empty());
    for (int page = 1; page <= static_cast<int>(pages.size()); page += 10)
        CHECK(reader.page(page, 1.0).width == 210);
}

TEST_CASE("what reaches far beyond the page is right on it", "[pdf]") {
    Sheet sheet(840, 1188);
    const Vec half[] = {{-1e9f, -1e9f}, {200.0f, -1e9f}, {200.0f, 1e9f}, {-1e9f, 1e9f}};
    const Vec across[] = {{-1e7f, 600.0f}, {1e7f, 600.0f}};
    const Vec band[] = {{-1e7f, 800.0f}, {1e7f, 800.0f}, {1e7f, 1e7f}, {-1e7f, 1e7f}};
    sheet.list.fill(half, 4, own_colour(blue));
    sheet.list.line(across, 2, own_colour(red), 10.0f);
    sheet.list.loop(band, 4, own_colour(red), 10.0f);
    sheet.list.round({600, 900, 1e8f, 1e8f}, 0.0f, own_colour(blue));
    sheet.list.ring({-1e8f, 1000, 1e8f, 1e8f}, 0.0f, own_colour(red), 8.0f);
    const Picture picture = seen(sheet);
    CHECK(picture.at(100, 100) == blue);
    CHECK(picture.at(198, 500) == blue);
    CHECK(picture.at(202, 500) == white);
    CHECK(picture.at(500, 600) == red);
    CHECK(picture.at(500, 590) == white);
    CHECK(picture.at(500, 801) == red);
    CHECK(picture.at(700, 950) == blue);
    CHECK(picture.at(300, 1004) == red);
    CHECK(picture.at(300, 1012) == white);
}

TEST_CASE("what reaches far beyond the page keeps its slant", "[pdf]") {
    Sheet sheet(840, 1188);
    // Under the line y = x / 2, and beside the line y = 600 - x / 4.
    const Vec under[] = {{-1e6f, -5e5f}, {1e6f, 5e5f}, {-1e6f, 5e5f}};
    const Vec beside[] = {{-4e6f, 1000600.0f}, {4e6f, -999400.0f}};
    sheet.list.fill(under, 3, own_colour(blue));
    sheet.list.line(beside, 2, own_colour(red), 8.0f);
    const Picture picture = seen(sheet);
    CHECK(picture.at(600, 310) == blue);
    CHECK(picture.at(600, 290) == white);
    CHECK(picture.at(100, 60) == blue);
    CHECK(picture.at(100, 40) == white);
    CHECK(picture.at(400, 500) == red);
    CHECK(picture.at(100, 575) == red);
}

TEST_CASE("empty lists are empty pages, and words without letters nothing", "[pdf]") {
    Sheet nothing(840, 1188), blank(840, 1188);
    blank.list.text({100, 100}, "", {}, Role::ink, Role::paper);
    blank.list.text({100, 100}, std::string_view("\0", 1), {}, Role::ink, Role::paper);
    blank.list.push_clip({50, 50, 50, 50});
    blank.list.round({0, 0, 100, 100}, 0.0f, own_colour(red));
    const PdfFile file = made_pdf({page_of(nothing.list), {}, page_of(blank.list)});
    CHECK(file.replaced == std::vector<std::string>{std::string(1, '\0')});
    const PdfReader reader(file.bytes);
    CHECK(marked(reader.page(1, 2.0), white).pixels == 0);
    CHECK(marked(reader.page(2, 2.0), white).pixels == 0);
    CHECK(reader.page(3, 2.0).at(20, 20) == white);
}

TEST_CASE("pages that can't be are refused with the reason", "[pdf]") {
    Sheet sheet(840, 1188);
    CHECK(paint_pdf({}, {}).trouble == PdfTrouble::no_page);
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const double odd : {0.0, -210.0, 1.0, 1e9, none, double(inf)}) {
        const PdfPage pages[] = {{&sheet.list, {odd, 297.0}, 0.25}};
        CHECK(paint_pdf(pages, {}).trouble == PdfTrouble::paper);
        const PdfPage turned[] = {page_of(sheet.list), {&sheet.list, {297.0, odd}, 0.25}};
        CHECK(paint_pdf(turned, {}).trouble == PdfTrouble::paper);
    }
    for (const double odd : {0.0, -1.0, 1e9, none, double(inf)}) {
        const PdfPage pages[] = {{&sheet.list, pdf_a4, odd}};
        CHECK(paint_pdf(pages, {}).trouble == PdfTrouble::paper);
    }
    const PdfPage pages[] = {page_of(sheet.list)};
    for (const PdfTime time :
         {PdfTime{2026, 2, 29}, PdfTime{2026, 13, 1}, PdfTime{2026, 1, 1, 24, 0, 0},
          PdfTime{2026, 1, 1, 0, -1, 0}, PdfTime{0, 1, 1}, PdfTime{2026, 1, 0}}) {
        PdfOptions options;
        options.made = time;
        const PdfFile file = paint_pdf(pages, options);
        CHECK(file.trouble == PdfTrouble::time);
        CHECK(file.bytes.empty());
    }
}

TEST_CASE("too little memory is said, whenever it runs out, and gives no half file", "[pdf]") {
    Sheet sheet(840, 1188);
    for (int i = 0; i < 40; ++i) draw_with(sheet.list, static_cast<float>(i), i % places);
    sheet.list.text({100, 100}, "Paro \xE2\x86\x92", {TypeSize::title, true}, Role::ink,
                    Role::paper);
    sheet.list.disc({100, 260}, 50.0f, paint(Role::stop, 90));
    const PdfPage pages[] = {page_of(sheet.list), page_of(sheet.list)};
    PdfOptions options;
    options.title = "Hoja";
    options.language = std::string("es");
    options.made = PdfTime{};
    const std::string whole = paint_pdf(pages, options).bytes;
    REQUIRE_FALSE(whole.empty());
    int refused = 0;
    for (options.memory = 0;; options.memory += 1 + options.memory / 300) {
        const PdfFile file = paint_pdf(pages, options);
        if (file.trouble == PdfTrouble::none) {
            CHECK(file.bytes == whole);
            break;
        }
        ++refused;
        CHECK(file.trouble == PdfTrouble::memory);
        CHECK(file.bytes.empty());
        REQUIRE(options.memory < std::size_t{64} << 20);
    }
    INFO("enough: " << options.memory << " bytes");
    CHECK(refused > 500);
}

TEST_CASE("memory of a PDF has a limit and comes back", "[pdf]") {
    CHECK(PdfMemory::take(1) == nullptr); // outside a PDF there is none
    PdfMemory memory(1000);
    void* const most = PdfMemory::take(900);
    REQUIRE(most != nullptr);
    CHECK(reinterpret_cast<std::uintptr_t>(most) % alignof(std::max_align_t) == 0);
    CHECK_FALSE(memory.ran_out());
    CHECK(PdfMemory::take(101) == nullptr);
    CHECK(memory.ran_out());
    {
        PdfMemory inner(50);
        CHECK(PdfMemory::take(60) == nullptr);
        CHECK(PdfMemory::take(50) != nullptr); // given back by its end
    }
    PdfMemory::give(most);
    PdfMemory::give(nullptr);
    CHECK(PdfMemory::take(1000) != nullptr);
    CHECK(memory.most() == 1000);
}
