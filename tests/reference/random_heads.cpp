#include "tests/reference/random_heads.h"

#include <algorithm>
#include <cmath>

#include "tests/reference/random_outlines.h"
#include "tests/reference/reference_head.h"

namespace carriageway::reference {

namespace {

Holder random_holder(Seeded& random) {
    Holder holder;
    holder.pivot_offset = random.between(0.0, 40.0);
    holder.pivot_height = random.between(20.0, 120.0);
    holder.half_depth = random.between(2.0, 50.0);
    return holder;
}

Sensors random_sensors(Seeded& random) {
    Sensors sensors;
    sensors.operator_offset = random.between(-60.0, 0.0);
    sensors.machine_offset = random.between(0.0, 60.0);
    sensors.bar_length = random.between(30.0, 120.0);
    sensors.reach = random.between(0.5, 10.0);
    sensors.hysteresis = random.chance(0.1) ? 0.0 : random.between(0.0, 6.0);
    sensors.latency = random.between(0.0, 0.04);
    sensors.separation_margin = random.between(0.1, 15.0);
    sensors.separation_measured = random.chance(0.25);
    sensors.measured_separation = random.between(20.0, 160.0);
    return sensors;
}

Carriage random_carriage(Seeded& random) {
    Carriage carriage;
    carriage.range_lo = -random.between(250.0, 500.0);
    carriage.range_hi = random.between(250.0, 500.0);
    carriage.acceleration = random.between(3000.0, 15000.0);
    carriage.fastest = 1500.0;
    carriage.drop_time = random.between(0.0, 0.4);
    carriage.drop_dwell =
        random.chance(0.5) ? carriage.drop_time : carriage.drop_time * random.between(0.5, 1.5);
    return carriage;
}

Image random_image(Seeded& random) {
    Image image;
    const double width = random.between(40.0, 380.0), length = random.between(40.0, 520.0);
    const OutlineKind kind = random_outline_kind(random);
    if (kind == OutlineKind::rectangle) {
        image.width = width;
        image.length = length;
    } else {
        image.outline = random_outline(random, kind, width, length);
    }
    image.offset_x = random.between(-20.0, 20.0);
    image.offset_y = random.between(-60.0, 60.0);
    const int turned = random.whole(0, 3);
    if (turned == 1) image.rotation = radians(random.between(-3.0, 3.0));
    if (turned == 2) image.rotation = radians(random.between(-180.0, 180.0));
    if (turned == 3) image.rotation = radians(90.0 * random.whole(-2, 2));
    return image;
}

Head random_head(Seeded& random) {
    Head head;
    head.id = 1;
    head.station = 1;
    head.colour = "black";
    head.screen.across = random.between(400.0, 700.0);
    head.screen.along = random.between(500.0, 1000.0);
    head.screen.profile_width = random.between(20.0, 50.0);
    head.image = random_image(random);
    head.squeegee.width = random.between(150.0, 450.0);
    head.squeegee.angle = radians(random.between(5.0, 25.0));
    head.flood.width = random.between(150.0, 480.0);
    head.flood.angle = radians(random.between(5.0, 25.0));
    head.print_stroke =
        random.chance(0.5) ? Direction::toward_operator : Direction::toward_machine;
    head.print_speed = random.between(100.0, 1200.0);
    head.flood_speed = random.between(100.0, 1200.0);
    return head;
}

/// Makes the squeegee's band lie within the image, or nearly: what is unprinted may be a ring.
void put_inside_image(Seeded& random, const Job& job, Head& head) {
    const Rect bounds = bounds_of(placed_outline(head.image));
    const ReferenceHead reference = reference_head(job, head);
    const double inset = random.between(0.02, 0.4) * bounds.length();
    const Stops stops{bounds.lo + inset - reference.squeegee.lo,
                      bounds.hi - inset - reference.squeegee.hi};
    if (stops.operator_side < stops.machine_side) head.stops = stops;
    head.squeegee.width = std::max(10.0, random.between(0.1, 0.8) * bounds.width());
    head.image.offset_x = 0.2 * head.image.offset_x;
}

} // namespace

Job random_job(Seeded& random) {
    Job job;
    job.press.ruler.zero = random.between(-600.0, 0.0);
    job.press.sensors = random_sensors(random);
    job.press.carriage = random_carriage(random);
    job.press.squeegee_holder = random_holder(random);
    job.press.flood_holder = random_holder(random);
    job.press.allowances.frame_clearance = random.between(0.0, 60.0);
    job.press.allowances.platen_inset = random.between(0.0, 20.0);
    job.platen.width = random.between(300.0, 500.0);
    job.platen.length = random.between(400.0, 800.0);
    job.platen.offset_y = random.between(-40.0, 60.0);
    job.wishes.run_past = random.between(0.0, 50.0);
    job.uses.resize(static_cast<std::size_t>(job.press.stations));
    job.heads.push_back(random_head(random));
    const auto [lo, hi] = placed_span(job.heads.front().image);
    job.heads.front().stops = random_stops(random, job, lo, hi);
    if (random.chance(0.08)) put_inside_image(random, job, job.heads.front());
    return job;
}

Job random_easy_job(Seeded& random) {
    Job job = random_job(random);
    Head& head = job.heads.front();
    job.press.carriage.range_lo = -random.between(300.0, 600.0);
    job.press.carriage.range_hi = random.between(300.0, 600.0);
    job.press.allowances.frame_clearance = random.between(0.0, 20.0);
    job.wishes.run_past = random.between(0.0, 35.0);
    job.platen.length = random.between(500.0, 900.0);
    head.screen.along = random.between(700.0, 1200.0);
    if (random.chance(0.1)) { // a press on which the sensors need far more room than the image
        job.press.sensors.separation_measured = true;
        job.press.sensors.measured_separation = random.between(300.0, 900.0);
        head.image.offset_y = random.between(-150.0, 150.0);
    }
    const double smaller = random.between(0.2, 0.9);
    head.image.length *= smaller;
    for (Point& corner : head.image.outline) corner.y *= smaller;
    if (std::abs(signed_area(head.image.outline)) < least_image_area) head.image.outline.clear();
    return job;
}

Stops random_stops(Seeded& random, const Job& job, double lo, double hi) {
    const ReferenceHead head = reference_head(job, job.heads.front());
    Stops stops;
    stops.operator_side = lo - head.latest_band_lo + random.between(-70.0, 50.0);
    stops.machine_side = hi - head.earliest_band_hi + random.between(-50.0, 70.0);
    const double gap = stops.machine_side - stops.operator_side;
    if (random.chance(0.04) || !(gap > 0.0)) {
        const double middle = 0.5 * (stops.machine_side + stops.operator_side);
        const double half = 0.5 * random.between(1.0, 220.0);
        stops = {middle - half, middle + half};
    }
    return stops;
}

} // namespace carriageway::reference
