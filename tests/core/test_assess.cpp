#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>

#include "core/assess.h"
#include "tests/core/allocation_count.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;
using sample::edge;
using sample::one_head;
using sample::Random;

namespace {

HeadAssessment assessed(const Job& job) {
    Assessment all;
    assess(job, all);
    return all.heads.front();
}

Margin margin_of(const HeadAssessment& head, LimitKind kind, End end) {
    const auto found = std::find_if(head.margins.begin(), head.margins.end(), [&](const Margin& m) {
        return m.kind == kind && m.end == end;
    });
    REQUIRE(found != head.margins.end());
    return *found;
}

bool finite(const Rect& r) {
    return std::isfinite(r.left) && std::isfinite(r.right) && std::isfinite(r.lo) &&
           std::isfinite(r.hi);
}
bool finite(const Stops& s) {
    return std::isfinite(s.operator_side) && std::isfinite(s.machine_side);
}

bool finite(const HeadContact& c) {
    double sum = c.plane.height + c.plane.slope_x + c.plane.slope_y + c.gap.least + c.gap.most +
                 c.middle_gap + c.uneven + c.squeegee.over_mesh + c.squeegee.over_garment +
                 c.flood.over_mesh + c.flood.over_garment + c.wing_clearance +
                 c.thrust.value_or(0.0) + c.line_load.value_or(0.0);
    if (c.worst) sum += c.worst->y + c.worst->line_force;
    for (const auto* shift : {&c.operator_shift, &c.machine_shift, &c.growth, &c.beside_base})
        if (*shift) sum += (*shift)->height + (*shift)->drag;
    return std::isfinite(sum);
}

bool finite(const HeadDeposit& d) {
    double sum = d.film + d.image_area + d.finest.least + d.finest.most;
    if (d.ink) sum += d.ink->per_piece + d.ink->total();
    return std::isfinite(sum);
}

/// Whether everything that is a number in an assessment is one.
bool finite(const HeadAssessment& h) {
    bool all = finite(h.squeegee) && finite(h.flood) && finite(h.image_bounds) &&
               finite(h.contact) && finite(h.deposit);
    for (const double number :
         {h.separation, h.least_separation, h.coverage.share(), h.coverage.covered_area,
          h.grown_coverage.share(), h.operator_run_past, h.machine_run_past, h.side_overlap,
          h.chance_missed, h.print_time, h.flood_time, h.allowed.least_gap,
          h.allowed.operator_side.lo, h.allowed.operator_side.hi, h.allowed.machine_side.lo,
          h.allowed.machine_side.hi}) {
        all = all && std::isfinite(number);
    }
    for (const Margin& m : h.margins) {
        all = all && std::isfinite(m.left) && std::isfinite(m.worst) &&
              std::isfinite(m.root_sum_square);
    }
    for (const Finding& f : h.findings)
        all = all && std::isfinite(f.value + f.limit);
    if (h.shortest) all = all && finite(*h.shortest);
    if (h.advised) all = all && finite(*h.advised);
    if (h.conflict) all = all && std::isfinite(h.conflict->by);
    if (h.change) all = all && std::isfinite(h.change->amount + h.change->moved);
    return all;
}

bool same(const Finding& a, const Finding& b) {
    return a.kind == b.kind && a.side == b.side && a.value == b.value && a.limit == b.limit &&
           a.remedy.kind == b.remedy.kind && a.remedy.stops == b.remedy.stops;
}

bool same(const HeadAssessment& a, const HeadAssessment& b) {
    return a.head == b.head && a.squeegee == b.squeegee && a.flood == b.flood &&
           a.image == b.image && a.image_bounds == b.image_bounds && a.columns == b.columns &&
           a.grown_columns == b.grown_columns &&
           a.coverage.covered_area == b.coverage.covered_area &&
           a.coverage.pieces.size() == b.coverage.pieces.size() &&
           a.coverage.tiles == b.coverage.tiles &&
           a.grown_coverage.covered_area == b.grown_coverage.covered_area &&
           a.shortest == b.shortest && a.advised == b.advised &&
           a.conflict.has_value() == b.conflict.has_value() &&
           a.change.has_value() == b.change.has_value() && a.chance_missed == b.chance_missed &&
           a.fit == b.fit && a.findings.size() == b.findings.size() &&
           std::equal(a.findings.begin(), a.findings.end(), b.findings.begin(),
                      [](const Finding& x, const Finding& y) { return same(x, y); });
}

/// Whether a finding is about the stops along the arm, which "set for me" puts right.
bool along_the_arm(const Finding& finding) {
    switch (finding.kind) {
        case FindingKind::both_sensors_on:
        case FindingKind::off_platen:
        case FindingKind::near_platen_edge:
        case FindingKind::meets_frame:
        case FindingKind::beyond_range:
        case FindingKind::no_stops_fit:
        case FindingKind::run_past_short:
        case FindingKind::separation_thin:
        case FindingKind::stroke_too_long:
            return true;
        case FindingKind::unprinted:
        case FindingKind::starved:
        case FindingKind::heavy:
            return finding.side == Side::operator_side || finding.side == Side::machine_side;
        default:
            return false;
    }
}

}  // namespace

