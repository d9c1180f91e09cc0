#include <catch2/catch_approx.hpp>
#include <catch2/catch_get_random_seed.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/sensor.h"
#include "tests/core/sample_job.h"

using namespace carriageway;
using Catch::Approx;
using sample::edge;
using sample::Random;

namespace {

ImageSpan span_of(const Head& head) {
    Outline placed;
    place_image(head.image, placed);
    const Rect bounds = bounds_of(placed);
    return {bounds.lo, bounds.hi};
}

AllowedSet set_of(const Job& job) {
    const Head& head = job.heads.front();
    return allowed_set(job, head, stroke_geometry(job.press, head), span_of(head));
}

std::optional<Change> change_for(const Job& job) {
    return smallest_change(job, job.heads.front(), span_of(job.heads.front()));
}

/// The job with a change carried out by hand, `less` of it being left undone.
Job changed(const Job& job, const Change& change, double less = 0.0) {
    Job after = job;
    Head& head = after.heads.front();
    switch (change.kind) {
        case ChangeKind::move_image:
            head.image.offset_y += change.amount - std::copysign(less, change.amount);
            break;
        case ChangeKind::shorten_run_past:
            after.wishes.run_past -= change.amount - less;
            break;
        case ChangeKind::squeegee_angle:
            head.squeegee.angle = change.amount;
            break;
        case ChangeKind::flood_angle:
            head.flood.angle = change.amount;
            break;
        case ChangeKind::longer_frame:
            head.screen.along += change.amount - less;
            break;
        case ChangeKind::longer_platen:
            after.platen.length += change.amount - less;
            break;
    }
    return after;
}

bool needs_hardware(const Change& change) {
    return change.kind == ChangeKind::longer_frame || change.kind == ChangeKind::longer_platen;
}

/// Whether some half degree of one blade opens the set by moving its edge by less than `most` mm.
bool some_angle_opens(const Job& job, bool squeegee, double most) {
    const PressProfile& press = job.press;
    const Head& head = job.heads.front();
    const StrokeGeometry before = stroke_geometry(press, head);
    for (int half = 10; half <= 50; ++half) {  // the profile's 5 to 25 degrees
        Job other = job;
        Head& tried = other.heads.front();
        (squeegee ? tried.squeegee.angle : tried.flood.angle) = radians(0.5 * half);
        const StrokeGeometry after = stroke_geometry(press, tried);
        const double moved = squeegee ? after.squeegee_edge - before.squeegee_edge
                                      : after.flood_edge - before.flood_edge;
        const double bead = std::abs(after.squeegee_edge - after.flood_edge);
        if (std::abs(moved) >= most || bead < press.allowances.least_bead) continue;
        if (!set_of(other).empty()) return true;
    }
    return false;
}

/// Whether a change without other hardware opens the set that moves less than `most` mm.
bool something_smaller_opens(const Job& job, double most) {
    const Rect opening = opening_of(job.heads.front().screen);
    const ImageSpan image = span_of(job.heads.front());
    constexpr int steps = 40;
    for (int i = 1; i <= steps; ++i) {
        const double by = most * i / steps;
        for (const double shift : {-by, by}) {
            if (image.lo + shift < opening.lo || image.hi + shift > opening.hi) continue;
            if (!set_of(changed(job, {ChangeKind::move_image, shift, by})).empty()) return true;
        }
        if (by > job.wishes.run_past) continue;
        if (!set_of(changed(job, {ChangeKind::shorten_run_past, by, by})).empty()) return true;
    }
    return some_angle_opens(job, true, most) || some_angle_opens(job, false, most);
}

}  // namespace

TEST_CASE("an image too near the operator: the platen conflicts, moving it helps", "[conflict]") {
    // Image -215 to 185: the squeegee must reach -240 but may not pass -239.5.
    Job job = sample::one_head();
    job.heads[0].image.offset_y = -15.0;
    const AllowedSet allowed = set_of(job);
    REQUIRE(allowed.empty());
    CHECK(allowed.corner_count == 0);
    const Conflict conflict = conflict_of(allowed);
    CHECK(conflict.outer == LimitKind::platen);
    CHECK(conflict.inner == LimitKind::squeegee_run_past);
    CHECK(conflict.end == End::operator_side);
    CHECK_FALSE(conflict.separation);
    CHECK(conflict.by == Approx(0.5));

    const auto change = change_for(job);
    REQUIRE(change);
    CHECK(change->kind == ChangeKind::move_image);  // as far as shortening the run-past, and first
    CHECK(change->amount == Approx(0.5));
    CHECK(change->moved == Approx(0.5));
}

