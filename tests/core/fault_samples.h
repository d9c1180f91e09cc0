// A job in which nothing is wrong and nearly everything is known, and for each condition of fault
// finding the same job with that condition. Header only: tests of two folders use it.
#pragma once

#include <cmath>

#include "core/fault_finding.h"
#include "core/job_check.h"

namespace carriageway::sample {

/// The marks of a print that lies off by (x, y), mm.
inline MarkRound printed(double x, double y, int platen = 0, int turn = 0) {
    MarkRound round;
    round.platen = platen;
    round.turn = turn;
    round.read = true;
    for (const Point& at : {Point{-150, -200}, Point{150, -200}, Point{150, 200}, Point{-150, 200}})
        round.marks.push_back({at, {at.x + x, at.y + y}});
    return round;
}

/// Two heads with a flash between them, everything noted, nothing wrong.
inline Job faultless_job() {
    Job job;
    job.name = "faultless";
    job.press.name = "invented";
    job.press.adjusters = {{"L", AdjusterSide::left, -230, 370, 1.25, 12, true},
                           {"R", AdjusterSide::right, 230, 370, 1.25, 12, true},
                           {"A", AdjusterSide::across, 0, -370, 1.25, 12, true}};
    job.uses.assign(static_cast<std::size_t>(job.press.stations), StationUse::open);
    job.uses[0] = StationUse::load;
    job.uses[2] = StationUse::flash;
    job.uses[9] = StationUse::unload;
    job.run.dryer_temperature = 150.0;
    Head head;
    head.id = 1;
    head.station = 2;
    head.colour = "white";
    head.squeegee.hardness = 70.0;
    head.squeegee.edge = BladeEdge::square;
    head.deposit.finest_detail = 1.0;
    job.heads.push_back(head);
    head.id = 2;
    head.station = 5;
    head.colour = "navy";
    job.heads.push_back(head);
    return job;
}

/// Prints of four platens over five turns under the first head; what each is off by `off`.
template <typename Off>
void read_platens(Job& job, const Off& off) {
    for (int turn = 1; turn <= 5; ++turn)
        for (int platen = 1; platen <= 4; ++platen) {
            const Point by = off(platen, turn);
            job.heads[0].rounds.push_back(printed(by.x, by.y, platen, turn));
        }
}

/// Small disorder that is alike each time, mm.
inline double disorder(int platen, int turn, int which) {
    return 0.02 * std::sin(7.0 * platen + 3.0 * turn + 11.0 * which);
}

inline void read_heights(Job& job) {
    for (const std::uint32_t head : {1U, 2U})
        for (const std::uint32_t platen : {1U, 2U, 3U, 4U})
            for (const Point& at : {Point{-150, -200}, Point{150, -200}, Point{0, 200}})
                job.height_readings.push_back(
                    {platen, head, at.x, at.y, 3.0 - (platen == 3 ? 1.0 : 0.0)});
}

inline void spoil_prints(Job& job, Evidence evidence) {
    Head& head = job.heads[0];
    switch (evidence) {
        case Evidence::head_off: head.rounds.push_back(printed(1.0, 0.5)); break;
        case Evidence::screw_answers_otherwise:
            head.rounds.push_back(printed(0.0, 1.0));
            head.rounds.back().turned = {-0.8, -0.8, 0.0};
            head.rounds.push_back(printed(0.0, 0.98));
            break;
        case Evidence::index_scatters:
            read_platens(job, [](int p, int t) {
                return Point{40.0 * disorder(p, t, 1), disorder(p, t, 2)};
            });
            break;
        case Evidence::prints_drift:
            read_platens(job, [](int p, int t) {
                return Point{disorder(p, t, 1), 0.3 * t + disorder(p, t, 2)};
            });
            break;
        case Evidence::platen_off:
            read_platens(job, [](int p, int t) {
                return Point{disorder(p, t, 1), (p == 3 ? 1.0 : 0.0) + disorder(p, t, 2)};
            });
            break;
        default: break;
    }
}

inline void spoil_run(Job& job, Evidence evidence) {
    switch (evidence) {
        case Evidence::level_out: read_heights(job); break;
        case Evidence::play_large: job.press.readings.backlash = 0.5; break;
        case Evidence::platen_hot: job.press.warming.per_second = 4.0; break;
        case Evidence::dwell_short: job.run.flash_dwell = 1.0; break;
        case Evidence::dwell_long:
            job.run.flash_dwell = 9.0;
            job.press.warming.per_second = 0.3;
            break;
        case Evidence::flash_missing: job.heads[0].wish.flash_after = true; [[fallthrough]];
        case Evidence::prints_on_wet:
            job.uses[2] = StationUse::open;
            job.uses[6] = StationUse::flash;
            break;
        case Evidence::cure_low: job.run.dryer_temperature = 110.0; break;
        case Evidence::cure_high: job.run.dryer_temperature = 190.0; break;
        case Evidence::air_noted:
            job.record.stoppages.push_back({12.0, StopReason::air, {}, {}});
            break;
        case Evidence::set_otherwise:
            job.walk.push_back({1, Field::operator_stop, true, -250.0, {}});
            break;
        case Evidence::left_unsecured: job.record.ticks.push_back({1, {}}); break;
        default: spoil_prints(job, evidence); break;
    }
}

inline void spoil_blades(Job& job, Evidence evidence) {
    Head& head = job.heads[0];
    switch (evidence) {
        case Evidence::both_sensors_on: head.stops = {-20.0, 20.0}; break;
        case Evidence::separation_thin: head.stops = {-36.0, 36.0}; break;
        case Evidence::position_lost: head.print_speed = 1000.0; break;
        case Evidence::unprinted: head.stops = {-180.0, 180.0}; break;
        case Evidence::starved: // it drops while it already runs
            job.press.carriage.drop_dwell = 0.0;
            head.flood_speed = 880.0;
            head.print_speed = 300.0;
            break;
        case Evidence::heavy: head.stops.machine_side = 220.0; break;
        case Evidence::run_past_short: head.stops.machine_side = 249.0; break;
        case Evidence::side_overlap_short: head.squeegee.width = 310.0; break;
        case Evidence::bead_narrow:
            head.squeegee.angle = radians(5.0);
            head.flood.angle = 0.0;
            break;
        case Evidence::flood_narrower: head.flood.width = 340.0; break;
        case Evidence::flood_unwinged: head.flood.winged = false; break;
        case Evidence::wings_dig_in: head.flood.angle = radians(35.0); break;
        case Evidence::flood_high: head.flood.gauge = 2.0; break;
        case Evidence::flood_low: head.flood.gauge = 0.0; break;
        case Evidence::flood_fast: head.flood_speed = 910.0; break;
        case Evidence::flood_pressure_high: head.pressure.flood = 300.0; break;
        case Evidence::squeegee_high: head.squeegee.gauge = 2.0; break;
        case Evidence::blade_off_platen:
            head.squeegee.width = 430.0;
            head.flood.width = 440.0;
            break;
        case Evidence::angle_unusual: head.squeegee.angle = radians(35.0); break;
        case Evidence::blade_soft: head.squeegee.hardness = 50.0; break;
        case Evidence::blade_hard: head.squeegee.hardness = 92.0; break;
        case Evidence::edge_rounded: head.squeegee.edge = BladeEdge::rounded; break;
        case Evidence::print_fast: head.print_speed = 910.0; break;
        default: spoil_run(job, evidence); break;
    }
}

/// The faultless job with this condition under its first head (under the second where it is one of
/// two heads compared); others may come with it, as they do on a press.
inline Job job_with(Evidence evidence) {
    Job job = faultless_job();
    Head& head = job.heads[0];
    switch (evidence) {
        case Evidence::pressure_low: head.pressure.squeegee = 100.0; break;
        case Evidence::pressure_high: head.pressure.squeegee = 450.0; break;
        case Evidence::mesh_not_held: head.pressure.squeegee = 20.0; break;
        case Evidence::gap_large: head.heights = {6.0, 6.0, 6.0}; break;
        case Evidence::gap_small: head.heights = {1.5, 1.5, 1.5}; break;
        case Evidence::heights_uneven: head.heights.right = 3.6; break;
        case Evidence::tension_low:
            head.screen.tension_along = 12.0;
            head.screen.tension_across = 12.0;
            break;
        case Evidence::tension_apart: job.heads[1].screen.tension_along = 30.0; break;
        case Evidence::length_differs: job.heads[1].heights = {12.0, 12.0, 12.0}; break;
        case Evidence::film_thin:
            head.screen.mesh_count = 140.0;
            head.screen.thread_diameter = 34.0;
            break;
        case Evidence::detail_fine: head.deposit.finest_detail = 0.1; break;
        default: spoil_blades(job, evidence); break;
    }
    return job;
}

} // namespace carriageway::sample