TEST_CASE("the demonstration's head, worked out", "[assess]") {
    // See sample_job.h. Stops at -260 and 260.
    const HeadAssessment head = assessed(one_head());
    CHECK(head.head == 1);
    CHECK(head.ends.operator_end == Approx(-257.5));
    CHECK(head.ends.machine_end == Approx(267.125));
    CHECK(head.squeegee.lo == Approx(-257.5 + edge()));
    CHECK(head.flood.hi == Approx(267.125 - edge()));
    CHECK(head.squeegee.width() == Approx(356.0));
    CHECK(head.separation == Approx(520.0));
    CHECK(head.least_separation == Approx(70.0));
    CHECK_FALSE(head.both_on);
    CHECK(head.image_bounds == Rect{-150.0, 150.0, -200.0, 200.0});
    CHECK(head.coverage.share() == Approx(1.0));
    CHECK(head.coverage.pieces.empty());
    CHECK(head.grown_coverage.image_area == Approx(300.0 * 450.0));
    CHECK(head.grown_coverage.share() == Approx(1.0));
    CHECK(head.operator_run_past == Approx(57.5 - edge()));
    CHECK(head.machine_run_past == Approx(67.125 - edge()));
    CHECK(head.side_overlap == Approx(178.0 - 150.0));
    CHECK(head.advised == Stops{-260.0, 250.0});
    CHECK_FALSE(head.conflict);
    CHECK_FALSE(head.change);
    CHECK(head.chance_missed == 0.0);  // deviations come to 5, run-past to 25
    CHECK(head.print_time == Approx(524.625 / 600.0 + 600.0 / 8000.0));
    // A limit of jerk takes a ramp of v/a + a/j each way where both are reached.
    Job smooth = one_head();
    smooth.press.pace.jerk = 200000.0;
    CHECK(assessed(smooth).print_time == Approx(head.print_time + 8000.0 / 200000.0));

    CHECK(head.flood_time == Approx(524.625 / 700.0 + 700.0 / 8000.0));
    CHECK(head.fit);
}

TEST_CASE("margins count the deviations that act on them", "[assess]") {
    // Stop 1, screen 1, image 1, overtravel 2, least separation 1 (the profile's defaults).
    const HeadAssessment head = assessed(one_head());
    const auto check = [&head](LimitKind kind, End end, double left, double worst, double squares) {
        const Margin margin = margin_of(head, kind, end);
        INFO("kind " << static_cast<int>(kind));
        CHECK(margin.left == Approx(left));
        CHECK(margin.worst == Approx(left - worst));
        CHECK(margin.root_sum_square == Approx(left - std::sqrt(squares)));
    };
    const End o = End::operator_side;
    const End m = End::machine_side;
    check(LimitKind::squeegee_run_past, o, 257.5 - edge() - 225.0, 5.0, 7.0);
    check(LimitKind::flood_run_past, m, 267.125 - edge() - 225.0, 5.0, 7.0);
    check(LimitKind::platen, m, 299.5 - 267.125 - edge(), 3.0, 5.0);
    check(LimitKind::frame_flood, o, 305.5 - 257.5 - edge(), 4.0, 6.0);
    check(LimitKind::frame_squeegee, m, 305.5 - 267.125 - edge(), 4.0, 6.0);
    check(LimitKind::carriage_range, o, 380.0 - 257.5, 3.0, 5.0);
    check(LimitKind::separation, o, 520.0 - 75.0, 3.0, 3.0);
}

