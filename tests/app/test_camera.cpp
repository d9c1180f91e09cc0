// The camera: from the press plane to the screen and back.
#include "app/drawing/camera.h"
#include "app/drawing/diagram.h"

#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <numbers>
#include <random>

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double pi = std::numbers::pi;

/// Random cameras and points; the seed is Catch2's, which it prints.
class Chance {
  public:
    double between(double lo, double hi) {
        return std::uniform_real_distribution<double>(lo, hi)(source_);
    }
    Projection projection() {
        Projection p;
        p.view = {static_cast<float>(between(0, 200)), static_cast<float>(between(0, 200)),
                  static_cast<float>(between(500, 1400)), static_cast<float>(between(500, 1000))};
        p.camera.scale = std::exp(between(std::log(least_scale), std::log(most_scale)));
        p.camera.turn = between(-7.0, 7.0);
        p.camera.centre = {between(-2000, 2000), between(-2000, 2000)};
        return p;
    }
    Vec on(const Box& box) {
        return {static_cast<float>(between(double(box.x0), double(box.x1))),
                static_cast<float>(between(double(box.y0), double(box.y1)))};
    }

  private:
    std::mt19937 source_{Catch::getSeed()};
};

PressProfile press_of(int stations, Turning turning) {
    PressProfile press;
    press.stations = stations;
    press.turning = turning;
    return press;
}

double angle_of(Point p) { return std::atan2(p.y, p.x); }

}  // namespace

TEST_CASE("screen to press to screen comes back", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 2000; ++i) {
        const Projection p = chance.projection();
        const Vec on_screen = chance.on(p.view);
        const Vec back = p.to_screen(p.to_press(on_screen));
        REQUIRE_THAT(back.x, WithinAbs(on_screen.x, 1e-3));
        REQUIRE_THAT(back.y, WithinAbs(on_screen.y, 1e-3));
    }
}

TEST_CASE("a head's view is the projection of its place", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 2000; ++i) {
        const Projection p = chance.projection();
        const Turning turning = i % 2 == 0 ? Turning::clockwise : Turning::counter_clockwise;
        HeadView view;
        view.aim(p, place_of_station(press_of(12, turning), i % 12 + 1));
        const Point at{chance.between(-500, 500), chance.between(-500, 500)};
        const Vec expected = p.to_screen(view.place.to_press(at));
        REQUIRE_THAT(view.to(at).x, WithinAbs(expected.x, 2e-3));
        REQUIRE_THAT(view.to(at).y, WithinAbs(expected.y, 2e-3));
        const Vec along = view.to(at.x, at.y + 10.0) - view.to(at);
        const float step = static_cast<float>(10.0 * p.camera.scale);
        REQUIRE_THAT(view.along().x * step, WithinAbs(along.x, 4e-3));
        REQUIRE_THAT(view.along().y * step, WithinAbs(along.y, 4e-3));
        REQUIRE_THAT(length(view.across()), WithinAbs(1.0, 1e-6));
        REQUIRE_THAT(view.across().x * view.along().x + view.across().y * view.along().y,
                     WithinAbs(0.0, 1e-6));
    }
}

TEST_CASE("lengths on screen are lengths on the press by the scale, however turned", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 500; ++i) {
        const Projection p = chance.projection();
        const Point a{chance.between(-300, 300), chance.between(-300, 300)};
        const Point b{chance.between(-300, 300), chance.between(-300, 300)};
        const double mm = std::hypot(a.x - b.x, a.y - b.y);
        const double dp = double(length(p.to_screen(a) - p.to_screen(b)));
        REQUIRE_THAT(dp, WithinAbs(mm * p.camera.scale, 1e-3 * (1.0 + p.camera.scale)));
        REQUIRE_THAT(double(p.size(mm)), WithinAbs(dp, 2e-3 * (1.0 + p.camera.scale)));
    }
}

TEST_CASE("unturned, the press's y points up and its x to the right", "[camera]") {
    const Projection p{{{0, 0}, 2.0, 0.0}, {0, 0, 100, 80}};
    CHECK(p.to_screen({0, 0}) == Vec{50, 40});
    CHECK(p.to_screen({5, 10}) == Vec{60, 20});
    // A quarter turn counter-clockwise takes the press's x to where up was.
    const Projection turned{{{0, 0}, 2.0, 0.5 * pi}, {0, 0, 100, 80}};
    CHECK_THAT(double(turned.to_screen({10, 0}).x), WithinAbs(50.0, 1e-4));
    CHECK_THAT(double(turned.to_screen({10, 0}).y), WithinAbs(20.0, 1e-4));
}

TEST_CASE("station 1 is at the top and the rest follow the way the press turns", "[camera]") {
    for (const Turning turning : {Turning::clockwise, Turning::counter_clockwise}) {
        for (const int stations : {4, 6, 10, 18}) {
            const PressProfile press = press_of(stations, turning);
            const HeadPlace first = place_of_station(press, 1);
            CHECK_THAT(first.origin.x, WithinAbs(0.0, 1e-9));
            CHECK_THAT(first.origin.y, WithinAbs(press.arm_radius, 1e-9));
            const double step = 2.0 * pi / stations;
            for (int station = 1; station < stations; ++station) {
                const double by = angle_of(place_of_station(press, station + 1).origin) -
                                  angle_of(place_of_station(press, station).origin);
                const double wanted = turning == Turning::clockwise ? -step : step;
                INFO(stations << " stations, " << station << " to " << station + 1);
                CHECK_THAT(std::remainder(by - wanted, 2.0 * pi), WithinAbs(0.0, 1e-9));
            }
        }
    }
    // On screen, a garment that turns clockwise goes from the top to the right.
    const Projection p{{{0, 0}, 0.1, 0.0}, {0, 0, 400, 400}};
    const PressProfile press = press_of(10, Turning::clockwise);
    CHECK(p.to_screen(place_of_station(press, 2).origin).x > 210.0f);
}

