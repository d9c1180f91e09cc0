#include "core/rate.h"

#include <algorithm>
#include <cmath>

namespace carriageway {

namespace {

using Kind = RateFaultKind;

constexpr double seconds_an_hour = 3600.0;
constexpr double pieces_a_dozen = 12.0;

bool positive(double number) { return number > 0.0 && std::isfinite(number); }
bool not_negative(double number) { return number >= 0.0 && std::isfinite(number); }
bool strokes_possible(int strokes) { return strokes >= 0 && strokes <= most_strokes; }

/// What is wrong with a head, as that of the station at `place`.
std::optional<RateFault> head_fault(const HeadPace& pace, std::size_t place) {
    struct Asked {
        Kind kind;
        double value;
        bool fine;
    };
    const auto strokes = [](int number) {
        return Asked{Kind::strokes, static_cast<double>(number), strokes_possible(number)};
    };
    const auto least_zero = [](Kind kind, double value) {
        return Asked{kind, value, not_negative(value)};
    };
    const auto above_zero = [](Kind kind, double value) {
        return Asked{kind, value, positive(value)};
    };
    const Asked all[] = {least_zero(Kind::distance, pace.distance),
                         above_zero(Kind::speed, pace.print_speed),
                         above_zero(Kind::speed, pace.flood_speed),
                         above_zero(Kind::acceleration, pace.acceleration),
                         least_zero(Kind::jerk, pace.jerk),
                         least_zero(Kind::step_time, pace.drop),
                         least_zero(Kind::step_time, pace.dwell),
                         least_zero(Kind::step_time, pace.lower),
                         least_zero(Kind::step_time, pace.lift),
                         strokes(pace.prints),
                         strokes(pace.floods)};
    for (const Asked& one : all)
        if (!one.fine) return RateFault{one.kind, place, one.value};
    if (pace.distance > 0.0 && !(stroke_time(pace.distance, print_limits(pace)) > 0.0 &&
                                 stroke_time(pace.distance, flood_limits(pace)) > 0.0))
        return RateFault{Kind::stroke_time, place, pace.distance};
    return std::nullopt;
}

StepKind step_of(StationKind kind) {
    switch (kind) {
        case StationKind::print: return StepKind::print;
        case StationKind::flash: return StepKind::flash;
        case StationKind::load: return StepKind::load;
        case StationKind::unload: return StepKind::unload;
        case StationKind::cool: return StepKind::cool;
        case StationKind::idle: break;
    }
    return StepKind::stay;
}

void work_out_station(const StationWork& work, double index, StationPace& out) {
    out.station = work.station;
    out.kind = work.kind;
    out.seconds = station_seconds(work, index);
    if (work.kind == StationKind::print) {
        head_steps(work.head, index, out.steps);
        return;
    }
    out.steps.clear();
    if (work.seconds > 0.0) out.steps.push_back({step_of(work.kind), index, work.seconds, 0});
}

} // namespace

std::optional<RateFault> rate_fault(const RatePlan& plan) {
    if (plan.stations.empty()) return RateFault{Kind::no_station, 0, 0.0};
    if (plan.stations.size() > most_rate_stations)
        return RateFault{Kind::too_many_stations, 0, static_cast<double>(plan.stations.size())};
    if (!not_negative(plan.index)) return RateFault{Kind::index, 0, plan.index};
    if (plan.pieces_an_index < 1 || plan.pieces_an_index > most_pieces_an_index)
        return RateFault{Kind::pieces_an_index, 0, static_cast<double>(plan.pieces_an_index)};
    for (std::size_t i = 0; i < plan.stations.size(); ++i) {
        const StationWork& work = plan.stations[i];
        if (work.kind == StationKind::print) {
            if (const auto fault = head_fault(work.head, i)) return fault;
        } else if (!not_negative(work.seconds)) {
            return RateFault{Kind::seconds, i, work.seconds};
        }
    }
    // Finite numbers may still come to a cycle that is not.
    const double cycle = cycle_time(plan);
    if (!positive(cycle) || !std::isfinite(pieces_an_hour(cycle, plan.pieces_an_index)))
        return RateFault{Kind::no_time, 0, cycle};
    return std::nullopt;
}

double station_seconds(const StationWork& work, double index) {
    return work.kind == StationKind::print ? head_seconds(work.head, index) : work.seconds;
}

double cycle_time(const RatePlan& plan) {
    double longest = 0.0;
    for (const StationWork& work : plan.stations)
        longest = std::max(longest, station_seconds(work, plan.index));
    return plan.index + longest;
}

double pieces_an_hour(double cycle, int pieces_an_index) {
    return cycle > 0.0 ? seconds_an_hour / cycle * pieces_an_index : 0.0;
}

Rate rate_of(const RatePlan& plan) {
    Rate rate;
    work_out_rate(plan, rate);
    return rate;
}

void work_out_rate(const RatePlan& plan, Rate& reuse) {
    reuse.slowest.clear();
    reuse.fault = rate_fault(plan);
    if (reuse.fault) {
        reuse.index = reuse.longest = reuse.cycle = 0.0;
        reuse.pieces_an_index = 1;
        reuse.pieces_an_hour = reuse.dozens_an_hour = 0.0;
        reuse.stations.clear();
        reuse.under_way = 0;
        return;
    }
    reuse.stations.resize(plan.stations.size());
    reuse.longest = 0.0;
    for (std::size_t i = 0; i < plan.stations.size(); ++i) {
        work_out_station(plan.stations[i], plan.index, reuse.stations[i]);
        reuse.longest = std::max(reuse.longest, reuse.stations[i].seconds);
    }
    for (std::size_t i = 0; i < reuse.stations.size(); ++i) {
        StationPace& station = reuse.stations[i];
        station.idle = reuse.longest - station.seconds;
        station.slowest = reuse.longest > 0.0 && station.idle < tie_slack;
        if (station.slowest) reuse.slowest.push_back(i);
    }
    reuse.index = plan.index;
    reuse.cycle = plan.index + reuse.longest;
    reuse.pieces_an_index = plan.pieces_an_index;
    reuse.pieces_an_hour = pieces_an_hour(reuse.cycle, plan.pieces_an_index);
    reuse.dozens_an_hour = reuse.pieces_an_hour / pieces_a_dozen;
    reuse.under_way = indexes_under_way(plan);
}

std::size_t indexes_under_way(const RatePlan& plan) {
    const std::size_t count = plan.stations.size();
    std::size_t longest = 0;
    for (std::size_t from = 0; from < count; ++from) {
        if (plan.stations[from].kind != StationKind::load) continue;
        std::size_t way = 1;
        while (way < count && plan.stations[(from + way) % count].kind != StationKind::unload)
            ++way;
        longest = std::max(longest, way);
    }
    return longest > 0 ? longest : count;
}

std::optional<RunTime> run_time(const Rate& rate, double pieces) {
    if (rate.fault || !positive(pieces) || !(rate.cycle > 0.0)) return std::nullopt;
    const auto under_way = static_cast<double>(rate.under_way);
    RunTime run;
    run.indexes = std::ceil(pieces / rate.pieces_an_index);
    run.pieces_only = run.indexes * rate.cycle;
    run.with_filling = (run.indexes + under_way) * rate.cycle;
    run.first_piece = (1.0 + under_way) * rate.cycle;
    return run;
}

} // namespace carriageway
