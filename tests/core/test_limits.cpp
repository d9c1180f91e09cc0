#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/sensor.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;
using sample::edge;
using sample::Random;

namespace {

struct Case {
    Job job;
    StrokeGeometry geometry;
    ImageSpan image;
    AllowedSet allowed;

    const Head& head() const { return job.heads.front(); }
};

Case worked_out(const Job& job) {
    Case c{job, stroke_geometry(job.press, job.heads.front()), {}, {}};
    Outline placed;
    place_image(job.heads.front().image, placed);
    const Rect bounds = bounds_of(placed);
    c.image = {bounds.lo, bounds.hi};
    c.allowed = allowed_set(c.job, c.head(), c.geometry, c.image);
    return c;
}

double limit(const std::array<StopLimit, limits_a_stop>& limits, LimitKind kind) {
    const StopLimit& found = limits[static_cast<std::size_t>(kind)];
    CHECK(found.kind == kind);
    return found.at;
}

/// By how much stops satisfy every wish, from the swept bands and the carriage's ends themselves;
/// negative: the worst breach.
double room_by_bands(const Case& c, const Stops& stops) {
    const PressProfile& press = c.job.press;
    const Ends ends = ends_of(c.geometry, stops);
    const Rect squeegee = squeegee_band(c.geometry, c.head(), stops);
    const Rect flood = flood_band(c.geometry, c.head(), stops);
    const Rect platen = rect_of(c.job.platen);
    const Rect opening = opening_of(c.head().screen);
    const double run_past = c.job.wishes.run_past;
    const double inset = press.allowances.platen_inset;
    const double clearance = press.allowances.frame_clearance;
    return std::min(
        {c.image.lo - run_past - squeegee.lo, c.image.lo - run_past - flood.lo,
         squeegee.hi - c.image.hi - run_past, flood.hi - c.image.hi - run_past,
         ends.operator_end + c.geometry.squeegee_edge - platen.lo - inset,
         platen.hi - inset - ends.machine_end - c.geometry.squeegee_edge,
         ends.operator_end + c.geometry.reach_lo - opening.lo - clearance,
         opening.hi - clearance - ends.machine_end - c.geometry.reach_hi,
         ends.operator_end - press.carriage.range_lo, press.carriage.range_hi - ends.machine_end,
         separation(stops) - least_separation(press.sensors) - press.sensors.separation_margin});
}

/// By how much stops lie inside an allowed set.
double room_in_set(const AllowedSet& set, const Stops& stops) {
    return std::min({stops.operator_side - set.operator_side.lo,
                     set.operator_side.hi - stops.operator_side,
                     stops.machine_side - set.machine_side.lo,
                     set.machine_side.hi - stops.machine_side, separation(stops) - set.least_gap});
}

double covered_middle(const Case& c, const Stops& stops) {
    const Rect squeegee = squeegee_band(c.geometry, c.head(), stops);
    const Rect flood = flood_band(c.geometry, c.head(), stops);
    return 0.5 * (std::max(squeegee.lo, flood.lo) + std::min(squeegee.hi, flood.hi));
}

}  // namespace

TEST_CASE("every limit of the demonstration's head, worked by hand", "[limits]") {
    // See sample_job.h for 2.5, 7.125 and the edges. Image -200 to 200, run-past 25, platen inset
    // 10, clearance to the frame 50; holders reach 30 beyond the carriage, less than the edges.
    const Case c = worked_out(sample::one_head());
    const auto& o = c.allowed.operator_limits;
    CHECK(limit(o, LimitKind::squeegee_run_past) == Approx(-225.0 - 2.5 - edge()));
    CHECK(limit(o, LimitKind::flood_run_past) == Approx(-225.0 - 2.5 + edge()));
    CHECK(limit(o, LimitKind::platen) == Approx(-249.5 + 10.0 - 2.5 - edge()));
    CHECK(limit(o, LimitKind::frame_squeegee) == Approx(-355.5 + 50.0 - 2.5));  // holder at 0
    CHECK(limit(o, LimitKind::frame_flood) == Approx(-355.5 + 50.0 - 2.5 + edge()));
    CHECK(limit(o, LimitKind::carriage_range) == Approx(-380.0 - 2.5));
    const auto& m = c.allowed.machine_limits;
    CHECK(limit(m, LimitKind::squeegee_run_past) == Approx(225.0 - 7.125 - edge()));
    CHECK(limit(m, LimitKind::flood_run_past) == Approx(225.0 - 7.125 + edge()));
    CHECK(limit(m, LimitKind::platen) == Approx(309.5 - 10.0 - 7.125 - edge()));
    CHECK(limit(m, LimitKind::frame_squeegee) == Approx(355.5 - 50.0 - 7.125 - edge()));
    CHECK(limit(m, LimitKind::frame_flood) == Approx(355.5 - 50.0 - 7.125));  // holder at 0
    CHECK(limit(m, LimitKind::carriage_range) == Approx(380.0 - 7.125));

    CHECK(c.allowed.operator_side.lo_kind == LimitKind::platen);
    CHECK(c.allowed.operator_side.hi_kind == LimitKind::squeegee_run_past);
    CHECK(c.allowed.machine_side.lo_kind == LimitKind::flood_run_past);
    CHECK(c.allowed.machine_side.hi_kind == LimitKind::platen);
    CHECK(c.allowed.least_gap == Approx(8.0 + 2.0 + 60.0 + 5.0));
    CHECK_FALSE(c.allowed.empty());
    CHECK(c.allowed.corner_count == 4);  // the coupling is far away
}

