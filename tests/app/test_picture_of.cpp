// Pictures as the command line asks for them: no display, the same list as the screen.
#include <cmath>
#include <cstdint>
#include <set>

#include <catch2/catch_test_macros.hpp>

#include "app/picture_of.h"
#include "app/session.h"

using namespace carriageway;

namespace {

/// Width and height from a PNG's header (PNG specification, 11.2.2): big-endian at bytes 16 and 20.
std::uint32_t number_at(const std::string& png, std::size_t at) {
    std::uint32_t number = 0;
    for (std::size_t i = at; i < at + 4; ++i) number = number << 8 | static_cast<unsigned char>(png[i]);
    return number;
}

PictureRequest request_of(const std::string& place, int station) {
    PictureRequest request;
    request.job = demo_job();
    request.place = place;
    request.station = station;
    request.width = 360;
    request.height = 740;
    return request;
}

} // namespace

TEST_CASE("A picture has the size asked for, in every place, theme and language") {
    for (const std::string& place : picture_places())
        for (const double scale : {0.5, 1.0, 2.75}) {
            PictureRequest request = request_of(place, 0);
            request.scale = scale;
            const DrawnPicture drawn = picture_of(request);
            CHECK(drawn.trouble.empty());
            REQUIRE(drawn.png.size() > 1000);
            CHECK(drawn.png.substr(1, 3) == "PNG");
            CHECK(number_at(drawn.png, 16) == static_cast<std::uint32_t>(std::lround(360 * scale)));
            CHECK(number_at(drawn.png, 20) == static_cast<std::uint32_t>(std::lround(740 * scale)));
        }
}

TEST_CASE("The same request gives the same picture, another one another") {
    const PictureRequest request = request_of("press", 5);
    const std::string light = picture_of(request).png;
    CHECK(picture_of(request).png == light);
    PictureRequest dark = request;
    dark.dark = true;
    CHECK(picture_of(dark).png != light);
    PictureRequest spanish = request;
    spanish.language = Language::spanish;
    CHECK(picture_of(spanish).png != light);
    CHECK(picture_of(request_of("press", 6)).png != light);
    CHECK(picture_of(request_of("press", 0)).png != light);
    std::set<std::string> places;
    for (const std::string& place : picture_places()) places.insert(picture_of(request_of(place, 5)).png);
    CHECK(places.size() == picture_places().size());
    PictureRequest mended = request;
    find_head(mended.job, head_on(mended.job, 5)->id)->stops.machine_side += 44.0;
    CHECK(picture_of(mended).png != light);
}
