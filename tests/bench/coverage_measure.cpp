// Coverage of one head's image: the core's columns against GEOS' general overlay.
#include <cmath>

#include "core/assess.h"
#include "tests/bench/bench.h"
#include "tests/reference/random_heads.h"
#include "tests/reference/region.h"

namespace carriageway::bench {

namespace {

constexpr int heads = 300;
constexpr int rounds = 31;

/// One head's image and bands, for both sides.
struct Case {
    Outline image;
    Bands bands;
    std::vector<Column> columns; ///< as assess() keeps them while stops are dragged
    reference::Region region;    ///< what GEOS may keep meanwhile
};

std::vector<Case> make_cases() {
    std::vector<Case> cases;
    ColumnScratch scratch;
    for (std::uint64_t number = 0; number < heads; ++number) {
        reference::Seeded random(seed, 1, number);
        const Job job = reference::random_job(random);
        const Head& head = job.heads.front();
        const StrokeGeometry geometry = stroke_geometry(job.press, head);
        Outline image;
        place_image(head.image, image);
        const Bands bands{squeegee_band(geometry, head, head.stops),
                          flood_band(geometry, head, head.stops), flood_finish(head),
                          !both_on(job.press.sensors, head.stops)};
        std::vector<Column> columns;
        cut_into_columns(image, scratch, columns);
        reference::Region region(image);
        cases.push_back({std::move(image), bands, std::move(columns), std::move(region)});
    }
    return cases;
}

} // namespace

std::vector<Ratio> assess_vs_geos() {
    const std::vector<Case> cases = make_cases();
    ColumnScratch column_scratch;
    CoverScratch scratch;
    Coverage out;
    std::vector<Column> columns;
    for (const Case& each : cases) {
        cover(each.columns, each.bands, scratch, out);
        const reference::RegionCoverage theirs = reference::region_coverage(each.region, each.bands);
        must(std::abs(out.covered_area - theirs.covered_area) <= 1e-6 * theirs.image_area,
             "the two sides cover different areas");
    }
    double sum = 0.0;
    // Stops dragged: the image stays, both sides keep what they have made of it.
    const Pair dragged = in_turn(
        rounds,
        [&] {
            for (const Case& each : cases) {
                cover(each.columns, each.bands, scratch, out);
                sum += out.covered_area;
            }
        },
        [&] {
            for (const Case& each : cases)
                sum += reference::region_coverage(each.region, each.bands).covered_area;
        });
    // Image moved: both sides begin with its corners.
    const Pair moved = in_turn(
        rounds,
        [&] {
            for (const Case& each : cases) {
                cut_into_columns(each.image, column_scratch, columns);
                cover(columns, each.bands, scratch, out);
                sum += out.covered_area;
            }
        },
        [&] {
            for (const Case& each : cases)
                sum += reference::region_coverage(reference::Region(each.image), each.bands)
                           .covered_area;
        });
    keep(sum);
    const bool worse = moved.ratio() > dragged.ratio();
    const Pair& shown = worse ? moved : dragged;
    return {{"assess_vs_geos", shown.ratio(), 0.03,
             std::string(worse ? "image moved" : "stop dragged") + ", the worse of the two; a head: " +
                 sides("core", median(shown.ours) / heads, "GEOS", median(shown.theirs) / heads)}};
}

} // namespace carriageway::bench