TEST_CASE("both sensors on: nothing is covered, the bands remain to be drawn", "[assess]") {
    Job job = one_head();
    job.heads[0].image.length = 90.0;
    job.heads[0].stops = {-30.0, 28.0};
    const HeadAssessment head = assessed(job);
    CHECK(head.both_on);
    CHECK(head.coverage.covered_area == 0.0);
    CHECK(head.chance_missed == 1.0);
    CHECK(head.squeegee.lo == Approx(-30.0 + 2.5 + edge()));
    CHECK(head.operator_run_past < 0.0);
    CHECK_FALSE(head.fit);
}

TEST_CASE("the chance of missed image adds both ends", "[assess]") {
    Job job = one_head();
    // Only the stops deviate, by up to 1: a rectangle from -1 to 1. Operator end: 0.5 past the
    // image leaves a chance of a quarter, 0.8 at the machine a tenth.
    job.press.allowances.screen.value = 0.0;
    job.press.allowances.image.value = 0.0;
    job.press.allowances.overtravel.value = 0.0;
    job.heads[0].stops = {-200.5 - 2.5 - edge(), 200.8 - 7.125 + edge()};
    CHECK(assessed(job).chance_missed == Approx(0.25 + 0.10));
}

TEST_CASE("an outline is judged, not its bounding box", "[assess]") {
    // A diamond 300 across and 400 along in a squeegee band too narrow for its two corners at
    // the sides: each has 10 mm outside, a triangle of 10 x (2 x 10 x 200/150) / 2.
    Job job = one_head();
    job.heads[0].image.outline = {{-150.0, 0.0}, {0.0, -200.0}, {150.0, 0.0}, {0.0, 200.0}};
    job.heads[0].squeegee.width = 280.0;
    const HeadAssessment head = assessed(job);
    CHECK(head.coverage.image_area == Approx(0.5 * 300.0 * 400.0));
    REQUIRE(head.coverage.pieces.size() == 2);
    const double corner = 0.5 * 10.0 * (2.0 * 10.0 * 200.0 / 150.0);
    CHECK(head.coverage.pieces[0].area == Approx(corner));
    CHECK(head.coverage.covered_area == Approx(0.5 * 300.0 * 400.0 - 2.0 * corner));
    CHECK(head.side_overlap == Approx(-10.0));
}

TEST_CASE("set for me moves only the heads that stand elsewhere", "[assess]") {
    Job job = one_head();
    Assessment all;
    assess(job, all);
    auto edit = set_every_stop(job, all);
    REQUIRE(edit);
    CHECK(*edit == Edit{SetStops{1, {-260.0, 250.0}}});  // one head: no Together
    REQUIRE(apply(job, *edit));
    assess(job, all);
    CHECK_FALSE(set_every_stop(job, all));

    Head second = job.heads[0];
    second.id = 2;
    second.station = 2;
    second.stops = {-100.0, 100.0};
    Head third = second;
    third.id = 3;
    third.station = 3;
    third.image.offset_y = -15.0;  // nothing fits, so it stays
    Head fourth = second;
    fourth.id = 4;
    fourth.station = 4;
    for (const Head& head : {second, third, fourth})
        REQUIRE(apply(job, {AddHead{head}}));
    assess(job, all);
    edit = set_every_stop(job, all);
    REQUIRE(edit);
    const auto* together = std::get_if<Together>(&edit->what);
    REQUIRE(together != nullptr);
    CHECK(together->edits.size() == 2);
    REQUIRE(apply(job, *edit));
    assess(job, all);
    CHECK(all.fit_heads == 3);
    CHECK_FALSE(all.fit);
    CHECK(find_head(all, 4)->fit);
    CHECK(find_head(all, 5) == nullptr);
}

TEST_CASE("a job without heads is fit", "[assess]") {
    Job job = one_head();
    job.heads.clear();
    Assessment all;
    assess(job, all);
    CHECK(all.fit);
    CHECK(all.fit_heads == 0);
    CHECK_FALSE(set_every_stop(job, all));
}

