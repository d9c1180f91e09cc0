#include "tests/records/random_job.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace carriageway {
namespace {

// Makes the first less than the second; both stay within the limits that they share, which lie on
// both sides of 0 or begin there.
void put_in_order(double& lesser, double& greater) {
    if (greater < lesser) std::swap(lesser, greater);
    if (lesser < greater) return;
    if (lesser > 0.0)
        lesser = std::nextafter(lesser, lesser - 1.0);
    else
        greater = std::nextafter(greater, greater + 1.0);
}

}  // namespace

double RandomJobs::number(double least, double most) {
    const double drawn = std::uniform_real_distribution<double>(least, most)(engine_);
    switch (below(8)) {
        case 0: return least;
        case 1: return most;
        case 2: return std::clamp(std::round(drawn), least, most);
        case 3: return std::clamp(std::round(drawn * 100.0) / 100.0, least, most);
        default: return drawn;
    }
}

std::size_t RandomJobs::below(std::size_t count) {
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(engine_);
}

std::string RandomJobs::name() {
    static const char* const pieces[] = {"a",  "Z",  " ",      "\"",         "\\",     "/",
                                         "\n", "\t", "\x01",   "\x7F",       "\u00E9", "\u00F1",
                                         "{",  "#",  "\u03C9", "\U0001F9F5", "\u2028", "\u0085"};
    std::string text;
    const std::size_t length = below(50);
    for (std::size_t i = 0; i < length; ++i) text += pieces[below(std::size(pieces))];
    return text;
}

// Corners on rays of rising angle about the origin never make edges that cross.
Outline RandomJobs::outline(std::size_t corners) {
    Outline outline;
    const double turn = 2.0 * std::numbers::pi / static_cast<double>(corners);
    for (std::size_t i = 0; i < corners; ++i) {
        const double radius = std::uniform_real_distribution<double>(40.0, 400.0)(engine_);
        const double angle = turn * (static_cast<double>(i) + 0.001 * static_cast<double>(below(9)));
        outline.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    return outline;
}

double RandomJobs::number(Field field) {
    const FieldInfo& info = info_of(field);
    const double drawn = number(info.least, info.most);
    return info.quantity == Quantity::count ? std::round(drawn) : drawn;
}

Point RandomJobs::place() {
    return {number(Field::image_offset_x), number(Field::image_offset_y)};
}

std::vector<MarkRound> RandomJobs::rounds() {
    std::vector<MarkRound> rounds(below(3));
    for (MarkRound& round : rounds) {
        round.platen = static_cast<int>(below(20));
        round.turn = static_cast<int>(below(20));
        for (std::size_t count = below(5); count > 0; --count)
            round.marks.push_back({place(), place()});
        for (std::size_t count = below(4); count > 0; --count)
            round.turned.push_back(number(-1000.0, 1000.0));
        round.read = below(2) == 1;
    }
    return rounds;
}

std::vector<HeightReading> RandomJobs::height_readings() {
    std::vector<HeightReading> readings;
    for (std::size_t count = below(6); count > 0; --count) {
        const Point at = place();
        readings.push_back({static_cast<std::uint32_t>(1 + below(20)),
                            static_cast<HeadId>(1 + below(20)), at.x, at.y,
                            number(-1000.0, 1000.0)});
    }
    return readings;
}

MeshRow RandomJobs::mesh() {
    // Numbers that agree with one another, as a row's must.
    const double count = number(20.0, 150.0), pitch = mesh_pitch(count);
    const double thread = number(0.3, 0.7) * pitch;
    const double share = open_share(count, thread), thickness = number(1.2, 1.8) * thread;
    return {count, thread, mesh_opening(count, thread), share, thickness, ink_volume(share, thickness)};
}

Image RandomJobs::image() {
    Head head;
    Job job;
    for (const Field field : {Field::image_width, Field::image_length, Field::image_offset_x,
                              Field::image_offset_y, Field::image_rotation}) {
        if (below(4) == 0) continue;  // keep some defaults
        number_of(job, &head, field) = number(field);
    }
    if (coin()) head.image.outline = outline(3 + below(30));
    return head.image;
}

PressProfile RandomJobs::press() {
    PressProfile press;
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const FieldInfo& info = info_of(static_cast<Field>(i));
        if (info.owner == FieldOwner::press) {
            number_of(press, info.field) = number(info.field);
        }
    }
    press.name = name();
    press.stations = static_cast<int>(2 + below(most_stations - 1));
    press.turning = choice<Turning>(2);
    press.ruler.counts = choice<Direction>(2);
    press.ruler.inches = coin();
    press.sensors.separation_measured = coin();
    for (Spread* spread : {&press.sensors.separation_spread, &press.allowances.stop,
                           &press.allowances.screen, &press.allowances.image,
                           &press.allowances.overtravel}) {
        spread->measured = coin();
    }
    put_in_order(press.sensors.operator_offset, press.sensors.machine_offset);
    put_in_order(press.carriage.range_lo, press.carriage.range_hi);
    put_in_order(press.squeegee_gauge.lowest, press.squeegee_gauge.highest);
    put_in_order(press.flood_gauge.lowest, press.flood_gauge.highest);
    put_in_order(press.angles.least, press.angles.most);
    put_in_order(press.height_points.operator_y, press.height_points.machine_y);
    for (std::size_t count = below(4); count > 0; --count) {
        press.adjusters.push_back({name(), choice<AdjusterSide>(3), number(-5000.0, 5000.0),
                                   number(-5000.0, 5000.0), number(0.001, 100.0),
                                   static_cast<int>(1 + below(1000)), coin()});
    }
    for (std::size_t count = below(3); count > 0; --count) press.meshes.push_back(mesh());
    press.readings.mark.measured = coin();
    press.readings.height.measured = coin();
    for (std::size_t count = below(5); count > 0; --count) {
        const Point at = place();
        press.level_screws.push_back({name(), at.x, at.y, number(0.001, 100.0), coin()});
    }
    press.pace.floods_while_indexing = coin();
    for (std::size_t count = below(4); count > 0; --count) press.rooms.push_back({coin(), coin()});
    press.checks = checks();
    return press;
}

