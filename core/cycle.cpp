#include "core/cycle.h"

#include <algorithm>
#include <cmath>

#include "core/job_pace.h"

namespace carriageway {
namespace {

/// Smooth from 0 to 1, at rest at both ends: for what moves by air, whose motion isn't modelled.
double eased(double share) {
    const double x = std::clamp(share, 0.0, 1.0);
    return x * x * (3.0 - 2.0 * x);
}

/// Part of a step that is over, 0 to 1.
double share_of(const RateStep& step, double time) {
    return step.length > 0.0 ? std::clamp((time - step.start) / step.length, 0.0, 1.0) : 1.0;
}

/// The strip of a band that an edge has swept from the stroke's start to where it is: `sign` is the
/// way of the stroke. Nothing of a band that is none: limit stops out of order give such.
Rect swept(const Rect& band, double edge, double sign) {
    Rect strip = band;
    if (!(band.lo < band.hi)) return strip;
    if (sign > 0.0) strip.hi = std::clamp(edge, band.lo, band.hi);
    else strip.lo = std::clamp(edge, band.lo, band.hi);
    return strip;
}

/// The steps of a head that doesn't move: down, a wait for its blade, up.
void still_steps(const PressProfile& press, double index, std::vector<RateStep>& out) {
    double now = index;
    const auto add = [&](StepKind kind, double length) {
        if (length > 0.0) out.push_back({kind, now, length, 0});
        now += length;
    };
    add(StepKind::lower, press.pace.lower);
    add(StepKind::stay, press.carriage.drop_dwell);
    add(StepKind::lift, press.pace.lift);
}

void follow_blades(const HeadCycle& cycle, const RateStep& step, double time, CyclePose& pose) {
    const double share = share_of(step, time);
    const bool floods = step.stroke % 2 == 1;
    const bool over = share >= 1.0;
    const double edge_f = pose.carriage + cycle.geometry.flood_edge;
    const double edge_s = pose.carriage + cycle.geometry.squeegee_edge;
    switch (step.kind) {
        case StepKind::drop: (floods ? pose.flood : pose.squeegee) = eased(share); break;
        case StepKind::flood:
            pose.flood = over ? 0.0 : 1.0;
            pose.flooded = over ? cycle.flood : swept(cycle.flood, edge_f, -cycle.print_sign);
            pose.flooded_all = over;
            break;
        case StepKind::print:
            pose.squeegee = over ? 0.0 : 1.0;
            // A second stroke goes over what the first has printed.
            if (!pose.printed_all)
                pose.printed =
                    over ? cycle.squeegee : swept(cycle.squeegee, edge_s, cycle.print_sign);
            pose.printed_all = pose.printed_all || over;
            if (over) pose.flooded = {};
            break;
        default: break;
    }
}

void follow_head(const RateStep& step, double time, CyclePose& pose) {
    if (step.kind == StepKind::lower) pose.down = eased(share_of(step, time));
    if (step.kind == StepKind::lift) pose.down = 1.0 - eased(share_of(step, time));
}

} // namespace

HeadCycle head_cycle(const Job& job, const Assessment& assessment, HeadId id) {
    HeadCycle cycle;
    cycle.head = id;
    cycle.index = job.press.pace.index;
    cycle.seconds = cycle.index;
    const Head* head = find_head(job, id);
    const HeadAssessment* assessed = find_head(assessment, id);
    if (!head || !assessed) return cycle;
    cycle.print_sign = sign_of(head->print_stroke);
    cycle.ends = assessed->ends;
    cycle.middle = 0.5 * (cycle.ends.operator_end + cycle.ends.machine_end);
    cycle.geometry = assessed->geometry;
    cycle.sensors = job.press.sensors;
    cycle.stops = head->stops;
    cycle.squeegee = assessed->squeegee;
    cycle.flood = assessed->flood;
    cycle.still = assessed->both_on || !(cycle.ends.travel() > 0.0);
    if (cycle.still) {
        still_steps(job.press, cycle.index, cycle.steps);
    } else {
        const RatePlan plan = rate_plan(job, assessment);
        const auto place = static_cast<std::size_t>(head->station - 1);
        if (place >= plan.stations.size()) return cycle;
        cycle.pace = plan.stations[place].head;
        head_steps(cycle.pace, cycle.index, cycle.steps);
    }
    if (!cycle.steps.empty()) cycle.seconds = std::max(cycle.index, cycle.steps.back().end());
    return cycle;
}

CyclePose pose(const HeadCycle& cycle, double time, double whole) {
    CyclePose pose;
    const double length = std::max(whole, cycle.seconds);
    double t = std::isfinite(time) && length > 0.0 ? std::fmod(time, length) : 0.0;
    if (t < 0.0) t += length;
    // The end of a cycle is what it came to, not the start of the next.
    if (t == 0.0 && time > 0.0 && std::isfinite(time)) t = length;
    pose.turned = cycle.index > 0.0 ? eased(t / cycle.index) : 1.0;
    pose.doing = t < cycle.index ? StepKind::index : StepKind::wait;
    pose.carriage = cycle.middle;
    const Lamps both{true, true};
    if (cycle.still) {
        pose.lamps = both;
    } else {
        const CarriageMoment moment = carriage_moment(cycle.pace, cycle.steps, t);
        // Floods start at the end where prints finish.
        const double from =
            cycle.print_sign > 0.0 ? cycle.ends.machine_end : cycle.ends.operator_end;
        pose.carriage = from - cycle.print_sign * moment.place;
        pose.speed = -cycle.print_sign * moment.speed;
        // At rest it came to its end through that end's sensor, which stays on unless it ran past.
        const bool machine = pose.carriage > cycle.middle, rests = pose.speed == 0.0;
        pose.lamps = lamps_at(cycle.sensors, cycle.stops, pose.carriage,
                              {rests && !machine, rests && machine});
    }
    for (const RateStep& step : cycle.steps) {
        if (step.start > t) break;
        follow_head(step, t, pose);
        follow_blades(cycle, step, t, pose);
        if (t < step.end()) {
            pose.doing = step.kind;
            pose.stroke = step.stroke;
        }
    }
    if (pose.doing != StepKind::print || !(pose.flooded.lo < pose.flooded.hi)) return pose;
    // What the squeegee has passed lies on the garment, no longer over the mesh.
    const double edge = pose.carriage + cycle.geometry.squeegee_edge;
    const double passed = std::clamp(edge, pose.flooded.lo, pose.flooded.hi);
    (cycle.print_sign > 0.0 ? pose.flooded.lo : pose.flooded.hi) = passed;
    return pose;
}

Bands bands_at(const HeadCycle& cycle, const CyclePose& pose) {
    Bands bands;
    bands.squeegee = pose.printed;
    bands.flood = cycle.flood;
    bands.flood_finish = cycle.print_sign > 0.0 ? End::operator_side : End::machine_side;
    bands.moves = !cycle.still;
    return bands;
}

std::vector<double> cycle_events(const HeadCycle& cycle) {
    std::vector<double> events{0.0};
    const auto add = [&](double time) {
        constexpr double apart = 1e-9;
        if (time > events.back() + apart) events.push_back(time);
    };
    for (const RateStep& step : cycle.steps) add(step.start);
    add(cycle.seconds);
    return events;
}

} // namespace carriageway
