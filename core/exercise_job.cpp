#include "core/exercise_job.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/assess.h"
#include "core/exercise.h"

namespace carriageway {
namespace {

/// Okabe and Ito's palette without black and white: for the drawing.
constexpr std::array<std::uint32_t, 7> inks{0xE69F00, 0x56B4E9, 0x009E73, 0xF0E442,
                                            0x0072B2, 0xD55E00, 0xCC79A7};

void vary_press(ExerciseRandom& random, PressProfile& press, int heads) {
    press.stations = random.whole(std::max(8, heads + 3), 14);
    press.ruler.zero = random.stepped(-520.0, -480.0, 5.0);
    if (random.chance(1, 3)) {
        press.ruler.zero = -press.ruler.zero;
        press.ruler.counts = Direction::toward_operator;
    }
    press.sensors.reach = random.stepped(3.0, 6.0, 0.5);
    press.sensors.hysteresis = random.stepped(1.0, 3.0, 0.5);
    press.sensors.operator_offset = -random.stepped(25.0, 35.0, 1.0);
    press.sensors.machine_offset = random.stepped(25.0, 35.0, 1.0);
}

void vary_head(ExerciseRandom& random, Head& head) {
    head.image.width = random.stepped(200.0, 300.0, 10.0);
    head.image.length = random.stepped(260.0, 400.0, 10.0);
    head.print_speed = random.stepped(400.0, 700.0, 50.0);
    head.flood_speed = random.stepped(400.0, 800.0, 50.0);
    head.squeegee.angle = radians(random.stepped(10.0, 20.0, 1.0));
    head.flood.angle = radians(random.stepped(10.0, 20.0, 1.0));
    head.squeegee.hardness = random.stepped(65.0, 80.0, 5.0);
    if (random.chance(1, 2)) head.print_stroke = Direction::toward_machine;
}

Job varied_job(ExerciseRandom& random, int heads, bool vary) {
    Job job;
    job.name = "1";
    if (vary) vary_press(random, job.press, heads);
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.uses.front() = StationUse::load;
    job.uses.back() = StationUse::unload;
    for (int i = 0; i < heads; ++i) {
        Head head;
        head.id = static_cast<HeadId>(i + 1);
        head.station = i + 2;
        head.colour = std::to_string(i + 1);
        head.ink = inks[static_cast<std::size_t>(i) % inks.size()];
        head.wish.order = i + 1;
        if (vary) vary_head(random, head);
        job.heads.push_back(head);
    }
    return job;
}

/// Sets every head's stops to the advised ones; whether each has any.
bool set_stops(Job& job) {
    Assessment assessment;
    assess(job, assessment);
    for (std::size_t i = 0; i < job.heads.size(); ++i) {
        if (!assessment.heads[i].advised) return false;
        job.heads[i].stops = *assessment.heads[i].advised;
    }
    return true;
}

} // namespace

Job fit_job(ExerciseRandom& random, int heads) {
    // Nearly every try is fit; what isn't is thrown away. The last one, as the defaults have it, is
    // fit by test.
    constexpr int most_tries = 40;
    for (int i = 0; i < most_tries; ++i) {
        Job job = varied_job(random, heads, true);
        if (!fault_of(job) && set_stops(job) && faults_of(job).empty()) return job;
    }
    Job job = varied_job(random, heads, false);
    set_stops(job);
    return job;
}

} // namespace carriageway
