#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <array>

#include "core/assess.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

/// A job of one head, changed and worked out.
template <typename Change>
HeadAssessment assessed(Change change) {
    Job job = sample::one_head();
    change(job);
    Assessment all;
    assess(job, all);
    return all.heads.front();
}

const Finding* find(const HeadAssessment& head, FindingKind kind) {
    const auto found = std::find_if(head.findings.begin(), head.findings.end(),
                                    [kind](const Finding& f) { return f.kind == kind; });
    return found == head.findings.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("the plane of three heights is the one that a fit through them gives", "[contact]") {
    const HeightPoints points{230.0, -340.0, 360.0};
    const ScreenHeights heights{2.8, 3.3, 4.1};
    const OffContactPlane plane = plane_of(heights, points);
    const std::array<MeshHeight, 3> measured{{{{-230.0, -340.0}, 2.8},
                                              {{230.0, -340.0}, 3.3},
                                              {{0.0, 360.0}, 4.1}}};
    const PlaneFit fit = fit_plane(measured);
    REQUIRE(fit.trouble == PlaneTrouble::none);
    CHECK_THAT(plane.height, WithinAbs(fit.plane.height, 1e-9));
    CHECK_THAT(plane.slope_x, WithinAbs(fit.plane.slope_x, 1e-12));
    CHECK_THAT(plane.slope_y, WithinAbs(fit.plane.slope_y, 1e-12));
}

TEST_CASE("a head as in a new job has nothing said of heights, air or mesh", "[contact]") {
    const HeadAssessment head = assessed([](Job&) {});
    CHECK(head.findings.empty());
    CHECK_THAT(head.contact.middle_gap, WithinAbs(2.5, 1e-12));
    CHECK(head.contact.hold == HoldDown::holds_mesh);
    REQUIRE(head.contact.line_load);
    // Computed: 220 kPa on a bore of 32 mm over 356 mm of blade.
    CHECK_THAT(*head.contact.line_load, WithinAbs(220.0 * 0.7853981634 * 32.0 * 32.0 / 1000.0 / 35.6, 1e-6));
    CHECK(head.contact.squeegee.reaches_garment());
    CHECK(head.contact.flood.touches_mesh());
    CHECK_FALSE(head.contact.beside_base); // it is the base head itself
}

TEST_CASE("what is wrong with heights, air and mesh is found, and nothing else", "[contact]") {
    struct Case {
        FindingKind kind;
        Severity severity;
        void (*change)(Job&);
        double value;
        double limit;
    };
    const Case cases[] = {
        {FindingKind::squeegee_high, Severity::mind,
         [](Job& job) { job.heads.front().squeegee.gauge = 1.3; }, 0.8147, 0.0},
        {FindingKind::flood_high, Severity::note,
         [](Job& job) { job.heads.front().flood.gauge = 1.2; }, 0.7147, 0.0},
        {FindingKind::flood_low, Severity::mind,
         [](Job& job) { job.heads.front().flood.gauge = 0.6; }, 0.3853, 0.0},
        {FindingKind::heights_uneven, Severity::mind,
         [](Job& job) {
             job.heads.front().heights.left = 2.8;
             job.heads.front().heights.right = 3.2;
         },
         0.4, left_right_tolerance},
        {FindingKind::pressure_unusual, Severity::note,
         [](Job& job) { job.heads.front().pressure.flood = 90.0; }, 90.0, 100.0},
        {FindingKind::tension_low, Severity::note,
         [](Job& job) { job.heads.front().screen.tension_across = 18.0; }, 18.0, 20.0},
        {FindingKind::tension_low, Severity::mind,
         [](Job& job) { job.heads.front().screen.tension_across = 14.0; }, 14.0, 15.0},
        // 62 threads per cm: 161.3 µm of pitch; two pitches are 0.323 mm, three 0.484.
        {FindingKind::detail_too_fine, Severity::mind,
         [](Job& job) { job.heads.front().deposit.finest_detail = 0.3; }, 0.3, 0.32258},
        {FindingKind::detail_too_fine, Severity::note,
         [](Job& job) { job.heads.front().deposit.finest_detail = 0.4; }, 0.4, 0.48387},
    };
    for (const Case& one : cases) {
        const HeadAssessment head = assessed(one.change);
        INFO("kind " << static_cast<int>(one.kind) << ", value " << one.value);
        REQUIRE(head.findings.size() == 1);
        CHECK(head.findings.front().kind == one.kind);
        CHECK(head.findings.front().severity == one.severity);
        CHECK_THAT(head.findings.front().value, WithinAbs(one.value, 1e-3));
        CHECK_THAT(head.findings.front().limit, WithinAbs(one.limit, 1e-3));
        CHECK(head.fit); // advice and quality never keep a head from running
    }
}

TEST_CASE("a screen on the garment is found instead of an unusual gap", "[contact]") {
    const HeadAssessment low = assessed([](Job& job) { job.garment.compressed = 3.0; });
    CHECK(find(low, FindingKind::screen_on_garment) != nullptr);
    CHECK(find(low, FindingKind::gap_unusual) == nullptr);
    const HeadAssessment close = assessed([](Job& job) { job.garment.compressed = 2.0; });
    const Finding* unusual = find(close, FindingKind::gap_unusual);
    REQUIRE(unusual != nullptr);
    CHECK_THAT(unusual->limit, WithinAbs(1.5875, 1e-9)); // 1/16 in
}

TEST_CASE("too little air for the widest gap at the end of the stroke is found", "[contact]") {
    const HeadAssessment weak = assessed([](Job& job) { job.heads.front().pressure.squeegee = 20.0; });
    const Finding* finding = find(weak, FindingKind::mesh_not_held);
    REQUIRE(finding != nullptr);
    CHECK(finding->value < finding->limit);
    REQUIRE(weak.contact.worst);
    // The worst point lies where the stroke ends nearest the frame.
    const double operator_room = weak.squeegee.lo - opening_of(sample::one_head().heads.front().screen).lo;
    const double machine_room = opening_of(sample::one_head().heads.front().screen).hi - weak.squeegee.hi;
    CHECK_THAT(weak.contact.worst->y,
               WithinAbs(operator_room < machine_room ? weak.squeegee.lo : weak.squeegee.hi, 1e-9));
}

TEST_CASE("on its height stop a squeegee's thrust is no line load", "[contact]") {
    const HeadAssessment head =
        assessed([](Job& job) { job.heads.front().pressure.on_height_stop = true; });
    CHECK(head.contact.thrust);
    CHECK_FALSE(head.contact.line_load);
    CHECK(head.contact.hold == HoldDown::not_known);
    CHECK(find(head, FindingKind::mesh_not_held) == nullptr);
}

TEST_CASE("the length of a print is compared with the base head's", "[contact]") {
    Job job = sample::one_head();
    Head other = job.heads.front();
    other.id = 2;
    other.station = job.heads.front().station + 1;
    other.heights = {9.0, 9.0, 9.0};
    job.heads.push_back(other);
    Assessment all;
    assess(job, all);
    const HeadAssessment& second = all.heads[1];
    REQUIRE(second.contact.beside_base);
    // The same numbers by the functions themselves.
    const Rect& image = second.image_bounds;
    const auto expected = length_difference(mesh_contact(job, job.heads[1], 8.5),
                                            mesh_contact(job, job.heads[0], 2.5), image.lo, image.hi);
    REQUIRE(expected);
    CHECK_THAT(second.contact.beside_base->total(), WithinAbs(expected->total(), 1e-12));
    CHECK(second.contact.beside_base->height > 0.0); // more off-contact, a longer print
    // Turned round, the sign turns.
    job.registration.base = 2;
    assess(job, all);
    REQUIRE(all.heads[0].contact.beside_base);
    CHECK(all.heads[0].contact.beside_base->height < 0.0);
    CHECK_FALSE(all.heads[1].contact.beside_base);
    // Beyond the tolerance it is a finding; the blade on a height stop can't be compared.
    job.registration.tolerance = 0.01;
    assess(job, all);
    CHECK(find(all.heads[0], FindingKind::length_differs) != nullptr);
    job.heads[1].pressure.on_height_stop = true;
    assess(job, all);
    CHECK_FALSE(all.heads[0].contact.beside_base);
}

TEST_CASE("ink for a run follows mesh, stencil, image and strokes", "[contact]") {
    const auto deposit = [](auto change) { return assessed(change).deposit; };
    const HeadDeposit plain = deposit([](Job&) {});
    REQUIRE(plain.mesh);
    REQUIRE(plain.ink);
    CHECK(plain.mesh->thickness_assumed);
    CHECK_THAT(plain.image_area, WithinAbs(300.0 * 400.0, 1e-6));
    const HeadDeposit measured =
        deposit([](Job& job) { job.heads.front().deposit.fabric_thickness = 110.0; });
    CHECK_FALSE(measured.mesh->thickness_assumed);
    CHECK_THAT(measured.film, WithinAbs(measured.mesh->row.share * 110.0 + 10.0, 1e-9));
    const HeadDeposit twice = deposit([](Job& job) { job.heads.front().deposit.strokes = 2.0; });
    CHECK_THAT(twice.ink->per_piece, WithinAbs(1.5 * plain.ink->per_piece, 1e-9));
    const HeadDeposit closed = deposit([](Job& job) { job.heads.front().screen.thread_diameter = 900.0; });
    CHECK_FALSE(closed.mesh);
    CHECK_FALSE(closed.ink);
}
