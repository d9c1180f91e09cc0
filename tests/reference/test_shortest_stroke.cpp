// Where the stops may stand and the shortest stroke, against GLPK's simplex. The programs are
// written from the model's formulas (reference_head.h), not from the core's allowed set.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "core/edit.h"
#include "core/limits.h"
#include "tests/reference/linear_program.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/reference_head.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr int cases = 100'000;
constexpr double tolerance = 1e-6; ///< mm

constexpr int p_o = 0, p_m = 1; ///< columns of the two stops

/// The wishes as rows; with a third column they need only be met less its value.
void add_wishes(LinearProgram& program, const StopLimits& limits, int slack_column) {
    const auto add = [&](int stop, double sign, double bound) {
        if (slack_column < 0)
            program.at_least({{stop, sign}}, sign * bound);
        else
            program.at_least({{stop, sign}, {slack_column, -1.0}}, sign * bound);
    };
    for (double most : limits.operator_at_most) add(p_o, -1.0, most);
    for (double least : limits.operator_at_least) add(p_o, 1.0, least);
    for (double most : limits.machine_at_most) add(p_m, -1.0, most);
    for (double least : limits.machine_at_least) add(p_m, 1.0, least);
    if (slack_column < 0)
        program.at_least({{p_m, 1.0}, {p_o, -1.0}}, limits.gap_at_least);
    else
        program.at_least({{p_m, 1.0}, {p_o, -1.0}, {slack_column, -1.0}}, limits.gap_at_least);
}

/// By how much every wish can be more than met at once; negative: not all can be met.
double largest_slack(const StopLimits& limits) {
    LinearProgram program(3);
    add_wishes(program, limits, 2);
    return -program.minimise({{2, -1.0}}).value().cost;
}

double shortest_length(const StopLimits& limits) {
    LinearProgram program(2);
    add_wishes(program, limits, -1);
    return program.minimise({{p_m, 1.0}, {p_o, -1.0}}).value().cost;
}

/// Least distance between the middle of what both bands cover and the middle of the image, among
/// strokes of the given length; and the operator's stop that gives it.
std::pair<double, double> best_centred(const StopLimits& limits, const ReferenceHead& head,
                                       double image_middle, double length) {
    LinearProgram program(3);
    add_wishes(program, limits, -1);
    program.exactly({{p_m, 1.0}, {p_o, -1.0}}, length);
    const double offset = 0.5 * (head.latest_band_lo + head.earliest_band_hi) - image_middle;
    program.at_least({{2, 1.0}, {p_o, -0.5}, {p_m, -0.5}}, offset);
    program.at_least({{2, 1.0}, {p_o, 0.5}, {p_m, 0.5}}, -offset);
    const auto optimum = program.minimise({{2, 1.0}});
    // The length is an optimum that the simplex found to its tolerance: a hair more always fits.
    if (!optimum) return best_centred(limits, head, image_middle, length + 1e-9);
    return {optimum->cost, optimum->x[p_o]};
}

/// Whether a pair of stops meets every wish, but for rounding.
bool meets(const StopLimits& limits, const Stops& stops) {
    constexpr double rounding = 1e-9;
    const auto below = [](double a, double b) { return a <= b + rounding; };
    bool all = below(limits.gap_at_least, stops.machine_side - stops.operator_side);
    for (double most : limits.operator_at_most) all = all && below(stops.operator_side, most);
    for (double least : limits.operator_at_least) all = all && below(least, stops.operator_side);
    for (double most : limits.machine_at_most) all = all && below(stops.machine_side, most);
    for (double least : limits.machine_at_least) all = all && below(least, stops.machine_side);
    return all;
}

void compare_shortest(Tally& tally, std::uint64_t number, const Job& job, const StopLimits& limits,
                      const Stops& ours) {
    const Head& head = job.heads.front();
    const ReferenceHead reference = reference_head(job, head);
    const auto [lo, hi] = placed_span(head.image);
    const double middle = 0.5 * (lo + hi);
    if (!meets(limits, ours)) tally.disagree(number, "the shortest stroke breaks a wish");
    const double length = ours.machine_side - ours.operator_side;
    tally.close(number, "shortest length", length, shortest_length(limits), tolerance);
    const auto [distance, operator_stop] = best_centred(limits, reference, middle, length);
    const double covered_lo = ours.operator_side + reference.latest_band_lo;
    const double covered_hi = ours.machine_side + reference.earliest_band_hi;
    tally.close(number, "distance of the middles", std::abs(0.5 * (covered_lo + covered_hi) - middle),
                distance, tolerance);
    tally.close(number, "operator stop", ours.operator_side, operator_stop, tolerance);
    const double innermost =
        *std::max_element(std::begin(limits.machine_at_least), std::end(limits.machine_at_least)) -
        *std::min_element(std::begin(limits.operator_at_most), std::end(limits.operator_at_most));
    const bool coupled = innermost < limits.gap_at_least;
    tally.count("held by the image", !coupled);
    tally.count("held by the sensors", coupled);
    tally.count("held by the sensors, not centred", coupled && distance > tolerance);
}

