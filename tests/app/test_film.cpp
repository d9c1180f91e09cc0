// A film dropped on the window becomes the image of the head that is open.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cstdio>
#include <vector>

#include <png.h>

#include "app/text/sentences.h"
#include "tests/app/driver.h"
#include "tests/scratch_folder.h"

using namespace carriageway;
using Catch::Approx;

namespace {

/// A white film of `side` pixels with a black block from (x0, y0) to (x1, y1); `per_metre` 0: without
/// a resolution.
std::string film(const ScratchFolder& folder, int side, int x0, int y0, int x1, int y1, unsigned per_metre) {
    const std::string path = folder.file("film.png");
    std::FILE* file = std::fopen(path.c_str(), "wb");
    REQUIRE(file != nullptr);
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    png_init_io(png, file);
    png_set_IHDR(png, info, static_cast<png_uint_32>(side), static_cast<png_uint_32>(side), 8, PNG_COLOR_TYPE_GRAY,
                 PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    if (per_metre > 0) png_set_pHYs(png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
    png_write_info(png, info);
    for (int y = 0; y < side; ++y) {
        std::vector<png_byte> row(static_cast<std::size_t>(side), 255);
        if (y >= y0 && y < y1)
            for (int x = x0; x < x1; ++x) row[static_cast<std::size_t>(x)] = 0;
        png_write_row(png, row.data());
    }
    png_write_end(png, nullptr);
    png_destroy_write_struct(&png, &info);
    std::fclose(file);
    return path;
}

void drop(Driver& driver, const std::string& path) {
    InputEvent event;
    event.kind = InputKind::file;
    event.text = path;
    driver.window().happen(event);
    driver.settle();
}

} // namespace

TEST_CASE("A film with a resolution becomes the open head's image, and undo brings the old one back") {
    const ScratchFolder folder;
    Driver driver(phone);
    driver.tap("head/5");
    const Image before = head_on(driver.session().job(), 5)->image;
    // Ten pixels a millimetre: 100 by 100 mm with a block of 40 by 60 mm.
    drop(driver, film(folder, 1000, 300, 200, 700, 800, 10000));
    const Head& head = *head_on(driver.session().job(), 5);
    REQUIRE_FALSE(head.image.outline.empty());
    const Rect bounds = bounds_of(head.image.outline);
    CHECK(bounds.width() == Approx(40.0).margin(0.2));
    CHECK(bounds.length() == Approx(60.0).margin(0.2));
    CHECK(head.image.offset_y == before.offset_y);
    CHECK(head.deposit.printed_share == Approx(1.0).margin(0.02));
    // A typed width stretches it both ways.
    driver.tap("notice/close");
    driver.tap("section/image");
    driver.tap("head/5/image.width_mm");
    driver.pad("80");
    driver.tap("pad/accept");
    CHECK(bounds_of(head_on(driver.session().job(), 5)->image.outline).length() == Approx(120.0).margin(0.4));
    driver.tap("undo");
    driver.tap("undo");
    CHECK(head_on(driver.session().job(), 5)->image == before);
}

TEST_CASE("A film without a resolution is taken as wide as the image before, and says so") {
    const ScratchFolder folder;
    Driver driver(desktop);
    driver.tap("head/5");
    Outline placed;
    place_image(head_on(driver.session().job(), 5)->image, placed);
    const double width = bounds_of(placed).width();
    drop(driver, film(folder, 400, 0, 0, 400, 200, 0));
    const Rect bounds = bounds_of(head_on(driver.session().job(), 5)->image.outline);
    CHECK(bounds.width() == Approx(width).margin(0.01 * width));
    CHECK(driver.find("notice").label.find("resolution") != std::string::npos);
}

TEST_CASE("Films that can't be read say why and change nothing") {
    const ScratchFolder folder;
    Driver driver(phone);
    const std::string path = film(folder, 400, 10, 10, 300, 200, 10000);
    drop(driver, path); // no head is open
    CHECK(driver.find("notice").label.find("head") != std::string::npos);
    CHECK_FALSE(driver.session().can_undo());
    driver.tap("head/5");
    const std::string bytes = bytes_of(path);
    write_bytes(path, bytes.substr(0, bytes.size() / 2));
    drop(driver, path);
    CHECK(driver.find("notice").label.size() > 20);
    CHECK_FALSE(driver.session().can_undo());
    CHECK(head_on(driver.session().job(), 5)->image.outline.empty());
}