TEST_CASE("a 300 x 400 image needs 513.6 mm of travel, and all fits", "[limits]") {
    const Case c = worked_out(sample::one_head());
    const auto shortest = shortest_stroke(c.allowed, c.geometry, c.head(), c.image);
    REQUIRE(shortest);
    // Image, twice the run-past, and what the edges stand apart.
    const double travel = 400.0 + 2.0 * 25.0 + 2.0 * edge();
    CHECK(travel == Approx(513.6).margin(0.05));
    const Ends ends = ends_of(c.geometry, *shortest);
    CHECK(ends.travel() == Approx(travel));
    CHECK(ends.operator_end == Approx(-0.5 * travel));
    // The squeegee's band ends 21 inside the platen, the flood's 17 short of the clearance.
    CHECK(309.5 - squeegee_band(c.geometry, c.head(), *shortest).hi == Approx(20.85).margin(0.01));
    CHECK(flood_band(c.geometry, c.head(), *shortest).lo + 355.5 - 50.0 ==
          Approx(16.85).margin(0.01));
    // On whole mm of the ruler, outward.
    CHECK(on_graduations(c.job.press.ruler, c.allowed, *shortest) == Stops{-260.0, 250.0});
}

TEST_CASE("a blade that drops late needs a longer stroke where it starts", "[limits]") {
    Job job = sample::one_head();
    job.press.carriage.drop_time = 0.25;
    job.press.carriage.drop_dwell = 0.20;
    // 0.05 s from rest at 8000 mm/s2, below either speed: 10 mm.
    const Case c = worked_out(job);
    const Case before = worked_out(sample::one_head());
    CHECK(c.geometry.print_loss == Approx(10.0));
    const auto shift = [](const auto& now, const auto& then, LimitKind kind) {
        return limit(now, kind) - limit(then, kind);
    };
    const auto& o = c.allowed.operator_limits;
    const auto& m = c.allowed.machine_limits;
    const AllowedSet& was = before.allowed;
    // Printed toward the operator, so the print starts at the machine, the flood at the operator.
    CHECK(shift(o, was.operator_limits, LimitKind::squeegee_run_past) == Approx(0.0));
    CHECK(shift(o, was.operator_limits, LimitKind::flood_run_past) == Approx(-10.0));
    CHECK(shift(m, was.machine_limits, LimitKind::squeegee_run_past) == Approx(10.0));
    CHECK(shift(m, was.machine_limits, LimitKind::flood_run_past) == Approx(0.0).margin(1e-9));
    // The platen counts for the whole path.
    CHECK(shift(m, was.machine_limits, LimitKind::platen) == Approx(0.0).margin(1e-9));
}

TEST_CASE("a small image leaves the separation to bind, and the stroke is centred", "[limits]") {
    Job job = sample::one_head();
    job.heads[0].image.length = 40.0;
    job.wishes.run_past = 0.0;
    job.press.sensors.separation_margin = 150.0;
    const Case c = worked_out(job);
    // Innermost: 40 + 2 edges of travel, far less than the separation of 220 wants.
    CHECK(c.allowed.machine_side.lo - c.allowed.operator_side.hi < 220.0);
    CHECK(c.allowed.corner_count == 5);
    const auto shortest = shortest_stroke(c.allowed, c.geometry, c.head(), c.image);
    REQUIRE(shortest);
    CHECK(separation(*shortest) == Approx(220.0));
    CHECK(covered_middle(c, *shortest) == Approx(0.0).margin(1e-9));
}

TEST_CASE("the allowed set is what the bands, the ends and the bars say", "[limits][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int inside = 0;
    for (int i = 0; i < 20000; ++i) {
        const Case c = worked_out(sample::likely_job(random, 1));
        Stops stops{random.between(-360.0, 100.0), random.between(-100.0, 360.0)};
        if (!c.allowed.empty() && random.chance(0.5)) {
            const StopInterval& o = c.allowed.operator_side;
            const StopInterval& m = c.allowed.machine_side;
            stops = {random.between(o.lo, o.hi), random.between(m.lo, m.hi)};
        }
        const double room = room_in_set(c.allowed, stops);
        INFO("case " << i);
        REQUIRE(room == Approx(room_by_bands(c, stops)).margin(1e-9));
        if (room >= 0.0) ++inside;
        if (room >= 0.0) REQUIRE_FALSE(c.allowed.empty());
    }
    CHECK(inside > 500);
}

