// The image grown by the run-past, and what the bands cover of it, against GEOS: the union of the
// outline with the parallelogram that each of its edges sweeps when it moves along the arm.
#include <catch2/catch_test_macros.hpp>

#include "core/coverage.h"
#include "core/sensor.h"
#include "core/stroke.h"
#include "tests/reference/coverage_comparison.h"
#include "tests/reference/random_heads.h"

using namespace carriageway;
using namespace carriageway::reference;

namespace {

constexpr int cases = 15'000;
constexpr double most_rounding = 1e-4; ///< share of the cases that may hang on rounding

struct Storage {
    ColumnScratch columns_scratch;
    CoverScratch cover_scratch;
    std::vector<Column> columns;
    std::vector<Column> grown;
    Coverage coverage;
};

double run_past(Seeded& random) {
    if (random.chance(0.05)) return 0.0;
    return random.chance(0.5) ? random.between(1.0, 60.0) : random.between(0.0, 5.0);
}

void random_case(Tally& tally, std::uint64_t number, Storage& storage) {
    Seeded random(run_seed(), 3, number);
    const Job job = random_job(random);
    const Head& head = job.heads.front();
    const double by = run_past(random);
    Outline placed;
    place_image(head.image, placed);
    cut_into_columns(placed, storage.columns_scratch, storage.columns);
    grow_columns(storage.columns, by, storage.columns_scratch, storage.grown);

    const Region image(placed);
    const Region grown = image.swept_along(by);
    bool hole = false;
    for (const Region::Part& part : grown.parts()) hole = hole || part.has_hole;
    tally.count("grown image with a hole", hole);
    tally.count("not grown", by == 0.0);
    // Where nothing meets, each column grows by its width times twice the run-past.
    double apart = 0.0;
    for (const Column& column : storage.columns)
        apart += column.area() + 2.0 * by * (column.x1 - column.x0);
    tally.count("parts grown together", grown.area() < apart - 1.0);

    const StrokeGeometry geometry = stroke_geometry(job.press, head);
    Bands bands;
    bands.squeegee = squeegee_band(geometry, head, head.stops);
    bands.flood = flood_band(geometry, head, head.stops);
    bands.flood_finish = flood_finish(head);
    bands.moves = !both_on(job.press.sensors, head.stops);
    cover(storage.grown, bands, storage.cover_scratch, storage.coverage);
    compare_coverage(tally, number, grown, bands, storage.coverage);
}

} // namespace

TEST_CASE("the grown image and its coverage agree with GEOS", "[property]") {
    Tally tally("coverage of the grown image", 3);
    Storage storage;
    for (int i = 0; i < cases; ++i) random_case(tally, static_cast<std::uint64_t>(i), storage);
    tally.print();
    CHECK(tally.disagreements() == 0);
    CHECK(static_cast<double>(tally.of("decided by rounding")) <= most_rounding * cases);
    for (const char* kind :
         {"fully covered", "unprinted", "starved", "heavy", "with a ring", "not grown",
          "with four pieces or more", "grown image with a hole", "parts grown together"}) {
        INFO(kind);
        CHECK(tally.of(kind) >= cases / 200);
    }
}
