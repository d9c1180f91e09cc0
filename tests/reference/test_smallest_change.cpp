// The smallest change that makes room for the stops of a head, against brute force: for moves and
// lengths a linear program each (GLPK), for angles every half degree. Then the change is carried
// out: it must make room, and 99.9 % of it must not.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <vector>

#include "core/edit.h"
#include "core/fields.h"
#include "core/limits.h"
#include "tests/reference/linear_program.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/reference_head.h"
#include "tests/reference/tally.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr int cases = 60'000;
constexpr double tolerance = 1e-6;

constexpr const char* kind_names[] = {"image moved",   "run-past shortened", "squeegee's angle",
                                      "flood's angle", "longer frame",       "longer platen"};

constexpr int p_o = 0, p_m = 1, by = 2, size = 3; ///< columns

/// How much each limit gives for 1 mm of a change, the limits in the order of StopLimits.
struct Gives {
    double operator_at_most = 0.0, machine_at_least = 0.0;
    double platen = 0.0, frame = 0.0; ///< outward at both ends
};

/// Smallest |by| in [lo, hi] with which there is room; nothing: none.
std::optional<double> least_change(const StopLimits& limits, const Gives& gives, double lo,
                                   double hi) {
    if (!(lo <= hi)) return std::nullopt;
    LinearProgram program(4);
    program.bound_column(by, lo, hi);
    program.at_least({{size, 1.0}, {by, 1.0}}, 0.0);
    program.at_least({{size, 1.0}, {by, -1.0}}, 0.0);
    for (double most : limits.operator_at_most)
        program.at_least({{p_o, -1.0}, {by, gives.operator_at_most}}, -most);
    for (double least : limits.machine_at_least)
        program.at_least({{p_m, 1.0}, {by, -gives.machine_at_least}}, least);
    for (std::size_t i = 0; i < 4; ++i) {
        const double outward = i == 0 ? gives.platen : i == 3 ? 0.0 : gives.frame;
        program.at_least({{p_o, 1.0}, {by, outward}}, limits.operator_at_least[i]);
        program.at_least({{p_m, -1.0}, {by, outward}}, -limits.machine_at_most[i]);
    }
    program.at_least({{p_m, 1.0}, {p_o, -1.0}}, limits.gap_at_least);
    const auto optimum = program.minimise({{size, 1.0}});
    if (!optimum) return std::nullopt;
    return optimum->x[by];
}

struct Candidate {
    ChangeKind kind;
    double amount;
    double moved;
};

double bead_of(const Job& job, const Head& head) {
    const ReferenceHead h = reference_head(job, head);
    const double d = head.print_stroke == Direction::toward_machine ? 1.0 : -1.0;
    return -d * (h.squeegee_edge - h.flood_edge);
}

/// The best half degree of one of the two angles; sets `unclear` when rounding decides.
std::optional<Candidate> best_angle(const Job& job, const Head& head, bool squeegee,
                                    bool& unclear) {
    const Holder& holder = squeegee ? job.press.squeegee_holder : job.press.flood_holder;
    const double now = squeegee ? head.squeegee.angle : head.flood.angle;
    const bool winged = !squeegee && head.flood.winged;
    std::optional<Candidate> best;
    for (int halves = 0; halves <= 180; ++halves) {
        const double angle = radians(0.5 * halves);
        const Angles& allowed = job.press.angles;
        if (angle < allowed.least - 1e-9 || angle > allowed.most + 1e-9) continue;
        if (winged && angle > allowed.wings_flat + 1e-9) continue;
        Head changed = head;
        (squeegee ? changed.squeegee.angle : changed.flood.angle) = angle;
        const double spare = bead_of(job, changed) - job.press.allowances.least_bead;
        const double lack = lack_of_room(stop_limits(job, changed));
        unclear = unclear || std::abs(spare) < tolerance || std::abs(lack) < tolerance;
        if (spare < 0.0 || lack > 0.0) continue;
        const double moved = holder.pivot_height * std::abs(std::sin(angle) - std::sin(now));
        if (!best || moved < best->moved)
            best = Candidate{squeegee ? ChangeKind::squeegee_angle : ChangeKind::flood_angle, angle,
                             moved};
    }
    return best;
}

