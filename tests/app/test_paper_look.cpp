// The theme on paper: what can be read, and what is told apart without colour.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <map>
#include <numbers>
#include <set>
#include <tuple>

#include "app/drawing/pdf_polygon.h"
#include "app/drawing/pdf_painter.h"
#include "tests/app/driver.h"
#include "tests/app/pdf_reader.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::WithinAbs;

namespace {

constexpr PaperLook looks[] = {PaperLook::colour, PaperLook::black};

// WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (parts of graphics).
constexpr double least_for_text = 4.5, least_for_marks = 3.0;

void require_contrast(PaperLook look, Role front, Role back, double least) {
    INFO((look == PaperLook::black ? "black " : "colour ") << int(front) << " on " << int(back));
    CHECK(contrast(paper_colour(look, front), paper_colour(look, back)) >= least);
}

struct Pair {
    Role front, back;
};

} // namespace

TEST_CASE("paper is white and ink black", "[paper]") {
    for (const PaperLook look : looks) {
        CHECK(paper_colour(look, Role::paper) == 0xFFFFFFu);
        CHECK(paper_colour(look, Role::panel) == 0xFFFFFFu);
        CHECK(paper_colour(look, Role::ink) == 0x000000u);
    }
    CHECK(paper_colour(PaperLook::colour, Role::squeegee) ==
          colour_of(Theme::light, Role::squeegee));
}

TEST_CASE("words and lines can be read on paper", "[paper]") {
    const Role words[] = {Role::ink,  Role::soft_ink, Role::squeegee, Role::flood,
                          Role::stop, Role::mind,     Role::fit};
    const Role backs[] = {Role::paper, Role::panel,   Role::card,  Role::quiet,
                          Role::mesh,  Role::station, Role::platen};
    const Pair others[] = {{Role::on_frame, Role::frame},      {Role::on_strong, Role::strong},
                           {Role::covered_ink, Role::covered}, {Role::ink, Role::covered},
                           {Role::soft_ink, Role::covered},    {Role::stop, Role::stop_fill},
                           {Role::ink, Role::stop_fill}};
    const Role lines[] = {Role::squeegee, Role::flood,  Role::stop,    Role::image, Role::focus,
                          Role::mind,     Role::strong, Role::allowed, Role::edge};
    const Pair marks[] = {{Role::squeegee, Role::covered}, {Role::flood, Role::covered},
                          {Role::stop, Role::covered},     {Role::stop, Role::rail},
                          {Role::image, Role::covered},    {Role::ink, Role::rail},
                          {Role::allowed, Role::rail},     {Role::lamp_on, Role::lamp_off},
                          {Role::lamp_off, Role::frame},   {Role::on_frame, Role::lamp_on}};
    for (const PaperLook look : looks) {
        for (const Role back : backs) {
            for (const Role word : words) require_contrast(look, word, back, least_for_text);
            if (back == Role::station) continue; // has no lines on it
            for (const Role line : lines) require_contrast(look, line, back, least_for_marks);
        }
        for (const Pair& pair : others)
            require_contrast(look, pair.front, pair.back, least_for_text);
        for (const Pair& pair : marks)
            require_contrast(look, pair.front, pair.back, least_for_marks);
    }
}

TEST_CASE("in black everything is a grey of the same luminance", "[paper]") {
    for (int role = 0; role < static_cast<int>(Role::count); ++role) {
        const std::uint32_t rgb = paper_colour(PaperLook::black, static_cast<Role>(role));
        CHECK(rgb == (rgb & 0xFFu) * 0x010101u);
    }
    for (const std::uint32_t ink :
         {0x000000u, 0xFFFFFFu, 0xD02010u, 0x1030C0u, 0xF0E442u, 0x010203u}) {
        const std::uint32_t grey = paper_colour(PaperLook::black, own_colour(ink));
        CHECK(grey == (grey & 0xFFu) * 0x010101u);
        CHECK_THAT(luminance(grey), WithinAbs(luminance(ink), 0.005));
        CHECK(paper_colour(PaperLook::colour, own_colour(ink)) == ink);
    }
}

TEST_CASE("without colour, bands and missed image are told apart by their hatching", "[paper]") {
    Driver driver(desktop);
    driver.settle();
    // All hatching of one polygon together: unprinted image is crossed, a band isn't.
    using Lines = std::tuple<int, int, int>; // angle in degrees, spacing and width in tenths of a dp
    using Pattern = std::set<Lines>;
    const DrawingList& list = driver.list();
    std::map<std::pair<Role, std::vector<float>>, Pattern> hatched;
    for (const Mark& mark : list.marks()) {
        if (mark.kind != MarkKind::hatch) continue;
        std::vector<float> corners;
        for (std::uint32_t i = 0; i < mark.count; ++i)
            corners.insert(corners.end(), {list.points(mark)[i].x, list.points(mark)[i].y});
        const double turn = double(mark.angle) * 180.0 / std::numbers::pi;
        const int degrees = (static_cast<int>(std::lround(turn)) % 180 + 180) % 180;
        hatched[{mark.colour.role, corners}].insert({degrees, int(std::lround(mark.spacing * 10.0f)),
                                                     int(std::lround(mark.width * 10.0f))});
    }
    std::map<Role, std::set<Pattern>> patterns;
    for (const auto& [where, pattern] : hatched) patterns[where.first].insert(pattern);
    for (const Role role : {Role::squeegee, Role::flood, Role::stop})
        REQUIRE(patterns.count(role) == 1);
    for (const auto& [role, of_it] : patterns)
        for (const auto& [other, of_other] : patterns)
            for (const Pattern& pattern : of_it) {
                INFO(int(role) << " and " << int(other) << ", " << pattern.size() << " ways");
                CHECK((role == other || of_other.count(pattern) == 0));
            }
}

TEST_CASE("the program's drawing in black has only greys", "[paper][pdf]") {
    Driver driver(desktop);
    driver.settle();
    PdfOptions options;
    options.look = PaperLook::black;
    const PdfFile file = made_pdf({{&driver.list(), pdf_a4.turned(), 297.0 / 1440.0}}, options);
    CHECK(file.left_out == 0);
    const Picture picture = PdfReader(file.bytes).page(1, 4.0);
    int coloured = 0, dark = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x) {
            const std::uint32_t rgb = picture.at(x, y);
            if (rgb != (rgb & 0xFFu) * 0x010101u) ++coloured;
            if (luminance(rgb) < 0.1) ++dark;
        }
    CHECK(coloured == 0);
    CHECK(dark > 5000);
}
