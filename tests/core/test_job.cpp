#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/job.h"
#include "tests/core/outlines.h"

using namespace carriageway;
using namespace carriageway::tests;
using Catch::Matchers::WithinAbs;

TEST_CASE("Heads are found by id and by station", "[job]") {
    Job job;
    job.heads.resize(2);
    job.heads[0].id = 7;
    job.heads[0].station = 2;
    job.heads[1].id = 3;
    job.heads[1].station = 5;
    CHECK(find_head(job, 3) == &job.heads[1]);
    CHECK(find_head(job, 0) == nullptr);
    CHECK(find_head(static_cast<const Job&>(job), 7) == &job.heads[0]);
    CHECK(head_on(job, 2) == &job.heads[0]);
    CHECK(head_on(job, 3) == nullptr);
}

TEST_CASE("A rectangular image lies about its offset", "[job]") {
    Image image;
    image.offset_x = 10.0;
    image.offset_y = -20.0;
    Outline placed;
    place_image(image, placed);
    CHECK(placed == Outline{{-140, -220}, {160, -220}, {160, 180}, {-140, 180}});
}

TEST_CASE("An outline is placed counter-clockwise whichever way it was given", "[job]") {
    Image image;
    image.outline = reversed(l_shape());
    image.rotation = radians(30.0);
    Outline placed;
    place_image(image, placed);
    CHECK_THAT(signed_area(placed), WithinAbs(6400.0, 1e-9));
    image.outline = l_shape();
    Outline same;
    place_image(image, same);
    CHECK_THAT(signed_area(same), WithinAbs(6400.0, 1e-9));
}

TEST_CASE("An image turns counter-clockwise about its own origin", "[job]") {
    Image image;
    image.outline = {{0, 0}, {100, 0}, {100, 40}, {0, 40}};
    image.offset_x = 5.0;
    image.rotation = radians(30.0);
    Outline placed;
    place_image(image, placed);
    REQUIRE(placed.size() == 4);
    CHECK(placed[0] == Point{5.0, 0.0});
    CHECK_THAT(placed[1].x, WithinAbs(5.0 + 86.6025403784, 1e-9));
    CHECK_THAT(placed[1].y, WithinAbs(50.0, 1e-9));
}

TEST_CASE("Quarter turns leave the sides upright", "[job]") {
    Image image;
    image.width = 300.0;
    image.length = 400.0;
    Outline placed;
    for (const double turn : {-270.0, -180.0, -90.0, 90.0, 180.0, 270.0, 360.0}) {
        image.rotation = radians(turn);
        place_image(image, placed);
        const Rect bounds = bounds_of(placed);
        for (const Point& corner : placed) {
            CHECK((corner.x == bounds.left || corner.x == bounds.right));
            CHECK((corner.y == bounds.lo || corner.y == bounds.hi));
        }
        const bool crosswise = turn == -270.0 || turn == -90.0 || turn == 90.0 || turn == 270.0;
        CHECK(bounds.width() == (crosswise ? 400.0 : 300.0));
    }
}

TEST_CASE("The opening is the frame less its profile all round", "[job]") {
    CHECK(opening_of(Screen{}) == Rect{-254.0, 254.0, -355.5, 355.5});
    Screen solid;
    solid.profile_width = 292.0;
    CHECK(opening_of(solid).empty());
    solid.profile_width = 400.0;
    CHECK(opening_of(solid).empty());
}

TEST_CASE("The platen lies about its own centre", "[job]") {
    CHECK(rect_of(Platen{}) == Rect{-203.0, 203.0, -249.5, 309.5});
}
