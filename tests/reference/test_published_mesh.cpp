// Published values of mesh and ink. The source stands beside each check; "computed" is our
// arithmetic from the source's formula.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/ink.h"
#include "core/mesh.h"
#include "core/off_contact.h"
#include "core/units.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

TEST_CASE("threads per inch", "[published]") {
    // Trade magazine: 120 threads per cm are about 305 per inch, 155 about 394; exactly 2.54 times.
    CHECK_THAT(threads_per_inch(120.0), WithinAbs(304.8, 1e-12));
    CHECK_THAT(threads_per_inch(155.0), WithinAbs(393.7, 1e-12));
}

TEST_CASE("published meshes", "[published]") {
    // Mesh data sheets: threads per cm and thread in µm; opening µm, open %, thickness µm, cm³/m².
    // The last column is open % times thickness (computed), before the data sheet's rounding; the
    // one before it pitch less thread (computed; geometry of ISO 9044 and ISO 3310-1).
    struct Row {
        double count, thread, opening, open, thickness, volume, bare_opening, product;
    };
    constexpr Row rows[] = {
        {90, 40, 73, 42, 59, 25, 71.11, 24.78},
        {90, 48, 65, 33, 72, 24, 63.11, 23.76},
        {90, 54, 59, 27, 84, 23, 57.11, 22.68},
    };
    REQUIRE(published_meshes.size() == std::size(rows));
    for (const Row& row : rows) {
        CAPTURE(row.thread);
        const auto data = mesh_data(row.count, row.thread);
        REQUIRE(data);
        CHECK(data->row.source == SourceKind::published);
        CHECK_FALSE(data->thickness_assumed);
        CHECK(data->row.opening == row.opening);
        CHECK_THAT(100.0 * data->row.share, WithinAbs(row.open, 1e-12));
        CHECK(data->row.thickness == row.thickness);
        CHECK(data->row.volume == row.volume);
        CHECK_THAT(ink_volume(data->row.share, data->row.thickness), WithinAbs(row.product, 1e-9));
        CHECK(std::round(ink_volume(data->row.share, data->row.thickness)) == row.volume);
        // The bare geometry, and woven mesh: up to about 2 µm and 2 points apart.
        const double bare = mesh_opening(row.count, row.thread);
        CHECK_THAT(bare, WithinAbs(row.bare_opening, 0.005));
        CHECK_THAT(bare, WithinAbs(row.opening, 2.0));
        CHECK_THAT(100.0 * open_share(row.count, row.thread), WithinAbs(row.open, 2.0));
    }
}

TEST_CASE("geometry of other meshes", "[published]") {
    // Geometry of ISO 9044 and ISO 3310-1, computed: opening 10000/n − d, open area
    // (opening/pitch)².
    struct Row {
        double count, thread, opening, open;
    };
    constexpr Row rows[] = {
        {43, 80, 152.56, 43.03},
        {62, 64, 97.29, 36.39},
        {77, 55, 74.87, 33.24},
        {120, 34, 49.33, 35.05},
    };
    for (const Row& row : rows) {
        CAPTURE(row.count);
        CHECK_THAT(mesh_pitch(row.count), WithinAbs(row.opening + row.thread, 0.005));
        CHECK_THAT(mesh_opening(row.count, row.thread), WithinAbs(row.opening, 0.005));
        CHECK_THAT(100.0 * open_share(row.count, row.thread), WithinAbs(row.open, 0.005));
        const auto data = mesh_data(row.count, row.thread);
        REQUIRE(data);
        CHECK(data->row.source == SourceKind::ours);
        CHECK(data->thickness_assumed);
    }
}

TEST_CASE("halftones and fine lines", "[published]") {
    // Trade magazine: 3.5 to 4 threads per line; 65 lines per inch want 227.5 to 260 threads per
    // inch. Its author warns that exact ratios don't exist.
    const MeshRange threads = threads_for_halftone(65.0);
    CHECK_THAT(threads.least, WithinAbs(227.5, 1e-12));
    CHECK_THAT(threads.most, WithinAbs(260.0, 1e-12));
    // Common practice, no source: the finest line is 2 to 3 thread pitches.
    const MeshRange finest = finest_line(100.0);
    CHECK_THAT(finest.least, WithinAbs(200.0, 1e-12));
    CHECK_THAT(finest.most, WithinAbs(300.0, 1e-12));
}

TEST_CASE("ink of one print", "[published]") {
    // Thick-film handbook: wet film = mesh thickness × open area + stencil build-up. Computed: open
    // area 33.235 % (77 threads of 55 µm), 94 µm thick: 31.241 cm³/m²; 30 × 40 cm, half covered:
    // 1.8745 cm³ a print.
    CHECK_THAT(100.0 * open_share(77.0, 55.0), WithinAbs(33.235, 0.0005));
    const double volume = ink_volume(0.33235, 94.0);
    CHECK_THAT(volume, WithinAbs(31.241, 0.0005));
    CHECK_THAT(wet_film(volume, 12.0), WithinAbs(43.241, 0.0005));
    InkUse use;
    use.film = wet_film(volume, 0.0);
    use.image_area = 300.0 * 400.0;
    use.printed_share = 0.5;
    use.pieces = 1;
    const auto need = ink_need(use);
    REQUIRE(need);
    CHECK_THAT(need->per_piece, WithinAbs(1.8745, 0.00005));
}

TEST_CASE("advised off-contact", "[published]") {
    // Trade articles: 1/16 to 1/8 in, fleece a little more; others have 3/16 in at 27 N/cm on a 23
    // by 31 in frame. How much more fleece gets is ours.
    const OffContactAdvice& shirt = advice_for(GarmentKind::t_shirt);
    CHECK_THAT(shirt.least, WithinAbs(mm_per_inch / 16.0, 1e-12));
    CHECK_THAT(shirt.most, WithinAbs(mm_per_inch / 8.0, 1e-12));
    CHECK(shirt.source == SourceKind::published_conflicting);
    const OffContactAdvice& fleece = advice_for(GarmentKind::fleece);
    CHECK_THAT(fleece.most, WithinAbs(mm_per_inch * 3.0 / 16.0, 1e-12));
    CHECK(fleece.source == SourceKind::ours);
}
