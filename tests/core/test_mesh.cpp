#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <limits>
#include <vector>

#include "core/mesh.h"

using namespace carriageway;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

} // namespace

TEST_CASE("A mesh is threads and openings", "[mesh]") {
    // By hand: 50 threads of 80 µm per cm: pitch 200, opening 120, open 0.36.
    CHECK(mesh_pitch(50.0) == 200.0);
    CHECK(mesh_opening(50.0, 80.0) == 120.0);
    CHECK_THAT(open_share(50.0, 80.0), WithinAbs(0.36, 1e-15));
    CHECK_THAT(ink_volume(0.36, 125.0), WithinAbs(45.0, 1e-12));
}

TEST_CASE("A mesh that can't be has no opening and holds no ink", "[mesh]") {
    for (const double bad : {0.0, -1.0, nan_value, infinite}) {
        CHECK(mesh_pitch(bad) == 0.0);
        CHECK(mesh_opening(bad, 40.0) == 0.0);
        CHECK(mesh_opening(50.0, bad) == 0.0);
        CHECK(open_share(bad, 40.0) == 0.0);
        CHECK(ink_volume(bad, 50.0) == 0.0);
        CHECK(ink_volume(0.3, bad) == 0.0);
        CHECK_FALSE(mesh_data(bad, 40.0));
        CHECK_FALSE(mesh_data(50.0, bad));
        CHECK(finest_line(bad).most == 0.0);
        CHECK(threads_for_halftone(bad).most == 0.0);
        CHECK(halftone_for_threads(bad).most == 0.0);
        CHECK(detail_fit(bad, 100.0) == DetailFit::too_fine);
    }
    CHECK(mesh_opening(50.0, 200.0) == 0.0);
    CHECK(open_share(50.0, 250.0) == 0.0);
    CHECK_FALSE(mesh_data(50.0, 200.0));
    CHECK(ink_volume(1.5, 50.0) == 0.0);
}

TEST_CASE("A mesh comes from the person's rows, then the published ones, then geometry", "[mesh]") {
    const auto published = mesh_data(90.0, 48.0);
    REQUIRE(published);
    CHECK(published->row.source == SourceKind::published);
    CHECK(published->row.volume == 24.0);
    CHECK_FALSE(published->thickness_assumed);

    const std::vector<MeshRow> users{{90.0, 48.0, 64.0, 0.332, 70.0, 23.2, SourceKind::user}};
    const auto own = mesh_data(90.0, 48.0, users);
    REQUIRE(own);
    CHECK(own->row.source == SourceKind::user);
    CHECK(own->row.thickness == 70.0);
    CHECK_FALSE(own->thickness_assumed);

    const auto bare = mesh_data(62.0, 64.0, users);
    REQUIRE(bare);
    CHECK(bare->row.source == SourceKind::ours);
    CHECK(bare->thickness_assumed);
    CHECK(bare->row.thickness == 96.0);
    CHECK(bare->row.opening == mesh_opening(62.0, 64.0));
    CHECK_THAT(bare->row.volume, WithinAbs(open_share(62.0, 64.0) * 96.0, 1e-12));
}

TEST_CASE("Neighbouring meshes are told apart", "[mesh]") {
    CHECK(find_mesh(published_meshes, 90.0, 40.0) == &published_meshes[0]);
    CHECK(find_mesh(published_meshes, 90.2, 48.1) == &published_meshes[1]);
    CHECK(find_mesh(published_meshes, 91.0, 48.0) == nullptr);
    CHECK(find_mesh(published_meshes, 90.0, 44.0) == nullptr);
    CHECK(find_mesh(published_meshes, nan_value, 48.0) == nullptr);
    CHECK(find_mesh({}, 90.0, 48.0) == nullptr);
}

TEST_CASE("Thickness is assumed as the published rows have it", "[mesh]") {
    for (const MeshRow& row : published_meshes)
        CHECK_THAT(row.thickness / row.thread, WithinAbs(assumed_thickness_over_thread, 0.06));
}

TEST_CASE("A row that contradicts itself is named", "[mesh]") {
    for (const MeshRow& row : published_meshes) CHECK(trouble_with(row) == MeshRowTrouble::none);
    const MeshRow good = published_meshes[0];
    MeshRow row = good;
    row.opening = 80.0;
    CHECK(trouble_with(row) == MeshRowTrouble::opening_off);
    row = good;
    row.volume = 40.0;
    CHECK(trouble_with(row) == MeshRowTrouble::volume_off);
    row = good;
    row.share = 42.0; // typed as percent
    CHECK(trouble_with(row) == MeshRowTrouble::share_off);
    row = good;
    row.thread = 120.0;
    CHECK(trouble_with(row) == MeshRowTrouble::no_opening);
    for (const double bad : {0.0, -1.0, nan_value, infinite})
        for (double MeshRow::*number :
             {&MeshRow::threads_per_cm, &MeshRow::thread, &MeshRow::opening, &MeshRow::share,
              &MeshRow::thickness, &MeshRow::volume}) {
            row = good;
            row.*number = bad;
            CHECK(trouble_with(row) == MeshRowTrouble::not_positive);
        }
}

TEST_CASE("practice: the finest line is two to three pitches (common practice, no source)",
          "[mesh]") {
    const MeshRange finest = finest_line(50.0);
    CHECK(finest.least == 400.0);
    CHECK(finest.most == 600.0);
    CHECK(detail_fit(50.0, 399.0) == DetailFit::too_fine);
    CHECK(detail_fit(50.0, 400.0) == DetailFit::doubtful);
    CHECK(detail_fit(50.0, 600.0) == DetailFit::carried);
    CHECK(detail_fit(50.0, nan_value) == DetailFit::too_fine);
}

TEST_CASE("A halftone and its mesh go both ways", "[mesh]") {
    const MeshRange threads = threads_for_halftone(20.0);
    CHECK(threads.least == 70.0);
    CHECK(threads.most == 80.0);
    CHECK(halftone_for_threads(threads.least).most == 20.0);
    CHECK(halftone_for_threads(threads.most).least == 20.0);
}