TEST_CASE("corners bound the allowed set, in order", "[limits][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int with_corners = 0;
    for (int i = 0; i < 5000; ++i) {
        Job job = sample::likely_job(random, 1);
        job.press.sensors.separation_margin = random.between(0.1, 500.0);
        const Case c = worked_out(job);
        INFO("case " << i);
        REQUIRE((c.allowed.corner_count == 0) == c.allowed.empty());
        if (c.allowed.empty()) continue;
        ++with_corners;
        Outline polygon(c.allowed.corners.begin(),
                        c.allowed.corners.begin() + c.allowed.corner_count);
        for (const Point& p : polygon)
            REQUIRE(room_in_set(c.allowed, {p.x, p.y}) >= -1e-9);
        REQUIRE(signed_area(polygon) >= 0.0);
        // The rectangle less the triangle that the coupling cuts off it (itself cut by the sides).
        const auto triangle = [](double leg) { return leg > 0.0 ? 0.5 * leg * leg : 0.0; };
        const StopInterval& o = c.allowed.operator_side;
        const StopInterval& m = c.allowed.machine_side;
        const double leg = o.hi + c.allowed.least_gap - m.lo;
        const double cut =
            triangle(leg) - triangle(leg - (m.hi - m.lo)) - triangle(leg - (o.hi - o.lo));
        REQUIRE(signed_area(polygon) ==
                Approx((o.hi - o.lo) * (m.hi - m.lo) - cut).epsilon(1e-9).margin(1e-6));
    }
    CHECK(with_corners > 500);
}

TEST_CASE("no allowed stroke is shorter, none as short is better centred", "[limits][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int coupled = 0;
    for (int i = 0; i < 5000; ++i) {
        Job job = sample::likely_job(random, 1);
        job.press.sensors.separation_margin = random.between(0.1, 500.0);
        const Case c = worked_out(job);
        const auto shortest = shortest_stroke(c.allowed, c.geometry, c.head(), c.image);
        INFO("case " << i);
        REQUIRE(shortest.has_value() == !c.allowed.empty());
        if (!shortest) continue;
        REQUIRE(room_in_set(c.allowed, *shortest) >= -1e-9);
        // A linear function is least at a corner.
        double least = 1e9;
        for (int k = 0; k < c.allowed.corner_count; ++k) {
            const Point& p = c.allowed.corners[static_cast<std::size_t>(k)];
            least = std::min(least, p.y - p.x);
        }
        REQUIRE(separation(*shortest) == Approx(least).margin(1e-9));
        const double middle = 0.5 * (c.image.lo + c.image.hi);
        const double off = std::abs(covered_middle(c, *shortest) - middle);
        for (const double shift : {-50.0, -1.0, -1e-3, 1e-3, 1.0, 50.0}) {
            const Stops other{shortest->operator_side + shift, shortest->machine_side + shift};
            if (room_in_set(c.allowed, other) < 0.0) continue;
            ++coupled;
            REQUIRE(std::abs(covered_middle(c, other) - middle) >= off - 1e-9);
        }
    }
    CHECK(coupled > 500);
}

TEST_CASE("stops on graduations stay allowed", "[limits][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int outward = 0;
    int exact = 0;
    for (int i = 0; i < 5000; ++i) {
        Job job = sample::likely_job(random, 1);
        job.press.ruler.graduation = random.between(0.5, 12.0);
        const Case c = worked_out(job);
        const auto shortest = shortest_stroke(c.allowed, c.geometry, c.head(), c.image);
        if (!shortest) continue;
        const Ruler& ruler = job.press.ruler;
        const Stops advised = on_graduations(ruler, c.allowed, *shortest);
        INFO("case " << i);
        REQUIRE(room_in_set(c.allowed, advised) >= -graduation_slack);
        const auto on_mark = [&ruler](double y) {
            return std::abs(y - nearest_graduation(ruler, y)) < 1e-9;
        };
        for (const auto& [now, then] : {std::pair{advised.operator_side, shortest->operator_side},
                                        std::pair{advised.machine_side, shortest->machine_side}}) {
            if (on_mark(now)) {
                REQUIRE(std::abs(now - then) <= ruler.graduation);
                ++outward;
            } else {
                REQUIRE(now == then);
                ++exact;
            }
        }
    }
    CHECK(outward > 500);
    CHECK(exact > 5);
}
