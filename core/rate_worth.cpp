#include "core/rate_worth.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace carriageway {

namespace {

/// Halvings of the way to a lever's end: as fine as the numbers are.
constexpr int halvings = 100;

/// Of a cycle: what the sum of an index and a station's time may be off.
constexpr double rounding = 8.0 * std::numeric_limits<double>::epsilon();

bool not_negative(double number) { return number >= 0.0 && std::isfinite(number); }

bool ends_usable(const RatePlan& plan) {
    return not_negative(plan.shortest_index) &&
           std::all_of(plan.stations.begin(), plan.stations.end(), [](const StationWork& work) {
               return not_negative(work.shortest) && not_negative(work.head.shortest) &&
                      not_negative(work.head.fastest);
           });
}

/// The number behind a lever.
double& number_of(StationWork& work, Lever lever) {
    switch (lever) {
        case Lever::stroke: return work.head.distance;
        case Lever::print_speed: return work.head.print_speed;
        case Lever::flood_speed: return work.head.flood_speed;
        case Lever::drop: return work.head.drop;
        case Lever::dwell: return work.head.dwell;
        case Lever::lower: return work.head.lower;
        case Lever::lift: return work.head.lift;
        case Lever::seconds:
        case Lever::index: break;
    }
    return work.seconds;
}

bool is_speed(Lever lever) { return lever == Lever::print_speed || lever == Lever::flood_speed; }

/// Where a lever ends: the shortest, or the speed from which on more has no effect.
double end_of(const StationWork& work, Lever lever) {
    if (lever == Lever::stroke) return work.head.shortest;
    if (lever == Lever::seconds) return work.shortest;
    if (!is_speed(lever)) return 0.0;
    const StrokeLimits unlimited{std::numeric_limits<double>::max(), work.head.acceleration,
                                 work.head.jerk};
    const double reached = peak_speed(work.head.distance, unlimited);
    return work.head.fastest > 0.0 ? std::min(work.head.fastest, reached) : reached;
}

/// What a unit less (of a speed: more) takes off the station's own time.
double saved_by(const StationWork& work, Lever lever, double index) {
    if (lever == Lever::seconds) return 1.0;
    const HeadSlope slope = head_slope(work.head, index);
    switch (lever) {
        case Lever::stroke: return slope.distance;
        case Lever::print_speed: return -slope.print_speed;
        case Lever::flood_speed: return -slope.flood_speed;
        case Lever::drop: return slope.drop;
        case Lever::dwell: return slope.dwell;
        case Lever::lower: return slope.lower;
        case Lever::lift: return slope.lift;
        default: return 0.0;
    }
}

double step_of(const WorthSteps& steps, Lever lever) {
    const WorthSteps usual;
    const auto one_of = [](double wanted, double otherwise) {
        return wanted > 0.0 && std::isfinite(wanted) ? wanted : otherwise;
    };
    if (lever == Lever::stroke) return one_of(steps.distance, usual.distance);
    if (is_speed(lever)) return one_of(steps.speed, usual.speed);
    return one_of(steps.time, usual.time);
}

/// Whether a lever stands at its end, or beyond.
bool at_end(const Worth& worth) {
    return is_speed(worth.lever) ? worth.now >= worth.end : worth.now <= worth.end;
}

/// The change to try.
double step_toward_end(const Worth& worth, double asked) {
    if (at_end(worth)) return 0.0;
    const double way = worth.end - worth.now;
    return std::copysign(std::min(asked, std::abs(way)), way);
}

/// A lever moved from where it stands toward its end, and the cycle with it. `cycle_at` gives the
/// cycle with the lever at a value; it must not lengthen on the way.
template <class CycleAt>
void try_out(Worth& worth, const Rate& rate, const CycleAt& cycle_at) {
    const auto gained = [&](double cycle) {
        if (!(cycle > 0.0)) return std::numeric_limits<double>::infinity();
        return pieces_an_hour(cycle, rate.pieces_an_index) - rate.pieces_an_hour;
    };
    const double way = worth.end - worth.now;
    worth.verdict = WorthVerdict::gains;
    worth.gain = gained(cycle_at(worth.now + worth.step));
    worth.per_unit = rate.pieces_an_hour / rate.cycle * worth.time_saved;
    // The least change that brings the cycle to what it is at the lever's end, but for rounding.
    const double shortest = cycle_at(worth.end);
    const double near_enough = shortest * (1.0 + rounding);
    double not_yet = 0.0, enough = 1.0;
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (not_yet + enough);
        (cycle_at(worth.now + middle * way) <= near_enough ? enough : not_yet) = middle;
    }
    worth.until = enough * way;
    worth.most_gain = gained(shortest);
}

/// The longest of the other stations.
double longest_but(const Rate& rate, std::size_t place) {
    double longest = 0.0;
    for (std::size_t i = 0; i < rate.stations.size(); ++i)
        if (i != place) longest = std::max(longest, rate.stations[i].seconds);
    return longest;
}

