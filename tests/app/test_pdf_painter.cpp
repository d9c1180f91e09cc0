// Sheets as PDF, read back by an independent reader: what is where, how large pages are, that
// nothing but the lists decides the bytes.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <numbers>
#include <random>
#include <sstream>

#include "tests/app/painted.h"
#include "tests/app/pdf_reader.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::WithinAbs;

namespace {

constexpr std::uint32_t white = 0xFFFFFF;

/// A page on which a dp is a quarter of a millimetre: a pixel, where four go to one.
constexpr double quarter_mm = 0.25;
PdfPage page_of(const Sheet& sheet, PdfPaper paper = pdf_a4) {
    return {&sheet.list, paper, quarter_mm};
}

/// The page in such pixels: 840 by 1188, which the reader rounds up.
Picture seen(const Sheet& sheet) {
    Picture picture = PdfReader(made_pdf({page_of(sheet)}).bytes).page(1, 4.0);
    REQUIRE((std::abs(picture.width - 840) <= 1 && std::abs(picture.height - 1188) <= 1));
    return picture;
}

} // namespace

TEST_CASE("pages have the size of their paper, upright and turned", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.round({0, 0, 100, 100}, 0.0f, own_colour(red));
    const PdfPaper papers[] = {pdf_a4, pdf_a4.turned(), pdf_letter, pdf_letter.turned()};
    std::vector<PdfPage> pages;
    for (const PdfPaper& paper : papers) pages.push_back(page_of(sheet, paper));
    std::istringstream facts(PdfReader(made_pdf(pages).bytes).facts());
    std::size_t found = 0;
    for (std::string line; std::getline(facts, line);) {
        std::istringstream words(line);
        std::string page, size, by;
        int number = 0;
        double width = 0.0, height = 0.0;
        if (!(words >> page >> number >> size >> width >> by >> height) || size != "size:")
            continue;
        REQUIRE(found < std::size(papers));
        INFO(line);
        CHECK_THAT(width / 72.0 * 25.4, WithinAbs(papers[found].width, 0.01));
        CHECK_THAT(height / 72.0 * 25.4, WithinAbs(papers[found].height, 0.01));
        ++found;
    }
    CHECK(found == std::size(papers));
}

TEST_CASE("a box stands on paper where the list has it, to scale", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.round({100, 200, 300, 260}, 0.0f, own_colour(red));
    const Picture picture = seen(sheet);
    // To a tenth of a pixel's share of the edge, which the reader blends.
    const Marked box = marked(picture, white, 26);
    CHECK((box.x0 == 100 && box.y0 == 200 && box.x1 == 299 && box.y1 == 259));
    CHECK(box.pixels == 200 * 60);
    CHECK(picture.at(200, 230) == red);
}

TEST_CASE("every kind of mark is painted as on the screen", "[pdf]") {
    Sheet sheet(840, 1188);
    DrawingList& list = sheet.list;
    const Vec bent[] = {{40, 40}, {160, 60}, {60, 160}};
    const Vec plate[] = {{200, 40}, {360, 60}, {340, 160}, {220, 150}};
    list.line(bent, 3, own_colour(red), 6.0f);
    list.fill(plate, 4, own_colour(blue));
    list.loop(plate, 4, own_colour(red), 4.0f);
    list.hatch(plate, 4, own_colour(white), 0.6f, 20.0f, 5.0f, 3.0f);
    list.round({400, 40, 560, 160}, 30.0f, own_colour(red));
    list.ring({600, 40, 760, 160}, 30.0f, own_colour(blue), 8.0f);
    list.ring({620, 60, 640, 70}, 2.0f, own_colour(red), 8.0f);
    list.disc({100, 260}, 50.0f, own_colour(red));
    list.circle({260, 260}, 50.0f, own_colour(blue), 10.0f);
    list.circle({400, 260}, 6.0f, own_colour(blue), 10.0f);
    list.push_clip({480, 220, 560, 300});
    list.disc({480, 260}, 60.0f, own_colour(red));
    list.push_clip({500, 200, 700, 240});
    list.disc({540, 260}, 60.0f, own_colour(blue));
    list.pop_clip();
    list.round({550, 290, 700, 400}, 0.0f, own_colour(blue));
    list.pop_clip();
    const Picture paper = seen(sheet), screen = sheet.picture();
    const std::uint32_t ground = colour_of(Theme::light, Role::paper);
    int compared = 0, unlike = 0;
    for (int y = 0; y < screen.height; ++y) {
        for (int x = 0; x < screen.width; ++x) {
            const std::uint32_t on_screen = screen.at(x, y) == ground ? white : screen.at(x, y);
            if (on_screen == white && paper.at(x, y) == white) continue;
            ++compared;
            if (apart(paper.at(x, y), on_screen) > 130) ++unlike;
        }
    }
    INFO(unlike << " of " << compared);
    CHECK(compared > 50000);
    CHECK(unlike * 500 < compared); // where a corner is cut a little differently
}

