#include "core/rate_steps.h"

#include <algorithm>

namespace carriageway {

namespace {

/// How often a head does what, and how long its strokes take.
struct Work {
    int prints = 0;
    int floods = 0;
    int pairs = 0;      ///< strokes one way, and as many back
    double print = 0.0; ///< s of a stroke back, without drop and dwell
    double flood = 0.0;
    bool floods_early = false; ///< the first flood begins with the index
};

Work work_of(const HeadPace& pace) {
    Work work;
    work.prints = std::clamp(pace.prints, 0, most_strokes);
    work.floods = std::clamp(pace.floods, 0, most_strokes);
    work.pairs = std::max(work.prints, work.floods);
    work.print = stroke_time(pace.distance, print_limits(pace));
    work.flood = stroke_time(pace.distance, flood_limits(pace));
    work.floods_early = pace.floods_while_indexing && work.floods > 0;
    return work;
}

double early_flood(const HeadPace& pace, const Work& work) {
    return work.floods_early ? pace.drop + work.flood + pace.dwell : 0.0;
}

/// Puts steps one behind the other.
struct Line {
    std::vector<RateStep>& out;
    double now = 0.0;

    void add(StepKind kind, double length, int stroke = 0) {
        if (length > 0.0) out.push_back({kind, now, length, stroke});
        now += length;
    }
};

/// A stroke with its drop and its dwell.
void add_stroke(Line& line, const HeadPace& pace, StepKind kind, double length, int stroke) {
    if (kind != StepKind::empty) line.add(StepKind::drop, pace.drop, stroke);
    line.add(kind, length, stroke);
    line.add(StepKind::dwell, pace.dwell, stroke);
}

} // namespace

StrokeLimits print_limits(const HeadPace& pace) {
    return {pace.print_speed, pace.acceleration, pace.jerk};
}

StrokeLimits flood_limits(const HeadPace& pace) {
    return {pace.flood_speed, pace.acceleration, pace.jerk};
}

double head_seconds(const HeadPace& pace, double index) {
    const Work work = work_of(pace);
    if (work.pairs == 0) return 0.0;
    const double early = early_flood(pace, work);
    const int ways = work.floods_early ? work.pairs - 1 : work.pairs;
    const int floods = work.floods_early ? work.floods - 1 : work.floods;
    return std::max(0.0, early - index) + pace.lower + ways * (work.flood + pace.dwell) +
           work.pairs * (work.print + pace.dwell) + (floods + work.prints) * pace.drop + pace.lift;
}

double flood_in_index(const HeadPace& pace) { return early_flood(pace, work_of(pace)); }

void head_steps(const HeadPace& pace, double index, std::vector<RateStep>& out) {
    out.clear();
    const Work work = work_of(pace);
    if (work.pairs == 0) return;
    Line line{out};
    if (work.floods_early) add_stroke(line, pace, StepKind::flood, work.flood, 1);
    line.now = std::max(index, line.now);
    line.add(StepKind::lower, pace.lower);
    // Floods come first and prints last; what is missing of either runs empty.
    for (int pair = 0; pair < work.pairs; ++pair) {
        const int stroke = 2 * pair + 1;
        const bool prints = pair >= work.pairs - work.prints;
        const bool floods = pair < work.floods;
        if (pair > 0 || !work.floods_early)
            add_stroke(line, pace, floods ? StepKind::flood : StepKind::empty, work.flood, stroke);
        add_stroke(line, pace, prints ? StepKind::print : StepKind::empty, work.print, stroke + 1);
    }
    line.add(StepKind::lift, pace.lift);
}

HeadSlope head_slope(const HeadPace& pace, double index) {
    const Work work = work_of(pace);
    HeadSlope slope;
    if (work.pairs == 0) return slope;
    const bool hidden = work.floods_early && early_flood(pace, work) <= index;
    const int ways = hidden ? work.pairs - 1 : work.pairs;
    const StrokeSlope print = stroke_slope(pace.distance, print_limits(pace));
    const StrokeSlope flood = stroke_slope(pace.distance, flood_limits(pace));
    slope.distance = work.pairs * print.by_distance + ways * flood.by_distance;
    slope.print_speed = work.pairs * print.by_speed;
    slope.flood_speed = ways * flood.by_speed;
    slope.drop = work.prints + work.floods - (hidden ? 1 : 0);
    slope.dwell = work.pairs + ways;
    slope.lower = slope.lift = 1.0;
    return slope;
}

CarriageMoment carriage_moment(const HeadPace& pace, std::span<const RateStep> steps, double time) {
    CarriageMoment moment;
    const RateStep* now = nullptr;
    for (const RateStep& step : steps) {
        if (!(step.start <= time)) break;
        now = &step;
    }
    if (now == nullptr) {
        moment.doing = StepKind::index;
        return moment;
    }
    const bool moves = now->kind == StepKind::flood || now->kind == StepKind::print ||
                       now->kind == StepKind::empty;
    moment.doing = time < now->end() ? now->kind : StepKind::wait;
    // Strokes of odd number start at 0 and those of even number end there; a drop comes before its
    // stroke, a dwell after it.
    const bool outward = now->stroke % 2 == 1;
    if (moves) {
        const StrokeMotion motion =
            stroke_motion(pace.distance, outward ? flood_limits(pace) : print_limits(pace));
        const MotionState state = state_at(motion, time - now->start);
        moment.place = outward ? state.position : motion.distance - state.position;
        moment.speed = outward ? state.speed : -state.speed;
    } else if (now->stroke > 0) {
        const bool far = (now->kind == StepKind::dwell) == outward;
        moment.place = far ? pace.distance : 0.0;
    } else if (now->kind == StepKind::lower && now != steps.data() && (now - 1)->stroke % 2 == 1) {
        moment.place = pace.distance; // flooded while the table turned
    }
    return moment;
}

} // namespace carriageway
