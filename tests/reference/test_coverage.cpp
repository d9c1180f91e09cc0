// Coverage against GEOS, over random heads and over bands that coincide with the image's edges.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "core/coverage.h"
#include "core/edit.h"
#include "core/sensor.h"
#include "core/stroke.h"
#include "tests/reference/coverage_comparison.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/random_outlines.h"
#include "tests/reference/reference_head.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr int random_heads_cases = 100'000;
constexpr int aligned_cases = 40'000;

/// At most this share of the cases may hang on rounding.
constexpr double most_rounding = 1e-4;

struct Storage {
    ColumnScratch columns_scratch;
    CoverScratch cover_scratch;
    std::vector<Column> columns;
    Coverage coverage;

    const Coverage& work_out(const Outline& outline, const Bands& bands) {
        cut_into_columns(outline, columns_scratch, columns);
        cover(columns, bands, cover_scratch, coverage);
        return coverage;
    }
};

void compare_rect(Tally& tally, std::uint64_t number, const Rect& ours, Strip strip,
                  const Stops& stops, double width) {
    constexpr double tolerance = 1e-9;
    tally.close(number, "band's near end", ours.lo, stops.operator_side + strip.lo, tolerance);
    tally.close(number, "band's far end", ours.hi, stops.machine_side + strip.hi, tolerance);
    tally.close(number, "band's left", ours.left, -0.5 * width, tolerance);
    tally.close(number, "band's right", ours.right, 0.5 * width, tolerance);
}

/// The placed image, compared corner by corner with the turned and moved one.
void compare_placed(Tally& tally, std::uint64_t number, const Image& image, const Outline& placed) {
    Outline expected = placed_outline(image);
    if (signed_area(expected) < 0.0) std::reverse(expected.begin(), expected.end());
    if (placed.size() != expected.size()) {
        tally.disagree(number, "placed image has another number of corners");
        return;
    }
    if (!(signed_area(placed) > 0.0)) tally.disagree(number, "placed image lies clockwise");
    // Where the first corner is, is not promised.
    const auto distance = [](Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); };
    const auto first = std::min_element(
        expected.begin(), expected.end(), [&](Point a, Point b) {
            return distance(a, placed.front()) < distance(b, placed.front());
        });
    std::rotate(expected.begin(), first, expected.end());
    for (std::size_t i = 0; i < placed.size(); ++i)
        tally.close(number, "placed corner", distance(placed[i], expected[i]), 0.0, 1e-9);
}

void random_head_case(Tally& tally, std::uint64_t number, Storage& storage) {
    Seeded random(run_seed(), 1, number);
    const Job job = random_job(random);
    if (fault_of(job)) tally.disagree(number, "the random job isn't one that is accepted");
    const Head& head = job.heads.front();
    const ReferenceHead reference = reference_head(job, head);
    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    Outline placed;
    place_image(head.image, placed);
    compare_placed(tally, number, head.image, placed);

    Bands bands;
    bands.squeegee = squeegee_band(geometry, head, head.stops);
    bands.flood = flood_band(geometry, head, head.stops);
    bands.flood_finish = flood_finish(head);
    bands.moves = !both_on(job.press.sensors, head.stops);
    compare_rect(tally, number, bands.squeegee, reference.squeegee, head.stops,
                 head.squeegee.width);
    compare_rect(tally, number, bands.flood, reference.flood, head.stops, head.flood.width);
    const End expected_finish = head.print_stroke == Direction::toward_operator
                                    ? End::machine_side
                                    : End::operator_side;
    if (bands.flood_finish != expected_finish) tally.disagree(number, "the flood's end");

    const Region image(placed);
    tally.count("both sensors on", !bands.moves);
    tally.count("convex or rectangular image",
                head.image.outline.empty() || head.image.outline.size() == 3);
    compare_coverage(tally, number, image, bands, storage.work_out(placed, bands));
}

/// A side of a band: often exactly a coordinate of the image, otherwise another place on the grid.
double side(Seeded& random, double at, double lo, double hi) {
    if (random.chance(0.6)) return at;
    return std::round(8.0 * random.between(lo - 30.0, hi + 30.0)) / 8.0;
}

Rect aligned_band(Seeded& random, const Outline& outline) {
    const Rect bounds = bounds_of(outline);
    const auto corner = [&] {
        return outline[static_cast<std::size_t>(
            random.whole(0, static_cast<int>(outline.size()) - 1))];
    };
    Rect band{side(random, corner().x, bounds.left, bounds.right),
              side(random, corner().x, bounds.left, bounds.right),
              side(random, corner().y, bounds.lo, bounds.hi),
              side(random, corner().y, bounds.lo, bounds.hi)};
    if (band.left > band.right) std::swap(band.left, band.right);
    if (band.lo > band.hi) std::swap(band.lo, band.hi);
    if (random.chance(0.3)) band.left = bounds.left - 10.0;
    if (random.chance(0.3)) band.right = bounds.right + 10.0;
    if (random.chance(0.2)) band.lo = bounds.lo;
    if (random.chance(0.2)) band.hi = bounds.hi;
    return band;
}

void aligned_case(Tally& tally, std::uint64_t number, Storage& storage) {
    Seeded random(run_seed(), 2, number);
    Outline outline;
    do {
        const OutlineKind kind = random_outline_kind(random);
        const double across = random.between(40.0, 380.0), along = random.between(40.0, 520.0);
        outline = on_grid(random_outline(random, kind, across, along), random.whole(0, 3));
    } while (!is_simple(outline) || !Region(outline).valid());
    Bands bands;
    bands.squeegee = aligned_band(random, outline);
    bands.flood = aligned_band(random, outline);
    if (random.chance(0.3)) bands.flood.lo = bands.squeegee.lo;
    if (random.chance(0.3)) bands.flood.hi = bands.squeegee.hi;
    if (random.chance(0.3)) bands.flood.right = bands.squeegee.right;
    bands.flood_finish = random.chance(0.5) ? End::operator_side : End::machine_side;
    bands.moves = random.chance(0.98);
    tally.count("squeegee band empty", bands.squeegee.empty());
    tally.count("flood band empty", bands.flood.empty());
    tally.count("carriage stays", !bands.moves);
    compare_coverage(tally, number, Region(outline), bands, storage.work_out(outline, bands));
}

} // namespace

TEST_CASE("coverage of random heads agrees with GEOS", "[property]") {
    Tally tally("coverage of random heads", 1);
    Storage storage;
    for (int i = 0; i < random_heads_cases; ++i)
        random_head_case(tally, static_cast<std::uint64_t>(i), storage);
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(static_cast<double>(tally.of("decided by rounding")) <=
          most_rounding * random_heads_cases);
    for (const char* kind :
         {"fully covered", "unprinted", "starved", "heavy", "with a ring", "both sensors on",
          "with four pieces or more", "not covered at all", "convex or rectangular image"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= random_heads_cases / 200);
    }
}

TEST_CASE("coverage by bands that coincide with the image's edges agrees with GEOS",
          "[property]") {
    Tally tally("coverage by aligned bands", 2);
    Storage storage;
    for (int i = 0; i < aligned_cases; ++i)
        aligned_case(tally, static_cast<std::uint64_t>(i), storage);
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(static_cast<double>(tally.of("decided by rounding")) <= most_rounding * aligned_cases);
    for (const char* kind : {"fully covered", "unprinted", "starved", "heavy", "with a ring",
                             "with four pieces or more", "squeegee band empty",
                             "flood band empty", "carriage stays"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= aligned_cases / 400);
    }
}