/// Places, but for one, of the stations that take at least `seconds`, and some time at all.
std::vector<std::size_t> taking(const Rate& rate, double seconds, std::size_t but) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < rate.stations.size(); ++i)
        if (i != but && rate.stations[i].seconds > 0.0 &&
            rate.stations[i].seconds > seconds - tie_slack)
            places.push_back(i);
    return places;
}

Worth station_worth(const RatePlan& plan, const Rate& rate, std::size_t place, Lever lever,
                    double asked) {
    StationWork changed = plan.stations[place];
    Worth worth;
    worth.lever = lever;
    worth.place = place;
    worth.now = number_of(changed, lever);
    worth.end = end_of(changed, lever);
    worth.time_saved = saved_by(changed, lever, plan.index);
    worth.step = step_toward_end(worth, asked);
    worth.held_by = taking(rate, rate.longest, place);
    if (!worth.held_by.empty() || !rate.stations[place].slowest) return worth;
    if (!(worth.time_saved > 0.0)) {
        worth.verdict = WorthVerdict::no_effect;
        return worth;
    }
    if (at_end(worth)) {
        worth.verdict = WorthVerdict::at_its_end;
        return worth;
    }
    const double others = longest_but(rate, place);
    const auto own_at = [&](double value) {
        number_of(changed, lever) = value;
        return station_seconds(changed, plan.index);
    };
    try_out(worth, rate,
            [&](double value) { return plan.index + std::max(others, own_at(value)); });
    if (others > own_at(worth.end) - tie_slack) worth.next = taking(rate, others, place);
    return worth;
}

/// The cycle's stations that set it, and of these the ones whose flood outlasts an index of
/// `index`.
std::vector<std::size_t> outlasting(const RatePlan& plan, double index) {
    double longest = 0.0;
    for (const StationWork& work : plan.stations)
        longest = std::max(longest, station_seconds(work, index));
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < plan.stations.size(); ++i) {
        const StationWork& work = plan.stations[i];
        if (work.kind == StationKind::print && flood_in_index(work.head) > 0.0 &&
            flood_in_index(work.head) > index - tie_slack &&
            station_seconds(work, index) > longest - tie_slack)
            places.push_back(i);
    }
    return places;
}

Worth index_worth(const RatePlan& plan, const Rate& rate, double asked) {
    Worth worth;
    worth.lever = Lever::index;
    worth.now = plan.index;
    worth.end = plan.shortest_index;
    worth.step = step_toward_end(worth, asked);
    const std::vector<std::size_t> floods = outlasting(plan, plan.index);
    worth.time_saved = floods.empty() ? 1.0 : 0.0;
    if (!floods.empty()) {
        worth.verdict = WorthVerdict::no_effect;
        worth.held_by = floods;
        return worth;
    }
    if (at_end(worth)) {
        worth.verdict = WorthVerdict::at_its_end;
        return worth;
    }
    RatePlan changed = plan;
    const auto cycle_at = [&](double value) {
        changed.index = value;
        return cycle_time(changed);
    };
    try_out(worth, rate, cycle_at);
    worth.next = outlasting(plan, plan.index + worth.until);
    return worth;
}

/// The levers that a station has.
std::vector<Lever> levers_of(const StationWork& work) {
    if (work.kind != StationKind::print)
        return work.seconds > 0.0 ? std::vector{Lever::seconds} : std::vector<Lever>{};
    const HeadPace& head = work.head;
    std::vector<Lever> levers;
    if (head.prints == 0 && head.floods == 0) return levers;
    if (head.distance > 0.0) levers = {Lever::stroke, Lever::print_speed, Lever::flood_speed};
    if (head.drop > 0.0) levers.push_back(Lever::drop);
    if (head.dwell > 0.0) levers.push_back(Lever::dwell);
    if (head.lower > 0.0) levers.push_back(Lever::lower);
    if (head.lift > 0.0) levers.push_back(Lever::lift);
    return levers;
}

} // namespace

std::vector<Worth> rate_worth(const RatePlan& plan, const WorthSteps& steps) {
    std::vector<Worth> all;
    const Rate rate = rate_of(plan);
    if (rate.fault || !ends_usable(plan)) return all;
    for (std::size_t i = 0; i < plan.stations.size(); ++i)
        for (const Lever lever : levers_of(plan.stations[i]))
            all.push_back(station_worth(plan, rate, i, lever, step_of(steps, lever)));
    if (plan.index > 0.0) all.push_back(index_worth(plan, rate, step_of(steps, Lever::index)));
    return all;
}

JointWorth worth_of_shortest_strokes(const RatePlan& plan) {
    const Rate before = rate_of(plan);
    if (before.fault || !ends_usable(plan)) return {};
    RatePlan changed = plan;
    for (StationWork& work : changed.stations)
        work.head.distance = std::min(work.head.distance, work.head.shortest);
    const Rate after = rate_of(changed);
    if (after.fault) return {};
    return {after.pieces_an_hour - before.pieces_an_hour, after.cycle, after.slowest};
}

} // namespace carriageway
