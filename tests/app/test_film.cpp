// A film dropped on the window becomes the image of the head that is open.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <cstdio>
#include <functional>
#include <vector>

#include <png.h>

#include "app/records/job_link.h"
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

/// A film of which a frame reads a part only (app/film.cpp: two million pixels).
std::string large_film(const ScratchFolder& folder) {
    return film(folder, 3000, 1000, 500, 2000, 1500, 10000);
}

/// Drops a film and lets one frame pass: it is being read then.
void start(Driver& driver, const std::string& path) {
    driver.give_file(path);
    REQUIRE(driver.loop().turn());
    REQUIRE(driver.find("notice").label.find("Reading film.png") != std::string::npos);
}

/// An L about a middle far from its own: x 10 to 110, y 50 to 200; by hand 10 000 mm² of 15 000.
Image off_centre_image() {
    Image image;
    image.outline = {{10, 50}, {110, 50}, {110, 100}, {60, 100}, {60, 200}, {10, 200}};
    image.width = 100.0;
    image.length = 150.0;
    image.offset_x = 3.3;
    image.offset_y = -7.1;
    return image;
}

void check_same(const Outline& a, const Outline& b) {
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        CHECK(std::abs(a[i].x - b[i].x) < 1e-9);
        CHECK(std::abs(a[i].y - b[i].y) < 1e-9);
    }
}

Outline placed(const Image& image) {
    Outline out;
    place_image(image, out);
    return out;
}

/// A rectangle's corners as place_image() has them, unturned.
Outline corners_of(const Rect& rect) {
    return {{rect.left, rect.lo}, {rect.right, rect.lo}, {rect.right, rect.hi}, {rect.left, rect.hi}};
}

} // namespace

TEST_CASE("A film with a resolution becomes the open head's image, and undo brings the old one back") {
    const ScratchFolder folder;
    Driver driver(phone);
    driver.tap("head/5");
    const Image before = head_on(driver.session().job(), 5)->image;
    // Ten pixels a millimetre: 100 by 100 mm with a block of 40 by 60 mm.
    driver.drop_file(film(folder, 1000, 300, 200, 700, 800, 10000));
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
    const double width = bounds_of(placed(head_on(driver.session().job(), 5)->image)).width();
    driver.drop_file(film(folder, 400, 0, 0, 400, 200, 0));
    const Rect bounds = bounds_of(head_on(driver.session().job(), 5)->image.outline);
    CHECK(bounds.width() == Approx(width).margin(0.01 * width));
    CHECK(driver.find("notice").label.find("resolution") != std::string::npos);
}

TEST_CASE("Films that can't be read say why and change nothing") {
    const ScratchFolder folder;
    Driver driver(phone);
    const std::string path = film(folder, 400, 10, 10, 300, 200, 10000);
    driver.drop_file(path); // no head is open
    CHECK(driver.find("notice").label.find("head") != std::string::npos);
    CHECK_FALSE(driver.session().can_undo());
    driver.tap("head/5");
    const std::string bytes = bytes_of(path);
    write_bytes(path, bytes.substr(0, bytes.size() / 2));
    driver.drop_file(path);
    CHECK(driver.find("notice").label.size() > 20);
    CHECK_FALSE(driver.session().can_undo());
    CHECK(head_on(driver.session().job(), 5)->image.outline.empty());
}

TEST_CASE("A film that is being read never lands in another job") {
    struct Way {
        const char* name;
        std::function<void(Driver&, JobId)> go; ///< to the other job, of this id
    };
    const Way ways[] = {
        {"another is opened", [](Driver& d, JobId other) { d.program().act(OpenJob{other}); }},
        {"a new one is begun", [](Driver& d, JobId) { d.program().act(NewJob{}); }},
        {"one comes by a link",
         [](Driver& d, JobId) { d.program().open_link("#" + job_link_fragment(demo_job())); }},
        {"the open one is deleted",
         [](Driver& d, JobId) { d.program().act(RemoveJob{d.session().current()}); }},
    };
    for (const Way& way : ways) {
        INFO(way.name);
        const ScratchFolder folder;
        Driver driver(desktop, folder.path());
        const JobId first = driver.session().current();
        const Job of_first = driver.session().job();
        driver.program().act(DuplicateJob{first});
        REQUIRE(driver.session().rows().size() == 2);
        JobId other = 0;
        for (const JobRow& row : driver.session().rows())
            if (row.id != first) other = row.id;
        driver.tap("head/5");
        start(driver, large_film(folder));
        way.go(driver, other);
        REQUIRE(driver.session().current() != first);
        const Job before = driver.session().job();
        driver.settle();
        CHECK(driver.session().job() == before);
        CHECK_FALSE(driver.session().can_undo());
        if (driver.has("notice")) CHECK(driver.find("notice").label.find("film.png") == std::string::npos);
        const std::optional<Job> left = driver.session().read(first);
        if (left) CHECK(*left == of_first);
    }
}

TEST_CASE("A film that is read in several frames lands in its own job, and in no head that has gone") {
    const ScratchFolder folder;
    Driver driver(desktop);
    driver.tap("head/5");
    const Image before = head_on(driver.session().job(), 5)->image;
    const std::string path = large_film(folder);
    start(driver, path);
    driver.settle();
    CHECK_FALSE(head_on(driver.session().job(), 5)->image.outline.empty());
    driver.tap("notice/close");
    driver.tap("undo");
    start(driver, path);
    driver.program().act(DoEdit{Edit{RemoveHead{head_on(driver.session().job(), 5)->id}}});
    driver.settle();
    CHECK(driver.find("notice").label.find("film.png") != std::string::npos);
    driver.tap("notice/close");
    driver.tap("undo");
    CHECK(head_on(driver.session().job(), 5)->image == before);
}

TEST_CASE("An image's size as a rectangle leaves it where it was, with the same ink") {
    Driver driver(phone);
    driver.tap("head/5");
    const HeadId head = head_on(driver.session().job(), 5)->id;
    driver.program().act(DoEdit{Edit{Together{{Edit{SetImage{head, off_centre_image()}},
                                               Edit{SetNumber{head, Field::printed_share, 0.6}}}}}});
    driver.settle();
    const Job before = driver.session().job();
    REQUIRE(head_on(before, 5)->image == off_centre_image());
    driver.tap("section/image");
    driver.tap("film/rectangle");
    const Head& set = *head_on(driver.session().job(), 5);
    REQUIRE(set.image.outline.empty());
    const Rect was = bounds_of(placed(off_centre_image())), is = bounds_of(placed(set.image));
    check_same(corners_of(is), corners_of(was));
    // By hand: 0.6 of two thirds.
    CHECK(std::abs(set.deposit.printed_share - 0.4) < 1e-12);
    driver.tap("undo");
    CHECK(driver.session().job() == before);
}

TEST_CASE("The rectangle of a turned image is turned about the same place") {
    for (const double degrees : {-120.0, -90.0, 30.0, 90.0, 180.0}) {
        CAPTURE(degrees);
        Job job = demo_job();
        Head& head = job.heads.front();
        head.image = off_centre_image();
        head.image.rotation = radians(degrees);
        // The same rectangle as an outline, which place_image() turns about the outline's own middle.
        Image as_outline = head.image;
        as_outline.outline = corners_of(bounds_of(head.image.outline));
        const HeadId id = head.id;
        REQUIRE(apply(job, rectangle_edit(head)));
        check_same(placed(find_head(job, id)->image), placed(as_outline));
    }
}