Head RandomJobs::head(HeadId id, int station) {
    Head head;
    Job without;
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const FieldInfo& info = info_of(static_cast<Field>(i));
        if (info.owner == FieldOwner::head) {
            number_of(without, &head, info.field) = number(info.field);
        }
    }
    head.id = id;
    head.station = station;
    head.colour = name();
    head.ink = static_cast<std::uint32_t>(below(0x1000000));
    head.image = image();
    head.flood.winged = coin();
    head.print_stroke = choice<Direction>(2);
    put_in_order(head.stops.operator_side, head.stops.machine_side);
    head.pressure.on_height_stop = coin();
    head.rounds = rounds();
    head.squeegee.edge = choice<BladeEdge>(5);
    head.wish = wish();
    if (coin()) head.notes = {note(), note()};
    return head;
}

Job RandomJobs::job() {
    Job job;
    job.name = name();
    job.press = press();
    for (int i = 0; i < static_cast<int>(Field::count); ++i) {
        const FieldInfo& info = info_of(static_cast<Field>(i));
        if (info.owner == FieldOwner::job) {
            number_of(job, nullptr, info.field) = number(info.field);
        }
    }
    job.garment.kind = choice<GarmentKind>(2);
    job.registration.base = static_cast<HeadId>(below(3));
    job.height_readings = height_readings();
    job.garment.name = note();
    job.walk = walk();
    job.record = record();
    for (int station = 1; station <= job.press.stations; ++station) {
        job.uses.push_back(choice<StationUse>(5));
        const bool room = job.uses.back() == StationUse::open && job.heads.size() < 8;
        if (!room || !coin()) continue;
        // Ids in no order, the largest among them.
        const auto nth = static_cast<HeadId>(job.heads.size());
        const HeadId id = std::numeric_limits<HeadId>::max() - nth * (coin() ? 1u : 1000u);
        const bool free = find_head(job, id) == nullptr;
        if (free) job.heads.push_back(head(id, station));
    }
    return job;
}

Edit RandomJobs::simple_edit(std::size_t kind) {
    const auto id = static_cast<HeadId>(below(4));
    const auto station = static_cast<int>(1 + below(most_stations));
    switch (kind) {
        case 0: {
            const auto field = static_cast<Field>(below(static_cast<std::size_t>(Field::count)));
            return {SetNumber{id, field, number(field)}};
        }
        case 1: return {SetStops{id, head(1, 1).stops}};
        case 2: return {SetName{id, name()}};
        case 3: return {SetInk{id, static_cast<std::uint32_t>(below(0x1000000))}};
        case 4: return {SetPrintStroke{id, choice<Direction>(2)}};
        case 5: return {SetWinged{id, coin()}};
        case 6: return {SetImage{id, image()}};
        case 7: return {AddHead{head(id + 1, station)}};
        case 8: return {RemoveHead{id}};
        case 9: return {MoveHead{id, station}};
        case 10: return {SetUse{station, choice<StationUse>(5)}};
        case 11: return {SetGarment{choice<GarmentKind>(2)}};
        case 12: return {SetBaseHead{id}};
        case 13: return {SetHeightStop{id, coin()}};
        case 14: return {SetRounds{id, rounds()}};
        case 15: return {SetHeightReadings{height_readings()}};
        case 16: return {SetColourWish{id, wish()}};
        case 17: return {SetBladeEdge{id, choice<BladeEdge>(5)}};
        case 18: return {SetNote{coin() ? id : 0, choice<Note>(4), note()}};
        case 19: {
            const std::vector<WalkMark> marks = walk();
            return {SetWalkMark{marks.empty() ? walk_mark(id, Field::screen_across) : marks[0], coin()}};
        }
        case 20: return {SetWalk{walk()}};
        case 21: return {SetRecord{record()}};
        default: break;
    }
    SetPress edit{press(), {}};
    for (std::size_t count = below(12); count > 0; --count) {
        edit.uses.push_back(choice<StationUse>(5));
    }
    return {std::move(edit)};
}

Edit RandomJobs::edit(int depth) {
    constexpr std::size_t simple = 23;
    const std::size_t kind = below(depth < deepest_together ? simple + 2 : simple);
    if (kind < simple) return simple_edit(kind);
    Together together;
    for (std::size_t count = below(4); count > 0; --count) {
        together.edits.push_back(edit(depth + 1));
    }
    return {std::move(together)};
}

}  // namespace carriageway
