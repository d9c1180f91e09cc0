// Random jobs on random presses: what is told is so, and nothing else has changed.
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/assess.h"
#include "core/blade_pose.h"
#include "core/carry_over.h"
#include "core/pressure.h"
#include "tests/core/walk_samples.h"

using namespace carriageway;
using Catch::Matchers::WithinRel;
using sample::Random;

namespace {

/// What became of a number of the first head with this id.
Carried became(const CarryOver& over, HeadId head, Field field) {
    const auto at = std::find_if(
        over.numbers.begin(), over.numbers.end(),
        [&](const Carried& one) { return one.head == head && one.field == field; });
    REQUIRE(at != over.numbers.end());
    return *at;
}

/// Another press: other scales, holders, cylinders, stations.
PressProfile likely_press(Random& random, std::vector<StationUse>& uses) {
    PressProfile press = sample::likely_job(random, 0).press;
    press.stations = random.whole(3, 14);
    uses.clear();
    for (int i = 0; i < press.stations; ++i) {
        uses.push_back(random.chance(0.8) ? StationUse::open
                                          : static_cast<StationUse>(random.whole(1, 4)));
        if (random.chance(0.8)) press.rooms.push_back({random.chance(0.9), random.chance(0.9)});
    }
    press.carriage.fastest = random.between(500.0, 1200.0);
    press.angles.least = radians(random.between(3.0, 12.0));
    press.angles.most = radians(random.between(13.0, 30.0));
    press.squeegee_holder.pivot_height = random.between(50.0, 90.0);
    press.squeegee_gauge = {random.between(2.0, 9.0), -1.0, random.between(1.0, 4.0), 0.05};
    press.edge_heights.squeegee = random.between(-12.0, -5.0);
    press.flood_gauge = {random.between(2.0, 9.0), 0.0, random.between(1.0, 9.0), 0.3};
    press.cylinders = {random.between(20.0, 80.0), 1.0 * random.whole(1, 3),
                       random.chance(0.1) ? 0.0 : random.between(20.0, 80.0), 1.0};
    if (random.chance(0.5)) press.height_points.across = random.between(100.0, 400.0);
    return press;
}

double edge_height(const PressProfile& press, const Head& head) {
    return press.edge_heights.squeegee + blade_pose(press.squeegee_holder, press.squeegee_gauge,
                                                    head.squeegee.angle, head.squeegee.gauge)
                                             .height;
}

/// The head as it was on the old press, but for what carrying over may change.
Head as_before(Head after, const Head& before) {
    after.station = before.station;
    after.wish.screen_on = before.wish.screen_on;
    after.rounds = before.rounds;
    for (const Field field :
         {Field::print_speed, Field::flood_speed, Field::squeegee_angle, Field::flood_angle,
          Field::squeegee_gauge, Field::flood_gauge, Field::height_left, Field::height_right,
          Field::height_machine, Field::squeegee_pressure, Field::flood_pressure,
          Field::operator_stop, Field::machine_stop}) {
        Job without;
        Head copy = before;
        number_of(without, &after, field) = number_of(without, &copy, field);
    }
    return after;
}

/// What is told of a head's squeegee is so.
void check_squeegee(const CarryOver& over, const PressProfile& was, const Head& before,
                    const Head& after) {
    const PressProfile& is = over.job.press;
    const double rise = edge_height(is, after) - edge_height(was, before);
    const Gauge& gauge = is.squeegee_gauge;
    const double half = 0.5 * gauge.graduation * gauge.mm_per_mark + 1e-9;
    const CarriedHow how = became(over, after.id, Field::squeegee_gauge).how;
    if (how == CarriedHow::clamped) {
        const bool low = after.squeegee.gauge == gauge.lowest;
        REQUIRE((low ? rise > half - 1e-6 : rise < 1e-6 - half));
    } else {
        REQUIRE(std::abs(rise) <= half);
    }
    const auto load = [](const PressProfile& press, const Head& head) {
        return line_load({press.cylinders.squeegee_bore, 0.0,
                          static_cast<int>(press.cylinders.squeegee_count)},
                         head.pressure.squeegee, head.squeegee.width, BladeRest::on_mesh);
    };
    if (became(over, after.id, Field::squeegee_pressure).how == CarriedHow::converted)
        REQUIRE_THAT(*load(is, after), WithinRel(*load(was, before), 1e-12));
}

} // namespace

