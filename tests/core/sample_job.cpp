#include "tests/core/sample_job.h"

#include <cmath>
#include <numbers>

#include "tests/core/sample_record.h"

namespace carriageway::sample {
namespace {

/// An outline, or none: then the image is a rectangle.
Outline maybe_star(Random& random, double radius) {
    return random.chance(0.4) ? star(random, random.whole(3, 12), radius) : Outline{};
}

Head likely_head(Random& random, int number) {
    Head head;
    head.id = static_cast<HeadId>(100 + number);
    head.station = number;
    head.image.width = random.between(60.0, 340.0);
    head.image.length = random.between(60.0, 470.0);
    head.image.outline = maybe_star(random, 180.0);
    head.image.offset_x = random.between(-8.0, 8.0);
    head.image.offset_y = random.between(-30.0, 50.0);
    head.image.rotation = random.chance(0.5) ? 0.0 : radians(random.between(-20.0, 20.0));
    head.squeegee.angle = radians(random.between(5.0, 25.0));
    head.flood.angle = radians(random.between(5.0, 25.0));
    head.print_stroke = random.chance(0.5) ? Direction::toward_operator : Direction::toward_machine;
    head.print_speed = random.between(200.0, 1000.0);
    head.flood_speed = random.between(200.0, 1000.0);
    head.stops = {random.between(-330.0, -20.0), random.between(-10.0, 330.0)};
    head.squeegee.hardness = random.chance(0.3) ? 0.0 : random.whole(55, 90);
    head.squeegee.edge = static_cast<BladeEdge>(random.whole(0, 4));
    head.wish.order = random.chance(0.5) ? 0.0 : number;
    head.wish.flash_after = random.chance(0.3);
    head.wish.cool_after = head.wish.flash_after ? random.whole(0, 2) : 0;
    head.wish.wet_on_wet = random.chance(0.7);
    return head;
}

}  // namespace

Job one_head() {
    Job job;
    job.name = "one head";
    job.press.name = "invented";
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    Head head;
    head.id = 1;
    head.station = 1;
    head.colour = "black";
    job.heads.push_back(head);
    return job;
}

double edge() {
    return 15.0 + 65.0 * std::sin(15.0 * std::numbers::pi / 180.0);
}

// Not the standard library's distributions: those differ from one library to another.
double Random::between(double lo, double hi) {
    return lo + (hi - lo) * (static_cast<double>(source_() >> 11U) * 0x1p-53);
}
int Random::whole(int lo, int hi) {
    return lo + static_cast<int>(source_() % static_cast<std::uint64_t>(hi - lo + 1));
}
bool Random::chance(double of_one) {
    return between(0.0, 1.0) < of_one;
}

Outline star(Random& random, int corners, double radius) {
    Outline outline;
    for (int i = 0; i < corners; ++i) {
        const double turn = 2.0 * std::numbers::pi * (i + random.between(0.1, 0.9)) / corners;
        const double r = radius * random.between(0.3, 1.0);
        outline.push_back({r * std::cos(turn), r * std::sin(turn)});
    }
    return outline;
}

Job likely_job(Random& random, int heads) {
    Job job = one_head();
    job.press.stations = 12;
    job.uses.assign(12, StationUse::open);
    job.heads.clear();
    PressProfile& press = job.press;
    press.carriage.drop_time = random.between(0.1, 0.35);
    press.ruler.graduation = random.chance(0.5) ? 1.0 : mm_per_inch / 16.0;
    press.ruler.zero = random.between(-600.0, 600.0);
    press.pace = {random.between(1.0, 4.0), random.between(0.1, 0.6), random.between(0.1, 0.6),
                  random.chance(0.5) ? 0.0 : random.between(5e3, 5e5), random.chance(0.3)};
    press.checks = checks(random);
    job.handling = {random.between(2.0, 8.0), random.between(1.0, 5.0)};
    press.ruler.counts =
        random.chance(0.5) ? Direction::toward_machine : Direction::toward_operator;
    job.platen.offset_y = random.between(-20.0, 50.0);
    job.wishes.run_past = random.between(5.0, 50.0);
    for (int i = 1; i <= heads; ++i)
        job.heads.push_back(likely_head(random, i));
    job.walk = walk(random, heads);
    job.record = record(random);
    return job;
}

double wild_number(Random& random, Field field) {
    const FieldInfo& info = info_of(field);
    if (random.chance(0.1)) return info.least;
    if (random.chance(0.1)) return info.most;
    const double drawn = random.between(info.least, info.most);
    return info.quantity == Quantity::count ? std::round(drawn) : drawn;
}

Job wild_job(Random& random, int heads) {
    Job job = one_head();
    const Head pattern = job.heads.front();
    job.heads.clear();
    for (int i = 1; i <= heads; ++i) {
        Head head = pattern;
        head.id = static_cast<HeadId>(i);
        head.station = i;
        head.flood.winged = random.chance(0.5);
        if (random.chance(0.5)) head.print_stroke = Direction::toward_machine;
        head.image.outline = maybe_star(random, 4000.0);
        head.squeegee.edge = static_cast<BladeEdge>(random.whole(0, 4));
        head.wish = wish(random);
        job.heads.push_back(head);
    }
    job.press.sensors.separation_measured = random.chance(0.5);
    job.press.allowances.stop.measured = random.chance(0.5);
    job.press.pace.floods_while_indexing = random.chance(0.5);
    job.press.rooms.resize(static_cast<std::size_t>(random.whole(0, most_stations)));
    for (StationRoom& room : job.press.rooms) room = {random.chance(0.5), random.chance(0.5)};
    job.press.checks = checks(random);
    job.walk = walk(random, heads + 2);
    job.record = record(random);
    // Numbers that contradict another are refused and stay as they are.
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const auto field = static_cast<Field>(i);
        if (info_of(field).owner != FieldOwner::head) {
            apply(job, {SetNumber{0, field, wild_number(random, field)}});
            continue;
        }
        for (int head = 1; head <= heads; ++head) {
            apply(job, {SetNumber{static_cast<HeadId>(head), field, wild_number(random, field)}});
        }
    }
    return job;
}

}  // namespace carriageway::sample