std::vector<Candidate> candidates(const Job& job, const Head& head, bool& unclear) {
    const StopLimits limits = stop_limits(job, head);
    const auto [lo, hi] = placed_span(head.image);
    const double half_opening = 0.5 * head.screen.along - head.screen.profile_width;
    std::vector<Candidate> found;
    const auto add = [&found](ChangeKind kind, std::optional<double> change, double factor) {
        if (change) found.push_back({kind, factor * *change, std::abs(*change)});
    };
    add(ChangeKind::move_image,
        least_change(limits, {1.0, 1.0, 0.0, 0.0}, -half_opening - lo, half_opening - hi), 1.0);
    add(ChangeKind::shorten_run_past,
        least_change(limits, {1.0, -1.0, 0.0, 0.0}, 0.0, job.wishes.run_past), 1.0);
    for (bool squeegee : {true, false})
        if (const auto angle = best_angle(job, head, squeegee, unclear)) found.push_back(*angle);
    if (half_opening > 0.0) {
        const double most = info_of(Field::screen_along).most - head.screen.along;
        add(ChangeKind::longer_frame,
            least_change(limits, {0.0, 0.0, 0.0, 1.0}, 0.0, 0.5 * most), 2.0);
    }
    const double most = info_of(Field::platen_length).most - job.platen.length;
    add(ChangeKind::longer_platen, least_change(limits, {0.0, 0.0, 1.0, 0.0}, 0.0, 0.5 * most),
        2.0);
    return found;
}

bool hardware(ChangeKind kind) {
    return kind == ChangeKind::longer_frame || kind == ChangeKind::longer_platen;
}

/// Whether `a` ranks before `b` by more than rounding (limits.h: hardware last, then mm).
bool clearly_before(const Candidate& a, const Candidate& b) {
    if (hardware(a.kind) != hardware(b.kind)) return hardware(b.kind);
    return a.moved < b.moved - 2.0 * tolerance;
}

/// The job with a change, or a part of it, carried out.
Job changed_job(const Job& job, const Change& change, double part) {
    Job changed = job;
    Head& head = changed.heads.front();
    switch (change.kind) {
        case ChangeKind::move_image: head.image.offset_y += part * change.amount; break;
        case ChangeKind::shorten_run_past: changed.wishes.run_past -= part * change.amount; break;
        case ChangeKind::squeegee_angle: head.squeegee.angle = change.amount; break;
        case ChangeKind::flood_angle: head.flood.angle = change.amount; break;
        case ChangeKind::longer_frame: head.screen.along += part * change.amount; break;
        case ChangeKind::longer_platen: changed.platen.length += part * change.amount; break;
    }
    return changed;
}

bool has_room(const Job& job) {
    const Head& head = job.heads.front();
    const auto [lo, hi] = placed_span(head.image);
    return !allowed_set(job, head, stroke_geometry(job.press, head), {lo, hi}).empty();
}

void compare_change(Tally& tally, std::uint64_t number, const Job& job, const Change& ours,
                    const std::vector<Candidate>& found) {
    const auto same = std::find_if(found.begin(), found.end(), [&](const Candidate& candidate) {
        return candidate.kind == ours.kind;
    });
    if (same == found.end()) {
        tally.disagree(number, "by brute force no such change makes room");
        return;
    }
    tally.close(number, "amount", ours.amount, same->amount, 2.0 * tolerance);
    tally.close(number, "mm moved", ours.moved, same->moved, tolerance);
    for (const Candidate& candidate : found)
        if (clearly_before(candidate, *same))
            tally.disagree(number, std::string("a smaller change makes room: ") +
                                       kind_names[static_cast<std::size_t>(candidate.kind)]);
    if (!has_room(changed_job(job, ours, 1.0)))
        tally.disagree(number, "the change carried out makes no room");
    const bool angle =
        ours.kind == ChangeKind::squeegee_angle || ours.kind == ChangeKind::flood_angle;
    if (angle || ours.moved < 1e-4) return;
    if (has_room(changed_job(job, ours, 0.999)))
        tally.disagree(number, "99.9 % of the change makes room as well");
    tally.count("99.9 % tried");
}