TEST_CASE("any accepted job is assessed: every number a number, remedies accepted",
          "[assess][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    Assessment all;
    int fit = 0;
    int remedies = 0;
    for (int i = 0; i < 6000; ++i) {
        const int heads = random.whole(1, 4);
        const Job job =
            i % 2 == 0 ? sample::wild_job(random, heads) : sample::likely_job(random, heads);
        INFO("case " << i);
        REQUIRE_FALSE(fault_of(job));
        assess(job, all);
        REQUIRE(all.heads.size() == job.heads.size());
        for (const HeadAssessment& head : all.heads) {
            REQUIRE(finite(head));
            REQUIRE(head.chance_missed >= 0.0);
            REQUIRE(head.chance_missed <= 1.0);
            REQUIRE(head.coverage.share() <= 1.0 + 1e-9);
            REQUIRE(head.allowed.empty() == head.conflict.has_value());
            REQUIRE(head.fit ==
                    std::none_of(head.findings.begin(), head.findings.end(),
                                 [](const Finding& f) { return f.severity == Severity::stop; }));
            // Image that is missed to speak of is a stop, whatever else is the matter.
            if (head.coverage.share() < 1.0 - 1e-6) REQUIRE_FALSE(head.fit);
            for (const Finding& finding : head.findings) {
                const auto edit = remedy_edit(finding);
                Job after = job;
                if (edit) REQUIRE(apply(after, *edit));
                if (edit) ++remedies;
            }
            if (head.fit) ++fit;
        }
    }
    CHECK(fit > 20);
    CHECK(remedies > 1000);
}

TEST_CASE("set for me leaves nothing to be said about the stops", "[assess][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    Assessment all;
    int advised = 0;
    for (int i = 0; i < 3000; ++i) {
        Job job = sample::likely_job(random, 3);
        assess(job, all);
        if (const auto edit = set_every_stop(job, all)) REQUIRE(apply(job, *edit));
        assess(job, all);
        INFO("case " << i);
        REQUIRE_FALSE(set_every_stop(job, all));
        for (const HeadAssessment& head : all.heads) {
            if (!head.advised) continue;
            ++advised;
            for (const Finding& finding : head.findings) {
                INFO("finding " << static_cast<int>(finding.kind) << " value " << finding.value);
                REQUIRE_FALSE(along_the_arm(finding));
            }
        }
    }
    CHECK(advised > 300);
}

TEST_CASE("a reused assessment says what a new one says", "[assess][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    Assessment reused;
    for (int i = 0; i < 500; ++i) {
        const Job job = sample::likely_job(random, random.whole(1, 5));
        Job near = job;  // what a drag and a new wish change
        near.heads[0].stops.operator_side -= 3.0;
        near.wishes.run_past += random.chance(0.5) ? 1.0 : 0.0;
        Assessment fresh;
        INFO("case " << i);
        for (const Job& each : {job, near}) {
            assess(each, reused);
            assess(each, fresh);
            Assessment once;
            assess(each, once);
            for (std::size_t h = 0; h < each.heads.size(); ++h) {
                REQUIRE(same(reused.heads[h], once.heads[h]));
                REQUIRE(same(fresh.heads[h], once.heads[h]));
            }
        }
        near.heads[0].stops.machine_side += 5.0;
        assess_head(near, 0, reused);
        Assessment once;
        assess(near, once);
        for (std::size_t h = 0; h < near.heads.size(); ++h) {
            REQUIRE(same(reused.heads[h], once.heads[h]));
        }
        REQUIRE(reused.fit_heads == once.fit_heads);
        REQUIRE(reused.fit == once.fit);
    }
}

TEST_CASE("once warm, assessing takes nothing from the free store", "[assess]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    for (int i = 0; i < 50; ++i) {
        Job job = sample::likely_job(random, 6);
        Assessment all;
        assess(job, all);
        const std::size_t before = tests::allocation_count();
        assess(job, all);
        const std::size_t again = tests::allocation_count();
        // A drag across the arm's whole length, every kind of missed image on the way.
        for (int step = 0; step < 40; ++step) {
            for (Head& head : job.heads) {
                head.stops = {-350.0 + 8.0 * step, -20.0 + 9.0 * step};
                if (step == 20) head.print_stroke = opposite(head.print_stroke);
            }
            assess(job, all);
        }
        for (std::size_t h = 0; h < job.heads.size(); ++h)
            assess_head(job, h, all);
        const std::size_t dragged = tests::allocation_count();
        // Compared only now: a reporter may allocate for each check.
        CHECK(again == before);
        CHECK(dragged == before);
    }
}