/// The corners are the allowed set's: each meets the wishes, and they enclose the area that is
/// left of the two intervals beyond the coupling.
void compare_corners(Tally& tally, std::uint64_t number, const StopLimits& limits,
                     const AllowedSet& allowed) {
    Outline corners(allowed.corners.begin(), allowed.corners.begin() + allowed.corner_count);
    for (const Point& corner : corners)
        if (!meets(limits, {corner.x, corner.y}))
            tally.disagree(number, "a corner of the allowed set breaks a wish");
    const double o_lo =
        *std::max_element(std::begin(limits.operator_at_least), std::end(limits.operator_at_least));
    const double o_hi =
        *std::min_element(std::begin(limits.operator_at_most), std::end(limits.operator_at_most));
    const double m_lo =
        *std::max_element(std::begin(limits.machine_at_least), std::end(limits.machine_at_least));
    const double m_hi =
        *std::min_element(std::begin(limits.machine_at_most), std::end(limits.machine_at_most));
    // For each operator stop the machine stops from max(m_lo, p_o + gap) to m_hi: summed exactly,
    // the height being linear on both sides of where the coupling takes over.
    const auto height = [&](double o) {
        return std::max(0.0, m_hi - std::max(m_lo, o + limits.gap_at_least));
    };
    const double takes_over = std::clamp(m_lo - limits.gap_at_least, o_lo, o_hi);
    const double closes = std::clamp(m_hi - limits.gap_at_least, o_lo, o_hi);
    const double area = 0.5 * (takes_over - o_lo) * (height(o_lo) + height(takes_over)) +
                        0.5 * (closes - takes_over) * (height(takes_over) + height(closes));
    tally.close(number, "area of the allowed set", signed_area(corners), area,
                1e-9 * std::max(1.0, area));
    tally.count("allowed set with five corners", allowed.corner_count == 5);
}

void random_case(Tally& tally, std::uint64_t number) {
    Seeded random(run_seed(), 4, number);
    const Job job = random.chance(0.8) ? random_easy_job(random) : random_job(random);
    const Head& head = job.heads.front();
    const auto [lo, hi] = placed_span(head.image);
    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    const AllowedSet allowed = allowed_set(job, head, geometry, {lo, hi});
    const auto ours = shortest_stroke(allowed, geometry, head, {lo, hi});
    if (ours.has_value() == allowed.empty())
        tally.disagree(number, "empty() and shortest_stroke() contradict one another");

    const StopLimits limits = stop_limits(job, head);
    const double slack = largest_slack(limits);
    tally.count("drop loss", geometry.print_loss > 0.0);
    tally.count("separation measured", job.press.sensors.separation_measured);
    tally.count("prints toward the machine", head.print_stroke == Direction::toward_machine);
    tally.count("no stops fit", slack < -tolerance);
    tally.count("too close to tell", std::abs(slack) <= tolerance);
    if (std::abs(slack) <= tolerance) return;
    if ((slack > 0.0) != ours.has_value()) {
        tally.disagree(number, "feasibility");
        return;
    }
    if (ours) {
        compare_shortest(tally, number, job, limits, *ours);
        compare_corners(tally, number, limits, allowed);
    } else {
        const Conflict conflict = conflict_of(allowed);
        tally.close(number, "missing mm", conflict.by, lack_of_room(limits), tolerance);
        tally.count("no stops fit, for the sensors", conflict.separation);
    }
}

} // namespace

TEST_CASE("the shortest stroke and its centring agree with GLPK", "[property]") {
    Tally tally("shortest stroke", 4);
    for (int i = 0; i < cases; ++i) random_case(tally, static_cast<std::uint64_t>(i));
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(tally.of("too close to tell") <= cases / 10'000);
    for (const char* kind : {"no stops fit", "held by the image", "held by the sensors",
                             "held by the sensors, not centred", "drop loss",
                             "separation measured", "prints toward the machine",
                             "allowed set with five corners", "no stops fit, for the sensors"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= cases / 200);
    }
}
