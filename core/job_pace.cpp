#include "core/job_pace.h"

#include <algorithm>
#include <cmath>

#include "core/fields.h"
#include "core/heat.h"

namespace carriageway {

namespace {

/// A whole number of strokes; what can't be one is refused by rate_fault().
int strokes_of(double strokes) {
    const bool possible = strokes >= 0.0 && strokes <= static_cast<double>(most_strokes);
    return possible ? static_cast<int>(std::lround(strokes)) : -1;
}

/// Of a station that may not be in the list: a job is looked at while it is put together.
StationUse use_at(const Job& job, int station) {
    const auto index = static_cast<std::size_t>(station - 1);
    return index < job.uses.size() ? job.uses[index] : StationUse::open;
}

/// The lowest station without a head that is set to `use`; 0: none.
int first_station(const Job& job, StationUse use) {
    for (int station = 1; station <= job.press.stations; ++station)
        if (use_at(job, station) == use && head_on(job, station) == nullptr) return station;
    return 0;
}

/// Where garments are handled, and whether both is done at one station.
struct HandlingPlan {
    HandlingAt at = HandlingAt::own_stations;
    int open_station = 0;
    bool together = false;
};

HandlingPlan handling_of(const Job& job) {
    const bool loads = first_station(job, StationUse::load) > 0;
    const bool unloads = first_station(job, StationUse::unload) > 0;
    if (loads || unloads) return {HandlingAt::own_stations, 0, loads != unloads};
    const int open = first_station(job, StationUse::open);
    return {open > 0 ? HandlingAt::open_station : HandlingAt::nowhere, open, true};
}

/// Travel with other stops; the overtravels stay.
double travel_with(const HeadAssessment& assessed, const Stops& stops) {
    return ends_of(assessed.geometry, stops).travel();
}

bool is_still(const HeadAssessment& assessed) {
    return assessed.both_on || !(assessed.ends.travel() > 0.0);
}

HeadPace head_pace(const PressProfile& press, const Head& head, const HeadAssessment& assessed) {
    HeadPace pace;
    const double travel = assessed.ends.travel();
    pace.distance = is_still(assessed) ? 0.0 : travel;
    pace.print_speed = head.print_speed;
    pace.flood_speed = head.flood_speed;
    pace.acceleration = press.carriage.acceleration;
    pace.jerk = press.pace.jerk;
    pace.drop = press.carriage.drop_dwell;
    pace.lower = press.pace.lower;
    pace.lift = press.pace.lift;
    pace.prints = pace.floods = strokes_of(head.deposit.strokes);
    pace.floods_while_indexing = press.pace.floods_while_indexing;
    pace.fastest = press.carriage.fastest;
    // A stroke that nobody may shorten stands at its end already.
    pace.shortest = pace.distance;
    if (assessed.advised)
        pace.shortest = std::max(0.0, travel_with(assessed, *assessed.advised));
    else if (assessed.shortest)
        pace.shortest = std::max(0.0, travel_with(assessed, *assessed.shortest));
    return pace;
}

/// A station without a head.
StationWork open_work(const Job& job, int station, const HandlingPlan& handling) {
    StationWork work;
    work.station = station;
    const double both = job.handling.load + job.handling.unload;
    switch (use_at(job, station)) {
    case StationUse::load:
        work.kind = StationKind::load;
        work.seconds = handling.together ? both : job.handling.load;
        break;
    case StationUse::unload:
        work.kind = handling.together ? StationKind::load : StationKind::unload;
        work.seconds = handling.together ? both : job.handling.unload;
        break;
    case StationUse::flash:
        work.kind = StationKind::flash;
        work.seconds = job.run.flash_dwell;
        work.shortest = std::min(work.seconds, least_flash_dwell);
        break;
    case StationUse::cool: work.kind = StationKind::cool; break;
    case StationUse::open:
        if (station != handling.open_station) break;
        work.kind = StationKind::load;
        work.seconds = both;
        break;
    }
    return work;
}

} // namespace

RatePlan rate_plan(const Job& job, const Assessment& assessment) {
    const HandlingPlan handling = handling_of(job);
    RatePlan plan;
    plan.index = job.press.pace.index;
    for (int station = 1; station <= job.press.stations; ++station) {
        const Head* head = head_on(job, station);
        const HeadAssessment* assessed = head ? find_head(assessment, head->id) : nullptr;
        if (assessed == nullptr) {
            plan.stations.push_back(open_work(job, station, handling));
            continue;
        }
        StationWork work;
        work.station = station;
        work.kind = StationKind::print;
        work.head = head_pace(job.press, *head, *assessed);
        plan.stations.push_back(work);
    }
    return plan;
}

std::vector<Spread> spreads_of(const Job& job, const RatePlan& plan) {
    const Allowances& allowances = job.press.allowances;
    const double travel =
        2.0 * worst_deviation(allowances.stop) + 2.0 * worst_deviation(allowances.overtravel);
    std::vector<Spread> spreads;
    for (const StationWork& work : plan.stations) {
        double seconds = 0.0;
        if (work.kind == StationKind::load || work.kind == StationKind::unload)
            seconds = handling_share * work.seconds;
        if (work.kind == StationKind::print)
            seconds = travel * head_slope(work.head, plan.index).distance +
                      machine_share * (work.head.lower + work.head.lift);
        spreads.push_back({seconds, false});
    }
    return spreads;
}

bool handled_together(const RatePlan& plan) {
    return std::none_of(plan.stations.begin(), plan.stations.end(), [](const StationWork& work) {
        return work.kind == StationKind::unload;
    });
}

JobPace job_pace(const Job& job, const Assessment& assessment) {
    JobPace pace;
    for (const Head& head : job.heads) {
        const HeadAssessment* assessed = find_head(assessment, head.id);
        if (assessed != nullptr && is_still(*assessed))
            pace.still.push_back({head.id, head.station, assessed->both_on});
    }
    const HandlingPlan handling = handling_of(job);
    pace.handling = handling.at;
    pace.handling_station = handling.open_station;
    pace.plan = rate_plan(job, assessment);
    if (!pace.still.empty()) return pace;
    pace.rate = rate_of(pace.plan);
    if (pace.rate.fault) return pace;
    pace.spreads = spreads_of(job, pace.plan);
    pace.range = rate_range(pace.plan, {machine_share * pace.plan.index, false}, pace.spreads);
    pace.worth = rate_worth(pace.plan, pace_steps);
    pace.joint = worth_of_shortest_strokes(pace.plan);
    pace.run = run_time(pace.rate, job.run.pieces);
    return pace;
}

const Worth* worth_of(const JobPace& pace, std::size_t place, Lever lever) {
    for (const Worth& worth : pace.worth)
        if (worth.lever == lever && (lever == Lever::index || worth.place == place)) return &worth;
    return nullptr;
}

bool cycle_differs(const Job& job, const JobPace& pace) {
    return pace.runs() && !(std::abs(job.run.cycle - pace.rate.cycle) < cycle_shown);
}

std::optional<Edit> take_cycle(const Job& job, const JobPace& pace) {
    constexpr double hundredths = 100.0;
    if (!cycle_differs(job, pace)) return std::nullopt;
    const double cycle = std::round(pace.rate.cycle * hundredths) / hundredths;
    if (!accepts(Field::cycle, cycle)) return std::nullopt;
    return Edit{SetNumber{0, Field::cycle, cycle}};
}

} // namespace carriageway