TEST_CASE("hatching ends at the sides of its polygon, and lies where the screen has it", "[pdf]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    const std::vector<Vec> polygon = random_polygon(source, 6);
    std::vector<Vec> large;
    for (const Vec& corner : polygon) large.push_back(corner * 6.0f);
    const float angle = 0.9f, spacing = 24.0f, phase = 5.0f;
    Sheet sheet(840, 1188);
    sheet.list.hatch(large.data(), static_cast<int>(large.size()), own_colour(red), angle, spacing,
                     6.0f, phase);
    const Picture picture = seen(sheet);
    int on = 0, off = 0;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            const double away = outside_by(large, x + 0.5, y + 0.5);
            const double level =
                -std::sin(double(angle)) * (x + 0.5) + std::cos(double(angle)) * (y + 0.5);
            const double from_line =
                std::abs(std::remainder(level - double(phase), double(spacing)));
            if (away > 1.5 || from_line > 4.5) {
                ++off;
                CHECKED_IF(picture.at(x, y) != white) { FAIL("painted at " << x << ", " << y); }
            } else if (away < -1.5 && from_line < 1.5) {
                ++on;
                CHECKED_IF(picture.at(x, y) != red) { FAIL("not painted at " << x << ", " << y); }
            }
        }
    }
    CHECK(on > 1000);
    CHECK(off > 100000);
}

TEST_CASE("what can be seen through is mixed once with what is behind it", "[pdf]") {
    Sheet sheet(840, 1188);
    Paint glass = own_colour(blue);
    glass.alpha = 102; // 0.4
    // Two halves of a square side by side, then a square that covers a part of another.
    const Vec left[] = {{100, 100}, {150, 100}, {150, 200}, {100, 200}};
    const Vec right[] = {{150, 100}, {200, 100}, {200, 200}, {150, 200}};
    const Vec over_it[] = {{180, 150}, {260, 150}, {260, 250}, {180, 250}};
    for (const Vec* each : {left, right, over_it}) sheet.list.fill(each, 4, glass);
    sheet.list.round({300, 100, 400, 200}, 0.0f, own_colour(red));
    const Picture picture = seen(sheet);
    const std::uint32_t once = over(blue, white, 0.4), twice = over(blue, once, 0.4);
    CHECK(apart(picture.at(120, 120), once) <= 2);
    CHECK(apart(picture.at(149, 120), once) <= 2); // no line where they meet
    CHECK(apart(picture.at(150, 120), once) <= 2);
    CHECK(apart(picture.at(240, 230), once) <= 2);
    CHECK(apart(picture.at(190, 170), twice) <= 3);
    CHECK(picture.at(350, 150) == red); // opaque again
}

TEST_CASE("pieces of one area show no lines between them", "[pdf]") {
    INFO("seed " << Catch::getSeed());
    std::mt19937 source(Catch::getSeed());
    std::vector<Vec> polygon = random_polygon(source, 9);
    for (Vec& corner : polygon) corner = corner * 6.0f;
    Sheet sheet(840, 1188);
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        Vec piece[] = {polygon[0], polygon[i - 1], polygon[i]};
        if (i % 2 == 0) std::swap(piece[0], piece[1]); // either way round
        sheet.list.fill(piece, 3, own_colour(red));
    }
    const Picture picture = seen(sheet);
    int inside = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            if (outside_by(polygon, x + 0.5, y + 0.5) < -1.5) {
                ++inside;
                CHECKED_IF(picture.at(x, y) != red) { FAIL("a gap at " << x << ", " << y); }
            }
    CHECK(inside > 10000);
}

TEST_CASE("opaque areas that lie over each other leave no hole, whichever way round they run",
          "[pdf]") {
    Sheet sheet(840, 1188);
    const Vec one[] = {{100, 100}, {200, 100}, {200, 200}, {100, 200}};
    const Vec other[] = {{150, 150}, {150, 250}, {250, 250}, {250, 150}};
    sheet.list.fill(one, 4, own_colour(red));
    sheet.list.fill(other, 4, own_colour(red));
    const Picture picture = seen(sheet);
    for (const int at : {101, 149, 151, 175, 198, 202, 248}) CHECK(picture.at(at, at) == red);
    CHECK(picture.at(120, 230) == white);
    CHECK(picture.at(230, 120) == white);
}

TEST_CASE("layers lie over each other in their order, whatever order they were drawn in", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.set_layer(2);
    sheet.list.round({100, 100, 200, 200}, 0.0f, own_colour(red));
    sheet.list.set_layer(0);
    sheet.list.round({50, 50, 150, 150}, 0.0f, own_colour(blue));
    const Picture picture = seen(sheet);
    CHECK(picture.at(125, 125) == red);
    CHECK(picture.at(75, 75) == blue);
}

TEST_CASE("the same lists give the same bytes, and the date only where one is given", "[pdf]") {
    Sheet sheet(840, 1188);
    sheet.list.text({100, 100}, "Rasqueta 232 mm", {}, Role::ink, Role::paper);
    sheet.list.disc({100, 260}, 50.0f, paint(Role::stop, 90));
    PdfOptions options;
    options.title = "Prensa";
    options.language = std::string("es");
    const std::string first = made_pdf({page_of(sheet), page_of(sheet)}, options).bytes;
    CHECK(made_pdf({page_of(sheet), page_of(sheet)}, options).bytes == first);
    CHECK(PdfReader(first).facts().find("CreationDate") == std::string::npos);
    CHECK(PdfReader(first).facts().find("Author") == std::string::npos);
    CHECK(first.find("/Lang (es)") != std::string::npos);
    CHECK(first.find("/PrintScaling") == std::string::npos);

    options.made = PdfTime{2026, 2, 28, 13, 5, 9};
    options.full_size = true;
    options.title =
        "Hoja «\xC3\xB1» \xE2\x86\x92 \xF0\x9F\x98\x80"; // beyond CP1252 and beyond 16 bits
    const std::string dated = made_pdf({page_of(sheet)}, options).bytes;
    const std::string facts = PdfReader(dated).facts();
    CHECK(facts.find("Feb 28 13:05:09 2026") != std::string::npos);
    CHECK(facts.find(options.title) != std::string::npos);
    CHECK(dated.find("/PrintScaling /None") != std::string::npos);
}