TEST_CASE("a head's axes are upright to each other and face the press centre", "[camera]") {
    for (int station = 1; station <= 10; ++station) {
        const HeadPlace place = place_of_station(press_of(10, Turning::clockwise), station);
        const double distance = std::hypot(place.origin.x, place.origin.y);
        const Point toward_centre = place.to_press({0.0, distance});
        CHECK_THAT(std::hypot(toward_centre.x, toward_centre.y), WithinAbs(0.0, 1e-9));
        // Right of somebody who looks along `along`: a quarter turn clockwise from above.
        CHECK_THAT(place.along.x * place.across.y - place.along.y * place.across.x,
                   WithinAbs(-1.0, 1e-12));
    }
}

TEST_CASE("a head shown alone stands upright, operator side at the bottom", "[camera]") {
    const Box view{20, 90, 340, 470};
    for (const Turning turning : {Turning::clockwise, Turning::counter_clockwise}) {
        for (int station = 1; station <= 10; ++station) {
            Job job;
            job.press = press_of(10, turning);
            Head head;
            head.station = station;
            const float room = 60.0f;
            const Projection p{camera_for_head(job, head, view, room), view};
            const HeadPlace place = place_of_station(job.press, station);
            INFO("station " << station);
            const Vec middle = p.to_screen(place.to_press({0, 0}));
            const Vec machine = p.to_screen(place.to_press({0, 100}));
            const Vec right = p.to_screen(place.to_press({100, 0}));
            CHECK_THAT(double(machine.x - middle.x), WithinAbs(0.0, 1e-2));
            CHECK(machine.y < middle.y);
            CHECK_THAT(double(right.y - middle.y), WithinAbs(0.0, 1e-2));
            CHECK(right.x > middle.x);
            // The whole frame is in view, and the room for the rail is free at the right.
            for (const double x : {-0.5, 0.5}) {
                for (const double y : {-0.5, 0.5}) {
                    const Vec corner = p.to_screen(place.to_press(
                        {x * head.screen.across, y * head.screen.along}));
                    CHECK(view.contains(corner));
                    CHECK(corner.x <= view.x1 - room);
                }
            }
        }
    }
}

TEST_CASE("the whole press is in view", "[camera]") {
    for (const Box view : {Box{0, 0, 360, 500}, Box{100, 0, 1100, 860}}) {
        const PressProfile press = press_of(12, Turning::clockwise);
        const float room = 40.0f;
        const Projection p{camera_for_press(press, view, room), view};
        for (int station = 1; station <= press.stations; ++station) {
            const HeadPlace place = place_of_station(press, station);
            for (const double x : {-0.5, 0.5}) {
                for (const double y : {-0.5, 0.5}) {
                    const Screen screen;
                    const Vec corner =
                        p.to_screen(place.to_press({x * screen.across, y * screen.along}));
                    INFO("station " << station << " at " << corner.x << ", " << corner.y);
                    CHECK(view.inset(0.5f * room).contains(corner));
                }
            }
        }
    }
}

TEST_CASE("zooming keeps the point under the fingers", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 1000; ++i) {
        const Projection p = chance.projection();
        const Vec anchor = chance.on(p.view);
        const double factor = std::exp(chance.between(-3.0, 3.0));
        const Camera camera = zoomed(p, factor, anchor);
        const double wanted = p.camera.scale * factor;
        CHECK_THAT(camera.scale,
                   WithinAbs(std::min(std::max(wanted, least_scale), most_scale), 1e-12));
        CHECK(camera.turn == p.camera.turn);
        const Vec now = Projection{camera, p.view}.to_screen(p.to_press(anchor));
        REQUIRE_THAT(double(now.x), WithinAbs(double(anchor.x), 1e-2));
        REQUIRE_THAT(double(now.y), WithinAbs(double(anchor.y), 1e-2));
    }
}

TEST_CASE("panning moves what is under the finger with it", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 1000; ++i) {
        const Projection p = chance.projection();
        const Vec from = chance.on(p.view), to = chance.on(p.view);
        const Projection moved{panned(p, to - from), p.view};
        const Vec now = moved.to_screen(p.to_press(from));
        REQUIRE_THAT(double(now.x), WithinAbs(double(to.x), 1e-2));
        REQUIRE_THAT(double(now.y), WithinAbs(double(to.y), 1e-2));
        CHECK(moved.camera.scale == p.camera.scale);
    }
}

TEST_CASE("between two cameras it goes from one to the other, the short way round", "[camera]") {
    Chance chance;
    INFO("seed " << Catch::getSeed());
    for (int i = 0; i < 500; ++i) {
        const Camera from = chance.projection().camera, to = chance.projection().camera;
        CHECK(between(from, to, 1.0) == to);
        CHECK(between(from, to, 2.0) == to);
        CHECK_THAT(between(from, to, 0.0).scale, WithinAbs(from.scale, 1e-12));
        CHECK(between(from, to, 0.0).centre == from.centre);
        CHECK(between(from, to, -1.0).turn == from.turn);
        const Camera half = between(from, to, 0.5);
        CHECK_THAT(half.scale, WithinAbs(std::sqrt(from.scale * to.scale), 1e-9));
        CHECK(std::abs(half.turn - from.turn) <= 0.5 * pi + 1e-9);
        CHECK_THAT(std::remainder(2.0 * half.turn - from.turn - to.turn, 2.0 * pi),
                   WithinAbs(0.0, 1e-9));
    }
}