TEST_CASE("an image too long for the platen: only a shorter run-past helps", "[conflict]") {
    // Image -225 to 225, both ends beyond what platen and edges leave. Operator: -250 against
    // -239.5. Machine: the flood must reach 250, so the squeegee gets to 250 + 2 edges = 313.65
    // against 299.5.
    Job job = sample::one_head();
    job.heads[0].image.length = 450.0;
    const Conflict conflict = conflict_of(set_of(job));
    CHECK(conflict.outer == LimitKind::platen);
    CHECK(conflict.inner == LimitKind::flood_run_past);
    CHECK(conflict.end == End::machine_side);
    CHECK(conflict.by == Approx(250.0 + 2.0 * edge() - 299.5));

    const auto change = change_for(job);
    REQUIRE(change);
    CHECK(change->kind == ChangeKind::shorten_run_past);
    CHECK(change->amount == Approx(250.0 + 2.0 * edge() - 299.5));
}

TEST_CASE("where nothing but another frame helps, its length is given", "[conflict]") {
    Job job = sample::one_head();
    job.wishes.run_past = 0.0;
    job.heads[0].screen.along = 560.0;  // opening +-242
    job.heads[0].image.length = 340.0;
    job.press.allowances.least_bead = 60.0;
    job.press.angles.least = radians(14.5);
    // Flood must stand at -170 - 2 edges = -233.6 and at least 50 inside -242; image and platen
    // leave no other way, and the bead none to flatter angles.
    const auto change = change_for(job);
    REQUIRE(change);
    CHECK(change->kind == ChangeKind::longer_frame);
    CHECK(change->moved == Approx(170.0 + 2.0 * edge() + 50.0 - 242.0));
    CHECK(change->amount == Approx(2.0 * change->moved));
}

TEST_CASE("bars that can't be far enough apart conflict with both ends", "[conflict]") {
    Job job = sample::one_head();
    job.heads[0].image.length = 60.0;
    job.press.sensors.separation_margin = 470.0;
    const AllowedSet allowed = set_of(job);
    REQUIRE(allowed.empty());
    const Conflict conflict = conflict_of(allowed);
    CHECK(conflict.separation);
    CHECK(conflict.inner == LimitKind::separation);
    CHECK(conflict.outer == LimitKind::platen);
    CHECK(conflict.other == LimitKind::platen);
    // 540 wanted; platen to platen the stops stand 539 - 4.625 apart: 559 long less twice the
    // inset, less what the carriage rests beyond one stop more than beyond the other.
    CHECK(conflict.by == Approx(540.0 - (539.0 - 4.625)));

    const auto change = change_for(job);
    REQUIRE(change);
    CHECK(change->kind == ChangeKind::longer_platen);
    // At the operator end the flood's limit to the frame comes next, so that the machine end must
    // give the rest: it stands at 309.5 - 10 - 7.125 - edge now.
    const double operator_end = -355.5 + 50.0 - 2.5 + edge();
    CHECK(change->moved == Approx(540.0 + operator_end - (292.375 - edge())));
    CHECK_FALSE(set_of(changed(job, *change)).empty());
}

TEST_CASE("an open set needs no change", "[conflict]") {
    CHECK_FALSE(change_for(sample::one_head()));
}

TEST_CASE("the smallest change opens, less of it doesn't, and nothing smaller does",
          "[conflict][property]") {
    const auto seed = Catch::getSeed();
    INFO("seed " << seed);
    Random random(seed);
    std::array<int, 6> kinds{};
    int none = 0;
    for (int i = 0; i < 6000; ++i) {
        Job job = sample::likely_job(random, 1);
        if (random.chance(0.3)) job.press.sensors.separation_margin = random.between(200.0, 500.0);
        if (random.chance(0.3)) job.wishes.run_past = random.between(0.0, 5.0);
        if (random.chance(0.5)) job.heads[0].screen.along = random.between(500.0, 700.0);
        const AllowedSet allowed = set_of(job);
        if (!allowed.empty()) continue;
        INFO("case " << i);
        const auto change = change_for(job);
        if (!change) {
            ++none;
            REQUIRE_FALSE(something_smaller_opens(job, 600.0));
            continue;
        }
        INFO("kind " << static_cast<int>(change->kind) << " amount " << change->amount);
        ++kinds[static_cast<std::size_t>(change->kind)];
        REQUIRE_FALSE(set_of(changed(job, *change)).empty());
        const bool angle =
            change->kind == ChangeKind::squeegee_angle || change->kind == ChangeKind::flood_angle;
        if (!angle) REQUIRE(set_of(changed(job, *change, 1e-6)).empty());
        const double most = needs_hardware(*change) ? 600.0 : change->moved - 2e-6;
        REQUIRE_FALSE(something_smaller_opens(job, most));
    }
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        INFO("kind " << k);
        CHECK(kinds[k] > 0);
    }
    CHECK(none > 0);
}