TEST_CASE("Random jobs on random presses", "[carry_over]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    int done = 0;
    int solved = 0;
    Assessment assessment;
    for (int i = 0; i < 1000; ++i) {
        CAPTURE(i);
        Job old = sample::likely_job(random, random.whole(1, 8));
        sample::change_plan(random, old, 6);
        for (Head& head : old.heads)
            head.squeegee.gauge = 0.1 * random.whole(0, 20);
        std::vector<StationUse> uses;
        const PressProfile press = likely_press(random, uses);
        const CarryOver over = carry_over(old, press, uses);
        std::size_t room = 0;
        for (int station = 1; station <= press.stations; ++station) {
            const bool open = uses[static_cast<std::size_t>(station - 1)] == StationUse::open;
            room += open && station_room(press, station).print_head ? 1U : 0U;
        }
        if (room < old.heads.size()) {
            REQUIRE(over.refusal == CarryRefusal::too_few_stations);
            REQUIRE(over.missing == static_cast<int>(old.heads.size() - room));
            continue;
        }
        ++done;
        REQUIRE(over.refusal == CarryRefusal::none);
        REQUIRE_FALSE(fault_of(over.job));
        REQUIRE(over.job.heads.size() == old.heads.size());
        Job back = over.job;
        assess(over.job, assessment);
        for (std::size_t h = 0; h < old.heads.size(); ++h) {
            const Head& before = old.heads[h];
            const Head& after = over.job.heads[h];
            REQUIRE(after.id == before.id);
            REQUIRE(station_room(press, after.station).print_head);
            check_squeegee(over, old.press, before, after);
            const auto& advised = assessment.heads[h].advised;
            REQUIRE(after.stops == advised.value_or(before.stops));
            solved += advised ? 1 : 0;
            back.heads[h] = as_before(after, before);
        }
        for (const Carried& one : over.numbers) {
            if (one.field == Field::count) continue;
            REQUIRE(number_of(old, find_head(std::as_const(old), one.head), one.field) ==
                    one.before);
            REQUIRE(number_of(over.job, find_head(over.job, one.head), one.field) == one.after);
            if (one.how == CarriedHow::kept) REQUIRE(one.before == one.after);
        }
        back.press = old.press;
        back.uses = old.uses;
        back.walk = old.walk;
        back.record = old.record;
        back.height_readings = old.height_readings;
        REQUIRE(back == old);
        REQUIRE(start_again(over.job) == over.job);
    }
    CHECK(done > 300);
    CHECK(solved > 100);
}

TEST_CASE("Whatever fault_of() accepts comes out so that it accepts it", "[carry_over]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < 1000; ++i) {
        CAPTURE(i);
        const Job old = sample::wild_job(random, random.whole(1, 4));
        PressProfile press = sample::wild_job(random, 1).press;
        press.rooms.clear(); // heads fit everywhere
        const CarryOver over = carry_over(old, press, {});
        REQUIRE(over.refusal == CarryRefusal::none);
        REQUIRE_FALSE(fault_of(over.job));
        REQUIRE_FALSE(fault_of(start_again(old, {true, random.chance(0.5)})));
        for (const Head& head : over.job.heads) {
            REQUIRE(head.print_speed <= press.carriage.fastest);
            REQUIRE(head.squeegee.angle >= press.angles.least);
            REQUIRE(head.flood.angle <= press.angles.most);
            REQUIRE(head.squeegee.gauge >= press.squeegee_gauge.lowest);
            REQUIRE(head.flood.gauge <= press.flood_gauge.highest);
        }
    }
}
