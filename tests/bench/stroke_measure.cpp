// The shortest stroke of one head: the core's closed form against GLPK's simplex on the same
// program, its wishes as rows, written from the model's formulas (tests/reference/reference_head.h).
#include <cmath>
#include <memory>

#include "core/limits.h"
#include "tests/bench/bench.h"
#include "tests/reference/linear_program.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/reference_head.h"

namespace carriageway::bench {

namespace {

using reference::LinearProgram;
using reference::StopLimits;

constexpr std::size_t heads = 200;
constexpr int rounds = 31;
constexpr int p_o = 0, p_m = 1; ///< columns of the two stops

void add_wishes(LinearProgram& program, const StopLimits& limits) {
    for (double most : limits.operator_at_most) program.at_least({{p_o, -1.0}}, -most);
    for (double least : limits.operator_at_least) program.at_least({{p_o, 1.0}}, least);
    for (double most : limits.machine_at_most) program.at_least({{p_m, -1.0}}, -most);
    for (double least : limits.machine_at_least) program.at_least({{p_m, 1.0}}, least);
    program.at_least({{p_m, 1.0}, {p_o, -1.0}}, limits.gap_at_least);
}

std::optional<LinearProgram::Optimum> solved(LinearProgram& program) {
    return program.minimise({{p_m, 1.0}, {p_o, -1.0}});
}

struct Case {
    Job job;
    ImageSpan image;
    StrokeGeometry geometry;
    AllowedSet allowed;
    StopLimits limits;
    std::unique_ptr<LinearProgram> program;
};

double length(const Stops& stops) { return stops.machine_side - stops.operator_side; }

/// Heads whose wishes leave room, where both sides have said the same length.
std::vector<Case> make_cases() {
    std::vector<Case> cases;
    for (std::uint64_t number = 0; cases.size() < heads; ++number) {
        reference::Seeded random(seed, 4, number);
        Case made;
        made.job = reference::random_easy_job(random);
        const Head& head = made.job.heads.front();
        const auto [lo, hi] = reference::placed_span(head.image);
        made.image = {lo, hi};
        made.geometry = stroke_geometry(made.job.press, head);
        made.allowed = allowed_set(made.job, head, made.geometry, made.image);
        const auto ours = shortest_stroke(made.allowed, made.geometry, head, made.image);
        if (!ours) continue;
        made.limits = reference::stop_limits(made.job, head);
        made.program = std::make_unique<LinearProgram>(2);
        add_wishes(*made.program, made.limits);
        const auto theirs = solved(*made.program);
        must(theirs && std::abs(theirs->cost - length(*ours)) <= 1e-6,
             "the two sides give different strokes");
        cases.push_back(std::move(made));
    }
    return cases;
}

} // namespace

std::vector<Ratio> set_vs_glpk() {
    const std::vector<Case> cases = make_cases();
    double sum = 0.0;
    // From the head's numbers to the stops: limits and solution; rows and simplex.
    const Pair whole = in_turn(
        rounds,
        [&] {
            for (const Case& each : cases) {
                const Head& head = each.job.heads.front();
                const AllowedSet allowed = allowed_set(each.job, head, each.geometry, each.image);
                sum += length(*shortest_stroke(allowed, each.geometry, head, each.image));
            }
        },
        [&] {
            for (const Case& each : cases) {
                LinearProgram program(2);
                add_wishes(program, each.limits);
                sum += solved(program)->cost;
            }
        });
    // The solution alone, the limits and rows being there.
    const Pair alone = in_turn(
        rounds,
        [&] {
            for (const Case& each : cases)
                sum += length(*shortest_stroke(each.allowed, each.geometry, each.job.heads.front(),
                                               each.image));
        },
        [&] {
            for (const Case& each : cases) sum += solved(*each.program)->cost;
        });
    keep(sum);
    const bool worse = alone.ratio() > whole.ratio();
    const Pair& shown = worse ? alone : whole;
    const auto count = static_cast<double>(heads);
    return {{"set_vs_glpk", shown.ratio(), 0.03,
             std::string(worse ? "solution alone" : "limits and solution") +
                 ", the worse of the two; a head: " +
                 sides("core", median(shown.ours) / count, "GLPK", median(shown.theirs) / count)}};
}

} // namespace carriageway::bench