/// Makes the frame a little too short at both ends, so that moving the image doesn't help, and
/// leaves next to no run-past to shorten.
void tighten(Seeded& random, Job& job) {
    Head& head = job.heads.front();
    job.wishes.run_past = random.between(0.0, 2.0);
    job.press.squeegee_holder.pivot_height = random.between(60.0, 120.0);
    job.press.flood_holder.pivot_height = random.between(60.0, 120.0);
    job.press.squeegee_holder.half_depth = job.press.flood_holder.half_depth = 5.0;
    head.squeegee.angle = radians(random.between(15.0, 25.0));
    head.flood.angle = radians(random.between(15.0, 25.0));
    const auto lack = [&job, &head](bool at_operator) {
        const StopLimits limits = stop_limits(job, head);
        const double o = *std::min_element(std::begin(limits.operator_at_most),
                                           std::end(limits.operator_at_most));
        const double m = *std::max_element(std::begin(limits.machine_at_least),
                                           std::end(limits.machine_at_least));
        return at_operator ? std::max(limits.operator_at_least[1], limits.operator_at_least[2]) - o
                           : m - std::min(limits.machine_at_most[1], limits.machine_at_most[2]);
    };
    // Toward the machine makes room at the operator's end and takes it at the other.
    head.image.offset_y += 0.5 * (lack(true) - lack(false));
    head.screen.along += 2.0 * (lack(true) - random.between(0.0, 12.0));
}

void random_case(Tally& tally, std::uint64_t number) {
    Seeded random(run_seed(), 9, number);
    Job job = random.chance(0.5) ? random_easy_job(random) : random_job(random);
    Head& head = job.heads.front();
    head.flood.winged = random.chance(0.5);
    job.press.angles.wings_flat = radians(random.between(15.0, 30.0));
    job.press.allowances.least_bead = random.between(0.0, 60.0);
    if (random.chance(0.3)) tighten(random, job);
    if (fault_of(job)) return; // a frame or an offset that nobody could enter
    const double lack = lack_of_room(stop_limits(job, head));
    if (lack <= tolerance) return;
    tally.count("heads without room");

    bool unclear = false;
    const std::vector<Candidate> found = candidates(job, head, unclear);
    tally.count("decided by rounding", unclear);
    if (unclear) return;
    const auto [lo, hi] = placed_span(head.image);
    const auto ours = smallest_change(job, head, {lo, hi});
    tally.count("no single change", !ours);
    if (ours.has_value() != !found.empty())
        tally.disagree(number, ours ? "a change where brute force finds none"
                                    : "no change where brute force finds one");
    if (!ours) return;
    tally.count(kind_names[static_cast<std::size_t>(ours->kind)]);
    compare_change(tally, number, job, *ours, found);
}

} // namespace

TEST_CASE("the smallest change that makes room agrees with brute force", "[property]") {
    Tally tally("smallest change", 9);
    for (int i = 0; i < cases; ++i) random_case(tally, static_cast<std::uint64_t>(i));
    tally.print();
    CHECK(tally.disagreements() == 0);
    const long heads = tally.of("heads without room");
    CHECK(heads >= 10'000);
    CHECK(tally.of("decided by rounding") <= heads / 1000);
    CHECK(tally.of("99.9 % tried") >= heads / 10);
    for (const char* kind : kind_names) {
        INFO(kind);
        CHECK(tally.of(kind) >= heads / 200);
    }
    CHECK(tally.of("no single change") >= heads / 200);
}
